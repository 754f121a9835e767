/** The record over IndexedDB. */
import { type IDBPDatabase, type IDBPObjectStore, type IDBPTransaction, openDB, type StoreNames, unwrap } from 'idb';
import { canonicalText } from '../domain/files/canonical.ts';
import type { Dataset } from '../domain/files/dataset.ts';
import { sameContent } from '../domain/files/sameContent.ts';
import type { Entry, Round, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import { asDataset, attachmentsOf, firstHeader, gather, nextHeader, placeEntry, sortOut, wholeRound } from './appending.ts';
import { planImport } from './importing.ts';
import { MIGRATIONS, type Migration, migrate, targetVersion } from './migrations.ts';
import { type PartRow, type PlanRow, partNames, planPacker, unpackPlan } from './planParts.ts';
import type { ImportReport, Record, Room, RoundHeader, RoundLock, StoredBytes, StoredRound, StoredSettings } from './record.ts';
import { asRecordError, RecordError } from './recordError.ts';
import { createRoundLocks, type LockRound, type LocksPort } from './roundLock.ts';
import type { BytesRow, RecordSchema, SealedRow } from './schema.ts';
import { byNewest, byTime, latestUnits } from './sorting.ts';

export interface OpenOptions {
  readonly name?: string;
  /** A newer version of the app wants the database: this connection has been closed, after its last write. */
  readonly onBlocking: (reason: RecordError) => void;
  /** Another tab with an older version keeps this one waiting. The promise stays open and resolves when that tab closes. */
  readonly onBlocked: (reason: RecordError) => void;
  /** The browser ended the connection by itself. */
  readonly onTerminated: (reason: RecordError) => void;
  /** Epoch milliseconds; orders clips by age. */
  readonly now?: () => number;
  /** For tests; the browser's own otherwise. */
  readonly locks?: LocksPort;
  readonly storage?: StoragePort;
  readonly migrations?: readonly Migration[];
}

/** The part of `navigator.storage` that is needed; null where the browser has none. */
export type StoragePort = Partial<Pick<StorageManager, 'estimate' | 'persist' | 'persisted'>> | null;

export const RECORD_NAME = 'gloveside';

/**
 * Open the record, bringing an older database up to date first.
 * @throws RecordError `newer-database` when a newer version of the app wrote it (nothing is touched), `torn` when stores
 * are missing, `failed` when the browser refuses storage altogether.
 * @throws RangeError when the migrations are not numbered 1, 2, 3.
 */
export async function openRecord(options: OpenOptions): Promise<Record> {
  const { name = RECORD_NAME, migrations = MIGRATIONS } = options;
  const version = targetVersion(migrations);
  let record: IndexedDbRecord | null = null;
  let migrationFailure: unknown = null;
  try {
    const database = await openDB<RecordSchema>(name, version, {
      upgrade: (upgraded, from, _to, transaction) => {
        try {
          migrate(migrations, from, unwrap(upgraded), unwrap(transaction));
        } catch (thrown) {
          migrationFailure = thrown;
          // The opening itself fails with this; the transaction's own promise has nobody else to hear it.
          transaction.done.catch(() => undefined);
          transaction.abort();
        }
      },
      blocked: () => options.onBlocked(new RecordError('blocked')),
      blocking: () => {
        void record?.close().then(() => options.onBlocking(new RecordError('closed')));
      },
      terminated: () => options.onTerminated(new RecordError('closed')),
    });
    const missing = STORES.filter((store) => !database.objectStoreNames.contains(store));
    if (missing.length > 0) {
      database.close();
      throw new RecordError('torn', { detail: `no store ${missing.join(', ')}` });
    }
    const {
      now = Date.now,
      locks = typeof navigator === 'undefined' ? null : (navigator.locks ?? null),
      storage = typeof navigator === 'undefined' ? null : (navigator.storage ?? null),
    } = options;
    record = new IndexedDbRecord(database, { now, storage, lockRound: createRoundLocks(locks, name) });
    return record;
  } catch (thrown) {
    throw asRecordError(migrationFailure ?? thrown);
  }
}

type StoreName = StoreNames<RecordSchema>;
type WriteTransaction<S extends StoreName> = IDBPTransaction<RecordSchema, S[], 'readwrite'>;
type BytesStores = readonly [rows: 'clips', bytes: 'clipBytes'] | readonly [rows: 'photos', bytes: 'photoBytes'];

const STORES: readonly StoreName[] = [
  'units',
  'rounds',
  'plans',
  'parts',
  'entries',
  'sealed',
  'events',
  'clips',
  'clipBytes',
  'photos',
  'photoBytes',
  'settings',
  'deleted',
  'meta',
];
const DATASET_STORES = ['units', 'rounds', 'plans', 'parts', 'entries', 'sealed', 'events', 'deleted', 'settings'] as const;
const ROUND_STORES = ['rounds', 'plans', 'parts', 'entries', 'sealed'] as const;
const CLIP_STORES = ['clips', 'clipBytes'] as const;
const PHOTO_STORES = ['photos', 'photoBytes'] as const;

/** Keys that begin with `first`, whatever follows: an array sorts after every number (Indexed Database API 3.0, keys). */
const startingWith = (first: string): IDBKeyRange => IDBKeyRange.bound([first], [first, []]);

interface Ports {
  readonly now: () => number;
  readonly storage: StoragePort;
  readonly lockRound: LockRound;
}

class IndexedDbRecord implements Record {
  readonly databaseName: string;
  readonly #database: IDBPDatabase<RecordSchema>;
  readonly #ports: Ports;
  readonly #writing = new Set<Promise<unknown>>();
  /** Parts of plans that were read already. They never change; whoever writes looks into the database all the same. */
  readonly #parts = new Map<string, PartRow['part']>();
  #closing: Promise<void> | null = null;

  constructor(database: IDBPDatabase<RecordSchema>, ports: Ports) {
    this.databaseName = database.name;
    this.#database = database;
    this.#ports = ports;
  }

  putUnit(unit: Unit): Promise<void> {
    return this.#write(['units'], 'strict', async (tx) => {
      const revisions = await tx.objectStore('units').getAll(startingWith(unit.id));
      const same = revisions.find((kept) => kept.revision === unit.revision);
      const text = canonicalText(unit);
      if (same !== undefined && canonicalText(same) === text) return;
      if (revisions.some((kept) => kept.revision >= unit.revision)) {
        throw new RecordError('clash', { detail: `unit ${unit.id}, revision ${unit.revision}` });
      }
      await tx.objectStore('units').add(unit);
    });
  }

  units(): Promise<readonly Unit[]> {
    return this.#read(async () => latestUnits(await this.#database.getAll('units')));
  }

  unitRevisions(id: string): Promise<readonly Unit[]> {
    return this.#read(() => this.#database.getAll('units', startingWith(id)));
  }

  beginRound(round: Round, firstEntry: Entry): Promise<void> {
    return this.#write([...ROUND_STORES, 'deleted'], 'strict', async (tx) => {
      const header = firstHeader(round, firstEntry);
      const [kept, planRow, [entry], tombstone, sameId] = await Promise.all([
        tx.objectStore('rounds').get(round.id),
        tx.objectStore('plans').get(round.id),
        entriesIn(tx, round.id),
        tx.objectStore('deleted').get(round.id),
        entryById(tx, firstEntry.id),
      ]);
      if (kept !== undefined) {
        const { schema, id, unit, startedAt, demo } = kept;
        const [plan] = await this.#plans(tx, [planRow]);
        if (
          plan !== undefined &&
          sameContent({ schema, id, unit, startedAt, plan, demo }, round) &&
          sameContent(entry ?? null, firstEntry)
        ) {
          return;
        }
        throw new RecordError('clash', { detail: `round ${round.id}` });
      }
      placeEntry(firstEntry, { header: { ...header, entries: 0 }, tombstone, sameId });
      const pack = await planPacker([round.plan], tx.objectStore('parts'));
      await Promise.all([
        tx.objectStore('rounds').add(header),
        tx.objectStore('plans').add({ round: round.id, packed: pack(round.plan) }),
        tx.objectStore('entries').add(firstEntry),
      ]);
    });
  }

  append(entry: Entry): Promise<void> {
    return this.#write(['rounds', 'entries', 'sealed', 'deleted'], 'strict', async (tx) => {
      const [header, tombstone, sameId] = await Promise.all([
        tx.objectStore('rounds').get(entry.round),
        tx.objectStore('deleted').get(entry.round),
        entryById(tx, entry.id),
      ]);
      if (placeEntry(entry, { header, tombstone, sameId }) === 'kept' || header === undefined) return;
      // `add`, never `put`: if the header were ever behind the entries, this fails instead of overwriting one.
      await Promise.all([tx.objectStore('entries').add(entry), tx.objectStore('rounds').put(nextHeader(header, entry))]);
    });
  }

  rounds(): Promise<readonly RoundHeader[]> {
    return this.#read(async () => byNewest(await this.#database.getAll('rounds')));
  }

  round(id: string): Promise<StoredRound> {
    return this.#read(async () => {
      const tx = this.#database.transaction(ROUND_STORES, 'readonly');
      const [header, row, entries] = await Promise.all([
        tx.objectStore('rounds').get(id),
        tx.objectStore('plans').get(id),
        entriesIn(tx, id),
      ]);
      const [plan] = await this.#plans(tx, [row]);
      return wholeRound(id, header, plan, entries);
    });
  }

  entriesOf(rounds: readonly string[]): Promise<readonly (readonly Entry[])[]> {
    return this.#read(() => {
      const tx = this.#database.transaction(['entries', 'sealed'], 'readonly');
      return Promise.all(rounds.map((round) => entriesIn(tx, round)));
    });
  }

  roundsOf(ids: readonly string[]): ReturnType<Record['roundsOf']> {
    return this.#read(async () => {
      const tx = this.#database.transaction(ROUND_STORES, 'readonly');
      const found = await Promise.all(
        ids.map((id) => Promise.all([tx.objectStore('rounds').get(id), tx.objectStore('plans').get(id), entriesIn(tx, id)])),
      );
      const plans = await this.#plans(
        tx,
        found.map(([, row]) => row),
      );
      return sortOut(ids, (id, index) => {
        const [header, , entries] = found[index] ?? [undefined, undefined, []];
        return wholeRound(id, header, plans[index], entries);
      });
    });
  }

  async unfinishedRounds(): Promise<readonly RoundHeader[]> {
    return (await this.rounds()).filter((header) => header.completedAt === null);
  }

  deleteRound(id: string, at: number): Promise<void> {
    return this.#write([...ROUND_STORES, 'deleted', ...CLIP_STORES, ...PHOTO_STORES], 'strict', async (tx) => {
      if ((await tx.objectStore('deleted').get(id)) !== undefined) return;
      if ((await tx.objectStore('rounds').get(id)) === undefined) throw new RecordError('missing', { detail: `round ${id}` });
      await tx.objectStore('deleted').add({ id, at });
      await removeRound(tx, id);
      await removeUnusedParts(tx);
    });
  }

  appendEvent(event: UnitEvent): Promise<void> {
    return this.#write(['events'], 'strict', async (tx) => {
      const text = canonicalText(event);
      const kept = await tx.objectStore('events').get(event.id);
      if (kept === undefined) await tx.objectStore('events').add(event);
      else if (canonicalText(kept) !== text) throw new RecordError('clash', { detail: `event ${event.id}` });
    });
  }

  events(unit: string): Promise<readonly UnitEvent[]> {
    return this.#read(async () => byTime(await this.#database.getAllFromIndex('events', 'unit', unit)));
  }

  putClip(id: string, bytes: ArrayBuffer, type: string): Promise<void> {
    const row = { id, type, size: bytes.byteLength, keptAt: this.#ports.now() };
    return this.#write([...CLIP_STORES], 'relaxed', async (tx) => {
      if ((await tx.objectStore('clips').getKey(id)) !== undefined) return;
      await Promise.all([tx.objectStore('clips').add(row), tx.objectStore('clipBytes').add({ id, bytes })]);
    });
  }

  clip(id: string): Promise<StoredBytes | null> {
    return this.#bytes(CLIP_STORES, id);
  }

  clipIds(): Promise<readonly string[]> {
    return this.#read(() => this.#database.getAllKeys('clips'));
  }

  clipBytesUsed(): Promise<number> {
    return this.#read(async () => totalSize(await this.#database.getAll('clips')));
  }

  dropOldestClips(cap: number): Promise<number> {
    return this.#tracked(() => this.#dropOldestClips(cap));
  }

  putPhoto(id: string, bytes: ArrayBuffer, type: string): Promise<void> {
    // Strict, unlike a clip: a photo is evidence that was asked for and is never dropped.
    const row = { id, type, size: bytes.byteLength, keptAt: this.#ports.now() };
    return this.#write(['deleted', ...PHOTO_STORES], 'strict', async (tx) => {
      const [kept, tombstone] = await Promise.all([tx.objectStore('photos').getKey(id), tx.objectStore('deleted').getKey(id)]);
      if (kept !== undefined || tombstone !== undefined) return;
      await Promise.all([tx.objectStore('photos').add(row), tx.objectStore('photoBytes').add({ id, bytes })]);
    });
  }

  deletePhoto(id: string, at: number): Promise<void> {
    return this.#write(['deleted', ...PHOTO_STORES], 'strict', async (tx) => {
      const tombstone = await tx.objectStore('deleted').getKey(id);
      await Promise.all([
        ...(tombstone === undefined ? [tx.objectStore('deleted').add({ id, at })] : []),
        tx.objectStore('photos').delete(id),
        tx.objectStore('photoBytes').delete(id),
      ]);
    });
  }

  photo(id: string): Promise<StoredBytes | null> {
    return this.#bytes(PHOTO_STORES, id);
  }

  photoIds(): Promise<readonly string[]> {
    return this.#read(() => this.#database.getAllKeys('photos'));
  }

  settings(): Promise<StoredSettings | null> {
    return this.#read(async () => (await this.#database.get('settings', 'settings'))?.settings ?? null);
  }

  putSettings(settings: StoredSettings): Promise<void> {
    return this.#write(['settings'], 'strict', async (tx) => {
      canonicalText(settings);
      await tx.objectStore('settings').put({ key: 'settings', settings });
    });
  }

  meta(key: string): Promise<unknown> {
    return this.#read(async () => (await this.#database.get('meta', key))?.value ?? null);
  }

  putMeta(key: string, value: unknown): Promise<void> {
    return this.#write(['meta'], 'strict', async (tx) => {
      canonicalText(value);
      await tx.objectStore('meta').put({ key, value });
    });
  }

  exportDataset(): Promise<Dataset> {
    return this.#read(async () => {
      const tx = this.#database.transaction(DATASET_STORES, 'readonly');
      const [units, headers, rows, sealed, entries, events, deleted, settings] = await Promise.all([
        tx.objectStore('units').getAll(),
        tx.objectStore('rounds').getAll(),
        tx.objectStore('plans').getAll(),
        tx.objectStore('sealed').getAll(),
        tx.objectStore('entries').getAll(),
        tx.objectStore('events').getAll(),
        tx.objectStore('deleted').getAll(),
        tx.objectStore('settings').get('settings'),
      ]);
      const all = [...sealed.flatMap((row) => row.entries), ...entries];
      const plans = new Map<string, Round['plan']>();
      for (const [index, plan] of (await this.#plans(tx, rows)).entries()) {
        const round = rows[index]?.round;
        if (round !== undefined && plan !== undefined) plans.set(round, plan);
      }
      const rounds = gather(headers, plans, all);
      return asDataset({ units, rounds, events, deleted, settings: settings?.settings ?? null });
    });
  }

  importDataset(dataset: Dataset): Promise<ImportReport> {
    return this.#write([...DATASET_STORES, ...CLIP_STORES, ...PHOTO_STORES], 'strict', async (tx) => {
      const [units, headers, events, deleted] = await Promise.all([
        tx.objectStore('units').getAll(),
        tx.objectStore('rounds').getAll(),
        tx.objectStore('events').getAll(),
        tx.objectStore('deleted').getAll(),
      ]);
      const incoming = new Set(dataset.rounds.map(({ id }) => id));
      const entries = new Map(
        await Promise.all(
          headers.filter(({ id }) => incoming.has(id)).map(async ({ id }) => [id, await entriesIn(tx, id)] as const),
        ),
      );
      const plan = planImport(
        {
          units,
          headers: new Map(headers.map((header) => [header.id, header])),
          entries,
          events: new Map(events.map((event) => [event.id, event])),
          deleted: new Map(deleted.map((tombstone) => [tombstone.id, tombstone])),
        },
        dataset,
      );
      for (const round of plan.removedRounds) await removeRound(tx, round);
      await requireNewIds(
        tx,
        plan.newRounds.flatMap(({ stored }) => stored.entries),
      );
      const pack = await planPacker(
        plan.newRounds.map(({ stored }) => stored.round.plan),
        tx.objectStore('parts'),
      );
      // An entry id that another sealed round has fails here, by its unique index, and takes everything back.
      await Promise.all([
        ...plan.removedUnits.map(({ id, revision }) => tx.objectStore('units').delete([id, revision])),
        ...plan.removedEvents.map((id) => tx.objectStore('events').delete(id)),
        ...plan.units.map((unit) => tx.objectStore('units').add(unit)),
        ...plan.events.map((event) => tx.objectStore('events').add(event)),
        ...plan.tombstones.flatMap((tombstone) => [
          tx.objectStore('deleted').add(tombstone),
          // It may be that of a photo; ids are unique over everything.
          tx.objectStore('photos').delete(tombstone.id),
          tx.objectStore('photoBytes').delete(tombstone.id),
        ]),
        ...plan.newRounds.flatMap(({ header, stored }) => [
          tx.objectStore('rounds').add(header),
          tx.objectStore('plans').add({ round: header.id, packed: pack(stored.round.plan) }),
          tx.objectStore('sealed').add(sealedRow(header.id, stored.entries)),
        ]),
        ...plan.longerRounds.flatMap(({ header, added }) => [
          tx.objectStore('rounds').put(header),
          ...added.map((entry) => tx.objectStore('entries').add(entry)),
        ]),
      ]);
      if (plan.removedRounds.length > 0) await removeUnusedParts(tx);
      return plan.report;
    });
  }

  async estimate(): Promise<Room> {
    const { storage } = this.#ports;
    const [estimate, persisted] = await Promise.all([
      storage?.estimate?.().catch(() => null) ?? null,
      storage?.persisted?.().catch(() => false) ?? false,
    ]);
    return { usedBytes: estimate?.usage ?? null, quotaBytes: estimate?.quota ?? null, persisted };
  }

  async persist(): Promise<boolean> {
    return (await this.#ports.storage?.persist?.().catch(() => false)) ?? false;
  }

  lockRound(id: string): Promise<RoundLock | null> {
    return this.#ports.lockRound(id);
  }

  close(): Promise<void> {
    this.#closing ??= Promise.allSettled(this.#writing).then(() => this.#database.close());
    return this.#closing;
  }

  /** Plans whole again, in the order of their rows. Undefined where the row or one of its parts is gone. */
  async #plans(tx: OverParts, rows: readonly (PlanRow | undefined)[]): Promise<readonly (Round['plan'] | undefined)[]> {
    const lacking = rows.some((row) => row !== undefined && partNames(row).some((id) => !this.#parts.has(id)));
    if (lacking) for (const { id, part } of await tx.objectStore('parts').getAll()) this.#parts.set(id, part);
    return rows.map((row) => (row?.packed === undefined ? row?.plan : unpackPlan(row.packed, this.#parts)));
  }

  #bytes([rows, store]: BytesStores, id: string): Promise<StoredBytes | null> {
    return this.#read(async () => {
      const tx = this.#database.transaction([rows, store], 'readonly');
      const [row, kept] = await Promise.all([tx.objectStore(rows).get(id), tx.objectStore(store).get(id)]);
      return row === undefined || kept === undefined ? null : { bytes: kept.bytes, type: row.type };
    });
  }

  #dropOldestClips(cap: number): Promise<number> {
    return this.#attempt(['clips', 'clipBytes', 'entries', 'sealed'], 'relaxed', async (tx) => {
      const oldestFirst = await tx.objectStore('clips').index('keptAt').getAll();
      let used = totalSize(oldestFirst);
      let freed = 0;
      for (const { id, size } of oldestFirst) {
        if (used <= cap) break;
        const [note, sealedNote] = await Promise.all([
          tx.objectStore('entries').index('noteClip').getKey(id),
          tx.objectStore('sealed').index('noteClips').getKey(id),
        ]);
        if (note !== undefined || sealedNote !== undefined) continue;
        await Promise.all([tx.objectStore('clips').delete(id), tx.objectStore('clipBytes').delete(id)]);
        used -= size;
        freed += size;
      }
      return freed;
    });
  }

  async #read<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (thrown) {
      throw asRecordError(thrown);
    }
  }

  /** A write that makes room by dropping old clips, once, when the device is full. */
  #write<S extends StoreName, T>(
    stores: S[],
    durability: IDBTransactionDurability,
    work: (tx: WriteTransaction<S>) => Promise<T>,
  ): Promise<T> {
    return this.#tracked(async () => {
      try {
        return await this.#attempt(stores, durability, work);
      } catch (thrown) {
        if (asRecordError(thrown).trouble !== 'quota' || (await this.#makeRoom()) === 0) throw thrown;
        return await this.#attempt(stores, durability, work);
      }
    });
  }

  /** Half of what clips take up. Its own failure means that there is no room to be made. */
  async #makeRoom(): Promise<number> {
    try {
      const used = totalSize(await this.#database.getAll('clips'));
      return used === 0 ? 0 : await this.#dropOldestClips(Math.floor(used / 2));
    } catch {
      return 0;
    }
  }

  async #tracked<T>(work: () => Promise<T>): Promise<T> {
    if (this.#closing !== null) throw new RecordError('closed');
    const running = work();
    this.#writing.add(running);
    try {
      return await running;
    } catch (thrown) {
      throw asRecordError(thrown);
    } finally {
      this.#writing.delete(running);
    }
  }

  /** One transaction: all of `work` or nothing of it. Resolves when the browser says that it is done. */
  async #attempt<S extends StoreName, T>(
    stores: S[],
    durability: IDBTransactionDurability,
    work: (tx: WriteTransaction<S>) => Promise<T>,
  ): Promise<T> {
    const tx = this.#database.transaction(stores, 'readwrite', { durability });
    const done = tx.done.then(
      () => null,
      (thrown: unknown) => asRecordError(thrown),
    );
    let result: T;
    try {
      result = await work(tx);
    } catch (thrown) {
      try {
        tx.abort();
      } catch {
        // It has ended by itself; `done` knows why.
      }
      const ended = await done;
      // A full device shows as some failed request first; the reason of the whole transaction is the one to act on.
      throw ended?.trouble === 'quota' ? ended : asRecordError(thrown);
    }
    const failure = await done;
    if (failure !== null) throw failure;
    return result;
  }
}

