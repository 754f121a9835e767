/** What the whole past of one unit comes to: trends, findings, what is due, and the verdict of every round. Pure. */
import type { Reminder } from '../../domain/files/icalendar.ts';
import { remindersFor } from '../../domain/files/reminders.ts';
import { type Findings, openFindings } from '../../domain/history/findings.ts';
import { verdictOf } from '../../domain/round/judging.ts';
import { replay } from '../../domain/round/replay.ts';
import { type Trends, trendsFor, type UnitData } from '../../domain/trend/trendsFor.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';

export type Verdict = ReturnType<typeof verdictOf>['outcome'];

export interface UnitSummary extends Trends, Findings {
  readonly due: readonly Reminder[];
  /** Of complete rounds, by id. */
  readonly verdicts: ReadonlyMap<string, Verdict>;
  /** Rounds that could not be read. */
  readonly torn: number;
}

/**
 * @param unit null where its profile is gone: nothing is due then
 * @param verdicts known already, by round and display; filled up
 */
export function summarize(
  unit: Unit | null,
  data: UnitData & { readonly torn: readonly unknown[] },
  now: number,
  display: Display,
  verdicts: Map<string, Verdict>,
): UnitSummary {
  const { series, statements } = trendsFor(data, now, display);
  const { open, mended } = openFindings(data);
  const ofRounds = new Map<string, Verdict>();
  for (const { round, entries } of data.rounds) {
    // Entries are only ever added: as many as before are the same as before.
    const key = `${round.id} ${entries.length} ${display}`;
    const state = verdicts.has(key) ? null : replay(round, entries);
    if (state !== null && state.phase !== 'complete') continue;
    const verdict = verdicts.get(key) ?? (state === null ? null : verdictOf(state, display).outcome);
    if (verdict === null) continue;
    verdicts.set(key, verdict);
    ofRounds.set(round.id, verdict);
  }
  return {
    series,
    statements,
    open,
    mended,
    due: unit === null ? [] : remindersFor(unit, data, statements),
    verdicts: ofRounds,
    torn: data.torn.length,
  };
}
