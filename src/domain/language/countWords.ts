/** How many of a known few: "none moved", "all eight clicked", "two turned a little". */
import type { CountExpects, ReadingExpects } from '../checks/expects.ts';
import { PhraseTable } from './phraseMatch.ts';
import { speakWhole } from './speakNumber.ts';
import { plainWords, type Word } from './tokens.ts';
import type { Uses } from './uses.ts';

export const MOVED_WORDS = new Set(
  'moved move moving turned turn turning loose loosened spun gave budged budge budging snugged creaked slipped broken broke snapped frayed popped clicked-late'.split(
    ' ',
  ),
);

export const HELD_WORDS = new Set('tight clicked click held hold fine good okay solid whole intact torqued fast snug'.split(' '));

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

const countTables = new WeakMap<CountExpects, PhraseTable<number>>();

export function countPhrases(expects: CountExpects): PhraseTable<number> {
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

export const isNounWord = (word: string, expects: CountExpects): boolean =>
  expects.noun.some((noun) => plainWords(noun).includes(word)) ||
  ['lug', 'lugs', 'nut', 'nuts', 'studs', 'them', 'wires', 'wire', 'strands'].includes(word);

/** "two lugs moved a quarter turn": what follows a count says how, not how many. */
export function afterNoun(words: readonly Word[], at: number, expects: ReadingExpects | CountExpects, uses: Uses): number {
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
