/**
 * Gas, heater, batteries, wind against published values. Sources: Lemmon, McLinden and Wagner 2009 (propane saturation;
 * coefficients from memory, boiling point checked) and a trade pressure chart for propane; LP-gas tables; first-order
 * heating (any heat-transfer text); industry battery tables (from memory); National Weather Service wind chill table 2001;
 * Environment Canada frostbite formula (from memory); UL 2034; 49 CFR 180.209 (from memory).
 */
import { describe, expect, it } from 'vitest';
import {
  breakawayAh,
  capacityShare,
  chargeAtRest,
  freezesAt,
  freezesAtGravity,
  gravityAt80F,
  nightAh,
  usableAh,
} from '../../../src/domain/battery/charge.ts';
import { coldHandsSentence } from '../../../src/domain/cold/coldHands.ts';
import { formulaMinutes, frostbiteMinutes, windChill } from '../../../src/domain/cold/windChill.ts';
import { alarmMinutes, coBand, gasAlarmPpm, mgPerM3ToPpm, ppmToMgPerM3 } from '../../../src/domain/heat/carbonMonoxide.ts';
import { monthNumber, monthText, requalifyMonth } from '../../../src/domain/heat/dates.ts';
import { burnTime, feedsDownTo, fillOf, fuelLeft, tankGauge, vaporPressure } from '../../../src/domain/heat/propane.ts';
import { airChangeLoss, compareTests, fitWarmUp, insideAfter, tonight } from '../../../src/domain/heat/warmUp.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';

const SEA_LEVEL = 101_325;
const F = (value: number) => toSI(value, 'F');
const lb = (value: number) => toSI(value, 'lb');

describe('propane', () => {
  it('boils at 231.036 K under one atmosphere (the equation’s own fixed point)', () => {
    expect(vaporPressure(231.036)).toBeGreaterThan(SEA_LEVEL * 0.9998);
    expect(vaporPressure(231.036)).toBeLessThan(SEA_LEVEL * 1.0002);
  });

  it.each([
    [-40, 1.1112],
    [-20, 1.753],
    [0, 2.6469],
    [32, 4.7446],
    [70, 8.6119],
    [100, 13.0047],
  ])('at %d °F: %d bar absolute', (f, bar) => {
    expect(fromSI(vaporPressure(F(f)), 'bar')).toBeCloseTo(bar, 3);
  });

  it.each([
    [-20, 11.5],
    [20, 42],
    [40, 65],
    [60, 93],
    [70, 110],
    [100, 177],
  ])('the trade chart for pure propane prints at %d °F %d psig', (f, psig) => {
    expect(Math.abs(fromSI(tankGauge(F(f), SEA_LEVEL), 'psi') - psig)).toBeLessThan(3.5);
  });

  it('does not read three percent high at 0 °F, as the common three-term equation does (2.7258 bar)', () => {
    expect(fromSI(vaporPressure(F(0)), 'bar')).toBeLessThan(2.67);
  });

  it('no longer gives a regulator 10 psi a little below -20 °F', () => {
    const f = fromSI(feedsDownTo(SEA_LEVEL), 'F');
    expect(f).toBeGreaterThan(-22);
    expect(f).toBeLessThan(-20);
    expect(fromSI(tankGauge(feedsDownTo(SEA_LEVEL), SEA_LEVEL), 'psi')).toBeCloseTo(10, 6);
  });

  it('is refused above its critical point', () => {
    expect(() => vaporPressure(400)).toThrow(RangeError);
    expect(() => vaporPressure(Number.NaN)).toThrow(RangeError);
  });

  it('42 percent of 47.6 lb of water is the "20 lb" cylinder (49 CFR 173.304a(d), from memory)', () => {
    expect(fromSI(fillOf(lb(47.6)), 'lb')).toBeCloseTo(19.992, 6);
  });

  it('scale 29.3, tare 17.0: 12.3 lb, 61.5 percent of 20 lb', () => {
    const left = fuelLeft(lb(29.3), lb(17), lb(20));
    expect(left.ok && fromSI(left.fuelKg, 'lb')).toBeCloseTo(12.3, 9);
    expect(left.ok && left.share).toBeCloseTo(0.615, 9);
  });

  it.each([15, 39])('a 20 lb cylinder with tare 17 does not weigh %d lb', (scale) => {
    expect(fuelLeft(lb(scale), lb(17), lb(20)).ok).toBe(false);
  });

  it('burns for 13.252 h flat out at 20,000 BTU/h, 21.747 h at a duty of 0.609375; a full 20 lb 21.548 h (LP tables)', () => {
    const input = toSI(20_000, 'BTU/h');
    expect(burnTime(lb(12.3), input) / 3600).toBeCloseTo(13.252, 3);
    expect(burnTime(lb(12.3), input, 0.609375) / 3600).toBeCloseTo(21.747, 3);
    expect(burnTime(lb(20), input) / 3600).toBeCloseTo(21.548, 6);
  });
});

