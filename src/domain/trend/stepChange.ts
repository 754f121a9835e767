import { median } from './median.ts';

export interface StepChange {
  /** Index of the first value after the step. */
  readonly at: number;
  /** Median after minus median before, in the values' unit. */
  readonly size: number;
  /** Approximate two-sided chance without any step. */
  readonly p: number;
}

/**
 * Pettitt's test for one step: when did a level change once and stay changed?
 *
 * Shape: values in order of time. Not mutated. Pure. Cost: quadratic.
 * Method: K = max over t of |sum over i <= t < j of sign(xi - xj)|; p = 2 exp(-6 K^2 / (n^3 + n^2)), good below 0.5.
 * Source: Pettitt, "A non-parametric approach to the change-point problem", Applied Statistics 28(2), 1979 (from memory;
 * checked with the Nile flows, whose step after 1898 is Cobb's, Biometrika 65, 1978).
 * @returns null with fewer than six values, or where all are equal
 * @throws RangeError "stepChange requires finite values"
 */
export function stepChange(values: readonly number[]): StepChange | null {
  if (!values.every(Number.isFinite)) throw new RangeError('stepChange requires finite values');
  const n = values.length;
  if (n < 6) return null;
  let running = 0;
  let best = 0;
  let at = 0;
  for (let split = 1; split < n; split++) {
    const moved = values[split - 1] ?? 0;
    for (const other of values) running += Math.sign(moved - other);
    if (Math.abs(running) > best) {
      best = Math.abs(running);
      at = split;
    }
  }
  if (best === 0) return null;
  const size = median(values.slice(at)) - median(values.slice(0, at));
  return { at, size, p: Math.min(1, 2 * Math.exp((-6 * best * best) / (n ** 3 + n ** 2))) };
}
