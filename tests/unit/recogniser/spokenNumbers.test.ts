import { describe, expect, it } from 'vitest';
import type { NumberForm } from '../../../src/domain/checks/expects.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../../src/domain/language/meaning.ts';
import { decimalForms, digitForms, quarterForms, wholeForms, yearForms } from '../../../src/speech/recogniser/spokenNumbers.ts';

const said = (forms: readonly { readonly words: readonly string[] }[]) => forms.map(({ words }) => words.join(' '));

const reading = (max: number, forms: readonly NumberForm[]): InterpretContext => ({
  expects: {
    kind: 'reading',
    quantity: 'test',
    unit: 'psi',
    otherUnits: [],
    min: 0,
    max,
    step: forms.includes('quarter') ? 0.25 : forms.includes('tenth') ? 0.01 : 1,
    forms,
    usual: { min: 0, max },
  },
  names: [],
  position: null,
  positions: [],
  others: [],
  last: null,
  previous: null,
  mode: 'answer',
});

const meaningOf = (text: string, max: number, ...forms: readonly NumberForm[]) => {
  const meaning = interpret(text, reading(max, forms));
  return meaning.intent === 'reading' ? meaning.readings.map(({ value }) => value) : [meaning.intent];
};

describe('how numbers are said', () => {
  it('says a hundred and five in the ways Americans do', () => {
    expect(said(wholeForms(105))).toEqual(
      expect.arrayContaining(['one hundred five', 'one hundred and five', 'a hundred five', 'one oh five', 'one zero five']),
    );
  });

  it('says a number once in each way', () => {
    for (const value of [0, 7, 10, 42, 100, 105, 110, 999, 1000, 1250, 2000]) {
      const all = said(wholeForms(value));
      expect(new Set(all).size).toBe(all.length);
    }
  });

  it.each([0, 1, 9, 10, 15, 20, 21, 62, 99, 100, 101, 105, 110, 120, 125, 150, 200, 999, 1000, 1005, 1250, 1999])(
    'means %i in every form',
    (value) => {
      for (const text of said(wholeForms(value))) expect([text, meaningOf(text, 2000, 'whole')]).toEqual([text, [value]]);
    },
  );

  it('means the same decimal in every form, with and without the point', () => {
    for (const [whole, decimals, value] of [
      [12, '6', 12.6],
      [12, '65', 12.65],
      [12, '05', 12.05],
      [13, '0', 13],
      [9, '5', 9.5],
    ] as const) {
      for (const text of said(decimalForms(whole, decimals, true)))
        expect([text, meaningOf(text, 18, 'whole', 'tenth', 'hundredth', 'spoken-decimal')]).toEqual([text, [value]]);
    }
  });

  it('never leaves the point out where another number would be meant', () => {
    expect(said(decimalForms(20, '6', true))).not.toContain('twenty six');
    expect(said(decimalForms(100, '6', true)).every((text) => text.includes('point'))).toBe(true);
  });

  it('means the same fraction in every form', () => {
    for (const quarters of [1, 2, 3] as const) {
      for (const whole of [0, 3, 12, 62]) {
        for (const text of said(quarterForms(whole, quarters)))
          expect([text, meaningOf(text, 100, 'whole', 'half', 'quarter')]).toEqual([text, [whole + quarters / 4]]);
      }
    }
  });

  it('says digits one by one, nought as oh or zero', () => {
    expect(said(digitForms('20'))).toEqual(['two zero', 'two oh']);
  });

  it('says years as people do', () => {
    expect(said(yearForms(2009))).toEqual(
      expect.arrayContaining(['twenty oh nine', 'two thousand nine', 'two thousand and nine', 'oh nine']),
    );
    expect(said(yearForms(1998))).toContain('nineteen ninety eight');
  });

  it('refuses what is no whole number in range', () => {
    for (const value of [-1, 0.5, Number.NaN, 100_000]) expect(() => wholeForms(value)).toThrow(RangeError);
  });
});
