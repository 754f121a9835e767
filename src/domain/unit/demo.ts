/** Three made-up units of an invented household and its neighbors. No real unit, maker or place; shown as demo data. */
import { toSI } from '../quantity/units.ts';
import { UNIT_SCHEMA, type Unit } from './unit.ts';

/** 1 October 2026, when the demo profiles were "saved". */
const SAVED_AT = Date.UTC(2026, 9, 1);

const psi = (value: number) => toSI(value, 'psi');
const lb = (value: number) => toSI(value, 'lb');
const feet = (value: number) => toSI(value, 'ft');
const inches = (value: number) => toSI(value, 'in');
const lbFt = (value: number) => toSI(value, 'lb-ft');
const btuPerHour = (value: number) => toSI(value, 'BTU/h');

const identity = {
  schema: UNIT_SCHEMA,
  archived: false,
  demo: true,
  createdAt: SAVED_AT,
  updatedAt: SAVED_AT,
  revision: 1,
  vin: null,
} as const;

/** Single axle, hand-crank cable, greasable stubs. */
const HERON: Unit = {
  ...identity,
  id: 'demo-heron',
  name: 'Heron',
  year: 2019,
  axles: 1,
  tires: {
    size: 'ST205/75R15',
    loadRange: 'E',
    loadIndex: 111,
    placardColdPa: psi(65),
    sidewallMaxPa: psi(80),
    maxLoadKg: lb(2403),
  },
  wheels: {
    lugs: 5,
    stud: '1/2',
    torqueNm: lbFt(100),
    torqueSource: 'maker',
    rim: 'steel',
    bearings: 'greased',
    dotCodes: { left: '1423', right: '1423' },
  },
  lift: {
    kind: 'hand-crank-cable',
    cables: 2,
    cableDiameterM: inches(0.25),
    cableConstruction: '7x19',
    pulleys: 'greasable',
    axleStubs: 'greasable',
    pinsPerSide: 1,
  },
  tongue: { ballInches: 2, jack: 'swivel', chains: true, breakaway: true, connector: '7-way', pivotPins: false },
  brakes: 'electric',
  cabin: {
    door: 'house',
    deadbolt: true,
    ramp: false,
    windows: true,
    roofVents: false,
    holeCovers: 5,
    step: false,
    awning: false,
    stabilizers: false,
    spare: true,
    extinguisher: true,
  },
  heat: { heater: 'wall-heater', inputW: btuPerHour(12_000), stove: true, airConditioner: false },
  cylinders: [{ tareKg: lb(17), capacityKg: lb(20), date: '2021-05', dateSuffix: null }],
  battery: { kind: 'flooded', capacityAh: 80 },
  alarms: {
    co: { fitted: true, date: '2028-03', dateMeans: 'replace-by', display: false },
    gas: { fitted: true, date: '2023-08', dateMeans: 'made' },
    smoke: { fitted: true, date: '2022-08', dateMeans: 'made' },
  },
  weights: { gvwrKg: lb(3500), gawrKg: lb(3500), emptyKg: lb(2450) },
  widthM: feet(8),
  lengthM: feet(18),
  homeElevationM: feet(1250),
};

