/** The pieces of an utterance about values, in order: values, places, corrections; and what speaks against believing them. */
import type { CountExpects, ReadingExpects } from '../checks/expects.ts';
import { type Dimension, UNITS } from '../quantity/units.ts';
import { afterNoun, countPhrases, HELD_WORDS, isNounWord, MOVED_WORDS } from './countWords.ts';
import type { InterpretContext, SpokenReading } from './meaning.ts';
import { type NumberOptions, numbersAt } from './numbers.ts';
import { numberAtom } from './numberWords.ts';
import { phraseAt } from './phraseMatch.ts';
import { placeAt, type SaidPlace, type Side } from './positions.ts';
import {
  BOUNDS,
  CHANGE_WORDS,
  CORRECTIONS,
  DITTO,
  EVERYWHERE,
  HEDGES,
  IDLE_ONES,
  NOT_A_NUMBER_AFTER_NUMBER,
  PRONOUN_BEFORE_ONE,
  SAME,
  SOURCES,
  VAGUE,
} from './readingPhrases.ts';
import { checked, dimensionOf, optionsFor, type Value, valueAt } from './saidValue.ts';
import type { Word } from './tokens.ts';
import { unitAt } from './unitWords.ts';
import type { Use, Uses } from './uses.ts';
import { CORRECTION_WORDS, FILLERS, HEDGE_WORDS } from './vocabulary.ts';

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
  changes: boolean;
  same: boolean;
  notAStep: boolean;
  unknownPlace: boolean;
  negativePredicates: number;
  certainty: number;
}

/** Where the reading of an utterance stands. */
interface Scan {
  readonly input: ReadingsInput;
  readonly words: readonly Word[];
  readonly expects: ReadingExpects | CountExpects;
  readonly options: NumberOptions;
  /** Whether the check is asked at a place at all. */
  readonly placed: boolean;
  readonly found: Findings;
  /** The word at hand, never a mark. */
  readonly word: string;
  readonly at: number;
  /** A pause stood before it. */
  readonly pause: boolean;
}

/** How far a reader read and what the words were; `use: null` leaves them as not used. */
interface Read {
  readonly next: number;
  readonly use: Use | null;
}

type Reader = (scan: Scan) => Read | null;

const read = (next: number, use: Use | null): Read => ({ next, use });
const wordIs =
  (test: (word: string) => boolean, use: Use, then: (found: Findings) => void = () => {}): Reader =>
  ({ word, at, found }) => {
    if (!test(word)) return null;
    then(found);
    return read(at + 1, use);
  };

const pushValue = ({ found, pause }: Scan, value: Value, more: { readonly isDitto?: true } = {}): void => {
  found.items.push({ kind: 'value', value, pauseBefore: pause, ...more });
};

const isCount = ({ expects }: Scan): boolean => expects.kind === 'count';
const isNumberAt = (words: readonly Word[], at: number): boolean =>
  numberAtom(words[at]?.word ?? '') !== undefined || words[at]?.kind === 'digits';

/** A count with what is said of it behind: "two lugs moved a quarter turn". */
const readCounted = ({ words, expects, input }: Scan, next: number): Read => {
  return read(afterNoun(words, next, expects, input.uses), 'number');
};

/** "none moved", "all of them". */
const readNone: Reader = (scan) => {
  const { expects, words, at } = scan;
  const none = expects.kind === 'count' ? countPhrases(expects).at(words, at) : null;
  if (!none || (none.value === 0 && isAnswerNo(words, at, none.next))) return null;
  pushValue(scan, { value: none.value, unit: 'count', unitSaid: false, certainty: 1 });
  return readCounted(scan, none.next);
};

/** "same as last time". */
const readSame: Reader = ({ words, at, found }) => {
  const same = SAME.at(words, at);
  if (same) found.same = true;
  return same ? read(same.next, 'detail') : null;
};

/** "about", "give or take", "just under". */
const readHedge: Reader = (scan) => {
  const { words, at, found, word } = scan;
  const hedge = HEDGES.at(words, at);
  if (!hedge || (isCount(scan) && word === 'kind')) return null;
  found.hedged = true;
  return read(hedge.next, 'hedge');
};

/** "lug three", "number two": which one, not how many. */
const readIdentity: Reader = (scan) => {
  const { word, words, at, found } = scan;
  const names = word === 'number' || (isCount(scan) && NOT_A_NUMBER_AFTER_NUMBER.has(word));
  if (!names || !isNumberAt(words, at + 1)) return null;
  found.identity = true;
  return read(at + 1, 'filler');
};

