/** A profile from outside (a file, another device): everything checked, nothing taken on trust, unknown keys left behind. */
import * as v from 'valibot';
import { POSITIONS } from '../checks/expects.ts';
import { UNIT_SCHEMA, type Unit } from './unit.ts';

export type ParsedUnit = { readonly ok: true; readonly unit: Unit } | { readonly ok: false; readonly sentence: string };

const text = (maxLength: number) => v.pipe(v.string(), v.maxLength(maxLength));
const within = (min: number, max: number) => v.pipe(v.number(), v.finite(), v.minValue(min), v.maxValue(max));
const whole = (min: number, max: number) => v.pipe(v.number(), v.integer(), v.minValue(min), v.maxValue(max));
const orNull = <T extends v.GenericSchema>(schema: T) => v.nullable(schema);
const yearMonth = v.pipe(v.string(), v.regex(/^(19|20)\d\d-(0[1-9]|1[0-2])$/));
const time = within(0, 8.64e15);

const alarm = v.object({
  fitted: orNull(v.boolean()),
  date: orNull(yearMonth),
  dateMeans: orNull(v.picklist(['made', 'replace-by'])),
  display: v.exactOptional(orNull(v.boolean())),
});

const cylinder = v.object({
  tareKg: orNull(within(0.5, 200)),
  capacityKg: orNull(within(0.2, 200)),
  date: orNull(yearMonth),
  dateSuffix: orNull(v.picklist(['E', 'S'])),
});

const dotCode = v.pipe(v.string(), v.regex(/^\d{4}$/));
const dotCodes = v.object(
  Object.fromEntries(POSITIONS.map((position) => [position, v.exactOptional(dotCode)])) as {
    readonly [position in (typeof POSITIONS)[number]]: v.ExactOptionalSchema<typeof dotCode, undefined>;
  },
);

const unitSchema = v.object({
  schema: v.literal(UNIT_SCHEMA),
  id: v.pipe(text(100), v.minLength(1)),
  name: v.pipe(text(100), v.regex(/\S/)),
  year: orNull(whole(1900, 2200)),
  vin: orNull(text(40)),
  archived: v.boolean(),
  demo: v.boolean(),
  createdAt: time,
  updatedAt: time,
  revision: whole(0, Number.MAX_SAFE_INTEGER),
  axles: v.picklist([1, 2, 3]),
  tires: v.object({
    size: orNull(text(40)),
    loadRange: orNull(text(4)),
    loadIndex: orNull(whole(0, 279)),
    placardColdPa: orNull(within(10_000, 1_500_000)),
    sidewallMaxPa: orNull(within(10_000, 1_500_000)),
    maxLoadKg: orNull(within(50, 5000)),
  }),
  wheels: v.object({
    lugs: orNull(v.picklist([4, 5, 6, 8])),
    stud: orNull(v.picklist(['1/2', '9/16', '5/8', 'M12', 'M14'])),
    torqueNm: orNull(within(10, 1000)),
    torqueSource: orNull(v.picklist(['maker', 'shop', 'owner'])),
    wrenchMaxNm: v.exactOptional(orNull(within(10, 2000))),
    rim: orNull(v.picklist(['steel', 'aluminum'])),
    bearings: orNull(v.picklist(['greased', 'oil-bath', 'sealed'])),
    dotCodes,
  }),
  lift: v.object({
    kind: v.picklist(['hand-crank-cable', 'electric-winch-cable', 'hydraulic', 'none']),
    cables: whole(0, 8),
    cableDiameterM: orNull(within(0.001, 0.05)),
    cableConstruction: orNull(v.picklist(['7x19', '7x7', '6x19', '6x37'])),
    pulleys: orNull(v.picklist(['greasable', 'plain', 'none'])),
    axleStubs: orNull(v.picklist(['greasable', 'sealed', 'none'])),
    pinsPerSide: orNull(whole(0, 8)),
  }),
  tongue: v.object({
    ballInches: orNull(v.picklist([1.875, 2, 2.3125])),
    jack: orNull(v.picklist(['swivel', 'fixed', 'none'])),
    chains: orNull(v.boolean()),
    breakaway: orNull(v.boolean()),
    connector: orNull(v.picklist(['4-way', '5-way', '6-way', '7-way'])),
    pivotPins: orNull(v.boolean()),
  }),
  brakes: orNull(v.picklist(['electric', 'surge', 'none'])),
  cabin: v.object({
    door: orNull(v.picklist(['house', 'rv'])),
    deadbolt: orNull(v.boolean()),
    ramp: v.boolean(),
    windows: orNull(v.boolean()),
    roofVents: orNull(v.boolean()),
    holeCovers: orNull(whole(0, 100)),
    step: v.boolean(),
    awning: v.boolean(),
    stabilizers: v.boolean(),
    spare: orNull(v.boolean()),
    extinguisher: orNull(v.boolean()),
  }),
  heat: v.object({
    heater: orNull(v.picklist(['furnace', 'wall-heater', 'none'])),
    inputW: orNull(within(100, 100_000)),
    stove: orNull(v.boolean()),
    airConditioner: orNull(v.boolean()),
    readFromOutside: v.exactOptional(orNull(v.boolean())),
  }),
  cylinders: v.pipe(v.array(cylinder), v.maxLength(8)),
  battery: v.object({
    kind: orNull(v.picklist(['flooded', 'agm', 'lifepo4', 'none'])),
    capacityAh: orNull(within(0.5, 5000)),
  }),
  alarms: v.object({ co: alarm, gas: alarm, smoke: alarm }),
  weights: v.object({
    gvwrKg: orNull(within(50, 30_000)),
    gawrKg: orNull(within(50, 30_000)),
    emptyKg: orNull(within(50, 30_000)),
  }),
  widthM: orNull(within(0.5, 6)),
  lengthM: orNull(within(1, 30)),
  homeElevationM: orNull(within(-500, 9000)),
});

/**
 * A unit from parsed JSON of any shape. Never throws.
 * @returns the unit with known keys only, or one sentence that names the first thing wrong
 */
export function parseUnit(json: unknown): ParsedUnit {
  const schema = typeof json === 'object' && json !== null && 'schema' in json ? json.schema : undefined;
  if (typeof schema === 'number' && schema > UNIT_SCHEMA) {
    return { ok: false, sentence: 'This profile was written by a newer version of the app. Update the app, then open it again.' };
  }
  const parsed = v.safeParse(unitSchema, json, { abortEarly: true });
  if (parsed.success) return { ok: true, unit: parsed.output };
  const path = v.getDotPath(parsed.issues[0]);
  return {
    ok: false,
    sentence: path === null ? 'This is not a unit profile.' : `This profile has something wrong at "${path.slice(0, 80)}".`,
  };
}
