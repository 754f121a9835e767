/** What else is said around a condition: doubt, exceptions, mends, talk that is not for the app. */

import { ownWords, type Term } from './conditionLexicon.ts';
import { BUT, NOT_A_STATEMENT, NOT_ANSWERS, UNSURE } from './conditionPhrases.ts';
import type { Seen } from './conditionSeen.ts';
import type { ConditionInput } from './conditions.ts';
import { DEGREE_WORDS, PART_WORDS } from './conditionWords.ts';
import { phraseAt } from './phraseMatch.ts';
import type { Word } from './tokens.ts';
import type { Uses } from './uses.ts';
import { FILLERS } from './vocabulary.ts';

const PEOPLE = new Set(['you', 'your', 'he', 'him', 'his', 'me', 'my']);

/** A question, an order, a plan: talk about a condition that does not state one. */
export function isAside(words: readonly Word[], seen: readonly Seen[], only: string | null = null): boolean {
  if (
    only === null &&
    words.some(({ word }, at) => PEOPLE.has(word) && words[at - 1]?.word !== 'to' && words[at - 1]?.word !== 'for')
  )
    return true;
  let start = 0;
  while (words[start]?.kind === 'mark' || /^(uh|um|well|so|hey|okay|and|but|oh|yes|no)$/.test(words[start]?.word ?? ''))
    start += 1;
  for (let at = 0; at < words.length; at += 1) {
    const found = NOT_A_STATEMENT.at(words, at);
    if (!found) continue;
    const first = words[at]?.word ?? '';
    if (only !== null && first !== only) continue;
    if (seen.some((one) => at >= one.from && found.next <= one.next)) continue;
    const opens = [
      'is',
      'are',
      'was',
      'does',
      'did',
      'do',
      'has',
      'can',
      'could',
      'would',
      'will',
      'have',
      'what',
      'who',
      'where',
      'how',
      'why',
      'check',
      'hold',
      'put',
      'pull',
      'push',
    ].includes(first);
    // A verb in front asks; further on it belongs to a statement ("that is the one").
    if (opens && at !== start && words[at + 1]?.word !== 'be') continue;
    // "where it rubs", "when I push it" belong to a finding.
    if (
      (first === 'when' || first === 'if' || first === 'until' || first === 'unless') &&
      seen.some(({ next, polarity }) => next <= at && polarity === 'problem')
    )
      continue;
    if (
      (first === 'need' || first === 'have' || first === 'got' || first === 'going') &&
      seen.some(({ polarity }) => polarity === 'problem') &&
      !words.slice(0, at).some(({ word }) => word === 'i' || word === 'we' || word === 'you')
    )
      continue;
    return true;
  }
  return false;
}

/** Hedges, unless they are within what was seen ("looks good", "about" of "all about"). */
export function unsureIn(
  words: readonly Word[],
  seen: readonly Seen[],
  uses: Uses,
): { readonly found: boolean; readonly spans: readonly { from: number; next: number }[] } {
  const spans: { from: number; next: number }[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const found = UNSURE.at(words, at);
    if (!found) continue;
    if (seen.some((one) => at >= one.from && at < one.next && found.next <= one.next)) continue;
    // "I'm sure" and "for sure" are the opposite of a hedge; "not sure" was found as a whole.
    const isPlain = found.next === at + 1;
    if (isPlain && words[at]?.word === 'about' && words[at + 1]?.word === 'it') continue;
    // "as it should" and "should" behind "like it" state; "good enough" doubts.
    if (
      words[at]?.word === 'should' &&
      /^(it|they)$/.test(words[at - 1]?.word ?? '') &&
      /^(like|as|way)$/.test(words[at - 2]?.word ?? '')
    )
      continue;
    uses.mark(at, found.next, 'hedge');
    spans.push({ from: at, next: found.next });
    at = found.next - 1;
  }
  return { found: spans.length > 0, spans };
}

