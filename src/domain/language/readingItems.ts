/** The pieces of an utterance about values, in order: values, places, corrections; and what speaks against believing them. */
import type { CountExpects, ReadingExpects } from '../checks/expects.ts';
import { type Dimension, UNITS } from '../quantity/units.ts';
import { afterNoun, countPhrases, HELD_WORDS, isNounWord, MOVED_WORDS } from './countWords.ts';
import type { InterpretContext, SpokenReading } from './meaning.ts';
import { type NumberOptions, numbersAt } from './numbers.ts';
import { numberAtom } from './numberWords.ts';
import { PhraseTable, phraseAt } from './phraseMatch.ts';
import { placeAt, type SaidPlace, type Side } from './positions.ts';
import { checked, dimensionOf, optionsFor, type Value, valueAt } from './saidValue.ts';
import type { Word } from './tokens.ts';
import { unitAt } from './unitWords.ts';
import type { Use, Uses } from './uses.ts';
import { CORRECTION_PHRASES, CORRECTION_WORDS, FILLERS, HEDGE_PHRASES, HEDGE_WORDS } from './vocabulary.ts';

export interface ReadingsInput {
  readonly words: readonly Word[];
  readonly expects: ReadingExpects | CountExpects;
  readonly context: Pick<InterpretContext, 'position' | 'positions' | 'last'>;
  /** Words of the check's own names: they say nothing more. */
  readonly names: readonly (readonly string[])[];
  readonly uses: Uses;
}

export type Item =
  | { readonly kind: 'value'; readonly value: Value; readonly pauseBefore: boolean; readonly isDitto?: boolean }
  | { readonly kind: 'place'; readonly place: SaidPlace; readonly pauseBefore: boolean }
  | { readonly kind: 'everywhere'; readonly both: boolean; readonly pauseBefore: boolean }
  | { readonly kind: 'correction' }
  | { readonly kind: 'or' }
  | { readonly kind: 'not' };

/** Things found that make the whole unclear, or less certain. */
export interface Findings {
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

/** Where the number was read, and when: now. */
const SOURCES = new PhraseTable(
  [
    'truck says',
    'truck shows',
    'dash says',
    'phone says',
    'app says',
    'radio says',
    'mirror says',
    'this morning',
    'right now',
    'of clear ice',
    'clear ice',
    'of ice',
  ].map((phrase) => [phrase.split(' '), 'source'] as const),
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
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
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

const NOT_A_NUMBER_AFTER_NUMBER = new Set(['number', 'lug', 'nut', 'stud', 'position', 'channel', 'station', 'wheel', 'hole']);

export function scan(input: ReadingsInput, homophones: NumberOptions['homophones']): Findings {
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
    const source = SOURCES.at(words, at);
    if (source) {
      use(source.next, 'filler');
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
    // "sixty plus"
    if (word.word === 'plus' && found.items.at(-1)?.kind === 'value' && numbersAt(words, at + 1, options).length === 0) {
      found.range = true;
      use(at + 1, 'hedge');
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
