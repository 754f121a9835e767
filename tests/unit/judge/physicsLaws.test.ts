/** Laws that the physics keeps for any input in its range: monotone, invertible, and the same in any unit. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chemistry, chargeAtRest, freezesAt, restVoltage } from '../../../src/domain/battery/charge.ts';
import { coldHandsSentence } from '../../../src/domain/cold/coldHands.ts';
import { frostbiteMinutes, windChill } from '../../../src/domain/cold/windChill.ts';
import { burnTime, feedsDownTo, tankGauge, vaporPressure } from '../../../src/domain/heat/propane.ts';
import { fitWarmUp, tonight } from '../../../src/domain/heat/warmUp.ts';
import { giveFor, pushedTension } from '../../../src/domain/lift/cableTension.ts';
import { clampLoad, torqueFor } from '../../../src/domain/lugs/clampLoad.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { numberInWords } from '../../../src/domain/quantity/words.ts';
import { stLoadAt } from '../../../src/domain/tires/capacity.ts';
import { airPressureAt, gaugeIn } from '../../../src/domain/tires/gasLaw.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { loadedUnit } from '../../../src/domain/weight/load.ts';
import { readLoadForm, startLoadForm } from '../../../src/domain/weight/loadForm.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const airK = between(220, 320);
const heightM = between(-400, 4000);
const air = fc.record({ temperatureK: airK, outsidePa: heightM.map(airPressureAt) });
const close = (a: number, b: number, relative = 1e-9) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(b)));

describe('gas law', () => {
  it('there and back is the same, and by way of a third state too', () => {
    fc.assert(
      fc.property(between(0, 900_000), air, air, air, (pa, a, b, c) => {
        close(gaugeIn(gaugeIn(pa, a, b), b, a), pa);
        close(gaugeIn(gaugeIn(pa, a, b), b, c), gaugeIn(pa, a, c));
      }),
    );
  });

  it('warmer reads higher, more air reads higher, thinner air outside reads higher', () => {
    fc.assert(
      fc.property(between(1000, 900_000), air, air, between(0.1, 40), (pa, from, to, dK) => {
        const base = gaugeIn(pa, from, to);
        expect(gaugeIn(pa, from, { ...to, temperatureK: to.temperatureK + dK })).toBeGreaterThan(base);
        expect(gaugeIn(pa + 500, from, to)).toBeGreaterThan(base);
        expect(gaugeIn(pa, from, { ...to, outsidePa: to.outsidePa - 500 })).toBeGreaterThan(base);
      }),
    );
  });

  it('air gets thinner with height', () => {
    fc.assert(
      fc.property(heightM, between(1, 500), (h, more) => {
        expect(airPressureAt(h + more)).toBeLessThan(airPressureAt(h));
      }),
    );
  });
});

describe('tires', () => {
  it('more air carries more, up to the last column', () => {
    fc.assert(
      fc.property(between(0, 800_000), between(0, 800_000), (a, b) => {
        const [less, more] = [stLoadAt('ST225/75R15', Math.min(a, b)), stLoadAt('ST225/75R15', Math.max(a, b))];
        expect(less ?? Number.NaN).toBeLessThanOrEqual(more ?? Number.NaN);
      }),
    );
  });
});

describe('lugs and cable', () => {
  it('torque and clamp load are inverse', () => {
    fc.assert(
      fc.property(between(0, 1000), between(0.005, 0.03), between(0.08, 0.4), (torque, d, k) => {
        close(torqueFor(clampLoad(torque, d, k), d, k), torque);
      }),
    );
  });

  it('give and tension are inverse; more give is less tension; the unit does not matter', () => {
    fc.assert(
      fc.property(between(10, 200), between(0.5, 3), between(0.003, 0.4), (force, span, give) => {
        const tension = pushedTension(force, span, give);
        close(giveFor(force, span, tension), give, 1e-6);
        expect(pushedTension(force, span, give * 1.1)).toBeLessThan(tension);
        // Only the ratio of span to give counts.
        close(pushedTension(force, span * 39.37, give * 39.37), tension);
      }),
    );
  });
});

describe('propane', () => {
  it('presses more when warmer, and feeds down to where its gauge shows what the regulator needs', () => {
    fc.assert(
      fc.property(between(200, 350), between(0.01, 10), heightM, (k, more, h) => {
        expect(vaporPressure(k + more)).toBeGreaterThan(vaporPressure(k));
        const pa = airPressureAt(h);
        close(tankGauge(feedsDownTo(pa), pa), toSI(10, 'psi'), 1e-6);
      }),
    );
  });

  it('burns twice as long at half the duty', () => {
    fc.assert(
      fc.property(between(0, 20), between(500, 20_000), between(0.01, 1), (kg, w, duty) => {
        close(burnTime(kg, w, duty), 2 * burnTime(kg, 2 * w, duty));
      }),
    );
  });
});

describe('heater test', () => {
  it('finds the curve that the readings were made from', () => {
    fc.assert(
      fc.property(airK, between(15, 80), between(300, 6000), fc.integer({ min: 3, max: 8 }), (startK, gain, tau, n) => {
        const span = tau * 1.5;
        const readings = Array.from({ length: n }, (_, index) => {
          const s = (span * index) / (n - 1);
          return { s, temperatureK: startK + gain * (1 - Math.exp(-s / tau)) };
        });
        const fit = fitWarmUp(readings);
        expect(fit.ok).toBe(true);
        if (fit.ok) {
          close(fit.endK, startK + gain, 1e-4);
          close(fit.tauS, tau, 1e-3);
          expect(fit.endLowK).toBeLessThanOrEqual(fit.endK);
          expect(fit.endHighK).toBeGreaterThanOrEqual(fit.endK);
        }
      }),
    );
  });

  it('is never a number out of nothing', () => {
    const anyReading = fc.record({ s: fc.double(), temperatureK: fc.double() });
    fc.assert(
      fc.property(fc.array(anyReading, { maxLength: 6 }), (readings) => {
        const fit = fitWarmUp(readings);
        if (fit.ok) expect(Number.isFinite(fit.endK) && Number.isFinite(fit.tauS)).toBe(true);
        else expect(fit.sentence.length).toBeGreaterThan(10);
      }),
    );
  });

  it('a colder night asks for more', () => {
    fc.assert(
      fc.property(airK, between(5, 100), between(0.5, 30), (outsideK, gain, colder) => {
        const mild = tonight(outsideK + gain, outsideK, outsideK);
        const cold = tonight(outsideK + gain, outsideK, outsideK - colder);
        expect(cold?.duty ?? -1).toBeGreaterThanOrEqual(mild?.duty ?? Number.NaN);
      }),
    );
  });
});

describe('battery', () => {
  const chemistry = fc.constantFrom<Chemistry>('flooded', 'agm', 'lifepo4');

  it('more volts is more charge, and charge gives its volts back', () => {
    fc.assert(
      fc.property(chemistry, between(0, 1), between(11, 14), between(0, 0.5), (kind, charge, volts, more) => {
        close(chargeAtRest(kind, restVoltage(kind, charge)), charge);
        expect(chargeAtRest(kind, volts + more)).toBeGreaterThanOrEqual(chargeAtRest(kind, volts));
      }),
    );
  });

  it('a fuller lead battery freezes later', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), (a, b) => {
        expect(freezesAt(Math.max(a, b))).toBeLessThanOrEqual(freezesAt(Math.min(a, b)));
      }),
    );
  });
});

describe('cold', () => {
  it('more wind and less warmth feel colder, and skin never freezes later', () => {
    fc.assert(
      fc.property(between(toSI(-50, 'F'), toSI(30, 'F')), between(1.5, 25), between(0.1, 8), (k, wind, more) => {
        const felt = windChill(k, wind) ?? Number.NaN;
        expect(windChill(k, wind + more) ?? Number.NaN).toBeLessThan(felt);
        expect(windChill(k - more, wind) ?? Number.NaN).toBeLessThan(felt);
        expect(frostbiteMinutes(k - more, wind) ?? 99).toBeLessThanOrEqual(frostbiteMinutes(k, wind) ?? 99);
      }),
    );
  });

  it('the sentence never says a thing that is no number', () => {
    fc.assert(
      fc.property(
        fc.option(fc.double()),
        fc.option(fc.double()),
        fc.constantFrom('us' as const, 'metric' as const),
        (k, w, display) => {
          expect(coldHandsSentence({ temperatureK: k, windMps: w, display }) ?? '').not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('weights', () => {
  const item = fc.record({ name: fc.constant('x'), massKg: between(0, 500), aheadM: between(-4, 5) });

  it('tongue and axles bear the gross weight between them, whatever the order', () => {
    fc.assert(
      fc.property(
        between(500, 4000),
        between(0.05, 0.2),
        between(3, 7),
        fc.array(item, { maxLength: 12 }),
        (mass, share, ball, items) => {
          const empty = { massKg: mass, tongueKg: mass * share, ballAheadM: ball };
          const result = loadedUnit(empty, items);
          const backward = loadedUnit(empty, [...items].reverse());
          expect(result.ok).toBe(backward.ok);
          if (!result.ok || !backward.ok) return;
          close(result.loaded.tongueKg + result.loaded.axlesKg, result.loaded.grossKg);
          close(backward.loaded.tongueKg, result.loaded.tongueKg);
        },
      ),
    );
  });

  it('a form with anything typed in it never shows what is no number', () => {
    const unit = DEMO_UNITS[0];
    if (!unit) throw new Error('no demo unit');
    const text = fc.oneof(fc.string({ maxLength: 6 }), fc.constantFrom('', '290', '14', '1,200', '-5', '1e9', 'NaN', '12,5'));
    fc.assert(
      fc.property(text, text, text, text, fc.constantFrom('us' as const, 'metric' as const), (a, b, c, d, display) => {
        const start = startLoadForm(unit, display);
        const form = {
          ...start,
          emptyWeight: a,
          emptyTongue: b,
          ballDistance: c,
          items: start.items.map((one) => ({ ...one, amount: d, distance: c })),
        };
        const { loaded, verdict, wanting } = readLoadForm(form, unit, display);
        expect((loaded === null) === (wanting !== null)).toBe(true);
        expect(JSON.stringify(verdict) ?? '').not.toMatch(/NaN|Infinity/);
        // Nothing is good while a rating is missing.
        if (verdict) expect(verdict.outcome).not.toBe('ok');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('numbers in words', () => {
  it.each([
    [0, 'zero'],
    [62, 'sixty-two'],
    [110, 'one hundred ten'],
    [12.6, 'twelve point six'],
    [12.65, 'twelve point six five'],
    [-20, 'minus twenty'],
    [3500, 'three thousand five hundred'],
    [1_000_001, 'one million one'],
  ])('%d is "%s"', (value, words) => {
    expect(numberInWords(value)).toBe(words);
  });

  it('different whole numbers are never the same words', () => {
    fc.assert(
      fc.property(fc.nat(999_999_999), fc.nat(999_999_999), (a, b) => {
        fc.pre(a !== b);
        expect(numberInWords(a)).not.toBe(numberInWords(b));
      }),
    );
  });

  it('refuses what is no number', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, 1e15]) expect(() => numberInWords(bad)).toThrow(RangeError);
  });
});
