/** Lugs: torque, stages, order, re-torque, clamp load. */
import type { StudSize } from '../../unit/unit.ts';
import { figure, figureIn, table } from './entry.ts';
import {
  COMMON_PRACTICE,
  LUG_MANUALS,
  LUG_STAGES,
  NUT_FACTOR,
  NUT_SCATTER,
  RETORQUE,
  RETORQUE_YEARLY,
  WRENCH_STANDARD,
} from './sources.ts';

const topic = 'lugs';

export const LUGS = {
  movedWatch: figure(0, 'count', {
    topic,
    id: 'lugs.moved-watch',
    label: 'lugs that may turn before the click',
    source: COMMON_PRACTICE,
    usedFor: 'watch when one turned: it was below its torque',
  }),
  movedHold: figure(1, 'count', {
    topic,
    id: 'lugs.moved-hold',
    label: 'more than this on one wheel: wheel off, look at seats, holes and studs',
    source: COMMON_PRACTICE,
    usedFor: 'hold',
  }),
  movedHoldMounted: figure(2, 'count', {
    topic,
    id: 'lugs.moved-hold-mounted',
    label: 'the same within fifty miles of mounting a wheel, while it settles',
    source: COMMON_PRACTICE,
    usedFor: 'hold',
  }),
  retorqueFirst: figure(10, 'mi', {
    topic,
    id: 'lugs.retorque-first',
    label: 'first check after mounting a wheel',
    source: RETORQUE,
    usedFor: 'when lugs are due again',
  }),
  retorqueSecond: figure(25, 'mi', {
    topic,
    id: 'lugs.retorque-second',
    label: 'second check',
    source: RETORQUE,
    usedFor: 'when lugs are due again',
  }),
  retorqueThird: figure(50, 'mi', {
    topic,
    id: 'lugs.retorque-third',
    label: 'third check',
    source: RETORQUE,
    usedFor: 'when lugs are due again',
  }),
  retorqueMonths: figure(3, 'month', {
    topic,
    id: 'lugs.retorque-months',
    label: 'and every',
    source: RETORQUE_YEARLY,
    usedFor: 'when lugs are due again',
  }),
  retorqueMiles: figure(3000, 'mi', {
    topic,
    id: 'lugs.retorque-miles',
    label: 'or every',
    source: RETORQUE_YEARLY,
    usedFor: 'when lugs are due again',
  }),
  wrenchError: figure(4, 'percent', {
    topic,
    id: 'lugs.wrench-error',
    label: 'a sound click wrench may be off by',
    source: WRENCH_STANDARD,
    usedFor: 'clamp load estimate',
  }),
  wrenchLowest: figure(20, 'percent', {
    topic,
    id: 'lugs.wrench-lowest',
    label: 'lowest part of its range a click wrench is good for',
    source: WRENCH_STANDARD,
    usedFor: 'whether a wrench suits the torque',
  }),
  nutDry: figureIn(0.2, '', 1, {
    topic,
    id: 'lugs.nut-dry',
    label: 'nut factor K, clean dry steel',
    source: NUT_FACTOR,
    usedFor: 'clamp load estimate',
  }),
  nutDryLow: figureIn(0.15, '', 1, {
    topic,
    id: 'lugs.nut-dry-low',
    label: 'nut factor K, least to be expected dry',
    source: NUT_SCATTER,
    usedFor: 'upper end of the clamp load estimate',
  }),
  nutDryHigh: figureIn(0.25, '', 1, {
    topic,
    id: 'lugs.nut-dry-high',
    label: 'nut factor K, most to be expected dry',
    source: NUT_FACTOR,
    usedFor: 'lower end of the clamp load estimate',
  }),
  nutOiled: figureIn(0.15, '', 1, {
    topic,
    id: 'lugs.nut-oiled',
    label: 'nut factor K, oiled',
    source: NUT_FACTOR,
    usedFor: 'why studs are torqued clean and dry',
  }),
  nutAntiSeize: figureIn(0.12, '', 1, {
    topic,
    id: 'lugs.nut-anti-seize',
    label: 'nut factor K, anti-seize',
    source: NUT_FACTOR,
    usedFor: 'why studs are torqued clean and dry',
  }),
  engagement: figureIn(1, 'stud diameter', 1, {
    topic,
    id: 'lugs.engagement',
    label: 'a nut is threaded on by at least',
    source: LUG_MANUALS,
    usedFor: 'turns of a nut',
  }),
  stageSplit: figure(80, 'lb-ft', {
    topic,
    id: 'lugs.stage-split',
    label: 'full torque from which the larger stages are used',
    source: LUG_STAGES,
    usedFor: 'tightening in stages',
  }),
} as const;

interface TypicalTorque {
  readonly stud: StudSize;
  readonly low: number;
  readonly high: number;
  readonly note: string;
}

/** Pounds-feet, dry. A 5/8 inch stud has none: its figures run from 140 to 325 by the kind of seat. */
export const TYPICAL_TORQUE_ROWS: readonly TypicalTorque[] = [
  { stud: '1/2', low: 90, high: 120, note: '14 to 16 inch wheels; 50 to 75 on 12 and 13 inch wheels' },
  { stud: '9/16', low: 90, high: 150, note: 'manuals and sellers disagree' },
  { stud: 'M12', low: 75, high: 95, note: 'weak source' },
  { stud: 'M14', low: 85, high: 100, note: 'weak source' },
];

/** Lugs numbered clockwise from the valve stem. */
export const STAR_ORDERS = {
  4: [1, 3, 2, 4],
  5: [1, 3, 5, 2, 4],
  6: [1, 4, 6, 3, 5, 2],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
} as const;

/** First and second pass, lb-ft, for a full torque below and from the split. */
export const STAGE_ROWS = {
  small: [
    [20, 25],
    [35, 40],
  ],
  large: [
    [20, 25],
    [50, 60],
  ],
} as const;

export const LUG_TABLES = {
  typicalTorque: table({
    topic,
    id: 'lugs.typical-torque',
    label: 'usual lug torque by stud, dry; said only where the maker’s figure is not known',
    columns: ['stud', 'from (lb-ft)', 'to (lb-ft)', 'note'],
    rows: TYPICAL_TORQUE_ROWS.map(({ stud, low, high, note }) => [stud, low, high, note]),
    source: LUG_MANUALS,
    usedFor: 'a hint while the maker’s figure is looked up; never a verdict',
  }),
  starOrder: table({
    topic,
    id: 'lugs.star-order',
    label: 'order of tightening, lugs numbered clockwise from the valve stem',
    columns: ['lugs', 'order'],
    rows: Object.entries(STAR_ORDERS).map(([lugs, order]) => [Number(lugs), order.join(', ')]),
    source: COMMON_PRACTICE,
    usedFor: 'the spoken order; the manual’s own figure comes first',
  }),
  stages: table({
    topic,
    id: 'lugs.stages',
    label: 'tightening in stages',
    columns: ['full torque', 'first pass (lb-ft)', 'second pass (lb-ft)'],
    rows: [
      ['under 80 lb-ft', STAGE_ROWS.small[0].join(' to '), STAGE_ROWS.small[1].join(' to ')],
      ['80 lb-ft and over', STAGE_ROWS.large[0].join(' to '), STAGE_ROWS.large[1].join(' to ')],
    ],
    source: LUG_STAGES,
    usedFor: 'the spoken stages',
  }),
} as const;
