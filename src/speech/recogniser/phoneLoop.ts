/**
 * The competitor of every grammar: any phones in any order. Where it fits the sound much better than the grammar's words do,
 * something else was said. Source: the phone-loop ("garbage") models of Rose and Paul 1990.
 */
import { type AcousticModel, STATES } from './acousticModel.ts';
import type { FrameScorer } from './senoneScorer.ts';

/** Nats for each new phone. */
const INSERTION = -3;

export class PhoneLoop {
  readonly #model: AcousticModel;
  readonly #senones: Uint16Array;
  readonly #score: Float64Array;
  #entry = 0;

  constructor(model: AcousticModel) {
    this.#model = model;
    const phones = model.phones.length;
    this.#senones = Uint16Array.from({ length: phones * STATES }, (_, at) =>
      model.ciSenoneOf(Math.floor(at / STATES), at % STATES),
    );
    this.#score = new Float64Array(phones * STATES).fill(-Infinity);
  }

  begin(): void {
    this.#score.fill(-Infinity);
    this.#entry = 0;
  }

  /** One frame. @returns score of the best path so far */
  step(scorer: FrameScorer): number {
    const { transitions, phones } = this.#model;
    const score = this.#score;
    let best = -Infinity;
    let exit = -Infinity;
    for (let phone = 0; phone < phones.length; phone += 1) {
      const row = phone * STATES * (STATES + 1);
      const at = phone * STATES;
      for (let state = STATES - 1; state >= 0; state -= 1) {
        const stay = (score[at + state] as number) + (transitions[row + state * (STATES + 1) + state] as number);
        const come =
          state > 0
            ? (score[at + state - 1] as number) + (transitions[row + (state - 1) * (STATES + 1) + state] as number)
            : this.#entry + INSERTION;
        const total = Math.max(stay, come) + scorer.score(this.#senones[at + state] as number);
        score[at + state] = total;
        if (total > best) best = total;
      }
      const leave = (score[at + STATES - 1] as number) + (transitions[row + STATES * STATES + STATES - 1] as number);
      if (leave > exit) exit = leave;
    }
    this.#entry = exit;
    return best;
  }

  /** Score of silence in the current frame, best of its states. */
  silenceScore(scorer: FrameScorer): number {
    const at = this.#model.silence * STATES;
    let best = -Infinity;
    for (let state = 0; state < STATES; state += 1) best = Math.max(best, scorer.score(this.#senones[at + state] as number));
    return best;
  }
}
