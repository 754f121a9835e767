/** Keeps the account of how each piece of a transcript was used. */
import type { TokenUse } from './meaning.ts';
import type { Tokens, Word } from './tokens.ts';

export type Use = TokenUse['use'];

/** Stronger uses are not overwritten by weaker ones: a piece that gave two words shows what mattered. */
const STRENGTH: Readonly<Record<Use, number>> = {
  ignored: 0,
  filler: 1,
  detail: 2,
  hedge: 3,
  name: 4,
  command: 5,
  correction: 5,
  position: 6,
  unit: 6,
  negation: 6,
  state: 7,
  number: 8,
};

export class Uses {
  readonly #tokens: Tokens;
  readonly #words: readonly Word[];
  readonly #uses: Use[];

  /** @param words the words that indexes point into: all of them, or some */
  constructor(tokens: Tokens, words: readonly Word[] = tokens.words, uses: Use[] = tokens.pieces.map(() => 'ignored')) {
    this.#tokens = tokens;
    this.#words = words;
    this.#uses = uses;
  }

  /** The same account, for indexes into a part of the words. */
  over(words: readonly Word[]): Uses {
    return new Uses(this.#tokens, words, this.#uses);
  }

  /** Words from `from` up to but not with `to`. */
  mark(from: number, to: number, use: Use): void {
    for (let index = from; index < to; index += 1) {
      const word = this.#words[index];
      if (!word) continue;
      const known = this.#uses[word.piece] ?? 'ignored';
      if (STRENGTH[use] >= STRENGTH[known]) this.#uses[word.piece] = use;
    }
  }

  list(): readonly TokenUse[] {
    return this.#tokens.pieces.map(({ text }, index) => ({ text, use: this.#uses[index] ?? 'ignored' }));
  }
}