describe('cylinder dates, 49 CFR 180.209 (from memory)', () => {
  it.each([
    ['2014-06', null, '2026-06'],
    ['2026-06', 'E', '2031-06'],
    ['2020-02', 'S', '2027-02'],
  ] as const)('%s with %s is due %s', (stamped, suffix, due) => {
    expect(monthText(requalifyMonth(monthNumber(stamped) ?? 0, suffix))).toBe(due);
  });

  it.each(['2026-13', '26-06', '', '2026-6'])('"%s" is no month', (text) => {
    expect(monthNumber(text)).toBeNull();
  });
});

describe('first-order warming', () => {
  // 568 ft² at U 0.15 plus 832 ft³ at three air changes: 85.2 + 44.9 = 130 BTU/h °F; held heat 195 BTU/°F.
  const perF = 1055.05585262 * 1.8;
  const shell = { lossWPerK: (130 * perF) / 3600, heldJPerK: 195 * perF };
  const output = toSI(16_000, 'BTU/h');

  it.each([
    [5, -3.3489],
    [10, 2.9429],
    [15, 8.8946],
    [30, 24.8885],
    [60, 49.8871],
    [120, 80.6342],
  ])('after %d min a cabin at -10 °F stands at %d °F', (minutes, f) => {
    expect(fromSI(insideAfter(shell, output, F(-10), F(-10), minutes * 60), 'F')).toBeCloseTo(f, 3);
  });

  it('three air changes an hour of 832 ft³ lose 44.928 BTU/h °F (handbook factor 0.018)', () => {
    const loss = airChangeLoss(832 * 0.3048 ** 3, 3);
    expect((loss * 3600) / perF).toBeCloseTo(44.928, 6);
  });

  it('20, 34, 43.8 °F at ten minutes: ends at 66.667 °F, time constant 28.037 min', () => {
    const fit = fitWarmUp([20, 34, 43.8].map((f, index) => ({ s: index * 600, temperatureK: F(f) })));
    expect(fit.ok && fromSI(fit.endK, 'F')).toBeCloseTo(66.667, 2);
    expect(fit.ok && fit.tauS / 60).toBeCloseTo(28.037, 2);
  });

  it('half a degree more in the last moves the end to 72.97 °F: the range says so', () => {
    const fit = fitWarmUp([20, 34, 44.3].map((f, index) => ({ s: index * 600, temperatureK: F(f) })));
    expect(fit.ok && fromSI(fit.endK, 'F')).toBeCloseTo(72.973, 2);
    const base = fitWarmUp([20, 34, 43.8].map((f, index) => ({ s: index * 600, temperatureK: F(f) })));
    expect(base.ok && fromSI(base.endHighK, 'F')).toBeCloseTo(72.973, 2);
    expect(base.ok && base.endLowK < base.endK).toBe(true);
  });

  it.each([
    ['a straight line', [20, 30, 40]],
    ['faster and faster', [20, 30, 45]],
    ['cooling', [40, 30, 25]],
    ['two readings', [20, 30]],
  ])('%s can not be told yet', (_name, temperatures) => {
    expect(fitWarmUp(temperatures.map((f, index) => ({ s: index * 600, temperatureK: F(f) }))).ok).toBe(false);
  });

  it('a gain of 123.08 °F holds 65 at -10 with a duty of 0.609375, and not at -60', () => {
    const night = tonight(F(-10) + toSI(16_000 / 130, 'F-diff'), F(-10), F(-10));
    expect(night?.duty).toBeCloseTo(0.609375, 6);
    expect(tonight(F(-10) + toSI(16_000 / 130, 'F-diff'), F(-10), F(-60))?.holds).toBe(false);
  });

  it('is compared with the median of earlier tests', () => {
    expect(compareTests(5, [10, 11, 9])?.sentence).toContain('much more slowly');
    expect(compareTests(10, [10, 11, 9])?.ratio).toBeCloseTo(1, 9);
    expect(compareTests(10, [10, 11])).toBeNull();
  });
});

