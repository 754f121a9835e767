import { describe, expect, it } from 'vitest';
import { Resampler } from '../../../src/speech/recogniser/resampler.ts';

const tone = (hz: number, rate: number, seconds: number) =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate));

const inPieces = (resampler: Resampler, input: Float32Array, piece: number): number[] => {
  const output: number[] = [];
  for (let at = 0; at < input.length; at += piece) output.push(...resampler.process(input.subarray(at, at + piece)));
  return output;
};

describe('resampling to 16 kHz', () => {
  it.each([8000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000])('keeps a 1 kHz tone in time and size from %i Hz', (rate) => {
    const output = inPieces(new Resampler(rate, 16_000), tone(1000, rate, 0.5), 128);
    expect(output.length).toBeGreaterThan(16_000 * 0.5 - 200);
    let worst = 0;
    for (let n = 200; n < output.length - 200; n += 1) {
      worst = Math.max(worst, Math.abs(output[n]! - Math.sin((2 * Math.PI * 1000 * n) / 16_000)));
    }
    expect(worst).toBeLessThan(0.01);
  });

  it('lets nothing above the new band through as something else', () => {
    const output = inPieces(new Resampler(48_000, 16_000), tone(11_000, 48_000, 0.5), 128).slice(200, -200);
    expect(Math.max(...output.map(Math.abs))).toBeLessThan(0.002);
  });

  it('gives the same however the sound is cut', () => {
    const input = tone(440, 44_100, 0.2);
    expect(inPieces(new Resampler(44_100, 16_000), input, 37)).toEqual(inPieces(new Resampler(44_100, 16_000), input, 1000));
  });

  it('holds no more the longer it runs', () => {
    const resampler = new Resampler(44_100, 16_000);
    const piece = new Float32Array(1024);
    let made = 0;
    for (let index = 0; index < 2000; index += 1) made += resampler.process(piece).length;
    expect(made).toBeGreaterThan((2000 * 1024 * 16) / 44.1 - 100);
    expect(made).toBeLessThanOrEqual(Math.ceil((2000 * 1024 * 16) / 44.1));
  });

  it('refuses rates that no device has', () => {
    for (const rate of [0, 44_100.5, Number.NaN, 1e7]) expect(() => new Resampler(rate, 16_000)).toThrow(RangeError);
  });
});
