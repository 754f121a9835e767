import fc from 'fast-check';
import { expect, it } from 'vitest';
import { canonicalText } from '../../../src/domain/files/canonical.ts';
import { requirePlain } from '../../../src/domain/files/plain.ts';
import { sameContent } from '../../../src/domain/files/sameContent.ts';

it('does not depend on the order of properties, but on that of a list', () => {
  expect(sameContent({ a: 1, b: [1, 2] }, { b: [1, 2], a: 1 })).toBe(true);
  expect(sameContent([1, 2], [2, 1])).toBe(false);
  expect(sameContent({ a: undefined }, {})).toBe(true);
  expect(sameContent({ a: null }, {})).toBe(false);
});

it.each([[Number.NaN], [Number.POSITIVE_INFINITY], [() => 1], [1n]])('refuses %s', (value) => {
  expect(() => sameContent({ deep: [value] }, {})).toThrow(RangeError);
});

const data = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom<unknown>(null, true, false, '', 'a', 0, 1, 1.5),
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('a', 'b', '__proto__', 'toString'), tie('value'), { maxKeys: 3 }),
  ),
})).value;

it('law: agrees with the canonical text, which breaks ties everywhere alike', () => {
  fc.assert(
    fc.property(data, data, (a, b) => {
      expect(sameContent(a, b)).toBe(canonicalText(a) === canonicalText(b));
      expect(sameContent(a, JSON.parse(JSON.stringify(a)))).toBe(true);
    }),
    { numRuns: 2000 },
  );
});

it('looks at a part that is shared once, and still finds what is wrong in another', () => {
  const seen = new WeakSet<object>();
  const part = { a: [1] };
  requirePlain([part, part], seen);
  expect(seen.has(part)).toBe(true);
  expect(() => requirePlain([part, { a: [Number.NaN] }], seen)).toThrow(RangeError);
});
