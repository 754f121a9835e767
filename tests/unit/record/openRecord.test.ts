import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import { MIGRATIONS, type Migration } from '../../../src/record/migrations.ts';
import { type OpenOptions, openRecord } from '../../../src/record/openRecord.ts';
import type { Record } from '../../../src/record/record.ts';
import type { RecordError } from '../../../src/record/recordError.ts';
import { acceptRecord } from './acceptance.ts';
import { answered, begun, bytes, givenRound, givenUnit, noted } from './given.ts';

let opened = 0;
const nextName = (): string => `record-${opened++}`;

interface Opened {
  readonly record: Record;
  readonly told: { readonly kind: string; readonly reason: RecordError }[];
}

async function openNamed(name: string, options: Partial<OpenOptions> = {}): Promise<Opened> {
  const told: Opened['told'] = [];
  let clock = 0;
  const record = await openRecord({
    name,
    locks: null,
    now: () => clock++,
    onBlocking: (reason) => told.push({ kind: 'blocking', reason }),
    onBlocked: (reason) => told.push({ kind: 'blocked', reason }),
    onTerminated: (reason) => told.push({ kind: 'terminated', reason }),
    ...options,
  });
  return { record, told };
}

/** A later shape: a step that a future version might take. */
const NEXT = MIGRATIONS.length + 1;
const LATER: readonly Migration[] = [
  ...MIGRATIONS,
  { version: NEXT, what: 'Test only', up: (database) => database.createObjectStore('later', { keyPath: 'id' }) },
];

/** The database as version 1 shipped it, built by hand with the platform's own calls and nothing of ours. */
async function buildVersion1(name: string): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      const db = request.result;
      const stores: [string, string | string[]][] = [
        ['units', ['id', 'revision']],
        ['rounds', 'id'],
        ['plans', 'round'],
        ['entries', ['round', 'seq']],
        ['events', 'id'],
        ['clips', 'id'],
        ['clipBytes', 'id'],
        ['photos', 'id'],
        ['photoBytes', 'id'],
        ['settings', 'key'],
        ['deleted', 'id'],
        ['meta', 'key'],
      ];
      for (const [store, keyPath] of stores) db.createObjectStore(store, { keyPath });
      const store = (storeName: string): IDBObjectStore => request.transaction!.objectStore(storeName);
      store('rounds').createIndex('startedAt', 'startedAt');
      store('entries').createIndex('id', 'id', { unique: true });
      store('entries').createIndex('noteClip', 'clip');
      store('events').createIndex('unit', 'unit');
      store('clips').createIndex('keptAt', 'keptAt');
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const { plan, ...round } = givenRound();
  const header = { ...round, unitName: 'Heron', kind: 'before-towing', checks: 1, entries: 2, lastAt: 5, completedAt: null };
  const tx = database.transaction(['units', 'rounds', 'plans', 'entries', 'clips', 'clipBytes', 'settings'], 'readwrite');
  tx.objectStore('units').add(givenUnit());
  tx.objectStore('rounds').add(header);
  tx.objectStore('plans').add({ round: 'round-1', plan });
  tx.objectStore('entries').add(begun());
  tx.objectStore('entries').add(answered('round-1', 1, 62));
  tx.objectStore('clips').add({ id: 'clip', type: 'audio/webm', size: 3, keptAt: 1 });
  tx.objectStore('clipBytes').add({ id: 'clip', bytes: bytes(1, 2, 3) });
  tx.objectStore('settings').add({ key: 'settings', settings: { rate: 1 } });
  await new Promise((resolve) => {
    tx.oncomplete = resolve;
  });
  database.close();
}

