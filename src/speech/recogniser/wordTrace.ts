/** Where the words of a hypothesis ended: records linked backwards, grown as needed, emptied for each utterance. */
export interface SpokenWord {
  readonly word: number;
  /** First frame after the previous word; silence between them belongs to neither. */
  readonly start: number;
  readonly end: number;
  /** Log score of the path from `start` to `end`, grammar weights included. */
  readonly score: number;
}

export class WordTrace {
  #word = new Int32Array(4096);
  #frame = new Int32Array(4096);
  #before = new Int32Array(4096);
  #score = new Float64Array(4096);
  #count = 0;

  clear(): void {
    this.#count = 0;
  }

  /** @returns the new record's number */
  add(word: number, frame: number, before: number, score: number): number {
    if (this.#count === this.#word.length) {
      const grown = (old: Int32Array) => {
        const larger = new Int32Array(2 * old.length);
        larger.set(old);
        return larger;
      };
      this.#word = grown(this.#word);
      this.#frame = grown(this.#frame);
      this.#before = grown(this.#before);
      const scores = new Float64Array(2 * this.#score.length);
      scores.set(this.#score);
      this.#score = scores;
    }
    this.#word[this.#count] = word;
    this.#frame[this.#count] = frame;
    this.#before[this.#count] = before;
    this.#score[this.#count] = score;
    this.#count += 1;
    return this.#count - 1;
  }

  /** Words and silences (word -1) that lead up to a record, in order. */
  read(record: number): SpokenWord[] {
    const spoken: SpokenWord[] = [];
    for (let at = record; at >= 0; at = this.#before[at] as number) {
      const before = this.#before[at] as number;
      spoken.unshift({
        word: this.#word[at] as number,
        start: before >= 0 ? (this.#frame[before] as number) + 1 : 0,
        end: this.#frame[at] as number,
        score: (this.#score[at] as number) - (before >= 0 ? (this.#score[before] as number) : 0),
      });
    }
    return spoken;
  }
}
