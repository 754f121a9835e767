/** Judgement of the answers of a round, with what else the round knows. */
import type { Outcome } from '../checks/outcome.ts';
import { judge } from '../judge/judge.ts';
import type { JudgeContext, Judgement } from '../judge/judgement.ts';
import { roundVerdict } from '../judge/verdict.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Display } from '../voice/settings.ts';
import type { Answer } from './entry.ts';
import { answersInForce, type RoundState } from './replay.ts';

export type { Display };

/** The catalogue's check for how long the unit has stood; `cold`: three hours or more. */
const PARKED_CHECK = 'parked-time';
const COLD_AFTER_H = 3;

/** The context that the judge needs, taken from this round's own answers; nothing is assumed. */
export function judgeContextOf(state: RoundState, at: number, display: Display): JudgeContext {
  const outside = answerTo(state, (check) => check.judge.rule === 'outside-temperature');
  const parked = answerTo(state, (check) => check.check === PARKED_CHECK);
  return {
    at,
    outsideK: outside?.kind === 'reading' ? outside.si : null,
    elevationM: state.round.plan.unit.homeElevationM,
    hoursParked: parked?.kind === 'choice' ? (parked.option === 'cold' ? COLD_AFTER_H : 0) : null,
    answers: answersInForce(state),
    display,
  };
}

function answerTo(state: RoundState, matches: (check: PlannedCheck) => boolean): Answer | null {
  const found = state.checks.find((entry) => matches(entry.check));
  return found?.entry?.kind === 'answered' ? found.entry.answer : null;
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
