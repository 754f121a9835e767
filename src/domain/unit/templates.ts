/**
 * Starting points for a profile: what such units have in common. A maker's figure (pressure, torque, weight, date) is
 * never part of a template: it is read off the unit, or it stays unknown and the round says so.
 */
import type { Unit } from './unit.ts';

/** Everything of a unit that does not say which one it is. */
export type UnitBody = Omit<Unit, 'schema' | 'id' | 'name' | 'archived' | 'demo' | 'createdAt' | 'updatedAt' | 'revision'>;

export interface UnitTemplate {
  readonly id: string;
  readonly name: string;
  /** One sentence to know one's own unit by. */
  readonly sentence: string;
  readonly body: UnitBody;
}

const UNKNOWN_ALARM = { fitted: null, date: null, dateMeans: null } as const;
const CYLINDER = { tareKg: null, capacityKg: null, date: null, dateSuffix: null } as const;

const common: UnitBody = {
  year: null,
  vin: null,
  axles: 1,
  tires: { size: null, loadRange: null, loadIndex: null, placardColdPa: null, sidewallMaxPa: null, maxLoadKg: null },
  wheels: { lugs: null, stud: null, torqueNm: null, torqueSource: null, rim: null, bearings: null, dotCodes: {} },
  lift: {
    kind: 'hand-crank-cable',
    cables: 2,
    cableDiameterM: null,
    cableConstruction: null,
    pulleys: 'greasable',
    axleStubs: null,
    pinsPerSide: 1,
  },
  tongue: { ballInches: 2, jack: 'swivel', chains: true, breakaway: true, connector: '7-way', pivotPins: false },
  brakes: 'electric',
  cabin: {
    door: 'house',
    deadbolt: true,
    ramp: false,
    windows: true,
    roofVents: true,
    holeCovers: 6,
    step: false,
    awning: false,
    stabilizers: false,
    spare: null,
    extinguisher: null,
  },
  heat: { heater: 'furnace', inputW: null, stove: true, airConditioner: false },
  cylinders: [CYLINDER],
  battery: { kind: null, capacityAh: null },
  alarms: { co: UNKNOWN_ALARM, gas: UNKNOWN_ALARM, smoke: UNKNOWN_ALARM },
  weights: { gvwrKg: null, gawrKg: null, emptyKg: null },
  widthM: 2.4384,
  lengthM: null,
  homeElevationM: null,
};

export const TEMPLATES: readonly UnitTemplate[] = [
  {
    id: 'single-crank',
    name: 'Single axle, hand crank',
    sentence: 'One wheel each side, lowered and raised by a hand-cranked winch with cables.',
    body: {
      ...common,
      heat: { ...common.heat, heater: 'wall-heater' },
      cabin: { ...common.cabin, roofVents: null },
    },
  },
  {
    id: 'single-electric',
    name: 'Single axle, electric winch',
    sentence: 'One wheel each side, lowered and raised by an electric winch with cables.',
    body: { ...common, lift: { ...common.lift, kind: 'electric-winch-cable' } },
  },
  {
    id: 'tandem-electric',
    name: 'Tandem axle, electric winch',
    sentence: 'Two wheels each side, lowered and raised by an electric winch with cables.',
    body: {
      ...common,
      axles: 2,
      lift: { ...common.lift, kind: 'electric-winch-cable' },
      tongue: { ...common.tongue, ballInches: 2.3125 },
      cabin: { ...common.cabin, holeCovers: 8, ramp: true },
      cylinders: [CYLINDER, CYLINDER],
    },
  },
  {
    id: 'tandem-hydraulic',
    name: 'Tandem axle, hydraulic',
    sentence: 'Two wheels each side, lowered and raised by hydraulic cylinders, no lift cables.',
    body: {
      ...common,
      axles: 2,
      lift: { ...common.lift, kind: 'hydraulic', cables: 0, pulleys: 'none' },
      tongue: { ...common.tongue, ballInches: 2.3125 },
      cabin: {
        ...common.cabin,
        door: 'rv',
        holeCovers: 8,
        ramp: true,
        step: true,
        awning: true,
        stabilizers: true,
        spare: true,
      },
      heat: { ...common.heat, airConditioner: true },
      cylinders: [CYLINDER, CYLINDER],
    },
  },
  {
    id: 'single-no-lift',
    name: 'Trailer without a lift',
    sentence: 'An ice house that stays on its wheels, or one that is jacked down by hand.',
    body: {
      ...common,
      lift: {
        kind: 'none',
        cables: 0,
        cableDiameterM: null,
        cableConstruction: null,
        pulleys: 'none',
        axleStubs: 'none',
        pinsPerSide: 0,
      },
    },
  },
];
