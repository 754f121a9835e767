/**
 * What an imported file must look like, field by field. Unknown extra fields are kept (a later version may add some);
 * unknown kinds, rules and units are not understood and refuse the file.
 */
import * as v from 'valibot';
import type { RoundKind, StationKind } from '../checks/check.ts';
import type { Expects, NumberForm } from '../checks/expects.ts';
import { POSITIONS, type Position } from '../checks/expects.ts';
import { OUTCOMES, type RuleId } from '../checks/outcome.ts';
import type { Plan, PlannedCheck } from '../plan/plan.ts';
import { isUnitId, type UnitId } from '../quantity/units.ts';
import type { Answer, Entry, How, Round, UnitEvent } from '../round/entry.ts';
import type { AlarmProfile, Unit } from '../unit/unit.ts';
import { DATASET_SCHEMA } from './dataset.ts';
import { EXPORT_FORMAT, EXPORT_VERSION } from './exportAll.ts';

/** Every member of a union once; a missing one does not compile. */
const members = <T extends string>(of: Readonly<Record<T, true>>): [T, ...T[]] => Object.keys(of) as [T, ...T[]];

const RULES = members<RuleId>({
  state: true,
  choice: true,
  'record-only': true,
  limits: true,
  'tire-pressure': true,
  'tread-depth': true,
  'tire-age': true,
  'since-mounted': true,
  'lugs-moved': true,
  'broken-wires': true,
  'cable-push': true,
  'battery-rest': true,
  'breakaway-rest': true,
  'inside-start': true,
  'furnace-rise': true,
  'furnace-holds': true,
  'cylinder-weight': true,
  'cylinder-date': true,
  'alarm-date': true,
  'co-reading': true,
  'outside-temperature': true,
  'ice-thickness': true,
});
const ROUND_KINDS = members<RoundKind>({ 'before-towing': true, 'before-leaving-the-lake': true, 'stop-on-the-road': true });
const STATIONS = members<StationKind>({
  inside: true,
  doorway: true,
  tongue: true,
  'left-lift': true,
  'right-lift': true,
  wheel: true,
  'left-side': true,
  'right-side': true,
  rear: true,
  'tow-vehicle': true,
});
const FORMS = members<NumberForm>({
  whole: true,
  half: true,
  quarter: true,
  tenth: true,
  hundredth: true,
  'thirty-second': true,
  negative: true,
  'spoken-decimal': true,
});

const number = v.pipe(v.number(), v.finite());
const time = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(8.64e15));
const natural = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const text = v.pipe(v.string(), v.maxLength(20_000));
const texts = v.pipe(v.array(text), v.maxLength(1000));
const maybeText = v.nullable(text);
const maybeNumber = v.nullable(number);
const maybeBoolean = v.nullable(v.boolean());
const position = v.picklist(POSITIONS as unknown as [Position, ...Position[]]);
const outcome = v.picklist([...OUTCOMES]);
const measure = v.custom<UnitId>((input) => typeof input === 'string' && isUnitId(input), 'a unit of measure');
const plainValue = v.union([number, text, v.boolean(), v.null()]);
const pair = v.strictTuple([text, text]);

const expects = v.variant('kind', [
  v.looseObject({
    kind: v.literal('reading'),
    quantity: id,
    unit: measure,
    otherUnits: v.array(measure),
    min: number,
    max: number,
    step: v.pipe(number, v.gtValue(0)),
    forms: v.array(v.picklist(FORMS)),
    usual: v.looseObject({ min: number, max: number }),
  }),
  v.looseObject({
    kind: v.literal('count'),
    quantity: id,
    noun: pair,
    min: number,
    max: number,
    nonePhrases: texts,
    allPhrases: texts,
  }),
  v.looseObject({ kind: v.literal('state'), ok: texts, problem: texts, yesMeans: v.picklist(['ok', 'problem']) }),
  v.looseObject({
    kind: v.literal('choice'),
    options: v.pipe(
      v.array(v.looseObject({ id, label: text, phrases: texts, verdict: v.picklist(['ok', 'problem']) })),
      v.maxLength(100),
    ),
  }),
  v.looseObject({
    kind: v.literal('date'),
    form: v.picklist(['dot-week', 'month-year']),
    usualYears: v.exactOptional(v.looseObject({ min: number, max: number })),
  }),
]);

const source = v.looseObject({
  kind: v.picklist(['maker', 'published', 'common-practice']),
  text,
  fromMemory: v.exactOptional(v.boolean()),
});

const limit = v.looseObject({
  id,
  label: text,
  relation: v.picklist(['at-least', 'at-most', 'target']),
  si: number,
  unit: measure,
  outcome,
  source,
});

const judgeSpec = v.looseObject({
  rule: v.picklist(RULES),
  worst: outcome,
  limits: v.pipe(v.array(limit), v.maxLength(100)),
  params: v.record(v.string(), plainValue),
});

