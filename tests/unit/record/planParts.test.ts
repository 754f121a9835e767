import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/domain/plan/plan.ts';
import { openRecord } from '../../../src/record/openRecord.ts';
import { contentName, type PartRow, partNames, planPacker, unpackPlan } from '../../../src/record/planParts.ts';
import { demoDataset } from '../files/givenDataset.ts';
import { begun, givenRound, givenUnit } from './given.ts';

const plans = demoDataset().rounds.map(({ plan }) => plan);

function givenStore() {
  const rows = new Map<string, PartRow>();
  return {
    rows,
    get: async (id: string) => structuredClone(rows.get(id)),
    add: async (row: PartRow) => {
      if (rows.has(row.id)) throw new Error(`${row.id} twice`);
      rows.set(row.id, structuredClone(row));
    },
  };
}

const partsIn = (rows: ReadonlyMap<string, PartRow>) => new Map([...rows.values()].map(({ id, part }) => [id, part]));

describe('plans by their parts', () => {
  it('come back as they were, and repeat nothing', async () => {
    const store = givenStore();
    const pack = await planPacker(plans, store);
    const packed = plans.map(pack);
    expect(packed.map((one) => unpackPlan(one, partsIn(store.rows)))).toEqual(plans);
    expect(store.rows.size).toBeLessThan(plans.flatMap(({ checks }) => checks).length / 10);
    expect(JSON.stringify([packed, [...store.rows.values()]]).length).toBeLessThan(JSON.stringify(plans).length / 8);
    // Once more, from copies that share no objects: everything is there already.
    const before = store.rows.size;
    expect((await planPacker(structuredClone(plans), store))(structuredClone(plans)[0] as Plan)).toBeDefined();
    const again = structuredClone(plans);
    expect(again.map(await planPacker(again, store))).toEqual(packed);
    expect(store.rows.size).toBe(before);
  });

  it('are told apart where two contents have one name, in one writing and in a later one', async () => {
    const store = givenStore();
    const one = (text: string) => `n${text.length % 2}`;
    const first = (await planPacker(plans.slice(0, 1), store, one))(plans[0] as Plan);
    const pack = await planPacker(plans, store, one);
    expect(pack(plans[0] as Plan)).toEqual(first);
    expect(plans.map((plan) => unpackPlan(pack(plan), partsIn(store.rows)))).toEqual(plans);
  });

  it('are nothing without one of their parts', async () => {
    const store = givenStore();
    const packed = (await planPacker(plans, store))(plans[0] as Plan);
    for (const name of partNames({ round: 'x', packed })) {
      const parts = partsIn(store.rows);
      parts.delete(name);
      expect(unpackPlan(packed, parts)).toBeUndefined();
    }
  });

  it('have names that differ where the content does', () => {
    const texts = new Set(plans.flatMap(({ checks }) => checks.map((check) => JSON.stringify(check))));
    for (let index = 0; index < 100_000; index++) texts.add(`{"key":"check-${index}"}`);
    expect(new Set([...texts].map(contentName)).size).toBe(texts.size);
  });
});

describe('parts in the database', () => {
  let opened = 0;
  const open = async () => {
    const name = `parts-${opened++}`;
    const none = () => undefined;
    const record = await openRecord({ name, locks: null, onBlocking: none, onBlocked: none, onTerminated: none });
    return { record, name };
  };
  const rowsOf = (name: string, store: string, change?: (store: IDBObjectStore) => void) =>
    new Promise<readonly unknown[]>((resolve, reject) => {
      const request = indexedDB.open(name);
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        const tx = request.result.transaction(store, 'readwrite');
        change?.(tx.objectStore(store));
        const all = tx.objectStore(store).getAll();
        tx.oncomplete = () => {
          request.result.close();
          resolve(all.result);
        };
      };
    });
  const other = givenUnit({ name: 'Other', vin: 'SECRET' });
  const second = () => givenRound('round-2', { plan: { ...givenRound().plan, unit: other } });

  it('go with the last round that needs them, and not before', async () => {
    const { record, name } = await open();
    await record.beginRound(givenRound(), begun());
    expect(await rowsOf(name, 'parts')).toHaveLength(3);
    await record.beginRound(second(), begun('round-2'));
    expect(await rowsOf(name, 'parts')).toHaveLength(4);
    await record.deleteRound('round-2', 5);
    expect(JSON.stringify(await rowsOf(name, 'parts'))).not.toContain('SECRET');
    expect((await record.round('round-1')).round).toEqual(givenRound());
    // A part that went is written again although this connection has read it before.
    await record.beginRound({ ...second(), id: 'round-3' }, begun('round-3'));
    expect(await rowsOf(name, 'parts')).toHaveLength(4);
    await record.importDataset({ ...(await record.exportDataset()), deleted: [{ id: 'heron', at: 6 }] });
    expect(await rowsOf(name, 'parts')).toEqual([]);
  });

  it('are missed: a round without one is torn, and the others are read', async () => {
    const { record, name } = await open();
    await record.beginRound(givenRound(), begun());
    await record.beginRound(second(), begun('round-2'));
    await record.close();
    await rowsOf(name, 'parts', (store) => store.delete(contentName(JSON.stringify(other))));
    const none = () => undefined;
    const again = await openRecord({ name, locks: null, onBlocking: none, onBlocked: none, onTerminated: none });
    await expect(again.round('round-2')).rejects.toMatchObject({ trouble: 'torn' });
    expect(await again.roundsOf(['round-1', 'round-2'])).toMatchObject({ rounds: [{ round: givenRound() }], torn: ['round-2'] });
    expect((await again.exportDataset()).rounds).toEqual([givenRound()]);
  });

  it('are shared by the rounds of an export', async () => {
    const { record } = await open();
    await record.importDataset(demoDataset());
    const { rounds } = await record.exportDataset();
    const checks = rounds.flatMap(({ plan }) => plan.checks);
    expect(new Set(checks).size).toBe(new Set(checks.map((check) => JSON.stringify(check))).size);
  });
});