/** "a couple moved". */
const readCouple: Reader = (scan) => {
  if (!isCount(scan) || scan.word !== 'couple') return null;
  scan.found.hedged = true;
  pushValue(scan, { value: 2, unit: 'count', unitSaid: false, certainty: 0.9 });
  return readCounted(scan, scan.at + 1);
};

const readName: Reader = ({ input, words, at }) => {
  for (const name of input.names) {
    const next = phraseAt(words, at, name);
    if (next !== null) return read(next, 'name');
  }
  return null;
};

const readSource: Reader = ({ words, at }) => {
  const source = SOURCES.at(words, at);
  return source ? read(source.next, 'filler') : null;
};

/** "no wait", "make that". */
const readCorrection: Reader = ({ words, at, found }) => {
  const correction = CORRECTIONS.at(words, at);
  if (!correction) return null;
  found.items.push({ kind: 'correction' });
  return read(correction.next, 'correction');
};

/** "the other one" of two. */
const readOther: Reader = (scan) => {
  const { word, words, at, placed, found, input, pause } = scan;
  if (word !== 'other' || !placed || isCount(scan) || !/^(one|side|tire|wheel)$/.test(words[at + 1]?.word ?? '')) return null;
  const other = otherOf(input.context);
  if (other === null) found.unknownPlace = true;
  else found.items.push({ kind: 'place', place: { side: other, end: null, from: at, next: at + 2 }, pauseBefore: pause });
  return read(at + 2, 'position');
};

/** "both", "all four". */
const readEverywhere: Reader = (scan) => {
  const { words, at, placed, found, pause } = scan;
  const everywhere = placed && !isCount(scan) ? EVERYWHERE.at(words, at) : null;
  if (!everywhere) return null;
  found.items.push({ kind: 'everywhere', both: everywhere.value, pauseBefore: pause });
  return read(everywhere.next, 'position');
};

/** "more than", "up to", "sixty plus": a bound is no value. */
const readBound: Reader = ({ words, at, word, found, options, expects }) => {
  const upTo = upToAt(words, at, dimensionOf(expects));
  if (upTo !== null) {
    if (upTo.isBound) found.range = true;
    return read(at + 2, 'filler');
  }
  const isOpenEnd = word === 'plus' && found.items.at(-1)?.kind === 'value' && numbersAt(words, at + 1, options).length === 0;
  const bound = isOpenEnd ? { next: at + 1 } : BOUNDS.at(words, at);
  if (!bound) return null;
  found.range = true;
  return read(bound.next, 'hedge');
};

/** "this one", "one second", "these two": no number, or none of ours. */
const readIdleNumber: Reader = (scan) => {
  const { words, at, word, found, expects } = scan;
  if (isPronounOne(words, at, found.items) && !isOnlyTheOne(words, at, expects)) return read(at + 1, 'filler');
  const isIdle = (word === 'one' || word === '1') && IDLE_ONES.has(words[at + 1]?.word ?? '');
  if (isIdle || (!isCount(scan) && isPeople(words, at))) {
    found.strangers += 1;
    return read(isIdle ? at + 2 : at + 1, null);
  }
  // Half and half, not a value.
  if (phraseAt(words, at, ['fifty', 'fifty']) === null || words.length > 4) return null;
  found.range = true;
  return read(at + 2, 'hedge');
};

const readValue: Reader = (scan) => {
  const { words, at, expects, options, found } = scan;
  const said = valueAt(words, at, expects, options);
  if (!said) return null;
  const [only] = said.choices;
  if (said.wrongUnit) found.wrongUnit = true;
  else if (said.choices.length > 1)
    found.ambiguous.push(...said.choices.map(({ value, unit, unitSaid }) => ({ position: null, value, unit, unitSaid })));
  else if (only) pushValue(scan, only);
  else if (said.notAStep) found.notAStep = true;
  else found.outOfRange.push(...said.outside);
  return readCounted(scan, said.next);
};

/** "sixty to sixty-five". */
const readTo: Reader = ({ word, words, at, found, options }) => {
  if (word !== 'to' && word !== 'through') return null;
  if (found.items.at(-1)?.kind === 'value' && numbersAt(words, at + 1, options).length > 0) found.range = true;
  return read(at + 1, 'filler');
};

const readPlace: Reader = ({ words, at, placed, found, pause }) => {
  const place = placeAt(words, at);
  // "right, sixty-two" where no place is asked about is agreement.
  if (!place || (!placed && place.side === 'right' && place.end === null)) return null;
  found.items.push({ kind: 'place', place, pauseBefore: pause });
  return read(place.next, 'position');
};

