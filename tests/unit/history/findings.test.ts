import { describe, expect, it } from 'vitest';
import { openFindings } from '../../../src/domain/history/findings.ts';
import type { RoundRecord } from '../../../src/domain/history/series.ts';
import type { UnitEvent } from '../../../src/domain/round/entry.ts';
import { BY_BUTTON, DAY, givenRound } from './givenRounds.ts';

const LAMP = { check: 'lamps', rule: 'state', state: true } as const;

const round = (day: number, outcome: 'ok' | 'watch' | 'fix' | 'hold' | null): RoundRecord =>
  givenRound({
    id: `round-${day}`,
    at: day * DAY,
    checks: [LAMP],
    answers: outcome === null ? [] : [{ key: 'lamps', value: outcome === 'ok' ? 1 : 0, outcome }],
  });

const mended = (finding: string, day: number): UnitEvent => ({
  id: `mended-${day}`,
  unit: 'unit-1',
  at: day * DAY,
  kind: 'mended',
  finding,
  what: 'New bulb.',
  who: 'the shop',
  cost: 12,
});

const openOf = (rounds: readonly RoundRecord[], events: readonly UnitEvent[] = []) => openFindings({ rounds, events }).open;

describe('openFindings', () => {
  it('carries a finding from round to round as one, at its worst', () => {
    const [finding, ...others] = openOf([round(3, 'fix'), round(1, 'watch'), round(2, null)]);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ id: 'round-1/lamps', outcome: 'fix', seen: 2, mend: 'Mend the lamps.' });
    expect(finding?.since).toBe(DAY + 60_000);
  });

  it('is closed by being mended, and remembers who, what and at what cost', () => {
    const { open, mended: done } = openFindings({ rounds: [round(1, 'fix')], events: [mended('round-1/lamps', 2)] });
    expect(open).toEqual([]);
    expect(done[0]).toMatchObject({ finding: { title: 'lamps' }, event: { who: 'the shop', cost: 12, what: 'New bulb.' } });
  });

  it('opens anew when it is seen again after it was mended', () => {
    const { open, mended: done } = openFindings({
      rounds: [round(1, 'fix'), round(5, 'hold')],
      events: [mended('round-1/lamps', 2)],
    });
    expect(open.map((finding) => finding.id)).toEqual(['round-5/lamps']);
    expect(done).toHaveLength(1);
  });

  it('is closed by a later round that finds it ok, but not by one that did not look', () => {
    expect(openOf([round(1, 'fix'), round(2, 'ok')])).toEqual([]);
    expect(openOf([round(1, 'fix'), round(2, null)])).toHaveLength(1);
  });

  it('may be mended under its latest name', () => {
    expect(openOf([round(1, 'fix'), round(2, 'fix')], [mended('round-2/lamps', 3)])).toEqual([]);
  });

  it('keeps a note marked as a finding until it is mended, worst of all first', () => {
    const { round: stored, entries } = round(1, 'fix');
    const note = {
      id: 'note',
      round: stored.id,
      seq: 9,
      at: DAY,
      kind: 'noted',
      key: null,
      text: 'Door drags.',
      clip: null,
      photo: 'p1',
      finding: true,
      how: BY_BUTTON,
    } as const;
    const records = [{ round: stored, entries: [...entries, note] }];
    expect(openOf(records).map((finding) => [finding.id, finding.text, finding.photo])).toEqual([
      ['round-1/lamps', null, null],
      ['note', 'Door drags.', 'p1'],
    ]);
    expect(openOf(records, [mended('note', 2)])).toHaveLength(1);
  });

  it('shows the newest picture of the check that was not good', () => {
    const pictured = (day: number, ...photos: string[]): RoundRecord => {
      const { round: stored, entries } = round(day, 'fix');
      const notes = photos.map((photo, index) => ({
        id: photo,
        round: stored.id,
        seq: 9 + index,
        at: day * DAY,
        kind: 'noted' as const,
        key: photo.startsWith('other') ? 'other' : 'lamps',
        text: null,
        clip: null,
        photo,
        finding: false,
        how: BY_BUTTON,
      }));
      return { round: stored, entries: [...entries, ...notes] };
    };
    expect(openOf([pictured(1, 'first', 'second', 'other')])[0]?.photo).toBe('second');
    expect(openOf([pictured(1, 'first'), round(2, 'fix')])[0]?.photo).toBe('first');
    expect(openOf([pictured(1, 'first'), pictured(2, 'later')])[0]?.photo).toBe('later');
  });

  it('does not take what was corrected before the end of the round', () => {
    const { round: stored, entries } = round(1, 'fix');
    const wrong = entries.find((entry) => entry.kind === 'answered');
    if (wrong?.kind !== 'answered') throw new Error('no answer');
    const right = { ...wrong, id: 'right', seq: 9, outcome: 'ok', supersedes: wrong.id } as const;
    expect(openOf([{ round: stored, entries: [...entries, right] }])).toEqual([]);
  });
});
