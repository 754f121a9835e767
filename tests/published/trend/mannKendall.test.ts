/**
 * Mann–Kendall and Sen's slope against published figures.
 * Gilbert, R. O., *Statistical Methods for Environmental Pollution Monitoring* (1987), p. 212: S = 111, SD = 35.02, Z = 3.1.
 * Exact tails: the same book's table A18 (Hollander & Wolfe, table A.21).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactUpperTail, mannKendall } from '../../../src/domain/trend/mannKendall.ts';
import { theilSen } from '../../../src/domain/trend/theilSen.ts';

const GILBERT = [20, 20, 20, 20, 15, 20, 20, 30, 27, 26, 23, 35, 25, 28, 70, 26, 24, 34, 32, 23, 50, 30];
const numbered = (values: readonly number[]) => values.map((x, index) => ({ t: index + 1, x }));

describe('mannKendall', () => {
  it('gives the book’s S, standard deviation and Z', () => {
    const found = mannKendall([GILBERT]);
    expect(found.s).toBe(111);
    expect(Math.sqrt(found.variance)).toBeCloseTo(35.02, 2);
    expect(found.z).toBeCloseTo(3.14, 2);
    expect(found.p).toBeCloseTo(0.0017, 4);
    expect(found.exact).toBe(false);
  });

  it.each([
    [4, 6, 0.042],
    [5, 8, 0.042],
    [6, 9, 0.068],
    [7, 13, 0.035],
    [8, 16, 0.031],
    [9, 20, 0.022],
    [10, 21, 0.036],
    [10, 27, 0.0083],
    [10, 45, 0.00000028],
  ])('the exact chance of S of at least %2$i in %1$i values is the table’s', (n, s, printed) => {
    expect(Math.abs(exactUpperTail(n, s) - printed)).toBeLessThan(printed < 1e-4 ? 5e-9 : 6e-4);
  });

  it('never calls four values in order significant at 95 %', () => {
    expect(mannKendall([[4, 3, 2, 1]]).p).toBeGreaterThan(0.05);
    expect(mannKendall([[5, 4, 3, 2, 1]]).p).toBeLessThan(0.05);
  });

  it('gives the published results S = 22, exact two-sided p 0.0055 for eight values', () => {
    // Same as Kendall's tau 0.7857 between order and value.
    const found = mannKendall([[5.0, 5.3, 5.1, 5.8, 5.6, 6.1, 6.0, 6.6]]);
    expect(found.s).toBe(22);
    expect(found.p).toBeCloseTo(0.00550595, 8);
  });

  it('does not depend on scale and turns its sign with the values', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 25 }), (values) => {
        const plain = mannKendall([values]);
        const turned = mannKendall([values.map((value) => -3 * value)]);
        expect(turned.s + plain.s).toBe(0);
        expect(turned.p).toBeCloseTo(plain.p, 12);
        expect(plain.p).toBeGreaterThanOrEqual(0);
        expect(plain.p).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('refuses what is not a number and has nothing to say about one value', () => {
    expect(() => mannKendall([[1, Number.NaN]])).toThrow(RangeError);
    expect(mannKendall([[3]]).p).toBe(1);
    expect(mannKendall([]).p).toBe(1);
  });
});

describe('theilSen', () => {
  it('gives Gilbert’s data their slope and 90 % interval', () => {
    // Worked out independently from the book's formulas: N = 231, M1 = 86.70, M2 = 144.30.
    const found = theilSen([numbered(GILBERT)], 0.9);
    expect(found?.pairs).toBe(231);
    expect(found?.slope).toBeCloseTo(2 / 3, 12);
    expect(found?.lower).toBeCloseTo(1 / 3, 6);
    expect(found?.upper).toBeCloseTo(1, 6);
  });

  it('gives the 95 % interval interpolated between ranks', () => {
    const found = theilSen([numbered(GILBERT)], 0.95);
    expect(found?.lower).toBeCloseTo(0.253033, 5);
    expect(found?.upper).toBeCloseTo(1.139608, 5);
  });

  it('handles uneven times', () => {
    const times = [0, 14, 31, 60, 75, 130];
    const values = [70, 69.5, 69, 68, 68.5, 66];
    const found = theilSen([times.map((t, index) => ({ t, x: values[index] ?? 0 }))], 0.9);
    expect(found?.slope).toBeCloseTo(-1 / 33, 9);
    expect(found?.pairs).toBe(15);
  });

  it('finds the slope of a line whatever a quarter of bad readings say', () => {
    const line = Array.from({ length: 20 }, (_, t) => ({ t, x: t % 4 === 3 ? 999 : 60 - 0.5 * t }));
    expect(theilSen([line], 0.95)?.slope).toBeCloseTo(-0.5, 9);
  });

  it('sees through a refill when the blocks are told apart', () => {
    const leak = (from: number) => [0, 7, 14, 21].map((t) => ({ t: from + t, x: 65 - t / 7 }));
    expect(theilSen([leak(0), leak(28), leak(56)], 0.95)?.slope).toBeCloseTo(-1 / 7, 12);
  });

  it('has nothing to say about points at one time', () => {
    expect(
      theilSen(
        [
          [
            { t: 1, x: 2 },
            { t: 1, x: 3 },
          ],
        ],
        0.9,
      ),
    ).toBeNull();
    expect(() =>
      theilSen(
        [
          [
            { t: 1, x: 2 },
            { t: 2, x: Number.NaN },
          ],
        ],
        0.9,
      ),
    ).toThrow(RangeError);
    expect(() => theilSen([], 1)).toThrow(RangeError);
  });
});
