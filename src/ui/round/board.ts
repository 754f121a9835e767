/** The number being entered: where it starts, how big the steps are, and whether it may be kept. Pure. */
import type { CountExpects, DateExpects, Expects, ReadingExpects } from '../../domain/checks/expects.ts';
import { convert, toSI, type UnitId } from '../../domain/quantity/units.ts';
import type { Answer } from '../../domain/round/entry.ts';
import { shownUnit } from '../parts/shownUnit.ts';

/** A reading's board in the unit that the person sees. */
export interface Scale {
  readonly unit: UnitId;
  readonly min: number;
  readonly max: number;
  readonly small: number;
  readonly big: number;
  /** Shown before anything is touched; nothing is kept until it is. */
  readonly start: number;
  readonly decimals: number;
}

/** `touched`: the person has confirmed or changed the value. Without that, or something typed, there is nothing to keep. */
export interface Board {
  readonly value: number;
  readonly touched: boolean;
  readonly typed: string;
}

export type BoardAction =
  | { readonly type: 'touch' }
  | { readonly type: 'step'; readonly by: 1 | -1 | 'big' | '-big' }
  | { readonly type: 'digit'; readonly digit: string }
  | { readonly type: 'erase' }
  | { readonly type: 'clear' };

const MOST_TYPED = 7;

/**
 * @param before last time's value, where known; else the middle of what is usual
 */
export function scaleOf(
  expects: ReadingExpects,
  display: 'us' | 'metric',
  before: { readonly value: number; readonly unit: UnitId } | null,
): Scale {
  const unit = shownUnit(expects.unit, display);
  const shown = (value: number) => convert(value, expects.unit, unit);
  const finest = unit === expects.unit ? expects.step : niceBelow(Math.abs(shown(expects.step) - shown(0)));
  const span = shown(expects.usual.max) - shown(expects.usual.min);
  const big = Math.max(niceBelow(span / 5), finest * 2);
  const small = Math.max(finest, roundTo(big / 10, finest));
  const decimals = Math.max(decimalsOf(small), decimalsOf(big));
  const middle = snap((shown(expects.usual.min) + shown(expects.usual.max)) / 2, small);
  const min = shown(expects.min);
  const max = shown(expects.max);
  const start = before === null ? middle : round(convert(before.value, before.unit, unit), decimals);
  return { unit, min, max, small, big, start: Math.min(Math.max(start, min), max), decimals };
}

export function newBoard(start: number): Board {
  return { value: start, touched: false, typed: '' };
}

/** @param scale null where there is nothing to step: a date or a count */
export function boardAfter(board: Board, action: BoardAction, scale: Scale | null): Board {
  switch (action.type) {
    case 'touch':
      return { ...board, touched: true };
    case 'step': {
      if (scale === null) return board;
      const from = enteredValue(board) ?? board.value;
      const size = action.by === 'big' || action.by === '-big' ? scale.big : scale.small;
      const up = action.by === 1 || action.by === 'big';
      const value = round(up ? from + size : from - size, scale.decimals);
      // The end of what is possible is a wall, not a wrap; a value is never clipped to it.
      return value < scale.min - TINY || value > scale.max + TINY ? board : { value, touched: true, typed: '' };
    }
    case 'digit':
      return { ...board, typed: typedAfter(board.typed, action.digit) };
    case 'erase':
      return { ...board, typed: board.typed.slice(0, -1) };
    case 'clear':
      return { ...board, typed: '' };
  }
}

const TINY = 1e-9;

/** A sign only in front, one point, no more than {@link MOST_TYPED} characters. */
export function typedAfter(typed: string, key: string): string {
  if (typed.length >= MOST_TYPED || !/^[0-9.-]$/.test(key)) return typed;
  if (key === '-') return typed.startsWith('-') ? typed.slice(1) : `-${typed}`;
  if (key === '.' && typed.includes('.')) return typed;
  return typed + key;
}

/** Whether a typed character may follow, by what is asked: a date has so many digits, only a reading has a point or a sign. */
export function mayType(expects: Expects, typed: string, key: string): boolean {
  switch (expects.kind) {
    case 'reading':
      return true;
    case 'count':
      return /^\d$/.test(key) && typed.length < String(expects.max).length;
    case 'date':
      return /^\d$/.test(key) && typed.length < dateLength(expects);
    default:
      return false;
  }
}

/** @returns the number entered, or null while there is none; not yet checked against the range */
export function enteredValue(board: Board): number | null {
  if (board.typed === '') return board.touched ? board.value : null;
  return /\d/.test(board.typed) ? Number(board.typed) : null;
}

