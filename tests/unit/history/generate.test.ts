import { describe, expect, it } from 'vitest';
import { generateHistory } from '../../../src/domain/demo/generate.ts';
import { inForce } from '../../../src/domain/history/inForce.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import { trendsFor } from '../../../src/domain/trend/trendsFor.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { wheelPositions } from '../../../src/domain/unit/unit.ts';

const AT = Date.UTC(2026, 1, 20);

const history = generateHistory({ units: DEMO_UNITS, years: 2, seed: 5, at: AT });

describe('generateHistory', () => {
  it('gives the same history for the same seed, and another for another', () => {
    const units = DEMO_UNITS.slice(0, 1);
    const make = (seed: number) => JSON.stringify(generateHistory({ units, years: 1, seed, at: AT }));
    expect(make(5)).toBe(make(5));
    expect(make(6)).not.toBe(make(5));
  });

  it('marks every round as demo data', () => {
    expect(history.rounds.length).toBeGreaterThan(100);
    for (const { round } of history.rounds)
      expect([round.demo, round.plan.demo, round.plan.unit.demo]).toEqual([true, true, true]);
  });

  it('counts entries from nought without a gap, in time order, none in the future, ids unique', () => {
    const ids = new Set<string>();
    for (const { round, entries } of history.rounds) {
      let last = round.startedAt;
      for (const [index, entry] of entries.entries()) {
        expect(entry.seq).toBe(index);
        expect(entry.round).toBe(round.id);
        expect(entry.at).toBeGreaterThanOrEqual(last);
        last = entry.at;
        ids.add(entry.id);
      }
      expect(last).toBeLessThan(AT);
    }
    expect(ids.size).toBe(history.rounds.reduce((sum, { entries }) => sum + entries.length, 0));
  });

  it('answers every check of every plan, or skips it with a reason', () => {
    for (const { round, entries } of history.rounds) {
      expect(
        replay(round, entries)
          .checks.filter((state) => state.status === 'open')
          .map((state) => state.check.key),
      ).toEqual([]);
    }
  });

  it('gives readings on their step and inside their range, and choices that exist', () => {
    let readings = 0;
    for (const { round, entries } of history.rounds) {
      const answers = inForce(entries);
      for (const { key, expects } of round.plan.checks) {
        const entry = answers.get(key);
        if (entry?.kind !== 'answered') continue;
        const { answer } = entry;
        expect(answer.kind).toBe(expects.kind);
        if (answer.kind === 'choice' && expects.kind === 'choice')
          expect(expects.options.map((option) => option.id)).toContain(answer.option);
        if (answer.kind !== 'reading' || expects.kind !== 'reading') continue;
        readings++;
        expect(answer.said.value).toBeGreaterThanOrEqual(expects.min);
        expect(answer.said.value).toBeLessThanOrEqual(expects.max);
        expect(Math.abs(answer.said.value / expects.step - Math.round(answer.said.value / expects.step))).toBeLessThan(1e-6);
      }
    }
    expect(readings).toBeGreaterThan(1000);
  });

  it('holds what looking back should find: the leak, the lug, the fading battery, the slow furnace', () => {
    const { statements } = trendsFor(history, AT, 'us');
    const [first, second, third] = DEMO_UNITS.map((unit) => statements.filter((one) => one.unitId === unit.id));
    const rear = wheelPositions(DEMO_UNITS[0]?.axles ?? 1).at(-1);
    expect(first?.find((one) => one.key === `tire-pressure@${rear}`)?.text).toMatch(
      /loses about (one pound|half a pound) a week/,
    );
    expect(second?.some((one) => one.kind === 'lugs')).toBe(true);
    expect(third?.some((one) => one.kind === 'furnace')).toBe(true);
    expect(statements.filter((one) => one.kind === 'lugs')).toHaveLength(1);
    expect(statements.filter((one) => one.kind === 'furnace')).toHaveLength(1);
  });

  it('refuses no time at all', () => {
    expect(() => generateHistory({ units: [], years: 0, seed: 1, at: AT })).toThrow(RangeError);
  });
});
