import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { FartherVoices, hasOtherVoices, loudRegion, quietFrames } from '../../../src/speech/recogniser/otherVoices.ts';

const model = readAcousticModel(readFileSync('public/ears/model.bin'));
/** 300 frames; an answer of 60 frames, 15 dB above what is behind it. */
const NEPERS = (dB: number) => (dB * Math.LN10) / 10;
const levels = Float32Array.from({ length: 300 }, (_, frame) => (frame >= 150 && frame < 210 ? 18 : 18 - NEPERS(15)));
const everywhere = (periodicity: number) => new Float32Array(300).fill(periodicity);

describe('other voices behind an answer', () => {
  it('are there where the quiet parts are voiced, and not in wind', () => {
    expect(hasOtherVoices(levels, everywhere(0.8))).toBe(true);
    expect(hasOtherVoices(levels, everywhere(0.3))).toBe(false);
    const answerOnly = Float32Array.from(everywhere(0.2), (low, frame) => (frame >= 150 && frame < 210 ? 0.9 : low));
    expect(hasOtherVoices(levels, answerOnly)).toBe(false);
    expect(hasOtherVoices(new Float32Array(0), new Float32Array(0))).toBe(false);
  });

  it('are not looked at: only what is nearly as loud as the loudest, with three tenths of a second around it', () => {
    const { start, end } = loudRegion({ start: 0, end: 300 }, levels);
    expect(start).toBeGreaterThanOrEqual(150 - 30 - 2);
    expect(start).toBeLessThan(150);
    expect(end).toBeLessThanOrEqual(210 + 30 + 2);
    expect(end).toBeGreaterThan(210);
    expect(loudRegion({ start: 140, end: 200 }, levels)).toEqual({ start: 140, end: 200 });
  });

  it('stay in the region that is given where nothing is loud', () => {
    expect(loudRegion({ start: 3, end: 40 }, new Float32Array(3))).toEqual({ start: 3, end: 40 });
  });

  it('may be silence in the quiet frames, and only there', () => {
    expect([...quietFrames(levels)].map(Boolean)).toEqual([...levels].map((level) => level < 17));
    const silence = model.ciSenoneOf(model.silence, 1);
    const vowel = model.ciSenoneOf(model.phoneIndex.get('AA')!, 1);
    // A frame that sounds like "ah" and not at all like silence.
    const own = { score: (senone: number) => (senone === vowel ? -20 : -70) };
    const scorer = new FartherVoices(model, own, own);
    scorer.setFrame(false);
    expect(scorer.score(silence)).toBe(-70);
    scorer.setFrame(true);
    expect(scorer.score(silence)).toBe(-25);
    expect(scorer.score(vowel)).toBe(-20);
    scorer.setFrame(false);
    expect(scorer.score(silence)).toBe(-70);
  });
});
