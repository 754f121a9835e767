/**
 * Watches the sound itself and says in a sentence when listening is hopeless: clipping, no signal at all, too windy. Limits
 * are common practice, no source.
 */
export type SoundProblem = 'wind' | 'clipping' | 'silent';

export const SOUND_SENTENCES: Readonly<Record<SoundProblem, string>> = {
  wind: 'It is too windy to hear you. Turn your back to the wind, or use the buttons.',
  clipping: 'The sound is too loud and breaks up. Hold the microphone farther away, or shield it from the wind.',
  silent: 'No sound comes from the microphone. Check the headset or its mute switch, or use the buttons.',
};

/** Samples at or beyond this are clipped. */
const FULL_SCALE = 0.985;
const CLIPPED_PART = 0.01;
/** Every real microphone is louder than this, dB full scale. */
const SILENT_DB = -95;
/** Steady noise in the speech band this loud leaves no room for a voice. */
const WIND_FLOOR_DB = -32;
const SECONDS = { clipping: 1, silent: 3, wind: 2 } as const;
/** The same sentence is not said again before this. */
const REST_S = 30;

export class InputMeter {
  #samples = 0;
  #clipped = 0;
  #energy = 0;
  readonly #since: Record<SoundProblem, number> = { wind: 0, clipping: 0, silent: 0 };
  readonly #rest: Record<SoundProblem, number> = { wind: 0, clipping: 0, silent: 0 };

  /**
   * @param samples -1 .. 1 at 16 kHz, any number
   * @param floorDb noise floor in the speech band, dB full scale; Infinity when not known yet
   * @returns a problem that has lasted, once
   */
  feed(samples: Float32Array, floorDb: number): SoundProblem | null {
    for (const sample of samples) {
      if (Math.abs(sample) >= FULL_SCALE) this.#clipped += 1;
      this.#energy += sample * sample;
    }
    this.#samples += samples.length;
    if (this.#samples < 8000) return null;
    const seconds = this.#samples / 16_000;
    const present: Record<SoundProblem, boolean> = {
      clipping: this.#clipped / this.#samples > CLIPPED_PART,
      silent: 10 * Math.log10(this.#energy / this.#samples + 1e-15) < SILENT_DB,
      wind: Number.isFinite(floorDb) && floorDb > WIND_FLOOR_DB,
    };
    this.#samples = 0;
    this.#clipped = 0;
    this.#energy = 0;
    for (const problem of ['silent', 'clipping', 'wind'] as const) {
      this.#rest[problem] = Math.max(0, this.#rest[problem] - seconds);
      this.#since[problem] = present[problem] ? this.#since[problem] + seconds : 0;
      if (this.#since[problem] >= SECONDS[problem] && this.#rest[problem] === 0) {
        this.#rest[problem] = REST_S;
        return problem;
      }
    }
    return null;
  }
}
