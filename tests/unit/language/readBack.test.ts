import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/domain/checks/catalogue.ts';
import type { Expects, Position } from '../../../src/domain/checks/expects.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../../src/domain/language/meaning.ts';
import { readBack, toAnswers } from '../../../src/domain/language/readBack.ts';
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import type { Answer } from '../../../src/domain/round/entry.ts';
import { definitionOf, expectsOf, placesOf } from './corpus.ts';

const LINES: PlannedCheck['lines'] = { name: 'check', ask: '', askTerse: '', hint: '', why: '', mend: '', caution: null };

const checkWith = (expects: Expects, position: Position | null = null) => ({
  expects,
  position,
  names: [] as string[],
  lines: LINES,
});

function contextFor(expects: Expects, position: Position | null, positions: readonly Position[]): InterpretContext {
  return { expects, names: [], position, positions, others: [], last: null, previous: null, mode: 'answer' };
}

const FULL = { style: 'full', display: 'us' } as const;
const TERSE = { style: 'terse', display: 'us' } as const;
const said = (value: number, unit: 'psi' | 'V' | '32nds' | 'F' | 'bar' | 'in'): Answer => ({
  kind: 'reading',
  si: toSI(value, unit),
  said: { value, unit },
  hedged: false,
});

describe('read-backs', () => {
  const pressure = expectsOf(definitionOf('tire-pressure'), 'left-front');
  it.each([
    [checkWith(pressure, 'left-front'), said(62, 'psi'), TERSE, 'sixty-two, left front'],
    [checkWith(pressure, 'left-front'), said(62.5, 'psi'), FULL, 'sixty-two and a half pounds, left front'],
    [checkWith(pressure, 'left-front'), said(15, 'psi'), TERSE, 'one-five, left front'],
    [checkWith(pressure, 'left-front'), said(50, 'psi'), FULL, 'fifty, five-zero, left front'],
    [checkWith(pressure, 'left-front'), said(4, 'bar'), TERSE, 'four bar, left front'],
    [checkWith(expectsOf(definitionOf('battery-rest'), null)), said(12.6, 'V'), TERSE, 'twelve point six'],
    [checkWith(expectsOf(definitionOf('tread-depth'), 'left'), 'left'), said(5, '32nds'), FULL, 'five thirty-seconds, left'],
    [checkWith(expectsOf(definitionOf('outside-temperature'), null)), said(-12, 'F'), TERSE, 'minus twelve'],
    [
      checkWith(expectsOf(definitionOf('lugs-moved'), 'right-rear'), 'right-rear'),
      { kind: 'count', count: 0 },
      TERSE,
      'none moved, right rear',
    ],
    [
      checkWith(expectsOf(definitionOf('coupler'), null)),
      { kind: 'state', verdict: 'ok', detail: null },
      TERSE,
      'latched and pinned',
    ],
    [
      checkWith(expectsOf(definitionOf('coupler'), null)),
      { kind: 'state', verdict: 'problem', detail: 'no pin' },
      TERSE,
      'no pin',
    ],
    [
      checkWith(expectsOf(definitionOf('tire-date'), 'left'), 'left'),
      { kind: 'date', form: 'dot-week', value: '2220' },
      FULL,
      'week twenty-two, twenty twenty, left',
    ],
    [
      checkWith(expectsOf(definitionOf('co-alarm-date'), null)),
      { kind: 'date', form: 'month-year', value: '2024-03' },
      FULL,
      'March twenty twenty-four',
    ],
  ] as const)('%#: %s', (check, answer, options, text) => {
    expect(readBack(check, answer as Answer, options)).toBe(text);
  });
});

