import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText, sameContent } from '../../../src/record/sameContent.ts';

describe('canonicalText', () => {
  it('does not depend on the order of properties, but on that of a list', () => {
    expect(sameContent({ a: 1, b: [1, 2] }, { b: [1, 2], a: 1 })).toBe(true);
    expect(sameContent([1, 2], [2, 1])).toBe(false);
    expect(sameContent({ a: undefined }, {})).toBe(true);
    expect(sameContent({ a: null }, {})).toBe(false);
  });

  it('law: reads back as the same JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
        expect(JSON.parse(canonicalText(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  it.each([[Number.NaN], [Number.POSITIVE_INFINITY], [new Date(0)], [new Map()], [() => 1], [1n]])('refuses %s', (value) => {
    expect(() => canonicalText({ deep: [value] })).toThrow(TypeError);
  });
});
