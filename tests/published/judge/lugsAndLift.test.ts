/**
 * Lugs and lift cable against published values. Sources: Shigley and Machinery's Handbook (T = K D F, worked examples as in
 * an engineering tutorial that cites them; stress area); trailer and axle makers' manuals (re-torque); statics of a string;
 * 29 CFR 1926.1413(a)(2), 1910.184(f)(5), 1926.251(c)(4)(iv).
 */
import { describe, expect, it } from 'vitest';
import { giveFor, pushedTension, restTension, sidesDiffer, tensionEstimate } from '../../../src/domain/lift/cableTension.ts';
import { leastDiameter, type RopeFindings, removalReasons, wiresPerEight } from '../../../src/domain/lift/ropeRemoval.ts';
import { clampEstimate, clampLoad, stressArea, torqueFor, turnsNeeded } from '../../../src/domain/lugs/clampLoad.ts';
import { retorqueOf } from '../../../src/domain/lugs/retorque.ts';
import { isWrenchSuited, stages, starOrder, starOrderSentence, typicalTorque } from '../../../src/domain/lugs/tightening.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';
import type { UnitEvent } from '../../../src/domain/round/entry.ts';

describe('T = K D F', () => {
  it.each([
    ['3/4-10, 30,100 lbf, K 0.20', 30_100, 0.75, 0.2, 376.25],
    ['3/8-16 grade 5, 4,940 lbf, K 0.20', 4940, 0.375, 0.2, 30.9],
    ['3/8-16 grade 5, 4,940 lbf, K 0.15', 4940, 0.375, 0.15, 23.2],
  ])('%s', (_name, lbf, inches, k, lbFt) => {
    expect(fromSI(torqueFor(toSI(lbf, 'lbf'), toSI(inches, 'in'), k), 'lb-ft')).toBeCloseTo(lbFt, 1);
  });

  it('M24, 219,500 N, K 0.20: 1,054 N m; M12 class 8.8 at 70 percent of proof: 82 N m', () => {
    expect(torqueFor(219_500, 0.024, 0.2)).toBeCloseTo(1053.6, 6);
    expect(torqueFor(0.7 * 580 * 84.3, 0.012, 0.2)).toBeCloseTo(82.14, 2);
  });

  it('100 lb-ft on a half-inch stud: 12,000 lbf dry, 16,000 oiled, 20,000 with anti-seize', () => {
    const torque = toSI(100, 'lb-ft');
    for (const [k, lbf] of [
      [0.2, 12_000],
      [0.15, 16_000],
      [0.12, 20_000],
    ] as const) {
      expect(fromSI(clampLoad(torque, toSI(0.5, 'in'), k), 'lbf')).toBeCloseTo(lbf, 6);
    }
    const { lowN, likelyN, highN } = clampEstimate(torque, toSI(0.5, 'in'));
    expect(lowN).toBeLessThan(likelyN);
    expect(fromSI(likelyN, 'lbf')).toBeCloseTo(12_000, 6);
    expect(fromSI(highN, 'lbf')).toBeCloseTo((12_000 * 1.04 * 0.2) / 0.15, 6);
  });

  it.each([
    [0.5, 20, 0.15995],
    [0.5625, 18, 0.20298],
    [0.5, 13, 0.1419],
  ])('stress area of %d-%d is %d in²', (diameter, pitch, area) => {
    expect(stressArea(diameter, pitch) / 0.0254 ** 2).toBeCloseTo(area, 4);
  });

  it('a nut is on by one diameter: ten turns on 1/2-20 (trailer manual)', () => {
    expect(turnsNeeded(0.5, 20)).toBe(10);
    expect(turnsNeeded(0.5625, 18)).toBeCloseTo(10.1, 1);
  });
});

