/**
 * Values from words: how many, of what, and where. One utterance may hold several values with their places, a value taken
 * back and replaced, or two values where only one can be true; what cannot be settled is said to be unclear, never chosen.
 */
import type { CountExpects, Position, ReadingExpects } from '../checks/expects.ts';
import { convert, type Dimension, UNITS, type UnitId } from '../quantity/units.ts';
import type { InterpretContext, SpokenReading, UnclearWhy } from './meaning.ts';
import { type NumberOptions, numbersAt, type SpokenNumber } from './numbers.ts';
import { numberAtom } from './numberWords.ts';
import { PhraseTable, phraseAt } from './phraseMatch.ts';
import { placeAt, resolvePlace, type SaidPlace, type Side } from './positions.ts';
import { speakWhole } from './speakNumber.ts';
import { plainWords, type Word } from './tokens.ts';
import { unitAt } from './unitWords.ts';
import type { Use, Uses } from './uses.ts';
import { CORRECTION_PHRASES, CORRECTION_WORDS, FILLERS, HEDGE_PHRASES, HEDGE_WORDS } from './vocabulary.ts';

export type ReadingsResult =
  | {
      readonly kind: 'readings';
      readonly readings: readonly SpokenReading[];
      readonly hedged: boolean;
      readonly certainty: number;
      /** "change left rear to fifty-five": a place was named to be corrected. */
      readonly changes: boolean;
      readonly fromLast: boolean;
    }
  | {
      readonly kind: 'unclear';
      readonly why: UnclearWhy;
      readonly candidates: readonly SpokenReading[];
      /** Words that belong to nothing known; many of them are talk beside the work. */
      readonly strangers: number;
      readonly hasValue: boolean;
    };

export interface ReadingsInput {
  readonly words: readonly Word[];
  readonly expects: ReadingExpects | CountExpects;
  readonly context: Pick<InterpretContext, 'position' | 'positions' | 'last'>;
  /** Words of the check's own names: they say nothing more. */
  readonly names: readonly (readonly string[])[];
  readonly uses: Uses;
}

interface Value {
  readonly value: number;
  readonly unit: UnitId;
  readonly unitSaid: boolean;
  readonly certainty: number;
}

type Item =
  | { readonly kind: 'value'; readonly value: Value; readonly pauseBefore: boolean; readonly isDitto?: boolean }
  | { readonly kind: 'place'; readonly place: SaidPlace; readonly pauseBefore: boolean }
  | { readonly kind: 'everywhere'; readonly both: boolean; readonly pauseBefore: boolean }
  | { readonly kind: 'correction' }
  | { readonly kind: 'or' }
  | { readonly kind: 'not' };

/** Things found that make the whole unclear, or less certain. */
interface Findings {
  items: Item[];
  hedged: boolean;
  range: boolean;
  strangers: number;
  identity: boolean;
  outOfRange: SpokenReading[];
  wrongUnit: boolean;
  ambiguous: SpokenReading[];
  incomplete: boolean;
  changes: boolean;
  same: boolean;
  notAStep: boolean;
  unknownPlace: boolean;
  negativePredicates: number;
  certainty: number;
}

