import { describe, expect, it } from 'vitest';
import { compareRounds } from '../../../src/domain/history/compareRounds.ts';
import { compareUnits } from '../../../src/domain/history/compareUnits.ts';
import { timelineOf } from '../../../src/domain/history/timeline.ts';
import type { Entry } from '../../../src/domain/round/entry.ts';
import { answered, BY_BUTTON, DAY, givenRound, givenUnit, plannedCheck } from './givenRounds.ts';

const LEFT = { check: 'tire-pressure', position: 'left', rule: 'tire-pressure' } as const;
const BOLT = { check: 'deadbolt', rule: 'state', state: true } as const;

describe('timelineOf', () => {
  const { round, entries } = givenRound({
    id: 'r',
    at: DAY,
    checks: [LEFT, BOLT],
    answers: [
      { key: 'tire-pressure@left', value: 56 },
      { key: 'deadbolt', value: 1 },
    ],
  });
  const check = plannedCheck(LEFT);
  const spoken = {
    ...BY_BUTTON,
    via: 'voice',
    provider: 'built-in',
    transcript: 'sixty-five',
    confidence: 0.914,
    because: ['Heard clearly.'],
  } as const;
  const correction: Entry = {
    ...answered('r', 4, 2 * DAY, check, { key: check.key, value: 65 }),
    how: spoken,
    supersedes: 'r-1',
  };
  const undo: Entry = { id: 'u', round: 'r', seq: 5, at: 2 * DAY, kind: 'undone', key: 'deadbolt', supersedes: 'r-2' };
  const timeline = timelineOf(round, [...entries, correction, undo], new Map(), 'us');

  it('has every entry once, in order, with what stands and what does not', () => {
    expect(timeline.map((item) => [item.kind, item.standing])).toEqual([
      ['begun', null],
      ['answered', 'replaced'],
      ['answered', 'taken-back'],
      ['completed', null],
      ['answered', 'correction'],
      ['undone', null],
    ]);
  });

  it('says what was heard, how sure, by what, and what it was understood as', () => {
    expect(timeline[4]).toMatchObject({
      heard: { transcript: 'sixty-five', alternatives: [], confidencePercent: 91 },
      by: 'voice, built-in',
      because: ['Heard clearly.'],
      outcome: 'ok',
    });
    expect(timeline[4]?.understood).toContain('65');
  });

  it('names a station only on arriving there', () => {
    expect(timeline.map((item) => item.arrivedAt)).toEqual([null, 'Inside.', null, null, null, null]);
  });

  it('gives no judgement for what no longer counts', () => {
    const judgement = { outcome: 'ok', say: 'Right.', todo: null, limit: null, question: null, facts: [] } as const;
    const judged = timelineOf(round, [...entries, correction], new Map([[check.key, judgement]]), 'us');
    expect(judged.map((item) => item.judgement?.say ?? null)).toEqual([null, null, null, null, 'Right.']);
  });
});

describe('compareRounds', () => {
  const before = givenRound({
    at: 0,
    checks: [LEFT, BOLT],
    answers: [
      { key: 'tire-pressure@left', value: 65 },
      { key: 'deadbolt', value: 1 },
    ],
  });
  const after = givenRound({
    at: DAY,
    checks: [LEFT, { check: 'lamps', rule: 'state', state: true }],
    answers: [{ key: 'tire-pressure@left', value: 62, outcome: 'fix' }],
  });

  it('says what changed, by how much, and what was not asked in both', () => {
    expect(compareRounds(before, after, 'us').map(({ key, change }) => [key, change])).toEqual([
      ['tire-pressure@left', '3 psi less, worse'],
      ['lamps', 'new'],
      ['deadbolt', 'not asked'],
    ]);
  });

  it('finds nothing between a round and itself', () => {
    expect(compareRounds(before, before, 'us').every(({ change }) => change === null)).toBe(true);
  });

  it('compares in the unit that is shown', () => {
    expect(compareRounds(before, after, 'metric')[0]?.change).toBe('21 kPa less, worse');
  });
});

describe('compareUnits', () => {
  it('marks what differs, and what is known of one only', () => {
    const one = givenUnit();
    const other = givenUnit({ wheels: { ...one.wheels, lugs: 6 }, vin: 'X' });
    const different = compareUnits(one, other, 'us').filter((figure) => !figure.same);
    expect(different.length).toBe(2);
    expect(different.map(({ left, right }) => `${left} / ${right}`).join(' ')).toMatch(/5.*\/ 6/);
    expect(compareUnits(one, one, 'us').every((figure) => figure.same)).toBe(true);
  });
});
