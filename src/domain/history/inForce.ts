/** The answers and skips in force at the end of a round, by key of the plan. */
import type { Entry } from '../round/entry.ts';

export type InForce = Extract<Entry, { kind: 'answered' | 'skipped' }>;

/**
 * Which entry counts for each check, with corrections and undo honored.
 *
 * The same as `replay` gives, without the rest of a round's state: looking back over a thousand rounds needs nothing else.
 * Entries in any order; cost is linear for entries already in order.
 */
export function inForce(entries: readonly Entry[]): ReadonlyMap<string, InForce> {
  const before = known.get(entries);
  if (before?.length === entries.length) return before.found;
  const found = workOut(entries);
  known.set(entries, { length: entries.length, found });
  return found;
}

/** A round that is over never changes: looking back again costs only what is new. Entries are only ever appended. */
const known = new WeakMap<readonly Entry[], { readonly length: number; readonly found: ReadonlyMap<string, InForce> }>();

function workOut(entries: readonly Entry[]): ReadonlyMap<string, InForce> {
  const found = new Map<string, InForce>();
  for (const entry of inOrder(entries)) {
    if (entry.kind === 'answered' || entry.kind === 'skipped') found.set(entry.key, entry);
    else if (entry.kind === 'undone' && found.get(entry.key)?.id === entry.supersedes) found.delete(entry.key);
  }
  return found;
}

/** Entries by `seq`; the same array when it is in order already. */
export function inOrder(entries: readonly Entry[]): readonly Entry[] {
  for (let index = 1; index < entries.length; index++) {
    const before = entries[index - 1];
    const here = entries[index];
    if (before && here && before.seq > here.seq) return [...entries].sort((a, b) => a.seq - b.seq);
  }
  return entries;
}
