import { MAD_TO_SIGMA, median } from './median.ts';
import type { Point } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

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
    const next = rises[index];
    const size = direction === 'up' ? rise : Math.abs(rise);
    const back = next !== undefined && Math.sign(next) === -Math.sign(rise) && Math.abs(next) > 0.6 * Math.abs(rise);
    const afterSpike = index >= 2 && Math.abs((rises[index - 2] ?? 0) + rise) < 0.4 * Math.abs(rise);
    if (size >= least && !back && !afterSpike && block.length > 0) {
      blocks.push(block);
      block = [];
    }
    block.push(point);
  }
  blocks.push(block);
  return blocks;
}
