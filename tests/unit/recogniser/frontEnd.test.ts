import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cepstraOf, featuresOf, subtractMean } from '../../../src/speech/recogniser/cepstra.ts';
import { Fft } from '../../../src/speech/recogniser/fft.ts';
import { createMelFilters } from '../../../src/speech/recogniser/melFilters.ts';
import { MelSpectrum } from '../../../src/speech/recogniser/melSpectrum.ts';
import { seeded } from '../../audio/random.ts';
import { testSound } from '../../audio/testSound.ts';

const reference = JSON.parse(readFileSync(new URL('../../audio/fixtures/referenceCepstra.json', import.meta.url), 'utf8')) as {
  cepstra: number[];
};

function energiesOf(pieces: readonly ArrayLike<number>[]): number[] {
  const mel = new MelSpectrum();
  const energies: number[] = [];
  for (const piece of pieces) mel.feed(piece, (frame) => energies.push(...frame));
  return energies;
}

describe('the front end', () => {
  it('agrees with the reference decoder’s own cepstra to 1e-3 (fixture by pocketsphinx_batch, Debian)', () => {
    const energies = energiesOf([testSound()]);
    const frames = energies.length / 25;
    const cepstra = cepstraOf(energies, frames, 1e-4);
    expect(frames).toBeGreaterThan(40);
    let worst = 0;
    for (let index = 0; index < frames * 13; index += 1)
      worst = Math.max(worst, Math.abs(cepstra[index]! - reference.cepstra[index]!));
    expect(worst).toBeLessThan(1e-3);
  });

  it('gives the same frames however the sound is cut into pieces', () => {
    const sound = testSound();
    const pieces: Int16Array[] = [];
    const random = seeded(1);
    for (let at = 0; at < sound.length; ) {
      const length = 1 + Math.floor(700 * random());
      pieces.push(sound.subarray(at, at + length));
      at += length;
    }
    expect(energiesOf(pieces)).toEqual(energiesOf([sound]));
  });

  it('transforms like the definition of the discrete Fourier transform', () => {
    const random = seeded(2);
    const re = Float64Array.from({ length: 64 }, () => random() - 0.5);
    const im = Float64Array.from({ length: 64 }, () => random() - 0.5);
    const wanted = Array.from({ length: 64 }, (_, k) => {
      let [r, i] = [0, 0];
      for (let n = 0; n < 64; n += 1) {
        const angle = (-2 * Math.PI * k * n) / 64;
        r += re[n]! * Math.cos(angle) - im[n]! * Math.sin(angle);
        i += re[n]! * Math.sin(angle) + im[n]! * Math.cos(angle);
      }
      return [r, i];
    });
    new Fft(64).transform(re, im);
    for (const [k, [r, i]] of wanted.entries()) {
      expect(re[k]).toBeCloseTo(r!, 10);
      expect(im[k]).toBeCloseTo(i!, 10);
    }
  });

  it('has 25 filters of unit area between 130 and 6800 Hz (feat.params of the model)', () => {
    const filters = createMelFilters();
    expect(filters.length).toBe(25);
    for (const { weights, centerHz } of filters) {
      const area = weights.reduce((sum, weight) => sum + weight, 0) * (16_000 / 512);
      expect(area).toBeGreaterThan(0.9);
      expect(area).toBeLessThan(1.1);
      expect(centerHz).toBeGreaterThan(130);
      expect(centerHz).toBeLessThan(6800);
    }
  });

  it('takes the mean out, and steady sound has no differences', () => {
    const cepstra = Float32Array.from({ length: 20 * 13 }, (_, at) => at % 13);
    const features = featuresOf(cepstra, 20);
    for (let frame = 0; frame < 20; frame += 1) for (let i = 13; i < 39; i += 1) expect(features[frame * 39 + i]).toBe(0);
    subtractMean(cepstra, 20);
    expect(Math.max(...cepstra.map(Math.abs))).toBeLessThan(1e-5);
  });

  it('differences as the stream definition 1s_c_d_dd says: c[t+2]-c[t-2], and (c[t+3]-c[t-1])-(c[t+1]-c[t-3])', () => {
    const cepstra = new Float32Array(10 * 13);
    for (let frame = 0; frame < 10; frame += 1) cepstra[frame * 13] = frame * frame;
    const features = featuresOf(cepstra, 10);
    expect(features[5 * 39 + 13]).toBe(49 - 9);
    expect(features[5 * 39 + 26]).toBe(64 - 16 - (36 - 4));
  });
});
