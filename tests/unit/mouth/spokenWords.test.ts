import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberWords, spelled, spokenSentences } from '../../../src/speech/mouthClips/spokenWords.ts';

const said = (text: string): string =>
  spokenSentences(text)
    .map(
      ({ items, ending }) =>
        items.map((item) => ('word' in item ? item.word : item.pause === 'long' ? '--' : ',')).join(' ') + ending,
    )
    .join(' | ');

describe('spokenSentences', () => {
  it.each([
    ['Sixty-two, left front.', 'sixty two , left front.'],
    ['62 psi, left front.', 'sixty two pounds , left front.'],
    ['1 psi low', 'one pound low.'],
    ['Torque is 90 lb-ft; check it.', 'torque is ninety foot pounds -- check it.'],
    ['Battery at 12.6 V — fine', 'battery at twelve point six volts -- fine.'],
    ['12.05 volts', 'twelve point zero five volts.'],
    ['Tread 4/32 in.', 'tread four thirty seconds of an inch.'],
    ['Give of 2 in.', 'give of two inches.'],
    ['62 in the left one', 'sixty two in the left one.'],
    ['-4 °F outside', 'minus four degrees outside.'],
    ['−10 °C', 'minus ten degrees celsius.'],
    ['10 m/s, 5 kg, 1,588 lb', 'ten meters a second , five kilograms , one thousand five hundred eighty eight pounds.'],
    ['Week 22 of 2020, not 2005 or 1999', 'week twenty two of twenty twenty , not two thousand five or nineteen ninety nine.'],
    ['1 in 4, ½ full', 'one in four , and a half full.'],
    ['40 % and 35 ppm', 'forty percent and thirty five parts per million.'],
    ['CO alarm: don’t touch!', "C O alarm -- don't touch!"],
    ['Is it "tight"? Say yes (or no).', 'is it tight? | say yes or no.'],
    ['ST205/75R15', 'S T two hundred five over seventy five R fifteen.'],
    ['A tire. I saw it.', 'a tire. | i saw it.'],
    ['30000 BTU/h', 'thirty thousand B T U an hour.'],
    ['Café Größe', 'cafe große.'],
    ['...', ''],
    ['', ''],
  ])('%s', (text, words) => {
    expect(said(text)).toBe(words);
  });

  it('law: never throws, and gives sentences of words only', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (text) => {
        for (const { items } of spokenSentences(text)) {
          expect(items.some((item) => 'word' in item)).toBe(true);
          for (const item of items) if ('word' in item) expect(item.word).not.toMatch(/[\s\d]/);
        }
      }),
    );
  });
});

describe('numberWords', () => {
  it.each([
    ['0', 'zero'],
    ['15', 'fifteen'],
    ['40', 'forty'],
    ['62', 'sixty two'],
    ['110', 'one hundred ten'],
    ['999', 'nine hundred ninety nine'],
    ['1000000', 'one million'],
    ['120034', 'one hundred twenty thousand thirty four'],
    ['007', 'zero zero seven'],
    ['1234567890', 'one two three four five six seven eight nine zero'],
  ])('%s is "%s"', (digits, words) => {
    expect(numberWords(digits).join(' ')).toBe(words);
  });
});

it('spells what has letters and nothing else', () => {
  expect(spelled("o'neil")).toEqual(['O', 'N', 'E', 'I', 'L']);
  expect(spelled('жук')).toEqual([]);
});
