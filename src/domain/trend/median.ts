/**
 * Median: the middle of the sorted values, or the mean of the two in the middle.
 *
 * Not mutated. Pure. Cost: one sort.
 * @param values at least one finite number
 * @throws RangeError "median requires at least one finite value"
 */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return medianSorted(sorted);
}

/**
 * Median of values already in ascending order.
 * @throws RangeError "median requires at least one finite value"
 */
export function medianSorted(sorted: ArrayLike<number>): number {
  const { length } = sorted;
  const upper = sorted[length >> 1];
  const lower = sorted[(length - 1) >> 1];
  if (upper === undefined || lower === undefined || !Number.isFinite(lower + upper)) {
    throw new RangeError('median requires at least one finite value');
  }
  return length % 2 === 1 ? upper : (lower + upper) / 2;
}

/**
 * Median absolute deviation from the median, unscaled.
 * @param values at least one finite number
 * @throws RangeError "median requires at least one finite value"
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>): number {
  const center = median(values);
  return median(Array.from(values, (value) => Math.abs(value - center)));
}

/** Makes the median absolute deviation estimate a normal standard deviation: 1 / Phi^-1(3/4). */
export const MAD_TO_SIGMA = 1.482602218505602;
