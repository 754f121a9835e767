/** Dates as stamped and printed: the week code of a tire ("twenty-two twenty") and a month with a year. */
import type { DateExpects } from '../checks/expects.ts';
import type { UnclearWhy } from './meaning.ts';
import { homophoneAtom, numberAtom } from './numberWords.ts';
import { PhraseTable } from './phraseMatch.ts';
import type { Word } from './tokens.ts';
import type { Uses } from './uses.ts';
import { CORRECTION_PHRASES, CORRECTION_WORDS, FILLERS, HEDGE_PHRASES, HEDGE_WORDS } from './vocabulary.ts';

export type DateResult =
  | { readonly kind: 'date'; readonly value: string; readonly hedged: boolean; readonly certainty: number }
  | { readonly kind: 'unclear'; readonly why: UnclearWhy; readonly strangers: number };

const MONTHS: ReadonlyMap<string, number> = new Map(
  [
    'january jan',
    'february feb',
    'march mar',
    'april apr',
    'may',
    'june jun',
    'july jul',
    'august aug',
    'september sept sep',
    'october oct',
    'november nov',
    'december dec',
  ].flatMap((names, index) => names.split(' ').map((name) => [name, index + 1] as const)),
);

const WORDS_OF_DATES = new Set([
  'week',
  'weeks',
  'code',
  'dot',
  'stamp',
  'stamped',
  'printed',
  'date',
  'dated',
  'made',
  'manufactured',
  'built',
  'expires',
  'expiration',
  'expire',
  'expiry',
  'replace',
  'until',
  'end',
  'life',
  'year',
  'month',
  'digits',
  'number',
  'label',
  'tag',
  'collar',
  'back',
  'slash',
  'dash',
  'hyphen',
  'through',
  'test',
  'tested',
  'retest',
  'requal',
  'new',
  'best',
  'good',
  'till',
  'says',
  'on',
  'oval',
]);
const PREFIX = new PhraseTable(
  [
    'd o t',
    'last four digits are',
    'last four digits',
    'last four are',
    'last four is',
    'last four',
    'the four digits are',
    'four digits',
    'last two are',
    'replace by',
    'good until',
    'good through',
    'end of life',
  ].map((phrase) => [phrase.split(' '), 'prefix'] as const),
);
const HEDGES = new PhraseTable(HEDGE_PHRASES.map((phrase) => [phrase, 'hedge'] as const));
const CORRECTIONS = new PhraseTable(CORRECTION_PHRASES.map((phrase) => [phrase, 'correction'] as const));
const ORDINALS: ReadonlyMap<string, number> = new Map(
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'
    .split(' ')
    .map((word, index) => [word, index + 1]),
);

/** One number of the date as it may be written in figures; `week`: said as a week. */
interface Figure {
  /** Digits, noughts in front kept. */
  readonly digits: string;
  readonly kind: 'digit' | 'teen' | 'tens' | 'written' | 'hundred' | 'thousand' | 'month' | 'ordinal';
  readonly week: boolean;
}

interface Scan {
  readonly figures: readonly Figure[];
  readonly hedged: boolean;
  readonly strangers: number;
  readonly alternatives: boolean;
  readonly homophone: boolean;
}

/** @param names words of the check's own names */
export function parseDate(
  words: readonly Word[],
  expects: DateExpects,
  names: readonly (readonly string[])[],
  uses: Uses,
): DateResult {
  const scan = scanDate(words, names, uses, expects.form);
  const unclear = (why: UnclearWhy): DateResult => ({ kind: 'unclear', why, strangers: scan.strangers });
  if (scan.strangers > 0) return unclear(scan.strangers > 1 || scan.figures.length === 0 ? 'chatter' : 'ambiguous');
  if (scan.figures.length === 0) return unclear('no-value');
  if (scan.alternatives) return unclear('alternatives');
  const values = expects.form === 'dot-week' ? weekCodes(scan.figures) : monthYears(scan.figures);
  const [only] = values.found;
  if (values.found.length > 1) return unclear('ambiguous');
  if (only === undefined) return unclear(values.outside ? 'out-of-range' : 'incomplete');
  return { kind: 'date', value: only, hedged: scan.hedged, certainty: scan.homophone ? 0.75 : 1 };
}

