/**
 * Noises for the tests, made from seeds: wind at a microphone, gusts, an idling engine, babble of other speech.
 *
 * Wind at a microphone is mostly below 300 Hz and falls with about the square of frequency (integrated noise); gusts swing
 * the level by some 15 dB at 1 to 4 Hz. Common practice, no source.
 */
import { normal, type Random } from './random.ts';

const RATE = 16_000;

/** Integrated white noise, leaking so that it does not wander. */
function wind(length: number, random: Random): Float32Array {
  const samples = new Float32Array(length);
  let level = 0;
  for (let n = 0; n < length; n += 1) {
    level = 0.995 * level + normal(random);
    samples[n] = level;
  }
  return samples;
}

/** Wind whose level swings by about 15 dB, each swing of its own length. */
function gusts(length: number, random: Random): Float32Array {
  const samples = wind(length, random);
  let from = 0;
  let to = random();
  let start = 0;
  let swing = RATE / (2 * (1 + 3 * random()));
  for (let n = 0; n < length; n += 1) {
    if (n - start >= swing) {
      from = to;
      to = random();
      start = n;
      swing = RATE / (2 * (1 + 3 * random()));
    }
    const part = 0.5 - 0.5 * Math.cos((Math.PI * (n - start)) / swing);
    samples[n] = (samples[n] as number) * 10 ** ((-15 / 20) * (1 - (from + (to - from) * part)));
  }
  return samples;
}

/** Harmonics of a firing frequency that wavers, with a rattle on top. */
function engine(length: number, random: Random): Float32Array {
  const samples = new Float32Array(length);
  const firing = 22 + 10 * random();
  const strengths = Array.from({ length: 40 }, (_, index) => (0.3 + random()) / (1 + index) ** 0.9);
  const phases = strengths.map(() => 2 * Math.PI * random());
  let waver = 0;
  let turn = 0;
  let rattle = 0;
  for (let n = 0; n < length; n += 1) {
    waver = 0.9995 * waver + 0.0005 * normal(random);
    turn += (2 * Math.PI * firing * (1 + waver)) / RATE;
    let sum = 0;
    for (let harmonic = 0; harmonic < strengths.length; harmonic += 1) {
      sum += (strengths[harmonic] as number) * Math.sin((harmonic + 1) * turn + (phases[harmonic] as number));
    }
    rattle = 0.7 * rattle + 0.3 * normal(random);
    samples[n] = sum + 0.35 * rattle * (0.5 + 0.5 * Math.max(0, Math.sin(turn)));
  }
  return samples;
}

/** Several talkers at once, each from somewhere in the given speech. */
function babble(length: number, random: Random, speech: readonly Float32Array[]): Float32Array {
  const samples = new Float32Array(length);
  for (let talker = 0; talker < 6; talker += 1) {
    const voice = speech[Math.floor(random() * speech.length)];
    if (!voice || voice.length === 0) throw new RangeError('babble requires speech');
    let at = Math.floor(random() * voice.length);
    const gain = 0.5 + random();
    for (let n = 0; n < length; n += 1) {
      samples[n] = (samples[n] as number) + gain * (voice[at] as number);
      at = (at + 1) % voice.length;
    }
  }
  return samples;
}

export type NoiseKind = 'wind' | 'gusts' | 'engine' | 'babble';

export function makeNoise(kind: NoiseKind, length: number, random: Random, speech: readonly Float32Array[]): Float32Array {
  if (kind === 'wind') return wind(length, random);
  if (kind === 'gusts') return gusts(length, random);
  if (kind === 'engine') return engine(length, random);
  return babble(length, random, speech);
}

const power = (samples: Float32Array) => samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length);

/** Only what lies between 300 and 3400 Hz (two-pole Butterworth high- and low-pass, RBJ cookbook). */
export function telephoneBand(samples: Float32Array): Float32Array {
  const biquad = (input: Float32Array, hz: number, high: boolean) => {
    const w = (2 * Math.PI * hz) / RATE;
    const alpha = Math.sin(w) / Math.SQRT2;
    const cos = Math.cos(w);
    const b = high ? [(1 + cos) / 2, -(1 + cos), (1 + cos) / 2] : [(1 - cos) / 2, 1 - cos, (1 - cos) / 2];
    const output = new Float32Array(input.length);
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let n = 0; n < input.length; n += 1) {
      const x = input[n] as number;
      const y = (b[0]! * x + b[1]! * x1 + b[2]! * x2 + 2 * cos * y1 - (1 - alpha) * y2) / (1 + alpha);
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      output[n] = y;
    }
    return output;
  };
  return biquad(biquad(samples, 300, true), 3400, false);
}

export interface Mixed {
  readonly samples: Float32Array;
  /** Signal to noise over 300-3400 Hz, dB. */
  readonly bandSnrDb: number;
}

/** Speech with noise over all of it at a ratio over the whole band. `pad` seconds of noise alone stand before and after. */
export function mix(speech: Float32Array, noise: Float32Array, snrDb: number, pad: number): Mixed {
  const before = Math.round(pad * RATE);
  const gain = Math.sqrt(power(speech) / power(noise) / 10 ** (snrDb / 10));
  const samples = new Float32Array(speech.length + 2 * before);
  samples.set(speech, before);
  let peak = 0;
  for (let n = 0; n < samples.length; n += 1) {
    samples[n] = (samples[n] as number) + gain * (noise[n % noise.length] as number);
    peak = Math.max(peak, Math.abs(samples[n] as number));
  }
  // A mixture too loud for the format is made quieter as a whole; clipping is another test's matter.
  if (peak > 0.98) for (let n = 0; n < samples.length; n += 1) samples[n] = ((samples[n] as number) * 0.98) / peak;
  const bandSnrDb = 10 * Math.log10(power(telephoneBand(speech)) / (gain * gain * power(telephoneBand(noise))));
  return { samples, bandSnrDb };
}
