/** Units, rounds and entries of the invented demo world, as small as the record needs them. */
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import type { Entry, How, Round, UnitEvent } from '../../../src/domain/round/entry.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

const T0 = Date.UTC(2026, 0, 10, 14, 0, 0);

export function givenUnit(change: Partial<Unit> = {}): Unit {
  const alarm = { fitted: true, date: '2030-05', dateMeans: 'replace-by' } as const;
  return {
    schema: 1,
    id: 'heron',
    name: 'Heron',
    year: 2019,
    vin: null,
    archived: false,
    demo: true,
    createdAt: T0,
    updatedAt: T0,
    revision: 1,
    axles: 1,
    tires: {
      size: 'ST205/75R15',
      loadRange: 'C',
      loadIndex: null,
      placardColdPa: 344_737.9,
      sidewallMaxPa: null,
      maxLoadKg: null,
    },
    wheels: {
      lugs: 5,
      stud: '1/2',
      torqueNm: 122,
      torqueSource: 'maker',
      rim: 'steel',
      bearings: 'greased',
      dotCodes: { left: '2319' },
    },
    lift: {
      kind: 'hand-crank-cable',
      cables: 2,
      cableDiameterM: 0.00635,
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
      roofVents: true,
      holeCovers: 4,
      step: true,
      awning: false,
      stabilizers: false,
      spare: true,
      extinguisher: true,
    },
    heat: { heater: 'furnace', inputW: 5275, stove: true, airConditioner: false },
    cylinders: [{ tareKg: 7.7, capacityKg: 9.07, date: '2020-03', dateSuffix: null }],
    battery: { kind: 'agm', capacityAh: 100 },
    alarms: { co: alarm, gas: alarm, smoke: alarm },
    weights: { gvwrKg: 1588, gawrKg: 1588, emptyKg: null },
    widthM: 2.4,
    lengthM: 5.5,
    homeElevationM: 380,
    ...change,
  };
}

const check: PlannedCheck = {
  key: 'tire-pressure@left',
  check: 'tire-pressure',
  position: 'left',
  station: 'wheel@left',
  names: ['pressure'],
  expects: {
    kind: 'reading',
    quantity: 'tire-pressure',
    unit: 'psi',
    otherUnits: ['kPa'],
    min: 0,
    max: 120,
    step: 0.5,
    forms: ['whole', 'half'],
    usual: { min: 30, max: 70 },
  },
  lines: {
    name: 'tire pressure',
    ask: 'Left tire. What is the cold pressure?',
    askTerse: 'Pressure, left.',
    hint: 'Say the pressure, like "fifty".',
    why: 'A soft tire runs hot and comes apart.',
    mend: 'Bring it to the placard.',
    caution: null,
  },
  judge: { rule: 'tire-pressure', worst: 'hold', limits: [], params: {} },
  timed: null,
  patienceS: 20,
};

export function givenRound(id = 'round-1', change: Partial<Round> = {}): Round {
  return {
    schema: 1,
    id,
    unit: 'heron',
    startedAt: T0,
    demo: true,
    plan: {
      schema: 1,
      round: 'before-towing',
      unit: givenUnit(),
      createdAt: T0,
      stations: [{ key: 'wheel@left', kind: 'wheel', position: 'left', name: 'Left wheel.', checks: [check.key] }],
      checks: [check],
      unknowns: [],
      walkM: 12,
      demo: true,
    },
    ...change,
  };
}

export const spoken = (change: Partial<How> = {}): How => ({
  via: 'voice',
  provider: 'built-in',
  by: 'first',
  transcript: 'sixty two',
  alternatives: [{ transcript: 'sixty two', confidence: 0.9 }],
  confidence: 0.9,
  because: ['heard clearly'],
  clip: null,
  ...change,
});

const place = (round: string, seq: number) => ({ id: `${round}/${seq}`, round, seq, at: T0 + seq * 1000 });

export const begun = (round = 'round-1'): Entry => ({ ...place(round, 0), kind: 'begun', people: 1 });

export function answered(round: string, seq: number, psi = 50, how: Partial<How> = {}): Entry {
  return {
    ...place(round, seq),
    kind: 'answered',
    key: check.key,
    answer: { kind: 'reading', si: psi * 6894.757293168361, said: { value: psi, unit: 'psi' }, hedged: false },
    outcome: 'ok',
    how: spoken(how),
    supersedes: null,
  };
}

export function noted(round: string, seq: number, change: { clip?: string | null; photo?: string | null } = {}): Entry {
  return {
    ...place(round, seq),
    kind: 'noted',
    key: null,
    text: null,
    clip: null,
    photo: null,
    finding: false,
    how: spoken(),
    ...change,
  };
}

export const completed = (round: string, seq: number): Entry => ({ ...place(round, seq), kind: 'completed' });

export const mended = (id: string, unit = 'heron', at = T0): UnitEvent => ({
  id,
  unit,
  at,
  kind: 'mended',
  finding: 'round-1/1',
  what: 'valve core',
  who: null,
  cost: null,
});

export const bytes = (...values: number[]): ArrayBuffer => new Uint8Array(values).buffer;
