/**
 * Towing weight against published figures. Sources: tow-vehicle makers' handbooks (tongue 10 to 15 percent); statics of
 * moments; guidance to 49 CFR 393.70(d) and New Hampshire RSA 266:63 (chains); trade guidance on ball and coupler.
 */
import { describe, expect, it } from 'vitest';
import { findCheck } from '../../../src/domain/checks/catalogue.ts';
import { WEIGHT } from '../../../src/domain/judge/numbers/weight.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';
import { chainLine, judgeLoad, type Ratings } from '../../../src/domain/weight/judgeLoad.ts';
import { liquidMass, loadedUnit } from '../../../src/domain/weight/load.ts';
import { NO_RATINGS } from './ratings.ts';

const lb = (value: number) => toSI(value, 'lb');
const loaded = (gross: number, tongue: number) => ({
  grossKg: lb(gross),
  tongueKg: lb(tongue),
  axlesKg: lb(gross - tongue),
  tongueShare: tongue / gross,
});

describe('loading by moments', () => {
  it('5,200 lb empty with water, two cylinders, a battery and 650 lb of gear is 6,150.8 lb', () => {
    const water = liquidMass(toSI(20, 'gal'), WEIGHT.water.si);
    expect(fromSI(water, 'lb')).toBeCloseTo(166.8, 6);
    const result = loadedUnit({ massKg: lb(5200), tongueKg: lb(624), ballAheadM: 5 }, [
      { name: 'water', massKg: water, aheadM: 0 },
      { name: 'cylinders', massKg: lb(74), aheadM: 5 },
      { name: 'battery', massKg: lb(60), aheadM: 5 },
      { name: 'gear', massKg: lb(650), aheadM: -1 },
    ]);
    expect(result.ok && fromSI(result.loaded.grossKg, 'lb')).toBeCloseTo(6150.8, 6);
    // Moments about the axle: 624 + 74 + 60 - 650 / 5 = 628 lb on the ball.
    expect(result.ok && fromSI(result.loaded.tongueKg, 'lb')).toBeCloseTo(628, 6);
    expect(result.ok && fromSI(result.loaded.axlesKg, 'lb')).toBeCloseTo(6150.8 - 628, 6);
  });

  it.each([
    ['no empty weight', { massKg: Number.NaN, tongueKg: 100, ballAheadM: 4 }],
    ['no tongue weight', { massKg: 2000, tongueKg: Number.NaN, ballAheadM: 4 }],
    ['no length', { massKg: 2000, tongueKg: 200, ballAheadM: 0 }],
  ])('with %s it asks for it', (_name, empty) => {
    const result = loadedUnit(empty, []);
    expect(!result.ok && result.sentence.length).toBeGreaterThan(10);
  });
});

describe('tongue weight 10 to 15 percent', () => {
  it.each([
    [6300, 500, 'hold'],
    [6300, 630, 'ok'],
    [6300, 735, 'ok'],
    [6300, 945, 'ok'],
    [6300, 1000, 'fix'],
    [7000, 700, 'ok'],
    [4500, 449, 'hold'],
    [5600, 841, 'fix'],
  ])('%d lb with %d lb on the tongue: %s', (gross, tongue, outcome) => {
    const line = judgeLoad(loaded(gross, tongue), NO_RATINGS, 'us').lines.find(({ id }) => id === 'tongue');
    expect(line?.outcome).toBe(outcome);
  });

  it('a value just outside is never shown as the figure itself', () => {
    const line = judgeLoad(loaded(10_000, 999.9), NO_RATINGS, 'us').lines.find(({ id }) => id === 'tongue');
    expect(line?.outcome).toBe('hold');
    expect(line?.text).toContain('9.999 %');
  });
});

describe('ratings: the lowest governs', () => {
  const ratings: Ratings = {
    gvwrKg: lb(7000),
    gawrKg: lb(3500),
    axles: 2,
    tiresKg: lb(4 * 2150),
    couplerKg: lb(7000),
    ballKg: lb(8000),
    receiverKg: lb(10_000),
    chainKg: lb(7600),
    tongueKg: lb(1000),
  };

  it('6,150.8 lb of 7,000 is within every rating', () => {
    const verdict = judgeLoad(loaded(6150.8, 738.1), ratings, 'us');
    expect([verdict.outcome, verdict.missing]).toEqual(['ok', []]);
    expect(verdict.weakest?.id).toBe('gvwr');
  });

  it('coupler 5,000, ball 3,500, trailer 4,000: stop at the ball', () => {
    const verdict = judgeLoad(loaded(4000, 480), { ...ratings, couplerKg: lb(5000), ballKg: lb(3500) }, 'us');
    expect([verdict.outcome, verdict.weakest?.id]).toEqual(['hold', 'ball']);
  });

  it('a missing rating is named and is never good', () => {
    const verdict = judgeLoad(loaded(6150.8, 738.1), { ...ratings, ballKg: null }, 'us');
    expect(verdict.outcome).toBe('watch');
    expect(verdict.missing.join(' ')).toContain('ball');
  });
});

describe('chains', () => {
  it.each([
    [5000, 'watch'],
    [3000, 'hold'],
    [7600, 'ok'],
  ])('two of %d lb for 7,000 lb: %s', (chain, outcome) => {
    expect(chainLine(lb(7000), lb(chain), 'us').outcome).toBe(outcome);
  });
});

describe('ball and coupler', () => {
  const outcomeFor = (coupler: number, ball: string) => {
    const [unit] = DEMO_UNITS;
    const check = findCheck('ball-size');
    if (!unit || !check) throw new Error('there is a unit, and the check');
    const of = { ...unit, tongue: { ...unit.tongue, ballInches: coupler } } as Unit;
    const { params } = check.judge({ unit: of, round: 'before-towing', position: null, index: 0 });
    return params[ball];
  };

  it.each([
    [2.3125, 'two', 'hold'],
    [2, 'two', 'ok'],
    [2, 'two-and-five-sixteenths', 'hold'],
    [2.3125, 'two-and-five-sixteenths', 'ok'],
  ])('coupler %d, ball %s: %s', (coupler, ball, outcome) => {
    expect(outcomeFor(coupler, ball)).toBe(outcome);
  });
});
