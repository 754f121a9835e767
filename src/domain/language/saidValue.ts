/** One value as it is said: number, sign, fraction and unit, held against what the quantity allows. */
import type { CountExpects, ReadingExpects } from '../checks/expects.ts';
import { convert, type Dimension, UNITS, type UnitId } from '../quantity/units.ts';
import type { SpokenReading } from './meaning.ts';
import { type NumberOptions, numbersAt, type SpokenNumber } from './numbers.ts';
import { phraseAt } from './phraseMatch.ts';
import type { Word } from './tokens.ts';
import { unitAt } from './unitWords.ts';

export interface Value {
  readonly value: number;
  readonly unit: UnitId;
  readonly unitSaid: boolean;
  readonly certainty: number;
}

/** A value said at `at`, with its sign and unit. */
export interface SaidValue {
  readonly next: number;
  readonly choices: readonly Value[];
  readonly outside: readonly SpokenReading[];
  readonly wrongUnit: boolean;
  readonly notAStep: boolean;
  readonly single: boolean;
}

export const dimensionOf = (expects: ReadingExpects | CountExpects): Dimension | null =>
  expects.kind === 'reading' ? UNITS[expects.unit].dimension : null;

export const optionsFor = (expects: ReadingExpects | CountExpects, homophones: NumberOptions['homophones']): NumberOptions => ({
  shortDecimal: expects.kind === 'reading' && expects.forms.includes('spoken-decimal'),
  thirtySeconds: expects.kind === 'reading' && expects.unit === '32nds',
  homophones,
});

interface Raw {
  readonly value: number;
  readonly unit: UnitId | null;
  readonly unitSaid: boolean;
  readonly certainty: number;
}

type Checked =
  | { readonly kind: 'value'; readonly value: Value }
  | { readonly kind: 'outside'; readonly reading: SpokenReading }
  | { readonly kind: 'wrong-unit' }
  | { readonly kind: 'not-a-step' };

/** Binary fractions carry no dust: 62.1 stays 62.1. */
const tidy = (value: number) => Number(value.toPrecision(12));

/** Held against the quantity's own kind and physical range; nothing is clipped. */
export function checked(raw: Raw, expects: ReadingExpects | CountExpects): Checked {
  if (expects.kind === 'count') {
    if (raw.unit !== null && raw.unit !== 'count') return { kind: 'wrong-unit' };
    const reading: SpokenReading = { position: null, value: raw.value, unit: 'count', unitSaid: false };
    if (!Number.isInteger(raw.value)) return { kind: 'not-a-step' };
    if (raw.value < expects.min || raw.value > expects.max) return { kind: 'outside', reading };
    return { kind: 'value', value: { ...reading, certainty: raw.certainty } };
  }
  const unit = raw.unit ?? expects.unit;
  if (UNITS[unit].dimension !== UNITS[expects.unit].dimension) return { kind: 'wrong-unit' };
  const value = tidy(raw.value);
  const own = convert(value, unit, expects.unit);
  const reading: SpokenReading = { position: null, value, unit, unitSaid: raw.unitSaid };
  const slack = 1e-9 * Math.max(1, Math.abs(expects.max));
  if (!(own >= expects.min - slack && own <= expects.max + slack)) return { kind: 'outside', reading };
  // A unit that the check does not name is understood, and not quite trusted.
  const isUsual = unit === expects.unit || expects.otherUnits.includes(unit);
  return { kind: 'value', value: { value, unit, unitSaid: raw.unitSaid, certainty: raw.certainty * (isUsual ? 1 : 0.85) } };
}

const SIGNS = new Set(['minus', 'negative', 'neg']);

