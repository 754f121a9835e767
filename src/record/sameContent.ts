import { canonicalText } from '../domain/files/canonical.ts';

/**
 * Whether two plain values are the same data, whatever the order of their properties.
 * @throws RangeError for what JSON cannot carry (NaN, infinities, functions)
 */
export function sameContent(a: unknown, b: unknown): boolean {
  return canonicalText(a) === canonicalText(b);
}