describe('tightening', () => {
  it.each([4, 5, 6, 8] as const)('the star of %d lugs takes each once and, where it can, never its neighbor', (lugs) => {
    const order = starOrder(lugs);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: lugs }, (_, index) => index + 1));
    const steps = order.slice(1).map((lug, index) => {
      const apart = Math.abs(lug - (order[index] ?? 0));
      return Math.min(apart, lugs - apart);
    });
    const neighbors = steps.filter((step) => step < 2).length;
    expect(neighbors).toBe(lugs === 4 ? 1 : 0);
    if (lugs % 2 === 0) for (const step of steps.filter((_, index) => index % 2 === 0)) expect(step).toBe(lugs / 2);
  });

  it('is said in words', () => {
    expect(starOrderSentence(5)).toBe('Clockwise from the valve: one, three, five, two, four.');
  });

  it('goes in three passes: 20 to 25, 50 to 60, full (trailer manuals)', () => {
    const passes = stages(toSI(100, 'lb-ft')).map(({ lowNm, highNm }) => [fromSI(lowNm, 'lb-ft'), fromSI(highNm, 'lb-ft')]);
    expect(passes.map((pass) => pass.map((value) => Math.round(value)))).toEqual([
      [20, 25],
      [50, 60],
      [100, 100],
    ]);
    expect(stages(Number.NaN)).toEqual([]);
  });

  it('90 to 120 lb-ft on a half-inch stud; nothing for 5/8, whose figures run from 140 to 325 (manuals)', () => {
    const half = typicalTorque('1/2');
    expect(half && [fromSI(half.lowNm, 'lb-ft'), fromSI(half.highNm, 'lb-ft')].map(Math.round)).toEqual([90, 120]);
    expect(typicalTorque('5/8')).toBeNull();
  });

  it('a wrench is good from a fifth of its range (ISO 6789-1, from memory)', () => {
    expect(isWrenchSuited(toSI(100, 'lb-ft'), toSI(150, 'lb-ft'))).toBe(true);
    expect(isWrenchSuited(toSI(100, 'lb-ft'), toSI(80, 'lb-ft'))).toBe(false);
    expect(isWrenchSuited(toSI(25, 'lb-ft'), toSI(250, 'lb-ft'))).toBe(false);
    expect(isWrenchSuited(toSI(50, 'lb-ft'), toSI(250, 'lb-ft'))).toBe(true);
  });
});

describe('re-torque at 10, 25 and 50 miles (trailer and axle manuals)', () => {
  const DAY = 86_400_000;
  const mounted: UnitEvent = {
    id: 'e',
    unit: 'u',
    at: 0,
    kind: 'wheel-mounted',
    position: 'left',
    odometerM: toSI(1000, 'mi'),
  };
  const standing = (odometer: number | null, checks: readonly (number | null)[] = []) =>
    retorqueOf(
      'left',
      [mounted],
      checks.map((miles, index) => ({
        position: 'left' as const,
        at: (index + 1) * DAY,
        goneM: miles === null ? null : toSI(miles - 1000, 'mi'),
      })),
      { at: 30 * DAY, goneM: odometer === null ? null : toSI(odometer - 1000, 'mi') },
    );
  const miles = (value: number) => Math.round(fromSI(value, 'mi'));

  it('mounted at 1,000: first due at 1,010', () => {
    const at1005 = standing(1005);
    expect(at1005.state === 'coming' && [miles(at1005.markM), miles(at1005.inM)]).toEqual([10, 5]);
    expect(standing(1010).state).toBe('due');
  });

  it('checked at 1,012: next at 1,025', () => {
    const then = standing(1013, [1012]);
    expect(then.state === 'coming' && miles(then.markM)).toBe(25);
    expect(standing(1025, [1012]).state).toBe('due');
  });

  it('no check by 1,051: overdue by 41 miles', () => {
    const late = standing(1051);
    expect(late.state === 'due' && miles(late.byM)).toBe(41);
  });

  it('settled after a check at 1,050 or later, and for a wheel never mounted', () => {
    expect(standing(1060, [1055]).state).toBe('settled');
    expect(retorqueOf('right', [mounted], [], { at: DAY, goneM: null }).state).toBe('settled');
  });

  it('says so where the distance is not known', () => {
    const unknown = standing(null);
    expect(unknown.state === 'unknown' && unknown.sentence).toContain('every stop');
  });
});