/** A value that begins at `at`, in every way that the quantity allows. */
export function valueAt(
  words: readonly Word[],
  at: number,
  expects: ReadingExpects | CountExpects,
  options: NumberOptions,
): SaidValue | null {
  const sign = SIGNS.has(words[at]?.word ?? '') ? -1 : 1;
  const from = sign < 0 ? at + 1 : words[at]?.word === 'plus' ? at + 1 : at;
  // "an inch and a half", "a foot and a half"
  const article = articleUnit(words, from, expects);
  const spoken = article ? [] : numbersAt(words, from, options).filter((one) => !isLoneOh(words, from, one));
  const candidates = article ? [article] : spoken.map((one) => withUnit(words, from, one, expects));
  if (candidates.length === 0) return null;
  const longest = Math.max(...candidates.map(({ next }) => next));
  const farthest = withoutShadowed(
    candidates.filter(({ next }) => next === longest),
    expects,
  );
  const results = farthest.flatMap(({ raws }) => raws.map((raw) => checked({ ...raw, value: raw.value * sign }, expects)));
  const values = distinctValues(results.flatMap((one) => (one.kind === 'value' ? [one.value] : [])));
  const outside = results.flatMap((one) => (one.kind === 'outside' ? [one.reading] : []));
  const wrongUnit = values.length === 0 && results.some((one) => one.kind === 'wrong-unit');
  const notAStep = values.length === 0 && outside.length === 0 && results.some((one) => one.kind === 'not-a-step');
  // Digits or pairs that make no possible number may be two numbers in a row: take the first and go on.
  const isRun = !article && farthest.every(({ form }) => form === 'digits' || form === 'pairs' || form === 'short-decimal');
  if (values.length === 0 && isRun && sign > 0) {
    const ends = [...new Set(spoken.map(({ end }) => end))].sort((one, other) => other - one).slice(1);
    for (const end of ends) {
      const parts = spoken.filter((one) => one.end === end).map((one) => withUnit(words, from, one, expects));
      const choices = distinctValues(
        parts
          .flatMap(({ raws }) => raws.map((raw) => checked(raw, expects)))
          .flatMap((one) => (one.kind === 'value' ? [one.value] : [])),
      );
      const next = Math.max(...parts.map((part) => part.next));
      if (choices.length > 0) return { next, choices, outside: [], wrongUnit: false, notAStep: false, single: false };
    }
  }
  return { next: longest, choices: onSteps(values, expects), outside, wrongUnit, notAStep, single: true };
}

/** "one five" is fifteen where fifteen is possible; only else it may be one point five. */
function withoutShadowed(candidates: readonly Candidate[], expects: ReadingExpects | CountExpects): readonly Candidate[] {
  const isPossible = ({ raws }: Candidate) => raws.some((raw) => checked(raw, expects).kind === 'value');
  const isWhole = candidates.some((one) => (one.form === 'digits' || one.form === 'pairs') && isPossible(one));
  return isWhole ? candidates.filter(({ form }) => form !== 'short-decimal') : candidates;
}

/** "oh" alone is an exclamation. */
const isLoneOh = (words: readonly Word[], at: number, one: SpokenNumber): boolean =>
  one.end === at + 1 && (words[at]?.word === 'oh' || words[at]?.word === 'o');

export function distinctValues(values: readonly Value[]): readonly Value[] {
  const kept: Value[] = [];
  for (const value of values) {
    if (!kept.some((one) => one.unit === value.unit && Math.abs(one.value - value.value) < 1e-9)) kept.push(value);
  }
  return kept;
}

/** Of several possible numbers, those that lie on the quantity's steps; all where none does. */
function onSteps(values: readonly Value[], expects: ReadingExpects | CountExpects): readonly Value[] {
  if (values.length < 2 || expects.kind === 'count') return values;
  const fit = values.filter(({ value, unit }) => {
    const steps = convert(value, unit, expects.unit) / expects.step;
    return Math.abs(steps - Math.round(steps)) < 1e-6;
  });
  return fit.length > 0 ? fit : values;
}

interface Candidate {
  readonly raws: readonly Raw[];
  readonly next: number;
  readonly form: SpokenNumber['form'];
}

/** "a foot", "an inch and a half": one of the unit. */
function articleUnit(words: readonly Word[], at: number, expects: ReadingExpects | CountExpects): Candidate | null {
  const article = words[at]?.word;
  if ((article !== 'a' && article !== 'an') || expects.kind !== 'reading') return null;
  const unit = unitAt(words, at + 1, dimensionOf(expects));
  if (!unit || unit.unit === null || UNITS[unit.unit].dimension !== dimensionOf(expects)) return null;
  if (UNITS[unit.unit].dimension !== 'length') return null;
  const more = trailingFraction(words, unit.next, { ...optionsFor(expects, 'inside'), thirtySeconds: false });
  return {
    raws: [{ value: 1 + (more?.value ?? 0), unit: unit.unit, unitSaid: true, certainty: 0.9 }],
    next: more?.next ?? unit.next,
    form: 'fraction',
  };
}

function trailingFraction(
  words: readonly Word[],
  at: number,
  options: NumberOptions,
): { readonly value: number; readonly next: number } | null {
  if (words[at]?.word !== 'and') return null;
  const half = numbersAt(words, at + 1, options).find(
    ({ fraction }) => fraction !== null && fraction.whole === null && fraction.num < fraction.den,
  );
  return half ? { value: half.value, next: half.end } : null;
}

