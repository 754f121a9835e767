/**
 * The record as the rest of the app sees it: units, rounds with their entries, events, clips, photos and settings.
 * Rounds, entries and events are only ever added. One interface, so that the memory implementation passes the very
 * same acceptance suite as the one over IndexedDB.
 *
 * Every promise here rejects with a `RecordError` from its closed set and with nothing else. A write has resolved only
 * when it is durably done; until then nothing may be called kept.
 */
import type { RoundKind } from '../domain/checks/check.ts';
import type { Dataset } from '../domain/files/dataset.ts';
import type { Entry, Round, UnitEvent } from '../domain/round/entry.ts';
import type { Unit } from '../domain/unit/unit.ts';

/** What lists need of a round, without its plan. `entries`, `lastAt` and `completedAt` follow from the entries. */
export interface RoundHeader {
  readonly schema: Round['schema'];
  readonly id: string;
  readonly unit: string;
  /** Name of the unit when the round began. */
  readonly unitName: string;
  readonly kind: RoundKind;
  readonly startedAt: number;
  readonly demo: boolean;
  /** Checks in the plan. */
  readonly checks: number;
  /** How many entries there are, which is also the `seq` that the next one must have. */
  readonly entries: number;
  /** Epoch milliseconds of the last entry. */
  readonly lastAt: number;
  /** Epoch milliseconds of the completion call; null while the round is not complete. */
  readonly completedAt: number | null;
}

export interface StoredRound {
  readonly round: Round;
  /** In `seq` order from 0, without gaps. */
  readonly entries: readonly Entry[];
}

/** Sound or picture with its MIME type. */
export interface StoredBytes {
  readonly bytes: ArrayBuffer;
  readonly type: string;
}

/** The user's choices: plain values, checked by whoever reads them. */
export type StoredSettings = NonNullable<Dataset['settings']>;

export interface ImportReport {
  readonly units: number;
  readonly rounds: number;
  readonly entries: number;
  readonly events: number;
  readonly deleted: number;
  /** What differs here and there under one id, in words; what is here was left as it is. */
  readonly conflicts: readonly string[];
}

export interface Room {
  /** Bytes, as the browser estimates them; null where it does not say. */
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** Whether the browser has promised not to clear it by itself. */
  readonly persisted: boolean;
}

export interface RoundLock {
  /** Idempotent. */
  release(): void;
}

export interface Record {
  /** Of the database, which another realm of this origin may open too; null where the record lives in this page alone. */
  readonly databaseName: string | null;

  /**
   * Keep a revision of a unit; earlier ones stay. The same revision with the same content is success.
   * Troubles: `clash` when that revision holds something else or a later one is kept already.
   */
  putUnit(unit: Unit): Promise<void>;
  /** The latest revision of each unit, archived ones included, by name. */
  units(): Promise<readonly Unit[]>;
  /** Every kept revision, oldest first. */
  unitRevisions(id: string): Promise<readonly Unit[]>;

  /**
   * A new round with its frozen plan and its first entry (`seq` 0), in one step. Repeating it is success.
   * Troubles: `clash`, `gap`, `deleted`.
   */
  beginRound(round: Round, firstEntry: Entry): Promise<void>;
  /**
   * Append one entry, durably. The same id with the same content is success, so a repeat after a doubtful failure is
   * harmless. Troubles: `clash` (id or place taken by something else), `gap`, `missing`, `deleted`, `quota`, `closed`.
   */
  append(entry: Entry): Promise<void>;
  /** Newest first; cheap, plans are not read. */
  rounds(): Promise<readonly RoundHeader[]>;
  /** Troubles: `missing`; `torn` with what can be read as `salvage` (a {@link StoredRound}, or null without its plan). */
  round(id: string): Promise<StoredRound>;
  /** Entries of several rounds in the order asked, without their plans: for series over years. */
  entriesOf(rounds: readonly string[]): Promise<readonly (readonly Entry[])[]>;
  /** Several rounds at once, in the order asked; ids of those that cannot be read, or are gone, apart. */
  roundsOf(ids: readonly string[]): Promise<{ readonly rounds: readonly StoredRound[]; readonly torn: readonly string[] }>;
  /** Rounds without a completion call, newest first. */
  unfinishedRounds(): Promise<readonly RoundHeader[]>;
  /** Takes entries, plan, clips and photos of the round away and leaves a tombstone. Deleting twice is success. */
  deleteRound(id: string, at: number): Promise<void>;

  /** The same id with the same content is success; with other content `clash`. */
  appendEvent(event: UnitEvent): Promise<void>;
  /** Events of one unit in order of time. */
  events(unit: string): Promise<readonly UnitEvent[]>;

  /** Relaxed durability: a clip may be lost with the power, an answer may not. The same id again replaces nothing. */
  putClip(id: string, bytes: ArrayBuffer, type: string): Promise<void>;
  clip(id: string): Promise<StoredBytes | null>;
  clipIds(): Promise<readonly string[]>;
  clipBytesUsed(): Promise<number>;
  /**
   * Free the oldest clips until at most `cap` bytes are used. The clip of a spoken note is the note itself and is never
   * dropped. @returns bytes freed.
   */
  dropOldestClips(cap: number): Promise<number>;
  /** The same id again replaces nothing; a photo that was deleted stays deleted, and that is success too. */
  putPhoto(id: string, bytes: ArrayBuffer, type: string): Promise<void>;
  photo(id: string): Promise<StoredBytes | null>;
  photoIds(): Promise<readonly string[]>;
  /** Takes the picture away and leaves a tombstone; the entry stays and says that there was one. Twice is success. */
  deletePhoto(id: string, at: number): Promise<void>;

  settings(): Promise<StoredSettings | null>;
  putSettings(settings: StoredSettings): Promise<void>;
  /** Small facts about the record itself, such as when it was last saved elsewhere. */
  meta(key: string): Promise<unknown>;
  putMeta(key: string, value: unknown): Promise<void>;

  /** The latest revision of each unit, all rounds, entries, events and tombstones, and the settings. Not clips and photos. */
  exportDataset(): Promise<Dataset>;
  /**
   * All or nothing: a failure in the middle leaves the record as it was. Adds, and removes what was deleted elsewhere;
   * never overwrites. Settings are passed over. Troubles: `torn` for a file that does not hang together, `quota`.
   */
  importDataset(dataset: Dataset): Promise<ImportReport>;

  estimate(): Promise<Room>;
  /** Ask the browser not to clear the record by itself. @returns whether it promised. */
  persist(): Promise<boolean>;
  /** One tab at a time may run a round. @returns null when another one does. */
  lockRound(id: string): Promise<RoundLock | null>;
  /** After the write that is under way. Idempotent. */
  close(): Promise<void>;
}
