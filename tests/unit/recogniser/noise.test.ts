import { describe, expect, it } from 'vitest';
import { noiseFloorOf, subtractNoise } from '../../../src/speech/recogniser/melSubtraction.ts';
import { aroundVoice, levelsOf, speechRegion } from '../../../src/speech/recogniser/speechRegion.ts';
import { VOICED, Voicing } from '../../../src/speech/recogniser/voicing.ts';
import { normal, seeded } from '../../audio/random.ts';

/** 100 frames of noise with 30 of speech in the middle, all channels alike. */
function utterance(noise: number, speech: number): Float32Array {
  const random = seeded(21);
  return Float32Array.from({ length: 100 * 25 }, (_, at) => {
    const frame = Math.floor(at / 25);
    return noise * (0.8 + 0.4 * random()) + (frame >= 40 && frame < 70 ? speech : 0);
  });
}

describe('spectral subtraction', () => {
  it('takes the noise from the quietest frames', () => {
    const noise = noiseFloorOf(utterance(1000, 1e6), 100, 0.2);
    for (const level of noise) expect(Math.abs(level / 1000 - 1)).toBeLessThan(0.25);
  });

  it('widens the distance between speech and noise, and leaves loud speech as it is', () => {
    const energies = utterance(1000, 1e6);
    const cleaned = subtractNoise(energies, 100, noiseFloorOf(energies, 100));
    expect(cleaned[50 * 25 + 5]! / energies[50 * 25 + 5]!).toBeGreaterThan(0.99);
    expect(cleaned[10 * 25 + 5]! / energies[10 * 25 + 5]!).toBeLessThan(0.8);
  });

  it('never gives a negative energy or none at all', () => {
    const cleaned = subtractNoise(new Float32Array(50 * 25), 50, new Float64Array(25));
    expect([...cleaned].every((energy) => energy >= 0 && Number.isFinite(energy))).toBe(true);
    expect(subtractNoise(new Float32Array(0), 0, new Float64Array(25)).length).toBe(0);
  });
});

describe('the part of an utterance that is speech', () => {
  it('has two fifths of a second around it', () => {
    const long = new Float32Array(200 * 25).fill(1000);
    long.fill(1e6, 90 * 25, 120 * 25);
    expect(speechRegion(levelsOf(long, 200))).toEqual({ start: 50, end: 160 });
  });

  it('ends soon after the voice, though a gust goes on, and stays as it is without any voice', () => {
    const voicing = new Float32Array(400);
    voicing.fill(0.9, 150, 180);
    voicing[390] = 0.9;
    expect(aroundVoice({ start: 20, end: 400 }, voicing, 0.55)).toEqual({ start: 95, end: 240 });
    expect(aroundVoice({ start: 120, end: 200 }, voicing, 0.55)).toEqual({ start: 120, end: 200 });
    expect(aroundVoice({ start: 20, end: 400 }, new Float32Array(400), 0.55)).toEqual({ start: 20, end: 400 });
  });

  it('is all of it where nothing stands out, and nothing of nothing', () => {
    const { start, end } = speechRegion(levelsOf(new Float32Array(100 * 25).fill(500), 100));
    expect(end - start).toBe(100);
    expect(speechRegion(new Float32Array(0))).toEqual({ start: 0, end: 0 });
  });
});

describe('voicing', () => {
  const periodicity = (sample: (n: number) => number) => {
    const voicing = new Voicing();
    voicing.feed(Float32Array.from({ length: 4000 }, (_, n) => sample(n)));
    return voicing.periodicity();
  };

  it.each([90, 150, 250])('hears a voice of %i Hz', (hz) => {
    const pulse = (n: number) =>
      Array.from({ length: 12 }, (_, k) => Math.cos((2 * Math.PI * hz * (k + 1) * n) / 16_000)).reduce(
        (sum, part) => sum + part,
        0,
      ) / 30;
    expect(periodicity(pulse)).toBeGreaterThan(VOICED);
  });

  it('hears none in hiss and in wind', () => {
    const random = seeded(22);
    expect(periodicity(() => 0.1 * normal(random))).toBeLessThan(VOICED);
    expect(periodicity(() => 0)).toBe(0);
  });
});
