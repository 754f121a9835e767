import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { HOP, ORDER, predictorOf, SAMPLE_RATE, synthesize } from '../../../src/speech/mouthClips/vocoder.ts';
import { loadVoicePack, openVoicePack, VoicePackError } from '../../../src/speech/mouthClips/voicePack.ts';
import { analyze, lineSpectrum } from '../../tools/renderVoiceAnalysis.ts';
import { clip, givenPackFile, steadyVowel, vowel } from './givenVoice.ts';

/** Power at one frequency, by the plain definition of the Fourier sum over a Hann window. */
function powerAt(x: Float32Array, hz: number): number {
  let [re, im] = [0, 0];
  x.forEach((value, i) => {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / x.length);
    re += value * window * Math.cos((2 * Math.PI * hz * i) / SAMPLE_RATE);
    im += value * window * Math.sin((2 * Math.PI * hz * i) / SAMPLE_RATE);
  });
  return re * re + im * im;
}

const rms = (x: Float32Array): number => Math.sqrt(x.reduce((sum, value) => sum + value * value, 0) / x.length);
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

describe('line spectrum', () => {
  it('law: leads back to the predictor that it came from', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.8, max: 0.8, noNaN: true }), { minLength: ORDER, maxLength: ORDER }),
        (reflections) => {
          // Any set of reflection coefficients within ±1 gives a stable predictor (step-up recursion, Makhoul 1975).
          let a = [1];
          reflections.forEach((k, i) => {
            const shrink = 0.9 ** i;
            const up = [...a, 0];
            a = up.map((value, j) => value + k * shrink * (up[up.length - 1 - j] ?? 0));
          });
          const lsf = lineSpectrum(Float64Array.from(a));
          lsf.forEach((value, i) => {
            expect(value).toBeGreaterThan(lsf[i - 1] ?? 0);
            expect(value).toBeLessThan(Math.PI);
          });
          const back = new Float64Array(ORDER);
          predictorOf(lsf, back);
          const scale = Math.max(...a.map(Math.abs));
          back.forEach((value, i) => {
            expect(Math.abs(value - (a[i + 1] ?? 0))).toBeLessThan(2e-3 * scale);
          });
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('round trip', () => {
  it.each([
    [130, [730, 1090, 2440]],
    [180, [270, 2290, 3010]],
    [240, [530, 1840, 2480]],
  ])('a vowel at %i Hz keeps its pitch, its level and its spectrum', (pitch, resonances) => {
    const original = steadyVowel(pitch, resonances);
    const frames = analyze(original);
    const inner = frames.slice(10, -10);
    expect(inner.every(({ voicing }) => voicing > 0)).toBe(true);
    expect(Math.abs(median(inner.map((frame) => frame.pitch)) / pitch - 1)).toBeLessThan(0.01);

    const file = givenPackFile([{ words: 'vowel', kind: 'line', frames }]);
    const again = synthesize(openVoicePack(file).clip('line', 'vowel') ?? []);
    const middle = (x: Float32Array): Float32Array => x.slice(1600, -1600);
    expect(Math.abs(20 * Math.log10(rms(middle(again)) / rms(middle(original))))).toBeLessThan(3);
    // Spectral distortion over bands of 300 Hz up to 3.6 kHz, both brought to one level.
    const bandOf = (x: Float32Array, from: number): number => {
      let sum = 0;
      for (let hz = from; hz < from + 300; hz += 6) sum += powerAt(x, hz);
      return sum;
    };
    const differences = Array.from(
      { length: 12 },
      (_, band) => 10 * Math.log10(bandOf(middle(again), band * 300) / bandOf(middle(original), band * 300)),
    );
    const mean = differences.reduce((sum, value) => sum + value, 0) / differences.length;
    const distortion = Math.sqrt(differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) / differences.length);
    expect(distortion).toBeLessThan(4);
  });

  it('noise stays noise, silence stays silence', () => {
    let seed = 1;
    const noise = Float32Array.from({ length: 8000 }, () => {
      seed = (Math.imul(seed, 1_103_515_245) + 12_345) | 0;
      return (seed / 0x8000_0000) * 0.2;
    });
    const frames = analyze(noise);
    const unvoiced = frames.filter(({ voicing }) => voicing === 0).length;
    expect(unvoiced / frames.length).toBeGreaterThan(0.9);
    expect(Math.abs(20 * Math.log10(rms(synthesize(frames)) / rms(noise)))).toBeLessThan(2);
    const quiet = synthesize(vowel(30, { gain: 0 }));
    expect(quiet.every((value) => value === 0)).toBe(true);
  });
});

