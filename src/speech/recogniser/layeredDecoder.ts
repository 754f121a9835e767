/**
 * What is usually said first; where that does not fit, what is seldom said. The second graph is only built when it is first
 * needed: nobody waits for it who does not use it.
 */
import type { Decoded, Sounded, UtteranceDecoder } from './utteranceDecoder.ts';
import { VOICED } from './voicing.ts';

/** What the listener needs of a decoder. */
export type AnswerDecoder = Pick<UtteranceDecoder, 'decode' | 'partial'>;

/**
 * Frames from the first voiced one to the last below which nobody can have said "change left tread to five": the second graph takes
 * up to a second to build late in a round, and is not built for a faint "six".
 */
const LEAST_SPAN = 80;
/**
 * From this confidence on the usual is taken without looking further. High: "correct the left tread to seven" passes for "three eight,
 * no, left front two seven" at 0.8.
 */
const ENOUGH = 0.9;

function voicedSpan(voicing: Float32Array): number {
  const first = voicing.findIndex((one) => one >= VOICED);
  const last = voicing.findLastIndex((one) => one >= VOICED);
  return first < 0 ? 0 : last - first + 1;
}

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
    if (voicedSpan(sounded.voicing) < LEAST_SPAN || confidenceOf(usual) >= ENOUGH) return usual;
    const seldom = this.#seldom().decode(sounded);
    return confidenceOf(seldom) > confidenceOf(usual) ? seldom : usual;
  }

  partial(energies: Float32Array, frames: number): readonly string[] {
    return this.#usual.partial(energies, frames);
  }
}
