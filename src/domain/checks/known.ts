/**
 * Whether a date in the profile settles the matter, so that it is not asked for again. A date that is unknown, that makes
 * no sense, or that is at or past the first age worth a word is asked for on the round: the label is the truth, and what
 * is overdue must come up in the round's own findings.
 */
import { ALARM_YEARS, CYLINDER_YEARS, TIRE_YEARS } from '../judge/numbers.ts';
import { readDotCode } from '../unit/dotCode.ts';
import type { Unit } from '../unit/unit.ts';
import type { Position } from './expects.ts';

const YEAR_MS = 365.25 * 86_400_000;

/** By the letter behind the date; the shortest that may apply. */
const CYLINDER_SETTLED_YEARS = {
  none: CYLINDER_YEARS.none.value,
  E: CYLINDER_YEARS.external.value,
  S: CYLINDER_YEARS.proof.value,
} as const;

/** A tire whose date code is known, possible, and young enough on the day. */
export function isTireDateSettled(unit: Unit, position: Position | null, at: number | undefined): boolean {
  const code = position === null ? undefined : unit.wheels.dotCodes[position];
  if (code === undefined || at === undefined) return false;
  const read = readDotCode(code, at);
  return read.ok && at - read.startsAt < TIRE_YEARS.watch.value * YEAR_MS;
}

/** An alarm whose label date is known, with what it means, and not yet reached. */
export function isAlarmDateSettled(unit: Unit, alarm: keyof Unit['alarms'], at: number | undefined): boolean {
  const { date, dateMeans } = unit.alarms[alarm];
  const stamped = startOfMonth(date);
  if (stamped === null || dateMeans === null || at === undefined) return false;
  if (dateMeans === 'replace-by') return at < stamped;
  return at >= stamped && at - stamped < ALARM_YEARS[alarm].value * YEAR_MS;
}

/** A cylinder whose stamped date is known and well within its interval. */
export function isCylinderDateSettled(unit: Unit, index: number, at: number | undefined): boolean {
  const cylinder = unit.cylinders[index];
  const stamped = startOfMonth(cylinder?.date ?? null);
  if (!cylinder || stamped === null || at === undefined) return false;
  return at >= stamped && at - stamped < CYLINDER_SETTLED_YEARS[cylinder.dateSuffix ?? 'none'] * YEAR_MS;
}

/** Epoch milliseconds of the first of a month written YYYY-MM, UTC; null for anything else. */
export function startOfMonth(text: string | null): number | null {
  const parts = text === null ? null : /^(\d{4})-(0[1-9]|1[0-2])$/.exec(text);
  return parts ? Date.UTC(Number(parts[1]), Number(parts[2]) - 1, 1) : null;
}
