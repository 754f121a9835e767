/** Rounds made by hand for tests: a plan of the named checks, and entries that answer them. */

import type { Position } from '../../../src/domain/checks/expects.ts';
import type { JudgeSpec, Limit, Outcome, RuleId } from '../../../src/domain/checks/outcome.ts';
import type { RoundRecord } from '../../../src/domain/history/series.ts';
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import type { UnitId } from '../../../src/domain/quantity/units.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import type { Answer, Entry, How, Round } from '../../../src/domain/round/entry.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

export const DAY = 86_400_000;

export const BY_BUTTON: How = {
  via: 'button',
  provider: null,
  by: 'first',
  transcript: null,
  alternatives: [],
  confidence: null,
  because: [],
  clip: null,
};

const NO_ALARM = { fitted: null, date: null, dateMeans: null } as const;

export function givenUnit(changes: Partial<Unit> = {}): Unit {
  return {
    schema: 1,
    id: 'unit-1',
    name: 'Test unit',
    year: 2020,
    vin: null,
    archived: false,
    demo: false,
    createdAt: 0,
    updatedAt: 0,
    revision: 0,
    axles: 1,
    tires: {
      size: 'ST205/75R15',
      loadRange: 'D',
      loadIndex: null,
      placardColdPa: toSI(65, 'psi'),
      sidewallMaxPa: null,
      maxLoadKg: null,
    },
    wheels: { lugs: 5, stud: '1/2', torqueNm: null, torqueSource: null, rim: 'steel', bearings: null, dotCodes: {} },
    lift: {
      kind: 'hand-crank-cable',
      cables: 2,
      cableDiameterM: null,
      cableConstruction: null,
      pulleys: null,
      axleStubs: null,
      pinsPerSide: 1,
    },
    tongue: { ballInches: null, jack: null, chains: null, breakaway: null, connector: null, pivotPins: null },
    brakes: null,
    cabin: {
      door: null,
      deadbolt: null,
      ramp: false,
      windows: null,
      roofVents: null,
      holeCovers: null,
      step: false,
      awning: false,
      stabilizers: false,
      spare: null,
      extinguisher: null,
    },
    heat: { heater: 'furnace', inputW: null, stove: null, airConditioner: null },
    cylinders: [],
    battery: { kind: 'flooded', capacityAh: null },
    alarms: { co: NO_ALARM, gas: NO_ALARM, smoke: NO_ALARM },
    weights: { gvwrKg: null, gawrKg: null, emptyKg: null },
    widthM: null,
    lengthM: null,
    homeElevationM: 0,
    ...changes,
  };
}

export interface GivenCheck {
  readonly check: string;
  readonly position?: Position | null;
  readonly unit?: UnitId;
  readonly step?: number;
  readonly rule?: RuleId;
  readonly limits?: readonly Limit[];
  readonly params?: JudgeSpec['params'];
  readonly state?: boolean;
  readonly count?: boolean;
}

export function plannedCheck(given: GivenCheck): PlannedCheck {
  const position = given.position ?? null;
  const unit = given.unit ?? 'psi';
  return {
    key: position === null ? given.check : `${given.check}@${position}`,
    check: given.check,
    position,
    station: 'all',
    names: [given.check],
    expects: given.state
      ? { kind: 'state', ok: ['good'], problem: ['bad'], yesMeans: 'ok' }
      : given.count
        ? { kind: 'count', quantity: given.check, noun: ['lug', 'lugs'], min: 0, max: 8, nonePhrases: [], allPhrases: [] }
        : {
            kind: 'reading',
            quantity: given.check,
            unit,
            otherUnits: [],
            min: -100,
            max: 300,
            step: given.step ?? 1,
            forms: ['whole'],
            usual: { min: 0, max: 100 },
          },
    lines: {
      name: given.check.replaceAll('-', ' '),
      ask: '',
      askTerse: '',
      hint: '',
      why: '',
      mend: `Mend the ${given.check.replaceAll('-', ' ')}.`,
      caution: null,
    },
    judge: { rule: given.rule ?? 'limits', worst: 'hold', limits: given.limits ?? [], params: given.params ?? {} },
    timed: null,
    patienceS: 10,
  };
}

export const OUTSIDE: GivenCheck = { check: 'outside-temperature', unit: 'F', rule: 'outside-temperature' };

let made = 0;

export interface GivenAnswer {
  readonly key: string;
  readonly value: number;
  readonly outcome?: Outcome;
}

/** A round at `at` with these checks answered in order, one minute apart, and then completed. */
export function givenRound(options: {
  readonly id?: string;
  readonly at: number;
  readonly unit?: Unit;
  readonly checks: readonly GivenCheck[];
  readonly answers: readonly GivenAnswer[];
  readonly demo?: boolean;
}): RoundRecord {
  const unit = options.unit ?? givenUnit();
  const id = options.id ?? `round-${made++}`;
  const checks = options.checks.map(plannedCheck);
  const demo = options.demo ?? false;
  const round: Round = {
    schema: 1,
    id,
    unit: unit.id,
    startedAt: options.at,
    plan: {
      schema: 1,
      round: 'before-towing',
      unit,
      createdAt: options.at,
      stations: [{ key: 'all', kind: 'inside', position: null, name: 'Inside.', checks: checks.map((check) => check.key) }],
      checks,
      unknowns: [],
      walkM: 0,
      demo,
    },
    demo,
  };
  const entries: Entry[] = [{ id: `${id}-0`, round: id, seq: 0, at: options.at, kind: 'begun', people: 1 }];
  for (const given of options.answers) {
    const check = checks.find((candidate) => candidate.key === given.key);
    if (!check) throw new Error(`no check ${given.key}`);
    entries.push(answered(id, entries.length, options.at + entries.length * 60_000, check, given));
  }
  entries.push({ id: `${id}-end`, round: id, seq: entries.length, at: options.at + entries.length * 60_000, kind: 'completed' });
  return { round, entries };
}

export function answered(
  round: string,
  seq: number,
  at: number,
  check: PlannedCheck,
  given: GivenAnswer,
): Extract<Entry, { kind: 'answered' }> {
  return {
    id: `${round}-${seq}`,
    round,
    seq,
    at,
    kind: 'answered',
    key: check.key,
    answer: answerFor(check, given.value),
    outcome: given.outcome ?? 'ok',
    how: BY_BUTTON,
    supersedes: null,
  };
}

function answerFor(check: PlannedCheck, value: number): Answer {
  const { expects } = check;
  if (expects.kind === 'reading') {
    return { kind: 'reading', si: toSI(value, expects.unit), said: { value, unit: expects.unit }, hedged: false };
  }
  if (expects.kind === 'count') return { kind: 'count', count: value };
  return { kind: 'state', verdict: value === 1 ? 'ok' : 'problem', detail: null };
}
