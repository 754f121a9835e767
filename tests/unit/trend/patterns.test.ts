import { describe, expect, it } from 'vitest';
import type { RoundRecord } from '../../../src/domain/history/series.ts';
import { furnaceWarmUp, warmUps } from '../../../src/domain/trend/furnaceWarmUp.ts';
import { binomialTail, lugPattern, lugRounds, lugsNamed } from '../../../src/domain/trend/lugPattern.ts';
import { opposite } from '../../../src/domain/trend/sideDivergence.ts';
import { trendsFor } from '../../../src/domain/trend/trendsFor.ts';
import { BY_BUTTON, DAY, givenRound, OUTSIDE } from '../history/givenRounds.ts';
import { normal, seeded } from './simulate.ts';

const START = Date.UTC(2025, 8, 1);
const LUGS = { check: 'lugs-moved', position: 'left', rule: 'lugs-moved', count: true } as const;

function lugRecord(week: number, moved: number, note: string | null = null): RoundRecord {
  const record = givenRound({
    id: `lug-${week}`,
    at: START + week * 7 * DAY,
    checks: [LUGS],
    answers: [{ key: 'lugs-moved@left', value: moved }],
  });
  if (note === null) return record;
  const { entries, round } = record;
  const noted = {
    id: `n${week}`,
    round: round.id,
    seq: entries.length,
    at: round.startedAt + 9000,
    kind: 'noted',
    key: 'lugs-moved@left',
    text: note,
    clip: null,
    photo: null,
    finding: false,
    how: BY_BUTTON,
  } as const;
  return { round, entries: [...entries, noted] };
}

describe('lug pattern', () => {
  it('has the binomial tail of the textbook', () => {
    // P(at least 2 of 3 at one half) = 1/2; P(at least 1 of 2 at 0.1) = 0.19.
    expect(binomialTail(3, 2, 0.5)).toBeCloseTo(0.5, 12);
    expect(binomialTail(2, 1, 0.1)).toBeCloseTo(0.19, 12);
    expect(binomialTail(5, 0, 0.3)).toBeCloseTo(1, 12);
  });

  it('reads lug numbers out of a note', () => {
    expect(lugsNamed('lug three moved a quarter turn')).toEqual([3]);
    expect(lugsNamed('studs 2 and 5 moved')).toEqual([2, 5]);
    expect(lugsNamed('two moved')).toEqual([]);
    expect(lugsNamed('number four')).toEqual([4]);
  });

  it('names the wheel and the lug that keeps moving', () => {
    const records = [0, 1, 1, 0, 1, 1].map((moved, week) => lugRecord(week, moved, moved ? 'lug three moved' : null));
    const { statements } = trendsFor({ rounds: records, events: [] }, START + 60 * DAY, 'us');
    expect(statements.map((one) => one.text)).toEqual([
      'Left wheel: lugs moved in four of the last six rounds, lug three in four of them; have the studs, the seats and the hub face looked at.',
    ]);
  });

  it('leaves out the settling after a wheel was put on', () => {
    const records = [0, 0, 1, 1, 0, 0, 0].map((moved, week) => lugRecord(week, moved));
    const event = {
      id: 'e',
      unit: 'unit-1',
      at: START + 10 * DAY,
      kind: 'wheel-mounted',
      position: 'left',
      odometerM: null,
    } as const;
    expect(lugRounds(records, [event], 'lugs-moved@left', 'left').map((round) => round.moved)).toEqual([0, 0, 0, 0, 0]);
    expect(lugPattern(lugRounds(records, [event], 'lugs-moved@left', 'left'), 6, 0.1)?.movedIn).toBe(0);
  });

  it('says nothing from three rounds', () => {
    expect(
      lugPattern(
        [1, 1, 1].map((moved, at) => ({ at, round: '', moved, named: [] })),
        6,
        0.1,
      ),
    ).toBeNull();
  });
});

