/** Seeded tires and batteries for finding leaks and jumps: what the gauge shows when the truth is known. */

import type { Limit } from '../../../src/domain/checks/outcome.ts';
import { pressureAtTemperature } from '../../../src/domain/history/normalize.ts';
import type { Series, SeriesReading } from '../../../src/domain/history/series.ts';
import { fromSI, toSI } from '../../../src/domain/quantity/units.ts';
import { describeTrend } from '../../../src/domain/trend/describeTrend.ts';
import type { TrendStatement } from '../../../src/domain/trend/statement.ts';

export const DAY = 86_400_000;
const REFERENCE_K = 293.15;
const AIR_PA = 101_325;

/** Mulberry32, a small seeded generator in the public domain. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Standard normal by Box and Muller. */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export interface TireStory {
  readonly weeks: number;
  /** psi a week, and the week it starts in. */
  readonly leak?: number;
  readonly from?: number;
  /** psi, lost at once in week `from`. */
  readonly jump?: number;
  /** Pumped back to 65 when it reads below this. */
  readonly refillBelow?: number;
  readonly gaugeSd?: number;
  readonly rounded?: boolean;
  /** Always read at 68 °F. */
  readonly indoors?: boolean;
}

export const FLOOR: Limit = {
  id: 'floor',
  label: 'floor',
  relation: 'at-least',
  si: toSI(50, 'psi'),
  unit: 'psi',
  outcome: 'fix',
  source: { kind: 'common-practice', text: 'common practice, no source' },
};

/** Weekly readings of one tire in changing weather; the tire is up to 3 °F off what was said to be the outside air. */
export function tireSeries(story: TireStory, random: () => number): Series {
  const readings: SeriesReading[] = [];
  let psi = 65;
  for (let week = 0; week < story.weeks; week++) {
    const started = week >= (story.from ?? 0);
    if (started) psi -= story.leak ?? 0;
    if (week === story.from) psi -= story.jump ?? 0;
    const saidK = toSI(story.indoors ? 68 : Math.round(20 + 30 * Math.cos((2 * Math.PI * week) / 52) + 12 * normal(random)), 'F');
    const tireK = saidK + (3 * normal(random)) / 2 / 1.8;
    const shown =
      fromSI(pressureAtTemperature(toSI(psi, 'psi'), REFERENCE_K, tireK, AIR_PA), 'psi') +
      (story.gaugeSd ?? 0.6) * normal(random);
    const read = story.rounded === false ? shown : Math.round(shown);
    const value = fromSI(pressureAtTemperature(toSI(read, 'psi'), saidK, REFERENCE_K, AIR_PA), 'psi');
    readings.push({
      at: week * 7 * DAY + Math.round(random() * DAY),
      value,
      read,
      normalized: true,
      outsideK: saidK,
      outcome: 'ok',
      round: `r${week}`,
      entry: `e${week}`,
    });
    if (story.refillBelow !== undefined && value < story.refillBelow) psi = 65;
  }
  return {
    unitId: 'unit-1',
    key: 'tire-pressure@left-rear',
    check: 'tire-pressure',
    position: 'left-rear',
    quantity: 'tire-pressure',
    rule: 'tire-pressure',
    name: 'tire pressure',
    unit: 'psi',
    step: 1,
    readings,
    earlier: [],
    limits: [FLOOR],
    referenceK: REFERENCE_K,
    airPa: AIR_PA,
    demo: false,
  };
}

/** What would have been said after each reading, oldest first. */
export function saidAfterEach(series: Series): (TrendStatement | null)[] {
  return series.readings.map((reading, index) =>
    describeTrend({ ...series, readings: series.readings.slice(0, index + 1) }, series.limits, reading.at, 'us'),
  );
}
