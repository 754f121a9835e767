import { expect, it } from 'vitest';
import { sameContent } from '../../../src/record/sameContent.ts';

it('does not depend on the order of properties, but on that of a list', () => {
  expect(sameContent({ a: 1, b: [1, 2] }, { b: [1, 2], a: 1 })).toBe(true);
  expect(sameContent([1, 2], [2, 1])).toBe(false);
  expect(sameContent({ a: undefined }, {})).toBe(true);
  expect(sameContent({ a: null }, {})).toBe(false);
});

it.each([[Number.NaN], [Number.POSITIVE_INFINITY], [() => 1], [1n]])('refuses %s', (value) => {
  expect(() => sameContent({ deep: [value] }, {})).toThrow(RangeError);
});
