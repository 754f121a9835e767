/** Lift cable: slack, tension, wear. */
import { figure, figureIn, table } from './entry.ts';
import { COMMON_PRACTICE, OSHA_1413, OSHA_1413_DIAMETER, OSHA_RIGGING, OSHA_SLINGS, ROPE_LAY } from './sources.ts';

const topic = 'lift';

export const LIFT = {
  wiresPerLay: figure(6, 'count', {
    topic,
    id: 'lift.wires-per-lay',
    label: 'broken wires in one lay that end a running cable',
    source: OSHA_1413,
    usedFor: 'hold',
  }),
  wiresPerStrand: figure(3, 'count', {
    topic,
    id: 'lift.wires-per-strand',
    label: 'broken wires in one strand of one lay that end it',
    source: OSHA_1413,
    usedFor: 'hold: three may be in one strand, so three are enough',
  }),
  slingWires: figure(10, 'count', {
    topic,
    id: 'lift.sling-wires',
    label: 'broken wires in a lay that end a sling, for comparison',
    source: OSHA_SLINGS,
    usedFor: 'shown only',
  }),
  wireShare: figure(10, 'percent', {
    topic,
    id: 'lift.wire-share',
    label: 'of all wires broken over eight diameters',
    source: OSHA_RIGGING,
    usedFor: 'removal by construction of the cable',
  }),
  diameterLoss: figure(5, 'percent', {
    topic,
    id: 'lift.diameter-loss',
    label: 'loss of diameter that ends a cable',
    source: OSHA_1413_DIAMETER,
    usedFor: 'removal by wear',
  }),
  outerWire: figureIn(1 / 3, '', 1, {
    topic,
    id: 'lift.outer-wire',
    label: 'of an outer wire worn away ends a cable',
    source: OSHA_SLINGS,
    usedFor: 'removal by wear',
  }),
  lay: figureIn(7, 'diameters', 1, {
    topic,
    id: 'lift.lay',
    label: 'length of a lay, about',
    source: ROPE_LAY,
    usedFor: 'where to count',
  }),
  tight: figure(0.5, 'in', {
    topic,
    id: 'lift.tight',
    label: 'sideways give of the cable at its middle, pushed with one hand, at least',
    source: COMMON_PRACTICE,
    usedFor: 'hold: a tight cable means that the unit hangs on it and not on its suspension',
  }),
  stiff: figure(1, 'in', {
    topic,
    id: 'lift.stiff',
    label: 'give that is clearly slack',
    source: COMMON_PRACTICE,
    usedFor: 'fix below it',
  }),
  push: figure(20, 'lbf', {
    topic,
    id: 'lift.push',
    label: 'a firm push with one hand, about',
    source: COMMON_PRACTICE,
    usedFor: 'tension estimate',
  }),
  pushSpread: figure(50, 'percent', {
    topic,
    id: 'lift.push-spread',
    label: 'what that push may be off',
    source: COMMON_PRACTICE,
    usedFor: 'tension estimate',
  }),
  readSpread: figure(0.25, 'in', {
    topic,
    id: 'lift.read-spread',
    label: 'what a give read by eye may be off',
    source: COMMON_PRACTICE,
    usedFor: 'tension estimate',
  }),
  sideRatio: figureIn(2, 'times', 1, {
    topic,
    id: 'lift.side-ratio',
    label: 'one side gives this much more than the other',
    source: COMMON_PRACTICE,
    usedFor: 'watch',
  }),
} as const;

/** Wires in a cable by its construction. */
export const ROPE_WIRES = { '7x19': 133, '7x7': 49, '6x19': 114, '6x37': 222 } as const;

export const LIFT_TABLES = {
  wires: table({
    topic,
    id: 'lift.wires',
    label: 'wires in a cable',
    columns: ['construction', 'wires'],
    rows: Object.entries(ROPE_WIRES),
    source: { kind: 'published', text: 'strands times wires, by the name of the construction' },
    usedFor: 'removal by construction of the cable',
  }),
} as const;
