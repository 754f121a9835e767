/** How a check of the catalogue is written down: the same for all of a kind, with what differs said by a function. */
import type { UnitId } from '../quantity/units.ts';
import { convert } from '../quantity/units.ts';
import type { CheckDefinition, CheckLines, CheckScope, RoundKind, Spread, StationKind } from './check.ts';
import type {
  ChoiceExpects,
  ChoiceOption,
  CountExpects,
  DateExpects,
  Expects,
  NumberForm,
  ReadingExpects,
  StateExpects,
} from './expects.ts';
import type { JudgeSpec, Outcome, Source } from './outcome.ts';

/** The same for every unit, or worked out from the scope. */
export type Scoped<T> = T | ((scope: CheckScope) => T);

export interface CheckDraft {
  readonly id: string;
  readonly rounds: readonly RoundKind[];
  readonly spread?: Spread;
  readonly station: Scoped<StationKind>;
  readonly applies?: (scope: CheckScope) => boolean;
  readonly names: readonly string[];
  readonly expects: Scoped<Expects>;
  readonly lines: { readonly [line in keyof CheckLines]: Scoped<CheckLines[line]> };
  readonly judge: Scoped<JudgeSpec>;
  readonly after?: readonly string[];
  readonly timed?: { readonly startedBy: string; readonly minutes: number };
  readonly kneeling?: boolean;
  /** Seconds that the work usually takes. */
  readonly takes: number;
  readonly worst: Outcome;
  readonly sources: readonly Source[];
}

function resolve<T>(value: Scoped<T>, scope: CheckScope): T {
  return typeof value === 'function' ? (value as (scope: CheckScope) => T)(scope) : value;
}

/** A complete definition from a draft. */
export function defineCheck(draft: CheckDraft): CheckDefinition {
  const { lines } = draft;
  return {
    id: draft.id,
    rounds: draft.rounds,
    spread: draft.spread ?? 'unit',
    station: (scope) => resolve(draft.station, scope),
    applies: draft.applies ?? (() => true),
    names: draft.names,
    expects: (scope) => resolve(draft.expects, scope),
    lines: (scope) => ({
      name: resolve(lines.name, scope),
      ask: resolve(lines.ask, scope),
      askTerse: resolve(lines.askTerse, scope),
      hint: resolve(lines.hint, scope),
      why: resolve(lines.why, scope),
      mend: resolve(lines.mend, scope),
      caution: resolve(lines.caution, scope),
    }),
    judge: (scope) => resolve(draft.judge, scope),
    after: draft.after ?? [],
    timed: draft.timed ?? null,
    kneeling: draft.kneeling ?? false,
    patienceS: draft.takes,
    worst: draft.worst,
    sources: draft.sources,
  };
}

/**
 * A state that is right or not. The first phrase of each list is the label on its button, three words at most.
 * @param yesMeans what a bare "yes" means for the question as it is asked
 */
export function state(ok: readonly string[], problem: readonly string[], yesMeans: 'ok' | 'problem' = 'ok'): StateExpects {
  return { kind: 'state', ok, problem, yesMeans };
}

/** One option of a choice. The first phrase is its label. */
export function option(id: string, verdict: 'ok' | 'problem', label: string, ...others: readonly string[]): ChoiceOption {
  return { id, label, phrases: [label, ...others], verdict };
}

export function choice(...options: readonly ChoiceOption[]): ChoiceExpects {
  return { kind: 'choice', options };
}

export function count(
  quantity: string,
  noun: readonly [singular: string, plural: string],
  max: number,
  nonePhrases: readonly string[],
  allPhrases: readonly string[] = [],
): CountExpects {
  return { kind: 'count', quantity, noun, min: 0, max, nonePhrases, allPhrases };
}

/**
 * A date as stamped or printed.
 * @param years how many years back and ahead of the round it usually lies
 */
export function date(
  form: DateExpects['form'],
  { back, ahead }: { readonly back: number; readonly ahead: number },
  { at }: Pick<CheckScope, 'at'>,
): DateExpects {
  if (at === undefined) return { kind: 'date', form };
  const year = new Date(at).getUTCFullYear();
  return { kind: 'date', form, usualYears: { min: year - back, max: year + ahead } };
}

export interface ReadingDraft {
  readonly quantity: string;
  readonly unit: UnitId;
  readonly others: readonly UnitId[];
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly forms: readonly NumberForm[];
  readonly usual: readonly [min: number, max: number];
  /** What is meant, and how finely it is said, where the person has chosen metric. Left out: the same. */
  readonly metric?: { readonly unit: UnitId; readonly step: number; readonly forms: readonly NumberForm[] };
}

/**
 * A reading in the system that the person has chosen. Limits are given in the US unit; in metric they are converted and
 * rounded outward, so that the range only ever widens.
 */
export function reading(draft: ReadingDraft, { display = 'us' }: Pick<CheckScope, 'display'>): ReadingExpects {
  const { quantity, unit, others, min, max, step, forms, usual, metric } = draft;
  if (display === 'us' || !metric || metric.unit === unit) {
    return {
      kind: 'reading',
      quantity,
      unit,
      otherUnits: others,
      min,
      max,
      step,
      forms,
      usual: { min: usual[0], max: usual[1] },
    };
  }
  const inMetric = (value: number) => convert(value, unit, metric.unit);
  const nearest = (value: number) => Number((Math.round(inMetric(value) / metric.step) * metric.step).toFixed(3));
  return {
    kind: 'reading',
    quantity,
    unit: metric.unit,
    otherUnits: [unit, ...others.filter((other) => other !== metric.unit)],
    min: Math.floor(inMetric(min)),
    max: Math.ceil(inMetric(max)),
    step: metric.step,
    forms: metric.forms,
    usual: { min: nearest(usual[0]), max: nearest(usual[1]) },
  };
}
