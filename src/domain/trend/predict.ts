import type { LinearRegression } from './linearRegression.ts';
import { studentTQuantile } from './studentT.ts';

export interface Prediction {
  readonly value: number;
  /** Where the line itself lies. */
  readonly mean: readonly [low: number, high: number];
  /** Where one more reading would lie. */
  readonly reading: readonly [low: number, high: number];
}

/**
 * What a fitted line says at a time, with the uncertainty of the line and of one more reading.
 *
 * Method: x +- t(1 - a/2, df) s sqrt([1 +] 1/n + (t - mean t)^2 / Sxx).
 * Source: NIST/SEMATECH e-Handbook 4.5.1 (from memory); checked through NIST StRD Norris, where the standard error of the
 * line at 0 must be that of the certified intercept.
 * @param confidence two-sided, 0 < confidence < 1
 */
export function predict(fit: LinearRegression, t: number, confidence: number): Prediction {
  const value = fit.meanX + fit.slope * (t - fit.meanT);
  const factor = studentTQuantile((1 + confidence) / 2, fit.df) * fit.residualSd;
  const lever = 1 / fit.n + (t - fit.meanT) ** 2 / fit.sxx;
  const line = factor * Math.sqrt(lever);
  const one = factor * Math.sqrt(1 + lever);
  return { value, mean: [value - line, value + line], reading: [value - one, value + one] };
}