function scanDate(words: readonly Word[], names: readonly (readonly string[])[], uses: Uses, form: DateExpects['form']): Scan {
  let figures: Figure[] = [];
  let hedged = false;
  let strangers = 0;
  let alternatives = false;
  let homophone = false;
  let afterWeek = false;
  let at = 0;
  const push = (digits: string, kind: Figure['kind']) => {
    figures.push({ digits, kind, week: afterWeek });
    afterWeek = false;
  };
  while (at < words.length) {
    const word = words[at];
    if (!word) break;
    if (word.kind === 'mark') {
      at += 1;
      continue;
    }
    const prefix = PREFIX.at(words, at);
    const hedge = HEDGES.at(words, at);
    const correction = CORRECTIONS.at(words, at);
    const month = MONTHS.get(word.word);
    const atom = numberAtom(word.word);
    const sound = atom ? undefined : figures.length > 0 ? homophoneAtom(word.word) : undefined;
    const name = names.find((one) => one.every((part, index) => words[at + index]?.word === part));
    const from = at;
    at += 1;
    if (prefix) {
      uses.mark(from, prefix.next, 'filler');
      at = prefix.next;
    } else if (hedge) {
      hedged = true;
      uses.mark(from, hedge.next, 'hedge');
      at = hedge.next;
    } else if (correction || CORRECTION_WORDS.has(word.word)) {
      at = correction?.next ?? at;
      if (figures.length > 0) {
        // What stood before is taken back as a whole; a code is said anew from its start.
        figures = [];
        hedged = false;
      }
      uses.mark(from, at, 'correction');
    } else if (word.kind === 'digits' || word.kind === 'fraction' || word.kind === 'clock') {
      for (const part of word.word.split(/[/:]/)) push(part.replace('.', ''), 'written');
      uses.mark(from, at, 'number');
    } else if (month !== undefined && form === 'month-year' && !(word.word === 'may' && words[at]?.word === 'be')) {
      figures.push({ digits: String(month).padStart(2, '0'), kind: 'month', week: false });
      uses.mark(from, at, 'number');
    } else if (word.word === 'week' || word.word === 'weeks') {
      afterWeek = true;
      const before = figures.at(-1);
      if (word.word === 'week' && before?.kind === 'ordinal') figures[figures.length - 1] = { ...before, week: true };
      if (before?.kind === 'ordinal') afterWeek = false;
      uses.mark(from, at, 'unit');
    } else if (atom) {
      push(atom.digits, atom.kind === 'hundred' || atom.kind === 'thousand' ? atom.kind : atom.kind);
      uses.mark(from, at, 'number');
    } else if (ORDINALS.has(word.word)) {
      push(String(ORDINALS.get(word.word)), 'ordinal');
      uses.mark(from, at, 'number');
    } else if (
      sound &&
      (words[at] === undefined || numberAtom(words[at]?.word ?? '') !== undefined || homophoneAtom(words[at]?.word ?? ''))
    ) {
      // "two for two oh": sounds like a digit among digits.
      push(sound.digits, 'digit');
      homophone = true;
      uses.mark(from, at, 'number');
    } else if (word.word === 'or') {
      alternatives = true;
    } else if (name) {
      uses.mark(from, from + name.length, 'name');
      at = from + name.length;
    } else if (HEDGE_WORDS.has(word.word)) {
      hedged = true;
      uses.mark(from, at, 'hedge');
    } else if (FILLERS.has(word.word) || WORDS_OF_DATES.has(word.word) || /^(tire|left|right|front|rear|side)$/.test(word.word)) {
      uses.mark(from, at, 'filler');
    } else if (!/^[a-z]$/.test(word.word)) {
      strangers += 1;
    }
  }
  return { figures, hedged, strangers, alternatives, homophone };
}

/** Every way to read figures from `at` as a number of exactly `length` digits, with the index behind it. */
function readDigits(figures: readonly Figure[], at: number, length: number): readonly { digits: string; next: number }[] {
  const found: { digits: string; next: number }[] = [];
  const go = (index: number, digits: string) => {
    if (digits.length === length) {
      found.push({ digits, next: index });
      return;
    }
    const figure = figures[index];
    if (!figure || digits.length > length || figure.kind === 'month') return;
    if (figure.kind === 'tens') {
      const next = figures[index + 1];
      // "fifty, two thousand": the two is of the year.
      const isOfYear = figures[index + 2]?.kind === 'thousand';
      if (
        next &&
        !isOfYear &&
        (next.kind === 'digit' || next.kind === 'ordinal') &&
        next.digits !== '0' &&
        next.digits.length === 1
      )
        go(index + 2, digits + String(Number(figure.digits) + Number(next.digits)));
      else go(index + 1, digits + figure.digits);
    } else if (figure.kind === 'ordinal') go(index + 1, digits + figure.digits.padStart(2, '0'));
    else go(index + 1, digits + figure.digits);
  };
  go(at, '');
  return found;
}

