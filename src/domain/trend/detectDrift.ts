import { type LinearRegression, linearRegression } from './linearRegression.ts';
import { mannKendall } from './mannKendall.ts';
import { median } from './median.ts';
import { modifiedZ, OUTLIER_SCORE } from './modifiedZ.ts';
import { sinceBend } from './sinceBend.ts';
import { type Point, type TheilSen, theilSen } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface Drift {
  /** Points in time order, one block between two refills; t in days. */
  readonly blocks: readonly (readonly Point[])[];
  readonly count: number;
  readonly spanDays: number;
  /** Where it began, when it was steady before; null where it drifts throughout. */
  readonly began: number | null;
  readonly robust: TheilSen;
  readonly p: number;
  /** Least-squares line without the outliers, for intervals of time; null where it can not be fitted. */
  readonly fit: LinearRegression | null;
  readonly outliers: number;
  /** Robust present level: at the last point, from the last block. */
  readonly level: number;
}

/**
 * Whether something drifts: Mann–Kendall decides, Theil–Sen says how fast, and the change seen must be worth a sentence.
 *
 * Pure. Cost: quadratic in the number of points, which the caller keeps at {@link THRESHOLDS.window}.
 * @param step finest step read, in the points' unit, > 0
 * @returns null where there is too little to say or nothing to say
 */
export function detectDrift(blocks: readonly (readonly Point[])[], step: number): Drift | null {
  const points = blocks.flat();
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last || points.length < THRESHOLDS.fewest) return null;
  const spanDays = last.t - first.t;
  if (spanDays < THRESHOLDS.fewestDays) return null;
  const { p } = mannKendall(blocks.map(valuesOf));
  if (p > THRESHOLDS.driftP) return null;
  const whole = theilSen(blocks, THRESHOLDS.confidence);
  if (!whole || Math.abs(whole.slope) * spanDays < THRESHOLDS.notableSteps * step) return null;
  if (Math.sign(whole.lower) !== Math.sign(whole.upper)) return null;
  const recent = fromBend(blocks);
  const robust = theilSen(recent, THRESHOLDS.confidence) ?? whole;
  // A drift that only just began has a rate, but too few readings for a day on which it ends.
  const settled = recent === blocks || mannKendall(recent.map(valuesOf)).p <= THRESHOLDS.driftP;
  const kept = withoutOutliers(recent, robust.slope, step);
  const lastBlock = recent.findLast((block) => block.length > 0) ?? [];
  return {
    blocks: recent,
    count: recent.flat().length,
    spanDays: last.t - (recent.flat()[0]?.t ?? first.t),
    began: recent === blocks ? null : (recent.flat()[0]?.t ?? null),
    robust,
    p,
    fit: settled ? linearRegression(kept) : null,
    outliers: recent.flat().length - kept.flat().length,
    level: median(lastBlock.map((point) => point.x + robust.slope * (last.t - point.t))),
  };
}

function valuesOf(block: readonly Point[]): number[] {
  return block.map((point) => point.x);
}

/** The blocks without the steady time before the drift began; the same blocks where there was none. */
function fromBend(blocks: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const [oldest = [], ...later] = blocks;
  const recent = sinceBend(oldest);
  return recent === oldest ? blocks : [recent, ...later];
}

/** Blocks without the points that lie far from the robust line of their block. */
function withoutOutliers(blocks: readonly (readonly Point[])[], slope: number, step: number): readonly (readonly Point[])[] {
  const residuals = blocks.map((block) => {
    const leveled = block.map((point) => point.x - slope * point.t);
    const center = leveled.length === 0 ? 0 : median(leveled);
    return leveled.map((value) => value - center);
  });
  const scores = modifiedZ(residuals.flat(), step / 2);
  let index = 0;
  return blocks.map((block) => block.filter(() => Math.abs(scores[index++] ?? 0) <= OUTLIER_SCORE));
}
