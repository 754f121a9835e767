import { mannKendall } from './mannKendall.ts';
import { medianSorted } from './median.ts';
import { normalQuantile } from './normal.ts';

export interface Point {
  readonly t: number;
  readonly x: number;
}

export interface TheilSen {
  /** Median of the slopes of all pairs, in x per t. */
  readonly slope: number;
  /** Confidence bounds of the slope; the outermost pair slopes where the data are too few for the level asked. */
  readonly lower: number;
  readonly upper: number;
  readonly pairs: number;
}

/**
 * Theil–Sen slope: how fast something drifts, not led astray by a few bad readings (up to 29 %).
 *
 * Shape: blocks of points; slopes are formed within a block only (see {@link mannKendall}). Pairs at the same time are left
 * out. Not mutated. Cost: quadratic in a block's length.
 * Method: median of (xj - xi) / (tj - ti); bounds are the ordered slopes at ranks (N - C) / 2 and (N + C) / 2 + 1 with
 * C = z sqrt(Var S), interpolated between neighbouring ranks.
 * Source: Gilbert (1987), ch. 16.5 (interval from memory; checked with the book's data).
 * @param confidence two-sided, 0 < confidence < 1
 * @returns null with no pair at two different times
 * @throws RangeError "theilSen requires finite points and 0 < confidence < 1"
 */
export function theilSen(blocks: readonly (readonly Point[])[], confidence: number): TheilSen | null {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('theilSen requires finite points and 0 < confidence < 1');
  const slopes = pairSlopes(blocks);
  const pairs = slopes.length;
  if (pairs === 0) return null;
  slopes.sort();
  const { variance } = mannKendall(blocks.map((block) => block.map((point) => point.x)));
  const c = normalQuantile((1 + confidence) / 2) * Math.sqrt(variance);
  return {
    slope: medianSorted(slopes),
    lower: atRank(slopes, (pairs - c) / 2),
    upper: atRank(slopes, (pairs + c) / 2 + 1),
    pairs,
  };
}

function pairSlopes(blocks: readonly (readonly Point[])[]): Float64Array {
  const room = blocks.reduce((sum, block) => sum + (block.length * (block.length - 1)) / 2, 0);
  const slopes = new Float64Array(room);
  let filled = 0;
  for (const block of blocks) {
    for (const [index, later] of block.entries()) {
      if (!Number.isFinite(later.t) || !Number.isFinite(later.x)) {
        throw new RangeError('theilSen requires finite points and 0 < confidence < 1');
      }
      for (let before = 0; before < index; before++) {
        const earlier = block[before];
        if (!earlier || earlier.t === later.t) continue;
        slopes[filled++] = (later.x - earlier.x) / (later.t - earlier.t);
      }
    }
  }
  return slopes.slice(0, filled);
}

/** Value at a 1-based rank, interpolated; the first or last value beyond the ends. */
function atRank(sorted: Float64Array, rank: number): number {
  const clamped = Math.min(Math.max(rank, 1), sorted.length);
  const below = Math.floor(clamped);
  const low = sorted[below - 1] ?? 0;
  const high = sorted[Math.min(below, sorted.length - 1)] ?? low;
  return low + (clamped - below) * (high - low);
}
