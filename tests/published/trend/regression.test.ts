/**
 * Certified values of the NIST Statistical Reference Datasets: Norris (lower difficulty) and NoInt1 (average difficulty).
 * Student's t: printed tables (NIST/SEMATECH e-Handbook 1.3.6.7.2; six places worked out independently).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossing } from '../../../src/domain/trend/crossing.ts';
import { linearRegression, regressionThroughOrigin } from '../../../src/domain/trend/linearRegression.ts';
import { predict } from '../../../src/domain/trend/predict.ts';
import { studentTCdf, studentTQuantile } from '../../../src/domain/trend/studentT.ts';

const Y = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7,
  228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
];
const X = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0,
  228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
];
const NORRIS = X.map((t, index) => ({ t, x: Y[index] ?? Number.NaN }));
const relative = (value: number | undefined, certified: number) => Math.abs((value ?? Number.NaN) / certified - 1);

describe('linearRegression', () => {
  it('agrees with the certified values of Norris to eleven digits', () => {
    const fit = linearRegression([NORRIS]);
    expect(fit?.df).toBe(34);
    expect(relative(fit?.intercept, -0.262323073774029)).toBeLessThan(1e-11);
    expect(relative(fit?.interceptSe, 0.232818234301152)).toBeLessThan(1e-11);
    expect(relative(fit?.slope, 1.00211681802045)).toBeLessThan(1e-13);
    expect(relative(fit?.slopeSe, 0.429796848199937e-3)).toBeLessThan(1e-11);
    expect(relative(fit?.residualSd, 0.884796396144373)).toBeLessThan(1e-11);
    expect(relative(fit?.r2, 0.999993745883712)).toBeLessThan(1e-13);
    expect(relative(fit?.residualSs, 26.6173985294224)).toBeLessThan(1e-11);
  });

  it('agrees with the certified values of NoInt1', () => {
    const points = Array.from({ length: 11 }, (_, index) => ({ t: 60 + index, x: 130 + index }));
    const fit = regressionThroughOrigin(points);
    expect(fit?.df).toBe(10);
    expect(relative(fit?.slope, 2.07438016528926)).toBeLessThan(1e-13);
    expect(relative(fit?.slopeSe, 0.165289256198347e-1)).toBeLessThan(1e-12);
    expect(relative(fit?.residualSd, 3.56753034006338)).toBeLessThan(1e-12);
    expect(relative(fit?.residualSs, 127.272727272727)).toBeLessThan(1e-12);
    expect(relative(fit?.r2, 0.999365492298663)).toBeLessThan(1e-12);
  });

  it('does not lose digits to times far from nought', () => {
    const far = linearRegression([NORRIS.map(({ t, x }) => ({ t: t + 1e8, x }))]);
    expect(relative(far?.slope, 1.00211681802045)).toBeLessThan(1e-9);
  });

  it('has one slope for blocks whose levels differ', () => {
    const shifted = NORRIS.map(({ t, x }) => ({ t, x: x + 500 }));
    const both = linearRegression([NORRIS, shifted]);
    expect(relative(both?.slope, 1.00211681802045)).toBeLessThan(1e-12);
    expect(both?.df).toBe(72 - 3);
  });

  it('says nothing about too little', () => {
    expect(linearRegression([NORRIS.slice(0, 2)])).toBeNull();
    expect(linearRegression([])).toBeNull();
    expect(linearRegression([[1, 2, 3].map((x) => ({ t: 5, x }))])).toBeNull();
    expect(() => linearRegression([[...NORRIS, { t: 1, x: Number.NaN }]])).toThrow(RangeError);
  });
});

describe('predict', () => {
  it('gives the line at nought the certified standard error of the intercept', () => {
    const fit = linearRegression([NORRIS]);
    if (!fit) throw new Error('no fit');
    const { mean, value } = predict(fit, 0, 0.95);
    expect(relative(value, -0.262323073774029)).toBeLessThan(1e-9);
    expect(relative((mean[1] - mean[0]) / 2 / studentTQuantile(0.975, 34), 0.232818234301152)).toBeLessThan(1e-9);
  });

  it('is wider for one more reading than for the line', () => {
    const fit = linearRegression([NORRIS]);
    if (!fit) throw new Error('no fit');
    const { mean, reading } = predict(fit, 500, 0.95);
    expect(reading[0]).toBeCloseTo(498.9717941, 6);
    expect(reading[1]).toBeCloseTo(502.6203778, 6);
    expect(mean[0]).toBeCloseTo(500.4881965, 6);
    expect(mean[1]).toBeCloseTo(501.1039754, 6);
  });
});

describe('crossing', () => {
  const tire = [65, 64.4, 64.1, 63.2, 62.9, 62.1].map((x, index) => ({ t: index * 7, x }));

  it('finds where the line meets the level, inside its interval', () => {
    const fit = linearRegression([tire]);
    const found = fit && crossing(fit, 60, 0.95);
    expect(found?.t).toBeCloseTo(62.0268, 4);
    expect(found?.earliest).toBeLessThan(62);
    expect(found?.latest).toBeGreaterThan(62.1);
  });

  it('has its ends where the confidence band of the line meets the level', () => {
    const fit = linearRegression([tire]);
    const found = fit && crossing(fit, 60, 0.95);
    if (!fit || !found) throw new Error('no crossing');
    expect(predict(fit, found.earliest, 0.95).mean[0]).toBeCloseTo(60, 9);
    expect(predict(fit, found.latest, 0.95).mean[1]).toBeCloseTo(60, 9);
  });

  it('gives no time when the slope could be nought', () => {
    const flat = linearRegression([[65, 64, 66, 65, 64, 66].map((x, t) => ({ t, x }))]);
    expect(flat && crossing(flat, 60, 0.95)).toBeNull();
  });
});

describe('studentT', () => {
  it.each([
    [0.975, 1, 12.706205],
    [0.975, 2, 4.302653],
    [0.975, 4, 2.776445],
    [0.975, 10, 2.228139],
    [0.975, 30, 2.042272],
    [0.975, 120, 1.97993],
    [0.95, 1, 6.313752],
    [0.95, 10, 1.812461],
    [0.95, 20, 1.724718],
  ])('t(%f, %i) is %f', (p, df, printed) => {
    expect(Math.abs(studentTQuantile(p, df) - printed)).toBeLessThan(6e-7);
  });

  it('has quantile and distribution undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.integer({ min: 1, max: 200 }), (p, df) => {
        expect(studentTCdf(studentTQuantile(p, df), df)).toBeCloseTo(p, 9);
      }),
    );
  });

  it('has the closed form of one and of two degrees of freedom', () => {
    // df 1: 1/2 + atan(t)/pi. df 2: 1/2 + t / (2 sqrt(2 + t^2)).
    expect(studentTCdf(1.7, 1)).toBeCloseTo(0.5 + Math.atan(1.7) / Math.PI, 12);
    expect(studentTCdf(-0.4, 2)).toBeCloseTo(0.5 - 0.4 / (2 * Math.sqrt(2.16)), 12);
  });

  it('refuses what is out of range', () => {
    expect(() => studentTQuantile(1, 5)).toThrow(RangeError);
    expect(() => studentTQuantile(0.9, 0)).toThrow(RangeError);
    expect(() => studentTCdf(Number.NaN, 5)).toThrow(RangeError);
  });
});
