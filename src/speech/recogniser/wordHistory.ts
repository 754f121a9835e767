/**
 * The words of every hypothesis as a trie: the same words have the same number, so hypotheses that differ only in timing or in
 * silences meet and the better one stays.
 */
export const NO_WORDS = 0;

export class WordHistory {
  readonly #parents: number[] = [-1];
  readonly #words: number[] = [-1];
  readonly #children = new Map<number, number>();
  readonly #vocabulary: number;

  constructor(vocabulary: number) {
    this.#vocabulary = vocabulary + 1;
  }

  clear(): void {
    this.#parents.length = 1;
    this.#words.length = 1;
    this.#children.clear();
  }

  /** The history that is `history` followed by a word. */
  append(history: number, word: number): number {
    const key = history * this.#vocabulary + word;
    const found = this.#children.get(key);
    if (found !== undefined) return found;
    const id = this.#parents.length;
    this.#parents.push(history);
    this.#words.push(word);
    this.#children.set(key, id);
    return id;
  }

  words(history: number): number[] {
    const words: number[] = [];
    for (let at = history; at > NO_WORDS; at = this.#parents[at] as number) words.unshift(this.#words[at] as number);
    return words;
  }
}
