/** Numbers, rates and dates of a trend in words for the ear; the same words stand on the screen. */
import type { Position } from '../checks/expects.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { convert, UNITS, type UnitId } from '../quantity/units.ts';

/** A difference in another unit: scales without offsets. */
export function convertDifference(amount: number, from: UnitId, to: UnitId): number {
  return (amount * UNITS[from].factor) / UNITS[to].factor;
}

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "one", "ten", "12". */
export function countWords(count: number): string {
  return count > 0 && count <= 10 ? (SMALL[count] ?? String(count)) : String(count);
}

/** A number without superfluous decimals, to the decimals of a step. */
export function plainNumber(value: number, step: number): string {
  const exact = [0, 1, 2].find((places) => Math.abs(step * 10 ** places - Math.round(step * 10 ** places)) < 1e-6);
  const decimals = step >= 1 ? 0 : (exact ?? Math.min(3, Math.ceil(-Math.log10(step) - 1e-9)));
  const rounded = Number(value.toFixed(decimals));
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

/**
 * A difference in words: "half a pound", "one pound", "two and a half pounds", "0.2 volts".
 * @param amount in `unit`, > 0
 * @param step finest step worth saying, in `unit`
 */
export function amountWords(amount: number, unit: UnitId, step: number): string {
  const [singular, plural] = UNITS[unit].spoken;
  const noun = (text: string, one: boolean) => `${text} ${one ? singular : plural}`.trim();
  if (amount >= 10) return noun(String(Math.round(amount)), false);
  if (step < 0.25) {
    const text = plainNumber(amount, step);
    return text === '1' ? noun('one', true) : noun(text, false);
  }
  const halves = Math.max(1, Math.round(amount * 2));
  const whole = Math.floor(halves / 2);
  if (halves === 1) return singular === '' ? 'a half' : `half ${/^[aeiou]/i.test(singular) ? 'an' : 'a'} ${singular}`;
  if (halves % 2 === 0) return noun(countWords(whole), whole === 1);
  return noun(`${countWords(whole)} and a half`, false);
}

const PERIODS = [
  { days: 7, words: 'a week' },
  { days: 365.2425 / 12, words: 'a month' },
  { days: 365.2425, words: 'a year' },
] as const;

/**
 * A rate in words, over the shortest of week, month and year in which it comes to most of a step:
 * "one pound a week", "0.1 volts a month".
 * @param perDay size of the change a day, in `unit`, > 0
 * @param step finest step read, in `unit`
 */
export function rateWords(perDay: number, unit: UnitId, step: number, display: Display): string {
  const shown = displayUnit(unit, display);
  const rate = convertDifference(perDay, unit, shown);
  const shownStep = convertDifference(step, unit, shown);
  const period = PERIODS.find(({ days }) => rate * days >= 0.7 * shownStep) ?? PERIODS[2];
  const amount = rate * period.days;
  // Halves of what is read in whole steps; what is too small for that, in its own first decimal.
  const saidStep = shownStep >= 0.25 && amount >= 0.35 ? 1 : 10 ** Math.floor(Math.log10(Math.max(amount, 1e-3)));
  return `${amountWords(amount, shown, saidStep)} ${period.words}`;
}

/** A value as it would be read off, without its unit: "58". */
export function valueWords(value: number, unit: UnitId, step: number, display: Display): string {
  const shown = displayUnit(unit, display);
  const shownStep = convertDifference(step, unit, shown);
  return plainNumber(convert(value, unit, shown), shown === unit ? shownStep : Math.max(shownStep, 0.1));
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const DAY_MS = 86_400_000;

/** "January 20", with the year when it is ten months or more away. UTC; a day more or less does not matter here. */
export function dateWords(at: number, now: number): string {
  const date = new Date(at);
  const day = `${MONTHS[date.getUTCMonth()]} ${date.getUTCDate()}`;
  return Math.abs(at - now) > 300 * DAY_MS ? `${day}, ${date.getUTCFullYear()}` : day;
}

/** "November 2025". */
export function monthWords(at: number): string {
  const date = new Date(at);
  return `${MONTHS[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
}

/**
 * When, with its uncertainty: "by January 20, give or take ten days"; a wide interval is told as months.
 * All in epoch milliseconds.
 */
export function whenWords(at: number, earliest: number, latest: number, now: number): string {
  const days = Math.max(1, Math.ceil(Math.max(at - earliest, latest - at) / DAY_MS));
  if (days <= 13) return `by ${dateWords(at, now)}, give or take ${days === 1 ? 'a day' : `${countWords(days)} days`}`;
  if (days <= 45) return `by ${dateWords(at, now)}, give or take ${countWords(Math.round(days / 7))} weeks`;
  const from = monthWords(Math.max(earliest, now));
  const to = monthWords(latest);
  return from === to ? `in ${to}` : `some time between ${from} and ${to}`;
}

/** "left rear", "front". */
export function positionWords(position: Position): string {
  return position.replace('-', ' ');
}

export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
