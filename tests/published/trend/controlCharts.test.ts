/**
 * EWMA and CUSUM against the worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4 and 6.3.2.3.
 */
import { describe, expect, it } from 'vitest';
import { cusum } from '../../../src/domain/trend/cusum.ts';
import { ewma } from '../../../src/domain/trend/ewma.ts';

describe('ewma', () => {
  const values = [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1,
  ];
  const printed = [
    50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23,
    51.94, 51.99,
  ];
  const options = { weight: 0.3, target: 50, sigma: 2.0539, width: 3, limits: 'steady' } as const;

  it('gives the handbook’s averages, limits and verdict (in control throughout)', () => {
    const points = ewma(values, options);
    expect(points).toHaveLength(20);
    for (const [index, point] of points.entries()) {
      expect(Math.abs(point.value - (printed[index] ?? 0))).toBeLessThan(0.0051);
      expect(Math.abs(point.upper - 52.5884)).toBeLessThan(1e-3);
      expect(Math.abs(point.lower - 47.4115)).toBeLessThan(1e-3);
      expect(point.out).toBe(false);
    }
  });

  it('has growing limits that start at the weight’s share of three sigma', () => {
    const points = ewma(values, { ...options, limits: 'growing' });
    expect((points[0]?.upper ?? 0) - 50).toBeCloseTo(3 * 2.0539 * 0.3, 9);
    expect((points[19]?.upper ?? 0) - 50).toBeCloseTo(2.5884, 3);
  });

  it('refuses a weight of nought', () => {
    expect(() => ewma([1], { ...options, weight: 0 })).toThrow(RangeError);
    expect(() => ewma([Number.NaN], options)).toThrow(RangeError);
  });
});

describe('cusum', () => {
  const values = [
    324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325, 327.25,
    327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
  ];
  const high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.45, 16.0, 19.04];
  const low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.26, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const options = { target: 325, slack: 0.3175, decision: 4.1959 };

  it('gives the handbook’s sums and signals first at group 14, and from there on', () => {
    const points = cusum(values, options);
    for (const [index, point] of points.entries()) {
      expect(Math.abs(point.high - (high[index] ?? 0))).toBeLessThan(0.0101);
      expect(Math.abs(point.low - (low[index] ?? 0))).toBeLessThan(0.0101);
    }
    expect(points.map((point) => point.signal)).toEqual([...new Array(13).fill(null), ...new Array(7).fill('high')]);
  });

  it('mirrors itself', () => {
    const mirrored = cusum(
      values.map((value) => 650 - value),
      options,
    );
    expect(mirrored.map((point) => point.signal).indexOf('low')).toBe(13);
  });

  it('refuses what makes no sense', () => {
    expect(() => cusum([1], { target: 0, slack: 0, decision: 0 })).toThrow(RangeError);
    expect(() => cusum([Number.POSITIVE_INFINITY], options)).toThrow(RangeError);
  });
});
