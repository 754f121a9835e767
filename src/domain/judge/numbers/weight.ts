/** Towing weight. */
import { figure, figureIn } from './entry.ts';
import { CHAIN_GUIDANCE, CHAIN_STATE, COMMON_PRACTICE, DENSITIES, FMVSS_110, LP_TABLES, TONGUE_BAND } from './sources.ts';

const topic = 'towing weight';
/** kg per cubic metre in one pound per US gallon. */
const LB_PER_GAL = 0.45359237 / 0.003785411784;

export const WEIGHT = {
  tongueLow: figure(10, 'percent', {
    topic,
    id: 'weight.tongue-low',
    label: 'tongue weight of the loaded trailer, at least',
    source: TONGUE_BAND,
    usedFor: 'hold below it: it sways',
  }),
  tongueHigh: figure(15, 'percent', {
    topic,
    id: 'weight.tongue-high',
    label: 'tongue weight of the loaded trailer, at most',
    source: TONGUE_BAND,
    usedFor: 'fix above it: it overloads hitch and rear axle',
  }),
  near: figure(95, 'percent', {
    topic,
    id: 'weight.near',
    label: 'of a rating from which it is worth a scale',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
  chainTotal: figureIn(1, 'times the gross weight', 1, {
    topic,
    id: 'weight.chain-total',
    label: 'breaking strength of both chains together, at least',
    source: CHAIN_GUIDANCE,
    usedFor: 'chains',
  }),
  chainEach: figureIn(1, 'times the gross weight', 1, {
    topic,
    id: 'weight.chain-each',
    label: 'stricter states: each chain, at least',
    source: CHAIN_STATE,
    usedFor: 'chains',
  }),
  tiresCarry: figureIn(1, 'times the axle rating', 1, {
    topic,
    id: 'weight.tires-carry',
    label: 'tires of an axle together carry at least',
    source: FMVSS_110,
    usedFor: 'tires against axle rating',
  }),
  water: figureIn(8.34, 'lb/gal', LB_PER_GAL, {
    topic,
    id: 'weight.water',
    label: 'water weighs',
    source: DENSITIES,
    usedFor: 'loaded items',
  }),
  gasoline: figureIn(6.1, 'lb/gal', LB_PER_GAL, {
    topic,
    id: 'weight.gasoline',
    label: 'gasoline weighs',
    source: DENSITIES,
    usedFor: 'loaded items',
  }),
  diesel: figureIn(7.1, 'lb/gal', LB_PER_GAL, {
    topic,
    id: 'weight.diesel',
    label: 'diesel fuel weighs',
    source: DENSITIES,
    usedFor: 'loaded items',
  }),
  propane: figureIn(4.2, 'lb/gal', LB_PER_GAL, {
    topic,
    id: 'weight.propane',
    label: 'propane weighs',
    source: LP_TABLES,
    usedFor: 'loaded items, gas left in gallons',
  }),
} as const;
