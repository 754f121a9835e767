import { describe, expect, it } from 'vitest';
import type { Series } from '../../../src/domain/history/series.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { describeTrend } from '../../../src/domain/trend/describeTrend.ts';
import { sinceBend } from '../../../src/domain/trend/sinceBend.ts';
import { splitAtRefills } from '../../../src/domain/trend/splitAtRefills.ts';
import { amountWords, dateWords, rateWords, valueWords, whenWords } from '../../../src/domain/trend/wording.ts';
import { DAY, FLOOR, saidAfterEach, seeded, type TireStory, tireSeries } from './simulate.ts';

const START = Date.UTC(2025, 10, 4);

/** A battery or a tire without any noise: the values as read, a week apart. */
function given(values: readonly number[], changes: Partial<Series> = {}): Series {
  const base = tireSeries({ weeks: 0 }, seeded(1));
  return {
    ...base,
    readings: values.map((value, week) => ({
      at: START + week * 7 * DAY,
      value,
      read: value,
      normalized: true,
      outsideK: 293.15,
      outcome: 'ok',
      round: `r${week}`,
      entry: `e${week}`,
    })),
    ...changes,
  };
}

const lastAt = (series: Series) => series.readings.at(-1)?.at ?? 0;
const say = (series: Series, display: 'us' | 'metric' = 'us') => describeTrend(series, series.limits, lastAt(series), display);

describe('describeTrend', () => {
  it('tells a slow leak with the day it reaches its limit', () => {
    const said = say(given([65, 64, 63, 62, 61.5, 60, 59, 58], { step: 0.5 }));
    expect(said?.text).toMatch(
      /^Left rear loses about one pound a week; it reaches 50 by February \d+, give or take \w+ days\.$/,
    );
    expect(said?.concern).toBe(true);
    expect(said?.forecast?.earliest).toBeLessThan(said?.forecast?.at ?? 0);
    // By hand: seven pounds in seven weeks leaves eight weeks from the reading of December 23.
    expect(Math.abs((said?.forecast?.at ?? 0) - Date.UTC(2026, 1, 17)) / DAY).toBeLessThan(4);
  });

  it('tells it in kilopascals where metric is chosen', () => {
    expect(say(given([65, 64, 63, 62, 61.5, 60, 59, 58], { step: 0.5 }), 'metric')?.text).toMatch(
      /loses about (seven|six and a half) kilopascals a week; it reaches 34\d/,
    );
  });

  it('says nothing from too few readings, from too short a time, or of what was not measured for a year', () => {
    expect(say(given([65, 63, 61, 59, 57]))).toBeNull();
    const hours = given([65, 64, 63, 62, 61, 60, 59, 58]);
    expect(
      say({ ...hours, readings: hours.readings.map((reading, index) => ({ ...reading, at: START + index * 3_600_000 })) }),
    ).toBeNull();
    const leak = given([65, 64, 63, 62, 61, 60, 59, 58]);
    expect(describeTrend(leak, leak.limits, lastAt(leak) + 500 * DAY, 'us')).toBeNull();
  });

  it('says that a limit is crossed already instead of forecasting it', () => {
    const said = say(given([57, 56, 55, 54, 53, 52, 51, 50, 49, 48]));
    expect(said?.text).toBe('Left rear loses about one pound a week and is below 50 now.');
    expect(said?.forecast).toBeNull();
  });

  it('gives no day where there is no limit ahead', () => {
    const series = given([65, 64, 63, 62, 61, 60, 59, 58]);
    expect(describeTrend(series, [], lastAt(series), 'us')?.text).toBe('Left rear loses about one pound a week.');
  });

  it('takes falling pressures in falling temperatures for weather while the temperature is not known', () => {
    const unknown = given([65, 64, 63, 62, 61, 60, 59, 58]);
    expect(
      say({ ...unknown, readings: unknown.readings.map((reading) => ({ ...reading, normalized: false, outsideK: null })) }),
    ).toBeNull();
  });

  it('sees a leak through refills', () => {
    const said = say(given([65, 64, 63, 62, 61, 65, 64, 63, 62, 61, 65, 64]));
    expect(said?.text).toContain('loses about one pound a week');
    expect(said?.because.join(' ')).toContain('Pumped up two times');
  });

  it('questions one reading that does not fit', () => {
    const said = say(given([65, 65, 64, 65, 65, 65, 64, 65, 41]));
    expect(said?.kind).toBe('outlier');
    expect(said?.text).toBe('Left rear was 41 last time, where about 65 was to be expected: measure it again.');
  });

  it('tells a step as a step', () => {
    const push = {
      rule: 'cable-push',
      name: 'cable',
      unit: 'in',
      position: 'left',
      step: 0.25,
      limits: [],
      referenceK: null,
    } as const;
    const said = say(given([2, 2, 2.25, 2, 2, 1.75, 2, 2, 2.25, 2, 2, 2, 3.5, 3.5, 3.25, 3.5, 3.5], push));
    expect(said?.text).toBe('Left cable rose by about one and a half inches around January 27 and has stayed there.');
  });

  it('tells one more broken wire', () => {
    const wires = { rule: 'broken-wires', name: 'broken wires', unit: 'count', position: 'left', referenceK: null } as const;
    expect(say(given([0, 0, 2], wires))?.text).toBe('Left broken wires went from none to two since November 11.');
    expect(say(given([0, 2, 2], wires))).toBeNull();
  });

  it('says nothing about the weather itself', () => {
    expect(say(given([40, 35, 30, 25, 20, 15, 10, 5], { rule: 'outside-temperature', referenceK: null }))).toBeNull();
  });

  it('gives no word longer than a breath: one sentence each time', () => {
    const said = saidAfterEach(tireSeries({ weeks: 40, from: 10, leak: 1 }, seeded(7))).filter((one) => one !== null);
    expect(said.length).toBeGreaterThan(20);
    for (const one of said) {
      expect(one.text.length).toBeLessThan(120);
      expect(one.text).toMatch(/^[A-Z][^.!?]*(\d\.\d[^.!?]*)*\.$/);
      expect(one.text).not.toMatch(/NaN|undefined|Infinity|null/);
    }
  });
});

