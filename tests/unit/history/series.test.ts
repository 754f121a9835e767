import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectationFor, lastValue } from '../../../src/domain/history/expectation.ts';
import { inForce } from '../../../src/domain/history/inForce.ts';
import { outsideAirPressure, pressureAtTemperature } from '../../../src/domain/history/normalize.ts';
import { buildSeries, type RoundRecord } from '../../../src/domain/history/series.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';
import type { Entry } from '../../../src/domain/round/entry.ts';
import { answersInForce, replay } from '../../../src/domain/round/replay.ts';
import { answered, BY_BUTTON, DAY, givenRound, givenUnit, OUTSIDE, plannedCheck } from './givenRounds.ts';

const LEFT = { check: 'tire-pressure', position: 'left', rule: 'tire-pressure' } as const;
const RIGHT = { check: 'tire-pressure', position: 'right', rule: 'tire-pressure' } as const;

function pressureRound(week: number, left: number, outsideF: number | null = null): RoundRecord {
  const answers = [{ key: 'tire-pressure@left', value: left }];
  if (outsideF !== null) answers.unshift({ key: 'outside-temperature', value: outsideF });
  return givenRound({ at: week * 7 * DAY, checks: [OUTSIDE, LEFT, RIGHT], answers });
}

const values = (records: readonly RoundRecord[], key = 'tire-pressure@left') =>
  buildSeries(records, [])
    .find((series) => series.key === key)
    ?.readings.map((reading) => Math.round(reading.read * 1e6) / 1e6);

describe('buildSeries', () => {
  it('gives one series per check and position, oldest first, whatever the order of the rounds', () => {
    const rounds = [pressureRound(2, 63), pressureRound(0, 65), pressureRound(1, 64)];
    expect(values(rounds)).toEqual([65, 64, 63]);
    expect(buildSeries(rounds, []).map((series) => series.key)).toEqual(['tire-pressure@left']);
  });

  it('honors a correction and an undo', () => {
    const { round, entries } = pressureRound(0, 56);
    const check = plannedCheck(LEFT);
    const first = entries.find((entry) => entry.kind === 'answered');
    const correction = { ...answered(round.id, 9, DAY, check, { key: check.key, value: 65 }), supersedes: first?.id ?? '' };
    expect(values([{ round, entries: [...entries, correction] }])).toEqual([65]);
    const undo: Entry = {
      id: 'undo',
      round: round.id,
      seq: 10,
      at: DAY,
      kind: 'undone',
      key: check.key,
      supersedes: correction.id,
    };
    expect(values([{ round, entries: [...entries, correction, undo] }])).toBeUndefined();
  });

  it('keeps demo rounds apart from real ones', () => {
    const real = pressureRound(0, 65);
    const demo = givenRound({ at: DAY, checks: [LEFT], answers: [{ key: 'tire-pressure@left', value: 40 }], demo: true });
    const all = buildSeries([real, demo], []);
    expect(all.map((series) => [series.demo, series.readings.length])).toEqual([
      [false, 1],
      [true, 1],
    ]);
  });

  it('is cut by a changed tire at that position only', () => {
    const both = (week: number) =>
      givenRound({
        at: week * 7 * DAY,
        checks: [LEFT, RIGHT],
        answers: [
          { key: 'tire-pressure@left', value: 65 },
          { key: 'tire-pressure@right', value: 65 },
        ],
      });
    const event = { id: 'e', unit: 'unit-1', at: 10 * DAY, kind: 'tire-changed', position: 'left', dotCode: null } as const;
    const series = buildSeries([both(0), both(1), both(2)], [event]);
    expect(series.map((one) => [one.readings.length, one.earlier.map((segment) => segment.endedBy)])).toEqual([
      [1, ['tire changed']],
      [3, []],
    ]);
  });

  it('is cut by another tire size but not by a size that was unknown before', () => {
    const at = (week: number, size: string | null) => {
      const unit = givenUnit();
      return givenRound({
        at: week * 7 * DAY,
        unit: { ...unit, tires: { ...unit.tires, size } },
        checks: [LEFT],
        answers: [{ key: 'tire-pressure@left', value: 65 }],
      });
    };
    const [learned] = buildSeries([at(0, null), at(1, 'ST205/75R15')], []);
    expect(learned?.readings).toHaveLength(2);
    const [changed] = buildSeries([at(0, 'ST205/75R15'), at(1, 'ST225/75R15')], []);
    expect(changed?.earlier[0]?.endedBy).toBe('the profile was changed');
  });

  it('brings a tire pressure to 20 degrees Celsius where the outside temperature is known', () => {
    // Gay-Lussac by hand: (50 + 14.6959) psi at 253.15 K is 74.9182 psi absolute at 293.15 K.
    const [series] = buildSeries([pressureRound(0, 50, -4), pressureRound(1, 50)], []).filter(
      (one) => one.key === 'tire-pressure@left',
    );
    expect(series?.readings[0]?.value).toBeCloseTo(74.9182 - 14.6959, 3);
    expect(series?.readings[0]?.normalized).toBe(true);
    expect(series?.readings[1]?.value).toBe(series?.readings[1]?.read);
  });

  it('goes on in the unit asked for when the metric switch is turned', () => {
    const metric = givenRound({
      at: 7 * DAY,
      checks: [{ ...LEFT, unit: 'kPa' }],
      answers: [{ key: 'tire-pressure@left', value: 448 }],
    });
    const [series] = buildSeries([pressureRound(0, 65), metric], []);
    expect(series?.unit).toBe('kPa');
    // 65 psi is 448.159 kPa (NIST SP 811).
    expect(series?.readings.map((reading) => Math.round(reading.read * 10) / 10)).toEqual([448.2, 448]);
  });

  it('takes the same entries in force as the replay of a round', () => {
    const check = plannedCheck(LEFT);
    const step = fc.record({ kind: fc.constantFrom('answered', 'skipped', 'undone'), value: fc.integer({ min: 20, max: 80 }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const { round } = pressureRound(0, 65);
        const entries: Entry[] = [];
        for (const { kind, value } of steps) {
          const base = { id: `e${entries.length}`, round: round.id, seq: entries.length, at: entries.length, key: check.key };
          const last = entries.at(-1);
          if (kind === 'undone') entries.push({ ...base, kind, supersedes: last?.id ?? 'none' });
          else if (kind === 'skipped') entries.push({ ...base, kind, reason: 'ice', how: BY_BUTTON, supersedes: null });
          else entries.push(answered(round.id, entries.length, entries.length, check, { key: check.key, value }));
        }
        const ours = inForce(entries).get(check.key);
        const theirs = answersInForce(replay(round, entries)).get(check.key);
        expect(ours?.kind === 'answered' ? ours.answer : undefined).toEqual(theirs?.answer);
      }),
    );
  });
});

