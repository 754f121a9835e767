import { describe, expect, it } from 'vitest';
import type { Limit } from '../../../src/domain/checks/outcome.ts';
import { compareRounds } from '../../../src/domain/history/compareRounds.ts';
import { compareUnits } from '../../../src/domain/history/compareUnits.ts';
import { sheetOf } from '../../../src/domain/history/sheet.ts';
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

describe('sheetOf', () => {
  const placard: Limit = {
    id: 'placard',
    label: 'placard',
    relation: 'target',
    si: 448_159,
    unit: 'psi',
    outcome: 'watch',
    source: { kind: 'maker', text: 'the placard' },
  };
  const FRONT = { ...LEFT, limits: [placard] } as const;
  const RIGHT = { ...FRONT, position: 'right' } as const;
  const { round, entries } = givenRound({
    id: 'r',
    at: DAY,
    checks: [FRONT, RIGHT, BOLT],
    answers: [
      { key: 'tire-pressure@left', value: 56 },
      { key: 'deadbolt', value: 1 },
    ],
  });
  const check = plannedCheck(FRONT);
  const how = { ...BY_BUTTON, via: 'voice', provider: 'built-in', transcript: 'sixty-five' } as const;
  const correction: Entry = { ...answered('r', 4, 2 * DAY, check, { key: check.key, value: 65 }), how, supersedes: 'r-1' };
  const undo: Entry = { id: 'u', round: 'r', seq: 5, at: 2 * DAY, kind: 'undone', key: 'deadbolt', supersedes: 'r-2' };
  const note: Entry = {
    id: 'n',
    round: 'r',
    seq: 6,
    at: 2 * DAY,
    kind: 'noted',
    key: check.key,
    text: 'valve cap is gone',
    finding: true,
    clip: null,
    photo: null,
    how: BY_BUTTON,
  };
  const sheet = sheetOf(round, timelineOf(round, [...entries, correction, undo, note], new Map(), 'us'));
  const lines = sheet.stations.flatMap((station) => station.lines);

  it('has every check of the plan once, also those that nobody answered', () => {
    expect(lines.map((line) => [line.check.key, line.outcome])).toEqual([
      ['tire-pressure@left', 'ok'],
      ['tire-pressure@right', 'open'],
      ['deadbolt', 'open'],
    ]);
  });

  it('shows a corrected value with what stood there before, and what was taken back', () => {
    expect(lines[0]).toMatchObject({ value: '65 psi', before: ['56 psi'], heard: 'sixty-five', by: 'voice, built-in' });
    expect(lines[2]).toMatchObject({ value: null, before: ['good'] });
  });

  it('has limits once, each with a source that is listed, and notes at their check', () => {
    expect(lines[0]?.limits.length).toBeGreaterThan(0);
    expect(lines[1]).toMatchObject({ limits: [], limitsAsAbove: true });
    for (const { source } of lines[0]?.limits ?? []) expect(sheet.sources.join()).toContain(source.text);
    expect(lines[0]?.notes).toEqual(['valve cap is gone']);
    expect(sheet.stations[0]?.name).not.toMatch(/\.$/);
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
