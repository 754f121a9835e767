/** The record in memory: for a rehearsal that leaves nothing behind, for a browser that refuses storage, and for tests. */
import { canonicalText } from '../domain/files/canonical.ts';
import type { Tombstone } from '../domain/files/dataset.ts';
import { sameContent } from '../domain/files/sameContent.ts';
import type { Entry, Round, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import { asDataset, attachmentsOf, firstHeader, gather, nextHeader, placeEntry, sortOut, wholeRound } from './appending.ts';
import { planImport, unitKey } from './importing.ts';
import type { Record, RoundHeader, StoredBytes, StoredSettings } from './record.ts';
import { asRecordError, RecordError } from './recordError.ts';
import { createRoundLocks } from './roundLock.ts';
import { byNewest, byTime, latestUnits } from './sorting.ts';

/** An empty record that lasts as long as the page. Nothing that goes in or comes out is shared with the caller. */
export function createMemoryRecord(): Record {
  const units = new Map<string, Unit>();
  const headers = new Map<string, RoundHeader>();
  const plans = new Map<string, Round['plan']>();
  const entries = new Map<string, Entry[]>();
  const entryById = new Map<string, Entry>();
  const events = new Map<string, UnitEvent>();
  const deleted = new Map<string, Tombstone>();
  const clips = new Map<string, StoredBytes>();
  const photos = new Map<string, StoredBytes>();
  const meta = new Map<string, unknown>();
  let settings: StoredSettings | null = null;
  let closed = false;
  const lockRound = createRoundLocks(null, 'memory');

  const task = async <T>(work: () => T): Promise<T> => {
    if (closed) throw new RecordError('closed');
    try {
      return structuredClone(work());
    } catch (thrown) {
      throw asRecordError(thrown);
    }
  };

  const addEntry = (entry: Entry): void => {
    const copy = structuredClone(entry);
    entries.set(entry.round, [...(entries.get(entry.round) ?? []), copy]);
    entryById.set(entry.id, copy);
  };

  const removeRound = (id: string): void => {
    const gone = entries.get(id) ?? [];
    const attached = attachmentsOf(gone);
    for (const clip of attached.clips) clips.delete(clip);
    for (const photo of attached.photos) photos.delete(photo);
    for (const entry of gone) entryById.delete(entry.id);
    entries.delete(id);
    headers.delete(id);
    plans.delete(id);
  };

  const revisionsOf = (id: string): Unit[] =>
    [...units.values()].filter((unit) => unit.id === id).sort((a, b) => a.revision - b.revision);

  const used = (): number => [...clips.values()].reduce((sum, { bytes }) => sum + bytes.byteLength, 0);

  const keepBytes = (store: Map<string, StoredBytes>, id: string, bytes: ArrayBuffer, type: string): void => {
    if (!store.has(id)) store.set(id, { bytes: bytes.slice(0), type });
  };

  return {
    databaseName: null,
    putUnit: (unit) =>
      task(() => {
        const text = canonicalText(unit);
        const same = units.get(unitKey(unit));
        if (same !== undefined && canonicalText(same) === text) return;
        if (revisionsOf(unit.id).some((kept) => kept.revision >= unit.revision)) {
          throw new RecordError('clash', { detail: `unit ${unit.id}, revision ${unit.revision}` });
        }
        units.set(unitKey(unit), structuredClone(unit));
      }),
    units: () => task(() => latestUnits([...units.values()])),
    unitRevisions: (id) => task(() => revisionsOf(id)),

    beginRound: (round, firstEntry) =>
      task(() => {
        const header = firstHeader(round, firstEntry);
        const kept = headers.get(round.id);
        const plan = plans.get(round.id);
        if (kept !== undefined && plan !== undefined) {
          const { schema, id, unit, startedAt, demo } = kept;
          const first = entries.get(id)?.[0] ?? null;
          if (sameContent({ schema, id, unit, startedAt, plan, demo }, round) && sameContent(first, firstEntry)) return;
          throw new RecordError('clash', { detail: `round ${round.id}` });
        }
        const place = {
          header: { ...header, entries: 0 },
          tombstone: deleted.get(round.id),
          sameId: entryById.get(firstEntry.id),
        };
        placeEntry(firstEntry, place);
        headers.set(round.id, header);
        plans.set(round.id, structuredClone(round.plan));
        addEntry(firstEntry);
      }),
    append: (entry) =>
      task(() => {
        const header = headers.get(entry.round);
        const place = { header, tombstone: deleted.get(entry.round), sameId: entryById.get(entry.id) };
        if (placeEntry(entry, place) === 'kept' || header === undefined) return;
        addEntry(entry);
        headers.set(entry.round, nextHeader(header, entry));
      }),
    rounds: () => task(() => byNewest([...headers.values()])),
    round: (id) => task(() => wholeRound(id, headers.get(id), plans.get(id), entries.get(id) ?? [])),
    entriesOf: (rounds) => task(() => rounds.map((round) => entries.get(round) ?? [])),
    roundsOf: (ids) => task(() => sortOut(ids, (id) => wholeRound(id, headers.get(id), plans.get(id), entries.get(id) ?? []))),
    unfinishedRounds: () => task(() => byNewest([...headers.values()].filter(({ completedAt }) => completedAt === null))),
    deleteRound: (id, at) =>
      task(() => {
        if (deleted.has(id)) return;
        if (!headers.has(id)) throw new RecordError('missing', { detail: `round ${id}` });
        deleted.set(id, { id, at });
        removeRound(id);
      }),

    appendEvent: (event) =>
      task(() => {
        const text = canonicalText(event);
        const kept = events.get(event.id);
        if (kept === undefined) events.set(event.id, structuredClone(event));
        else if (canonicalText(kept) !== text) throw new RecordError('clash', { detail: `event ${event.id}` });
      }),
    events: (unit) => task(() => byTime([...events.values()].filter((event) => event.unit === unit))),

    putClip: (id, bytes, type) => task(() => keepBytes(clips, id, bytes, type)),
    clip: (id) => task(() => clips.get(id) ?? null),
    clipIds: () => task(() => [...clips.keys()].sort()),
    clipBytesUsed: () => task(used),
    dropOldestClips: (cap) =>
      task(() => {
        const before = used();
        const notes = new Set([...entryById.values()].map((entry) => (entry.kind === 'noted' ? entry.clip : null)));
        for (const id of [...clips.keys()]) {
          if (used() <= cap) break;
          if (!notes.has(id)) clips.delete(id);
        }
        return before - used();
      }),
    putPhoto: (id, bytes, type) =>
      task(() => {
        if (!deleted.has(id)) keepBytes(photos, id, bytes, type);
      }),
    photo: (id) => task(() => photos.get(id) ?? null),
    photoIds: () => task(() => [...photos.keys()].sort()),
    deletePhoto: (id, at) =>
      task(() => {
        photos.delete(id);
        if (!deleted.has(id)) deleted.set(id, { id, at });
      }),

    settings: () => task(() => settings),
    putSettings: (chosen) =>
      task(() => {
        canonicalText(chosen);
        settings = structuredClone(chosen);
      }),
    meta: (key) => task(() => meta.get(key) ?? null),
    putMeta: (key, value) =>
      task(() => {
        canonicalText(value);
        meta.set(key, structuredClone(value));
      }),

    exportDataset: () =>
      task(() =>
        asDataset({
          units: [...units.values()],
          rounds: gather(byId(headers), plans, [...entries.values()].flat()),
          events: byId(events),
          deleted: byId(deleted),
          settings,
        }),
      ),
    importDataset: (dataset) =>
      task(() => {
        const plan = planImport(
          {
            units: [...units.values()],
            headers,
            entries,
            events,
            deleted,
          },
          dataset,
        );
        const added = [
          ...plan.newRounds.flatMap(({ stored }) => stored.entries),
          ...plan.longerRounds.flatMap((longer) => longer.added),
        ];
        const removed = new Set(plan.removedRounds);
        const taken = added.find(({ id }) => entryById.has(id) && !removed.has(entryById.get(id)?.round ?? ''));
        if (taken !== undefined) throw new RecordError('clash', { detail: `entry ${taken.id}` });
        plan.removedRounds.forEach(removeRound);
        for (const unit of plan.removedUnits) units.delete(unitKey(unit));
        for (const id of plan.removedEvents) events.delete(id);
        for (const unit of plan.units) units.set(unitKey(unit), structuredClone(unit));
        for (const event of plan.events) events.set(event.id, structuredClone(event));
        for (const tombstone of plan.tombstones) {
          deleted.set(tombstone.id, structuredClone(tombstone));
          photos.delete(tombstone.id);
        }
        for (const { header, stored } of plan.newRounds) {
          headers.set(header.id, header);
          plans.set(header.id, structuredClone(stored.round.plan));
          stored.entries.forEach(addEntry);
        }
        for (const { header, added } of plan.longerRounds) {
          headers.set(header.id, header);
          added.forEach(addEntry);
        }
        return plan.report;
      }),

    estimate: async () => ({ usedBytes: null, quotaBytes: null, persisted: false }),
    persist: async () => false,
    lockRound,
    close: async () => {
      closed = true;
    },
  };
}

function byId<T extends { readonly id: string }>(items: ReadonlyMap<string, T>): readonly T[] {
  return [...items.values()].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}