/** The device is full for the next `times` transactions that add to `store`: each ends as the browser ends it, after its requests. */
function givenFullDevice(store: string, times: number): { readonly attempts: () => number } {
  const add = IDBObjectStore.prototype.add;
  let attempts = 0;
  vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args) {
    const request = add.apply(this, args);
    if (this.name === store && attempts++ < times) {
      const transaction = this.transaction as IDBTransaction & { _abort(name: string): void };
      queueMicrotask(() => transaction._abort('QuotaExceededError'));
    }
    return request;
  });
  return { attempts: () => attempts };
}

afterEach(() => {
  vi.restoreAllMocks();
});

acceptRecord('fake-indexeddb', async () => (await openNamed(nextName())).record);

describe('durability', () => {
  it('writes answers strictly and clips relaxed', async () => {
    const { record } = await openNamed(nextName());
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const durability = async (write: Promise<void>): Promise<unknown> => {
      await write;
      return transaction.mock.lastCall?.[2]?.durability;
    };
    expect(await durability(record.beginRound(givenRound(), begun()))).toBe('strict');
    expect(await durability(record.append(answered('round-1', 1)))).toBe('strict');
    expect(await durability(record.putClip('c', bytes(1), 'audio/webm'))).toBe('relaxed');
  });

  it('does not call an entry kept when its transaction is aborted after the write', async () => {
    const { record } = await openNamed(nextName());
    await record.beginRound(givenRound(), begun());
    const add = IDBObjectStore.prototype.add;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementationOnce(function (this: IDBObjectStore, ...args) {
      const request = add.apply(this, args);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    });
    await expect(record.append(answered('round-1', 1))).rejects.toMatchObject({ trouble: 'failed' });
    expect((await record.round('round-1')).entries).toEqual([begun()]);
    await record.append(answered('round-1', 1));
    expect((await record.round('round-1')).entries).toHaveLength(2);
  });
});

describe('a full device', () => {
  const withClips = async (): Promise<Record> => {
    const { record } = await openNamed(nextName());
    await record.beginRound(givenRound(), begun());
    await record.append(noted('round-1', 1, { clip: 'note' }));
    for (const id of ['note', 'old', 'young']) await record.putClip(id, bytes(1, 2, 3, 4), 'audio/webm');
    return record;
  };

  it('frees old clips and keeps the answer at the second try', async () => {
    const record = await withClips();
    const full = givenFullDevice('entries', 1);
    await record.append(answered('round-1', 2));
    expect(full.attempts()).toBe(2);
    expect((await record.round('round-1')).entries).toHaveLength(3);
    expect(await record.clipIds()).toEqual(['note']);
  });

  it('tells after the second try and leaves the round whole', async () => {
    const record = await withClips();
    const full = givenFullDevice('entries', 9);
    await expect(record.append(answered('round-1', 2))).rejects.toMatchObject({
      trouble: 'quota',
      sentence: expect.stringContaining('no room left'),
    });
    expect(full.attempts()).toBe(2);
    expect((await record.round('round-1')).entries).toHaveLength(2);
    vi.restoreAllMocks();
    await record.append(answered('round-1', 2));
  });

  it('tells at once when there is nothing to free', async () => {
    const { record } = await openNamed(nextName());
    await record.beginRound(givenRound(), begun());
    const full = givenFullDevice('entries', 9);
    await expect(record.append(answered('round-1', 1))).rejects.toMatchObject({ trouble: 'quota' });
    expect(full.attempts()).toBe(1);
  });

  it('takes nothing of an import that does not fit', async () => {
    const contents = await (await withClips()).exportDataset();
    const { record } = await openNamed(nextName());
    givenFullDevice('plans', 9);
    await expect(record.importDataset({ ...contents, units: [givenUnit()] })).rejects.toMatchObject({ trouble: 'quota' });
    expect(await record.exportDataset()).toEqual(EMPTY_DATASET);
  });
});

