/** What may be kept and saved: plain JSON data. */

/**
 * Ends quietly for data that JSON can carry, without writing them out: over twelve years of plans that is minutes of text.
 * @param seen objects known to be plain, and filled up: a part that a thousand plans share is looked at once
 * @throws RangeError "plain JSON data required" for NaN, infinities, functions and the like
 */
export function requirePlain(value: unknown, seen?: WeakSet<object>): void {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return;
  if (typeof value === 'number' && Number.isFinite(value)) return;
  if (typeof value !== 'object') throw new RangeError('plain JSON data required');
  if (seen?.has(value)) return;
  if (Array.isArray(value)) for (const item of value) requirePlain(item, seen);
  else
    for (const key of Object.keys(value)) {
      const member = (value as Record<string, unknown>)[key];
      if (member !== undefined) requirePlain(member, seen);
    }
  seen?.add(value);
}