/** Every answer that a declaration allows, free detail left out: that is the speaker's, not ours. */
function answers(expects: Expects): fc.Arbitrary<Answer> {
  switch (expects.kind) {
    case 'reading': {
      const { unit, min, max, step } = expects;
      const lowest = Math.ceil(min / step - 1e-9);
      const highest = Math.floor(max / step + 1e-9);
      return fc.tuple(fc.integer({ min: lowest, max: highest }), fc.boolean()).map(([steps, hedged]) => {
        const value = Number((steps * step).toPrecision(10));
        return { kind: 'reading', si: toSI(value, unit), said: { value, unit }, hedged } satisfies Answer;
      });
    }
    case 'count':
      return fc.integer({ min: expects.min, max: expects.max }).map((count) => ({ kind: 'count', count }) satisfies Answer);
    case 'state':
      return fc
        .constantFrom('ok' as const, 'problem' as const)
        .map((verdict) => ({ kind: 'state', verdict, detail: null }) satisfies Answer);
    case 'choice':
      return fc
        .constantFrom(...expects.options.map(({ id }) => id))
        .map((option) => ({ kind: 'choice', option, detail: null }) satisfies Answer);
    case 'date':
      return expects.form === 'dot-week'
        ? fc.tuple(fc.integer({ min: 1, max: 53 }), fc.integer({ min: 0, max: 69 })).map(
            ([week, year]) =>
              ({
                kind: 'date',
                form: 'dot-week',
                value: `${String(week).padStart(2, '0')}${String(year).padStart(2, '0')}`,
              }) satisfies Answer,
          )
        : fc
            .tuple(fc.integer({ min: 1970, max: 2069 }), fc.integer({ min: 1, max: 12 }))
            .map(
              ([year, month]) =>
                ({ kind: 'date', form: 'month-year', value: `${year}-${String(month).padStart(2, '0')}` }) satisfies Answer,
            );
  }
}

function same(a: Answer, b: Answer): boolean {
  if (a.kind === 'reading' && b.kind === 'reading')
    return Math.abs(a.si - b.si) < 1e-6 * Math.max(1, Math.abs(b.si)) && a.hedged === b.hedged;
  if (a.kind === 'state' && b.kind === 'state') return a.verdict === b.verdict;
  if (a.kind === 'choice' && b.kind === 'choice') return a.option === b.option;
  return JSON.stringify(a) === JSON.stringify(b);
}

describe('what is read back, heard again, is the same answer', () => {
  it.each(CATALOGUE.map((definition) => [definition.id, definition] as const))('%s', (_, definition) => {
    const positions = placesOf(definition);
    const expects = expectsOf(definition, positions[0] ?? null);
    fc.assert(
      fc.property(
        answers(expects),
        positions.length === 0 ? fc.constant(null) : fc.constantFrom(...positions),
        fc.constantFrom('full' as const, 'terse' as const),
        (answer, position, style) => {
          const check = checkWith(expects, position);
          const text = readBack(check, answer, { style, display: 'us' });
          const meaning = interpret(text, contextFor(expects, position, positions));
          const [got, ...more] = toAnswers(meaning, check);
          expect(more, text).toEqual([]);
          expect(got && same(got.answer, answer), `${JSON.stringify(answer)} as "${text}" gave ${JSON.stringify(meaning)}`).toBe(
            true,
          );
          expect(got?.position ?? position).toBe(position);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('answers from meanings', () => {
  const pressure = expectsOf(definitionOf('tire-pressure'), 'left-front');
  const wheels: readonly Position[] = ['left-front', 'right-front', 'left-rear', 'right-rear'];

  it('are in SI, with what was said beside them', () => {
    const meaning = interpret('four bar', contextFor(pressure, 'left-front', wheels));
    expect(toAnswers(meaning, checkWith(pressure, 'left-front'))).toEqual([
      { position: null, answer: { kind: 'reading', si: 400_000, said: { value: 4, unit: 'bar' }, hedged: false } },
    ]);
  });

  it('are one for each place', () => {
    const meaning = interpret('left front fifty eight, right front sixty', contextFor(pressure, 'left-front', wheels));
    expect(toAnswers(meaning, checkWith(pressure, 'left-front')).map(({ position }) => position)).toEqual([
      'left-front',
      'right-front',
    ]);
  });

  it('are none where nothing is settled', () => {
    const coupler = expectsOf(definitionOf('coupler'), null);
    for (const text of ['I think it is fine', 'hold on', 'sixty', ''])
      expect(toAnswers(interpret(text, contextFor(coupler, null, [])), checkWith(coupler))).toEqual([]);
  });
});