const HEDGES = new PhraseTable(HEDGE_PHRASES.map((phrase) => [phrase, 'hedge'] as const));
const CORRECTIONS = new PhraseTable(CORRECTION_PHRASES.map((phrase) => [phrase, 'correction'] as const));
const BOUNDS = new PhraseTable(
  [
    'more than',
    'less than',
    'at least',
    'at most',
    'at the most',
    'at the least',
    'no more than',
    'no less than',
    'greater than',
    'better than',
    'north of',
    'south of',
    'upwards of',
    'or more',
    'or less',
    'or better',
    'or higher',
    'or lower',
    'and up',
    'and over',
    'and above',
    'or higher',
    'over',
    'under',
    'above',
    'beyond',
    'past',
    'between',
    'somewhere between',
    'anywhere from',
    'range',
    'ranging from',
    'maximum',
    'minimum',
    'max',
    'min',
    'within',
  ].map((phrase) => [phrase.split(' '), 'bound'] as const),
);
const SAME = new PhraseTable(
  [
    'same as last time',
    'same as the last time',
    'same as before',
    'same as it was',
    'same as last round',
    'same as yesterday',
    'same as last trip',
    'same as last week',
    'same as ever',
    'same as always',
    'same number as last time',
    'the same as last time',
    'the same as before',
    'just like last time',
    'like last time',
    'like before',
    'unchanged',
    'no change',
    'has not changed',
    'have not changed',
    'did not change',
    'not changed',
    'still the same',
    'what it was last time',
    'what it was before',
  ].map((phrase) => [phrase.split(' '), 'same'] as const),
);
const DITTO = new PhraseTable(
  ['the same', 'same', 'ditto', 'same thing', 'same there', 'likewise', 'too'].map(
    (phrase) => [phrase.split(' '), 'same'] as const,
  ),
);
const EVERYWHERE = new PhraseTable([
  [['both', 'sides'], true],
  [['both', 'of', 'them'], true],
  [['on', 'both'], true],
  [['both'], true],
  [['left', 'and', 'right'], true],
  [['each', 'side'], true],
  [['either', 'side'], true],
  [['all', 'around'], false],
  [['all', 'the', 'way', 'around'], false],
  [['all', 'four'], false],
  [['all', 'four', 'of', 'them'], false],
  [['all', 'four', 'tires'], false],
  [['all', 'of', 'them'], false],
  [['across', 'the', 'board'], false],
  [['everywhere'], false],
  [['every', 'tire'], false],
  [['every', 'wheel'], false],
  [['each', 'tire'], false],
]);
const CHANGE_WORDS = new Set(['change', 'correct', 'update', 'set', 'make', 'fix', 'redo', 'edit', 'put']);
const VAGUE = new Set([
  'halfway',
  'tens',
  'twenties',
  'thirties',
  'forties',
  'fifties',
  'sixties',
  'seventies',
  'eighties',
  'nineties',
  'hundreds',
  'dozens',
  'teens',
  'something',
  'several',
  'few',
  'many',
  'some',
]);
const PRONOUN_BEFORE_ONE = new Set([
  'this',
  'that',
  'the',
  'other',
  'which',
  'each',
  'every',
  'another',
  'first',
  'last',
  'next',
  'no',
]);
/** "one second", "one more", "one at a time": not a count of anything here. */
const IDLE_ONES = new Set([
  'second',
  'sec',
  'minute',
  'moment',
  'more',
  'thing',
  'time',
  'day',
  'at',
  'by',
  'another',
  'question',
  'last',
]);
const MOVED_WORDS = new Set(
  'moved move moving turned turn turning loose loosened spun gave budged budge budging snugged creaked slipped broken broke snapped frayed popped clicked-late'.split(
    ' ',
  ),
);
const HELD_WORDS = new Set('tight clicked click held hold fine good okay solid whole intact torqued fast snug'.split(' '));
const NONE_PHRASES = [
  'none',
  'none of them',
  'not one',
  'not a one',
  'not a single one',
  'not any',
  'nothing',
  'nothing at all',
  'nada',
  'zilch',
  'zip',
  'nil',
  'no movement',
  'did not move',
  'did not budge',
  'do not move',
  'they did not move',
  'no',
  'nope',
];
const NOT_A_NUMBER_AFTER_NUMBER = new Set(['number', 'lug', 'nut', 'stud', 'position', 'channel', 'station', 'wheel', 'hole']);

const dimensionOf = (expects: ReadingExpects | CountExpects): Dimension | null =>
  expects.kind === 'reading' ? UNITS[expects.unit].dimension : null;

const optionsFor = (expects: ReadingExpects | CountExpects, homophones: NumberOptions['homophones']): NumberOptions => ({
  shortDecimal: expects.kind === 'reading' && expects.forms.includes('spoken-decimal'),
  thirtySeconds: expects.kind === 'reading' && expects.unit === '32nds',
  homophones,
});

/**
 * Parse readings or a count.
 * Shape: linear in the number of words. Never throws.
 */
export function parseReadings(input: ReadingsInput): ReadingsResult {
  const first = parseOnce(input, 'inside');
  if (first.kind === 'readings' || first.hasValue || input.words.length > 12) return first;
  // "for", "ate lugs": the only words there are, where only a number makes sense.
  const again = parseOnce(input, 'anywhere');
  return again.kind === 'readings' && again.readings.length === 1
    ? { ...again, certainty: Math.min(again.certainty, 0.7) }
    : first;
}

function parseOnce(input: ReadingsInput, homophones: NumberOptions['homophones']): ReadingsResult {
  const found = scan(input, homophones);
  return settle(input, found);
}

/** A value said at `at`, with its sign and unit. */
interface SaidValue {
  readonly next: number;
  readonly choices: readonly Value[];
  readonly outside: readonly SpokenReading[];
  readonly wrongUnit: boolean;
  readonly notAStep: boolean;
  readonly single: boolean;
}