/** A year from `at`: "twenty twenty", "two thousand nineteen", "oh nine", "'19", "2019". */
function readYears(figures: readonly Figure[], at: number): readonly { year: number; next: number }[] {
  const found: { year: number; next: number }[] = [];
  const add = (year: number, next: number) => {
    if (year >= 1970 && year <= 2099 && !found.some((one) => one.year === year && one.next === next)) found.push({ year, next });
  };
  for (const { digits, next } of readDigits(figures, at, 4)) add(Number(digits), next);
  for (const { digits, next } of readDigits(figures, at, 2)) add(Number(digits) + (Number(digits) >= 70 ? 1900 : 2000), next);
  const [first, second] = [figures[at], figures[at + 1]];
  if (first?.digits === '2' && second?.kind === 'thousand') {
    const rest = readDigits(figures, at + 2, 2);
    for (const { digits, next } of rest) add(2000 + Number(digits), next);
    const one = figures[at + 2];
    if (one?.kind === 'digit' || (one?.kind === 'written' && one.digits.length === 1)) add(2000 + Number(one.digits), at + 3);
    if (!one) add(2000, at + 2);
  }
  return found;
}

interface Found {
  readonly found: readonly string[];
  readonly outside: boolean;
}

function weekCodes(figures: readonly Figure[]): Found {
  const codes = new Set<string>();
  let outside = false;
  const add = (week: string, year: number) => {
    if (Number(week) >= 1 && Number(week) <= 53) codes.add(`${week}${String(year % 100).padStart(2, '0')}`);
    else outside = true;
  };
  for (const { digits, next } of readDigits(figures, 0, 4))
    if (next === figures.length) add(digits.slice(0, 2), Number(digits.slice(2)));
  // Week and year with the year in full: "week twenty-two of twenty twenty".
  for (const week of readDigits(figures, 0, 2)) {
    for (const { year, next } of readYears(figures, week.next)) if (next === figures.length) add(week.digits, year);
  }
  const [first] = figures;
  if (first && (first.kind === 'digit' || first.digits.length === 1)) {
    // One figure for the week only where it was said to be a week, or where the year that follows is whole.
    for (const { year, next } of readYears(figures, 1)) {
      const yearDigits = figures.slice(1, next).reduce((sum, figure) => sum + figure.digits.length, 0);
      const isTwoGroups = first.kind === 'ordinal' || yearDigits >= 4 || figures[2]?.kind === 'thousand';
      if (next === figures.length && codes.size === 0 && (first.week || isTwoGroups) && first.digits !== '0')
        add(first.digits.padStart(2, '0'), year);
    }
  }
  return { found: [...codes], outside };
}

function monthYears(figures: readonly Figure[]): Found {
  const months = new Set<string>();
  let outside = false;
  const add = (month: number, year: number) => {
    if (month >= 1 && month <= 12) months.add(`${year}-${String(month).padStart(2, '0')}`);
    else outside = true;
  };
  const named = figures.findIndex(({ kind }) => kind === 'month');
  if (named >= 0) {
    const month = Number(figures[named]?.digits);
    if (figures.filter(({ kind }) => kind === 'month').length > 1) return { found: [], outside: false };
    const years = (from: number, to: number) => readYears(figures.slice(0, to), from).filter(({ next }) => next === to);
    for (const { year } of years(named + 1, figures.length)) if (named === 0) add(month, year);
    for (const { year } of years(0, named)) if (named === figures.length - 1) add(month, year);
    // "march fifteenth twenty twenty-four": the day says nothing more.
    if (named === 0 && months.size === 0) {
      for (const from of [named + 2, named + 3]) {
        for (const { year } of years(from, figures.length)) if (year >= 2000 || figures.length - from > 1) add(month, year);
      }
    }
    return { found: [...months], outside };
  }
  const yearsFirst = readYears(figures, 0).filter(
    ({ next, year }) => next < figures.length && year >= 1970 && figures[0]?.digits.length === 4,
  );
  for (const { year, next } of yearsFirst)
    for (const { digits, next: end } of readDigits(figures, next, figures[next]?.digits.length === 1 ? 1 : 2))
      if (end === figures.length) add(Number(digits), year);
  for (const width of [1, 2]) {
    for (const { digits, next } of readDigits(figures, 0, width)) {
      if (digits === '0') continue;
      for (const { year, next: end } of readYears(figures, next)) if (end === figures.length) add(Number(digits), year);
    }
  }
  // Written together: "0324", "32024".
  const [first] = figures;
  if (figures.length === 1 && first?.kind === 'written' && (first.digits.length === 4 || first.digits.length === 6)) {
    const month = Number(first.digits.slice(0, 2));
    const year = first.digits.slice(2);
    if (first.digits.length === 6) add(month, Number(year));
    else if (month >= 1 && month <= 12) add(month, 2000 + Number(year));
  }
  return { found: [...months], outside };
}
