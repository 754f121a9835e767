import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TRUST } from '../../../src/domain/language/trust.ts';
import { confidenceOf } from '../../../src/speech/recogniser/confidence.ts';
import type { Evidence } from '../../../src/speech/recogniser/evidence.ts';

/** A well spoken "sixty two". */
const GOOD: Evidence = {
  fit: 1.5,
  worstWord: 2,
  overSilence: 20,
  margin: 60,
  rivals: 0,
  unexplained: 0,
  voiced: 0.5,
  longestVoiced: 20,
  pace: 8,
  words: 2,
  phones: 8,
  snrDb: 30,
  otherVoices: false,
};

describe('confidence', () => {
  it('is high where everything speaks for it, and falls with what speaks against it', () => {
    const good = confidenceOf(GOOD);
    expect(good).toBeGreaterThan(TRUST['built-in'].sure);
    for (const worse of [
      { fit: 6 },
      { margin: 1, rivals: 1 },
      { unexplained: 60 },
      { overSilence: -5, longestVoiced: 2, voiced: 0.05 },
    ])
      expect(confidenceOf({ ...GOOD, ...worse })).toBeLessThan(good);
  });

  it('is never enough to be taken without a question while other people talk near by', () => {
    expect(confidenceOf({ ...GOOD, otherVoices: true, snrDb: 12 })).toBeLessThan(TRUST['built-in'].accept);
    // Enough to be asked about, and for a plain yes to it.
    expect(confidenceOf({ ...GOOD, otherVoices: true, snrDb: 12 })).toBeGreaterThan(TRUST['built-in'].reject);
  });

  it('is a probability whatever the evidence', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          fit: number(-5, 20),
          worstWord: number(-5, 40),
          overSilence: number(-10, 60),
          margin: number(0, 100),
          rivals: number(0, 4),
          unexplained: number(0, 100),
          voiced: number(0, 1),
          longestVoiced: number(0, 60),
          pace: number(1, 30),
          words: number(1, 12),
          phones: number(1, 40),
          snrDb: number(0, 50),
          otherVoices: fc.boolean(),
        }),
        (evidence) => {
          const confidence = confidenceOf(evidence);
          expect(confidence).toBeGreaterThanOrEqual(0);
          expect(confidence).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});
