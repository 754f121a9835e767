import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createUnitCache, type Question } from '../../../src/app/lookback/unitCache.ts';
import { summarize, verdictsOf } from '../../../src/app/lookback/unitSummary.ts';
import { type Dataset, EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import { verdictOf } from '../../../src/domain/round/judging.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import { trendsFor } from '../../../src/domain/trend/trendsFor.ts';
import { createMemoryRecord } from '../../../src/record/memoryRecord.ts';
import type { Record } from '../../../src/record/record.ts';
import { RecordError } from '../../../src/record/recordError.ts';
import { demoDataset } from '../files/givenDataset.ts';

const DAY = 86_400_000;
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

const question = { unit: unit.id, display: 'us', now, verdicts: true } as const;

describe('the past of a unit', () => {
  it('is what it is when worked out from the whole record', async () => {
    const { record } = await given();
    await record.importDataset(data);
    const summary = await createUnitCache(record).summary(question);
    const rounds = await Promise.all(own.map(({ id }) => record.round(id)));
    const past = { rounds, events: await record.events(unit.id) };
    const trends = trendsFor(past, now, 'us');
    const whole = { ...summarize(unit, past, trends.statements, 0), verdicts: verdictsOf(past, 'us', new Map()) };
    expect(summary).toEqual(whole);
    expect(await createUnitCache(record).trends(question)).toEqual({ ...trends, torn: 0 });
    expect(trends.series.length).toBeGreaterThan(10);
    expect((await createUnitCache(record).summary({ ...question, verdicts: false }))?.verdicts.size).toBe(0);
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
    expect((await createUnitCache(tearing).trends(question))?.torn).toBe(1);
  });

  it('works out again only what something was added to, and says the same as anew', async () => {
    const { record } = await given();
    const cache = createUnitCache(record);
    const ask = (id: string, change: Partial<Question> = {}) => cache.trends({ ...question, unit: id, ...change });
    const ids = data.units.map(({ id }) => id);
    const before = await Promise.all(ids.map((id) => ask(id)));
    // The very same series, not only equal ones: nothing was worked out.
    const again = await Promise.all(ids.map((id) => ask(id, { now: now + 1000 })));
    expect(again.map((one, index) => one?.series === before[index]?.series)).toEqual([true, true, true]);
    await record.importDataset(data);
    const after = await Promise.all(ids.map((id) => ask(id)));
    expect(after.map((one, index) => one?.series === before[index]?.series)).toEqual([false, true, true]);
    expect((await ask(unit.id, { now: now + 500 * DAY }))?.statements).not.toEqual(after[0]?.statements);
    expect((await ask(unit.id))?.statements).toEqual(after[0]?.statements);
    expect((await ask(unit.id, { display: 'metric' }))?.statements).not.toEqual(after[0]?.statements);
  });

  it('lets the units go that were not looked at for longest, when they have too much', async () => {
    const { watched, read } = await given();
    const cache = createUnitCache(watched, 1);
    const [first, second] = data.units.map(({ id }) => id);
    const asked = async (id: string | undefined) => {
      read.length = 0;
      await cache.trends({ ...question, unit: id ?? '' });
      return read.length > 0;
    };
    expect([await asked(first), await asked(first), await asked(second), await asked(first)]).toEqual([true, false, true, true]);
  });

  it('law: whatever is walked, corrected, imported, mended and deleted in between, it says what the whole record says', async () => {
    const few = demoDataset(0.1);
    const ids = few.units.map(({ id }) => id);
    const step = fc.oneof(
      fc.record({ does: fc.constant('import' as const), rounds: fc.nat(few.rounds.length) }),
      fc.record({ does: fc.constantFrom('append', 'correct', 'undo', 'delete' as const), nth: fc.nat(9) }),
      fc.record({ does: fc.constantFrom('mend', 'tire', 'profile', 'remove' as const), nth: fc.nat(2) }),
    );
    const asking = fc.record({ display: fc.constantFrom('us', 'metric' as const), verdicts: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 12 }), asking, async (steps, asked) => {
        const record = createMemoryRecord();
        const cache = createUnitCache(record);
        for (const [index, change] of [{ does: 'import', rounds: few.rounds.length - 1 }, ...steps].entries()) {
          await taken(record, few, change, index).catch((error: unknown) => {
            // A step that the record refuses changes nothing.
            if (!(error instanceof RecordError)) throw error;
          });
          for (const id of ids) {
            const about = { ...question, ...asked, unit: id };
            const fresh = createUnitCache(record);
            expect(await cache.trends(about)).toEqual(await fresh.trends(about));
            expect(await cache.summary(about)).toEqual(await fresh.summary(about));
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('is nothing for a unit that nobody knows', async () => {
    const { record } = await given();
    expect(await createUnitCache(record).summary({ ...question, unit: 'nobody' })).toBeNull();
  });
});

type Step = { readonly does: string; readonly rounds?: number; readonly nth?: number };

/** Changes the record as a person, a second device or a file may. */
async function taken(record: Record, few: Dataset, { does, rounds = 0, nth = 0 }: Step, index: number): Promise<void> {
  const headers = await record.rounds();
  const header = headers[nth % Math.max(1, headers.length)];
  const unitId = few.units[nth]?.id ?? '';
  switch (does) {
    case 'import': {
      // Some of the rounds, the last of them only half walked.
      const some = few.rounds.slice(0, rounds);
      const cut = some.at(-1)?.id;
      const kept = new Set(some.map(({ id }) => id));
      const entries = few.entries.filter((entry) => kept.has(entry.round) && (entry.round !== cut || entry.seq < 20));
      await record.importDataset({ ...few, rounds: some, entries });
      return;
    }
    case 'append':
    case 'correct':
    case 'undo': {
      if (header === undefined) return;
      const stored = await record.round(header.id);
      const whole = few.entries.filter((entry) => entry.round === header.id);
      const answered = stored.entries.findLast((entry) => entry.kind === 'answered' && entry.answer.kind === 'reading');
      const place = { id: `changed-${index}`, round: header.id, seq: stored.entries.length, at: header.lastAt + 1000 };
      if (does === 'append') {
        const next = whole[stored.entries.length];
        if (next !== undefined) await record.append(next);
      } else if (answered?.kind === 'answered' && answered.answer.kind === 'reading') {
        const answer = { ...answered.answer, si: answered.answer.si * 0.8 };
        await record.append(
          does === 'undo'
            ? { ...place, kind: 'undone', key: answered.key, supersedes: answered.id }
            : { ...answered, ...place, answer, outcome: 'fix', supersedes: answered.id },
        );
      }
      return;
    }
    case 'delete':
      if (header !== undefined) await record.deleteRound(header.id, now);
      return;
    case 'mend': {
      const open = header && (await createUnitCache(record).summary({ ...question, unit: header.unit }))?.open[0];
      if (open)
        await record.appendEvent({
          id: `mended-${index}`,
          unit: open.unitId,
          at: now,
          kind: 'mended',
          finding: open.id,
          what: 'Done.',
          who: null,
          cost: null,
        });
      return;
    }
    case 'tire': {
      const position = few.units[nth]?.axles === 1 ? 'left' : 'left-front';
      const at = now - 30 * DAY;
      await record.appendEvent({ id: `tire-${index}`, unit: unitId, at, kind: 'tire-changed', position, dotCode: null });
      return;
    }
    case 'profile': {
      const latest = (await record.units()).find(({ id }) => id === unitId);
      const [alarm] = [{ fitted: true, date: '2024-01', dateMeans: 'made' } as const];
      if (latest)
        await record.putUnit({
          ...latest,
          revision: latest.revision + 1,
          alarms: { ...latest.alarms, smoke: alarm },
          updatedAt: index,
        });
      return;
    }
    case 'remove':
      // As when the demo data are taken off on another device.
      await record.importDataset({ ...EMPTY_DATASET, deleted: [{ id: unitId, at: now }] });
      return;
  }
}
