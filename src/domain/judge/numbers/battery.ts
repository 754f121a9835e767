/** Batteries at rest. */
import { figure, table } from './entry.ts';
import {
  BATTERY_COLD,
  BATTERY_FREEZE,
  BATTERY_TABLE,
  BREAKAWAY_BATTERY,
  BREAKAWAY_RULE,
  COMMON_PRACTICE,
  LITHIUM,
} from './sources.ts';

const topic = 'battery';

export const BATTERY = {
  lowest: figure(9, 'V', {
    topic,
    id: 'battery.lowest',
    label: 'a 12 volt battery below this is dead, or the meter does not touch it',
    source: COMMON_PRACTICE,
    usedFor: 'fix; for the breakaway battery, hold',
  }),
  highest: figure(15.5, 'V', {
    topic,
    id: 'battery.highest',
    label: 'a 12 volt battery above this: look at the meter again',
    source: COMMON_PRACTICE,
    usedFor: 'refusing a voltage that cannot be',
  }),
  leadCharging: figure(13, 'V', {
    topic,
    id: 'battery.lead-charging',
    label: 'a lead battery above this is on a charger or just off it',
    source: COMMON_PRACTICE,
    usedFor: 'a voltage that is not at rest',
  }),
  lithiumCharging: figure(13.7, 'V', {
    topic,
    id: 'battery.lithium-charging',
    label: 'a lithium iron phosphate battery above this is on a charger or just off it',
    source: LITHIUM,
    usedFor: 'a voltage that is not at rest',
  }),
  watchCharge: figure(75, 'percent', {
    topic,
    id: 'battery.watch-charge',
    label: 'charge of a lead battery below this: charge it soon',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  fixCharge: figure(50, 'percent', {
    topic,
    id: 'battery.fix-charge',
    label: 'charge of a lead battery below this: charge it before the trip',
    source: COMMON_PRACTICE,
    usedFor: 'fix; lead wears out below half',
  }),
  lithiumWatch: figure(25, 'percent', {
    topic,
    id: 'battery.lithium-watch',
    label: 'charge of a lithium battery below this: charge it soon',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  lithiumFix: figure(15, 'percent', {
    topic,
    id: 'battery.lithium-fix',
    label: 'charge of a lithium battery below this: charge it before the trip',
    source: COMMON_PRACTICE,
    usedFor: 'fix',
  }),
  unknownFix: figure(12, 'V', {
    topic,
    id: 'battery.unknown-fix',
    label: 'a battery of unknown kind below this is low whatever it is',
    source: BATTERY_TABLE,
    usedFor: 'fix',
  }),
  lithiumChargeFrom: figure(32, 'F', {
    topic,
    id: 'battery.lithium-charge-from',
    label: 'a lithium battery is charged from this temperature up',
    source: LITHIUM,
    usedFor: 'warning in the cold',
  }),
  leadUsable: figure(50, 'percent', {
    topic,
    id: 'battery.lead-usable',
    label: 'part of a lead battery to be used',
    source: COMMON_PRACTICE,
    usedFor: 'fan hours',
  }),
  lithiumUsable: figure(80, 'percent', {
    topic,
    id: 'battery.lithium-usable',
    label: 'part of a lithium battery to be used',
    source: LITHIUM,
    usedFor: 'fan hours',
  }),
  fan: figure(3.4, 'A', {
    topic,
    id: 'battery.fan',
    label: 'current of a furnace fan, about',
    source: COMMON_PRACTICE,
    usedFor: 'fan hours',
  }),
  standby: figure(0.3, 'A', {
    topic,
    id: 'battery.standby',
    label: 'current of alarms and controls, about',
    source: COMMON_PRACTICE,
    usedFor: 'fan hours',
  }),
  night: figure(12, 'h', {
    topic,
    id: 'battery.night',
    label: 'a night',
    source: COMMON_PRACTICE,
    usedFor: 'whether the battery lasts the night',
  }),
  breakawayFix: figure(12.4, 'V', {
    topic,
    id: 'battery.breakaway-fix',
    label: 'breakaway battery at rest, at least',
    source: BREAKAWAY_BATTERY,
    usedFor: 'fix below it: about three quarters full',
  }),
  breakawayHold: figure(12.2, 'V', {
    topic,
    id: 'battery.breakaway-hold',
    label: 'breakaway battery at rest below this may not hold the brakes',
    source: BREAKAWAY_BATTERY,
    usedFor: 'hold: about half full',
  }),
  breakawayMinutes: figure(15, 'min', {
    topic,
    id: 'battery.breakaway-minutes',
    label: 'time the breakaway battery holds the brakes',
    source: BREAKAWAY_RULE,
    usedFor: 'charge that a breakaway needs',
  }),
  brakePerWheel: figure(3.25, 'A', {
    topic,
    id: 'battery.brake-per-wheel',
    label: 'current of an electric brake, each wheel, about',
    source: COMMON_PRACTICE,
    usedFor: 'charge that a breakaway needs',
  }),
} as const;

type ChargeRow = readonly [percent: number, volts: number];
/** Empty first. */
export const REST_ROWS: Readonly<Record<'flooded' | 'agm' | 'lifepo4', readonly ChargeRow[]>> = {
  flooded: [
    [0, 11.89],
    [25, 12.06],
    [50, 12.24],
    [75, 12.45],
    [100, 12.65],
  ],
  agm: [
    [0, 11.8],
    [25, 12],
    [50, 12.3],
    [75, 12.6],
    [100, 12.85],
  ],
  lifepo4: [
    [0, 12],
    [25, 12.9],
    [50, 13.1],
    [75, 13.25],
    [100, 13.4],
  ],
};

/** [charge, %; specific gravity; freezes at, °F], for lead. Empty first. */
export const FREEZE_ROWS: readonly (readonly [percent: number, gravity: number, freezesF: number])[] = [
  [0, 1.12, 17],
  [25, 1.155, 5],
  [50, 1.19, -10],
  [75, 1.225, -35],
  [100, 1.265, -71],
];

/** [°F, part of the capacity at 77 °F], for lead. Coldest first. */
export const COLD_CAPACITY_ROWS: readonly (readonly [tempF: number, share: number])[] = [
  [-20, 0.47],
  [0, 0.62],
  [32, 0.8],
  [77, 1],
];

export const BATTERY_TABLES = {
  rest: table({
    topic,
    id: 'battery.rest',
    label: 'rest voltage and charge at 77 °F',
    columns: ['charge (percent)', 'flooded (V)', 'AGM (V)', 'lithium iron phosphate (V)'],
    rows: REST_ROWS.flooded.map(([percent, volts], index) => [
      percent,
      volts,
      REST_ROWS.agm[index]?.[1] ?? '',
      REST_ROWS.lifepo4[index]?.[1] ?? '',
    ]),
    source: BATTERY_TABLE,
    usedFor: 'about how full it is, to the nearest tenth',
  }),
  freeze: table({
    topic,
    id: 'battery.freeze',
    label: 'when a lead battery freezes',
    columns: ['charge (percent)', 'specific gravity', 'freezes at (°F)'],
    rows: FREEZE_ROWS,
    source: BATTERY_FREEZE,
    usedFor: 'freezing risk',
  }),
  cold: table({
    topic,
    id: 'battery.cold',
    label: 'what a lead battery gives in the cold',
    columns: ['temperature (°F)', 'part of its capacity'],
    rows: COLD_CAPACITY_ROWS,
    source: BATTERY_COLD,
    usedFor: 'fan hours',
  }),
} as const;
