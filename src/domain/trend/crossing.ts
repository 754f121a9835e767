import type { LinearRegression } from './linearRegression.ts';
import { studentTQuantile } from './studentT.ts';

export interface Crossing {
  readonly t: number;
  readonly earliest: number;
  readonly latest: number;
}

/**
 * When a fitted line reaches a level, with a confidence interval for that time.
 *
 * Method: Fieller's theorem, the two times at which the confidence band of the line meets the level:
 * (slope^2 - g) u^2 - 2 slope d u + d^2 - c^2 / n = 0 with u = t - mean t, d = level - mean x, c = t-quantile times s and
 * g = c^2 / Sxx. Exact for normal errors.
 * Source: Fieller, J. R. Stat. Soc. B 16(2), 1954; as inverse prediction in Draper & Smith, *Applied Regression Analysis*
 * (both from memory). Its coverage is measured in `tests/bench/trend.ts`.
 * @param confidence two-sided, 0 < confidence < 1
 * @returns null where the slope is not different from 0 at that confidence: then no time can be given at all
 */
export function crossing(fit: LinearRegression, level: number, confidence: number): Crossing | null {
  const quantile = studentTQuantile((1 + confidence) / 2, fit.df);
  const c = quantile * fit.residualSd;
  const a = fit.slope ** 2 - (c * c) / fit.sxx;
  if (!(a > 0) || !Number.isFinite(level)) return null;
  const d = level - fit.meanX;
  const root = Math.sqrt(Math.max(0, (fit.slope * d) ** 2 - a * (d * d - (c * c) / fit.n)));
  const first = (fit.slope * d - root) / a;
  const second = (fit.slope * d + root) / a;
  return { t: fit.meanT + d / fit.slope, earliest: fit.meanT + first, latest: fit.meanT + second };
}
