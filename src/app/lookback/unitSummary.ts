/** What the whole past of one unit comes to: trends, findings, what is due, and the verdict of every round. Pure. */
import type { Reminder } from '../../domain/files/icalendar.ts';
import { remindersFor } from '../../domain/files/reminders.ts';
import { type Findings, openFindings } from '../../domain/history/findings.ts';
import { verdictOf } from '../../domain/round/judging.ts';
import { replay } from '../../domain/round/replay.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import type { Trends, UnitData } from '../../domain/trend/trendsFor.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';

export type Verdict = ReturnType<typeof verdictOf>['outcome'];

export interface UnitTrends extends Trends {
  /** Rounds that could not be read. */
  readonly torn: number;
}

export interface UnitSummary extends Findings {
  readonly statements: readonly TrendStatement[];
  readonly due: readonly Reminder[];
  /** Of complete rounds, by id; empty where they were not asked for. */
  readonly verdicts: ReadonlyMap<string, Verdict>;
  /** Rounds that could not be read. */
  readonly torn: number;
}

/**
 * @param unit null where its profile is gone: nothing is due then
 * @param statements of this unit, as `trendsFor` gives them
 * @param torn rounds that could not be read
 */
export function summarize(
  unit: Unit | null,
  data: UnitData,
  statements: readonly TrendStatement[],
  torn: number,
): Omit<UnitSummary, 'verdicts'> {
  const { open, mended } = openFindings(data);
  return { statements, open, mended, due: unit === null ? [] : remindersFor(unit, data, statements), torn };
}

/** @param known verdicts by round and display; filled up */
export function verdictsOf(data: UnitData, display: Display, known: Map<string, Verdict>): ReadonlyMap<string, Verdict> {
  const ofRounds = new Map<string, Verdict>();
  for (const { round, entries } of data.rounds) {
    // Entries are only ever added: as many as before are the same as before.
    const key = `${round.id} ${entries.length} ${display}`;
    const state = known.has(key) ? null : replay(round, entries);
    if (state !== null && state.phase !== 'complete') continue;
    const verdict = known.get(key) ?? (state === null ? null : verdictOf(state, display).outcome);
    if (verdict === null) continue;
    known.set(key, verdict);
    ofRounds.set(round.id, verdict);
  }
  return ofRounds;
}
