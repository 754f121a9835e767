/** A made-up round for looking at the screens: written by hand, judged by nobody. */
import type { CheckLines, StationKind } from '../../../src/domain/checks/check.ts';
import type { Expects, Position } from '../../../src/domain/checks/expects.ts';
import type { Plan, PlannedCheck } from '../../../src/domain/plan/plan.ts';
import type { Round } from '../../../src/domain/round/entry.ts';
import type { CheckLineView, RoundView } from '../../../src/domain/round/view.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';

/** Twenty past six on a January evening, UTC. */
export const NOW = Date.UTC(2031, 0, 17, 18, 20);

const state = (ok: string, problem: string): Expects => ({ kind: 'state', ok: [ok], problem: [problem], yesMeans: 'ok' });

function check(
  key: string,
  station: string,
  expects: Expects,
  lines: Pick<CheckLines, 'name' | 'ask'> & Partial<CheckLines>,
  position: Position | null = null,
): PlannedCheck {
  return {
    key,
    check: key.split('@')[0] ?? key,
    position,
    station,
    names: [lines.name],
    expects,
    lines: {
      askTerse: lines.name,
      hint: 'Say what you see.',
      why: 'Because it carries the load.',
      mend: 'Mend it before the next trip.',
      caution: null,
      ...lines,
    },
    judge: { rule: 'record-only', worst: 'fix', limits: [], params: {} },
    timed: null,
    patienceS: 20,
  };
}

export const PRESSURE = check(
  'tire-pressure@left-front',
  'wheel@left-front',
  {
    kind: 'reading',
    quantity: 'tire-pressure',
    unit: 'psi',
    otherUnits: ['kPa'],
    min: 0,
    max: 130,
    step: 1,
    forms: ['whole'],
    usual: { min: 45, max: 80 },
  },
  { name: 'tire pressure, left front', ask: 'Left front tire: what is the cold pressure?' },
  'left-front',
);

export const VOLTS = check(
  'battery-rest',
  'inside',
  {
    kind: 'reading',
    quantity: 'battery-rest',
    unit: 'V',
    otherUnits: [],
    min: 0,
    max: 16,
    step: 0.01,
    forms: ['spoken-decimal'],
    usual: { min: 12, max: 12.9 },
  },
  { name: 'battery at rest', ask: 'House battery, with everything switched off: how many volts?' },
);

export const COLD = check(
  'outside-temperature',
  'doorway',
  {
    kind: 'reading',
    quantity: 'outside-temperature',
    unit: 'F',
    otherUnits: ['C'],
    min: -60,
    max: 100,
    step: 1,
    forms: ['whole', 'negative'],
    usual: { min: -20, max: 40 },
  },
  { name: 'outside temperature', ask: 'How cold is it outside?' },
);

export const LUGS = check(
  'lugs-moved@left-front',
  'wheel@left-front',
  {
    kind: 'count',
    quantity: 'lugs-moved',
    noun: ['lug', 'lugs'],
    min: 0,
    max: 6,
    nonePhrases: ['all tight'],
    allPhrases: ['all of them'],
  },
  {
    name: 'lug torque, left front',
    ask: 'Every lug to ninety foot-pounds with the wrench, in a star. How many moved before the click?',
    askTerse: 'Lugs moved before the click',
    caution: 'Block the wheel on the other side first.',
  },
  'left-front',
);

export const PINS = check(
  'transport-pins@left',
  'left-lift',
  state('pinned', 'not pinned'),
  {
    name: 'transport pin, left side',
    ask: 'Transport pin, left side: in, with its keeper?',
    caution: 'Keep hands and feet from under the frame.',
  },
  'left',
);

