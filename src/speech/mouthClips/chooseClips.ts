/** Which clips say a sentence: the whole of it if there is one, else the longest runs of words, else words, else letters. */
import type { Spoken, SpokenSentence } from './spokenWords.ts';
import { spelled } from './spokenWords.ts';
import type { VoicePack } from './voicePack.ts';

export type Piece =
  | { readonly kind: 'line'; readonly words: string }
  | { readonly kind: 'part'; readonly words: string }
  | { readonly kind: 'pause'; readonly length: 'short' | 'long' };

export interface Choice {
  readonly pieces: readonly Piece[];
  readonly ending: SpokenSentence['ending'];
  /** Words that could not be said even by the letter; {@link UNSAYABLE} was said in their place. */
  readonly unsaid: readonly string[];
}

/** Said in place of a word that has neither a clip nor letters that we know. */
export const UNSAYABLE = 'a word i cannot say';

const isWord = (item: Spoken): item is { readonly word: string } => 'word' in item;

export function wordsIn({ items }: SpokenSentence): readonly string[] {
  return items.filter(isWord).map(({ word }) => word);
}

/** The name under which a whole sentence is kept: its words, and whether it asks. */
export function lineKey(sentence: SpokenSentence): string {
  return `${wordsIn(sentence).join(' ')}${sentence.ending === '?' ? '?' : ''}`;
}

/**
 * Clips for one sentence. Nothing is left out: a word without a clip is spelled, and one that cannot even be spelled is
 * announced as such, so that a line never says less than it means without saying so.
 */
export function chooseClips(sentence: SpokenSentence, pack: Pick<VoicePack, 'has' | 'longestPart'>): Choice {
  const { items, ending } = sentence;
  const whole = lineKey(sentence);
  if (pack.has('line', whole)) return { pieces: [{ kind: 'line', words: whole }], ending, unsaid: [] };
  const pieces: Piece[] = [];
  const unsaid: string[] = [];
  for (let at = 0; at < items.length; ) {
    const item = items[at];
    if (item === undefined) break;
    if (!isWord(item)) {
      pieces.push({ kind: 'pause', length: item.pause });
      at++;
      continue;
    }
    const words = longestRun(items, at, pack);
    if (words !== null) {
      pieces.push({ kind: 'part', words: words.join(' ') });
      at += words.length;
      continue;
    }
    const letters = spelled(item.word).filter((letter) => pack.has('part', letter));
    if (letters.length > 0 && letters.length === item.word.replaceAll("'", '').length) {
      for (const letter of letters) pieces.push({ kind: 'part', words: letter });
    } else {
      unsaid.push(item.word);
      pieces.push({ kind: 'part', words: UNSAYABLE });
    }
    at++;
  }
  return { pieces, ending, unsaid };
}

function longestRun(items: readonly Spoken[], from: number, pack: Pick<VoicePack, 'has' | 'longestPart'>): string[] | null {
  const run: string[] = [];
  for (const item of items.slice(from, from + pack.longestPart)) {
    if (!isWord(item)) break;
    run.push(item.word);
  }
  for (; run.length > 0; run.pop()) if (pack.has('part', run.join(' '))) return run;
  return null;
}
