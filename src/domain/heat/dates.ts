/** Dates stamped and printed: cylinders and alarms. Months, counted without a clock of their own. */
import { HEAT } from '../judge/numbers/heat.ts';
import { UNITS } from '../quantity/units.ts';

/** Months since year 0 of `YYYY-MM`; null for anything else. */
export function monthNumber(text: string): number | null {
  const parts = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(text);
  return parts ? Number(parts[1]) * 12 + Number(parts[2]) - 1 : null;
}

/** Month of an epoch time, UTC. */
export function monthAt(at: number): number {
  const date = new Date(at);
  return date.getUTCFullYear() * 12 + date.getUTCMonth();
}

/** Whole months in a stretch of time, s. */
export function monthsIn(seconds: number): number {
  return Math.round(seconds / UNITS.month.factor);
}

/** `YYYY-MM`. */
export function monthText(month: number): string {
  return `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`;
}

export type Suffix = 'E' | 'S' | null;

/**
 * Month in which a cylinder is due for requalification. Source: 49 CFR 180.209 as changed in 2020 (from memory): 12 years,
 * 5 after a stamp with E; sources differ on S (7 or 10), the shorter is taken.
 */
export function requalifyMonth(stamped: number, suffix: Suffix): number {
  const years = suffix === 'E' ? HEAT.requalifyE : suffix === 'S' ? HEAT.requalifyS : HEAT.requalifyNone;
  return stamped + years.value * 12;
}

export type Standing = 'good' | 'soon' | 'over';

/** From the first day of the month due it counts as over. */
export function standingOf(dueMonth: number, nowMonth: number, soonMonths: number): Standing {
  if (nowMonth >= dueMonth) return 'over';
  return nowMonth >= dueMonth - soonMonths ? 'soon' : 'good';
}
