import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Display,
  displayUnit,
  formatAgainst,
  formatQuantity,
  roundedText,
  speakAgainst,
  speakQuantity,
} from '../../../src/domain/quantity/format.ts';
import { fromSI, toSI, UNITS, type UnitId } from '../../../src/domain/quantity/units.ts';

const display = fc.constantFrom<Display>('us', 'metric');
const unit = fc.constantFrom<UnitId>('psi', '32nds', 'V', 'in', 'F-diff', 'lb', 'ppm', 'lb-ft', 'F', 'year', 'count');
const numberIn = (text: string) => Number(/^-?\d+(\.\d+)?/.exec(text)?.[0]);

describe('what is shown beside a limit', () => {
  it('stands on the same side of it as the value', () => {
    fc.assert(
      fc.property(
        unit,
        display,
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (id, shown, limit, offset) => {
          const value = limit + offset ** 5;
          const text = formatAgainst(toSI(value, id), toSI(limit, id), id, shown);
          const inUnit = (x: number) => fromSI(toSI(x, id), displayUnit(id, shown));
          const difference = inUnit(value) - inUnit(limit);
          // Far below a billionth of what is read: no gauge shows it and the judge takes it for equal.
          fc.pre(Math.abs(difference) > 1e-8 * Math.abs(inUnit(limit)));
          const decimals = (/\.(\d+)/.exec(text)?.[1] ?? '').length;
          const scale = 10 ** decimals;
          const limitShown = Math.round(inUnit(limit) * scale) / scale;
          expect(Math.sign(numberIn(text) - inUnit(limit))).toBe(Math.sign(difference));
          expect(Math.sign(numberIn(text) - limitShown)).not.toBe(-Math.sign(difference));
        },
      ),
      { numRuns: 4000 },
    );
  });

  it.each<[number, number, UnitId, Display, string]>([
    [58.46, 58.5, 'psi', 'us', '58.46 psi'],
    [58.2, 58.5, 'psi', 'us', '58.2 psi'],
    [58.5, 58.5, 'psi', 'us', '58.5 psi'],
    [1.99, 2, '32nds', 'us', '1.99/32 in'],
    [12.396, 12.4, 'V', 'us', '12.396 V'],
  ])('%d against %d %s reads %s', (value, limit, id, shown, text) => {
    expect(formatAgainst(toSI(value, id), toSI(limit, id), id, shown)).toBe(text);
  });
});

describe('format', () => {
  it.each<[number, UnitId, Display, string]>([
    [62, 'psi', 'us', '62 psi'],
    [62.5, 'psi', 'us', '62.5 psi'],
    [65, 'psi', 'metric', '448 kPa'],
    [5, '32nds', 'us', '5/32 in'],
    [5, '32nds', 'metric', '4 mm'],
    [100, 'lb-ft', 'metric', '136 N·m'],
    [12.6, 'V', 'metric', '12.6 V'],
    [-20, 'F', 'us', '-20 °F'],
    [-20, 'F', 'metric', '-29 °C'],
    [0, 'F', 'us', '0 °F'],
    [3500, 'lb', 'metric', '1587.6 kg'],
  ])('%d %s in %s is "%s"', (value, id, shown, text) => {
    expect(formatQuantity(toSI(value, id), id, shown)).toBe(text);
  });

  it('rounds half away from zero and knows no minus nought', () => {
    expect(roundedText(62.25, 1)).toBe('62.3');
    expect(roundedText(-62.25, 1)).toBe('-62.3');
    expect(roundedText(1.005, 2)).toBe('1.01');
    expect(roundedText(-0.04, 1)).toBe('0');
  });

  it('refuses what is no number', () => {
    expect(() => formatQuantity(Number.NaN, 'psi', 'us')).toThrow(RangeError);
  });
});

describe('speech', () => {
  it.each<[number, UnitId, Display, string]>([
    [62, 'psi', 'us', '62 pounds'],
    [1, 'psi', 'us', '1 pound'],
    [5, '32nds', 'us', '5 thirty-seconds'],
    [-12, 'F', 'us', '12 below'],
    [1, 'F', 'us', '1 degree'],
    [100, 'lb-ft', 'us', '100 foot-pounds'],
    [-20, 'C', 'metric', '20 below Celsius'],
  ])('%d %s in %s is "%s"', (value, id, shown, text) => {
    expect(speakQuantity(toSI(value, id), id, shown)).toBe(text);
  });

  it('says the same number as is shown', () => {
    fc.assert(
      fc.property(
        unit,
        display,
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 300, noNaN: true }),
        (id, shown, a, b) => {
          fc.pre(UNITS[id].dimension !== 'temperature');
          const [value, limit] = [toSI(a, id), toSI(b, id)];
          expect(numberIn(speakAgainst(value, limit, id, shown))).toBe(numberIn(formatAgainst(value, limit, id, shown)));
        },
      ),
    );
  });
});
