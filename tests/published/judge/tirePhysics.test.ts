/**
 * Tires against published values. Sources: ideal gas law (any physics handbook); US Standard Atmosphere 1976 as tabulated in
 * engineering references; ISO 4000-1 load index as in public tire tables; a trade-press load chart for ST tires;
 * 49 CFR 571.138 S4.2; 49 CFR 393.75(i) Table 1 (from memory); tire-maker's booklets.
 */

import { describe, expect, it } from 'vitest';
import { LOAD_INDEX_ROWS } from '../../../src/domain/judge/numbers/tires.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';
import { axleCapacity, heatWarning, loadOfIndex, rangeDoubt, stLoadAt } from '../../../src/domain/tires/capacity.ts';
import { coldEstimate, isCold } from '../../../src/domain/tires/cold.ts';
import { airPressureAt, gaugeIn, gaugePerKelvin } from '../../../src/domain/tires/gasLaw.ts';
import { wearLeft } from '../../../src/domain/tires/wear.ts';
import { judgeLoad } from '../../../src/domain/weight/judgeLoad.ts';
import { NO_RATINGS } from './ratings.ts';

const SEA_LEVEL = airPressureAt(0);
const psiAt = (psi: number, fromF: number, toF: number, fromFt = 0, toFt = 0) =>
  fromSI(
    gaugeIn(
      toSI(psi, 'psi'),
      { temperatureK: toSI(fromF, 'F'), outsidePa: airPressureAt(toSI(fromFt, 'ft')) },
      { temperatureK: toSI(toF, 'F'), outsidePa: airPressureAt(toSI(toFt, 'ft')) },
    ),
    'psi',
  );

describe('US Standard Atmosphere 1976', () => {
  it.each([
    [0, 14.696],
    [1000, 14.175],
    [2000, 13.664],
    [3000, 13.173],
    [5000, 12.228],
    [10_000, 10.108],
  ])('at %d ft the table prints %d psia', (feet, psia) => {
    expect(Math.abs(fromSI(airPressureAt(toSI(feet, 'ft')), 'psi') - psia)).toBeLessThan(0.005);
  });

  it('is refused where the layer ends', () => {
    expect(() => airPressureAt(12_000)).toThrow(RangeError);
    expect(() => airPressureAt(Number.NaN)).toThrow(RangeError);
  });
});

describe('gas law, worked by hand: (Pg + Pa) T2 / T1 - Pa with absolute pressures and temperatures', () => {
  it.each([
    [30, 20, 25.78],
    [35, 0, 28.43],
    [50, 20, 43.89],
    [65, 20, 57.48],
    [65, 0, 54.47],
    [65, -20, 51.46],
    [80, -20, 63.91],
  ])('%d psi at 70 °F reads at %d °F', (psi, toF, expected) => {
    expect(psiAt(psi, 70, toF)).toBeCloseTo(expected, 2);
  });

  it.each([
    [50, 61.51],
    [65, 79.18],
    [80, 96.85],
  ])('%d psi at -10 °F reads in a garage at 70 °F', (psi, expected) => {
    expect(psiAt(psi, -10, 70)).toBeCloseTo(expected, 2);
  });

  it('does not take a gauge pressure for an absolute one (53.96 would be the mistake)', () => {
    expect(psiAt(65, 70, -20)).not.toBeCloseTo(53.96, 1);
  });

  it('knows the height: 50 psi at the sea is 52.47 at 5,000 ft', () => {
    expect(psiAt(50, 70, 70, 0, 5000)).toBeCloseTo(52.47, 2);
    expect(psiAt(65, 70, -10, 900, 1300)).toBeCloseTo(53.24, 2);
    expect(psiAt(65, 70, 70, 1000, 3000)).toBeCloseTo(66.0015, 3);
  });

  it.each([
    [30, 0.844],
    [50, 1.221],
    [65, 1.505],
    [80, 1.788],
  ])('at %d psi and 70 °F ten degrees are %d psi, not the "one psi" of the rule of thumb', (psi, expected) => {
    const perK = gaugePerKelvin(toSI(psi, 'psi'), { temperatureK: toSI(70, 'F'), outsidePa: SEA_LEVEL });
    expect(fromSI(perK * toSI(10, 'F-diff'), 'psi')).toBeCloseTo(expected, 3);
  });
});

describe('ISO 4000-1 load index', () => {
  it.each([
    [80, 450],
    [85, 515],
    [90, 600],
    [100, 800],
    [107, 975],
    [108, 1000],
    [113, 1150],
    [117, 1285],
    [121, 1450],
  ])('%d is %d kg', (index, kg) => {
    expect(loadOfIndex(index)).toBe(kg);
  });

  it('is 265 kg at 62, where one public table misprints 165', () => {
    expect(loadOfIndex(62)).toBe(265);
  });

  it('rises with every step and keeps within two percent of 45 · 10^(index / 80)', () => {
    for (const [position, [index, kg]] of LOAD_INDEX_ROWS.entries()) {
      const before = LOAD_INDEX_ROWS[position - 1];
      if (before) expect([index - before[0], kg > before[1]]).toEqual([1, true]);
      expect(Math.abs(kg / (45 * 10 ** (index / 80)) - 1)).toBeLessThan(0.02);
    }
  });

  it.each([
    [80, 992],
    [100, 1764],
    [110, 2337],
    [117, 2833],
  ])('%d is printed as %d lb on sidewalls', (index, lb) => {
    expect(Math.abs(fromSI(loadOfIndex(index) ?? 0, 'lb') - lb)).toBeLessThan(1);
  });

  it('knows nothing of an index beyond its table', () => {
    expect(loadOfIndex(300)).toBeNull();
  });
});

