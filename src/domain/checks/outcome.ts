import type { UnitId } from '../quantity/units.ts';

/** What a check comes to, best first. `open` and `skipped` are not judgements: nothing was seen. */
export const OUTCOMES = ['ok', 'watch', 'fix', 'hold'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** Where a limit or a sentence comes from. The maker's own figure comes before any of the others. */
export interface Source {
  readonly kind: 'maker' | 'published' | 'common-practice';
  /** Shown to the user: "unit's placard", "49 CFR 393.75(c)", "common practice, no source". */
  readonly text: string;
  /** True where the text or figure was not re-read for this project. */
  readonly fromMemory?: boolean;
}

/** One limit in force, frozen into the plan. */
export interface Limit {
  /** Stable within a check: `target`, `floor`, `cap` … */
  readonly id: string;
  readonly label: string;
  readonly relation: 'at-least' | 'at-most' | 'target';
  /** In SI of `unit`'s dimension. */
  readonly si: number;
  /** The unit it is shown in (US); the metric switch converts. */
  readonly unit: UnitId;
  /** What crossing it comes to. */
  readonly outcome: Outcome;
  readonly source: Source;
}

/**
 * Which rule judges a check and with what. Plain data, frozen into the plan, so that an old round is
 * judged by the limits that were in force when it was made.
 */
export interface JudgeSpec {
  readonly rule: RuleId;
  /** The worst outcome this check can come to. */
  readonly worst: Outcome;
  readonly limits: readonly Limit[];
  readonly params: Readonly<Record<string, number | string | boolean | null>>;
}

export type RuleId =
  | 'state' // ok → ok, problem → worst
  | 'choice' // params[option id] = outcome
  | 'record-only' // kept and compared, never judged
  | 'limits' // generic: each limit in turn
  | 'tire-pressure' // params: placardPa, sidewallMaxPa, elevationM, placardTemperatureK
  | 'tread-depth'
  | 'tire-age' // date, dot-week
  | 'since-mounted' // distance; params: pulledM
  | 'lugs-moved' // params: lugs, torqueNm, torqueSource
  | 'broken-wires' // count; params: construction
  | 'cable-push' // sideways push at mid-span, params: forceN, spanM
  | 'battery-rest' // params: kind
  | 'breakaway-rest' // breakaway battery at rest
  | 'inside-start' // inside temperature when the heater is lit
  | 'furnace-rise' // inside temperature after `minutes`; params: startKey, minutes
  | 'furnace-holds' // inside temperature later still; params: startKey, afterKey, tonightKey
  | 'cylinder-weight' // params: tareKg, capacityKg, inputW
  | 'cylinder-date' // month-year; params: stampedSuffix
  | 'alarm-date' // month-year end of life or manufacture; params: alarm ('co' | 'gas' | 'smoke'), dateMeans
  | 'co-reading' // ppm
  | 'outside-temperature'
  | 'ice-thickness';
