import { cusum } from './cusum.ts';
import { MAD_TO_SIGMA, median, medianAbsoluteDeviation } from './median.ts';
import type { Point } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface Shift {
  /** Index of the first point at the new level. */
  readonly from: number;
  readonly before: number;
  readonly after: number;
}

/**
 * A level that changed once and stayed changed, found by a CUSUM against the level of the first readings.
 *
 * Shape: points in order of time. Not mutated. Pure.
 * Method: target and sigma are median and 1.4826 MAD of the first ten readings, sigma at least half a step; the change is
 * dated from where the sum that signals last left nought. Single wild readings are clipped at four sigma, so that one of
 * them can not signal alone.
 * @param step finest step read, in the points' unit, > 0
 * @returns null with fewer than twelve points, without a signal, or where the change is below two steps
 */
export function detectShift(points: readonly Point[], step: number): Shift | null {
  const values = points.map((point) => point.x);
  if (values.length < THRESHOLDS.shiftBaseline + 2) return null;
  const base = values.slice(0, THRESHOLDS.shiftBaseline);
  const target = median(base);
  const sigma = Math.max(MAD_TO_SIGMA * medianAbsoluteDeviation(base), step / 2);
  const clipped = values.map((value) => Math.min(Math.max(value, target - 4.5 * sigma), target + 4.5 * sigma));
  const sums = cusum(clipped, { target, slack: THRESHOLDS.shiftSlack * sigma, decision: THRESHOLDS.shiftDecision * sigma });
  const last = sums.at(-1);
  if (!last?.signal) return null;
  const { signal } = last;
  let from = sums.length - 1;
  while (from > 0 && (sums[from - 1]?.[signal] ?? 0) > 0) from--;
  if (from < THRESHOLDS.shiftBaseline / 2 || values.length - from < 2) return null;
  const before = median(values.slice(0, from));
  const after = median(values.slice(from));
  return Math.abs(after - before) < THRESHOLDS.shiftSteps * step ? null : { from, before, after };
}