/** Tandem, hydraulic lift without cables, awning, ramp door. */
const LANTERN: Unit = {
  ...identity,
  id: 'demo-lantern',
  name: 'Lantern',
  year: 2022,
  axles: 2,
  tires: {
    size: 'ST225/75R15',
    loadRange: 'E',
    loadIndex: 117,
    placardColdPa: psi(80),
    sidewallMaxPa: psi(80),
    maxLoadKg: lb(2830),
  },
  wheels: {
    lugs: 6,
    stud: '1/2',
    torqueNm: lbFt(110),
    torqueSource: 'maker',
    rim: 'aluminum',
    bearings: 'greased',
    dotCodes: { 'left-front': '3623', 'right-front': '3623', 'left-rear': '3623', 'right-rear': '0924' },
  },
  lift: {
    kind: 'hydraulic',
    cables: 0,
    cableDiameterM: null,
    cableConstruction: null,
    pulleys: 'none',
    axleStubs: 'greasable',
    pinsPerSide: 2,
  },
  tongue: { ballInches: 2.3125, jack: 'fixed', chains: true, breakaway: true, connector: '7-way', pivotPins: true },
  brakes: 'electric',
  cabin: {
    door: 'rv',
    deadbolt: true,
    ramp: true,
    windows: true,
    roofVents: true,
    holeCovers: 8,
    step: true,
    awning: true,
    stabilizers: true,
    spare: true,
    extinguisher: true,
  },
  heat: { heater: 'furnace', inputW: btuPerHour(20_000), stove: true, airConditioner: true, readFromOutside: true },
  cylinders: [
    { tareKg: lb(18.4), capacityKg: lb(20), date: '2022-02', dateSuffix: null },
    { tareKg: lb(18.2), capacityKg: lb(20), date: '2022-02', dateSuffix: null },
  ],
  battery: { kind: 'lifepo4', capacityAh: 100 },
  alarms: {
    co: { fitted: true, date: '2029-01', dateMeans: 'replace-by', display: true },
    gas: { fitted: true, date: '2022-01', dateMeans: 'made' },
    smoke: { fitted: true, date: '2022-01', dateMeans: 'made' },
  },
  weights: { gvwrKg: lb(9800), gawrKg: lb(5200), emptyKg: lb(7300) },
  widthM: feet(8.5),
  lengthM: feet(28),
  homeElevationM: feet(1250),
};

/** Single axle, electric winch, sealed axle stubs. */
const KESTREL: Unit = {
  ...identity,
  id: 'demo-kestrel',
  name: 'Kestrel',
  year: 2021,
  axles: 1,
  tires: {
    size: 'ST235/80R16',
    loadRange: 'E',
    loadIndex: 123,
    placardColdPa: psi(75),
    sidewallMaxPa: psi(80),
    maxLoadKg: lb(3420),
  },
  wheels: {
    lugs: 6,
    stud: '9/16',
    torqueNm: lbFt(120),
    torqueSource: 'maker',
    rim: 'steel',
    bearings: 'oil-bath',
    dotCodes: { left: '2821', right: '2821' },
  },
  lift: {
    kind: 'electric-winch-cable',
    cables: 2,
    cableDiameterM: inches(0.3125),
    cableConstruction: '7x19',
    pulleys: 'greasable',
    axleStubs: 'sealed',
    pinsPerSide: 1,
  },
  tongue: { ballInches: 2.3125, jack: 'swivel', chains: true, breakaway: true, connector: '7-way', pivotPins: false },
  brakes: 'electric',
  cabin: {
    door: 'house',
    deadbolt: true,
    ramp: false,
    windows: true,
    roofVents: true,
    holeCovers: 6,
    step: true,
    awning: false,
    stabilizers: false,
    spare: true,
    extinguisher: true,
  },
  heat: { heater: 'furnace', inputW: btuPerHour(20_000), stove: true, airConditioner: false },
  cylinders: [
    { tareKg: lb(17.1), capacityKg: lb(20), date: '2020-11', dateSuffix: null },
    { tareKg: lb(16.8), capacityKg: lb(20), date: '2020-11', dateSuffix: null },
  ],
  battery: { kind: 'agm', capacityAh: 100 },
  alarms: {
    co: { fitted: true, date: '2027-06', dateMeans: 'replace-by', display: false },
    gas: { fitted: true, date: '2022-06', dateMeans: 'made' },
    smoke: { fitted: true, date: '2021-06', dateMeans: 'made' },
  },
  weights: { gvwrKg: lb(6800), gawrKg: lb(6000), emptyKg: lb(4900) },
  widthM: feet(8),
  lengthM: feet(21),
  homeElevationM: feet(1250),
};

export const DEMO_UNITS: readonly Unit[] = [HERON, LANTERN, KESTREL];
