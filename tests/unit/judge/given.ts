/** Checks, answers and contexts made by hand for the tests of the judge. */
import type { Expects, Position } from '../../../src/domain/checks/expects.ts';
import type { JudgeSpec } from '../../../src/domain/checks/outcome.ts';
import { judge } from '../../../src/domain/judge/judge.ts';
import type { JudgeContext, Judgement } from '../../../src/domain/judge/judgement.ts';
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import { toSI, type UnitId } from '../../../src/domain/quantity/units.ts';
import type { Answer } from '../../../src/domain/round/entry.ts';

/** 25 November 2026, noon UTC. */
export const NOW = Date.UTC(2026, 10, 25, 12);

export function givenContext(changes: Partial<JudgeContext> = {}): JudgeContext {
  return { at: NOW, outsideK: null, elevationM: null, hoursParked: 12, answers: new Map(), display: 'us', ...changes };
}

export function givenCheck(spec: JudgeSpec, expects: Expects, check = 'a-check', position: Position | null = null): PlannedCheck {
  return {
    key: position === null ? check : `${check}@${position}`,
    check,
    position,
    station: 'somewhere',
    names: [],
    expects,
    lines: { name: check, ask: '', askTerse: '', hint: '', why: '', mend: 'Mend it.', caution: null },
    judge: spec,
    timed: null,
    patienceS: 1,
  };
}

export function expectsReading(unit: UnitId, min = -1000, max = 1000): Expects {
  return { kind: 'reading', quantity: 'q', unit, otherUnits: [], min, max, step: 0.5, forms: [], usual: { min, max } };
}

export const EXPECTS_COUNT: Expects = {
  kind: 'count',
  quantity: 'q',
  noun: ['one', 'ones'],
  min: 0,
  max: 30,
  nonePhrases: [],
  allPhrases: [],
};
export const EXPECTS_WEEK: Expects = { kind: 'date', form: 'dot-week' };
export const EXPECTS_MONTH: Expects = { kind: 'date', form: 'month-year' };

export function reading(value: number, unit: UnitId): Answer {
  return { kind: 'reading', si: toSI(value, unit), said: { value, unit }, hedged: false };
}

export function counted(count: number): Answer {
  return { kind: 'count', count };
}

export function judgeReading(
  spec: JudgeSpec,
  value: number,
  unit: UnitId,
  context: Partial<JudgeContext> = {},
  position: Position | null = null,
  check = 'a-check',
): Judgement {
  return judge(givenCheck(spec, expectsReading(unit), check, position), reading(value, unit), givenContext(context));
}

export function judgeCount(spec: JudgeSpec, count: number, context: Partial<JudgeContext> = {}): Judgement {
  return judge(givenCheck(spec, EXPECTS_COUNT), counted(count), givenContext(context));
}

export function judgeMonth(spec: JudgeSpec, value: string, context: Partial<JudgeContext> = {}): Judgement {
  return judge(givenCheck(spec, EXPECTS_MONTH), { kind: 'date', form: 'month-year', value }, givenContext(context));
}

export function judgeWeek(spec: JudgeSpec, value: string, context: Partial<JudgeContext> = {}): Judgement {
  return judge(givenCheck(spec, EXPECTS_WEEK), { kind: 'date', form: 'dot-week', value }, givenContext(context));
}
