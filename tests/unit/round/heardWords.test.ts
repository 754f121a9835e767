import { describe, expect, it } from 'vitest';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { heardWords } from '../../../src/domain/round/heardWords.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';

const plan = planRound(DEMO_UNITS[2]!, 'before-towing', Date.UTC(2026, 10, 25, 12));
const counted = (key: string, transcript: string) =>
  heardWords(plan, key, transcript)
    .filter((word) => word.counted)
    .map(({ text }) => text);

describe('the words that counted', () => {
  it.each([
    ['tire-pressure@left', 'uh it says sixty two pounds', ['sixty', 'two', 'pounds']],
    ['transport-pins@left', 'left pinned, right not', ['left', 'pinned', 'right', 'not']],
    ['lugs-moved@left', 'well none of them moved', ['none', 'moved']],
  ])('%s: "%s"', (key, transcript, expected) => {
    expect(counted(key, transcript)).toEqual(expect.arrayContaining(expected));
    expect(counted(key, transcript)).not.toContain('uh');
    expect(heardWords(plan, key, transcript).map(({ text }) => text)).toEqual(transcript.match(/[\w-]+|[^\w\s]/g));
  });

  it('shows all of it for a check that the plan does not hold', () => {
    expect(heardWords(plan, 'gone', 'sixty two')).toEqual([{ text: 'sixty two', counted: true }]);
  });
});