function scan(input: ReadingsInput, homophones: NumberOptions['homophones']): Findings {
  const { words, expects, uses } = input;
  const options = optionsFor(expects, homophones);
  const found: Findings = {
    items: [],
    hedged: false,
    range: false,
    strangers: 0,
    identity: false,
    outOfRange: [],
    wrongUnit: false,
    ambiguous: [],
    incomplete: false,
    changes: false,
    same: false,
    notAStep: false,
    unknownPlace: false,
    negativePredicates: 0,
    certainty: 1,
  };
  const placed = input.context.position !== null || input.context.positions.length > 0;
  const counted = expects.kind === 'count' ? countPhrases(expects) : null;
  let pause = false;
  let at = 0;
  const use = (next: number, how: Use) => {
    uses.mark(at, next, how);
    at = next;
  };
  while (at < words.length) {
    const word = words[at];
    if (!word) break;
    if (word.kind === 'mark') {
      if (word.word === '-' && found.items.at(-1)?.kind === 'value' && words[at + 1]?.kind === 'digits') found.range = true;
      pause = true;
      at += 1;
      continue;
    }
    const push = (item: Item) => {
      found.items.push(item);
      pause = false;
    };
    const none = counted?.at(words, at) ?? null;
    if (none && !(none.value === 0 && isAnswerNo(words, at, none.next))) {
      push({ kind: 'value', value: { value: none.value, unit: 'count', unitSaid: false, certainty: 1 }, pauseBefore: pause });
      use(none.next, 'number');
      at = afterNoun(words, at, expects, uses);
      continue;
    }
    const same = SAME.at(words, at);
    if (same) {
      found.same = true;
      use(same.next, 'detail');
      continue;
    }
    const hedge = HEDGES.at(words, at);
    if (hedge && !(expects.kind === 'count' && word.word === 'kind')) {
      found.hedged = true;
      use(hedge.next, 'hedge');
      continue;
    }
    const isIdentity = expects.kind === 'count' && NOT_A_NUMBER_AFTER_NUMBER.has(word.word);
    if (isIdentity && (numberAtom(words[at + 1]?.word ?? '') || words[at + 1]?.kind === 'digits')) {
      found.identity = true;
      use(at + 1, 'filler');
      continue;
    }
    if (expects.kind === 'count' && word.word === 'couple') {
      found.hedged = true;
      push({ kind: 'value', value: { value: 2, unit: 'count', unitSaid: false, certainty: 0.9 }, pauseBefore: pause });
      use(at + 1, 'number');
      at = afterNoun(words, at, expects, uses);
      continue;
    }
    const named = input.names.map((name) => phraseAt(words, at, name)).find((next) => next !== null);
    if (named !== undefined && named !== null) {
      use(named, 'name');
      continue;
    }
    const correction = CORRECTIONS.at(words, at);
    if (correction) {
      push({ kind: 'correction' });
      use(correction.next, 'correction');
      continue;
    }
    if (
      word.word === 'other' &&
      placed &&
      expects.kind === 'reading' &&
      /^(one|side|tire|wheel)$/.test(words[at + 1]?.word ?? '')
    ) {
      const other = otherOf(input.context);
      if (other === null) found.unknownPlace = true;
      else push({ kind: 'place', place: { side: other, end: null, from: at, next: at + 2 }, pauseBefore: pause });
      use(at + 2, 'position');
      continue;
    }
    const everywhere = EVERYWHERE.at(words, at);
    if (everywhere && placed && expects.kind === 'reading') {
      push({ kind: 'everywhere', both: everywhere.value, pauseBefore: pause });
      use(everywhere.next, 'position');
      continue;
    }
    const upTo = upToAt(words, at, dimensionOf(expects));
    if (upTo !== null) {
      if (upTo.isBound) found.range = true;
      use(at + 2, 'filler');
      continue;
    }
    const bound = BOUNDS.at(words, at);
    if (bound) {
      found.range = true;
      use(bound.next, 'hedge');
      continue;
    }
    if (isPronounOne(words, at, found.items) && !isOnlyTheOne(words, at, expects)) {
      use(at + 1, 'filler');
      continue;
    }
    if ((word.word === 'one' || word.word === '1') && IDLE_ONES.has(words[at + 1]?.word ?? '')) {
      found.strangers += 1;
      at += 2;
      continue;
    }
    if (word.word === 'number' || (NOT_A_NUMBER_AFTER_NUMBER.has(word.word) && expects.kind === 'count')) {
      if (numberAtom(words[at + 1]?.word ?? '') || words[at + 1]?.kind === 'digits') found.identity = true;
      use(at + 1, 'filler');
      continue;
    }
    if (expects.kind === 'reading' && isPeople(words, at)) {
      found.strangers += 1;
      at += 1;
      continue;
    }
    if (phraseAt(words, at, ['fifty', 'fifty']) !== null && words.length <= 4) {
      // Half and half, not a value.
      found.range = true;
      use(at + 2, 'hedge');
      continue;
    }
    const said = valueAt(words, at, expects, options);
    if (said) {
      const { choices } = said;
      const [only] = choices;
      if (said.wrongUnit) found.wrongUnit = true;
      else if (choices.length > 1)
        found.ambiguous.push(...choices.map(({ value, unit, unitSaid }) => ({ position: null, value, unit, unitSaid })));
      else if (only) push({ kind: 'value', value: only, pauseBefore: pause });
      else if (said.notAStep) found.notAStep = true;
      else found.outOfRange.push(...said.outside);
      use(said.next, 'number');
      at = afterNoun(words, at, expects, uses);
      continue;
    }
    if (word.word === 'to' || word.word === 'through' || word.word === 'thru') {
      const last = found.items.at(-1);
      if (last?.kind === 'value' && numbersAt(words, at + 1, options).length > 0) found.range = true;
      use(at + 1, 'filler');
      continue;
    }
    if (word.word === 'or') {
      push({ kind: 'or' });
      use(at + 1, 'filler');
      continue;
    }
    const place = placeAt(words, at);
    if (place && (placed || !(place.side === 'right' && place.end === null))) {
      push({ kind: 'place', place, pauseBefore: pause });
      use(place.next, 'position');
      continue;
    }
    const ditto = DITTO.at(words, at);
    if (ditto && found.items.some((item) => item.kind === 'value')) {
      const last = found.items.findLast((item) => item.kind === 'value');
      if (last?.kind === 'value') push({ kind: 'value', value: last.value, pauseBefore: pause, isDitto: true });
      use(ditto.next, 'detail');
      continue;
    }
    if (ditto && word.word !== 'too' && found.items.length === 0) {
      found.same = true;
      use(ditto.next, 'detail');
      continue;
    }
    if (word.word === 'not') {
      push({ kind: 'not' });
      use(at + 1, 'negation');
      continue;
    }
    if (CORRECTION_WORDS.has(word.word)) {
      push({ kind: 'correction' });
      use(at + 1, 'correction');
      continue;
    }
    if (VAGUE.has(word.word)) {
      found.range = true;
      use(at + 1, 'hedge');
      continue;
    }
    if (HEDGE_WORDS.has(word.word)) {
      found.hedged = true;
      use(at + 1, 'hedge');
      continue;
    }
    const ish = /^(.+?)ish$/.exec(word.word)?.[1];
    const ishAtom = ish === undefined ? undefined : numberAtom(ish);
    if (ishAtom) {
      found.hedged = true;
      const value = checked({ value: ishAtom.n, unit: null, unitSaid: false, certainty: 0.9 }, expects);
      if (value.kind === 'value') push({ kind: 'value', value: value.value, pauseBefore: pause });
      use(at + 1, 'number');
      continue;
    }
    if (CHANGE_WORDS.has(word.word)) {
      found.changes = true;
      use(at + 1, 'correction');
      continue;
    }
    if (expects.kind === 'count' && (MOVED_WORDS.has(word.word) || isNounWord(word.word, expects))) {
      use(at + 1, 'state');
      continue;
    }
    if (expects.kind === 'count' && HELD_WORDS.has(word.word)) {
      found.negativePredicates += 1;
      use(at + 1, 'state');
      continue;
    }
    if (word.word === 'meter' && !words[at - 1]?.kind.startsWith('digit')) {
      use(at + 1, 'filler');
      continue;
    }
    const ownUnit = unitAt(words, at, dimensionOf(expects));
    if (ownUnit) {
      if (ownUnit.unit !== null && expects.kind === 'reading' && UNITS[ownUnit.unit].dimension !== dimensionOf(expects))
        found.strangers += 1;
      use(ownUnit.next, 'unit');
      continue;
    }
    if (FILLERS.has(word.word)) {
      use(at + 1, 'filler');
      continue;
    }
    found.strangers += 1;
    at += 1;
  }
  return found;
}

