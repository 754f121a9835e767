/**
 * JSON with sorted keys: the same data has the same text on every device, so that a tie can be broken alike everywhere.
 * @throws RangeError "canonicalText requires plain JSON data" for NaN, infinities, functions and the like
 */
export function canonicalText(value: unknown): string {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value !== 'object') throw new RangeError('canonicalText requires plain JSON data');
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonicalText(member)}`);
  return `{${members.join(',')}}`;
}
