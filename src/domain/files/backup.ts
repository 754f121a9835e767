/** When to ask for a copy elsewhere: everything is on one device, and devices drown. */

/** Fact of the record: when everything was last saved elsewhere, epoch milliseconds. */
export const BACKUP_AT = 'backup-at';

const DAY_MS = 86_400_000;
/** Design choices, no source: a weekend's rounds, a month. */
const ROUNDS = 5;
const ROUNDS_AT_FIRST = 3;
const DAYS = 30;

export interface BackupState {
  /** Null for never. */
  readonly lastAt: number | null;
  /** Rounds that are nowhere else; demo rounds are no loss. */
  readonly roundsSince: number;
  readonly isDue: boolean;
}

/**
 * @param rounds all rounds here; `lastAt` of the last entry
 * @param lastBackup the fact as read from the record; anything but a number means never
 */
export function backupState(
  rounds: readonly { readonly demo: boolean; readonly lastAt: number }[],
  lastBackup: unknown,
  now: number,
): BackupState {
  const lastAt = typeof lastBackup === 'number' && Number.isFinite(lastBackup) ? lastBackup : null;
  const since = rounds.filter((round) => !round.demo && round.lastAt > (lastAt ?? Number.NEGATIVE_INFINITY));
  const oldest = since.reduce((first, round) => Math.min(first, round.lastAt), now);
  const many = since.length >= (lastAt === null ? ROUNDS_AT_FIRST : ROUNDS);
  return { lastAt, roundsSince: since.length, isDue: many || now - oldest > DAYS * DAY_MS };
}