describe('carbon monoxide', () => {
  it.each([
    [0, 'air'],
    [8, 'air'],
    [9, 'find'],
    [34, 'find'],
    [35, 'out'],
    [69, 'out'],
    [70, 'emergency'],
    [400, 'emergency'],
  ])('%d ppm: %s (EPA 9, NIOSH 35, UL 2034 70)', (ppm, band) => {
    expect(coBand(toSI(ppm, 'ppm'))).toBe(band);
  });

  it.each([
    [100, 87.29],
    [35, 30.55],
    [10, 8.73],
    [7, 6.11],
    [4, 3.49],
  ])('WHO %d mg/m³ is %d ppm (28.01 / 24.45)', (mg, ppm) => {
    expect(mgPerM3ToPpm(mg)).toBeCloseTo(ppm, 2);
    expect(ppmToMgPerM3(mgPerM3ToPpm(mg))).toBeCloseTo(mg, 9);
  });

  it.each([
    [30, null],
    [69, null],
    [70, { from: 60, to: 240 }],
    [150, { from: 10, to: 50 }],
    [400, { from: 4, to: 15 }],
  ])('at %d ppm an alarm must sound after %j minutes (UL 2034, as printed in alarm manuals)', (ppm, minutes) => {
    expect(alarmMinutes(ppm)).toEqual(minutes);
  });

  it('a gas alarm at a quarter of the lower limit: 5,250 ppm at 2.1 percent, 5,375 at 2.15 (UL 1484, from memory)', () => {
    expect(gasAlarmPpm()).toBeCloseTo(5250, 6);
    expect(gasAlarmPpm(2.15)).toBeCloseTo(5375, 6);
  });
});

