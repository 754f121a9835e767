import { describe, expect, it } from 'vitest';
import { wordsToNumbers } from 'words-to-numbers';
import { at, inWords, place, whichCylinder } from '../../../src/domain/checks/phrasing.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';

describe('inWords', () => {
  it('says every number to 999 so that another reader of numbers understands it', () => {
    for (let value = 0; value <= 999; value++) {
      expect(wordsToNumbers(inWords(value))).toBe(value);
    }
  });

  it.each([
    [100, 'one hundred'],
    [110, 'one hundred ten'],
    [163, 'one hundred sixty-three'],
    [19, 'nineteen'],
    [20, 'twenty'],
  ])('%i is %s', (value, words) => {
    expect(inWords(value)).toBe(words);
  });

  it('refuses what it cannot say', () => {
    for (const value of [-1, 1000, 1.5, Number.NaN, Number.POSITIVE_INFINITY]) expect(() => inWords(value)).toThrow(RangeError);
  });
});

describe('places', () => {
  it('are said as people say them', () => {
    expect(place({ position: 'left-front' })).toBe('left front');
    expect(place({ position: null })).toBe('');
    expect(at({ position: 'right-rear' }, 'tire')).toBe('Right rear tire');
    expect(at({ position: null }, 'roof')).toBe('Roof');
  });

  it('number cylinders only where there are several', () => {
    const [heron, lantern] = DEMO_UNITS;
    expect(whichCylinder({ unit: heron!, index: 0 })).toBe('the cylinder');
    expect(whichCylinder({ unit: lantern!, index: 1 })).toBe('the second cylinder');
  });
});
