/**
 * How periodic a frame is: voices are, wind is not. The highest normalized autocorrelation at the lags of a voice's pitch,
 * over sound thinned to 4 kHz with the lowest band taken off, where wind is loudest.
 * Source: autocorrelation pitch detection, Rabiner 1977.
 */
const THIN = 4;
const WINDOW = 128;
/** 4000 Hz / 57 = 70 Hz to 4000 Hz / 11 = 364 Hz. */
const SHORTEST = 11;
const LONGEST = 57;
/** One-pole high-pass near 220 Hz at 16 kHz. */
const HIGH_PASS = 0.917;

/** From this on a frame counts as voiced. */
export const VOICED = 0.55;

export class Voicing {
  readonly #held = new Float64Array(WINDOW + LONGEST);
  #sum = 0;
  #count = 0;
  #before = 0;
  #high = 0;

  /** @param samples 16 kHz, -1 .. 1 */
  feed(samples: Float32Array): void {
    const held = this.#held;
    for (const sample of samples) {
      this.#high = HIGH_PASS * (this.#high + sample - this.#before);
      this.#before = sample;
      this.#sum += this.#high;
      this.#count += 1;
      if (this.#count === THIN) {
        held.copyWithin(0, 1);
        held[held.length - 1] = this.#sum;
        this.#sum = 0;
        this.#count = 0;
      }
    }
  }

  /** 0..1 for the newest 46 ms. */
  periodicity(): number {
    const held = this.#held;
    const start = LONGEST;
    let own = 1e-9;
    for (let n = start; n < start + WINDOW; n += 1) own += (held[n] as number) ** 2;
    let best = 0;
    for (let lag = SHORTEST; lag <= LONGEST; lag += 1) {
      let product = 0;
      let other = 1e-9;
      for (let n = start; n < start + WINDOW; n += 1) {
        const delayed = held[n - lag] as number;
        product += (held[n] as number) * delayed;
        other += delayed * delayed;
      }
      best = Math.max(best, product / Math.sqrt(own * other));
    }
    return best;
  }
}
