/** Pronunciations: which phones a word is made of, each way it is really said. */
import { LEXICON_TEXT } from './lexiconEntries.ts';

/** A word to phones, one or more ways, most usual first. */
export type Lexicon = ReadonlyMap<string, readonly (readonly string[])[]>;

/**
 * Lines of "word PH ONE S|AL TER NATE".
 * @throws RangeError naming the first line that has no pronunciation
 */
export function parseLexicon(text: string): Lexicon {
  const lexicon = new Map<string, readonly (readonly string[])[]>();
  for (const line of text.split('\n')) {
    if (line === '') continue;
    const space = line.indexOf(' ');
    const ways = line
      .slice(space + 1)
      .split('|')
      .map((way) => way.split(' ').filter((phone) => phone !== ''));
    if (space < 1 || ways.some((way) => way.length === 0)) throw new RangeError(`no pronunciation: ${line}`);
    lexicon.set(line.slice(0, space), ways);
  }
  return lexicon;
}

let shared: Lexicon | undefined;

/** The app's own lexicon, parsed on first use. */
export function appLexicon(): Lexicon {
  shared ??= parseLexicon(LEXICON_TEXT);
  return shared;
}