describe('ST load and inflation chart', () => {
  it.each([
    ['ST205/75R15', 50, 1820],
    ['ST205/75R15', 65, 2150],
    ['ST225/75R15', 80, 2830],
    ['st 235/80 r16', 65, 3000],
    ['ST175/80-13', 35, 1100],
  ])('%s at %d psi carries %d lb', (size, psi, lb) => {
    expect(fromSI(stLoadAt(size, toSI(psi, 'psi')) ?? 0, 'lb')).toBeCloseTo(lb, 6);
  });

  it('is never read beyond the last column of a size, and not at all for another size', () => {
    expect(fromSI(stLoadAt('ST205/75R15', toSI(100, 'psi')) ?? 0, 'lb')).toBeCloseTo(2150, 6);
    expect(stLoadAt('LT245/75R16', toSI(65, 'psi'))).toBeNull();
  });
});

describe('axle capacity, 49 CFR 571.110 S4.2 (from memory)', () => {
  const pair = (lb: number, isPassenger = false) => axleCapacity({ tires: 2, loadKg: toSI(lb, 'lb'), isPassenger });

  const axleLines = (tire: number, gawr: number | null, carried: number) =>
    judgeLoad(
      {
        grossKg: toSI(carried * 1.14, 'lb'),
        tongueKg: toSI(carried * 0.14, 'lb'),
        axlesKg: toSI(carried, 'lb'),
        tongueShare: 0.12,
      },
      { ...NO_RATINGS, tiresKg: pair(tire), gawrKg: gawr === null ? null : toSI(gawr, 'lb') },
      'us',
    );

  it.each([
    [1820, 3500, undefined],
    [1760, 3500, undefined],
    [1740, 3500, 'watch'],
  ])('two tires of %d lb under an axle of %d lb: %s', (tire, gawr, outcome) => {
    expect(axleLines(tire, gawr, 3000).lines.find(({ id }) => id === 'tires-axles')?.outcome).toBe(outcome);
  });

  it('takes a tenth off a passenger tire: 1,874 lb carries 1,703.6', () => {
    expect(fromSI(pair(1874, true) / 2, 'lb')).toBeCloseTo(1703.6, 1);
  });

  it('stops a load over the tires or over the axle, and calls nothing good without its figures', () => {
    expect(axleLines(1740, 3600, 3560).lines.find(({ id }) => id === 'tires')?.outcome).toBe('hold');
    expect(axleLines(2150, 3500, 3600).lines.find(({ id }) => id === 'gawr')?.outcome).toBe('hold');
    const unknown = axleLines(2150, null, 2000);
    expect(unknown.outcome).toBe('watch');
    expect(unknown.missing.join(' ')).toContain('axle rating');
  });
});

describe('load range of ST metric tires', () => {
  it.each([
    ['B', 35],
    ['C', 50],
    ['D', 65],
    ['E', 80],
  ])('%s goes with %d psi (trade-press charts)', (letter, psi) => {
    expect(rangeDoubt(letter, toSI(psi, 'psi'))).toBeNull();
    expect(rangeDoubt(letter, toSI(psi + 15, 'psi'))).toContain(`${psi} pounds`);
  });

  it('350 kPa on a label is 50 psi, rounded', () => {
    expect(rangeDoubt('C', toSI(350, 'kPa'))).toBeNull();
    expect(rangeDoubt(null, toSI(50, 'psi'))).toBeNull();
  });
});

describe('cold', () => {
  it.each([
    [2.9, 20, false],
    [3, 20, true],
    [0.2, 0.5, true],
  ])('parked %d h, driven %d mi: %s (owner booklets)', (hours, miles, cold) => {
    expect(isCold(hours, toSI(miles, 'mi'))).toBe(cold);
  });

  it('is not known where nobody said', () => {
    expect(isCold(null)).toBeNull();
    expect(isCold(Number.NaN)).toBeNull();
  });

  it.each([
    [70, 2540, 65],
    [110, 4080, 95],
  ])('%d psi warm in a tire of %d lb is %d psi cold (393.75(i) Table 1)', (psi, load, cold) => {
    expect(fromSI(coldEstimate(toSI(psi, 'psi'), toSI(load, 'lb')), 'psi')).toBeCloseTo(cold, 9);
  });
});

describe('tread', () => {
  it.each([
    [1.6, 'mm', 0.0157],
    [4, '32nds', 2],
    [1.58, 'mm', 0],
  ] as const)('%d %s leaves %d thirty-seconds above 2/32 in (49 CFR 393.75(c))', (depth, unit, left) => {
    expect(fromSI(wearLeft(toSI(depth, unit)), '32nds')).toBeCloseTo(left, 3);
  });
});

describe('heat', () => {
  it('speaks only where the air is hot', () => {
    expect(heatWarning(toSI(20, 'F'), 0.99)).toBeNull();
    expect(heatWarning(null, 0.99)).toBeNull();
    expect(heatWarning(toSI(105, 'F'), 0.99)).toContain('nearly all they can');
  });
});
