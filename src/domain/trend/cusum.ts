export interface CusumPoint {
  readonly high: number;
  readonly low: number;
  /** Which sum is beyond the decision interval; null for neither. */
  readonly signal: 'high' | 'low' | null;
}

export interface CusumOptions {
  readonly target: number;
  /** Slack per value, in the values' unit: half the shift worth finding. */
  readonly slack: number;
  /** A sum above this is a signal, in the values' unit. */
  readonly decision: number;
}

/**
 * Tabular CUSUM: adds up small departures from the target until they can no longer be chance.
 *
 * Shape: one point per value; both sums start at 0 and are never reset. Not mutated. Pure.
 * Method: high_t = max(0, high_(t-1) + x_t - target - slack), low_t = max(0, low_(t-1) + target - slack - x_t).
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3.
 * @throws RangeError "cusum requires finite values, slack >= 0 and decision > 0"
 */
export function cusum(values: readonly number[], { target, slack, decision }: CusumOptions): CusumPoint[] {
  if (!(slack >= 0) || !(decision > 0) || !Number.isFinite(target) || !values.every(Number.isFinite)) {
    throw new RangeError('cusum requires finite values, slack >= 0 and decision > 0');
  }
  let high = 0;
  let low = 0;
  return values.map((x) => {
    high = Math.max(0, high + x - target - slack);
    low = Math.max(0, low + target - slack - x);
    return { high, low, signal: high > decision && high >= low ? 'high' : low > decision ? 'low' : null };
  });
}
