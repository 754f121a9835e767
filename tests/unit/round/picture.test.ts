import { describe, expect, it } from 'vitest';
import { fittedSize, LONGEST_SIDE } from '../../../src/app/pictures/shrinkPicture.ts';
import { asksForPicture } from '../../../src/domain/round/picture.ts';

describe('asking for a picture', () => {
  it.each([
    'take a picture',
    'Take a photo.',
    'please take another picture',
    'okay, snap a pic',
    'can you take a quick photo of the drum',
    'picture',
    'photo please',
    'let’s take a picture',
  ])('is heard in "%s"', (words) => expect(asksForPicture(words)).toBe(true));

  it.each([
    '',
    "don't take a picture",
    'sixty-two',
    'the picture is on the phone',
    'make a note take a picture of it next time',
    'he took a picture',
    'take a note',
  ])('is not heard in "%s"', (words) => expect(asksForPicture(words)).toBe(false));
});

describe('the size a picture is kept in', () => {
  it('fits the longest side and keeps the shape', () => {
    expect(fittedSize(4000, 3000)).toEqual({ width: LONGEST_SIDE, height: 1200 });
    expect(fittedSize(3024, 4032)).toEqual({ width: 1200, height: LONGEST_SIDE });
  });

  it('never makes a picture larger, nor a thin one vanish', () => {
    expect(fittedSize(640, 480)).toEqual({ width: 640, height: 480 });
    expect(fittedSize(20_000, 3)).toEqual({ width: LONGEST_SIDE, height: 1 });
  });
});
