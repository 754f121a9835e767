/** Carbon monoxide and gas alarms. */
import { figure, table } from './entry.ts';
import { ALARM_LIFE, COMMON_PRACTICE, EPA_CO, NIOSH_CO, UL_1484, UL_2034 } from './sources.ts';

const topic = 'alarms';

export const ALARMS = {
  coAir: figure(9, 'ppm', {
    topic,
    id: 'alarms.co-air',
    label: 'carbon monoxide from which to air out, find the cause and not sleep there',
    source: EPA_CO,
    usedFor: 'fix',
  }),
  coOut: figure(35, 'ppm', {
    topic,
    id: 'alarms.co-out',
    label: 'carbon monoxide from which the heater goes off and everyone goes out',
    source: NIOSH_CO,
    usedFor: 'hold',
  }),
  coEmergency: figure(70, 'ppm', {
    topic,
    id: 'alarms.co-emergency',
    label: 'carbon monoxide from which alarms sound, after up to four hours: call for help',
    source: UL_2034,
    usedFor: 'hold',
  }),
  coLife: figure(7, 'year', {
    topic,
    id: 'alarms.co-life',
    label: 'life of a carbon monoxide alarm from the date made',
    source: ALARM_LIFE,
    usedFor: 'fix; the label comes first',
  }),
  coLifeShort: figure(5, 'year', {
    topic,
    id: 'alarms.co-life-short',
    label: 'shortest life printed on carbon monoxide alarms',
    source: ALARM_LIFE,
    usedFor: 'watch: read its label',
  }),
  gasLife: figure(5, 'year', {
    topic,
    id: 'alarms.gas-life',
    label: 'life of a gas alarm from the date made',
    source: ALARM_LIFE,
    usedFor: 'fix; the label comes first',
  }),
  smokeLife: figure(10, 'year', {
    topic,
    id: 'alarms.smoke-life',
    label: 'life of a smoke alarm from the date made',
    source: ALARM_LIFE,
    usedFor: 'fix; the label comes first',
  }),
  soon: figure(3, 'month', {
    topic,
    id: 'alarms.soon',
    label: 'warned of before it runs out',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  gasAlarmAt: figure(25, 'percent', {
    topic,
    id: 'alarms.gas-at',
    label: 'of the lower flammable limit, where a gas alarm sounds at the latest',
    source: UL_1484,
    usedFor: 'what a gas alarm means',
  }),
  propaneLower: figure(2.1, 'percent', {
    topic,
    id: 'alarms.propane-lower',
    label: 'propane in air that can burn, from',
    source: UL_1484,
    usedFor: 'what a gas alarm means',
  }),
} as const;

/** [ppm, shortest and longest minutes until an alarm must sound]. */
export const CO_ALARM_ROWS: readonly (readonly [ppm: number, from: number, to: number])[] = [
  [70, 60, 240],
  [150, 10, 50],
  [400, 4, 15],
];

export const ALARM_TABLES = {
  coTimes: table({
    topic,
    id: 'alarms.co-times',
    label: 'when a carbon monoxide alarm must sound; it must be silent at 30 ppm for 30 days',
    columns: ['carbon monoxide (ppm)', 'not before (min)', 'not after (min)'],
    rows: CO_ALARM_ROWS,
    source: UL_2034,
    usedFor: 'why silence is no proof of clean air',
  }),
} as const;