type EntryStore = 'entries' | 'sealed';
/** Any transaction over at least the two stores that entries are in. */
type OverEntries = {
  objectStore<S extends EntryStore>(
    store: S,
  ): Pick<IDBPObjectStore<RecordSchema, EntryStore[], S, IDBTransactionMode>, 'get' | 'getAll' | 'index'>;
};

/** Any transaction over at least the parts of plans. */
type OverParts = {
  objectStore(store: 'parts'): Pick<IDBPObjectStore<RecordSchema, ['parts'], 'parts', IDBTransactionMode>, 'getAll'>;
};

/** Entries of a round in `seq` order. */
async function entriesIn(tx: OverEntries, round: string): Promise<Entry[]> {
  const [sealed, later] = await Promise.all([
    tx.objectStore('sealed').get(round),
    tx.objectStore('entries').getAll(startingWith(round)),
  ]);
  return sealed === undefined ? later : [...sealed.entries, ...later];
}

/** The entry of an id, in whichever round. */
async function entryById(tx: OverEntries, id: string): Promise<Entry | undefined> {
  const [entry, sealed] = await Promise.all([
    tx.objectStore('entries').index('id').get(id),
    tx.objectStore('sealed').index('ids').get(id),
  ]);
  return entry ?? sealed?.entries.find((one) => one.id === id);
}

