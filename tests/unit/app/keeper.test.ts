import { describe, expect, it } from 'vitest';
import { createKeeper } from '../../../src/app/keeper.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import type { Entry, EntryDraft, Round } from '../../../src/domain/round/entry.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import { createMemoryRecord } from '../../../src/record/memoryRecord.ts';
import type { Record } from '../../../src/record/record.ts';

const template = TEMPLATES[0];
if (!template) throw new Error('there is a first template');
const unit = createUnit(template, { id: 'u', name: 'Heron', at: 0 });
const round: Round = { schema: 1, id: 'r', unit: 'u', startedAt: 0, plan: planRound(unit, 'stop-on-the-road', 0), demo: false };
const begun: EntryDraft = { kind: 'begun', people: 1 };
const held: EntryDraft = { kind: 'held', reason: null };
const resumed: EntryDraft = { kind: 'resumed' };

function keeperOver(record: Record) {
  let ids = 0;
  return createKeeper({
    record,
    round,
    nextSeq: 0,
    now: () => 7,
    newId: () => {
      ids += 1;
      return `id-${ids}`;
    },
  });
}

/** Fails the nth append, after or before it reached the record. */
function flaky(record: Record, nth: number, reached: boolean): Record {
  let calls = 0;
  return {
    ...record,
    async append(entry: Entry) {
      calls += 1;
      if (calls !== nth) return record.append(entry);
      if (reached) await record.append(entry);
      throw new Error('the power went');
    },
  };
}

describe('keeping drafts', () => {
  it('begins the round with the first and appends the rest in sequence', async () => {
    const record = createMemoryRecord();
    const keeper = keeperOver(record);
    await keeper.keep([begun]);
    await keeper.keep([held, resumed]);
    const { entries } = await record.round('r');
    expect(entries.map(({ seq, kind, at }) => [seq, kind, at])).toEqual([
      [0, 'begun', 7],
      [1, 'held', 7],
      [2, 'resumed', 7],
    ]);
  });

  it.each([false, true])(
    'appends each draft once when a failed write is tried again (reached the record: %s)',
    async (reached) => {
      const record = createMemoryRecord();
      const keeper = keeperOver(flaky(record, 2, reached));
      await keeper.keep([begun]);
      const drafts = [held, resumed];
      await expect(keeper.keep(drafts)).rejects.toThrow('the power went');
      await keeper.keep(drafts);
      const { entries } = await record.round('r');
      expect(entries.map((entry) => entry.kind)).toEqual(['begun', 'held', 'resumed']);
    },
  );

  it('keeps order when two writes are asked for at once', async () => {
    const record = createMemoryRecord();
    const keeper = keeperOver(record);
    await Promise.all([keeper.keep([begun]), keeper.keep([held]), keeper.keep([resumed])]);
    const { entries } = await record.round('r');
    expect(entries.map((entry) => entry.seq)).toEqual([0, 1, 2]);
  });
});
