import type { Point } from './theilSen.ts';

export interface LinearRegression {
  readonly slope: number;
  readonly slopeSe: number;
  /** Level of the last block's line at t = 0. */
  readonly intercept: number;
  readonly interceptSe: number;
  readonly residualSd: number;
  readonly residualSs: number;
  /** Share of the variation explained, about the mean (about 0 through the origin). */
  readonly r2: number;
  readonly df: number;
  /** Of the last block: number of points and mean t; of all: sum of squares of t within blocks. */
  readonly n: number;
  readonly meanT: number;
  readonly meanX: number;
  readonly sxx: number;
}

/**
 * Least-squares line; with several blocks, one slope and a level for each block.
 *
 * Shape: blocks of points; a tire that is pumped up starts a new block: its level changes, its leak does not. Centered
 * before summing, so that times far from 0 lose no digits. Not mutated. Pure.
 * Method: slope = sum Stx / sum Stt over blocks; residual df = n - blocks - 1.
 * Source: NIST/SEMATECH e-Handbook 4.1.4.1; checked with NIST StRD Norris.
 * @returns null with fewer than three points in all, fewer than one spare degree of freedom, or all at one time
 * @throws RangeError "linearRegression requires finite points"
 */
export function linearRegression(blocks: readonly (readonly Point[])[]): LinearRegression | null {
  const used = blocks.filter((block) => block.length > 0);
  const last = used.at(-1);
  const total = used.reduce((sum, block) => sum + block.length, 0);
  const df = total - used.length - 1;
  if (!last || df < 1) return null;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  const means = used.map((block) => {
    const t = mean(block.map((point) => point.t));
    const x = mean(block.map((point) => point.x));
    if (!Number.isFinite(t + x)) throw new RangeError('linearRegression requires finite points');
    for (const point of block) {
      sxx += (point.t - t) ** 2;
      sxy += (point.t - t) * (point.x - x);
      syy += (point.x - x) ** 2;
    }
    return { t, x };
  });
  const lastMean = means.at(-1);
  if (!(sxx > 0) || !lastMean) return null;
  const slope = sxy / sxx;
  let residualSs = 0;
  for (const [index, block] of used.entries()) {
    const center = means[index] ?? lastMean;
    for (const point of block) residualSs += (point.x - center.x - slope * (point.t - center.t)) ** 2;
  }
  const residualSd = Math.sqrt(residualSs / df);
  return {
    slope,
    slopeSe: residualSd / Math.sqrt(sxx),
    intercept: lastMean.x - slope * lastMean.t,
    interceptSe: residualSd * Math.sqrt(1 / last.length + lastMean.t ** 2 / sxx),
    residualSd,
    residualSs,
    r2: syy === 0 ? 0 : 1 - residualSs / syy,
    df,
    n: last.length,
    meanT: lastMean.t,
    meanX: lastMean.x,
    sxx,
  };
}

/**
 * Least-squares line through the origin, x = slope t.
 *
 * Source: NIST StRD NoInt1, which it is checked with.
 * @returns null with fewer than two points or all at t = 0
 * @throws RangeError "regressionThroughOrigin requires finite points"
 */
export function regressionThroughOrigin(points: readonly Point[]): {
  readonly slope: number;
  readonly slopeSe: number;
  readonly residualSd: number;
  readonly residualSs: number;
  readonly r2: number;
  readonly df: number;
} | null {
  let tt = 0;
  let tx = 0;
  let xx = 0;
  for (const { t, x } of points) {
    if (!Number.isFinite(t + x)) throw new RangeError('regressionThroughOrigin requires finite points');
    tt += t * t;
    tx += t * x;
    xx += x * x;
  }
  const df = points.length - 1;
  if (df < 1 || tt === 0) return null;
  const slope = tx / tt;
  const residualSs = points.reduce((sum, { t, x }) => sum + (x - slope * t) ** 2, 0);
  const residualSd = Math.sqrt(residualSs / df);
  return { slope, slopeSe: residualSd / Math.sqrt(tt), residualSd, residualSs, r2: xx === 0 ? 0 : 1 - residualSs / xx, df };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