describe('synthesize', () => {
  it.each([
    [0.5, 200],
    [1, 100],
    [2, 50],
  ])('at rate %d a second takes %i frames, at the same pitch', (rate, frames) => {
    const samples = synthesize(vowel(100), rate);
    expect(samples.length).toBe(frames * HOP);
    const pulses: number[] = [];
    samples.forEach((value, i) => {
      const isPeak = value > (samples[i - 1] ?? 0) && value >= (samples[i + 1] ?? 0) && value > 0.25;
      if (isPeak && i - (pulses.at(-1) ?? -50) > 40) pulses.push(i);
    });
    const periods = pulses.slice(1).map((at, i) => at - (pulses[i] ?? 0));
    expect(Math.abs(median(periods) - SAMPLE_RATE / 170)).toBeLessThan(1);
  });

  it('gives the same samples every time, and refuses an impossible rate', () => {
    expect(synthesize(vowel(20, { voicing: 0 }))).toEqual(synthesize(vowel(20, { voicing: 0 })));
    expect(() => synthesize(vowel(5), 0)).toThrow(RangeError);
    expect(() => synthesize(vowel(5), Number.NaN)).toThrow(RangeError);
    expect(synthesize([])).toHaveLength(0);
  });
});

describe('pack', () => {
  const file = givenPackFile([
    clip('one', 'part', 12),
    clip('two words', 'part', 7, { voicing: 0 }),
    clip('a line', 'line', 30, { pitch: 200 }),
  ]);

  it('gives back what was packed, to the step', () => {
    const pack = openVoicePack(file);
    expect([pack.clips, pack.frames, pack.longestPart]).toEqual([3, 49, 2]);
    expect([pack.has('part', 'one'), pack.has('line', 'one'), pack.clip('line', 'none')]).toEqual([true, false, null]);
    const [frame] = pack.clip('line', 'a line') ?? [];
    expect(Math.abs((frame?.pitch ?? 0) / 200 - 1)).toBeLessThan(0.0075);
    expect(Math.abs(20 * Math.log10((frame?.gain ?? 0) / 0.05))).toBeLessThan(0.76);
    expect(pack.clip('part', 'two words')?.every(({ voicing }) => voicing === 0)).toBe(true);
    frame?.lsf.forEach((value, k) => {
      expect(Math.abs(value - ((k + 1) * Math.PI) / (ORDER + 1))).toBeLessThan(0.06);
    });
  });

  it('opens the same with the platform’s inflate and without it', async () => {
    const native = await loadVoicePack(file);
    vi.stubGlobal('DecompressionStream', undefined);
    const own = await loadVoicePack(file);
    vi.unstubAllGlobals();
    expect(native.clip('part', 'one')).toEqual(own.clip('part', 'one'));
    await expect(loadVoicePack(file.slice(0, -1))).rejects.toThrow(VoicePackError);
  });

  it('the same clips give the same bytes', () => {
    expect(givenPackFile([clip('one', 'part', 12)])).toEqual(givenPackFile([clip('one', 'part', 12)]));
  });

  it('law: a file that was cut or changed anywhere is refused, and by nothing but its own error', () => {
    fc.assert(
      fc.property(fc.nat(file.length - 1), fc.integer({ min: 1, max: 255 }), fc.boolean(), (at, by, isCut) => {
        const spoiled = isCut ? file.slice(0, at) : file.slice();
        if (!isCut) spoiled[at] = (spoiled[at] ?? 0) ^ by;
        expect(() => openVoicePack(spoiled)).toThrow(VoicePackError);
      }),
    );
  });
});
