import { MAD_TO_SIGMA, median } from './median.ts';
import type { Point } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Longer than this between two readings, a low one is believed. */
const SPIKE_DAYS = 30;

/**
 * Cut points in order of time wherever the tire was pumped up: the level jumps, the leak goes on.
 *
 * Shape: at least one block, together holding every point in order. Not mutated. Pure.
 * Method: a rise of at least 2.5 reading steps and four robust standard deviations of the successive differences, unless
 * the next reading is back where it was: then it was one wrong reading.
 * @param step finest step read, in the points' unit, > 0
 * @param direction `up` for what is refilled, `either` for the difference of two sides
 */
export function splitAtRefills(points: readonly Point[], step: number, direction: 'up' | 'either'): Point[][] {
  const rises = points.slice(1).map((point, index) => point.x - (points[index]?.x ?? 0));
  if (rises.length === 0) return [[...points]];
  const typical = median(rises);
  const sigma = Math.max((MAD_TO_SIGMA * median(rises.map((rise) => Math.abs(rise - typical)))) / Math.SQRT2, step / 4);
  const least = Math.max(THRESHOLDS.refillSteps * step, THRESHOLDS.refillScore * sigma);
  const blocks: Point[][] = [];
  let block: Point[] = [];
  for (const [index, point] of points.entries()) {
    const rise = rises[index - 1] ?? 0;
    const size = direction === 'up' ? rise : Math.abs(rise);
    const before = points[index - 1];
    const earlier = points[index - 2];
    const next = points[index + 1];
    const near = (other: Point | undefined, level: Point | undefined) =>
      other !== undefined && level !== undefined && Math.abs(other.x - level.x) < 0.25 * Math.abs(rise);
    const back = near(next, before);
    // Down and up again within a month is one wrong reading; over a longer time the tire went soft and was pumped up.
    const afterSpike = near(point, earlier) && before !== undefined && earlier !== undefined && before.t - earlier.t < SPIKE_DAYS;
    if (size >= least && !back && !afterSpike && block.length > 0) {
      blocks.push(block);
      block = [];
    }
    block.push(point);
  }
  blocks.push(block);
  return blocks;
}
