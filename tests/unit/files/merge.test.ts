import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText } from '../../../src/domain/files/canonical.ts';
import { EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import { merge } from '../../../src/domain/files/merge.ts';
import { partsPool } from '../../../src/domain/files/partsPool.ts';
import { givenUnit } from '../history/givenRounds.ts';
import { copies, demoDataset } from './givenDataset.ts';

const RUNS = { numRuns: 300 };

describe('merge', () => {
  it('is commutative', () => {
    fc.assert(
      fc.property(copies, copies, (a, b) => {
        expect(merge(a, b)).toEqual(merge(b, a));
      }),
      RUNS,
    );
  });

  it('is associative', () => {
    fc.assert(
      fc.property(copies, copies, copies, (a, b, c) => {
        expect(merge(merge(a, b), c)).toEqual(merge(a, merge(b, c)));
      }),
      RUNS,
    );
  });

  it('is idempotent, and merging in again what was merged already changes nothing', () => {
    fc.assert(
      fc.property(copies, copies, (a, b) => {
        const merged = merge(a, b);
        expect(merge(merged, merged)).toEqual(merged);
        expect(merge(merged, a)).toEqual(merged);
        expect(merge(merged, EMPTY_DATASET)).toEqual(merged);
      }),
      RUNS,
    );
  });

  it('never has one id twice, never an entry of a deleted round, never a round of a deleted unit', () => {
    fc.assert(
      fc.property(copies, copies, (a, b) => {
        const { units, rounds, entries, events, deleted } = merge(a, b);
        for (const items of [units, rounds, entries, events, deleted])
          expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
        const gone = new Set(deleted.map(({ id }) => id));
        for (const { id } of units) expect(gone.has(id)).toBe(false);
        for (const { id, unit } of rounds) expect(gone.has(id) || gone.has(unit)).toBe(false);
        for (const { round } of entries) expect(gone.has(round)).toBe(false);
        for (const { id, unit } of events) expect(gone.has(id) || gone.has(unit)).toBe(false);
      }),
      RUNS,
    );
  });

  it('takes the higher revision of a unit, whatever its clock said', () => {
    const older = { ...EMPTY_DATASET, units: [givenUnit({ revision: 1, updatedAt: 99, name: 'Old' })] };
    const newer = { ...EMPTY_DATASET, units: [givenUnit({ revision: 2, updatedAt: 1, name: 'New' })] };
    expect(merge(older, newer).units.map(({ name }) => name)).toEqual(['New']);
  });

  it('takes the longer history of a round and never mixes two', () => {
    const whole = demoDataset();
    const first = whole.rounds[0]?.id;
    const cut = { ...whole, entries: whole.entries.filter((entry) => entry.round !== first || entry.seq < 5) };
    expect(merge(cut, whole).entries.length).toBe(whole.entries.length);
  });

  it('has one text for the same data', () => {
    expect(canonicalText({ b: 1, a: [true, null, 'x'] })).toBe('{"a":[true,null,"x"],"b":1}');
    expect(() => canonicalText({ a: Number.NaN })).toThrow(RangeError);
    expect(() => canonicalText(() => 1)).toThrow(RangeError);
  });
});

describe('partsPool', () => {
  it('keeps equal checks once and changes nothing', () => {
    const share = partsPool();
    const rounds = demoDataset()
      .rounds.slice(0, 6)
      .map((round) => structuredClone(round));
    const pooled = rounds.map(share);
    expect(pooled).toEqual(rounds);
    const count = (all: typeof rounds) => new Set(all.flatMap((round) => round.plan.checks)).size;
    expect(count(pooled)).toBeLessThan(count(rounds) / 1.5);
  });
});
