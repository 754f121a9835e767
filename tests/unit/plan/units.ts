/** Units and rounds that the planning tests run over: every template, the demo units, and what templates do not show. */
import type { RoundKind } from '../../../src/domain/checks/check.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

/** 25 November 2026. */
export const AT = Date.UTC(2026, 10, 25, 12);

export const ROUNDS: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];

const fromTemplates = TEMPLATES.map((template) => createUnit(template, { id: template.id, name: template.name, at: AT }));
const plain = fromTemplates[0]!;

const triple: Unit = { ...plain, id: 'triple', axles: 3 };
const oneCable: Unit = {
  ...plain,
  id: 'one-cable',
  lift: { ...plain.lift, cables: 1 },
  tongue: { ...plain.tongue, ballInches: null },
};
const bare: Unit = {
  ...plain,
  id: 'bare',
  lift: { ...plain.lift, kind: 'none', cables: 0, pulleys: 'none', axleStubs: 'none', pinsPerSide: 0 },
  tongue: { ballInches: 2, jack: 'none', chains: false, breakaway: false, connector: '4-way', pivotPins: false },
  brakes: 'none',
  cabin: {
    door: 'house',
    deadbolt: false,
    ramp: false,
    windows: false,
    roofVents: false,
    holeCovers: 0,
    step: false,
    awning: false,
    stabilizers: false,
    spare: false,
    extinguisher: false,
  },
  heat: { heater: 'none', inputW: null, stove: false, airConditioner: false },
  cylinders: [],
  battery: { kind: 'none', capacityAh: null },
  alarms: {
    co: { fitted: false, date: null, dateMeans: null },
    gas: { fitted: false, date: null, dateMeans: null },
    smoke: { fitted: false, date: null, dateMeans: null },
  },
};

export const UNITS_UNDER_TEST: readonly Unit[] = [...fromTemplates, ...DEMO_UNITS, triple, oneCable, bare];

export const CASES: readonly (readonly [name: string, unit: Unit, round: RoundKind])[] = UNITS_UNDER_TEST.flatMap((unit) =>
  ROUNDS.map((round) => [`${unit.id}, ${round}`, unit, round] as const),
);

export function unitNamed(id: string): Unit {
  const found = UNITS_UNDER_TEST.find((unit) => unit.id === id);
  if (!found) throw new RangeError(`no unit under test is called ${id}`);
  return found;
}
