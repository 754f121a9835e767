/** Phrases around values: hedges, bounds, "same as last time", places that stand for all, and words that only look like numbers. */
import { PhraseTable } from './phraseMatch.ts';
import { CORRECTION_PHRASES, HEDGE_PHRASES } from './vocabulary.ts';

export const HEDGES = new PhraseTable(HEDGE_PHRASES.map((phrase) => [phrase, 'hedge'] as const));

export const CORRECTIONS = new PhraseTable(CORRECTION_PHRASES.map((phrase) => [phrase, 'correction'] as const));

export const BOUNDS = new PhraseTable(
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

export const SAME = new PhraseTable(
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

export const DITTO = new PhraseTable(
  ['the same', 'same', 'ditto', 'same thing', 'same there', 'likewise', 'too'].map(
    (phrase) => [phrase.split(' '), 'same'] as const,
  ),
);

/** Where the number was read, and when: now. */
export const SOURCES = new PhraseTable(
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

export const EVERYWHERE = new PhraseTable([
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

export const CHANGE_WORDS = new Set(['change', 'correct', 'update', 'set', 'make', 'fix', 'redo', 'edit', 'put']);

export const VAGUE = new Set([
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

export const PRONOUN_BEFORE_ONE = new Set([
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
export const IDLE_ONES = new Set([
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

export const NOT_A_NUMBER_AFTER_NUMBER = new Set([
  'number',
  'lug',
  'nut',
  'stud',
  'position',
  'channel',
  'station',
  'wheel',
  'hole',
]);
