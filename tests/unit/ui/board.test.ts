import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReadingExpects } from '../../../src/domain/checks/expects.ts';
import {
  type BoardAction,
  boardAfter,
  dateFigure,
  enteredCount,
  enteredDate,
  enteredReading,
  mayType,
  newBoard,
  scaleOf,
  typedAfter,
} from '../../../src/ui/round/board.ts';
import { COLD, LUGS, PRESSURE, VOLTS } from '../../tools/gallery/fakeRound.ts';

const readingOf = (check: { readonly expects: unknown }) => check.expects as ReadingExpects;
const psi = scaleOf(readingOf(PRESSURE), 'us', { value: 62, unit: 'psi' });

describe('scaleOf', () => {
  it('starts at last time, else in the middle of what is usual', () => {
    expect(psi).toMatchObject({ start: 62, small: 1, big: 5, unit: 'psi', decimals: 0 });
    // 45 to 80: the middle is 62.5, on the grid of whole pounds.
    expect([62, 63]).toContain(scaleOf(readingOf(PRESSURE), 'us', null).start);
  });

  it('steps as a gauge reads', () => {
    expect(scaleOf(readingOf(VOLTS), 'us', null)).toMatchObject({ small: 0.01, big: 0.1, decimals: 2 });
    expect(scaleOf(readingOf(COLD), 'us', null)).toMatchObject({ small: 1, big: 10, start: 10 });
  });

  it('shows metric in round steps, and last time converted', () => {
    const scale = scaleOf(readingOf(PRESSURE), 'metric', { value: 62, unit: 'psi' });
    // 62 psi = 427.475 kPa with 1 psi = 6.894757 kPa (NIST SP 811 B.8).
    expect(scale).toMatchObject({ unit: 'kPa', start: 427, small: 5, big: 20 });
  });
});

describe('a board', () => {
  const run = (actions: readonly BoardAction[], scale = psi) =>
    actions.reduce((board, action) => boardAfter(board, action, scale), newBoard(scale.start));

  it('keeps nothing that was not touched', () => {
    expect(enteredReading(newBoard(62), psi).ok).toBe(false);
    expect(enteredReading(run([{ type: 'touch' }]), psi)).toMatchObject({
      ok: true,
      answer: { said: { value: 62, unit: 'psi' }, hedged: false },
    });
  });

  it('steps from the start, and from what was typed', () => {
    expect(
      enteredReading(
        run([
          { type: 'step', by: 'big' },
          { type: 'step', by: -1 },
        ]),
        psi,
      ),
    ).toMatchObject({ figure: '66' });
    const typed: BoardAction[] = [
      { type: 'digit', digit: '4' },
      { type: 'digit', digit: '0' },
      { type: 'step', by: 1 },
    ];
    expect(enteredReading(run(typed), psi)).toMatchObject({ figure: '41' });
  });

  it('refuses what cannot be, and says between what it lies', () => {
    const typed = run([...'140'].map((digit) => ({ type: 'digit' as const, digit })));
    expect(enteredReading(typed, psi)).toEqual({
      ok: false,
      sentence: 'That cannot be: it lies between 0 and 130. Read it again.',
    });
  });

  it('keeps a reading in SI beside what was entered', () => {
    const entered = enteredReading(run([{ type: 'touch' }]), psi);
    if (!entered.ok || entered.answer.kind !== 'reading') throw new Error('a reading was expected');
    // 1 psi = 6894.757 Pa (NIST SP 811 B.8), to its printed digits.
    expect(entered.answer.si / (62 * 6894.757)).toBeCloseTo(1, 6);
  });

  it('stays finite and in range whatever is pressed', () => {
    const action = fc.oneof(
      fc.constantFrom<BoardAction>({ type: 'touch' }, { type: 'erase' }, { type: 'clear' }),
      fc.constantFrom(1 as const, -1 as const, 'big' as const, '-big' as const).map((by): BoardAction => ({ type: 'step', by })),
      fc.constantFrom(...'0123456789.-').map((digit): BoardAction => ({ type: 'digit', digit })),
    );
    fc.assert(
      fc.property(fc.array(action, { maxLength: 40 }), fc.constantFrom(PRESSURE, VOLTS, COLD), (actions, check) => {
        const expects = readingOf(check);
        const scale = scaleOf(expects, 'us', null);
        const entered = enteredReading(run(actions, scale), scale);
        if (!entered.ok) return;
        if (entered.answer.kind !== 'reading') throw new Error('a reading was expected');
        expect(Number.isFinite(entered.answer.si)).toBe(true);
        expect(entered.answer.said.value).toBeGreaterThanOrEqual(expects.min);
        expect(entered.answer.said.value).toBeLessThanOrEqual(expects.max);
      }),
    );
  });
});

describe('typing', () => {
  it('has one sign, one point and an end', () => {
    expect([...'1.2.3'].reduce(typedAfter, '')).toBe('1.23');
    expect([...'4-'].reduce(typedAfter, '')).toBe('-4');
    expect([...'4--'].reduce(typedAfter, '')).toBe('4');
    expect([...'123456789'].reduce(typedAfter, '')).toHaveLength(7);
  });

  it('lets a count and a date have digits only, and so many', () => {
    expect(mayType(LUGS.expects, '', '.')).toBe(false);
    expect(mayType(LUGS.expects, '6', '6')).toBe(false);
    expect(mayType({ kind: 'date', form: 'dot-week' }, '3623', '1')).toBe(false);
  });
});

describe('dates and counts', () => {
  const week = { kind: 'date', form: 'dot-week' } as const;
  const month = { kind: 'date', form: 'month-year' } as const;

  it('reads WWYY: 2204 is week 22 of 2004 (49 CFR 574.5(b)(4))', () => {
    expect(enteredDate('2204', week)).toMatchObject({ ok: true, answer: { value: '2204' }, figure: 'week 22 of 2004' });
    expect(enteredDate('5423', week)).toMatchObject({ ok: false });
    expect(enteredDate('0023', week)).toMatchObject({ ok: false });
    expect(enteredDate('362', week)).toMatchObject({ ok: false });
  });

  it('reads a month and a year', () => {
    expect(enteredDate('032027', month)).toMatchObject({ ok: true, answer: { form: 'month-year', value: '2027-03' } });
    expect(enteredDate('132027', month)).toMatchObject({ ok: false });
    expect(enteredDate('031027', month)).toMatchObject({ ok: false });
  });

  it('shows blanks for what is missing', () => {
    expect(dateFigure('36', week)).toBe('36 __');
    expect(dateFigure('0320', month)).toBe('03 20__');
  });

  it('counts within what there is', () => {
    if (LUGS.expects.kind !== 'count') throw new Error('a count was expected');
    expect(enteredCount('6', LUGS.expects)).toMatchObject({ ok: true, answer: { count: 6 } });
    expect(enteredCount('7', LUGS.expects)).toMatchObject({ ok: false });
    expect(enteredCount('', LUGS.expects)).toMatchObject({ ok: false });
  });
});
