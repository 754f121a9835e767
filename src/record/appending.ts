/** The rules of an append-only round, the same for every implementation of the record. Pure. */
import { DATASET_SCHEMA, type Dataset, type Tombstone } from '../domain/files/dataset.ts';
import { requirePlain } from '../domain/files/plain.ts';
import { sameContent } from '../domain/files/sameContent.ts';
import type { Entry, Round, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import type { RoundHeader, StoredRound, StoredSettings } from './record.ts';
import { RecordError } from './recordError.ts';
import { latestUnits } from './sorting.ts';

/** What is stored already where an entry wants to go. */
export interface EntryPlace {
  readonly header: RoundHeader | undefined;
  readonly tombstone: Tombstone | undefined;
  /** The stored entry with the same id, in whichever round. */
  readonly sameId: Entry | undefined;
}

/**
 * Whether an entry is to be added (`add`) or is there already (`kept`).
 * @throws RecordError `deleted`, `missing`, `clash` or `gap`.
 * @throws RangeError for an entry that is not plain data or holds NaN.
 */
export function placeEntry(entry: Entry, { header, tombstone, sameId }: EntryPlace): 'add' | 'kept' {
  requirePlain(entry);
  if (tombstone !== undefined) throw new RecordError('deleted', { detail: entry.round });
  if (header === undefined) throw new RecordError('missing', { detail: `round ${entry.round}` });
  if (sameId !== undefined) {
    if (sameContent(sameId, entry)) return 'kept';
    throw new RecordError('clash', { detail: `entry ${entry.id}` });
  }
  if (!Number.isInteger(entry.seq) || entry.seq < 0 || entry.seq > header.entries) {
    throw new RecordError('gap', { detail: `entry ${entry.seq} after ${header.entries}` });
  }
  if (entry.seq < header.entries) throw new RecordError('clash', { detail: `place ${entry.seq} of round ${entry.round}` });
  return 'add';
}

/**
 * The header of a round that holds only its first entry.
 * @param seen parts of plans that are known to be plain data, where many rounds come in together
 * @throws RecordError `gap` when that is not entry 0 of this round.
 */
export function firstHeader(round: Round, first: Entry, seen?: WeakSet<object>): RoundHeader {
  requirePlain(round, seen);
  if (first.round !== round.id || first.seq !== 0) {
    throw new RecordError('gap', { detail: `round ${round.id} cannot begin with entry ${first.seq} of ${first.round}` });
  }
  const empty: RoundHeader = {
    schema: round.schema,
    id: round.id,
    unit: round.unit,
    unitName: round.plan.unit.name,
    kind: round.plan.round,
    startedAt: round.startedAt,
    demo: round.demo,
    checks: round.plan.checks.length,
    entries: 0,
    lastAt: round.startedAt,
    completedAt: null,
  };
  return nextHeader(empty, first);
}

/** The header after one more entry. */
export function nextHeader(header: RoundHeader, entry: Entry): RoundHeader {
  return {
    ...header,
    entries: header.entries + 1,
    lastAt: entry.at,
    completedAt: header.completedAt ?? (entry.kind === 'completed' ? entry.at : null),
  };
}

/**
 * The header that a whole round has.
 * @param seen see {@link firstHeader}
 * @throws RecordError `torn` when its entries have a gap or belong elsewhere.
 */
export function headerOf({ round, entries }: StoredRound, seen?: WeakSet<object>): RoundHeader {
  const [first, ...rest] = entries;
  if (first === undefined || !isGapFree(round.id, entries)) throw new RecordError('torn', { detail: `round ${round.id}` });
  return rest.reduce(nextHeader, firstHeader(round, first, seen));
}

/** Whether entries are 0, 1, 2 … of one round. */
export function isGapFree(round: string, entries: readonly Entry[]): boolean {
  return entries.every((entry, index) => entry.round === round && entry.seq === index);
}

/**
 * A round as read, when it hangs together.
 * @throws RecordError `missing` when there is nothing; `torn`, with what is left, when something is gone.
 */
export function wholeRound(
  id: string,
  header: RoundHeader | undefined,
  plan: Round['plan'] | undefined,
  entries: readonly Entry[],
): StoredRound {
  if (header === undefined) {
    if (plan === undefined && entries.length === 0) throw new RecordError('missing', { detail: `round ${id}` });
    throw new RecordError('torn', { detail: `round ${id} has lost its header` });
  }
  if (plan === undefined) throw new RecordError('torn', { detail: `round ${id} has lost its plan` });
  const { schema, unit, startedAt, demo } = header;
  const stored: StoredRound = { round: { schema, id, unit, startedAt, plan, demo }, entries };
  if (entries.length !== header.entries || !isGapFree(id, entries)) {
    throw new RecordError('torn', { salvage: stored, detail: `round ${id} has lost entries` });
  }
  return stored;
}

/** Rounds that hang together, and the ids of those that do not. @param read throws a RecordError for one that does not */
export function sortOut(
  ids: readonly string[],
  read: (id: string, index: number) => StoredRound,
): { readonly rounds: readonly StoredRound[]; readonly torn: readonly string[] } {
  const rounds: StoredRound[] = [];
  const torn: string[] = [];
  for (const [index, id] of ids.entries()) {
    try {
      rounds.push(read(id, index));
    } catch (thrown) {
      if (!(thrown instanceof RecordError)) throw thrown;
      torn.push(id);
    }
  }
  return { rounds, torn };
}

/**
 * Rounds put together for saving elsewhere. A damaged round is taken as far as it hangs together, and left out when its
 * plan or its first entry is gone, rather than keeping all others from being saved.
 * @param entries of any rounds; those of one round in `seq` order.
 */
export function gather(
  headers: readonly RoundHeader[],
  plans: ReadonlyMap<string, Round['plan']>,
  entries: readonly Entry[],
): readonly StoredRound[] {
  const whole = new Map<string, Entry[]>();
  for (const entry of entries) {
    const before = whole.get(entry.round) ?? [];
    if (entry.seq === before.length) before.push(entry);
    whole.set(entry.round, before);
  }
  return headers.flatMap(({ schema, id, unit, startedAt, demo }): StoredRound[] => {
    const plan = plans.get(id);
    const kept = whole.get(id) ?? [];
    return plan === undefined || kept.length === 0 ? [] : [{ round: { schema, id, unit, startedAt, plan, demo }, entries: kept }];
  });
}

/** What is stored as one dataset; of each unit the latest revision. */
export function asDataset(stored: {
  readonly units: readonly Unit[];
  readonly rounds: readonly StoredRound[];
  readonly events: readonly UnitEvent[];
  readonly deleted: readonly Tombstone[];
  readonly settings: StoredSettings | null;
}): Dataset {
  return {
    schema: DATASET_SCHEMA,
    units: latestUnits(stored.units),
    rounds: stored.rounds.map(({ round }) => round),
    entries: stored.rounds.flatMap(({ entries }) => entries),
    events: stored.events,
    deleted: stored.deleted,
    ...(stored.settings === null ? {} : { settings: stored.settings }),
  };
}

/** Clips and photos that entries point at. */
export function attachmentsOf(entries: readonly Entry[]): {
  readonly clips: readonly string[];
  readonly photos: readonly string[];
} {
  const clips = new Set<string>();
  const photos = new Set<string>();
  for (const entry of entries) {
    if ('how' in entry && entry.how.clip !== null) clips.add(entry.how.clip);
    if (entry.kind !== 'noted') continue;
    if (entry.clip !== null) clips.add(entry.clip);
    if (entry.photo !== null) photos.add(entry.photo);
  }
  return { clips: [...clips], photos: [...photos] };
}
