/** Everything as one text. The format is documented in `public/schema/gloveside-export-1.json`. */
import type { Plan, PlannedCheck } from '../plan/plan.ts';
import type { Round } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';
import type { Dataset } from './dataset.ts';

export const EXPORT_FORMAT = 'gloveside-export';
/** Rises when an older app could no longer read the file. */
export const EXPORT_VERSION = 1;

/**
 * A plan with its checks and its unit as positions in `parts`. A thousand rounds of one unit repeat the same hundred
 * checks: written out they are a hundred times as long.
 */
export interface PackedRound extends Omit<Round, 'plan'> {
  readonly plan: Omit<Plan, 'unit' | 'checks'> & { readonly unit: number; readonly checks: readonly number[] };
}

export interface ExportFile extends Omit<Dataset, 'rounds'> {
  readonly format: typeof EXPORT_FORMAT;
  readonly version: typeof EXPORT_VERSION;
  readonly rounds: readonly PackedRound[];
  readonly parts: { readonly checks: readonly PlannedCheck[]; readonly units: readonly Unit[] };
}

/**
 * The whole record as one versioned JSON text; clips and photos travel beside it in a zip (`zip.ts`).
 * The same data gives the same text: there is no time of export in it.
 */
export function exportAll(data: Dataset): string {
  const checks = collector<PlannedCheck>();
  const units = collector<Unit>();
  const rounds = data.rounds.map(
    (round): PackedRound => ({
      ...round,
      plan: { ...round.plan, unit: units.place(round.plan.unit), checks: round.plan.checks.map(checks.place) },
    }),
  );
  const { settings } = data;
  const file: ExportFile = {
    format: EXPORT_FORMAT,
    version: EXPORT_VERSION,
    schema: data.schema,
    units: data.units,
    parts: { checks: checks.items, units: units.items },
    rounds,
    entries: data.entries,
    events: data.events,
    deleted: data.deleted,
    ...(settings ? { settings } : {}),
  };
  return JSON.stringify(file);
}

/** Gives equal values one place in a list. */
function collector<T extends object>(): { readonly items: T[]; readonly place: (item: T) => number } {
  const items: T[] = [];
  const places = new Map<string, number>();
  const seen = new WeakMap<T, number>();
  const place = (item: T): number => {
    const before = seen.get(item);
    if (before !== undefined) return before;
    const text = JSON.stringify(item);
    const known = places.get(text);
    const found = known ?? items.push(item) - 1;
    if (known === undefined) places.set(text, found);
    seen.set(item, found);
    return found;
  };
  return { items, place };
}