describe('migrations', () => {
  it('opens a database as version 1 shipped it, with everything in it', async () => {
    const name = nextName();
    await buildVersion1(name);
    const { record } = await openNamed(name);
    expect(await record.round('round-1')).toEqual({ round: givenRound(), entries: [begun(), answered('round-1', 1, 62)] });
    expect(await record.units()).toEqual([givenUnit()]);
    expect((await record.clip('clip'))?.type).toBe('audio/webm');
    expect(await record.settings()).toEqual({ rate: 1 });
    await record.append(answered('round-1', 2));
  });

  it('builds exactly the stores and indexes of version 1 in its first step, and goes on from there alike', async () => {
    const [byHand, byUs] = [nextName(), nextName()];
    await buildVersion1(byHand);
    await expect(openNamed(byUs, { migrations: MIGRATIONS.slice(0, 1) })).rejects.toMatchObject({ trouble: 'torn' });
    expect(await shapeOf(byUs)).toEqual(await shapeOf(byHand));
    for (const name of [byHand, byUs]) await (await openNamed(name)).record.close();
    expect(await shapeOf(byUs)).toEqual(await shapeOf(byHand));
    expect(Object.keys(await shapeOf(byUs))).toContain('sealed');
  });

  it('takes a version 1 database one step further and keeps what is in it', async () => {
    const name = nextName();
    await buildVersion1(name);
    const { record } = await openNamed(name, { migrations: LATER });
    expect((await record.round('round-1')).entries).toHaveLength(2);
    await record.close();
    expect(Object.keys(await shapeOf(name))).toContain('later');
  });

  it('leaves the database as it was when a step fails', async () => {
    const name = nextName();
    await buildVersion1(name);
    await (await openNamed(name)).record.close();
    const before = await shapeOf(name);
    const failing: Migration = {
      version: NEXT,
      what: 'Test only',
      up: (database) => {
        database.deleteObjectStore('entries');
        throw new Error('step failed');
      },
    };
    await expect(openNamed(name, { migrations: [...MIGRATIONS, failing] })).rejects.toMatchObject({ trouble: 'failed' });
    expect(await shapeOf(name)).toEqual(before);
    expect((await (await openNamed(name)).record.round('round-1')).entries).toHaveLength(2);
  });

  it('never opens a newer database, and says what to do', async () => {
    const name = nextName();
    await (await openNamed(name, { migrations: LATER })).record.close();
    await expect(openNamed(name)).rejects.toMatchObject({
      trouble: 'newer-database',
      sentence: expect.stringContaining('newer version'),
    });
  });

  it.each([
    ['none', []],
    ['a gap', [MIGRATIONS[0]!, { ...MIGRATIONS[1]!, version: 3 }]],
    ['a repeat', [MIGRATIONS[0]!, MIGRATIONS[0]!]],
    ['a start above 1', [MIGRATIONS[1]!]],
  ])('refuses to start with %s in the list of steps', async (_, migrations) => {
    await expect(openNamed(nextName(), { migrations })).rejects.toThrow(RangeError);
  });

  it('says so when a store is missing', async () => {
    const name = nextName();
    await new Promise((resolve) => {
      const request = indexedDB.open(name, 1);
      request.onsuccess = () => {
        request.result.close();
        resolve(null);
      };
    });
    await expect(openNamed(name)).rejects.toMatchObject({ trouble: 'torn' });
  });
});

