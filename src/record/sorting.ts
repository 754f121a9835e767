/** The orders in which the record answers. */
import type { UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import type { RoundHeader } from './record.ts';

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The latest revision of each unit, by name. */
export function latestUnits(revisions: readonly Unit[]): readonly Unit[] {
  const latest = new Map<string, Unit>();
  for (const unit of revisions) {
    const known = latest.get(unit.id);
    if (known === undefined || unit.revision > known.revision) latest.set(unit.id, unit);
  }
  return [...latest.values()].sort((a, b) => byText(a.name, b.name) || byText(a.id, b.id));
}

/** Newest first; of two begun in the same millisecond the higher id first, so that the order never changes. */
export function byNewest(headers: readonly RoundHeader[]): readonly RoundHeader[] {
  return [...headers].sort((a, b) => b.startedAt - a.startedAt || byText(b.id, a.id));
}

export function byTime(events: readonly UnitEvent[]): readonly UnitEvent[] {
  return [...events].sort((a, b) => a.at - b.at || byText(a.id, b.id));
}
