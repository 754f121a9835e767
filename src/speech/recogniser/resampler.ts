/**
 * Changes the sample rate with a windowed-sinc low-pass, one set of taps for each phase; never by picking samples.
 *
 * Output sample k stands at input time k · in/out exactly: the filter's delay is taken out, so streams at different rates stay
 * aligned. Streaming; holds one filter length of input.
 * Source: Kaiser window, Kaiser 1974; polyphase form, Crochiere and Rabiner 1983.
 */
const ZERO_CROSSINGS = 20;
/** Part of the narrower band that is kept; the rest is the filter's slope. */
const BAND = 0.94;
/** Side lobes about 80 dB down. */
const KAISER_BETA = 8;

/** Modified Bessel function of the first kind, order 0, by its series; to the last digit for |x| below 20. */
function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; k < 60; k += 1) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
    if (term < sum * 1e-16) break;
  }
  return sum;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

export class Resampler {
  readonly #up: number;
  readonly #down: number;
  readonly #half: number;
  readonly #taps: readonly Float32Array[];
  #held: Float32Array;
  #count: number;
  /** Output samples given so far, counted from where the held input begins. */
  #phase = 0;

  /**
   * @param from input rate, Hz @param to output rate, Hz
   * @throws RangeError unless both are whole numbers from 1000 to 400000
   */
  constructor(from: number, to: number) {
    for (const rate of [from, to]) {
      if (!Number.isInteger(rate) || rate < 1000 || rate > 400_000) throw new RangeError(`cannot resample at ${rate} Hz`);
    }
    const common = gcd(from, to);
    this.#up = to / common;
    this.#down = from / common;
    const cutoff = 0.5 * BAND * Math.min(1, to / from);
    this.#half = Math.ceil(ZERO_CROSSINGS / (2 * cutoff));
    const length = 2 * this.#half;
    const window = besselI0(KAISER_BETA);
    this.#taps = Array.from({ length: this.#up }, (_, phase) => {
      const taps = new Float32Array(length);
      let sum = 0;
      for (let tap = 0; tap < length; tap += 1) {
        const time = tap - this.#half + 1 - phase / this.#up;
        const edge = time / this.#half;
        const sinc = time === 0 ? 2 * cutoff : Math.sin(2 * Math.PI * cutoff * time) / (Math.PI * time);
        taps[tap] = Math.abs(edge) >= 1 ? 0 : (sinc * besselI0(KAISER_BETA * Math.sqrt(1 - edge * edge))) / window;
        sum += taps[tap] as number;
      }
      return taps.map((tap) => tap / sum);
    });
    this.#held = new Float32Array(4096 + length);
    // Silence before the beginning, so that output starts at time 0.
    this.#count = this.#half - 1;
  }

  /** Input samples that an output sample needs to come, beyond its own time. */
  get lookahead(): number {
    return this.#half;
  }

  /** @returns every output sample that the input so far determines */
  process(input: Float32Array): Float32Array {
    if (this.#up === this.#down) return input.slice();
    if (this.#count + input.length > this.#held.length) {
      const larger = new Float32Array(2 * (this.#count + input.length));
      larger.set(this.#held.subarray(0, this.#count));
      this.#held = larger;
    }
    this.#held.set(input, this.#count);
    this.#count += input.length;
    const length = 2 * this.#half;
    const available = this.#count - length;
    const most = available < 0 ? 0 : Math.floor((available * this.#up + this.#up - 1 - this.#phase) / this.#down) + 1;
    const output = new Float32Array(Math.max(0, most));
    let made = 0;
    for (;;) {
      const start = Math.floor(this.#phase / this.#up);
      if (start + length > this.#count || made === output.length) break;
      const taps = this.#taps[this.#phase % this.#up] as Float32Array;
      let sum = 0;
      for (let tap = 0; tap < length; tap += 1) sum += (taps[tap] as number) * (this.#held[start + tap] as number);
      output[made] = sum;
      made += 1;
      this.#phase += this.#down;
    }
    const used = Math.min(Math.floor(this.#phase / this.#up), this.#count);
    this.#held.copyWithin(0, used, this.#count);
    this.#count -= used;
    this.#phase -= used * this.#up;
    return made === output.length ? output : output.subarray(0, made);
  }
}
