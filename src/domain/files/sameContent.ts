import { requirePlain } from './plain.ts';

/**
 * Whether two plain values are the same data, whatever the order of their properties. A property that is `undefined` is none.
 * @throws RangeError for what JSON cannot carry (NaN, infinities, functions)
 */
export function sameContent(a: unknown, b: unknown): boolean {
  requirePlain(a);
  requirePlain(b);
  return same(a, b);
}

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((item, index) => same(item, b[index]));
  }
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  let members = 0;
  for (const key of Object.keys(left)) {
    if (left[key] === undefined) continue;
    if (!Object.hasOwn(right, key) || !same(left[key], right[key])) return false;
    members++;
  }
  for (const key of Object.keys(right)) if (right[key] !== undefined) members--;
  return members === 0;
}
