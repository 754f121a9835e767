import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { COSINES, cepstraOf } from '../../../src/speech/recogniser/cepstra.ts';
import { stretchTowards } from '../../../src/speech/recogniser/cepstralSpread.ts';
import { likelySpeech } from '../../../src/speech/recogniser/likelySpeech.ts';
import { quietSounds } from '../../../src/speech/recogniser/quietSounds.ts';
import { normal, seeded } from '../../audio/random.ts';

const FILTERS = 25;
const CEPSTRA = 13;
const model = readAcousticModel(readFileSync('public/ears/model.bin'));
const sounds = quietSounds(model);
/** Loudness that the mean of an utterance may have: log energy 18 in each filter. */
const MIDDLE = Float64Array.from({ length: CEPSTRA }, (_, i) => (i === 0 ? 18 * Math.sqrt(FILTERS) : 0));

/** Sounds as the model has them, drawn at random, one a frame, as energies about a mean. */
function speechOf(frames: number, seed: number): Float32Array {
  const random = seeded(seed);
  const cepstra = Array.from({ length: frames }, () => {
    const at = Math.floor(random() * sounds.count) * CEPSTRA;
    return Array.from(
      { length: CEPSTRA },
      (_, i) => sounds.means[at + i]! + Math.sqrt(sounds.variances[at + i]!) * normal(random),
    );
  });
  // The model's means are about the mean of what was said.
  const shift = MIDDLE.map((middle, i) => middle - cepstra.reduce((sum, frame) => sum + frame[i]!, 0) / frames);
  return Float32Array.from({ length: frames * FILTERS }, (_, at) => {
    const filter = at % FILTERS;
    const frame = cepstra[Math.floor(at / FILTERS)]!;
    return Math.exp(frame.reduce((log, value, i) => log + COSINES[i * FILTERS + filter]! * (value + shift[i]!), 0));
  });
}

/** Mean difference of log energies, over the places that are asked for. */
function distance(one: Float32Array, other: Float32Array, counts: (at: number) => boolean = () => true): number {
  const places = [...one.keys()].filter(counts);
  return places.reduce((sum, at) => sum + Math.abs(Math.log(one[at]! + 1e4) - Math.log(other[at]! + 1e4)), 0) / places.length;
}

describe('how phones sound in quiet', () => {
  it('is each state of each phone and of silence, about a mean of nought', () => {
    expect(sounds.count).toBe(3 * 40);
    expect([...sounds.variances].every((variance) => variance > 0)).toBe(true);
    for (const spread of sounds.spread) expect(spread).toBeGreaterThan(0.5);
    // Silence is quieter than any vowel: the first cepstrum is the loudness.
    const loudness = (phone: string) => {
      const at = [...model.phones.keys()]
        .filter((index) => !model.isFiller[index] || index === model.silence)
        .indexOf(model.phoneIndex.get(phone)!);
      return sounds.means[(3 * at + 1) * CEPSTRA]!;
    };
    for (const vowel of ['AA', 'IY', 'OW', 'ER']) expect(loudness(vowel)).toBeGreaterThan(loudness('SIL') + 5);
  });
});

describe('the likely speech under a noise', () => {
  const speech = speechOf(120, 3);
  const noise = Float64Array.from({ length: FILTERS }, (_, filter) => Math.exp(17.5 - 0.15 * filter));
  const noisy = speech.map((energy, at) => energy + noise[at % FILTERS]!);

  it('is nearer to the speech than what was heard', () => {
    const likely = likelySpeech(sounds, noisy, speech, 120, noise);
    // Where the noise matters and has not drowned the speech.
    const counts = (at: number) => {
      const ratio = noise[at % FILTERS]! / speech[at]!;
      return ratio > 0.2 && ratio < 8;
    };
    expect(distance(noisy, speech, counts)).toBeGreaterThan(0.5);
    expect(distance(likely, speech, counts)).toBeLessThan(0.65 * distance(noisy, speech, counts));
  });

  it('leaves speech without noise as it is', () => {
    const likely = likelySpeech(sounds, speech, speech, 120, new Float64Array(FILTERS));
    expect(distance(likely, speech)).toBeLessThan(0.02);
  });

  it('never adds energy, takes all of it or makes a number that is none', () => {
    const random = seeded(4);
    const odd = Float32Array.from({ length: 50 * FILTERS }, () => (random() < 0.3 ? 0 : 10 ** (16 * random())));
    const likely = likelySpeech(sounds, odd, odd, 50, noise);
    for (const [at, energy] of likely.entries()) {
      expect(energy).toBeLessThanOrEqual(odd[at]!);
      expect(energy).toBeGreaterThanOrEqual(0.099 * odd[at]!);
    }
    expect(likelySpeech(sounds, new Float32Array(0), new Float32Array(0), 0, noise).length).toBe(0);
  });
});

describe('the spread of cepstra', () => {
  const cepstraWith = (factor: number) => {
    const random = seeded(5);
    return Float32Array.from(
      { length: 200 * CEPSTRA },
      (_, at) => factor * sounds.spread[at % CEPSTRA]! * (random() - 0.5) * Math.sqrt(12),
    );
  };
  const spreadOf = (cepstra: Float32Array, dim: number) => {
    let sum = 0;
    for (let at = dim; at < cepstra.length; at += CEPSTRA) sum += cepstra[at]! ** 2;
    return Math.sqrt(sum / 200);
  };

  it.each([
    ['as wide as the model has it stays', 1, 1],
    ['narrowed by noise goes part of the way back', 0.8, 0.8 * 1.25 ** 0.6],
    ['never by more than half', 0.2, 0.2 * 1.5 ** 0.6],
    ['too wide is drawn in', 1.2, 1.2 * (1 / 1.2) ** 0.6],
  ])('that is %s', (_, before, after) => {
    const cepstra = cepstraWith(before);
    stretchTowards(sounds.spread, cepstra, 200);
    for (let dim = 0; dim < CEPSTRA; dim += 1)
      expect(Math.abs(spreadOf(cepstra, dim) / sounds.spread[dim]! / after - 1)).toBeLessThan(0.08);
  });

  it('of silence is left alone', () => {
    const cepstra = cepstraOf(new Float32Array(10 * FILTERS).fill(7), 10, 1).map(() => 0);
    stretchTowards(sounds.spread, cepstra, 10);
    expect([...cepstra].every((value) => value === 0)).toBe(true);
  });
});
