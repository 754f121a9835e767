/** Everything that is kept about the units, as one value: what is exported, imported and merged. */
import type { Entry, Round, UnitEvent } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';

export const DATASET_SCHEMA = 1;

/** What was deleted, so that a merge with an older copy does not bring it back. */
export interface Tombstone {
  /** Id of a unit, round, event or photo. A deleted unit takes its rounds and events with it, a round its entries. */
  readonly id: string;
  /** Epoch milliseconds. */
  readonly at: number;
}

export interface Dataset {
  readonly schema: typeof DATASET_SCHEMA;
  readonly units: readonly Unit[];
  readonly rounds: readonly Round[];
  readonly entries: readonly Entry[];
  readonly events: readonly UnitEvent[];
  readonly deleted: readonly Tombstone[];
  /** Preferences as plain values; they belong to a device and are never merged. */
  readonly settings?: Readonly<Record<string, string | number | boolean | null>>;
}

export const EMPTY_DATASET: Dataset = { schema: DATASET_SCHEMA, units: [], rounds: [], entries: [], events: [], deleted: [] };
