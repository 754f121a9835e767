import { median, medianAbsoluteDeviation } from './median.ts';

/** Scores beyond this are called outliers (Iglewicz & Hoaglin). */
export const OUTLIER_SCORE = 3.5;

/**
 * Modified z-scores: how far each value lies from the rest, in robust standard deviations.
 *
 * Shape: one score per value, in order. Not mutated. Pure.
 * Method: 0.6745 (x - median) / MAD; where more than half the values are equal and MAD is 0, (x - median) / (1.253314 mean
 * absolute deviation); 0 for all when every value is equal. A floor under MAD keeps readings spoken in coarse steps from
 * looking impossibly exact.
 * Source: Iglewicz & Hoaglin, *How to Detect and Handle Outliers* (1993); also NIST/SEMATECH e-Handbook 1.3.5.17 (from memory).
 * @param values at least one finite number
 * @param floor least MAD, in the values' unit, >= 0; half the reading step is right for spoken readings
 * @throws RangeError for no values or a negative floor
 */
export function modifiedZ(values: readonly number[], floor = 0): number[] {
  if (!(floor >= 0)) throw new RangeError('modifiedZ requires a floor of at least 0');
  const center = median(values);
  const mad = Math.max(medianAbsoluteDeviation(values), floor);
  if (mad > 0) return values.map((value) => (0.6745 * (value - center)) / mad);
  const mean = values.reduce((sum, value) => sum + Math.abs(value - center), 0) / values.length;
  return values.map((value) => (mean === 0 ? 0 : (value - center) / (1.253314 * mean)));
}