/** @throws RecordError `clash` when an entry here, in `entries`, has an id that comes in with a new round. */
async function requireNewIds(tx: OverEntries, incoming: readonly Entry[]): Promise<void> {
  if (incoming.length === 0) return;
  const ids = new Set(incoming.map(({ id }) => id));
  const taken = (await tx.objectStore('entries').getAll()).find(({ id }) => ids.has(id));
  if (taken !== undefined) throw new RecordError('clash', { detail: `entry ${taken.id}` });
}

function sealedRow(round: string, entries: readonly Entry[]): SealedRow {
  const noteClips = entries.flatMap((entry) => (entry.kind === 'noted' && entry.clip !== null ? [entry.clip] : []));
  return { round, entries, ids: entries.map(({ id }) => id), noteClips };
}

const totalSize = (rows: readonly BytesRow[]): number => rows.reduce((sum, { size }) => sum + size, 0);

/** A deleted round leaves nothing behind, the unit's profile in its plan least of all. */
async function removeUnusedParts<S extends StoreName>(tx: WriteTransaction<S | 'plans' | 'parts'>): Promise<void> {
  const [plans, ids] = await Promise.all([tx.objectStore('plans').getAll(), tx.objectStore('parts').getAllKeys()]);
  const used = new Set(plans.flatMap(partNames));
  await Promise.all(ids.filter((id) => !used.has(id)).map((id) => tx.objectStore('parts').delete(id)));
}

type RemovalStore = 'rounds' | 'plans' | 'entries' | 'sealed' | 'clips' | 'clipBytes' | 'photos' | 'photoBytes';

async function removeRound<S extends StoreName>(tx: WriteTransaction<S | RemovalStore>, id: string): Promise<void> {
  const entries = await entriesIn(tx, id);
  const { clips, photos } = attachmentsOf(entries);
  await Promise.all([
    tx.objectStore('rounds').delete(id),
    tx.objectStore('plans').delete(id),
    tx.objectStore('entries').delete(startingWith(id)),
    tx.objectStore('sealed').delete(id),
    ...clips.flatMap((clip) => [tx.objectStore('clips').delete(clip), tx.objectStore('clipBytes').delete(clip)]),
    ...photos.flatMap((photo) => [tx.objectStore('photos').delete(photo), tx.objectStore('photoBytes').delete(photo)]),
  ]);
}
