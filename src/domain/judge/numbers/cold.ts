/** Wind chill, frostbite, and ice. */
import { figure, figureIn, table } from './entry.ts';
import { BEAUFORT, COMMON_PRACTICE, EC_FROSTBITE, MN_ICE, NWS_2001, NWS_FROSTBITE } from './sources.ts';

const topic = 'cold';

export const COLD = {
  constant: figureIn(35.74, '°F', 1, {
    topic,
    id: 'cold.constant',
    label: 'wind chill = this',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  byTemperature: figureIn(0.6215, 'per °F', 1, {
    topic,
    id: 'cold.by-temperature',
    label: 'plus this times T',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  byWind: figureIn(35.75, '°F', 1, {
    topic,
    id: 'cold.by-wind',
    label: 'minus this times V to the 0.16',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  byBoth: figureIn(0.4275, 'per °F', 1, {
    topic,
    id: 'cold.by-both',
    label: 'plus this times T times V to the 0.16 (T in °F, V in mph)',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  windExponent: figureIn(0.16, '', 1, {
    topic,
    id: 'cold.wind-exponent',
    label: 'exponent of the wind',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  warmest: figure(50, 'F', {
    topic,
    id: 'cold.warmest',
    label: 'wind chill is defined up to',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  calm: figure(3, 'mph', {
    topic,
    id: 'cold.calm',
    label: 'and for wind above',
    source: NWS_2001,
    usedFor: 'wind chill',
  }),
  speak: figure(32, 'F', {
    topic,
    id: 'cold.speak',
    label: 'felt temperature below which bare hands are spoken of at the start',
    source: COMMON_PRACTICE,
    usedFor: 'the sentence at the start of a round',
  }),
} as const;

/** [wind chill °F at or below which, minutes until bare skin can freeze]. Warmest first. */
export const FROSTBITE_ROWS: readonly (readonly [windChillF: number, minutes: number])[] = [
  [-18, 30],
  [-33, 10],
  [-48, 5],
];

/** Environment Canada: t = (a - b (c V + d)) (-d - T)^e, minutes, km/h, °C; for V > 25 and T < -15. */
export const FROSTBITE_TERMS = { a: 2111, b: 24.5, c: 0.667, d: 4.8, e: -1.668, windAboveKmh: 25, belowC: -15 } as const;

/** Answers of the wind check: middle of Beaufort forces 0, 3, 5 and 7, m/s. */
export const WIND_BY_SIGHT: Readonly<Record<string, { readonly force: number; readonly mps: number }>> = {
  calm: { force: 0, mps: 0 },
  light: { force: 3, mps: 4.4 },
  windy: { force: 5, mps: 9.4 },
  strong: { force: 7, mps: 15.5 },
};

export const COLD_TABLES = {
  windBySight: table({
    topic,
    id: 'cold.wind-by-sight',
    label: 'wind by what is seen',
    columns: ['answer', 'Beaufort force', 'speed (m/s)'],
    rows: Object.entries(WIND_BY_SIGHT).map(([answer, { force, mps }]) => [answer, force, mps]),
    source: BEAUFORT,
    usedFor: 'wind chill where nobody measures the wind',
  }),
  frostbite: table({
    topic,
    id: 'cold.frostbite',
    label: 'time until bare skin can freeze',
    columns: ['wind chill at or below (°F)', 'minutes'],
    rows: FROSTBITE_ROWS,
    source: NWS_FROSTBITE,
    usedFor: 'the sentence at the start of a round; the shorter of the two ways is said',
  }),
  frostbiteFormula: table({
    topic,
    id: 'cold.frostbite-formula',
    label: 'minutes = (a − b (c V + d)) × (−d − T) to the e; V in km/h above 25, T in °C below −15',
    columns: ['a', 'b', 'c', 'd', 'e'],
    rows: [[FROSTBITE_TERMS.a, FROSTBITE_TERMS.b, FROSTBITE_TERMS.c, FROSTBITE_TERMS.d, FROSTBITE_TERMS.e]],
    source: EC_FROSTBITE,
    usedFor: 'the sentence at the start of a round; the shorter of the two ways is said',
  }),
} as const;

export const ICE = {
  truckAndHouse: figure(20, 'in', {
    topic: 'ice',
    id: 'ice.truck-and-house',
    label: 'new clear ice for a heavy truck with a wheelhouse, at least',
    source: MN_ICE,
    usedFor: 'hold below it; no ice is ever certain',
  }),
  truck: figure(13, 'in', {
    topic: 'ice',
    id: 'ice.truck',
    label: 'new clear ice for a truck alone, at least',
    source: MN_ICE,
    usedFor: 'what is said below it',
  }),
  whiteCounts: figure(50, 'percent', {
    topic: 'ice',
    id: 'ice.white-counts',
    label: 'white ice counts as this part of clear ice',
    source: MN_ICE,
    usedFor: 'clear and white ice together',
  }),
} as const;
