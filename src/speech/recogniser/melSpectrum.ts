/** From samples to mel energies, frame by frame: pre-emphasis, Hamming window, power spectrum, filters. */
import { Fft } from './fft.ts';
import { FRONT_END } from './frontEnd.ts';
import { createMelFilters, type MelFilter } from './melFilters.ts';

const { window: WINDOW, shift: SHIFT, fftSize: SIZE, preEmphasis: ALPHA, filters: FILTERS } = FRONT_END;

const HAMMING = Float64Array.from({ length: WINDOW }, (_, n) => 0.54 - 0.46 * Math.cos((2 * Math.PI * n) / (WINDOW - 1)));

/**
 * Streaming: feed any number of samples, get every frame that became complete. Holds one window of audio, no more.
 */
export class MelSpectrum {
  readonly #fft = new Fft(SIZE);
  readonly #filters = createMelFilters();
  readonly #re = new Float64Array(SIZE);
  readonly #im = new Float64Array(SIZE);
  /** Pre-emphasized samples of the current window. */
  readonly #held = new Float64Array(WINDOW);
  #count = 0;
  #previous = 0;

  /**
   * @param samples 16 kHz mono, on the scale of 16-bit integers
   * @param onFrame given the energies of the 25 filters; the array is reused
   */
  feed(samples: ArrayLike<number>, onFrame: (energies: Float64Array) => void): void {
    const held = this.#held;
    for (let index = 0; index < samples.length; index += 1) {
      const sample = samples[index] as number;
      held[this.#count] = sample - ALPHA * this.#previous;
      this.#previous = sample;
      this.#count += 1;
      if (this.#count === WINDOW) {
        onFrame(this.#frame());
        held.copyWithin(0, SHIFT);
        this.#count = WINDOW - SHIFT;
      }
    }
  }

  /** The last, incomplete window, filled with silence, as the reference does at the end of an utterance. */
  flush(onFrame: (energies: Float64Array) => void): void {
    if (this.#count > 0) {
      this.#held.fill(0, this.#count);
      onFrame(this.#frame());
    }
    this.reset();
  }

  reset(): void {
    this.#count = 0;
    this.#previous = 0;
  }

  readonly #energies = new Float64Array(FILTERS);

  #frame(): Float64Array {
    const re = this.#re;
    const im = this.#im;
    const held = this.#held;
    for (let n = 0; n < WINDOW; n += 1) re[n] = (held[n] as number) * (HAMMING[n] as number);
    re.fill(0, WINDOW);
    im.fill(0);
    this.#fft.transform(re, im);
    for (let filter = 0; filter < FILTERS; filter += 1) {
      const { firstBin, weights } = this.#filters[filter] as MelFilter;
      let energy = 0;
      for (let offset = 0; offset < weights.length; offset += 1) {
        const r = re[firstBin + offset] as number;
        const i = im[firstBin + offset] as number;
        energy += (weights[offset] as number) * (r * r + i * i);
      }
      this.#energies[filter] = energy;
    }
    return this.#energies;
  }
}
