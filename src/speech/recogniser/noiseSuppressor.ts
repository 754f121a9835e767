/**
 * Noise suppression before the front end: RNNoise at its own 48 kHz, then mixed with some of the raw signal.
 *
 * Suppressed speech alone loses consonants that the acoustic model was trained with, and the model has never heard a perfectly
 * clean pause; a part of the raw signal gives both back. The delay of the suppressor is taken out before mixing.
 */
import { Resampler } from './resampler.ts';

/** Works in place on 480 samples of 48 kHz sound in the range -1 .. 1. */
export interface FrameSuppressor {
  /** @returns probability of speech in the frame, 0..1 */
  process(frame: Float32Array): number;
  /** Forget what was heard before. */
  reset(): void;
}

/** Part of the raw signal in the mix; measured: 0 loses clean speech, 0.35 loses at 5 dB. */
export const RAW_PART = 0.2;

const FRAME = 480;
/** Samples at 16 kHz by which RNNoise's output lags: two frames, found by correlation. */
const LAG = 320;

export class NoiseSuppressor {
  readonly #suppressor: FrameSuppressor;
  readonly #rawPart: number;
  #up = new Resampler(16_000, 48_000);
  #down = new Resampler(48_000, 16_000);
  readonly #frame = new Float32Array(FRAME);
  #held = 0;
  /** Raw samples that wait for their suppressed partners. */
  #raw = new Float32Array(8192);
  #rawCount = 0;
  #skip = LAG;
  #speech = 0;

  constructor(suppressor: FrameSuppressor, rawPart = RAW_PART) {
    this.#suppressor = suppressor;
    this.#rawPart = rawPart;
  }

  /** Probability of speech in the newest frame, 0..1. */
  get speech(): number {
    return this.#speech;
  }

  /**
   * @param samples 16 kHz, -1 .. 1
   * @returns as much as is ready, in step with the input but some 30 ms late
   */
  process(samples: Float32Array): Float32Array {
    if (this.#rawCount + samples.length > this.#raw.length) {
      const larger = new Float32Array(2 * (this.#rawCount + samples.length));
      larger.set(this.#raw.subarray(0, this.#rawCount));
      this.#raw = larger;
    }
    this.#raw.set(samples, this.#rawCount);
    this.#rawCount += samples.length;

    const wide = this.#up.process(samples);
    const cleaned = new Float32Array(Math.ceil((this.#held + wide.length) / FRAME) * FRAME);
    let made = 0;
    for (let at = 0; at < wide.length; ) {
      const part = Math.min(FRAME - this.#held, wide.length - at);
      this.#frame.set(wide.subarray(at, at + part), this.#held);
      this.#held += part;
      at += part;
      if (this.#held === FRAME) {
        this.#speech = this.#suppressor.process(this.#frame);
        cleaned.set(this.#frame, made);
        made += FRAME;
        this.#held = 0;
      }
    }
    let clean = this.#down.process(cleaned.subarray(0, made));
    if (this.#skip > 0) {
      const skipped = Math.min(this.#skip, clean.length);
      this.#skip -= skipped;
      clean = clean.subarray(skipped);
    }
    const mixed = new Float32Array(clean.length);
    for (let index = 0; index < clean.length; index += 1) {
      mixed[index] = (1 - this.#rawPart) * (clean[index] as number) + this.#rawPart * (this.#raw[index] as number);
    }
    this.#raw.copyWithin(0, clean.length, this.#rawCount);
    this.#rawCount -= clean.length;
    return mixed;
  }

  reset(): void {
    this.#suppressor.reset();
    this.#up = new Resampler(16_000, 48_000);
    this.#down = new Resampler(48_000, 16_000);
    this.#held = 0;
    this.#rawCount = 0;
    this.#skip = LAG;
    this.#speech = 0;
  }
}
