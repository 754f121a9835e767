/** What is common to the rules: the limit that a value crosses, and results. */
import type { Limit, Outcome } from '../../checks/outcome.ts';
import type { PlannedCheck } from '../../plan/plan.ts';
import type { Answer } from '../../round/entry.ts';
import type { JudgeContext, Judgement } from '../judgement.ts';

export type Rule = (check: PlannedCheck, answer: Answer, context: JudgeContext) => Judgement;
export type Reading = Extract<Answer, { kind: 'reading' }>;

const RANK: Readonly<Record<Outcome, number>> = { ok: 0, watch: 1, fix: 2, hold: 3 };

export function worse(a: Outcome, b: Outcome): Outcome {
  return RANK[a] >= RANK[b] ? a : b;
}

/** Relative; binary fractions must not turn "at the limit" into "under it". */
const TOLERANCE = 1e-9;

/** Whether a value is on the wrong side of a limit. A target is no limit of its own. */
export function crosses(si: number, limit: Limit): boolean {
  const slack = Math.abs(limit.si) * TOLERANCE;
  if (limit.relation === 'at-least') return si < limit.si - slack;
  if (limit.relation === 'at-most') return si > limit.si + slack;
  return false;
}

/** The worst limit that a value crosses, or null. */
export function worstCrossed(si: number, limits: readonly Limit[]): Limit | null {
  let worst: Limit | null = null;
  for (const limit of limits) {
    if (crosses(si, limit) && (worst === null || RANK[limit.outcome] > RANK[worst.outcome])) worst = limit;
  }
  return worst;
}

export function limitOf(check: PlannedCheck, id: string): Limit | null {
  return check.judge.limits.find((limit) => limit.id === id) ?? null;
}

export function judgement(outcome: Outcome, say: string, more: Partial<Judgement> = {}): Judgement {
  return { outcome, say, todo: null, limit: null, question: null, facts: [], ...more };
}

/** First letter large. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A param that is a number, or null. */
export function numberParam({ judge: { params } }: PlannedCheck, name: string): number | null {
  const value = Object.hasOwn(params, name) ? params[name] : null;
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

export const good = (facts: Judgement['facts'] = []): Judgement => judgement('ok', '', { facts });

/** Bad input: never green, never a number made up; asks for the value again, and is not settled until then. */
export function unjudged(sentence: string): Judgement {
  return judgement('watch', sentence, { todo: 'Read it again and say it with its unit.', settled: false });
}

/** Kept, but a figure is missing without which nothing can be called good. */
export function unknownFigure(say: string, todo: string, missing: string, facts: Judgement['facts'] = []): Judgement {
  return judgement('watch', say, { todo, facts, missing: [missing] });
}
