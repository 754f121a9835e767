/** Judgement of the answers of a round, with what else the round knows. */
import type { Outcome } from '../checks/outcome.ts';
import { judge } from '../judge/judge.ts';
import type { JudgeContext, Judgement } from '../judge/judgement.ts';
import { roundVerdict } from '../judge/verdict.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Answer } from './entry.ts';
import { answersInForce, type RoundState } from './replay.ts';

export type Display = 'us' | 'metric';

/** Quantity under which the round keeps how long the unit has stood; see the catalogue's parking check. */
const PARKED_QUANTITY = 'hours-parked';

/** The context that the judge needs, taken from this round's own answers; nothing is assumed. */
export function judgeContextOf(state: RoundState, at: number, display: Display): JudgeContext {
  const reading = (matches: (check: PlannedCheck) => boolean): number | null => {
    const found = state.checks.find((entry) => matches(entry.check) && entry.entry?.kind === 'answered');
    const answer = found?.entry?.kind === 'answered' ? found.entry.answer : null;
    return answer?.kind === 'reading' ? answer.si : null;
  };
  const parkedS = reading((check) => check.expects.kind === 'reading' && check.expects.quantity === PARKED_QUANTITY);
  return {
    at,
    outsideK: reading((check) => check.judge.rule === 'outside-temperature'),
    elevationM: state.round.plan.unit.homeElevationM,
    hoursParked: parkedS === null ? null : parkedS / 3600,
    answers: answersInForce(state),
    display,
  };
}

export function judgeAnswer(state: RoundState, check: PlannedCheck, answer: Answer, at: number, display: Display): Judgement {
  return judge(check, answer, judgeContextOf(state, at, display));
}

/** Judgement in force for each answered check, by key. Recomputed: later answers (the outside temperature) count too. */
export function judgementsOf(state: RoundState, display: Display): ReadonlyMap<string, Judgement> {
  const judgements = new Map<string, Judgement>();
  for (const { check, entry } of state.checks) {
    if (entry?.kind === 'answered') judgements.set(check.key, judgeAnswer(state, check, entry.answer, entry.at, display));
  }
  return judgements;
}

export function verdictOf(state: RoundState, display: Display): ReturnType<typeof roundVerdict> {
  const judgements = judgementsOf(state, display);
  return roundVerdict({
    display,
    lines: state.checks.map(({ check, status, entry }) => ({
      check,
      judgement: judgements.get(check.key) ?? null,
      status,
      reason: entry?.kind === 'skipped' ? entry.reason : null,
    })),
  });
}

export function isWorse(a: Outcome, b: Outcome): boolean {
  const rank: Record<Outcome, number> = { ok: 0, watch: 1, fix: 2, hold: 3 };
  return rank[a] > rank[b];
}
