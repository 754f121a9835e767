import type { Point } from './theilSen.ts';

/** Gain in fit that a bend must bring before it is believed: an F ratio with one degree of freedom, about 0.2 % by chance. */
const BELIEVED = 10;
const FEWEST_AFTER = 3;

/**
 * Where something that was steady began to drift: the points from the bend on, or all of them where there is none.
 *
 * A leak that began last month, told as an average over a steady year, would reach its limit far too late.
 *
 * Shape: points in order of time. Not mutated. Pure. Cost: quadratic.
 * Method: least squares of a level that turns into a slope at a bend, x = a + b max(0, t - h), for every h; taken over the
 * straight line when it fits clearly better.
 */
export function sinceBend(points: readonly Point[]): readonly Point[] {
  const n = points.length;
  if (n < 8) return points;
  const line = residualSquares(points, Number.NEGATIVE_INFINITY);
  let best = line;
  let from = 0;
  for (let index = 1; index <= n - FEWEST_AFTER - 1; index++) {
    const squares = residualSquares(points, points[index]?.t ?? 0);
    if (squares >= best) continue;
    best = squares;
    from = index;
  }
  const spare = best / (n - 3);
  return from > 0 && line - best > BELIEVED * Math.max(spare, 1e-12) ? points.slice(from) : points;
}

/** Residual sum of squares with the bend at h; a straight line for h before every point. */
function residualSquares(points: readonly Point[], h: number): number {
  const first = points[0]?.t ?? 0;
  const bend = Math.max(h, first);
  const n = points.length;
  let meanZ = 0;
  let meanX = 0;
  for (const { t, x } of points) {
    meanZ += Math.max(0, t - bend) / n;
    meanX += x / n;
  }
  let zz = 0;
  let zx = 0;
  let xx = 0;
  for (const { t, x } of points) {
    const z = Math.max(0, t - bend) - meanZ;
    zz += z * z;
    zx += z * (x - meanX);
    xx += (x - meanX) ** 2;
  }
  return zz === 0 ? xx : xx - (zx * zx) / zz;
}