const KNOWN_AROUND = new Set(
  'any tightened fixed snugged replaced closed but except though although however only besides apart other than stamped marked printed says labeled not no yes and or nor if near next on in at from under over behind along where between through into onto off out up down around about because since so still again also too side bit little lot some few couple lots several new old big small long short deep light heavy half quarter inch inches foot turn times maybe it starting beginning getting coming going gone looks showing through couple there is was been has bottom top inside outside middle end edge all way needs need should'.split(
    ' ',
  ),
);

/** "solid as a rock", "like a guitar string": pictures of what was said. */
function simileSpans(words: readonly Word[]): readonly { from: number; next: number }[] {
  const spans: { from: number; next: number }[] = [];
  for (let at = 1; at < words.length; at += 1) {
    const isPicture =
      (words[at]?.word === 'as' || words[at]?.word === 'like') && /^(a|an|can|all)$/.test(words[at + 1]?.word ?? '');
    if (isPicture) spans.push({ from: at, next: at + 4 });
  }
  return spans;
}

/** Words that neither the check nor the trade nor everyday speech explains. */
export function strangersAmong(
  strays: readonly Term[],
  words: readonly Word[],
  { expects, names }: ConditionInput,
  places: readonly { from: number; next: number }[],
  hedges: readonly { from: number; next: number }[],
): readonly string[] {
  const similes = simileSpans(words);
  const own = ownWords(expects);
  const nameWords = new Set(names.flat());
  const within = (spans: readonly { from: number; next: number }[], at: number) =>
    spans.some(({ from, next }) => at >= from && at < next);
  return strays
    .filter((term) => !within(places, term.from) && !within(hedges, term.from) && !within(similes, term.from))
    .filter(({ stem: root, word }) => {
      if (root === ',' || root.startsWith('#')) return false;
      if (PART_WORDS.has(word) || DEGREE_WORDS.has(word) || KNOWN_AROUND.has(word)) return false;
      if (own.has(root) || nameWords.has(word) || FILLERS.has(word)) return false;
      return !NOT_ANSWERS.has(word) && !BUT.has(word);
    })
    .map(({ word }) => word)
    .filter((word) => words.length > 0 && word !== '');
}

/** "the latch won't go down": something that does not do what it should. Little is sure of it, so it is asked about. */
export function failureIn(words: readonly Word[], strangers: number): boolean | null {
  const at = words.findIndex(({ word }, index) => (word === 'will' || word === 'would') && words[index + 1]?.word === 'not');
  const isPart = words.slice(0, Math.max(0, at)).some(({ word }) => PART_WORDS.has(word) || word === 'it');
  return at >= 0 && isPart && strangers <= 2 && words.length > at + 2 ? true : null;
}

/** "everything but the clip", "all but one", "only the left one works": not all of it is right. */
export function exceptionIn(words: readonly Word[], seen: readonly Seen[]): 'problem' | 'unclear' | null {
  if (seen.some(({ polarity }) => polarity === 'problem')) return null;
  const but = words.findIndex(({ word }, at) => BUT.has(word) && word !== 'only' && word !== 'other' && at > 0);
  if (but > 0 && !seen.some(({ from }) => from > but)) {
    const behind = words.slice(but + 1).filter(({ kind, word }) => kind !== 'mark' && !FILLERS.has(word));
    const isPart = words.slice(but + 1).some(({ word }) => PART_WORDS.has(word) || word === 'one');
    if (isPart) return 'problem';
    if (behind.length > 0) return 'unclear';
  }
  if (words.some((_, at) => phraseAt(words, at, ['not', 'all', 'the', 'way']) !== null)) return 'problem';
  const only = words.findIndex(({ word }) => word === 'only');
  const next = words[words[only + 1]?.word === 'the' ? only + 2 : only + 1]?.word ?? '';
  if (only >= 0 && seen.length > 0 && /^(one|left|right|front|rear|half|two|some)$/.test(next)) return 'problem';
  return null;
}

/** "it was loose but I tightened it", "loose, fixed it": what holds is what is there now. */
export const wasMended = (words: readonly Word[]): boolean => {
  const text = ` ${words.map(({ word }) => word).join(' ')} `;
  return (
    / (was|were) .*(tightened|fixed|now|snugged|replaced|closed|latched|pinned|locked) /.test(text) &&
    !/ still | again | keeps /.test(text)
  );
};