/** "same on the right". */
const readDitto: Reader = (scan) => {
  const { words, at, word, found } = scan;
  const ditto = DITTO.at(words, at);
  if (!ditto) return null;
  const last = found.items.findLast((item) => item.kind === 'value');
  if (last?.kind === 'value') pushValue(scan, last.value, { isDitto: true });
  else if (word !== 'too' && found.items.length === 0) found.same = true;
  else return null;
  return read(ditto.next, 'detail');
};

/** "sixtyish". */
const readIsh: Reader = (scan) => {
  const stem = /^(.+?)ish$/.exec(scan.word)?.[1];
  const atom = stem === undefined ? undefined : numberAtom(stem);
  if (!atom) return null;
  scan.found.hedged = true;
  const value = checked({ value: atom.n, unit: null, unitSaid: false, certainty: 0.9 }, scan.expects);
  if (value.kind === 'value') pushValue(scan, value.value);
  return read(scan.at + 1, 'number');
};

/** What is said of counted things: "moved", "tight". */
const readPredicate: Reader = ({ expects, word, at, found }) => {
  if (expects.kind !== 'count') return null;
  if (MOVED_WORDS.has(word) || isNounWord(word, expects)) return read(at + 1, 'state');
  if (!HELD_WORDS.has(word)) return null;
  found.negativePredicates += 1;
  return read(at + 1, 'state');
};

/** A unit that stands by itself. */
const readUnit: Reader = (scan) => {
  const { words, at, expects, found, word } = scan;
  if (word === 'meter') return read(at + 1, 'filler');
  const unit = unitAt(words, at, dimensionOf(expects));
  if (!unit) return null;
  if (unit.unit !== null && !isCount(scan) && UNITS[unit.unit].dimension !== dimensionOf(expects)) found.strangers += 1;
  return read(unit.next, 'unit');
};

/** In the order in which they are tried; the first that reads something wins. */
const READERS: readonly Reader[] = [
  readNone,
  readSame,
  readHedge,
  readIdentity,
  readCouple,
  readName,
  readSource,
  readCorrection,
  readOther,
  readEverywhere,
  readBound,
  readIdleNumber,
  wordIs((word) => word === 'number', 'filler'),
  readValue,
  readTo,
  wordIs(
    (word) => word === 'or',
    'filler',
    ({ items }) => items.push({ kind: 'or' }),
  ),
  readPlace,
  readDitto,
  wordIs(
    (word) => word === 'not',
    'negation',
    ({ items }) => items.push({ kind: 'not' }),
  ),
  wordIs(
    (word) => CORRECTION_WORDS.has(word),
    'correction',
    ({ items }) => items.push({ kind: 'correction' }),
  ),
  wordIs(
    (word) => VAGUE.has(word),
    'hedge',
    (found) => {
      found.range = true;
    },
  ),
  wordIs(
    (word) => HEDGE_WORDS.has(word),
    'hedge',
    (found) => {
      found.hedged = true;
    },
  ),
  readIsh,
  wordIs(
    (word) => CHANGE_WORDS.has(word),
    'correction',
    (found) => {
      found.changes = true;
    },
  ),
  readPredicate,
  readUnit,
  wordIs((word) => FILLERS.has(word), 'filler'),
];

const nothingFound = (): Findings => ({
  items: [],
  hedged: false,
  range: false,
  strangers: 0,
  identity: false,
  outOfRange: [],
  wrongUnit: false,
  ambiguous: [],
  changes: false,
  same: false,
  notAStep: false,
  unknownPlace: false,
  negativePredicates: 0,
  certainty: 1,
});

/** Read an utterance from its first word to its last. Every word is read once; what nobody reads is a stranger. */
export function scan(input: ReadingsInput, homophones: NumberOptions['homophones']): Findings {
  const { words, expects, uses, context } = input;
  const found = nothingFound();
  const fixed = {
    input,
    words,
    expects,
    found,
    options: optionsFor(expects, homophones),
    placed: context.position !== null || context.positions.length > 0,
  };
  let pause = false;
  let at = 0;
  while (at < words.length) {
    const word = words[at];
    if (!word) break;
    if (word.kind === 'mark') {
      if (word.word === '-' && found.items.at(-1)?.kind === 'value' && words[at + 1]?.kind === 'digits') found.range = true;
      pause = true;
      at += 1;
      continue;
    }
    const before = found.items.length;
    const state: Scan = { ...fixed, word: word.word, at, pause };
    const result = firstRead(state);
    if (found.items.length > before) pause = false;
    if (result === null) found.strangers += 1;
    else if (result.use !== null) uses.mark(at, result.next, result.use);
    at = Math.max(at + 1, result?.next ?? 0);
  }
  return found;
}

function firstRead(state: Scan): Read | null {
  for (const reader of READERS) {
    const result = reader(state);
    if (result) return result;
  }
  return null;
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