const plannedCheck = v.looseObject({
  key: id,
  check: id,
  position: v.nullable(position),
  station: id,
  names: texts,
  expects,
  lines: v.looseObject({ name: text, ask: text, askTerse: text, hint: text, why: text, mend: text, caution: maybeText }),
  judge: judgeSpec,
  timed: v.nullable(v.looseObject({ startedBy: id, minutes: number })),
  patienceS: number,
  after: v.exactOptional(v.pipe(v.array(id), v.maxLength(1000))),
  sources: v.exactOptional(v.pipe(v.array(source), v.maxLength(100))),
});

const alarm = v.looseObject({
  fitted: maybeBoolean,
  date: maybeText,
  dateMeans: v.nullable(v.picklist(['made', 'replace-by'])),
  display: v.exactOptional(maybeBoolean),
});

export const unitSchema = v.looseObject({
  schema: v.literal(1),
  id,
  name: text,
  year: maybeNumber,
  vin: maybeText,
  archived: v.boolean(),
  demo: v.boolean(),
  createdAt: time,
  updatedAt: time,
  revision: natural,
  axles: v.picklist([1, 2, 3]),
  tires: v.looseObject({
    size: maybeText,
    loadRange: maybeText,
    loadIndex: maybeNumber,
    placardColdPa: maybeNumber,
    sidewallMaxPa: maybeNumber,
    maxLoadKg: maybeNumber,
  }),
  wheels: v.looseObject({
    lugs: v.nullable(v.picklist([4, 5, 6, 8])),
    stud: v.nullable(v.picklist(['1/2', '9/16', '5/8', 'M12', 'M14'])),
    torqueNm: maybeNumber,
    torqueSource: v.nullable(v.picklist(['maker', 'shop', 'owner'])),
    wrenchMaxNm: v.exactOptional(maybeNumber),
    rim: v.nullable(v.picklist(['steel', 'aluminum'])),
    bearings: v.nullable(v.picklist(['greased', 'oil-bath', 'sealed'])),
    dotCodes: v.record(position, text),
  }),
  lift: v.looseObject({
    kind: v.picklist(['hand-crank-cable', 'electric-winch-cable', 'hydraulic', 'none']),
    cables: number,
    cableDiameterM: maybeNumber,
    cableConstruction: v.nullable(v.picklist(['7x19', '7x7', '6x19', '6x37'])),
    pulleys: v.nullable(v.picklist(['greasable', 'plain', 'none'])),
    axleStubs: v.nullable(v.picklist(['greasable', 'sealed', 'none'])),
    pinsPerSide: maybeNumber,
  }),
  tongue: v.looseObject({
    ballInches: v.nullable(v.picklist([1.875, 2, 2.3125])),
    jack: v.nullable(v.picklist(['swivel', 'fixed', 'none'])),
    chains: maybeBoolean,
    breakaway: maybeBoolean,
    connector: v.nullable(v.picklist(['4-way', '5-way', '6-way', '7-way'])),
    pivotPins: maybeBoolean,
  }),
  brakes: v.nullable(v.picklist(['electric', 'surge', 'none'])),
  cabin: v.looseObject({
    door: v.nullable(v.picklist(['house', 'rv'])),
    deadbolt: maybeBoolean,
    ramp: v.boolean(),
    windows: maybeBoolean,
    roofVents: maybeBoolean,
    holeCovers: maybeNumber,
    step: v.boolean(),
    awning: v.boolean(),
    stabilizers: v.boolean(),
    spare: maybeBoolean,
    extinguisher: maybeBoolean,
  }),
  heat: v.looseObject({
    heater: v.nullable(v.picklist(['furnace', 'wall-heater', 'none'])),
    inputW: maybeNumber,
    stove: maybeBoolean,
    airConditioner: maybeBoolean,
    readFromOutside: v.exactOptional(maybeBoolean),
  }),
  cylinders: v.pipe(
    v.array(
      v.looseObject({
        tareKg: maybeNumber,
        capacityKg: maybeNumber,
        date: maybeText,
        dateSuffix: v.nullable(v.picklist(['E', 'S'])),
      }),
    ),
    v.maxLength(20),
  ),
  battery: v.looseObject({ kind: v.nullable(v.picklist(['flooded', 'agm', 'lifepo4', 'none'])), capacityAh: maybeNumber }),
  alarms: v.looseObject({ co: alarm, gas: alarm, smoke: alarm }),
  weights: v.looseObject({ gvwrKg: maybeNumber, gawrKg: maybeNumber, emptyKg: maybeNumber }),
  widthM: maybeNumber,
  lengthM: maybeNumber,
  homeElevationM: maybeNumber,
});

const answer = v.variant('kind', [
  v.looseObject({
    kind: v.literal('reading'),
    si: number,
    said: v.looseObject({ value: number, unit: measure }),
    hedged: v.boolean(),
  }),
  v.looseObject({ kind: v.literal('count'), count: natural }),
  v.looseObject({ kind: v.literal('state'), verdict: v.picklist(['ok', 'problem']), detail: maybeText }),
  v.looseObject({ kind: v.literal('choice'), option: id, detail: maybeText }),
  v.looseObject({ kind: v.literal('date'), form: v.literal('dot-week'), value: v.pipe(v.string(), v.regex(/^\d{4}$/)) }),
  v.looseObject({ kind: v.literal('date'), form: v.literal('month-year'), value: v.pipe(v.string(), v.regex(/^\d{4}-\d{2}$/)) }),
]);