/** "down to three" and "it's up to sixty" read; "up to sixty" alone is a bound. */
function upToAt(words: readonly Word[], at: number, dimension: Dimension | null): { readonly isBound: boolean } | null {
  const word = words[at]?.word;
  if ((word !== 'up' && word !== 'down') || words[at + 1]?.word !== 'to') return null;
  if (word === 'down' || dimension === 'temperature') return { isBound: false };
  const before = words[at - 1]?.word ?? '';
  return { isBound: !['is', 'now', 'are', 'am', 'got', 'came', 'went', 'went', 'pumped', 'back'].includes(before) };
}

/** "the other one" of two. */
function otherOf({ position, positions }: ReadingsInput['context']): Side | null {
  if (positions.length !== 2) return null;
  return position === 'left' ? 'right' : position === 'right' ? 'left' : null;
}

/** "no" before "I said two" is an answer to something else; before "movement" it counts. */
function isAnswerNo(words: readonly Word[], at: number, next: number): boolean {
  const isBare = next === at + 1 && (words[at]?.word === 'no' || words[at]?.word === 'nope');
  if (!isBare) return false;
  return words.length > next;
}

/** "just the one" counts. */
const isOnlyTheOne = (words: readonly Word[], at: number, expects: ReadingExpects | CountExpects): boolean =>
  expects.kind === 'count' &&
  words[at]?.word === 'one' &&
  words[at - 1]?.word === 'the' &&
  /^(only|just)$/.test(words[at - 2]?.word ?? '');