describe('detection, seeded (the full table is tests/bench/trend.ts)', () => {
  const firstTold = (story: TireStory, seed: number) => {
    const said = saidAfterEach(tireSeries(story, seeded(seed)));
    return said.findIndex((one, week) => week >= (story.from ?? 0) && one !== null) - (story.from ?? 0) + 1;
  };

  it('finds a leak of one pound a week within nine readings, and a jump of ten pounds at once', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const leak = firstTold({ weeks: 40, from: 20, leak: 1 }, seed);
      expect(leak).toBeGreaterThan(0);
      expect(leak).toBeLessThanOrEqual(9);
      expect(firstTold({ weeks: 25, from: 20, jump: 10 }, seed)).toBe(1);
    }
  });

  it('is quiet where nothing changes: at most one false alarm in twenty tire-years', () => {
    let alarms = 0;
    for (let seed = 101; seed <= 110; seed++) {
      const said = saidAfterEach(tireSeries({ weeks: 104 }, seeded(seed)));
      alarms += said.filter((one, week) => one !== null && said[week - 1]?.kind !== one.kind).length;
    }
    expect(alarms).toBeLessThanOrEqual(1);
  });
});

describe('sinceBend', () => {
  it('keeps what follows the bend and leaves a straight line whole', () => {
    const wobble = [0.1, -0.2, 0, 0.2, -0.1];
    const bent = Array.from({ length: 20 }, (_, t) => ({ t, x: 65 - Math.max(0, t - 12) + (wobble[t % 5] ?? 0) }));
    expect(sinceBend(bent)[0]?.t).toBeGreaterThanOrEqual(11);
    expect(sinceBend(bent)[0]?.t).toBeLessThanOrEqual(13);
    const straight = bent.map(({ t }) => ({ t, x: 65 - t + (wobble[t % 5] ?? 0) }));
    expect(sinceBend(straight)).toBe(straight);
  });
});

