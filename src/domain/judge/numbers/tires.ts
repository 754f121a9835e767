/** Tires: pressure, load, tread, age. */
import { figure, figureIn, table } from './entry.ts';
import {
  COMMON_PRACTICE,
  CVSA,
  FMCSR_INFLATION,
  FMCSR_TREAD,
  FMVSS_110,
  FMVSS_138,
  FMVSS_138_TABLE,
  LOAD_INDEX_STANDARD,
  ST_CHART,
  TIRE_AGE,
  TIRE_AGE_SIX,
  TIRE_BOOKLET,
  TRAILER_MANUAL,
} from './sources.ts';

const topic = 'tires';

export const TIRES = {
  coldAfter: figure(3, 'h', {
    topic,
    id: 'tires.cold-after',
    label: 'a tire is cold when parked for at least',
    source: TRAILER_MANUAL,
    usedFor: 'whether a pressure can be held against the placard',
  }),
  coldWithin: figure(1, 'mi', {
    topic,
    id: 'tires.cold-within',
    label: 'or driven less than this since it was cold',
    source: TIRE_BOOKLET,
    usedFor: 'whether a pressure can be held against the placard',
  }),
  gauge: figure(0.5, 'psi', {
    topic,
    id: 'tires.gauge',
    label: 'finest step that a gauge is read to',
    source: COMMON_PRACTICE,
    usedFor: 'a pressure closer than this to the placard counts as at the placard',
  }),
  low: figure(10, 'percent', {
    topic,
    id: 'tires.low',
    label: 'under the placard: add air before the next trip',
    source: COMMON_PRACTICE,
    usedFor: 'fix',
  }),
  veryLow: figure(25, 'percent', {
    topic,
    id: 'tires.very-low',
    label: 'under the placard or more: do not tow',
    source: FMVSS_138,
    usedFor: 'hold; a pressure just at the line counts as under it',
  }),
  flat: figure(50, 'percent', {
    topic,
    id: 'tires.flat',
    label: 'of the sidewall maximum or less: flat',
    source: CVSA,
    usedFor: 'hold where the placard is not known',
  }),
  floor: figure(140, 'kPa', {
    topic,
    id: 'tires.floor',
    label: 'lowest pressure at which any road tire is warned about',
    source: FMVSS_138_TABLE,
    usedFor: 'hold where neither placard nor sidewall figure is known',
  }),
  high: figure(10, 'percent', {
    topic,
    id: 'tires.high',
    label: 'over the placard, cold: worth letting down',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  overCap: figure(10, 'percent', {
    topic,
    id: 'tires.over-cap',
    label: 'over the sidewall maximum, cold: do not tow',
    source: COMMON_PRACTICE,
    usedFor: 'hold; any pressure over the maximum is a fix',
  }),
  warmMargin: figure(4, 'psi', {
    topic,
    id: 'tires.warm-margin',
    label: 'a warm tire that is low is filled this much over the cold figure',
    source: TIRE_BOOKLET,
    usedFor: 'advice on a warm tire; read again cold',
  }),
  buildUpLight: figure(5, 'psi', {
    topic,
    id: 'tires.build-up-light',
    label: 'gain of a light tire on the road at 41 to 55 mph',
    source: FMCSR_INFLATION,
    usedFor: 'what a warm reading may be when cold',
  }),
  buildUpHeavy: figure(15, 'psi', {
    topic,
    id: 'tires.build-up-heavy',
    label: 'the same for a tire rated over 4,000 lb',
    source: FMCSR_INFLATION,
    usedFor: 'what a warm reading may be when cold',
  }),
  buildUpSplit: figure(4000, 'lb', {
    topic,
    id: 'tires.build-up-split',
    label: 'rated load up to which a tire is light',
    source: FMCSR_INFLATION,
    usedFor: 'what a warm reading may be when cold',
  }),
  lossPerMonth: figure(2, 'psi', {
    topic,
    id: 'tires.loss-per-month',
    label: 'loss in a month beyond which something leaks',
    source: TIRE_BOOKLET,
    usedFor: 'comparing rounds',
  }),
  sideNote: figure(5, 'percent', {
    topic,
    id: 'tires.side-note',
    label: 'lower than its mate on the axle: noted',
    source: COMMON_PRACTICE,
    usedFor: 'side-to-side comparison',
  }),
  sideSuspect: figure(10, 'percent', {
    topic,
    id: 'tires.side-suspect',
    label: 'lower than its mate on the axle: leak suspected',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  hot: figure(104, 'F', {
    topic,
    id: 'tires.hot-day',
    label: 'air this warm asks for more care with load and speed',
    source: COMMON_PRACTICE,
    usedFor: 'heat and load warning',
  }),
  treadMinimum: figure(2, '32nds', {
    topic,
    id: 'tires.tread-minimum',
    label: 'tread at least',
    source: FMCSR_TREAD,
    usedFor: 'hold below it; trailer tires of any weight',
  }),
  treadLow: figure(3, '32nds', {
    topic,
    id: 'tires.tread-low',
    label: 'tread below this: replace before the next trip',
    source: COMMON_PRACTICE,
    usedFor: 'fix',
  }),
  treadWorn: figure(4, '32nds', {
    topic,
    id: 'tires.tread-worn',
    label: 'tread below this: plan the replacement',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  ageWatch: figure(5, 'year', {
    topic,
    id: 'tires.age-watch',
    label: 'age from which a tire is looked at closely',
    source: TIRE_AGE,
    usedFor: 'watch',
  }),
  ageFix: figure(6, 'year', {
    topic,
    id: 'tires.age-fix',
    label: 'age from which replacing is advised',
    source: TIRE_AGE_SIX,
    usedFor: 'fix',
  }),
  ageHold: figure(10, 'year', {
    topic,
    id: 'tires.age-hold',
    label: 'age from which no tire is towed on',
    source: TIRE_AGE,
    usedFor: 'hold',
  }),
  passengerDerate: figureIn(1.1, '', 1, {
    topic,
    id: 'tires.passenger-derate',
    label: 'a passenger tire on a trailer carries its rating divided by',
    source: FMVSS_110,
    usedFor: 'capacity per axle',
  }),
  noSymbolSpeed: figure(65, 'mph', {
    topic,
    id: 'tires.no-symbol-speed',
    label: 'highest speed of an ST tire without a speed symbol',
    source: ST_CHART,
    usedFor: 'heat and load warning',
  }),
} as const;

/** [load index, kg per tire]. ISO 4000-1. */
export const LOAD_INDEX_ROWS: readonly (readonly [index: number, kg: number])[] = [
  ...rows(60, [250, 257, 265, 272, 280, 290, 300, 307, 315, 325, 335, 345, 355, 365, 375, 387, 400, 412, 425, 437]),
  ...rows(80, [450, 462, 475, 487, 500, 515, 530, 545, 560, 580, 600, 615, 630, 650, 670, 690, 710, 730, 750, 775]),
  ...rows(100, [800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030, 1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360]),
  ...rows(120, [1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, 1900]),
];

function rows(first: number, loads: readonly number[]): (readonly [number, number])[] {
  return loads.map((kg, offset) => [first + offset, kg] as const);
}

/** [size, then pounds at 35, 50, 65 and 80 psi; 0 where the size is not made for it]. */
export const ST_LOAD_ROWS: readonly (readonly [size: string, at35: number, at50: number, at65: number, at80: number])[] = [
  ['ST175/80-13', 1100, 1360, 0, 0],
  ['ST185/80-13', 1200, 1480, 0, 0],
  ['ST205/75-14', 1430, 1760, 2040, 0],
  ['ST205/75-15', 1480, 1820, 2150, 0],
  ['ST225/75-15', 1760, 2150, 2540, 2830],
  ['ST235/80-16', 2090, 2600, 3000, 3420],
];
/** Pressures of the columns of {@link ST_LOAD_ROWS}, psi. */
export const ST_LOAD_PSI = [35, 50, 65, 80] as const;

/** [letter, psi]: usual maximum cold pressure of ST metric tires; the sidewall comes first. */
export const LOAD_RANGE_ROWS: readonly (readonly [letter: string, psi: number])[] = [
  ['B', 35],
  ['C', 50],
  ['D', 65],
  ['E', 80],
  ['F', 95],
  ['G', 110],
];

export const TIRE_TABLES = {
  loadIndex: table({
    topic,
    id: 'tires.load-index',
    label: 'load index',
    columns: ['load index', 'load of one tire (kg)'],
    rows: LOAD_INDEX_ROWS,
    source: LOAD_INDEX_STANDARD,
    usedFor: 'capacity per axle',
  }),
  stLoad: table({
    topic,
    id: 'tires.st-load',
    label: 'load of ST trailer tires by cold pressure (0: not made for it)',
    columns: ['size', 'lb at 35 psi', 'lb at 50 psi', 'lb at 65 psi', 'lb at 80 psi'],
    rows: ST_LOAD_ROWS,
    source: ST_CHART,
    usedFor: 'load left at a lower pressure; the tire maker’s own table comes first',
  }),
  loadRange: table({
    topic,
    id: 'tires.load-range',
    label: 'load range of ST metric tires',
    columns: ['load range', 'usual maximum cold pressure (psi)'],
    rows: LOAD_RANGE_ROWS,
    source: ST_CHART,
    usedFor: 'a plausibility check only; read the sidewall',
  }),
} as const;
