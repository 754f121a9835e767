import { inForce } from '../history/inForce.ts';
import { outsideOf, type RoundRecord } from '../history/series.ts';
import { studentTCdf } from './studentT.ts';

export interface WarmUp {
  readonly at: number;
  readonly round: string;
  /** Rise of the inside temperature over the check's own minutes, K. */
  readonly riseK: number;
  /** Inside minus outside when the furnace was lit, K. */
  readonly aboveOutsideK: number;
}

export interface WarmUpSlowing {
  /** Change of the rise a day, K; negative is slower. */
  readonly perDay: number;
  readonly p: number;
  readonly count: number;
  /** Fitted rise at the first and at the last round, at the same start. */
  readonly first: number;
  readonly last: number;
  readonly from: number;
  readonly to: number;
}

const DAY_MS = 86_400_000;
const FEWEST = 8;
const FEWEST_DAYS = 30;
/** One minus the squared correlation of time and cold below which they can not be told apart. */
const INSEPARABLE = 0.1;

/**
 * Whether the furnace warms the cabin more slowly than it did.
 *
 * Shape: rounds oldest first. Pure.
 * Method: least squares of the rise on time and on how much warmer inside was than outside at the start, since a cabin that
 * starts warm loses more. Two-sided t-test of the slope over time.
 * Source: first-order warming, rise = (1 - exp(-t / tau)) (gain - start above outside): linear in both; standard physics.
 * @returns null with fewer than eight rounds or a month of them, and where it only ever got colder: then weather and
 * furnace can not be told apart
 */
export function furnaceWarmUp(rounds: readonly WarmUp[]): WarmUpSlowing | null {
  const first = rounds[0];
  const last = rounds.at(-1);
  if (!first || !last || rounds.length < FEWEST || last.at - first.at < FEWEST_DAYS * DAY_MS) return null;
  const days = centered(rounds.map((round) => (round.at - first.at) / DAY_MS));
  const cold = centered(rounds.map((round) => round.aboveOutsideK));
  const rise = centered(rounds.map((round) => round.riseK));
  const tt = dot(days.values, days.values);
  const cc = dot(cold.values, cold.values);
  const tc = dot(days.values, cold.values);
  const determinant = tt * cc - tc * tc;
  const constant = cc < 1e-9;
  if (!constant && determinant < tt * cc * INSEPARABLE) return null;
  const ty = dot(days.values, rise.values);
  const cy = dot(cold.values, rise.values);
  const perDay = constant ? ty / tt : (ty * cc - cy * tc) / determinant;
  const perK = constant ? 0 : (cy * tt - ty * tc) / determinant;
  const residuals = rise.values.map((y, index) => y - perDay * (days.values[index] ?? 0) - perK * (cold.values[index] ?? 0));
  const df = rounds.length - (constant ? 2 : 3);
  const variance = dot(residuals, residuals) / df;
  const se = Math.sqrt(variance * (constant ? 1 / tt : cc / determinant));
  const p = se === 0 ? (perDay === 0 ? 1 : 0) : 2 * (1 - studentTCdf(Math.abs(perDay / se), df));
  const at = (day: number) => rise.mean + perDay * (day - days.mean);
  return {
    perDay,
    p,
    count: rounds.length,
    first: at(0),
    last: at((last.at - first.at) / DAY_MS),
    from: first.at,
    to: last.at,
  };
}

function centered(values: readonly number[]): { readonly values: readonly number[]; readonly mean: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { values: values.map((value) => value - mean), mean };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
}

/**
 * Warm-ups of a unit's rounds, oldest first. A reading taken much earlier or later than asked is scaled to the check's
 * minutes between two thirds and one and a half times; further off it is left out, as is a round without the outside
 * temperature: a colder day would look like a slower furnace.
 */
export function warmUps(records: readonly RoundRecord[], key: string): WarmUp[] {
  const found: WarmUp[] = [];
  for (const { round, entries } of [...records].sort((a, b) => a.round.startedAt - b.round.startedAt)) {
    const check = round.plan.checks.find((candidate) => candidate.key === key);
    if (check?.judge.rule !== 'furnace-rise') continue;
    const { startKey, minutes } = check.judge.params;
    const answers = inForce(entries);
    const end = answers.get(key);
    const start = typeof startKey === 'string' ? answers.get(startKey) : undefined;
    if (end?.kind !== 'answered' || end.answer.kind !== 'reading') continue;
    if (start?.kind !== 'answered' || start.answer.kind !== 'reading' || typeof minutes !== 'number') continue;
    const took = (end.at - start.at) / 60_000 / minutes;
    if (took < 2 / 3 || took > 1.5) continue;
    const outsideK = outsideOf(round, answers);
    if (outsideK === null) continue;
    found.push({
      at: end.at,
      round: round.id,
      riseK: (end.answer.si - start.answer.si) / took,
      aboveOutsideK: start.answer.si - outsideK,
    });
  }
  return found;
}
