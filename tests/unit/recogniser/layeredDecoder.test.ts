import { describe, expect, it, vi } from 'vitest';
import { type AnswerDecoder, LayeredDecoder } from '../../../src/speech/recogniser/layeredDecoder.ts';
import type { Sounded } from '../../../src/speech/recogniser/utteranceDecoder.ts';

const saying = (words: string, confidence: number): AnswerDecoder => ({
  decode: () => ({ hypotheses: words === '' ? [] : [{ words: words.split(' '), confidence, score: 0 }], evidence: null }),
  partial: () => words.split(' '),
});

/** Voiced from the 20th frame on. */
const voiced = (frames: number): Sounded => {
  const voicing = new Float32Array(20 + frames + 30).fill(0.9, 20, 20 + frames);
  return { energies: new Float32Array(25 * voicing.length), frames: voicing.length, voicing, snrDb: 20 };
};
const heard = (usual: AnswerDecoder, seldom: () => AnswerDecoder, sound: Sounded) =>
  new LayeredDecoder(usual, seldom).decode(sound).hypotheses[0]?.words.join(' ');

describe('what is seldom said', () => {
  const change = () => saying('change left tread to five', 0.8);

  it('is looked for where the usual does not fit', () => {
    expect(heard(saying('five', 0.1), change, voiced(120))).toBe('change left tread to five');
    expect(heard(saying('three eight no left front two five', 0.75), change, voiced(120))).toBe('change left tread to five');
    expect(heard(saying('', 0), change, voiced(120))).toBe('change left tread to five');
  });

  it('is not taken where it fits worse', () => {
    expect(heard(saying('five', 0.3), () => saying('change left tread to five', 0.2), voiced(120))).toBe('five');
  });

  it.each([
    ['the usual is clear', saying('five', 0.95), voiced(120)],
    ['the words are too short for it', saying('five', 0.1), voiced(40)],
    ['nothing was voiced', saying('five', 0.1), voiced(0)],
  ])('is not even built where %s', (_, usual, sound) => {
    const seldom = vi.fn(change);
    expect(heard(usual, seldom, sound)).toBe('five');
    expect(seldom).not.toHaveBeenCalled();
  });
});
