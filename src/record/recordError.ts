/** Everything that can go wrong with the record: a closed set, each with a sentence that says what to do. */

export type RecordTrouble =
  /** The device has no room, even after old clips were freed. */
  | 'quota'
  /** Another tab holds an older version of the database open. */
  | 'blocked'
  /** The database was written by a newer version of the app. */
  | 'newer-database'
  /** What is stored does not hang together. */
  | 'torn'
  /** The connection is gone: closed for a newer version, or ended by the browser. */
  | 'closed'
  /** The same id, or the same place in a round, already holds something else. */
  | 'clash'
  /** An entry that does not follow the last one. */
  | 'gap'
  | 'missing'
  /** The round was deleted; nothing can be added to it. */
  | 'deleted'
  /** The browser gives no reason that is known here. */
  | 'failed';

const SENTENCES: Readonly<Record<RecordTrouble, string>> = {
  quota: 'There is no room left on this device. Nothing was kept. Free some space, then try again.',
  blocked: 'Gloveside is open in another tab with an older version. Close the other tab, and this one goes on by itself.',
  'newer-database':
    'These records were written by a newer version of Gloveside. Load the newer version to open them. Nothing was changed.',
  torn: 'Part of this record is damaged. What can still be read is shown; save a copy of it before going on.',
  closed:
    'The record was closed because a newer version is starting, or because the browser ended it. Load this page again to go on.',
  clash: 'Something else is already kept in this place. Was the same round going in another tab? Load this page again to go on.',
  gap: 'An entry before this one is missing, so this one was not kept. Load this page again to go on.',
  missing: 'This is not in the record on this device.',
  deleted: 'This round was deleted, so nothing can be added to it.',
  failed: 'The record could not be written or read. Nothing was kept. Try again.',
};

export interface RecordErrorOptions {
  readonly cause?: unknown;
  /** For `torn`: what can still be read. */
  readonly salvage?: unknown;
  /** For whoever mends it; not for the ear. */
  readonly detail?: string;
}

export class RecordError extends Error {
  override readonly name = 'RecordError';
  readonly trouble: RecordTrouble;
  /** Short, for the ear and the screen. */
  readonly sentence: string;
  readonly salvage: unknown;

  constructor(trouble: RecordTrouble, options: RecordErrorOptions = {}) {
    const sentence = SENTENCES[trouble];
    super(options.detail === undefined ? sentence : `${sentence} (${options.detail})`, { cause: options.cause });
    this.trouble = trouble;
    this.sentence = sentence;
    this.salvage = options.salvage ?? null;
  }
}

/**
 * What the browser threw, as one of ours. A {@link RecordError} passes through.
 * Names are those of the Indexed Database API 3.0 (W3C), exceptions table, and of the Storage Standard for quota.
 */
export function asRecordError(thrown: unknown): RecordError {
  if (thrown instanceof RecordError) return thrown;
  const name = nameOf(thrown);
  switch (name) {
    case 'QuotaExceededError':
      return new RecordError('quota', { cause: thrown });
    case 'VersionError':
      return new RecordError('newer-database', { cause: thrown });
    case 'InvalidStateError':
      return new RecordError('closed', { cause: thrown });
    case 'ConstraintError':
      return new RecordError('clash', { cause: thrown });
    default:
      return new RecordError('failed', { cause: thrown, detail: name });
  }
}

function nameOf(thrown: unknown): string {
  return typeof thrown === 'object' && thrown !== null && 'name' in thrown ? String(thrown.name) : 'unknown';
}
