/**
 * Mel-frequency cepstra: the orthonormal cosine transform (DCT-II) of the log energies, liftered.
 * Source: Davis and Mermelstein 1980; liftering 1 + L/2 sin(πi/L), Juang, Rabiner and Wilpon 1987.
 */
import { FRONT_END } from './frontEnd.ts';

const { filters: FILTERS, cepstra: CEPSTRA, lifter: LIFTER } = FRONT_END;

/** The orthonormal cosine transform without the lifter, cepstra x filters; its transpose takes cepstra back to log energies. */
export const COSINES = Float64Array.from({ length: CEPSTRA * FILTERS }, (_, at) => {
  const i = Math.floor(at / FILTERS);
  const scale = Math.sqrt((i === 0 ? 1 : 2) / FILTERS);
  return scale * Math.cos((Math.PI * i * ((at % FILTERS) + 0.5)) / FILTERS);
});

export const LIFTS = Float64Array.from({ length: CEPSTRA }, (_, i) => 1 + (LIFTER / 2) * Math.sin((Math.PI * i) / LIFTER));

const TRANSFORM = COSINES.map((cosine, at) => cosine * (LIFTS[Math.floor(at / FILTERS)] as number));

/**
 * @param energies frames x 25, linear
 * @param floor added to each energy before the logarithm
 * @returns frames x 13
 */
export function cepstraOf(energies: ArrayLike<number>, frames: number, floor: number): Float32Array {
  const cepstra = new Float32Array(frames * CEPSTRA);
  const logs = new Float64Array(FILTERS);
  for (let frame = 0; frame < frames; frame += 1) {
    for (let filter = 0; filter < FILTERS; filter += 1)
      logs[filter] = Math.log((energies[frame * FILTERS + filter] as number) + floor);
    for (let i = 0; i < CEPSTRA; i += 1) {
      let sum = 0;
      for (let j = 0; j < FILTERS; j += 1) sum += (TRANSFORM[i * FILTERS + j] as number) * (logs[j] as number);
      cepstra[frame * CEPSTRA + i] = sum;
    }
  }
  return cepstra;
}

/** Subtract the mean over the utterance from each cepstrum, in place: the channel and the voice's average go away. */
export function subtractMean(cepstra: Float32Array, frames: number): void {
  for (let i = 0; i < CEPSTRA; i += 1) {
    let sum = 0;
    for (let frame = 0; frame < frames; frame += 1) sum += cepstra[frame * CEPSTRA + i] as number;
    const mean = frames > 0 ? sum / frames : 0;
    for (let frame = 0; frame < frames; frame += 1)
      cepstra[frame * CEPSTRA + i] = (cepstra[frame * CEPSTRA + i] as number) - mean;
  }
}

/**
 * The three streams that are scored: cepstra, first differences over four frames, second differences.
 * @returns frames x 39, edges clamped
 */
export function featuresOf(cepstra: Float32Array, frames: number): Float32Array {
  const features = new Float32Array(frames * 3 * CEPSTRA);
  const at = (frame: number, i: number) => cepstra[Math.min(Math.max(frame, 0), frames - 1) * CEPSTRA + i] as number;
  for (let frame = 0; frame < frames; frame += 1) {
    const row = frame * 3 * CEPSTRA;
    for (let i = 0; i < CEPSTRA; i += 1) {
      features[row + i] = at(frame, i);
      features[row + CEPSTRA + i] = at(frame + 2, i) - at(frame - 2, i);
      features[row + 2 * CEPSTRA + i] = at(frame + 3, i) - at(frame - 1, i) - (at(frame + 1, i) - at(frame - 3, i));
    }
  }
  return features;
}
