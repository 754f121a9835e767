import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, fromSI, isUnitId, toSI, UNITS, type UnitId } from '../../../src/domain/quantity/units.ts';

const ids = Object.keys(UNITS) as UnitId[];
const unit = fc.constantFrom(...ids);
const threeAlike = unit.chain((a) => {
  const alike = fc.constantFrom(...ids.filter((id) => UNITS[id].dimension === UNITS[a].dimension));
  return fc.tuple(fc.constant(a), alike, alike);
});
const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('conversions', () => {
  it('there and back is the same', () => {
    fc.assert(
      fc.property(unit, value, (id, x) => {
        const scale = Math.max(Math.abs(x), Math.abs(UNITS[id].offset / UNITS[id].factor), 1e-6);
        expect(Math.abs(fromSI(toSI(x, id), id) - x)).toBeLessThanOrEqual(1e-12 * scale);
      }),
    );
  });

  it('keeps order', () => {
    fc.assert(
      fc.property(unit, value, value, (id, a, b) => {
        fc.pre(a < b);
        expect(toSI(a, id)).toBeLessThanOrEqual(toSI(b, id));
      }),
    );
  });

  it('by way of a third unit is the same as straight', () => {
    fc.assert(
      fc.property(threeAlike, value, ([a, b, c], x) => {
        const straight = convert(x, a, c);
        const scale = Math.max(Math.abs(straight), Math.abs(convert(0, a, c)), Math.abs(convert(1, a, c)));
        expect(Math.abs(convert(convert(x, a, b), b, c) - straight)).toBeLessThanOrEqual(1e-9 * scale);
      }),
    );
  });

  it('of different things is refused', () => {
    fc.assert(
      fc.property(unit, unit, (a, b) => {
        fc.pre(UNITS[a].dimension !== UNITS[b].dimension);
        expect(() => convert(1, a, b)).toThrow(RangeError);
      }),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('%d is refused', (bad) => {
    expect(() => toSI(bad, 'psi')).toThrow(RangeError);
    expect(() => fromSI(bad, 'psi')).toThrow(RangeError);
  });

  it('knows its own names only', () => {
    expect(isUnitId('psi')).toBe(true);
    expect(isUnitId('toString')).toBe(false);
  });
});