describe('two connections', () => {
  it('the older one finishes its write, then closes for the newer one', async () => {
    const name = nextName();
    const older = await openNamed(name);
    await older.record.beginRound(givenRound(), begun());
    const writing = older.record.append(answered('round-1', 1));
    const newer = await openNamed(name, { migrations: LATER });
    await writing;
    expect((await newer.record.round('round-1')).entries).toHaveLength(2);
    expect(older.told.map(({ kind, reason }) => [kind, reason.trouble])).toEqual([['blocking', 'closed']]);
    await expect(older.record.append(answered('round-1', 2))).rejects.toMatchObject({ trouble: 'closed' });
  });

  it('the newer one is told when an older one does not give way, and opens when it does', async () => {
    const name = nextName();
    await (await openNamed(name)).record.close();
    const stubborn = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open(name);
      request.onsuccess = () => resolve(request.result);
    });
    const told: string[] = [];
    const opening = openNamed(name, {
      migrations: LATER,
      onBlocked: (reason) => {
        told.push(reason.trouble);
        stubborn.close();
      },
    });
    await (await opening).record.close();
    expect(told).toEqual(['blocked']);
  });

  it('two tabs on one round: the second entry for a place is refused, and both see the same round', async () => {
    const name = nextName();
    const [one, two] = [await openNamed(name), await openNamed(name)];
    await one.record.beginRound(givenRound(), begun());
    const sent = await Promise.allSettled([
      one.record.append({ ...answered('round-1', 1, 60), id: 'one' }),
      two.record.append({ ...answered('round-1', 1, 61), id: 'two' }),
    ]);
    expect(sent.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await one.record.round('round-1')).toEqual(await two.record.round('round-1'));
  });
});

describe('torn data', () => {
  const tear = async (name: string, store: string, key: IDBValidKey): Promise<void> => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open(name);
      request.onsuccess = () => resolve(request.result);
    });
    const tx = database.transaction(store, 'readwrite');
    tx.objectStore(store).delete(key);
    await new Promise((resolve) => {
      tx.oncomplete = resolve;
    });
    database.close();
  };

  it('a lost entry is noticed, and the rest can still be read', async () => {
    const name = nextName();
    const { record } = await openNamed(name);
    await record.beginRound(givenRound(), begun());
    for (const seq of [1, 2, 3]) await record.append(answered('round-1', seq));
    await tear(name, 'entries', ['round-1', 2]);
    await expect(record.round('round-1')).rejects.toMatchObject({
      trouble: 'torn',
      salvage: { round: givenRound(), entries: [begun(), answered('round-1', 1), answered('round-1', 3)] },
    });
    expect((await record.exportDataset()).entries).toEqual([begun(), answered('round-1', 1)]);
  });

  it.each(['plans', 'rounds'])('a round that lost its row in %s is torn, not missing', async (store) => {
    const name = nextName();
    const { record } = await openNamed(name);
    await record.beginRound(givenRound(), begun());
    await tear(name, store, 'round-1');
    await expect(record.round('round-1')).rejects.toMatchObject({ trouble: 'torn' });
  });
});

describe('what the browser offers', () => {
  it('reports room and the promise to keep', async () => {
    const storage = {
      estimate: async () => ({ usage: 5, quota: 10 }),
      persisted: async () => false,
      persist: async () => true,
    };
    const { record } = await openNamed(nextName(), { storage });
    expect(await record.estimate()).toEqual({ usedBytes: 5, quotaBytes: 10, persisted: false });
    expect(await record.persist()).toBe(true);
  });

  it.each([
    ['nothing', null],
    ['an empty storage manager', {}],
    ['one that refuses', { estimate: () => Promise.reject(new Error('no')), persist: () => Promise.reject(new Error('no')) }],
  ])('does without it when there is %s', async (_, storage) => {
    const { record } = await openNamed(nextName(), { storage });
    expect(await record.estimate()).toEqual({ usedBytes: null, quotaBytes: null, persisted: false });
    expect(await record.persist()).toBe(false);
  });
});

async function shapeOf(name: string): Promise<{ [store: string]: unknown }> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
  });
  const shape = Object.fromEntries(
    [...database.objectStoreNames].map((store) => {
      const { keyPath, indexNames, ...rest } = database.transaction(store).objectStore(store);
      const indexes = [...indexNames].map((index) => {
        const found = database.transaction(store).objectStore(store).index(index);
        return [index, found.keyPath, found.unique];
      });
      return [store, { keyPath, indexes, autoIncrement: rest.autoIncrement }];
    }),
  );
  database.close();
  return shape;
}
