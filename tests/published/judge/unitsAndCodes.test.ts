/**
 * Units against NIST SP 811 (2008), appendix B.8 (its seven-digit factors); VIN against the samples of 49 CFR 565.15(c) and
 * of the agency's guide for new makers; tire date codes against 49 CFR 574.5(b)(3) and its example; ice against Minnesota's
 * guidance of December 2024.
 */
import { describe, expect, it } from 'vitest';
import { clearIceEquivalent } from '../../../src/domain/judge/rules/ice.ts';
import { convert, fromSI, toSI, type UnitId } from '../../../src/domain/quantity/units.ts';
import { readDotCode } from '../../../src/domain/unit/dotCode.ts';
import { checkVin, vinCheckDigit } from '../../../src/domain/unit/vin.ts';

describe('NIST SP 811, appendix B.8', () => {
  it.each<[UnitId, UnitId, number]>([
    ['in', 'm', 2.54e-2],
    ['ft', 'm', 3.048e-1],
    ['mi', 'm', 1.609344e3],
    ['lb', 'kg', 4.535924e-1],
    ['lbf', 'N', 4.448222],
    ['psi', 'Pa', 6.894757e3],
    ['psi', 'kPa', 6.894757],
    ['bar', 'Pa', 1e5],
    ['lb-ft', 'N-m', 1.355818],
    ['lb-in', 'N-m', 1.129848e-1],
    ['gal', 'L', 3.785412],
    ['mph', 'km/h', 1.609344],
    ['mph', 'm/s', 4.4704e-1],
    ['Ah', 's' as UnitId, 3.6e3],
    ['BTU', 'J', 1.055056e3],
    ['BTU/h', 'W', 2.930711e-1],
  ])('one %s is %s × %d', (from, to, printed) => {
    const factor = from === 'Ah' ? toSI(1, 'Ah') : convert(1, from, to);
    expect(Math.abs(factor / printed - 1)).toBeLessThan(5e-7);
  });

  it.each<[number, UnitId, number, UnitId]>([
    [-40, 'F', -40, 'C'],
    [32, 'F', 0, 'C'],
    [-20, 'F', -28.889, 'C'],
    [70, 'F', 294.261, 'K'],
    [-28, 'C', -18.4, 'F'],
    [65, 'psi', 4.4816, 'bar'],
    [450, 'kPa', 65.27, 'psi'],
    [20, 'gal', 75.708, 'L'],
    [10_000, 'lb', 4535.9, 'kg'],
    [3, '32nds', 2.38125, 'mm'],
    [120, 'N-m', 88.51, 'lb-ft'],
    [100, 'mi', 160.93, 'km'],
  ])('%d %s is %d %s', (value, from, expected, to) => {
    expect(Math.abs(convert(value, from, to) - expected)).toBeLessThan(0.006 * Math.max(1, Math.abs(expected) / 100));
  });

  it('a degree of difference has no zero point: 9 °F are 5 °C', () => {
    expect(convert(9, 'F-diff', 'C-diff')).toBeCloseTo(5, 12);
  });
});

describe('VIN check digit, 49 CFR 565.15(c)', () => {
  it.each([
    ['1M8GDM9AXKP042788', 'X', 'the usual worked example, sum 351'],
    ['1G4AH59H45G118341', '4', 'the regulation’s own sample, sum 411'],
    ['1J9RP1A36A1644345', '6', 'a trailer in the agency’s guide, sum 314'],
    ['11111111111111111', '1', 'all ones, sum 89'],
  ])('%s has %s: %s', (vin, digit) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(checkVin(vin).ok).toBe(true);
  });

  it.each([
    ['1M8GDM9A0KP042788', 'wrong digit'],
    ['1M8GDM9AXKP042789', 'last character wrong'],
    ['1M8GDM9AXKP047288', 'two swapped'],
  ])('%s is refused: %s', (vin) => {
    expect(checkVin(vin).ok).toBe(false);
  });

  it('letters of one value pass for each other, so it must be read back: A heard as J', () => {
    expect(checkVin('1M8GDM9JXKP042788').ok).toBe(true);
  });
});

describe('date code, 49 CFR 574.5(b)(3): week 01 is the first full week, Sunday to Saturday', () => {
  const NOW = Date.UTC(2026, 10, 25);
  it.each([
    ['0109', '2009-01-04'],
    ['5208', '2008-12-28'],
    ['0117', '2017-01-01'],
    ['2220', '2020-05-31'],
    ['3623', '2023-09-03'],
    ['5323', '2023-12-31'],
    ['0126', '2026-01-04'],
  ])('%s begins on %s', (code, sunday) => {
    const read = readDotCode(code, NOW);
    expect(read.ok && new Date(read.startsAt).toISOString().slice(0, 10)).toBe(sunday);
  });

  it.each(['5324', '5309', '0023', '5423', '4899', '3197', '318', ''])('"%s" is no week, or not yet', (code) => {
    expect(readDotCode(code, NOW).ok).toBe(false);
  });
});

describe('ice, Minnesota guidance', () => {
  it('white ice counts half: 14 clear and 6 white are 17, short of 20', () => {
    expect(fromSI(clearIceEquivalent(toSI(14, 'in'), toSI(6, 'in')), 'in')).toBeCloseTo(17, 9);
  });
});
