import { normalCdf } from './normal.ts';

export interface MannKendall {
  /** Later-above-earlier pairs minus later-below-earlier pairs. */
  readonly s: number;
  readonly variance: number;
  /** Normal score with continuity correction; 0 when s is 0. */
  readonly z: number;
  /** Two-sided chance of an s at least as far from 0 without any trend. */
  readonly p: number;
  readonly exact: boolean;
}

/** Up to this many values without ties the p-value is exact. */
const EXACT_UP_TO = 10;

/**
 * Mann–Kendall test: is there any steady rise or fall, whatever its shape?
 *
 * Shape: blocks of values in order of time; pairs are only formed within a block, so that a tire pumped up between two
 * blocks counts neither as a rise nor as a fall. One block is the plain test. Cost: quadratic in a block's length.
 * Method: S = sum sign(xj - xi), i < j; variance with the correction for ties; exact p for one block of at most ten values
 * without ties, else normal with continuity correction. For several blocks S and variances add up.
 * Source: Gilbert, *Statistical Methods for Environmental Pollution Monitoring* (1987), ch. 16; sum over blocks: Hirsch,
 * Slack & Smith, Water Resources Research 18(1), 1982 (from memory).
 * @param blocks finite values, oldest first
 * @returns p = 1 for fewer than two values
 * @throws RangeError "mannKendall requires finite values"
 */
export function mannKendall(blocks: readonly (readonly number[])[]): MannKendall {
  let s = 0;
  let variance = 0;
  let ties = false;
  let longest = 0;
  let used = 0;
  for (const block of blocks) {
    if (!block.every(Number.isFinite)) throw new RangeError('mannKendall requires finite values');
    if (block.length < 2) continue;
    used++;
    longest = Math.max(longest, block.length);
    s += scoreOf(block);
    const tieTerm = tieSum(block);
    ties ||= tieTerm > 0;
    const n = block.length;
    variance += (n * (n - 1) * (2 * n + 5) - tieTerm) / 18;
  }
  if (variance <= 0) return { s, variance: 0, z: 0, p: 1, exact: false };
  const z = s === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  const exact = used === 1 && !ties && longest <= EXACT_UP_TO;
  const p = exact ? Math.min(1, 2 * exactUpperTail(longest, Math.abs(s))) : Math.min(1, 2 * (1 - normalCdf(Math.abs(z))));
  return { s, variance, z, p: s === 0 ? 1 : p, exact };
}

function scoreOf(values: readonly number[]): number {
  let s = 0;
  for (let later = 1; later < values.length; later++) {
    const b = values[later] ?? 0;
    for (let earlier = 0; earlier < later; earlier++) s += Math.sign(b - (values[earlier] ?? 0));
  }
  return s;
}

/** Sum of t (t - 1)(2 t + 5) over groups of t equal values. */
function tieSum(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let sum = 0;
  for (const t of counts.values()) sum += t * (t - 1) * (2 * t + 5);
  return sum;
}

/**
 * Exact chance that S is at least s among all orders of n different values.
 *
 * Method: S = n (n - 1) / 2 - 2 inversions; the number of orders with k inversions by the usual recursion; exact.
 * Source: same table as Gilbert (1987) A18 / Hollander & Wolfe A.21.
 * @param n 2 .. 20
 * @param s any integer
 */
export function exactUpperTail(n: number, s: number): number {
  if (!Number.isInteger(n) || n < 2 || n > 20) throw new RangeError('exactUpperTail requires n between 2 and 20');
  let counts = [1];
  for (let size = 2; size <= n; size++) {
    const next: number[] = new Array(counts.length + size - 1).fill(0);
    for (const [inversions, count] of counts.entries()) {
      for (let added = 0; added < size; added++) next[inversions + added] = (next[inversions + added] ?? 0) + count;
    }
    counts = next;
  }
  const pairs = (n * (n - 1)) / 2;
  let orders = 0;
  let reaching = 0;
  for (const [inversions, count] of counts.entries()) {
    orders += count;
    if (pairs - 2 * inversions >= s) reaching += count;
  }
  return reaching / orders;
}