/** "these two", "you two": people or things, not a value. */
const isPeople = (words: readonly Word[], at: number): boolean =>
  numberAtom(words[at]?.word ?? '') !== undefined &&
  /^(these|those|you|us|other|my|your|his|her|our)$/.test(words[at - 1]?.word ?? '');

/** "this one", "the left one": a pronoun, unless a number goes on from it. */
function isPronounOne(words: readonly Word[], at: number, items: readonly Item[]): boolean {
  const word = words[at];
  if (word?.word !== 'one' && word?.word !== 'ones') return false;
  if (word.word === 'ones') return true;
  const before = words[at - 1]?.word ?? '';
  const next = words[at + 1];
  const goesOn =
    next !== undefined && (next.word === 'oh' || next.word === 'hundred' || next.word === 'point' || next.word === 'zero');
  if (goesOn) return false;
  if (PRONOUN_BEFORE_ONE.has(before)) return true;
  const afterPlace = items.at(-1)?.kind === 'place';
  // "the left one is sixty", "left one ten".
  return (
    afterPlace &&
    (next?.word === 'is' ||
      next?.word === 'at' ||
      next?.word === 'reads' ||
      words[at - 3]?.word === 'the' ||
      words[at - 2]?.word === 'the')
  );
}

const countTables = new WeakMap<CountExpects, PhraseTable<number>>();

function countPhrases(expects: CountExpects): PhraseTable<number> {
  const known = countTables.get(expects);
  if (known) return known;
  const entries: (readonly [readonly string[], number])[] = [];
  for (const phrase of expects.nonePhrases) entries.push([plainWords(phrase), 0]);
  for (const phrase of expects.allPhrases) entries.push([plainWords(phrase), expects.max]);
  if (expects.min === 0) {
    for (const phrase of NONE_PHRASES) entries.push([phrase.split(' '), 0]);
    for (const noun of expects.noun) {
      const last = plainWords(noun);
      for (const no of ['no', 'zero', 'not any']) entries.push([[...no.split(' '), ...last], 0]);
    }
    for (const tight of ['tight', 'good', 'clicked', 'held', 'fine', 'okay', 'solid', 'whole'])
      for (const every of [
        'all',
        'they are all',
        'all are',
        'every one',
        'every last one',
        'each one',
        'everything',
        'all of them',
        'all were',
      ])
        entries.push(
          [[...every.split(' '), tight], 0],
          [[...every.split(' '), 'is', tight], 0],
          [[...every.split(' '), 'are', tight], 0],
        );
  }
  if (expects.min === 0 && expects.max >= 2 && expects.max < 100) {
    const whole = [String(expects.max), ...speakWhole(expects.max).split('-').join(' ').split('|')];
    for (const max of whole) {
      const all = ['all', ...max.split(' ')];
      entries.push([all, expects.max]);
      for (const tight of HELD_WORDS)
        for (const link of [
          [],
          ['are'],
          ['were'],
          ['of', 'them'],
          ['of', 'them', 'are'],
          plainWords(expects.noun[1]),
          [...plainWords(expects.noun[1]), 'are'],
        ])
          entries.push([[...all, ...link, tight], 0]);
    }
  }
  const table = new PhraseTable(entries);
  countTables.set(expects, table);
  return table;
}

const isNounWord = (word: string, expects: CountExpects): boolean =>
  expects.noun.some((noun) => plainWords(noun).includes(word)) ||
  ['lug', 'lugs', 'nut', 'nuts', 'studs', 'them', 'wires', 'wire', 'strands'].includes(word);

