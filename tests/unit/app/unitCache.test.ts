import { describe, expect, it } from 'vitest';
import { createUnitCache } from '../../../src/app/lookback/unitCache.ts';
import { summarize } from '../../../src/app/lookback/unitSummary.ts';
import { verdictOf } from '../../../src/domain/round/judging.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import { createMemoryRecord } from '../../../src/record/memoryRecord.ts';
import type { Record } from '../../../src/record/record.ts';
import { demoDataset } from '../files/givenDataset.ts';

const data = demoDataset(1);
const now = Math.max(...data.entries.map(({ at }) => at)) + 1;
const unit = data.units[0];
if (!unit) throw new Error('there is a demo unit');
const own = data.rounds.filter((round) => round.unit === unit.id).sort((a, b) => a.startedAt - b.startedAt);
const last = own.at(-1);
if (!last) throw new Error('the demo unit has rounds');

/** A record without the last round, and a count of the rounds that were read from it. */
async function given() {
  const record = createMemoryRecord();
  const without = (id: string) => ({
    ...data,
    rounds: data.rounds.filter((round) => round.id !== id),
    entries: data.entries.filter((entry) => entry.round !== id),
  });
  await record.importDataset(without(last?.id ?? ''));
  const read: string[] = [];
  const watched: Record = {
    ...record,
    roundsOf: (ids) => {
      read.push(...ids);
      return record.roundsOf(ids);
    },
  };
  return { record, watched, read };
}

const question = { unit: unit.id, display: 'us', now } as const;

describe('the past of a unit', () => {
  it('is what it is when worked out from the whole record', async () => {
    const { record } = await given();
    await record.importDataset(data);
    const summary = await createUnitCache(record).summary(question);
    const rounds = await Promise.all(own.map(({ id }) => record.round(id)));
    const whole = summarize(unit, { rounds, events: await record.events(unit.id), torn: [] }, now, 'us', new Map());
    expect(summary).toEqual(whole);
    expect(summary?.series.length).toBeGreaterThan(10);
    const newest = replay(last, rounds.at(-1)?.entries ?? []);
    expect(summary?.verdicts.get(last.id)).toBe(verdictOf(newest, 'us').outcome);
  });

  it('reads only what was added since it was asked last', async () => {
    const { record, watched, read } = await given();
    const cache = createUnitCache(watched);
    const before = await cache.summary(question);
    expect(new Set(read)).toEqual(new Set(own.slice(0, -1).map(({ id }) => id)));
    read.length = 0;
    expect(await cache.summary(question)).toEqual(before);
    expect(read).toEqual([]);
    await record.importDataset(data);
    const after = await cache.summary(question);
    expect(read).toEqual([last.id]);
    expect(after).toEqual(await createUnitCache(record).summary(question));
    expect(after).not.toEqual(before);
  });

  it('forgets what was deleted, and tells of what cannot be read', async () => {
    const { record, watched } = await given();
    await record.importDataset(data);
    const cache = createUnitCache(watched);
    await cache.summary(question);
    await record.deleteRound(last.id, now);
    expect(await cache.summary(question)).toEqual(await createUnitCache(record).summary(question));
    const tearing: Record = {
      ...record,
      roundsOf: async (ids) => {
        const found = await record.roundsOf(ids.slice(1));
        return { rounds: found.rounds, torn: [...found.torn, ...ids.slice(0, 1)] };
      },
    };
    expect((await createUnitCache(tearing).summary(question))?.torn).toBe(1);
  });

  it('is nothing for a unit that nobody knows', async () => {
    const { record } = await given();
    expect(await createUnitCache(record).summary({ ...question, unit: 'nobody' })).toBeNull();
  });
});
