/**
 * What is usually said first; where that does not fit, what is seldom said. The second graph is only built when it is first
 * needed: nobody waits for it who does not use it.
 */
import type { Decoded, Sounded, UtteranceDecoder } from './utteranceDecoder.ts';

/** What the listener needs of a decoder. */
export type AnswerDecoder = Pick<UtteranceDecoder, 'decode' | 'partial'>;

/** From this confidence on the usual is taken without looking further. */
const ENOUGH = 0.6;

const confidenceOf = ({ hypotheses }: Decoded) => hypotheses[0]?.confidence ?? 0;

export class LayeredDecoder implements AnswerDecoder {
  readonly #usual: AnswerDecoder;
  readonly #seldom: () => AnswerDecoder;

  constructor(usual: AnswerDecoder, seldom: () => AnswerDecoder) {
    this.#usual = usual;
    this.#seldom = seldom;
  }

  decode(sounded: Sounded): Decoded {
    const usual = this.#usual.decode(sounded);
    if (confidenceOf(usual) >= ENOUGH) return usual;
    const seldom = this.#seldom().decode(sounded);
    return confidenceOf(seldom) > confidenceOf(usual) ? seldom : usual;
  }

  partial(energies: Float32Array, frames: number): readonly string[] {
    return this.#usual.partial(energies, frames);
  }
}