describe('splitAtRefills', () => {
  const points = (values: readonly number[]) => values.map((x, t) => ({ t, x }));
  const lengths = (values: readonly number[]) => splitAtRefills(points(values), 1, 'up').map((block) => block.length);

  it('cuts where it was pumped up, not at one wrong reading', () => {
    expect(lengths([65, 64, 63, 62, 66, 65, 64])).toEqual([4, 3]);
    expect(lengths([65, 64, 65, 75, 64, 65, 64])).toEqual([7]);
    expect(lengths([65, 64, 65, 50, 64, 65, 64])).toEqual([7]);
    expect(lengths([65])).toEqual([1]);
  });

  it('loses no point', () => {
    expect(splitAtRefills(points([1, 9, 1, 9, 9, 1]), 1, 'either').flat()).toHaveLength(6);
  });
});

describe('words', () => {
  it('says amounts as people do', () => {
    expect(amountWords(0.5, 'psi', 0.5)).toBe('half a pound');
    expect(amountWords(0.5, 'in', 0.25)).toBe('half an inch');
    expect(amountWords(1, 'psi', 1)).toBe('one pound');
    expect(amountWords(2.6, 'psi', 1)).toBe('two and a half pounds');
    expect(amountWords(12.4, 'psi', 1)).toBe('12 pounds');
    expect(amountWords(0.2, 'V', 0.1)).toBe('0.2 volts');
  });

  it('says a rate over the time in which it comes to something', () => {
    expect(rateWords(1 / 7, 'psi', 1, 'us')).toBe('one pound a week');
    expect(rateWords(1.5 / 30.44, 'psi', 1, 'us')).toBe('one and a half pounds a month');
    expect(rateWords(2 / 365, '32nds', 1, 'us')).toBe('two thirty-seconds a year');
    expect(rateWords(0.1 / 30.44, 'V', 0.1, 'us')).toBe('0.1 volts a month');
  });

  it('says values, days and intervals', () => {
    expect(valueWords(58.2, 'psi', 1, 'us')).toBe('58');
    expect(valueWords(2.75, 'in', 0.25, 'us')).toBe('2.75');
    expect(valueWords(12.649, 'V', 0.05, 'us')).toBe('12.65');
    expect(valueWords(toSI(0, 'C') - 273.15, 'V', 0.1, 'us')).toBe('0');
    const now = Date.UTC(2025, 11, 1);
    expect(dateWords(Date.UTC(2026, 0, 20), now)).toBe('January 20');
    expect(dateWords(Date.UTC(2026, 10, 20), now)).toBe('November 20, 2026');
    const at = Date.UTC(2026, 0, 20);
    expect(whenWords(at, at - 10 * DAY, at + 9 * DAY, now)).toBe('by January 20, give or take ten days');
    expect(whenWords(at, at - 20 * DAY, at + 28 * DAY, now)).toBe('by January 20, give or take four weeks');
    expect(whenWords(at, at - 20 * DAY, at + 80 * DAY, now)).toBe('some time between December 2025 and April 2026');
  });
});

describe('the limit used', () => {
  it('is the nearest one ahead, of the same kind of quantity', () => {
    const values = [65, 64, 63, 62, 61.5, 60, 59, 58];
    const lower = { ...FLOOR, id: 'stop', si: toSI(40, 'psi'), outcome: 'hold' as const };
    const torque = { ...FLOOR, id: 'torque', si: toSI(57, 'lb-ft'), unit: 'lb-ft' as const };
    const series = given(values, { limits: [lower, torque, FLOOR], step: 0.5 });
    expect(say(series)?.forecast?.limit.id).toBe('floor');
  });
});