describe('tension of a cable pushed sideways, T = (F / 2) sqrt(1 + (L / 2d)²)', () => {
  it.each([
    [20, 60, 1, 300.16662],
    [20, 60, 0.5, 600.083328],
    [10, 48, 0.75, 160.078106],
    [20, 60, 6, 50.990195],
  ])('%d lb, span %d in, give %d in: %d lb', (force, span, give, tension) => {
    const t = pushedTension(toSI(force, 'lbf'), toSI(span, 'in'), toSI(give, 'in'));
    expect(fromSI(t, 'lbf')).toBeCloseTo(tension, 5);
    expect(giveFor(toSI(force, 'lbf'), toSI(span, 'in'), t)).toBeCloseTo(toSI(give, 'in'), 9);
  });

  it('the push itself adds tension: 375 lb pushed by one inch over 60 in is about 249 at rest', () => {
    const stiffness = toSI(126 / (Math.hypot(1, 2 / 60) - 1), 'lbf');
    const rest = restTension(toSI(375, 'lbf'), toSI(60, 'in'), toSI(1, 'in'), stiffness);
    expect(fromSI(rest, 'lbf')).toBeCloseTo(249, 6);
  });

  it('is a wide estimate: half the push either way and a quarter inch in the reading', () => {
    const estimate = tensionEstimate(toSI(1, 'in'), toSI(60, 'in'));
    expect(estimate && fromSI(estimate.likelyN, 'lbf')).toBeCloseTo(300.17, 2);
    expect(estimate && fromSI(estimate.lowN, 'lbf')).toBeCloseTo(120.1, 1);
    expect(estimate && fromSI(estimate.highN, 'lbf')).toBeCloseTo(600.2, 1);
    expect(tensionEstimate(0, 1)).toBeNull();
  });

  it('sides differ when one gives twice as much', () => {
    expect(sidesDiffer(2, 1)).toBe(true);
    expect(sidesDiffer(1.9, 1)).toBe(false);
    expect(sidesDiffer(0, 0)).toBe(false);
  });
});

describe('wire rope', () => {
  const SOUND: RopeFindings = {
    brokenPerLay: 0,
    brokenInStrand: 0,
    brokenPerEight: 0,
    construction: '7x19',
    nominalM: toSI(3 / 16, 'in'),
    measuredM: toSI(3 / 16, 'in'),
    outerWireWorn: 0,
    kinked: false,
    corroded: false,
  };

  it.each([
    ['six in one lay (1926.1413(a)(2))', { brokenPerLay: 6, brokenInStrand: 1 }, 1],
    ['five in one lay, two at most in a strand', { brokenPerLay: 5, brokenInStrand: 2 }, 0],
    ['three in one strand', { brokenPerLay: 3, brokenInStrand: 3 }, 1],
    ['three, strand not looked at', { brokenPerLay: 3, brokenInStrand: null }, 1],
    ['a third of an outer wire (1910.184(f)(5))', { outerWireWorn: 1 / 3 }, 1],
    ['5 percent thinner is at the line', { measuredM: toSI(0.178125, 'in') }, 0],
    ['thinner than 0.178 in', { measuredM: toSI(0.178, 'in') }, 1],
    ['kink and rust', { kinked: true, corroded: true }, 2],
    ['nothing', {}, 0],
  ] as const)('%s', (_name, found, reasons) => {
    expect(removalReasons({ ...SOUND, ...found })).toHaveLength(reasons);
  });

  it.each([
    ['7x19', 14],
    ['6x19', 12],
  ] as const)(
    '%s: %d broken wires over eight diameters are more than a tenth (1926.251(c)(4)(iv), from memory)',
    (type, wires) => {
      expect(wiresPerEight(type)).toBe(wires);
    },
  );

  it('3/16 in goes below 0.178125 in, 1/4 in below 0.2375 in', () => {
    expect(fromSI(leastDiameter(toSI(3 / 16, 'in')), 'in')).toBeCloseTo(0.178125, 9);
    expect(fromSI(leastDiameter(toSI(0.25, 'in')), 'in')).toBeCloseTo(0.2375, 9);
  });
});