export const VALVE = check(
  'cylinder-valve',
  'tongue',
  {
    kind: 'choice',
    options: [
      { id: 'shut', label: 'shut', phrases: ['shut'], verdict: 'ok' },
      { id: 'open', label: 'open', phrases: ['open'], verdict: 'problem' },
      { id: 'leaking', label: 'smells of gas', phrases: ['smells of gas'], verdict: 'problem' },
      { id: 'absent', label: 'no cylinder today', phrases: ['none'], verdict: 'ok' },
    ],
  },
  { name: 'gas cylinder valve', ask: 'Gas cylinder: how does the valve stand for the road?' },
);

export const DATE_CODE = check(
  'tire-age@left-front',
  'wheel@left-front',
  { kind: 'date', form: 'dot-week' },
  { name: 'tire date, left front', ask: 'Last four digits after DOT on the sidewall?' },
  'left-front',
);

export const ALARM_DATE = check(
  'co-alarm-date',
  'inside',
  { kind: 'date', form: 'month-year' },
  { name: 'CO alarm date', ask: 'Carbon monoxide alarm: which date is printed on the back?' },
);

export const CHECKS = [VOLTS, ALARM_DATE, COLD, VALVE, PINS, PRESSURE, DATE_CODE, LUGS] as const;

const station = (key: string, kind: StationKind, name: string, position: Position | null = null) => ({
  key,
  kind,
  position,
  name,
  checks: CHECKS.filter((entry) => entry.station === key).map((entry) => entry.key),
});

const template = TEMPLATES[0];
if (!template) throw new Error('the gallery requires a template');
const unit = { ...createUnit(template, { id: 'heron', name: 'Heron', at: NOW }), demo: true };

export const PLAN: Plan = {
  schema: 1,
  round: 'before-towing',
  unit,
  createdAt: NOW,
  stations: [
    station('inside', 'inside', 'Inside'),
    station('doorway', 'doorway', 'Doorway'),
    station('tongue', 'tongue', 'Tongue'),
    station('left-lift', 'left-lift', 'Left side, lift'),
    station('wheel@left-front', 'wheel', 'Left side, front wheel', 'left-front'),
  ],
  checks: CHECKS,
  unknowns: [
    'The torque for the lugs is not known. I will ask what your handbook says.',
    'The date of the gas cylinder is not known.',
  ],
  walkM: 31,
  demo: false,
};

export const ROUND: Round = { schema: 1, id: 'round-1', unit: unit.id, startedAt: NOW, plan: PLAN, demo: false };

const line = (entry: PlannedCheck, status: CheckLineView['status'], value: string | null, because: string | null = null) => ({
  check: entry,
  status,
  value,
  because,
});

export const LINES: readonly CheckLineView[] = [
  line(VOLTS, 'watch', '12.31 V', 'Under 12.4 volts at rest: about half full.'),
  line(ALARM_DATE, 'fix', 'March 2029', 'Past its date by a year and ten months.'),
  line(COLD, 'ok', '−4 °F'),
  line(VALVE, 'skipped', 'frozen'),
  line(PINS, 'hold', 'Not pinned', 'Without the pin the lift carries the load on the road.'),
  line(PRESSURE, 'ok', '62 psi'),
  line(DATE_CODE, 'open', null),
  line(LUGS, 'open', null),
];

/** A view in the middle of a round, asking the given check; anything may be set otherwise. */
export function viewOf(over: Partial<RoundView> = {}): RoundView {
  const current = over.current === undefined ? PRESSURE : over.current;
  const at = PLAN.stations.find((place) => place.key === current?.station);
  return {
    round: ROUND,
    entries: [],
    phase: 'asking',
    people: 1,
    station: at ? { name: at.name, done: 0, total: at.checks.length } : null,
    done: 6,
    total: CHECKS.length,
    lines: LINES,
    current,
    before: null,
    beforeValue: null,
    saying: current?.lines.ask ?? '',
    speaking: false,
    partial: null,
    readBack: null,
    offers: [],
    ears: { state: 'listening', sentence: null, progress: null, provider: 'built-in' },
    timers: [],
    verdict: null,
    trouble: null,
    ...over,
  };
}
