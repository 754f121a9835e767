/**
 * The judge: from an answer to ok, watch, fix or hold, by the rule and the limits frozen in the plan.
 *
 * Never NaN, never green from bad or missing input: what cannot be judged becomes `watch` with a sentence that says what
 * to do. The maker's figure comes before every other.
 */
import type { Outcome, RuleId } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { speakAgainst } from '../quantity/format.ts';
import type { Answer } from '../round/entry.ts';
import { whyUnbelievable } from './believable.ts';
import type { JudgeContext, Judgement } from './judgement.ts';
import { good, judgement, type Rule, unjudged, worstCrossed } from './rules.ts';
import {
  judgeAlarmDate,
  judgeBattery,
  judgeBrokenWires,
  judgeCablePush,
  judgeCarbonMonoxide,
  judgeCylinderDate,
  judgeCylinderWeight,
  judgeFurnace,
  judgeIce,
  judgeLugs,
} from './systems.ts';
import { judgeTireAge, judgeTirePressure, judgeTread } from './tires.ts';

const MEANINGS: Readonly<Record<Outcome, string>> = {
  ok: '',
  watch: 'Keep an eye on it.',
  fix: 'Mend it before the next trip.',
  hold: 'Do not tow until that is mended.',
};

const OUTCOME_WORDS: ReadonlySet<unknown> = new Set(['ok', 'watch', 'fix', 'hold']);

const byState: Rule = (check, answer) => {
  if (answer.kind !== 'state') return unjudged('That is no answer to this check.');
  if (answer.verdict === 'ok') return good();
  return judgement(check.judge.worst, MEANINGS[check.judge.worst], { todo: check.lines.mend });
};

const byChoice: Rule = (check, answer) => {
  if (answer.kind !== 'choice') return unjudged('That is no answer to this check.');
  const outcome = check.judge.params[answer.option];
  if (!OUTCOME_WORDS.has(outcome)) return unjudged('That is not one of the choices.');
  if (outcome === 'ok') return good();
  return judgement(outcome as Outcome, MEANINGS[outcome as Outcome], { todo: check.lines.mend });
};

const byLimits: Rule = (check, answer, { display }) => {
  const value = answer.kind === 'reading' ? answer.si : answer.kind === 'count' ? answer.count : null;
  if (value === null) return unjudged('That is no value.');
  const crossed = worstCrossed(value, check.judge.limits);
  if (!crossed) return good();
  const side = crossed.relation === 'at-least' ? 'under' : 'over';
  return judgement(crossed.outcome, `${speakAgainst(value, crossed.si, crossed.unit, display)} is ${side} ${crossed.label}.`, {
    todo: check.lines.mend,
    limit: crossed,
  });
};

const kept: Rule = (_check, answer) =>
  answer.kind === 'reading' ||
  answer.kind === 'count' ||
  answer.kind === 'date' ||
  answer.kind === 'choice' ||
  answer.kind === 'state'
    ? good()
    : unjudged('That is no answer.');

const RULES: Readonly<Record<RuleId, Rule>> = {
  state: byState,
  choice: byChoice,
  'record-only': kept,
  limits: byLimits,
  'tire-pressure': judgeTirePressure,
  'tread-depth': judgeTread,
  'tire-age': judgeTireAge,
  'lugs-moved': judgeLugs,
  'broken-wires': judgeBrokenWires,
  'cable-push': judgeCablePush,
  'battery-rest': judgeBattery,
  'breakaway-rest': judgeBattery,
  'inside-start': kept,
  'furnace-rise': judgeFurnace,
  'cylinder-weight': judgeCylinderWeight,
  'cylinder-date': judgeCylinderDate,
  'alarm-date': judgeAlarmDate,
  'co-reading': judgeCarbonMonoxide,
  'outside-temperature': kept,
  'ice-thickness': judgeIce,
};

/** Judges an answer. Never throws for an answer of any content. */
export function judge(check: PlannedCheck, answer: Answer, context: JudgeContext): Judgement {
  const why = whyUnbelievable(check, answer);
  if (why !== null) return unjudged(why);
  const rule = RULES[check.judge.rule] as Rule | undefined;
  if (!rule) return judgement('watch', 'This version does not know how to judge it.', { todo: 'Update the app.' });
  return rule(check, answer, context);
}
