/** Finding fixed phrases in a row of words. */
import type { Word } from './tokens.ts';

/** Whether `phrase` stands at `at`, word for word, marks not counted. @returns the index behind it, or null */
export function phraseAt(words: readonly Word[], at: number, phrase: readonly string[]): number | null {
  let index = at;
  for (const [place, word] of phrase.entries()) {
    while (place > 0 && words[index]?.kind === 'mark') index += 1;
    if (words[index]?.word !== word) return null;
    index += 1;
  }
  return index;
}

/** Phrases by their first word, the longest first. */
export class PhraseTable<T> {
  readonly #byFirst = new Map<string, { readonly words: readonly string[]; readonly value: T }[]>();

  constructor(entries: Iterable<readonly [words: readonly string[], value: T]>) {
    for (const [words, value] of entries) {
      const [first] = words;
      if (first === undefined) continue;
      const list = this.#byFirst.get(first) ?? [];
      list.push({ words, value });
      this.#byFirst.set(first, list);
    }
    for (const list of this.#byFirst.values()) list.sort((a, b) => b.words.length - a.words.length);
  }

  /** The longest phrase that stands at `at`. */
  at(words: readonly Word[], at: number): { readonly value: T; readonly next: number } | null {
    const first = words[at];
    if (first === undefined) return null;
    for (const { words: phrase, value } of this.#byFirst.get(first.word) ?? []) {
      const next = phraseAt(words, at, phrase);
      if (next !== null) return { value, next };
    }
    return null;
  }
}
