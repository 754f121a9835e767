/**
 * Where a wobble ends and a statement begins. Chosen on the seed that `tests/bench/trend.ts` starts from, so what it
 * prints there flatters them: no false alarm in 400 tire years. On a seed that had no part in the choice, `tests/bench/trend.ts
 * 200 77001`, there was one in 400 tire years (0.0025 a year and tire), with delays as on the first: a leak of half a pound a
 * week is told after 7 weekly readings, one of a pound after 5 (first seed 4.5), a jump of 5 psi at once, each a median; every
 * leak and jump was told. Simulated tires, not real ones. Design choices, no source.
 */
import { TIRES } from '../judge/numbers/tires.ts';
export const THRESHOLDS = {
  /** Readings looked at: the newest ones. */
  window: 40,
  windowDays: 3 * 365,
  /** Fewest readings for any statement about drift. Below six the exact Mann–Kendall test can not reach `driftP`. */
  fewest: 6,
  fewestDays: 14,
  /** Two-sided chance of a drift where there is none. A unit has dozens of series: one in twenty would cry every week. */
  driftP: 0.005,
  confidence: 0.95,
  /** Smallest change over the readings seen that is worth a sentence, in reading steps. */
  notableSteps: 2,
  /** A forecast reaches at most this many times as far as the readings do, and never further than two years. */
  horizonSpans: 2,
  horizonDays: 730,
  /** Readings that set the level a shift is measured from, and CUSUM slack and decision in robust standard deviations. */
  shiftBaseline: 10,
  shiftSlack: 0.75,
  shiftDecision: 8,
  shiftSteps: 2,
  /** One reading apart from the rest: robust standard deviations, steps, and fewest readings before it. */
  outlierScore: 6,
  outlierSteps: 3,
  outlierAfter: 6,
  /** A refill or recharge: a rise of this many steps and of this many standard deviations between two readings. */
  refillSteps: 2.5,
  refillScore: 4,
  /** Lugs: background chance that some lug of a wheel moves, and the chance below which a run is no longer background. */
  lugBackground: 0.1,
  lugP: 0.01,
  lugRounds: 6,
  /** A sound tire loses up to a pound a month through its rubber: common practice, no source. */
  tireNormalPsiPerMonth: 1,
  /** Unless it reaches its limit within this many days. */
  tireSoonDays: 60,
  /** More than that is damage somewhere; its source stands with the figure. */
  tireDamagePsiPerMonth: TIRES.lossPerMonth.value,
  furnaceP: 0.01,
} as const;