export type Entered =
  | { readonly ok: true; readonly answer: Answer; readonly figure: string }
  | { readonly ok: false; readonly sentence: string };

/** The answer that "keep" would give, or what is still wanted. */
export function enteredReading(board: Board, scale: Scale): Entered {
  const value = enteredValue(board);
  if (value === null) return { ok: false, sentence: 'Tap the value, change it, or type what you read.' };
  if (value < scale.min - TINY || value > scale.max + TINY) {
    const [min, max] = [scale.min, scale.max].map((limit) => String(round(limit, scale.decimals)));
    return { ok: false, sentence: `That cannot be: it lies between ${min} and ${max}. Read it again.` };
  }
  return {
    ok: true,
    answer: { kind: 'reading', si: toSI(value, scale.unit), said: { value, unit: scale.unit }, hedged: false },
    figure: board.typed === '' ? figureOf(value, scale) : board.typed,
  };
}

/** A value with the decimals of the scale's steps. */
export function figureOf(value: number, scale: Pick<Scale, 'decimals'>): string {
  return value.toFixed(scale.decimals);
}

/** A date from its digits: WWYY as stamped on a tire, or MMYYYY. */
export function enteredDate(digits: string, expects: DateExpects): Entered {
  if (expects.form === 'dot-week') {
    if (digits.length < 4) return { ok: false, sentence: 'Four digits: the week, then the year.' };
    const week = Number(digits.slice(0, 2));
    // 49 CFR 574.5: the first two digits are the week, 01 for the first full calendar week; a year has 53 at most.
    if (week < 1 || week > 53) return { ok: false, sentence: 'The first two digits are the week: 01 to 53.' };
    return {
      ok: true,
      answer: { kind: 'date', form: 'dot-week', value: digits },
      figure: `week ${week} of 20${digits.slice(2)}`,
    };
  }
  if (digits.length < 6) return { ok: false, sentence: 'Six digits: the month, then the year, such as 03 2027.' };
  const month = Number(digits.slice(0, 2));
  const year = Number(digits.slice(2));
  if (month < 1 || month > 12) return { ok: false, sentence: 'The first two digits are the month: 01 to 12.' };
  if (year < 1950 || year > 2100) return { ok: false, sentence: 'That year cannot be right. Read it again.' };
  return {
    ok: true,
    answer: { kind: 'date', form: 'month-year', value: `${digits.slice(2)}-${digits.slice(0, 2)}` },
    figure: `month ${month} of ${year}`,
  };
}

/** A count from its digits. */
export function enteredCount(digits: string, expects: CountExpects): Entered {
  if (!/^\d+$/.test(digits)) return { ok: false, sentence: 'Tap how many, or type it.' };
  const count = Number(digits);
  if (count < expects.min || count > expects.max) {
    return { ok: false, sentence: `There can be ${expects.min} to ${expects.max}. Count again.` };
  }
  return { ok: true, answer: { kind: 'count', count }, figure: countWords(count, expects) };
}

/** "none, 0 lugs", "1 lug", "all 6 lugs". */
export function countWords(count: number, { noun, max, allPhrases }: CountExpects): string {
  if (count === 0) return `none, 0 ${noun[1]}`;
  if (count === max && max > 1 && allPhrases.length > 0) return `all ${max} ${noun[1]}`;
  return `${count} ${noun[count === 1 ? 0 : 1]}`;
}

/** Digits of a date so far, grouped as they are stamped, blanks for what is missing. */
export function dateFigure(digits: string, expects: DateExpects): string {
  const blanks = expects.form === 'dot-week' ? '____' : '______';
  const filled = digits + blanks.slice(digits.length);
  return `${filled.slice(0, 2)} ${filled.slice(2)}`;
}

export function dateLength(expects: DateExpects): 4 | 6 {
  return expects.form === 'dot-week' ? 4 : 6;
}

/** The largest of 1, 2 or 5 times a power of ten that is not above a positive number. */
function niceBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + TINY);
  const lead = value / power;
  return round((lead >= 5 - TINY ? 5 : lead >= 2 - TINY ? 2 : 1) * power, 6);
}

const roundTo = (value: number, step: number) => round(Math.round(value / step) * step, 6);
const snap = (value: number, step: number) => round(Math.round(value / step) * step, 6);
const round = (value: number, decimals: number) => Number(value.toFixed(decimals));

function decimalsOf(step: number): number {
  const text = String(step);
  const point = text.indexOf('.');
  return point === -1 ? 0 : text.length - point - 1;
}