/** "two lugs moved a quarter turn": what follows a count says how, not how many. */
function afterNoun(words: readonly Word[], at: number, expects: ReadingExpects | CountExpects, uses: Uses): number {
  if (expects.kind !== 'count') return at;
  let index = at;
  let turned = false;
  while (index < words.length) {
    const word = words[index]?.word ?? '';
    const isPart =
      isNounWord(word, expects) ||
      MOVED_WORDS.has(word) ||
      ['of', 'the', 'a', 'only', 'did', 'just', 'were', 'was', 'is', 'are'].includes(word);
    if (MOVED_WORDS.has(word)) turned = true;
    const how =
      turned &&
      [
        'little',
        'bit',
        'quarter',
        'half',
        'eighth',
        'turn',
        'turns',
        'hair',
        'touch',
        'tad',
        'about',
        'before',
        'click',
        'degrees',
        'slightly',
        'barely',
        'maybe',
      ].includes(word);
    if (!isPart && !how) break;
    uses.mark(index, index + 1, how ? 'detail' : 'state');
    index += 1;
  }
  return index;
}

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
function checked(raw: Raw, expects: ReadingExpects | CountExpects): Checked {
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
function valueAt(
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

function distinctValues(values: readonly Value[]): readonly Value[] {
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

interface Draft {
  readonly place: SaidPlace | 'both' | 'all' | null;
  readonly value: Value | null;
}

/** From what was found to readings, or to the reason why not. */
function settle(input: ReadingsInput, found: Findings): ReadingsResult {
  const { context, expects } = input;
  const hasValue =
    found.items.some((item) => item.kind === 'value') ||
    found.outOfRange.length > 0 ||
    found.ambiguous.length > 0 ||
    found.wrongUnit;
  const unclear = (why: UnclearWhy, candidates: readonly SpokenReading[] = []): ReadingsResult => ({
    kind: 'unclear',
    why,
    candidates,
    strangers: found.strangers,
    hasValue,
  });
  const listed = found.items.flatMap((item) =>
    item.kind === 'value'
      ? [{ position: null, value: item.value.value, unit: item.value.unit, unitSaid: item.value.unitSaid }]
      : [],
  );
  if (found.strangers > 0) return unclear(found.strangers > 1 || !hasValue ? 'chatter' : 'ambiguous', listed);
  if (found.wrongUnit) return unclear('wrong-unit');
  if (found.unknownPlace) return unclear('unknown-position', listed);
  if (found.identity) return unclear('ambiguous', listed);
  if (found.notAStep) return unclear('not-a-step');
  if (found.outOfRange.length > 0)
    return unclear(found.items.some((item) => item.kind === 'value') ? 'contradiction' : 'out-of-range', found.outOfRange);
  if (found.ambiguous.length > 0) return unclear('ambiguous', [...found.ambiguous, ...listed]);
  if (found.range) return unclear('range', listed);
  const items = withoutNegated(found.items);
  if (found.same && !items.some((item) => item.kind === 'value')) return sameAsLast(input, items, found);
  const lastItem = items.at(-1);
  if (lastItem?.kind === 'correction' && items.length > 1) return unclear('incomplete');
  if (!items.some((item) => item.kind === 'value')) {
    const hasPlace = items.some((item) => item.kind === 'place');
    return unclear(hasPlace ? 'incomplete' : 'no-value');
  }
  const paired = expects.kind === 'count' ? pairCounts(items, found) : pairAfterCorrections(items);
  if (paired === null) return unclear('ambiguous', listed);
  if (paired === 'alternatives') return unclear('alternatives', listed);
  if (paired === 'repeated') return unclear('repeated-position', listed);
  return place(paired, context, found, unclear);
}

/** "not sixty" says what it is not. */
function withoutNegated(items: readonly Item[]): readonly Item[] {
  const kept: Item[] = [];
  for (let index = 0; index < items.length; index += 1) {
    const item = items[index];
    if (item?.kind === 'not') {
      if (items[index + 1]?.kind === 'value') index += 1;
      continue;
    }
    if (item) kept.push(item);
  }
  return kept;
}

function sameAsLast(input: ReadingsInput, items: readonly Item[], found: Findings): ReadingsResult {
  const { last } = input.context;
  const fail = (why: UnclearWhy): ReadingsResult => ({ kind: 'unclear', why, candidates: [], strangers: 0, hasValue: false });
  if (!last || items.some((item) => item.kind === 'place' || item.kind === 'everywhere')) return fail('no-last');
  const unit = input.expects.kind === 'count' ? 'count' : last.unit;
  const result = checked({ value: last.value, unit, unitSaid: false, certainty: 1 }, input.expects);
  if (result.kind !== 'value') return fail(result.kind === 'outside' ? 'out-of-range' : 'no-last');
  const { value } = result;
  return {
    kind: 'readings',
    readings: [{ position: null, value: value.value, unit: value.unit, unitSaid: false }],
    hedged: found.hedged,
    certainty: 0.8,
    changes: false,
    fromLast: true,
  };
}

type Paired = readonly Draft[] | 'alternatives' | 'repeated' | null;

/** Segments between corrections; each later one replaces the last thing that was said. */
function pairAfterCorrections(items: readonly Item[]): Paired {
  const segments: Item[][] = [[]];
  for (const item of items) {
    if (item.kind === 'correction') segments.push([]);
    else segments.at(-1)?.push(item);
  }
  const filled = segments.filter((segment) => segment.length > 0);
  let drafts: Draft[] = [];
  let isDangling = false;
  for (const [index, whole] of filled.entries()) {
    const { segment, dangles } = withoutDangling(whole, index < filled.length - 1);
    const next = pair(segment) ?? headAndRest(segment, index > 0);
    if (next === null || typeof next === 'string') return next;
    if (index === 0 || isDangling) drafts = [...drafts, ...next];
    else drafts = corrected(drafts, next);
    isDangling = dangles;
  }
  // A place without a value, or a value without its place among several.
  return drafts.some(({ value }) => value === null) ? null : drafts;
}

/** "five, left front, no, left rear six": the place before the correction is taken back with it. */
function withoutDangling(
  segment: readonly Item[],
  isCorrected: boolean,
): { readonly segment: readonly Item[]; readonly dangles: boolean } {
  const last = segment.at(-1);
  const dangles = isCorrected && segment.length > 2 && last?.kind === 'place' && segment[0]?.kind === 'place';
  return { segment: dangles ? segment.slice(0, -1) : segment, dangles };
}

/** "no, sixty, right front sixty-one": the first value corrects, the others are new. */
function headAndRest(segment: readonly Item[], isCorrection: boolean): Paired {
  const [head, ...rest] = segment;
  if (!isCorrection || head?.kind !== 'value' || rest.length === 0) return null;
  const others = pair(rest);
  return others === null || typeof others === 'string' ? others : [{ place: null, value: head.value }, ...others];
}

/** What was said before, with the first of `next` in place of what it corrects and the others added. */
function corrected(drafts: readonly Draft[], next: readonly Draft[]): Draft[] {
  const [first, ...more] = next;
  const last = drafts.at(-1);
  if (!first || !last) return [...next];
  const merged: Draft = { place: first.place ?? last.place, value: first.value ?? last.value };
  const same = drafts.findIndex((draft) => samePlace(draft.place, first.place) && first.place !== null && first.value !== null);
  const fixed = same >= 0 ? drafts.map((draft, at) => (at === same ? merged : draft)) : [...drafts.slice(0, -1), merged];
  return [...fixed, ...more];
}

const samePlace = (a: Draft['place'], b: Draft['place']): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && a !== null && b !== null && a.side === b.side && a.end === b.end);

/** "left sixty, same on the right" in the order of "left sixty, right the same". */
function dittosBehindPlaces(segment: readonly Item[]): readonly Item[] {
  const ordered = [...segment];
  for (let at = 0; at + 1 < ordered.length; at += 1) {
    const [item, next] = [ordered[at], ordered[at + 1]];
    if (item?.kind === 'value' && item.isDitto && next?.kind === 'place') {
      ordered[at] = next;
      ordered[at + 1] = item;
      at += 1;
    }
  }
  return ordered;
}

/** One stretch without corrections: places and values that alternate. */
function pair(segment: readonly Item[]): Paired {
  if (segment.some((item) => item.kind === 'or')) {
    return distinctOf(segment) > 1 ? 'alternatives' : null;
  }
  const row: { readonly kind: 'P' | 'V'; readonly place?: Draft['place']; readonly value?: Value; readonly pause: boolean }[] =
    [];
  for (const item of dittosBehindPlaces(segment)) {
    if (item.kind === 'value') {
      const before = row.at(-1);
      if (before?.kind === 'V' && !item.isDitto) {
        if (!sameValue(before.value, item.value)) return 'alternatives';
        continue;
      }
      row.push({ kind: 'V', value: item.value, pause: item.pauseBefore });
    } else if (item.kind === 'place' || item.kind === 'everywhere') {
      const placeOf = item.kind === 'place' ? item.place : item.both ? 'both' : 'all';
      const before = row.at(-1);
      if (before?.kind === 'P' && typeof before.place === 'object' && before.place && typeof placeOf === 'object') {
        const merged = mergePlaces(before.place, placeOf);
        if (!merged) return 'repeated';
        row[row.length - 1] = { ...before, place: merged };
        continue;
      }
      if (before?.kind === 'P') return null;
      row.push({ kind: 'P', place: placeOf, pause: item.pauseBefore });
    }
  }
  const kinds = row.map(({ kind }) => kind).join('');
  const draft = (place: Draft['place'], value: Value | null): Draft => ({ place, value });
  if (/^(PV)+$/.test(kinds) || /^(VP)+$/.test(kinds)) {
    const drafts: Draft[] = [];
    for (let index = 0; index < row.length; index += 2) {
      const [a, b] = [row[index], row[index + 1]];
      const place = a?.kind === 'P' ? a.place : b?.place;
      drafts.push(draft(place ?? null, (a?.kind === 'V' ? a.value : b?.value) ?? null));
    }
    return drafts;
  }
  if (kinds === 'V') return [draft(null, row[0]?.value ?? null)];
  if (kinds === 'P') return [draft(row[0]?.place ?? null, null)];
  // "sixty-two, right front sixty": the first is for the one asked about, if a pause says so.
  if (/^V(PV)+$/.test(kinds) && row[1]?.pause) {
    const rest = pair(segment.slice(segment.findIndex((item) => item.kind === 'value') + 1));
    return rest === null || typeof rest === 'string' ? rest : [draft(null, row[0]?.value ?? null), ...rest];
  }
  return null;
}

function mergePlaces(a: SaidPlace, b: SaidPlace): SaidPlace | null {
  if (a.side !== null && b.side !== null && a.side !== b.side) return null;
  if (a.end !== null && b.end !== null && a.end !== b.end) return null;
  return { side: a.side ?? b.side, end: a.end ?? b.end, from: a.from, next: b.next };
}

const sameValue = (a: Value | undefined, b: Value): boolean =>
  a !== undefined &&
  (a.unit === b.unit ? Math.abs(a.value - b.value) < 1e-9 : a.unit === 'count' || b.unit === 'count' ? false : sameInUnits(a, b));

function sameInUnits(a: Value, b: Value): boolean {
  if (UNITS[a.unit].dimension !== UNITS[b.unit].dimension) return false;
  return Math.abs(convert(a.value, a.unit, b.unit) - b.value) < 1e-6;
}

function distinctOf(items: readonly Item[]): number {
  return distinctValues(items.flatMap((item) => (item.kind === 'value' ? [item.value] : []))).length;
}

/** "five clicked, one moved": only what moved is counted; "all six clicked" is none. */
function pairCounts(items: readonly Item[], found: Findings): Paired {
  if (found.negativePredicates > 0) {
    const values = distinctValues(items.flatMap((item) => (item.kind === 'value' ? [item.value] : [])));
    const onlyNone = values.length === 1 && values[0]?.value === 0;
    if (!onlyNone) return null;
  }
  return pairAfterCorrections(items);
}

function place(
  drafts: readonly Draft[],
  context: ReadingsInput['context'],
  found: Findings,
  unclear: (why: UnclearWhy, candidates?: readonly SpokenReading[]) => ReadingsResult,
): ReadingsResult {
  const placed = context.position !== null || context.positions.length > 0;
  const readings: SpokenReading[] = [];
  let certainty = found.certainty;
  let before = null as SaidPlace | null;
  for (const { place: said, value } of drafts) {
    if (value === null) return unclear('incomplete');
    certainty = Math.min(certainty, value.certainty);
    const reading = (position: Position | null): SpokenReading => ({
      position,
      value: value.value,
      unit: value.unit,
      unitSaid: value.unitSaid,
    });
    if (said === null) {
      if (drafts.length > 1 && readings.length > 0) return unclear('ambiguous');
      readings.push(reading(null));
      continue;
    }
    if (!placed) return unclear('unknown-position');
    if (said === 'both' || said === 'all') {
      const all = everywhere(said, context.positions);
      if (all.length === 0) return unclear('unknown-position');
      for (const position of all) readings.push(reading(position));
      continue;
    }
    const resolved = resolvePlace(said, context.positions, context.position, before);
    if (resolved.kind === 'unknown') return unclear('unknown-position');
    if (resolved.kind === 'ambiguous') return unclear('ambiguous');
    readings.push(reading(resolved.position));
    before = { ...said, side: said.side ?? before?.side ?? null };
  }
  const kept: SpokenReading[] = [];
  for (const reading of readings) {
    const key = reading.position ?? context.position;
    const same = kept.find((one) => (one.position ?? context.position) === key);
    if (!same) kept.push(reading);
    else if (same.value !== reading.value || same.unit !== reading.unit) return unclear('repeated-position', readings);
  }
  return { kind: 'readings', readings: kept, hedged: found.hedged, certainty, changes: found.changes, fromLast: false };
}

function everywhere(which: 'both' | 'all', positions: readonly Position[]): readonly Position[] {
  if (which === 'all') return positions.length <= 6 ? positions : [];
  if (positions.length === 2) return positions;
  const sides = positions.filter((position) => position === 'left' || position === 'right');
  return sides.length === 2 ? sides : [];
}
