/** Heat and gas. */
import { figure, figureIn, table } from './entry.ts';
import { COMMON_PRACTICE, FILL, LP_TABLES, PROPANE_2009, REGULATOR, REQUALIFY } from './sources.ts';

const topic = 'heat and gas';
const BTU_PER_LB = 1055.05585262 / 0.45359237;

export const HEAT = {
  riseFix: figure(3, 'F-diff', {
    topic,
    id: 'heat.rise-fix',
    label: 'rise of the inside temperature in ten minutes, at least',
    source: COMMON_PRACTICE,
    usedFor: 'fix below it: it hardly heats',
  }),
  riseWatch: figure(8, 'F-diff', {
    topic,
    id: 'heat.rise-watch',
    label: 'rise of a sound heater in ten minutes, at least',
    source: COMMON_PRACTICE,
    usedFor: 'watch below it',
  }),
  riseMinutes: figure(10, 'min', {
    topic,
    id: 'heat.rise-minutes',
    label: 'time the two rises above stand for; scaled to the time that passed',
    source: COMMON_PRACTICE,
    usedFor: 'heater test',
  }),
  warmEnough: figure(60, 'F', {
    topic,
    id: 'heat.warm-enough',
    label: 'a cabin this warm needs no further rise to pass',
    source: COMMON_PRACTICE,
    usedFor: 'heater test',
  }),
  wanted: figure(65, 'F', {
    topic,
    id: 'heat.wanted',
    label: 'inside temperature to be held at night',
    source: COMMON_PRACTICE,
    usedFor: 'whether the heater holds tonight',
  }),
  duty: figure(60, 'percent', {
    topic,
    id: 'heat.duty',
    label: 'share of the time a heater burns on a cold night, about',
    source: COMMON_PRACTICE,
    usedFor: 'hours of gas left',
  }),
  fitSpread: figure(0.5, 'F-diff', {
    topic,
    id: 'heat.fit-spread',
    label: 'what a thermometer read by eye may be off',
    source: COMMON_PRACTICE,
    usedFor: 'range of the predicted holding temperature',
  }),
  propaneHeat: figureIn(21_548, 'BTU/lb', BTU_PER_LB, {
    topic,
    id: 'heat.propane-heat',
    label: 'heat in propane, gross',
    source: LP_TABLES,
    usedFor: 'hours of gas left; divided by the heater’s input rating',
  }),
  fill: figure(42, 'percent', {
    topic,
    id: 'heat.fill',
    label: 'a cylinder is filled to this part of its water capacity by weight',
    source: FILL,
    usedFor: 'capacity from the stamped water capacity',
  }),
  fillSlack: figure(1, 'lb', {
    topic,
    id: 'heat.fill-slack',
    label: 'over a full cylinder by more than this: wrong weight or wrong tare',
    source: COMMON_PRACTICE,
    usedFor: 'refusing a weight that cannot be',
  }),
  cylinderLow: figure(25, 'percent', {
    topic,
    id: 'heat.cylinder-low',
    label: 'gas left below this: fill it before the trip',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  regulator: figure(10, 'psi', {
    topic,
    id: 'heat.regulator',
    label: 'tank pressure that a first-stage regulator needs, about',
    source: REGULATOR,
    usedFor: 'when a tank stops feeding in the cold',
  }),
  criticalTemperature: figure(369.89, 'K', {
    topic,
    id: 'heat.propane-critical-temperature',
    label: 'critical temperature of propane',
    source: PROPANE_2009,
    usedFor: 'vapor pressure',
  }),
  criticalPressure: figure(42.512, 'bar', {
    topic,
    id: 'heat.propane-critical-pressure',
    label: 'critical pressure of propane',
    source: PROPANE_2009,
    usedFor: 'vapor pressure',
  }),
  triplePoint: figure(85.525, 'K', {
    topic,
    id: 'heat.propane-triple-point',
    label: 'triple point of propane',
    source: PROPANE_2009,
    usedFor: 'where the vapor pressure equation ends',
  }),
  requalifyNone: figure(12, 'year', {
    topic,
    id: 'heat.requalify-none',
    label: 'cylinder date without a letter: good for',
    source: REQUALIFY,
    usedFor: 'fix when over',
  }),
  requalifyE: figure(5, 'year', {
    topic,
    id: 'heat.requalify-e',
    label: 'cylinder date with the letter E: good for',
    source: REQUALIFY,
    usedFor: 'fix when over',
  }),
  requalifyS: figure(7, 'year', {
    topic,
    id: 'heat.requalify-s',
    label: 'cylinder date with the letter S: good for, the shorter of what sources say',
    source: REQUALIFY,
    usedFor: 'fix when over',
  }),
  requalifySoon: figure(6, 'month', {
    topic,
    id: 'heat.requalify-soon',
    label: 'warned of before it runs out',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
} as const;

/** [coefficient, exponent of (1 - T / Tc)] of the 2009 saturation equation. */
export const PROPANE_TERMS: readonly (readonly [coefficient: number, exponent: number])[] = [
  [-6.7722, 1],
  [1.6938, 1.5],
  [-1.3341, 2.2],
  [-3.1876, 4.8],
  [0.94937, 6.2],
];

export const HEAT_TABLES = {
  propaneTerms: table({
    topic,
    id: 'heat.propane-terms',
    label: 'vapor pressure of pure propane: ln(P/Pc) = (Tc/T) × sum of coefficient × (1 − T/Tc) to the exponent',
    columns: ['coefficient', 'exponent'],
    rows: PROPANE_TERMS,
    source: PROPANE_2009,
    usedFor: 'tank pressure in the cold; fuel grade reads up to 15 percent higher',
  }),
} as const;