describe('pressureAtTemperature', () => {
  it('is undone by going back and grows with temperature', () => {
    const kelvin = fc.double({ min: 220, max: 330, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), kelvin, kelvin, (pa, from, to) => {
        const there = pressureAtTemperature(pa, from, to, 101_325);
        expect(pressureAtTemperature(there, to, from, 101_325)).toBeCloseTo(pa, 5);
        // Between temperatures that differ in the last bits only, the rounding is larger than the change.
        expect((there - pa) * Math.sign(to - from)).toBeGreaterThanOrEqual(-1e-6);
      }),
    );
  });

  it('refuses what cannot be', () => {
    expect(() => pressureAtTemperature(Number.NaN, 273, 293, 101_325)).toThrow(RangeError);
    expect(() => pressureAtTemperature(1000, 0, 293, 101_325)).toThrow(RangeError);
    expect(() => pressureAtTemperature(-101_325, 273, 293, 101_325)).toThrow(RangeError);
  });
});

describe('outsideAirPressure', () => {
  // US Standard Atmosphere 1976, Table I (from memory): 0 m 101325 Pa, 1000 m 89874.6 Pa, 2000 m 79495.2 Pa (geopotential).
  it.each([
    [0, 101_325],
    [1000, 89_874.6],
    [2000, 79_495.2],
  ])('at %i m is the standard atmosphere’s', (elevation, pa) => {
    expect(Math.abs(outsideAirPressure(elevation) - pa)).toBeLessThan(2);
  });

  it('takes sea level where the height is not known', () => {
    expect(outsideAirPressure(null)).toBe(101_325);
  });
});

describe('expectationFor', () => {
  const context = { unit: 'psi', step: 1, outsideK: null } as const;
  const leftOf = (records: readonly RoundRecord[]) =>
    buildSeries(records, []).find((series) => series.key === 'tire-pressure@left');

  it('is null for no series, for two readings, and for a unit of another kind', () => {
    const three = leftOf([0, 1, 2].map((week) => pressureRound(week, 65)));
    expect(expectationFor(undefined, context)).toBeNull();
    expect(expectationFor(leftOf([pressureRound(0, 65), pressureRound(1, 65)]), context)).toBeNull();
    expect(expectationFor(three, { ...context, unit: 'V' })).toBeNull();
  });

  it('gives median and spread, floored at half a step', () => {
    const same = expectationFor(leftOf([0, 1, 2].map((week) => pressureRound(week, 65))), context);
    expect(same?.median).toBeCloseTo(65, 9);
    expect(same).toMatchObject({ spread: 0.5, count: 3 });
    // Median 63, deviations 2 1 0 1 17: their median is 1.
    const wild = expectationFor(leftOf([65, 64, 63, 62, 80].map((value, week) => pressureRound(week, value))), context);
    expect(wild?.median).toBeCloseTo(64, 9);
    expect(wild?.spread).toBeCloseTo(1.4826, 3);
  });

  it('is brought to today’s temperature', () => {
    const series = leftOf([0, 1, 2].map((week) => pressureRound(week, 65, 68)));
    const cold = expectationFor(series, { ...context, outsideK: toSI(-4, 'F') });
    // (65 + 14.6959) * 253.15 / 293.15 - 14.6959
    expect(cold?.median).toBeCloseTo(54.126, 2);
  });

  it('converts to the unit asked in', () => {
    const series = leftOf([0, 1, 2].map((week) => pressureRound(week, 65)));
    expect(expectationFor(series, { unit: 'kPa', step: 5, outsideK: null })?.median).toBeCloseTo(
      fromSI(toSI(65, 'psi'), 'kPa'),
      9,
    );
  });
});

describe('lastValue', () => {
  it('is the latest reading as read, or null', () => {
    const series = buildSeries([pressureRound(0, 65), pressureRound(1, 62)], [])[0];
    expect(lastValue(series)?.value).toBeCloseTo(62, 9);
    expect(lastValue(undefined)).toBeNull();
  });
});
