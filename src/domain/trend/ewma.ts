export interface EwmaPoint {
  readonly value: number;
  /** Control limits at this point. */
  readonly lower: number;
  readonly upper: number;
  readonly out: boolean;
}

export interface EwmaOptions {
  /** Weight of the newest value, 0 < weight <= 1. */
  readonly weight: number;
  readonly target: number;
  readonly sigma: number;
  /** Half-width of the limits in standard deviations of the average. */
  readonly width: number;
  /** `steady`: the limits that are reached after many values; `growing`: exact from the first value on. */
  readonly limits: 'steady' | 'growing';
}

/**
 * Exponentially weighted moving average chart: sees a small lasting shift that single readings hide.
 *
 * Shape: one point per value. Not mutated. Pure.
 * Method: z_t = w x_t + (1 - w) z_(t-1), z_0 = target; limits target +- k sigma sqrt(w / (2 - w)), times
 * sqrt(1 - (1 - w)^(2t)) for `growing`.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.
 * @throws RangeError "ewma requires finite values, 0 < weight <= 1, sigma >= 0 and width > 0"
 */
export function ewma(values: readonly number[], { weight, target, sigma, width, limits }: EwmaOptions): EwmaPoint[] {
  if (
    !(weight > 0 && weight <= 1) ||
    !(sigma >= 0) ||
    !(width > 0) ||
    !Number.isFinite(target) ||
    !values.every(Number.isFinite)
  ) {
    throw new RangeError('ewma requires finite values, 0 < weight <= 1, sigma >= 0 and width > 0');
  }
  let value = target;
  return values.map((x, index) => {
    value = weight * x + (1 - weight) * value;
    const grown = limits === 'steady' ? 1 : 1 - (1 - weight) ** (2 * (index + 1));
    const half = width * sigma * Math.sqrt((weight / (2 - weight)) * grown);
    return { value, lower: target - half, upper: target + half, out: Math.abs(value - target) > half };
  });
}
