/** What an import changes here. Pure, so that both implementations of the record agree. */
import { canonicalText } from '../domain/files/canonical.ts';
import type { Dataset, Tombstone } from '../domain/files/dataset.ts';
import { requirePlain } from '../domain/files/plain.ts';
import { sameContent } from '../domain/files/sameContent.ts';
import type { Entry, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import { headerOf } from './appending.ts';
import type { ImportReport, RoundHeader, StoredRound } from './record.ts';
import { RecordError } from './recordError.ts';

/** What is here of the things that an import brings. */
export interface PresentContents {
  /** Every revision. */
  readonly units: readonly Unit[];
  readonly headers: ReadonlyMap<string, RoundHeader>;
  /** Entries of at least those rounds that are both here and in the import. */
  readonly entries: ReadonlyMap<string, readonly Entry[]>;
  readonly events: ReadonlyMap<string, UnitEvent>;
  readonly deleted: ReadonlyMap<string, Tombstone>;
}

export interface ImportPlan {
  readonly units: readonly Unit[];
  readonly newRounds: readonly { readonly header: RoundHeader; readonly stored: StoredRound }[];
  /** Rounds here that the import continues. */
  readonly longerRounds: readonly { readonly header: RoundHeader; readonly added: readonly Entry[] }[];
  readonly events: readonly UnitEvent[];
  readonly tombstones: readonly Tombstone[];
  /** Things here that were deleted elsewhere. */
  readonly removedUnits: readonly Unit[];
  readonly removedRounds: readonly string[];
  readonly removedEvents: readonly string[];
  readonly report: ImportReport;
}

export const unitKey = (unit: Unit): string => `${unit.id}\u0000${unit.revision}`;

/**
 * Merge by id. What was deleted stays deleted, whichever side deleted it. Of a round that is on both sides the longer one
 * is kept when one continues the other, and the one here when they differ (reported as a conflict); the same goes for
 * a unit revision and an event. Settings belong to a device and are passed over.
 * @throws RecordError `torn` when the import itself does not hang together: a round with gaps, entries without a round,
 * one id with two contents.
 */
export function planImport(present: PresentContents, incoming: Dataset): ImportPlan {
  requireIds(incoming);
  const conflicts: string[] = [];

  const tombstones = new Map<string, Tombstone>();
  for (const tombstone of incoming.deleted) {
    if (!present.deleted.has(tombstone.id)) tombstones.set(tombstone.id, tombstone);
  }
  const isDeleted = (id: string): boolean => present.deleted.has(id) || tombstones.has(id);

  const units = additions(
    incoming.units.filter(({ id }) => !isDeleted(id)),
    new Map(present.units.map((unit) => [unitKey(unit), unit])),
    unitKey,
    (unit) => conflicts.push(`unit ${unit.id}, revision ${unit.revision}`),
  );
  const events = additions(
    incoming.events.filter(({ id, unit }) => !isDeleted(id) && !isDeleted(unit)),
    present.events,
    ({ id }) => id,
    ({ id }) => conflicts.push(`event ${id}`),
  );

  const newRounds: { header: RoundHeader; stored: StoredRound }[] = [];
  const longerRounds: { header: RoundHeader; added: readonly Entry[] }[] = [];
  const plain = new WeakSet<object>();
  for (const stored of roundsOf(incoming)) {
    const { id, unit } = stored.round;
    const header = headerOf(stored, plain);
    if (isDeleted(id) || isDeleted(unit)) continue;
    const here = present.headers.has(id) ? (present.entries.get(id) ?? []) : null;
    if (here === null) {
      newRounds.push({ header, stored });
    } else if (!isPrefix(here, stored.entries) && !isPrefix(stored.entries, here)) {
      conflicts.push(`round ${id}`);
    } else if (stored.entries.length > here.length) {
      longerRounds.push({ header, added: stored.entries.slice(here.length) });
    }
  }

  return {
    units,
    newRounds,
    longerRounds,
    events,
    tombstones: [...tombstones.values()],
    removedUnits: present.units.filter(({ id }) => tombstones.has(id)),
    removedRounds: [...present.headers.values()]
      .filter(({ id, unit }) => tombstones.has(id) || tombstones.has(unit))
      .map(({ id }) => id),
    removedEvents: [...present.events.values()]
      .filter(({ id, unit }) => tombstones.has(id) || tombstones.has(unit))
      .map(({ id }) => id),
    report: {
      units: units.length,
      rounds: newRounds.length,
      entries:
        newRounds.reduce((sum, { stored }) => sum + stored.entries.length, 0) +
        longerRounds.reduce((sum, { added }) => sum + added.length, 0),
      events: events.length,
      deleted: tombstones.size,
      conflicts,
    },
  };
}

function requireIds(incoming: Dataset): void {
  const ids: unknown[] = [
    ...incoming.units.map(({ id }) => id),
    ...incoming.rounds.flatMap(({ id, unit }) => [id, unit]),
    ...incoming.entries.flatMap(({ id, round }) => [id, round]),
    ...incoming.events.flatMap(({ id, unit }) => [id, unit]),
    ...incoming.deleted.map(({ id }) => id),
  ];
  if (!ids.every((id) => typeof id === 'string') || !incoming.units.every(({ revision }) => Number.isInteger(revision))) {
    throw new RecordError('torn', { detail: 'something without an id' });
  }
}

/** Those of `incoming` that are not known yet, once each. */
function additions<T>(
  incoming: readonly T[],
  known: ReadonlyMap<string, T>,
  keyOf: (item: T) => string,
  onConflict: (item: T) => void,
): T[] {
  const texts = new Map<string, string>();
  const added: T[] = [];
  for (const item of incoming) {
    const key = keyOf(item);
    const text = canonicalText(item);
    const here = known.get(key);
    const other = texts.get(key) ?? (here === undefined ? undefined : canonicalText(here));
    if (other === undefined) {
      texts.set(key, text);
      added.push(item);
    } else if (other !== text) onConflict(item);
  }
  return added;
}

function roundsOf(incoming: Dataset): readonly StoredRound[] {
  const entries = new Map<string, Entry[]>(incoming.rounds.map(({ id }) => [id, []]));
  if (entries.size !== incoming.rounds.length) throw new RecordError('torn', { detail: 'one round twice' });
  const seen = new Set<string>();
  for (const entry of incoming.entries) {
    requirePlain(entry);
    if (seen.has(entry.id)) throw new RecordError('torn', { detail: `entry ${entry.id} in two places` });
    seen.add(entry.id);
    const ofRound = entries.get(entry.round);
    if (ofRound === undefined) throw new RecordError('torn', { detail: `entry ${entry.id} of no round` });
    ofRound.push(entry);
  }
  return incoming.rounds.map((round) => ({
    round,
    entries: (entries.get(round.id) ?? []).sort((a, b) => a.seq - b.seq),
  }));
}

function isPrefix(short: readonly Entry[], long: readonly Entry[]): boolean {
  return short.length <= long.length && short.every((entry, index) => sameContent(entry, long[index]));
}
