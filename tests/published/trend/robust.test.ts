/**
 * Normal distribution, outliers and the one step.
 * Normal quantiles: NIST/SEMATECH e-Handbook 1.3.6.7.1 and Abramowitz & Stegun 26.
 * Outlier rule: Iglewicz & Hoaglin (1993), 0.6745 and 3.5.
 * Nile at Aswan 1871–1970 (Cobb, Biometrika 65, 1978; data from memory): the flow fell for good after 1898.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median, medianAbsoluteDeviation } from '../../../src/domain/trend/median.ts';
import { modifiedZ, OUTLIER_SCORE } from '../../../src/domain/trend/modifiedZ.ts';
import { normalCdf, normalQuantile } from '../../../src/domain/trend/normal.ts';
import { stepChange } from '../../../src/domain/trend/stepChange.ts';

const NILE = [
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140, 1100, 1210,
  1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120,
  1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649,
  846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746,
  919, 718, 714, 740,
];

describe('normal distribution', () => {
  it.each([
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489],
    [0.95, 1.6448536269514722],
    [0.5, 0],
    [0.75, 0.6744897501960817],
  ])('quantile of %f', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 11);
    expect(normalCdf(z)).toBeCloseTo(p, 14);
  });

  it('keeps its far tail', () => {
    // Abramowitz & Stegun table 26.2: Q(5) = 2.866516e-7; Q(10) = 7.619853e-24.
    expect(Math.abs(normalCdf(-5) / 2.8665157e-7 - 1)).toBeLessThan(1e-7);
    expect(Math.abs(normalCdf(-10) / 7.619853e-24 - 1)).toBeLessThan(1e-6);
    expect(normalCdf(40)).toBe(1);
    expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
    expect(() => normalQuantile(0)).toThrow(RangeError);
  });
});

describe('modifiedZ', () => {
  it('flags the dead cell and nothing else', () => {
    const scores = modifiedZ([12.6, 12.6, 12.5, 12.7, 12.6, 11.4, 12.6, 12.5]);
    expect(scores[5]).toBeCloseTo(-16.188, 3);
    expect(scores.filter((score) => Math.abs(score) > OUTLIER_SCORE)).toHaveLength(1);
  });

  it('falls back to the mean deviation where most readings are equal', () => {
    expect(modifiedZ([3, 3, 3, 3, 9])[4]).toBeCloseTo(6 / (1.253314 * 1.2), 9);
    expect(modifiedZ([3, 3, 3, 3])).toEqual([0, 0, 0, 0]);
  });

  it('is calmed by a floor for readings in coarse steps', () => {
    expect(Math.abs(modifiedZ([12.6, 12.6, 12.6, 12.7], 0.05)[3] ?? 0)).toBeLessThan(OUTLIER_SCORE);
    expect(() => modifiedZ([1], -1)).toThrow(RangeError);
    expect(() => modifiedZ([])).toThrow(RangeError);
  });

  it('does not move with shift and scale', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 3, maxLength: 30 }), (values) => {
        const shifted = modifiedZ(values.map((value) => 8 * value + 64));
        for (const [index, score] of modifiedZ(values).entries()) expect(shifted[index]).toBeCloseTo(score, 9);
      }),
    );
  });
});

describe('median', () => {
  it('is the middle, or the mean of the middle two', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(medianAbsoluteDeviation([10, 11, 10, 12, 11, 10, 30])).toBe(1);
    expect(() => median([])).toThrow(RangeError);
    expect(() => median([Number.NaN])).toThrow(RangeError);
  });
});

describe('stepChange', () => {
  it('finds that the Nile’s flow fell after 1898', () => {
    expect(NILE).toHaveLength(100);
    const found = stepChange(NILE);
    expect(1871 + (found?.at ?? 0) - 1).toBe(1898);
    expect(found?.size).toBeLessThan(-200);
    expect(found?.p).toBeLessThan(1e-6);
  });

  it('finds no step in equal values or in too few', () => {
    expect(stepChange([1, 1, 1, 1, 1, 1, 1])).toBeNull();
    expect(stepChange([1, 1, 1, 9, 9])).toBeNull();
    expect(() => stepChange([1, Number.NaN, 1, 1, 1, 1])).toThrow(RangeError);
  });
});
