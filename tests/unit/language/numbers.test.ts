import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReadingExpects } from '../../../src/domain/checks/expects.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext, Meaning } from '../../../src/domain/language/meaning.ts';
import { speakDigits, speakNumber, speakWhole, teenTyTwin } from '../../../src/domain/language/speakNumber.ts';
import { spokenForms } from '../../../src/domain/language/spokenForms.ts';
import { convert, type UnitId } from '../../../src/domain/quantity/units.ts';

const reading = (more: Partial<ReadingExpects> = {}): ReadingExpects => ({
  kind: 'reading',
  quantity: 'test',
  unit: 'psi',
  otherUnits: [],
  min: 0,
  max: 1000,
  step: 0.5,
  forms: ['whole', 'half'],
  usual: { min: 0, max: 1000 },
  ...more,
});

const contextFor = (expects: ReadingExpects): InterpretContext => ({
  expects,
  names: [],
  position: null,
  positions: [],
  others: [],
  last: null,
  previous: null,
  mode: 'answer',
});

/** The single value meant, in the unit asked for. */
function meantValue(meaning: Meaning, unit: UnitId = 'psi'): number | string {
  const [only] = meaning.intent === 'reading' && meaning.readings.length === 1 ? meaning.readings : [];
  return only ? convert(only.value, only.unit, unit) : meaning.intent === 'unclear' ? meaning.why : meaning.intent;
}

/** Forms that do not come back as the value they were made from. */
function lost(values: Iterable<number>, expects: ReadingExpects): string[] {
  const context = contextFor(expects);
  const wrong: string[] = [];
  for (const value of values) {
    for (const form of spokenForms(value, expects)) {
      const got = meantValue(interpret(form, context), expects.unit);
      if (typeof got !== 'number' || Math.abs(got - value) > 1e-9) wrong.push(`${value} as "${form}": ${got}`);
    }
  }
  return wrong;
}

const upTo = (highest: number, part: number): number[] => Array.from({ length: highest + 1 }, (_, whole) => whole + part);

/** A hundred thousand utterances and more; enough time for a slow machine. */
const ALL_MS = 120_000;

describe('numbers, in every spoken form that the grammar allows', { timeout: ALL_MS }, () => {
  it('whole, 0 to 999', () => {
    const expects = reading();
    expect(lost(upTo(999, 0), expects)).toEqual([]);
    expect(spokenForms(105, expects)).toEqual(
      expect.arrayContaining(['a hundred and five', 'one hundred five', 'one oh five', 'one zero five']),
    );
  });

  it('with halves, 0 to 999', () => {
    expect(lost(upTo(999, 0.5), reading())).toEqual([]);
    expect(spokenForms(62.5, reading())).toEqual(
      expect.arrayContaining(['sixty two and a half', 'sixty two point five', 'sixty two and one half']),
    );
  });

  it('with quarters, 0 to 999', () => {
    const expects = reading({ unit: 'in', forms: ['whole', 'half', 'quarter'], step: 0.25 });
    expect(lost([...upTo(999, 0.25), ...upTo(999, 0.75)], expects)).toEqual([]);
  });

  it('with tenths, 0 to 999', () => {
    const expects = reading({ forms: ['whole', 'tenth'], step: 0.1 });
    for (let tenth = 1; tenth < 10; tenth += 1) {
      const values = upTo(999, 0).map((whole) => Number(`${whole}.${tenth}`));
      expect(lost(values, expects)).toEqual([]);
    }
  });

  it('with thirty-seconds, 0 to 999', () => {
    const expects = reading({ unit: 'in', forms: ['whole', 'half', 'thirty-second'], step: 1 / 32 });
    const values = upTo(999, 0).flatMap((whole) => Array.from({ length: 31 }, (_, part) => whole + (part + 1) / 32));
    expect(lost(values, expects)).toEqual([]);
    expect(spokenForms(2 + 5 / 32, expects)).toContain('two and five thirty seconds');
  });

  it('as thirty-seconds of an inch, whole and half', () => {
    const expects = reading({ unit: '32nds', forms: ['whole', 'half', 'thirty-second'], max: 40, usual: { min: 0, max: 40 } });
    expect(lost([...upTo(40, 0), ...upTo(39, 0.5)], expects)).toEqual([]);
  });

  it('as volts said short: twelve six, twelve oh five, twelve sixty-five', () => {
    const expects = reading({
      unit: 'V',
      forms: ['whole', 'tenth', 'hundredth', 'spoken-decimal'],
      max: 18,
      step: 0.05,
      usual: { min: 11, max: 14 },
    });
    const values = Array.from({ length: 1801 }, (_, part) => part / 100);
    expect(lost(values, expects)).toEqual([]);
    expect(spokenForms(12.6, expects)).toContain('twelve six');
    expect(spokenForms(12.05, expects)).toContain('twelve oh five');
  });

  it('below zero, with minus, negative, below and below zero', () => {
    const expects = reading({ unit: 'F', forms: ['whole', 'negative'], min: -99, max: 130, step: 1 });
    const values = Array.from({ length: 99 }, (_, index) => -1 - index);
    expect(lost(values, expects)).toEqual([]);
    expect(spokenForms(-12, expects)).toContain('twelve below zero');
  });

  it('as they are written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_900 }), (hundredths) => {
        const value = hundredths / 100;
        const context = contextFor(reading({ forms: ['whole', 'tenth', 'hundredth'], step: 0.01 }));
        expect(meantValue(interpret(`${value}`, context))).toBe(value);
        expect(meantValue(interpret(`${value}psi`, context))).toBe(value);
        expect(meantValue(interpret(`uh, ${value} psi`, context))).toBe(value);
      }),
    );
  });

  it('and back: what the mouth says of a number means that number', () => {
    const context = contextFor(reading({ forms: ['whole', 'half', 'tenth', 'hundredth'], step: 0.01 }));
    const wrong: string[] = [];
    for (let hundredths = 0; hundredths <= 99_999; hundredths += 7) {
      const value = hundredths / 100;
      const got = meantValue(interpret(speakNumber(value), context));
      if (got !== value) wrong.push(`${value}: ${speakNumber(value)} -> ${got}`);
    }
    expect(wrong).toEqual([]);
  });

  it('digit by digit and back', () => {
    const context = contextFor(reading());
    for (let value = 10; value <= 999; value += 1) expect(meantValue(interpret(speakDigits(value), context))).toBe(value);
  });
});

