/**
 * The judge: from an answer to ok, watch, fix or hold, by the rule and the limits frozen in the plan.
 *
 * Never NaN, never green from bad or missing input: what cannot be judged becomes `watch` with a sentence that says what
 * to do. The maker's figure comes before every other.
 */
import type { Outcome, RuleId } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { speakAgainst } from '../quantity/format.ts';
import { UNITS } from '../quantity/units.ts';
import type { Answer } from '../round/entry.ts';
import { whyUnbelievable } from './believable.ts';
import type { JudgeContext, Judgement } from './judgement.ts';
import { judgeAlarmDate, judgeCarbonMonoxide } from './rules/alarms.ts';
import { judgeBattery, judgeBreakaway } from './rules/battery.ts';
import { judgeCylinderDate, judgeCylinderWeight } from './rules/gas.ts';
import { judgeFurnace, judgeFurnaceHolds } from './rules/heater.ts';
import { judgeIce } from './rules/ice.ts';
import { judgeBrokenWires, judgeCablePush } from './rules/lift.ts';
import { judgeLugs } from './rules/lugs.ts';
import { good, judgement, type Reading, type Rule, unjudged, unknownFigure, worse, worstCrossed } from './rules/rule.ts';
import { judgeSinceMounted } from './rules/sinceMounted.ts';
import { judgeTireAge, judgeTirePressure, judgeTread } from './rules/tires.ts';

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
  const label = check.expects.kind === 'state' ? check.expects.problem[0] : undefined;
  return notRight(check, check.judge.worst, answer.detail || (label ?? 'not right'));
};

const byChoice: Rule = (check, answer) => {
  if (answer.kind !== 'choice') return unjudged('That is no answer to this check.');
  const { params } = check.judge;
  const outcome = Object.hasOwn(params, answer.option) ? params[answer.option] : undefined;
  if (!OUTCOME_WORDS.has(outcome)) return unjudged('That is not one of the choices.');
  if (outcome === 'ok') return good();
  const option =
    check.expects.kind === 'choice' ? check.expects.options.find((candidate) => candidate.id === answer.option) : undefined;
  return notRight(check, outcome as Outcome, answer.detail || (option?.label ?? answer.option));
};

/** A problem that was seen is never green, whatever the check thinks it can come to. */
function notRight(check: PlannedCheck, outcome: Outcome, seen: string): Judgement {
  const atLeast = worse(outcome, 'watch');
  return judgement(atLeast, MEANINGS[atLeast], { todo: check.lines.mend, seen });
}

const byLimits: Rule = (check, answer, { display }) => {
  const value = answer.kind === 'reading' ? answer.si : answer.kind === 'count' ? answer.count : null;
  if (value === null) return unjudged('That is no value.');
  const dimension = check.expects.kind === 'reading' ? UNITS[check.expects.unit].dimension : 'count';
  const limits = check.judge.limits.filter((limit) => UNITS[limit.unit]?.dimension === dimension);
  const crossed = worstCrossed(value, limits);
  if (!crossed) return good();
  const side = crossed.relation === 'at-least' ? 'under' : 'over';
  const said = speakAgainst(value, crossed.si, crossed.unit, display);
  return judgement(worse(crossed.outcome, 'watch'), `${said} is ${side} ${crossed.label}.`, {
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
  'since-mounted': judgeSinceMounted,
  'lugs-moved': judgeLugs,
  'broken-wires': judgeBrokenWires,
  'cable-push': judgeCablePush,
  'battery-rest': judgeBattery,
  'breakaway-rest': judgeBreakaway,
  'inside-start': kept,
  'furnace-rise': judgeFurnace,
  'furnace-holds': judgeFurnaceHolds,
  'cylinder-weight': judgeCylinderWeight,
  'cylinder-date': judgeCylinderDate,
  'alarm-date': judgeAlarmDate,
  'co-reading': judgeCarbonMonoxide,
  'outside-temperature': kept,
  'ice-thickness': judgeIce,
};

/** Rules that come to nothing but "good" when their limits are missing: then nothing is called good. */
const NEEDS_LIMITS: ReadonlySet<RuleId> = new Set([
  'limits',
  'tread-depth',
  'tire-age',
  'since-mounted',
  'lugs-moved',
  'broken-wires',
  'cable-push',
  'breakaway-rest',
  'furnace-rise',
  'cylinder-date',
  'alarm-date',
  'co-reading',
  'ice-thickness',
]);

/** Whether there is a limit, other than a target, of the kind that the check measures. A date is measured in time, a rise in degrees of difference. */
function hasLimitFor({ expects, judge: { limits, rule } }: PlannedCheck): boolean {
  const own = expects.kind === 'reading' ? UNITS[expects.unit].dimension : expects.kind === 'date' ? 'time' : 'count';
  const dimension = own === 'temperature' && rule === 'furnace-rise' ? 'temperature-difference' : own;
  return limits.some((limit) => limit.relation !== 'target' && UNITS[limit.unit]?.dimension === dimension);
}

/**
 * Judges an answer by the rule and the limits frozen in its plan.
 * @param answer of any content whatever; what is no answer to the question, or can not be, is refused with a sentence
 * @returns never throws, never NaN; `ok` only for a sound value against a known limit
 */
export function judge(check: PlannedCheck, answer: Answer, context: JudgeContext): Judgement {
  const why = whyUnbelievable(check, answer);
  if (why !== null) return unjudged(why);
  const rule = Object.hasOwn(RULES, check.judge.rule) ? RULES[check.judge.rule] : undefined;
  if (!rule)
    return judgement('watch', 'This version does not know how to judge it.', { todo: 'Update the app.', settled: false });
  const { limits } = check.judge;
  if (limits.some(({ si }) => !Number.isFinite(si)) || (NEEDS_LIMITS.has(check.judge.rule) && !hasLimitFor(check))) {
    return unknownFigure('Kept, but there is no figure to hold it against.', check.lines.mend, `a limit for ${check.lines.name}`);
  }
  const judged = rule(check, answer, context);
  return answer.kind === 'reading' && answer.hedged && judged.outcome === 'ok'
    ? aboutRight(check, answer, context, judged, rule)
    : judged;
}

/** What an "about" may be off either way. */
const ABOUT = 0.03;

/** "About sixty-five" is good only where a little more or less would be good too. */
function aboutRight(check: PlannedCheck, answer: Reading, context: JudgeContext, judged: Judgement, rule: Rule): Judgement {
  const { expects } = check;
  if (expects.kind !== 'reading' || UNITS[expects.unit].dimension === 'temperature') return judged;
  const isFirm = [1 - ABOUT, 1 + ABOUT].every(
    (share) => rule(check, { ...answer, si: answer.si * share }, context).outcome === 'ok',
  );
  return isFirm
    ? judged
    : {
        ...judged,
        outcome: 'watch',
        say: 'About is too close to the limit to call.',
        todo: 'Read it once more, to the step of the gauge.',
      };
}
