/**
 * Student's t distribution function: chance of a value at or below t.
 *
 * Method: regularized incomplete beta function I_x(df/2, 1/2) with x = df / (df + t^2), by its continued fraction;
 * absolute error below 1e-12.
 * Source: Abramowitz & Stegun 26.7.1 and NIST DLMF 8.17.22 (from memory).
 * @param t finite
 * @param df degrees of freedom, > 0
 * @throws RangeError "studentTCdf requires a finite t and df > 0"
 */
export function studentTCdf(t: number, df: number): number {
  if (!Number.isFinite(t) || !(df > 0)) throw new RangeError('studentTCdf requires a finite t and df > 0');
  const tail = 0.5 * regularizedBeta(df / (df + t * t), df / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

const known = new Map<string, number>();

/**
 * Value that Student's t stays at or below with chance p.
 *
 * Method: bisection on {@link studentTCdf}; relative error below 1e-10. Kept per (p, df), since a trend asks for few.
 * Source: checked against printed tables of t.
 * @param p 0 < p < 1
 * @param df degrees of freedom, >= 1
 * @throws RangeError "studentTQuantile requires 0 < p < 1 and df >= 1"
 */
export function studentTQuantile(p: number, df: number): number {
  if (!(p > 0 && p < 1) || !(df >= 1)) throw new RangeError('studentTQuantile requires 0 < p < 1 and df >= 1');
  if (p < 0.5) return -studentTQuantile(1 - p, df);
  const id = `${p} ${df}`;
  const before = known.get(id);
  if (before !== undefined) return before;
  let low = 0;
  let high = 1;
  while (studentTCdf(high, df) < p) high *= 2;
  for (let step = 0; step < 100 && high - low > 1e-14 * high; step++) {
    const middle = (low + high) / 2;
    if (studentTCdf(middle, df) < p) low = middle;
    else high = middle;
  }
  const found = (low + high) / 2;
  if (known.size < 1000) known.set(id, found);
  return found;
}

function regularizedBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** Modified Lentz evaluation of the continued fraction DLMF 8.17.22. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / orTiny(1 - ((a + b) * x) / (a + 1), tiny);
  let result = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / orTiny(1 + even * d, tiny);
    c = orTiny(1 + even / c, tiny);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / orTiny(1 + odd * d, tiny);
    c = orTiny(1 + odd / c, tiny);
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return result;
}

function orTiny(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}

/** Stirling's series after shifting the argument above 10; relative error below 1e-14 for x >= 0.5. */
function logGamma(x: number): number {
  let shift = 0;
  let y = x;
  while (y < 10) shift -= Math.log(y++);
  const inverse = 1 / (y * y);
  const series =
    (1 / 12 -
      inverse * (1 / 360 - inverse * (1 / 1260 - inverse * (1 / 1680 - inverse * (1 / 1188 - (inverse * 691) / 360_360))))) /
    y;
  return shift + (y - 0.5) * Math.log(y) - y + 0.5 * Math.log(2 * Math.PI) + series;
}