describe('numbers that are not possible are refused, never clipped', () => {
  it('outside the physical range', () => {
    const context = contextFor(reading({ max: 150 }));
    for (let value = 151; value <= 999; value += 1) {
      const meaning = interpret(speakWhole(value), context);
      expect(meaning.intent, speakWhole(value)).toBe('unclear');
    }
  });

  it('negative where nothing is below zero', () => {
    const context = contextFor(reading());
    for (const text of ['minus five', 'negative sixty', 'sixty below', 'sixty below zero', '-62'])
      expect(interpret(text, context), text).toMatchObject({ intent: 'unclear' });
  });

  it('two numbers in a row are no number', () => {
    const context = contextFor(reading({ max: 150 }));
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 99 }), fc.integer({ min: 20, max: 99 }), (a, b) => {
        fc.pre(a !== b);
        expect(interpret(`${speakWhole(a)} ${speakWhole(b)}`, context).intent).toBe('unclear');
        expect(interpret(`${speakWhole(a)} or ${speakWhole(b)}`, context)).toMatchObject({ why: 'alternatives' });
        expect(interpret(`${speakWhole(a)} to ${speakWhole(b)}`, context)).toMatchObject({ why: 'range' });
      }),
    );
  });

  it('and the one taken back is never kept', () => {
    const context = contextFor(reading({ max: 150 }));
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 99 }),
        fc.integer({ min: 10, max: 99 }),
        fc.constantFrom('no', 'no wait', 'sorry', 'I mean', 'make that', 'correction', 'scratch that,'),
        (a, b, take) => {
          expect(meantValue(interpret(`${speakWhole(a)}, ${take}, ${speakWhole(b)}`, context))).toBe(b);
        },
      ),
    );
  });
});

describe('teen and ty', () => {
  it.each([
    [15, 50],
    [13, 30],
    [19, 90],
    [113, 130],
    [62, null],
    [20, null],
  ])('%i sounds like %s', (value, twin) => {
    expect(teenTyTwin(value)).toBe(twin);
  });

  it('is mutual', () => {
    for (let value = 0; value < 1000; value += 1) {
      const twin = teenTyTwin(value);
      if (twin !== null) expect(teenTyTwin(twin)).toBe(value);
    }
  });
});
