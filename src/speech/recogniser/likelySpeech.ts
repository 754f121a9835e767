/**
 * What the speech under a noise most likely was. The model knows how each state of each phone sounds in quiet; with the noise as it was
 * measured it follows how the same state sounds in it. Each frame is compared with all of them, and what the noise adds to those that fit
 * is taken off.
 *
 * Measured on 280 tuning answers as the second view beside spectral subtraction, instead of a deeper subtraction: the same number right
 * (quiet, and wind, gusts and engine at 5 dB), but known to be right more often: 84 % instead of 80 % can be accepted where as many wrong ones, one in
 * two hundred, are accepted with them. As the only view it is no better than subtraction.
 * Source: the vector Taylor series of Moreno, Raj and Stern 1996, order 0 with a fixed noise, minimum mean square error.
 */
import { COSINES } from './cepstra.ts';
import { FRONT_END, LEAST_FLOOR } from './frontEnd.ts';
import type { QuietSounds } from './quietSounds.ts';

const { filters: FILTERS, cepstra: CEPSTRA } = FRONT_END;

/** Never less than this part of the energy is left. */
const LEAST_GAIN = 0.1;
/** Of a noise's log energies, smoothed over a filter, about their mean. Common practice, no source. */
const NOISE_VARIANCE = 0.15;
const LEAST_VARIANCE = 0.02;
/** Posteriors below are not worth adding. */
const LEAST_PART = 1e-6;

/** Unliftered cepstra of one frame of log energies. */
function transform(logs: Float64Array, into: Float64Array, at = 0): void {
  for (let i = 0; i < CEPSTRA; i += 1) {
    let sum = 0;
    for (let filter = 0; filter < FILTERS; filter += 1)
      sum += (COSINES[i * FILTERS + filter] as number) * (logs[filter] as number);
    into[at + i] = sum;
  }
}

function logsOf(energies: Float32Array, row: number, logs: Float64Array): void {
  for (let filter = 0; filter < FILTERS; filter += 1) logs[filter] = Math.log((energies[row + filter] as number) + LEAST_FLOOR);
}

function meanCepstra(energies: Float32Array, frames: number): Float64Array {
  const mean = new Float64Array(CEPSTRA);
  const logs = new Float64Array(FILTERS);
  const cepstra = new Float64Array(CEPSTRA);
  for (let frame = 0; frame < frames; frame += 1) {
    logsOf(energies, frame * FILTERS, logs);
    transform(logs, cepstra);
    for (let i = 0; i < CEPSTRA; i += 1) mean[i] = (mean[i] as number) + (cepstra[i] as number) / frames;
  }
  return mean;
}

/** The sounds as they are in a noise: their cepstra, and by how much the noise raises each filter's log energy. */
function inNoise({ count, means, variances }: QuietSounds, mean: Float64Array, noise: Float64Array) {
  const raised = new Float64Array(count * FILTERS);
  const centers = new Float64Array(count * CEPSTRA);
  /** Half the inverse variances. */
  const sharpness = new Float64Array(count * CEPSTRA);
  const constants = new Float64Array(count);
  const logs = new Float64Array(FILTERS);
  for (let sound = 0; sound < count; sound += 1) {
    let speechPart = 0;
    for (let filter = 0; filter < FILTERS; filter += 1) {
      let log = 0;
      for (let i = 0; i < CEPSTRA; i += 1)
        log += (COSINES[i * FILTERS + filter] as number) * ((means[sound * CEPSTRA + i] as number) + (mean[i] as number));
      const ratio = ((noise[filter] as number) + LEAST_FLOOR) / Math.exp(log);
      const rise = Math.log1p(ratio);
      raised[sound * FILTERS + filter] = rise;
      logs[filter] = log + rise;
      speechPart += 1 / (1 + ratio) / FILTERS;
    }
    transform(logs, centers, sound * CEPSTRA);
    for (let i = 0; i < CEPSTRA; i += 1) {
      const at = sound * CEPSTRA + i;
      const variance = speechPart ** 2 * (variances[at] as number) + (1 - speechPart) ** 2 * NOISE_VARIANCE + LEAST_VARIANCE;
      sharpness[at] = 0.5 / variance;
      constants[sound] = (constants[sound] as number) - 0.5 * Math.log(variance);
    }
  }
  return { raised, centers, sharpness, constants };
}

/**
 * @param energies frames x 25, with the noise
 * @param cleaned the same by another method, for the mean of the speech
 * @param noise energies of the noise, 25
 * @returns new energies, frames x 25
 */
export function likelySpeech(
  sounds: QuietSounds,
  energies: Float32Array,
  cleaned: Float32Array,
  frames: number,
  noise: Float64Array,
): Float32Array {
  const { raised, centers, sharpness, constants } = inNoise(sounds, meanCepstra(cleaned, frames), noise);
  const { count } = sounds;
  const speech = new Float32Array(frames * FILTERS);
  const logs = new Float64Array(FILTERS);
  const cepstra = new Float64Array(CEPSTRA);
  const parts = new Float64Array(count);
  const rises = new Float64Array(FILTERS);
  for (let row = 0; row < frames * FILTERS; row += FILTERS) {
    logsOf(energies, row, logs);
    transform(logs, cepstra);
    let best = -Infinity;
    for (let sound = 0, at = 0; sound < count; sound += 1) {
      let score = constants[sound] as number;
      for (let i = 0; i < CEPSTRA; i += 1, at += 1) {
        const difference = (cepstra[i] as number) - (centers[at] as number);
        score -= difference * difference * (sharpness[at] as number);
      }
      parts[sound] = score;
      if (score > best) best = score;
    }
    let whole = 0;
    for (let sound = 0; sound < count; sound += 1) {
      const part = Math.exp((parts[sound] as number) - best);
      parts[sound] = part;
      whole += part;
    }
    rises.fill(0);
    for (let sound = 0; sound < count; sound += 1) {
      const part = (parts[sound] as number) / whole;
      if (part < LEAST_PART) continue;
      for (let filter = 0; filter < FILTERS; filter += 1)
        rises[filter] = (rises[filter] as number) + part * (raised[sound * FILTERS + filter] as number);
    }
    for (let filter = 0; filter < FILTERS; filter += 1)
      speech[row + filter] = (energies[row + filter] as number) * Math.max(LEAST_GAIN, Math.exp(-(rises[filter] as number)));
  }
  return speech;
}
