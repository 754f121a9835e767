/**
 * The date in a tire's DOT code: week and year, WWYY.
 * Source: 49 CFR 574.5(b)(3): week 01 is the first full calendar week, Sunday to Saturday; the last week of a year may
 * run up to six days into the next. Four digits are used since July 2000 (64 FR 36807), so YY is 20YY.
 */

const DAY_MS = 86_400_000;

export type DotCode =
  | {
      readonly ok: true;
      readonly week: number;
      readonly year: number;
      /** Epoch milliseconds, UTC midnight of the Sunday on which the week starts. */
      readonly startsAt: number;
    }
  | { readonly ok: false; readonly sentence: string };

/**
 * Reads a date code.
 * @param code four digits WWYY
 * @param at epoch milliseconds of now; a week that has not begun by then is refused
 */
export function readDotCode(code: string, at: number): DotCode {
  if (/^\d{3}$/.test(code)) {
    return { ok: false, sentence: 'Three digits are a tire from before the year 2000. It is too old to tow on.' };
  }
  if (!/^\d{4}$/.test(code)) {
    return { ok: false, sentence: 'A tire date code is four digits: two for the week, two for the year.' };
  }
  const week = Number(code.slice(0, 2));
  const year = 2000 + Number(code.slice(2));
  const startsAt = firstSunday(year) + 7 * (week - 1) * DAY_MS;
  if (week < 1 || new Date(startsAt).getUTCFullYear() !== year) {
    return { ok: false, sentence: `${year} has no week ${week}. Read the code again: week first, then year.` };
  }
  if (startsAt > at) {
    return { ok: false, sentence: `Week ${week} of ${year} is still to come. Read the code again: week first, then year.` };
  }
  return { ok: true, week, year, startsAt };
}

function firstSunday(year: number): number {
  const newYear = Date.UTC(year, 0, 1);
  const weekday = new Date(newYear).getUTCDay();
  return newYear + ((7 - weekday) % 7) * DAY_MS;
}
