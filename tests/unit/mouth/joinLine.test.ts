import { describe, expect, it } from 'vitest';
import { chooseClips, UNSAYABLE } from '../../../src/speech/mouthClips/chooseClips.ts';
import { joinText, limit, PAUSE_FRAMES } from '../../../src/speech/mouthClips/joinLine.ts';
import { spokenSentences } from '../../../src/speech/mouthClips/spokenWords.ts';
import { HOP, synthesize } from '../../../src/speech/mouthClips/vocoder.ts';
import { openVoicePack } from '../../../src/speech/mouthClips/voicePack.ts';
import { clip, givenPackFile, LETTERS } from './givenVoice.ts';

const pack = openVoicePack(
  givenPackFile([
    clip('left front tire', 'line', 80),
    clip('is it tight?', 'line', 70),
    clip('left front'),
    clip('left', 'part', 15),
    clip('front', 'part', 15),
    clip('sixty two'),
    clip('sixty'),
    clip('pounds'),
    clip(UNSAYABLE, 'part', 50),
    ...LETTERS,
  ]),
);

const pieces = (text: string): unknown =>
  spokenSentences(text).map((sentence) =>
    chooseClips(sentence, pack).pieces.map((piece) =>
      piece.kind === 'pause' ? piece.length : `${piece.kind === 'line' ? 'line ' : ''}${piece.words}`,
    ),
  );

describe('chooseClips', () => {
  it.each([
    ['a whole line before anything else', 'Left front tire.', [['line left front tire']]],
    [
      'a question only for a question',
      'Is it tight? Left front tire?',
      [['line is it tight?'], ['left front', 'T', 'I', 'R', 'E']],
    ],
    [
      'the longest run of words, never across a pause',
      '62 pounds left, front',
      [['sixty two', 'pounds', 'left', 'short', 'front']],
    ],
    ['the letters of a word that it does not know', 'Bo', [['B', 'O']]],
    ['a word in a script without letters is announced, not left out', 'left жук', [['left', UNSAYABLE]]],
  ])('takes %s', (_, text, expected) => {
    expect(pieces(text)).toEqual(expected);
  });

  it('says which words it could not say', () => {
    expect(joinText('left жук', pack).unsaid).toEqual(['жук']);
    expect(joinText('left front', pack).unsaid).toEqual([]);
  });
});

describe('joinText', () => {
  it('leaves a pause of exactly its length between two parts', () => {
    const [frames = []] = joinText('left, front', pack).sentences;
    const silent = frames.map(({ gain }, i) => (gain === 0 ? i : -1)).filter((i) => i >= 0);
    expect(silent).toEqual(Array.from({ length: PAUSE_FRAMES.short }, (_, i) => 15 + i));
  });

  it('lets the pitch fall over a statement and rise over a question', () => {
    const ends = (text: string): number[] => {
      const [frames = []] = joinText(text, pack).sentences;
      return [frames[0]?.pitch ?? 0, frames.at(-1)?.pitch ?? 0];
    };
    const [start = 0, low = 0] = ends('left front sixty two pounds');
    const [, high = 0] = ends('left front sixty two pounds?');
    expect(low).toBeLessThan(start * 0.85);
    expect(high).toBeGreaterThan(low * 1.2);
  });

  it('joins without a click: no step at a join is larger than those within the words', () => {
    const [frames = []] = joinText('left front sixty two pounds', pack).sentences;
    const samples = synthesize(frames);
    const stepAt = (i: number): number => Math.abs((samples[i] ?? 0) - (samples[i - 1] ?? 0));
    const joins = [20, 40].map((frame) => frame * HOP);
    const largestAt = (from: number, to: number): number =>
      Math.max(...Array.from({ length: to - from }, (_, i) => stepAt(from + i)));
    const within = largestAt(5 * HOP, 15 * HOP);
    for (const join of joins) expect(largestAt(join - HOP, join + HOP)).toBeLessThanOrEqual(within * 1.1);
  });

  it('a line keeps its own melody', () => {
    const [frames = []] = joinText('Left front tire.', pack).sentences;
    expect(frames).toEqual(pack.clip('line', 'left front tire'));
  });

  it('has nothing to say for nothing', () => {
    expect(joinText(' … ', pack)).toEqual({ sentences: [], unsaid: [] });
  });
});

it('limit leaves what is quiet alone and never lets anything past full scale', () => {
  const out = limit(Float32Array.from([0.5, -0.7, 0.9, -3, 40]));
  expect([...out.slice(0, 2)]).toEqual([0.5, Math.fround(-0.7)]);
  expect(Math.max(...out.map(Math.abs))).toBeLessThanOrEqual(1);
  expect(out[2]).toBeGreaterThan(0.7);
  expect(out[3]).toBeLessThan(-0.9);
});