describe('batteries, industry rest-voltage table (from memory)', () => {
  it.each([
    [12.65, 100],
    [12.45, 75],
    [12.35, 63.095],
    [12.24, 50],
    [12.15, 37.5],
    [12.55, 87.5],
    [12.7, 100],
    [11.89, 0],
  ])('flooded, %d V: %d percent', (volts, percent) => {
    expect(chargeAtRest('flooded', volts) * 100).toBeCloseTo(percent, 2);
  });

  it('a lead table read for a lithium battery would say full at a quarter', () => {
    expect(chargeAtRest('flooded', 12.9)).toBe(1);
    expect(chargeAtRest('lifepo4', 12.9)).toBeCloseTo(0.25, 9);
  });

  it.each([
    [1, -71],
    [0.75, -35],
    [0.5, -10],
    [0.25, 5],
    [0, 17],
  ])('a charge of %d freezes at %d °F', (charge, f) => {
    expect(fromSI(freezesAt(charge), 'F')).toBeCloseTo(f, 9);
  });

  it('12.15 V, gravity 1.1725, freezes near -2.5 °F; 1.250 read at 20 °F is 1.226', () => {
    expect(fromSI(freezesAtGravity(1.1725), 'F')).toBeCloseTo(-2.5, 6);
    expect(gravityAt80F(1.25, F(20))).toBeCloseTo(1.226, 9);
  });

  it('a night of 12 h with a fan of 3.4 A at 0.609375 and 0.3 A besides: 28.4625 Ah', () => {
    const ah = nightAh({ fanA: 3.4, duty: 0.609375, standbyA: 0.3 }, 12);
    expect(ah).toBeCloseTo(28.4625, 9);
    expect(usableAh('flooded', 100, 1, F(0))).toBeCloseTo(31, 9);
    expect(usableAh('lifepo4', 100, 1, F(60))).toBeCloseTo(80, 9);
  });

  it('lead gives 0.8 at freezing and 0.62 at 0 °F', () => {
    expect(capacityShare('agm', F(32))).toBeCloseTo(0.8, 9);
    expect(capacityShare('agm', F(0))).toBeCloseTo(0.62, 9);
    expect(capacityShare('lifepo4', F(0))).toBe(1);
  });

  it('four electric brakes for fifteen minutes take 3.25 Ah (393.43(d))', () => {
    expect(breakawayAh(4)).toBeCloseTo(3.25, 9);
  });
});

describe('wind chill, National Weather Service table of 2001', () => {
  const chill = (f: number, mph: number) => {
    const felt = windChill(F(f), toSI(mph, 'mph'));
    return felt === null ? null : Math.round(fromSI(felt, 'F'));
  };

  it.each([
    [40, 5, 36],
    [30, 10, 21],
    [20, 15, 6],
    [10, 20, -9],
    [5, 35, -21],
    [0, 15, -19],
    [0, 30, -26],
    [-10, 20, -35],
    [-15, 15, -39],
    [-20, 30, -53],
    [-45, 60, -98],
    [20, 50, -3],
    [-35, 20, -68],
  ])('%d °F in %d mph feels like %d °F', (f, mph, felt) => {
    expect(chill(f, mph)).toBe(felt);
  });

  it('is not defined above 50 °F or for 3 mph and less', () => {
    expect(chill(51, 20)).toBeNull();
    expect(chill(50, 3)).toBeNull();
    expect(windChill(Number.NaN, 5)).toBeNull();
  });
});

describe('frostbite', () => {
  it.each([
    [-20, 30, 16.06],
    [-25, 30, 9.99],
    [-30, 40, 6.16],
    [-35, 60, 3.44],
  ])('%d °C in %d km/h: %d min (Environment Canada, from memory)', (c, kmh, minutes) => {
    expect(formulaMinutes(toSI(c, 'C'), toSI(kmh, 'km/h'))).toBeCloseTo(minutes, 2);
  });

  it('0 °F in 15 mph freezes skin in 30 minutes (NWS example); in still air at 20 °F it does not', () => {
    expect(frostbiteMinutes(F(0), toSI(15, 'mph'))).toBe(30);
    expect(frostbiteMinutes(F(20), 0)).toBeNull();
  });

  it('says the shorter of the two ways: -20 °F in 30 mph is 5 by the band, 5.97 by the formula', () => {
    expect(frostbiteMinutes(F(-20), toSI(30, 'mph'))).toBe(5);
  });

  it('one sentence at the start, none when it is warm or not known', () => {
    const say = (f: number | null, mph: number | null) =>
      coldHandsSentence({
        temperatureK: f === null ? null : F(f),
        windMps: mph === null ? null : toSI(mph, 'mph'),
        display: 'us',
      });
    expect(say(0, 15)).toContain('thirty minutes');
    expect(say(-20, 30)).toContain('five minutes');
    expect(say(-25, null)).toContain('sooner in wind');
    expect(say(25, 0)).toBe('Keep the gloves on between readings.');
    expect(say(60, 20)).toBeNull();
    expect(say(null, 20)).toBeNull();
    expect(say(-500, 20)).toBeNull();
  });
});
