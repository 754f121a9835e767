/**
 * JSON with sorted keys: two values have the same text exactly when they are the same data.
 * A property that is `undefined` counts as absent, as it does in JSON.
 * @throws TypeError for anything that JSON cannot carry unchanged (NaN, infinities, functions, cycles): such a value
 * must never reach the record.
 */
export function canonicalText(value: unknown): string {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError('canonicalText requires finite numbers');
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value === 'object') {
    // By tag and not by prototype: what comes out of the database may belong to another realm.
    if (Object.prototype.toString.call(value) !== '[object Object]') throw new TypeError('canonicalText requires plain data');
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonicalText(member)}`);
    return `{${members.join(',')}}`;
  }
  throw new TypeError(`canonicalText requires plain data, not ${typeof value}`);
}

/** Whether two plain values are the same data. @throws TypeError as {@link canonicalText}. */
export function sameContent(a: unknown, b: unknown): boolean {
  return canonicalText(a) === canonicalText(b);
}
