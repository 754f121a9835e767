import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heaterReport } from '../../../src/domain/heat/heaterReport.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';

const F = (value: number) => toSI(value, 'F');
const readings = (...temperatures: number[]) => temperatures.map((f, index) => ({ s: index * 600, temperatureK: F(f) }));
const report = (temperatures: number[], outside: number | null, night: number | null, earlier: number[] = []) =>
  heaterReport({
    readings: readings(...temperatures),
    outsideK: outside === null ? null : F(outside),
    tonightK: night === null ? null : F(night),
    earlierK: earlier.map((rise) => toSI(rise, 'F-diff')),
    display: 'us',
  });

describe('a heater test', () => {
  it('with one reading asks for another', () => {
    expect(report([20], 0, -10).sentences[0]).toContain('again ten minutes later');
  });

  it('with two gives a rate and, with earlier tests, a comparison', () => {
    const two = report([20, 25], 0, -10, [14, 15, 16]);
    expect(two.facts[0]).toEqual({ label: 'rise in an hour', text: '30 °F' });
    expect(two.sentences).toEqual(['It warms much more slowly than it used to. Look at gas, battery and burner.']);
  });

  it.each([
    // Ends at 66.7 °F from 0 outside: a gain of 66.7, the range from 62.
    [[20, 34, 43.8], 0, 'it may just hold 65 degrees'],
    [[20, 34, 43.8], 10, 'it holds 65 degrees'],
    [[20, 34, 43.8], -30, 'it will not hold 65 degrees: about 37 degrees is the most'],
  ] as const)('%j with a night of %d °F', (temperatures, night, words) => {
    expect(report([...temperatures], 0, night).sentences.join(' ')).toContain(words);
  });

  it('says nothing about tonight without the forecast or the air outside', () => {
    expect(report([20, 34, 43.8], 0, null).sentences).toEqual([]);
    expect(report([20, 34, 43.8], null, -10).sentences).toEqual([]);
  });

  it('never says what is no number', () => {
    const any = fc.record({ s: fc.double(), temperatureK: fc.double() });
    fc.assert(
      fc.property(
        fc.array(any, { maxLength: 6 }),
        fc.option(fc.double()),
        fc.option(fc.double()),
        fc.array(fc.double()),
        (r, o, t, e) => {
          const { sentences, facts } = heaterReport({ readings: r, outsideK: o, tonightK: t, earlierK: e, display: 'metric' });
          const text = JSON.stringify([sentences, facts]);
          expect(text).not.toMatch(/NaN|Infinity|null/);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