/** The unit behind a number, what the fraction implies, and "below" behind a temperature. */
function withUnit(words: readonly Word[], from: number, one: SpokenNumber, expects: ReadingExpects | CountExpects): Candidate {
  const dimension = dimensionOf(expects);
  let next = one.end;
  let { value } = one;
  let unit: UnitId | null = null;
  let unitSaid = false;
  const certainty = one.homophone ? 0.75 : 1;
  const isThirtySeconds = one.fraction?.den === 32 && one.fraction.whole === null;
  if (isThirtySeconds && one.fraction && dimension === 'length') {
    value = one.fraction.num;
    unit = '32nds';
    unitSaid = true;
    // "five thirty-seconds of an inch"
    const of =
      phraseAt(words, next, ['of', 'an', 'inch']) ?? phraseAt(words, next, ['inch']) ?? phraseAt(words, next, ['inches']);
    if (of !== null) next = of;
    const deep = phraseAt(words, next, ['32nds']);
    if (deep !== null) next = deep;
    return { raws: [{ value, unit, unitSaid, certainty }], next, form: one.form };
  }
  // "half an inch", "three quarters of an inch", "quarter of an inch"
  let unitFrom = next;
  if (one.fraction && one.fraction.whole === null) {
    for (const link of [['of', 'an'], ['of', 'a'], ['an'], ['a'], ['of']]) {
      const after = phraseAt(words, next, link);
      if (after !== null && unitAt(words, after, dimension)) {
        unitFrom = after;
        break;
      }
    }
  }
  const said = unitAt(words, unitFrom, dimension);
  if (said && !isForeignLetter(words, unitFrom, said.next, one)) {
    next = said.next;
    unit = said.unit;
    unitSaid = said.unit !== null;
    const more = trailingFraction(words, next, { ...optionsFor(expects, 'inside'), thirtySeconds: false });
    if (more && one.fraction === null && Number.isInteger(value)) {
      value += more.value;
      next = more.next;
    }
    // "two feet three inches"
    if (unit === 'ft' && expects.kind === 'reading') {
      const rest = words[next]?.word === 'and' ? next + 1 : next;
      const inches = numbersAt(words, rest, optionsFor(expects, 'inside'))
        .map((number) => ({ number, unit: unitAt(words, number.end, dimension) }))
        .find((entry) => entry.unit?.unit === 'in');
      if (inches?.unit) {
        value = value * 12 + inches.number.value;
        unit = 'in';
        next = inches.unit.next;
      }
    }
  } else if (words[unitFrom]?.word === '32nds') {
    next = unitFrom + 1;
    unit = '32nds';
    unitSaid = true;
  }
  if (expects.kind === 'reading' && expects.unit === '32nds' && unit === null && one.fraction && one.fraction.den !== 2) {
    // Three sixteenths on a tread gauge are inches; a bare quarter is anybody's guess.
    if (one.fraction.den >= 8) unit = 'in';
  }
  if (expects.kind === 'reading' && expects.min < 0) {
    const below = belowAt(words, next);
    if (below) {
      value = below.sign < 0 ? -Math.abs(value) : value;
      next = below.next;
      const after = unitAt(words, next, dimension);
      if (after && !unitSaid) {
        next = after.next;
        unit = after.unit;
        unitSaid = after.unit !== null;
      }
    }
  }
  // "half" and no unit is a part of something that was not said.
  const isBarePart =
    one.fraction !== null &&
    one.fraction.whole === null &&
    one.fraction.den <= 4 &&
    !unitSaid &&
    one.end === from + 1 &&
    words[from]?.kind === 'word';
  if (isBarePart && expects.kind === 'reading' && !expects.forms.includes('quarter') && dimension !== 'length')
    return { raws: [], next, form: one.form };
  return { raws: [{ value, unit, unitSaid, certainty }], next, form: one.form };
}

/** A lone letter behind a spoken number is no unit ("sixty c"); behind written digits it is ("-10 C"). */
function isForeignLetter(words: readonly Word[], from: number, next: number, one: SpokenNumber): boolean {
  return (
    next === from + 1 &&
    (words[from]?.word.length ?? 0) === 1 &&
    words[one.end - 1]?.kind !== 'digits' &&
    words[from]?.word !== 'c' &&
    words[from]?.word !== 'f' &&
    words[from]?.word !== 'v'
  );
}

/** "below", "below zero", "degrees above zero", "under zero". */
function belowAt(words: readonly Word[], at: number): { readonly sign: 1 | -1; readonly next: number } | null {
  const word = words[at]?.word;
  const isBelow = word === 'below' || ((word === 'under' || word === 'sub') && /^(zero|0)$/.test(words[at + 1]?.word ?? ''));
  const isAbove = word === 'above';
  if (!isBelow && !isAbove) return null;
  const zero = /^(zero|0|oh|freezing)$/.test(words[at + 1]?.word ?? '');
  // "ten below freezing" is a different number in Fahrenheit, and nobody's reading.
  if (words[at + 1]?.word === 'freezing') return null;
  return { sign: isBelow ? -1 : 1, next: at + (zero ? 2 : 1) };
}
