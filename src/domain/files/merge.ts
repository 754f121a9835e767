/** Two copies of the record become one. */
import type { Entry, Round } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';
import { canonicalText } from './canonical.ts';
import { DATASET_SCHEMA, type Dataset, type Tombstone } from './dataset.ts';
import { sameContent } from './sameContent.ts';

/** When a round went because its unit was deleted: before every real time, so that the order of merges does not matter. */
const WITH_ITS_UNIT = 0;

/**
 * Merge by id without duplicates. Pure; cost is linear apart from sorting.
 *
 * Laws (property-tested): merge(a, b) = merge(b, a); merge(merge(a, b), c) = merge(a, merge(b, c)); merge(m, m) = m for any
 * merged m. They rest on rounds, entries and events never changing once written.
 * - Units: the higher revision; of equal ones the later change, then the greater canonical text.
 * - Rounds and events: by id; should two differ under one id, the greater canonical text, everywhere alike.
 * - Entries: of one round the longer history, since one copy normally continues the other; of two equally long ones that
 *   differ the greater canonical text. Two histories are never mixed: their order would be nobody's.
 * - Deleted stays deleted; a unit takes its rounds and events with it, a round its entries.
 * @returns sorted: units, rounds, events and tombstones by id, entries by round and sequence
 */
export function merge(a: Dataset, b: Dataset): Dataset {
  const deleted = new Map<string, Tombstone>();
  const bury = (tombstone: Tombstone) => {
    const known = deleted.get(tombstone.id);
    if (!known || tombstone.at > known.at) deleted.set(tombstone.id, { id: tombstone.id, at: tombstone.at });
  };
  for (const tombstone of [...a.deleted, ...b.deleted]) bury(tombstone);
  // Made explicit, so that entries which arrive later, from a third copy, still find their round deleted.
  for (const round of [...a.rounds, ...b.rounds]) if (deleted.has(round.unit)) bury({ id: round.id, at: WITH_ITS_UNIT });

  const units = unique([...a.units, ...b.units], newerUnit).filter((unit) => !deleted.has(unit.id));
  const rounds = unique<Round>([...a.rounds, ...b.rounds], greater).filter(
    (round) => !deleted.has(round.id) && !deleted.has(round.unit),
  );
  const entries = mergeEntries(a.entries, b.entries).filter((entry) => !deleted.has(entry.round));
  const events = unique([...a.events, ...b.events], greater).filter(
    (event) => !deleted.has(event.id) && !deleted.has(event.unit),
  );
  const settings = mergeSettings(a.settings, b.settings);
  return {
    schema: DATASET_SCHEMA,
    units: units.sort(byId),
    rounds: rounds.sort(byId),
    entries: entries.sort((x, y) => compare(x.round, y.round) || x.seq - y.seq || compare(x.id, y.id)),
    events: events.sort(byId),
    deleted: [...deleted.values()].sort(byId),
    ...(settings ? { settings } : {}),
  };
}

function unique<T extends { readonly id: string }>(items: readonly T[], choose: (x: T, y: T) => T): T[] {
  const kept = new Map<string, T>();
  for (const item of items) {
    const known = kept.get(item.id);
    kept.set(item.id, known === undefined || known === item ? item : choose(known, item));
  }
  return [...kept.values()];
}

function mergeEntries(a: readonly Entry[], b: readonly Entry[]): Entry[] {
  const histories = historiesOf(a);
  for (const [round, theirs] of historiesOf(b)) {
    const ours = histories.get(round);
    histories.set(round, ours === undefined ? theirs : longer(ours, theirs));
  }
  return [...histories.values()].flat();
}

/** Entries by round in order, one for each place. */
function historiesOf(entries: readonly Entry[]): Map<string, readonly Entry[]> {
  const places = new Map<string, Map<number, Entry>>();
  for (const entry of entries) {
    const ofRound = places.get(entry.round) ?? new Map<number, Entry>();
    const known = ofRound.get(entry.seq);
    ofRound.set(entry.seq, known === undefined ? entry : greater(known, entry));
    places.set(entry.round, ofRound);
  }
  return new Map([...places].map(([round, ofRound]) => [round, [...ofRound.values()].sort((x, y) => x.seq - y.seq)]));
}

function longer(x: readonly Entry[], y: readonly Entry[]): readonly Entry[] {
  if (x.length !== y.length) return x.length > y.length ? x : y;
  return x.every((entry, index) => entry === y[index]) ? x : greater(x, y);
}

function greater<T>(x: T, y: T): T {
  // The usual case, without writing either out.
  if (sameContent(x, y)) return x;
  return canonicalText(y) > canonicalText(x) ? y : x;
}

function newerUnit(x: Unit, y: Unit): Unit {
  if (x.revision !== y.revision) return x.revision > y.revision ? x : y;
  if (x.updatedAt !== y.updatedAt) return x.updatedAt > y.updatedAt ? x : y;
  return greater(x, y);
}

function mergeSettings(a: Dataset['settings'], b: Dataset['settings']): Dataset['settings'] {
  if (!a || !b) return a ?? b;
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();
  return Object.fromEntries(
    keys.map((key) => {
      const [left, right] = [a[key], b[key]];
      return [key, left === undefined ? (right ?? null) : right === undefined ? left : greater(left, right)];
    }),
  );
}

function byId(x: { readonly id: string }, y: { readonly id: string }): number {
  return compare(x.id, y.id);
}

function compare(x: string, y: string): number {
  return x < y ? -1 : x > y ? 1 : 0;
}
