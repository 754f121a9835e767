import { MAD_TO_SIGMA, median } from './median.ts';
import { type Point, theilSen } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface LastApart {
  readonly value: number;
  /** What the readings before it lead one to expect. */
  readonly expected: number;
}

/**
 * Whether the newest reading does not fit the ones before it: misread, misheard, or something broke.
 *
 * Shape: blocks as {@link theilSen}; the newest point is the last of the last block. Not mutated. Pure.
 * Method: the others' robust line carried to the newest time; scale is 1.4826 MAD of their distances from it, at least
 * half a step, and widened for the reach of the forecast.
 * @param step finest step read, > 0
 * @returns null where it fits, or with fewer than six readings before it in its block
 */
export function detectOutlier(blocks: readonly (readonly Point[])[], step: number): LastApart | null {
  const block = blocks.at(-1) ?? [];
  const last = block.at(-1);
  const others = block.slice(0, -1);
  const first = others[0];
  const before = others.at(-1);
  if (!last || !first || !before || others.length < THRESHOLDS.outlierAfter) return null;
  const slope = theilSen([others], THRESHOLDS.confidence)?.slope ?? 0;
  const level = median(others.map((point) => point.x - slope * point.t));
  const scale = Math.max(MAD_TO_SIGMA * median(others.map((point) => Math.abs(point.x - level - slope * point.t))), step / 2);
  const span = Math.max(before.t - first.t, 1e-9);
  const reach = 1 + Math.max(0, last.t - before.t) / span;
  const expected = level + slope * last.t;
  const apart = Math.abs(last.x - expected);
  if (apart < THRESHOLDS.outlierScore * scale * reach || apart < THRESHOLDS.outlierSteps * step) return null;
  return { value: last.x, expected };
}
