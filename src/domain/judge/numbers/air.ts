/** The air around: its pressure by height, and the temperature at which pressures are compared. */
import { figure, figureIn } from './entry.ts';
import { ATMOSPHERE_1976, COMMON_PRACTICE } from './sources.ts';

const topic = 'air';

export const AIR = {
  seaLevel: figure(101.325, 'kPa', {
    topic,
    id: 'air.sea-level',
    label: 'air pressure at sea level',
    source: ATMOSPHERE_1976,
    usedFor: 'gauge pressures at other heights and temperatures',
  }),
  standardTemperature: figure(288.15, 'K', {
    topic,
    id: 'air.standard-temperature',
    label: 'standard temperature at sea level',
    source: ATMOSPHERE_1976,
    usedFor: 'air pressure by height',
  }),
  lapse: figureIn(6.5, 'K per km', 0.001, {
    topic,
    id: 'air.lapse',
    label: 'colder with height by',
    source: ATMOSPHERE_1976,
    usedFor: 'air pressure by height',
  }),
  exponent: figureIn(5.25588, '', 1, {
    topic,
    id: 'air.exponent',
    label: 'exponent of the pressure formula',
    source: ATMOSPHERE_1976,
    usedFor: 'air pressure by height',
  }),
  compareAt: figure(20, 'C', {
    topic,
    id: 'air.compare-at',
    label: 'temperature at which tire pressures of different days are compared',
    source: COMMON_PRACTICE,
    usedFor: 'comparing rounds',
  }),
} as const;
