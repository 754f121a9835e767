/** Shape of the database as the newest migration leaves it. Changing anything here needs a new migration. */
import type { DBSchema } from 'idb';
import type { Tombstone } from '../domain/files/dataset.ts';
import type { Entry, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';
import type { PartRow, PlanRow } from './planParts.ts';
import type { RoundHeader, StoredSettings } from './record.ts';

/** What is known of a clip or photo without reading its bytes. */
export interface BytesRow {
  readonly id: string;
  readonly type: string;
  readonly size: number;
  /** Epoch milliseconds. */
  readonly keptAt: number;
}

export interface SealedRow {
  readonly round: string;
  /** From `seq` 0, without gaps. */
  readonly entries: readonly Entry[];
  readonly ids: readonly string[];
  readonly noteClips: readonly string[];
}

export interface RecordSchema extends DBSchema {
  units: { key: [id: string, revision: number]; value: Unit };
  rounds: { key: string; value: RoundHeader; indexes: { startedAt: number } };
  plans: { key: string; value: PlanRow };
  parts: { key: string; value: PartRow };
  /** `noteClip` holds only entries with a top-level `clip`, which are the notes. */
  entries: { key: [round: string, seq: number]; value: Entry; indexes: { id: string; noteClip: string } };
  /** The first entries of a round, when they came in together; later ones are in `entries`. Ids and note clips are for the indexes. */
  sealed: { key: string; value: SealedRow; indexes: { ids: string; noteClips: string } };
  events: { key: string; value: UnitEvent; indexes: { unit: string } };
  clips: { key: string; value: BytesRow; indexes: { keptAt: number } };
  clipBytes: { key: string; value: { readonly id: string; readonly bytes: ArrayBuffer } };
  photos: { key: string; value: BytesRow };
  photoBytes: { key: string; value: { readonly id: string; readonly bytes: ArrayBuffer } };
  settings: { key: 'settings'; value: { readonly key: 'settings'; readonly settings: StoredSettings } };
  deleted: { key: string; value: Tombstone };
  meta: { key: string; value: { readonly key: string; readonly value: unknown } };
}