describe('furnace warm-up', () => {
  const INSIDE = { check: 'inside-start', unit: 'F', rule: 'inside-start' } as const;
  const RISE = {
    check: 'furnace-rise',
    unit: 'F',
    rule: 'furnace-rise',
    params: { startKey: 'inside-start', minutes: 10 },
  } as const;
  const furnaceRecord = (week: number, outside: number, rise: number): RoundRecord => {
    const record = givenRound({
      id: `furnace-${week}`,
      at: START + week * 7 * DAY,
      checks: [OUTSIDE, INSIDE, RISE],
      answers: [
        { key: 'outside-temperature', value: outside },
        { key: 'inside-start', value: 30 },
        { key: 'furnace-rise', value: 30 + rise },
      ],
    });
    const entries = record.entries.map((entry) =>
      entry.kind === 'answered' && entry.key === 'furnace-rise' ? { ...entry, at: entry.at + 9 * 60_000 } : entry,
    );
    return { round: record.round, entries };
  };

  it('takes the rise over the minutes that it really took', () => {
    const [found] = warmUps([furnaceRecord(0, 10, 18)], 'furnace-rise');
    expect(found?.riseK).toBeCloseTo(10, 9);
    expect(found?.aboveOutsideK).toBeCloseTo(20 / 1.8, 9);
  });

  it('tells slowing apart from colder weather', () => {
    const random = seeded(3);
    const rise = (outside: number, lost: number) => Math.round(24 - 0.12 * (30 - outside) - lost + 0.4 * normal(random));
    const colder = Array.from({ length: 16 }, (_, week) => furnaceRecord(week, 40 - 4 * week, rise(40 - 4 * week, 0)));
    expect(
      trendsFor({ rounds: colder, events: [] }, START + 120 * DAY, 'us').statements.filter((one) => one.kind === 'furnace'),
    ).toEqual([]);
    const mixed = [20, -5, 10, 30];
    const slower = Array.from({ length: 16 }, (_, week) =>
      furnaceRecord(week, mixed[week % 4] ?? 0, rise(mixed[week % 4] ?? 0, week * 0.5)),
    );
    const [said] = trendsFor({ rounds: slower, events: [] }, START + 120 * DAY, 'us').statements.filter(
      (one) => one.kind === 'furnace',
    );
    expect(said?.text).toMatch(
      /^The furnace warms the cabin about (six and a half|seven|seven and a half|eight|eight and a half) degrees less in the same time than in September 2025\.$/,
    );
  });

  it('says nothing from seven warm-ups or from three weeks', () => {
    const few = Array.from({ length: 7 }, (_, week) => ({ at: week * 7 * DAY, round: '', riseK: 10 - week, aboveOutsideK: 10 }));
    expect(furnaceWarmUp(few)).toBeNull();
    expect(furnaceWarmUp([...few, ...few].map((one, index) => ({ ...one, at: index * DAY })))).toBeNull();
  });
});

describe('side to side', () => {
  const LEFT = { check: 'tire-pressure', position: 'left', rule: 'tire-pressure' } as const;
  const RIGHT = { check: 'tire-pressure', position: 'right', rule: 'tire-pressure' } as const;

  it('finds the leak without knowing any temperature', () => {
    const weather = [0, -3, 2, -5, -1, 4, -6, 0, -2, 3];
    const rounds = weather.map((change, week) =>
      givenRound({
        id: `side-${week}`,
        at: START + week * 7 * DAY,
        checks: [LEFT, RIGHT],
        answers: [
          { key: 'tire-pressure@left', value: 62 + change },
          { key: 'tire-pressure@right', value: 62 + change - week },
        ],
      }),
    );
    const { statements } = trendsFor({ rounds, events: [] }, START + 80 * DAY, 'us');
    expect(statements.map((one) => [one.kind, one.key, one.text])).toEqual([
      [
        'divergence',
        'tire-pressure@right',
        'Right falls behind left by about one pound a week; it is about eight pounds lower now.',
      ],
    ]);
  });

  it('knows which wheel stands opposite', () => {
    expect(opposite('left-rear')).toBe('right-rear');
    expect(opposite('left')).toBe('right');
    expect(opposite('right-rear')).toBeNull();
    expect(opposite('front')).toBeNull();
  });
});