const knownFigure = v.looseObject({ key: id, check: id, position: v.nullable(position), name: text, answer, judge: judgeSpec });

const packedRound = v.looseObject({
  schema: v.literal(1),
  id,
  unit: id,
  startedAt: time,
  demo: v.boolean(),
  plan: v.looseObject({
    schema: v.literal(1),
    round: v.picklist(ROUND_KINDS),
    unit: natural,
    createdAt: time,
    stations: v.pipe(
      v.array(
        v.looseObject({ key: id, kind: v.picklist(STATIONS), position: v.nullable(position), name: text, checks: v.array(id) }),
      ),
      v.maxLength(500),
    ),
    checks: v.pipe(v.array(natural), v.maxLength(2000)),
    unknowns: texts,
    due: v.exactOptional(texts),
    known: v.exactOptional(v.pipe(v.array(knownFigure), v.maxLength(1000))),
    walkM: number,
    demo: v.boolean(),
  }),
});

const how = v.looseObject({
  via: v.picklist(['voice', 'button', 'key']),
  provider: maybeText,
  by: v.picklist(['first', 'second']),
  transcript: maybeText,
  alternatives: v.pipe(v.array(v.looseObject({ transcript: text, confidence: maybeNumber })), v.maxLength(100)),
  confidence: maybeNumber,
  because: texts,
  clip: v.nullable(id),
});

const entryBase = { id, round: id, seq: natural, at: time };
const entry = v.variant('kind', [
  v.looseObject({ ...entryBase, kind: v.literal('begun'), people: v.picklist([1, 2]) }),
  v.looseObject({ ...entryBase, kind: v.literal('answered'), key: id, answer, outcome, how, supersedes: v.nullable(id) }),
  v.looseObject({ ...entryBase, kind: v.literal('skipped'), key: id, reason: text, how, supersedes: v.nullable(id) }),
  v.looseObject({ ...entryBase, kind: v.literal('undone'), key: id, supersedes: id }),
  v.looseObject({
    ...entryBase,
    kind: v.literal('noted'),
    key: v.nullable(id),
    text: maybeText,
    clip: v.nullable(id),
    photo: v.nullable(id),
    finding: v.boolean(),
    how,
  }),
  v.looseObject({ ...entryBase, kind: v.literal('went'), key: v.nullable(id) }),
  v.looseObject({ ...entryBase, kind: v.literal('held'), reason: maybeText }),
  v.looseObject({ ...entryBase, kind: v.literal('resumed') }),
  v.looseObject({ ...entryBase, kind: v.literal('completed') }),
]);

const eventBase = { id, unit: id, at: time };
const event = v.variant('kind', [
  v.looseObject({ ...eventBase, kind: v.literal('mended'), finding: text, what: text, who: maybeText, cost: maybeNumber }),
  v.looseObject({ ...eventBase, kind: v.literal('wheel-mounted'), position, odometerM: maybeNumber }),
  v.looseObject({ ...eventBase, kind: v.literal('tire-changed'), position, dotCode: maybeText }),
  v.looseObject({ ...eventBase, kind: v.literal('awning-wet') }),
  v.looseObject({ ...eventBase, kind: v.literal('awning-dried') }),
  v.looseObject({ ...eventBase, kind: v.literal('noted'), text }),
]);

export const exportFileSchema = v.looseObject({
  format: v.literal(EXPORT_FORMAT),
  version: v.literal(EXPORT_VERSION),
  schema: v.literal(DATASET_SCHEMA),
  units: v.array(unitSchema),
  parts: v.looseObject({ checks: v.array(plannedCheck), units: v.array(unitSchema) }),
  rounds: v.array(packedRound),
  entries: v.array(entry),
  events: v.array(event),
  deleted: v.array(v.looseObject({ id, at: time })),
  settings: v.exactOptional(v.record(v.string(), plainValue)),
});

/** Compiles only while nothing that the app keeps is missing above. */
type Nothing<T extends never> = T;
type Kinds<T extends { readonly kind: string }> = T['kind'];
export type MissingFromSchema =
  | Nothing<Exclude<Entry['kind'], Kinds<v.InferOutput<typeof entry>>>>
  | Nothing<Exclude<UnitEvent['kind'], Kinds<v.InferOutput<typeof event>>>>
  | Nothing<Exclude<Answer['kind'], Kinds<v.InferOutput<typeof answer>>>>
  | Nothing<Exclude<Expects['kind'], Kinds<v.InferOutput<typeof expects>>>>
  | Nothing<Exclude<keyof Unit, keyof typeof unitSchema.entries>>
  | Nothing<Exclude<keyof AlarmProfile, keyof typeof alarm.entries>>
  | Nothing<Exclude<keyof PlannedCheck, keyof typeof plannedCheck.entries>>
  | Nothing<Exclude<keyof How, keyof typeof how.entries>>
  | Nothing<Exclude<keyof Round, keyof typeof packedRound.entries>>
  | Nothing<Exclude<keyof Plan, keyof typeof packedRound.entries.plan.entries>>;
