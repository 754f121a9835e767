/** Reads and sets one figure of a profile, between what the person sees and what is kept (SI, but for amp-hours). */
import { convert, fromSI, toSI, UNITS, type UnitId } from '../quantity/units.ts';
import type { FieldKind, ProfileField } from './fields.ts';
import { type GasCylinder, type LiftProfile, type Unit, wheelPositions } from './unit.ts';

export type Display = 'us' | 'metric';
/** As shown or typed; `null` is "I don't know". */
export type FieldValue = string | number | boolean | null;
export type FieldResult = { readonly ok: true; readonly unit: Unit } | { readonly ok: false; readonly sentence: string };

type NumberKind = Extract<FieldKind, { kind: 'number' }>;

const EMPTY_CYLINDER: GasCylinder = { tareKg: null, capacityKg: null, date: null, dateSuffix: null };

/** The unit a number field is shown in. */
export function fieldUnit(kind: NumberKind, display: Display): UnitId {
  return display === 'metric' ? kind.metric : kind.us;
}

/** Limits and step of a number field in the unit it is shown in, rounded outward to whole thousandths. */
export function fieldRange(
  kind: NumberKind,
  display: Display,
): { readonly min: number; readonly max: number; readonly step: number } {
  if (display === 'us' || kind.metric === kind.us) return { min: kind.min, max: kind.max, step: kind.step };
  const inMetric = (value: number) => fromSI(toSI(value, kind.us), kind.metric);
  const wide = inMetric(kind.step);
  return {
    min: Math.floor(inMetric(kind.min) * 1000) / 1000,
    max: Math.ceil(inMetric(kind.max) * 1000) / 1000,
    step: wide >= 1 ? 1 : wide >= 0.1 ? 0.1 : 0.01,
  };
}

/** A figure as the person sees it; numbers to a thousandth of the unit shown. `null`: not known. */
export function getField(unit: Unit, field: ProfileField, display: Display): FieldValue {
  const raw = at(unit, field.path.split('.'));
  if (raw === null || raw === undefined) return null;
  if (field.kind.kind === 'number' && typeof raw === 'number') {
    const shown = fieldUnit(field.kind, display);
    const { storedIn } = field.kind;
    return Math.round((storedIn ? convert(raw, storedIn, shown) : fromSI(raw, shown)) * 1000) / 1000;
  }
  return typeof raw === 'string' || typeof raw === 'number' || typeof raw === 'boolean' ? raw : null;
}

/**
 * The unit with one figure set, or a sentence that says what is wrong with it. Text may be given for a number and for
 * a choice, as a form yields it. Empty text is "I don't know" where that is allowed.
 * Nothing else changes, except what the new figure makes meaningless (date codes of wheels that are no longer there,
 * cables of another kind of lift).
 */
export function setField(unit: Unit, field: ProfileField, input: FieldValue, display: Display): FieldResult {
  const value = typeof input === 'string' ? input.trim() : input;
  if (value === null || value === '') {
    return field.unknown ? accept(unit, field, null) : refuse(`${field.label} is needed.`);
  }
  switch (field.kind.kind) {
    case 'text': {
      const text = String(value);
      if (text.length > field.kind.maxLength) return refuse(`${field.label} has at most ${field.kind.maxLength} characters.`);
      return accept(unit, field, field.path === 'vin' ? text.toUpperCase() : text);
    }
    case 'number':
      return setNumber(unit, field, field.kind, value, display);
    case 'choice': {
      const option = field.kind.options.find((candidate) => String(candidate.value) === String(value));
      if (!option) return refuse(`${field.label} is one of ${field.kind.options.map(({ label }) => label).join(', ')}.`);
      return accept(unit, field, option.value);
    }
    case 'yes-no':
      if (typeof value === 'boolean') return accept(unit, field, value);
      if (value === 'true' || value === 'yes') return accept(unit, field, true);
      if (value === 'false' || value === 'no') return accept(unit, field, false);
      return refuse(`${field.label} is yes or no.`);
    case 'date':
      return setDate(unit, field, field.kind.form, String(value));
  }
}

function setNumber(
  unit: Unit,
  field: ProfileField,
  kind: NumberKind,
  value: string | number | boolean,
  display: Display,
): FieldResult {
  const typed = typeof value === 'number' ? value : typeof value === 'string' ? parseNumber(value) : Number.NaN;
  if (!Number.isFinite(typed)) return refuse(`${field.label} is a number.`);
  const shown = fieldUnit(kind, display);
  const { min, max } = fieldRange(kind, display);
  if (typed < min || typed > max) {
    const { symbol } = UNITS[shown];
    return refuse(`${field.label} is between ${min} and ${max}${symbol === '' ? '' : ` ${symbol}`}.`);
  }
  if (shown === 'count' && !Number.isInteger(typed)) return refuse(`${field.label} is a whole number.`);
  return accept(unit, field, kind.storedIn ? convert(typed, shown, kind.storedIn) : toSI(typed, shown));
}

/** Digits with one decimal mark; anything else (hexadecimal, exponents, words) is not what a form means by a number. */
function parseNumber(text: string): number {
  return /^[+-]?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
}

function setDate(unit: Unit, field: ProfileField, form: 'year-month' | 'dot-week', text: string): FieldResult {
  if (form === 'dot-week') {
    return /^\d{4}$/.test(text)
      ? accept(unit, field, text)
      : refuse('A tire date code is four digits: two for the week, two for the year.');
  }
  return /^(19|20)\d\d-(0[1-9]|1[0-2])$/.test(text) ? accept(unit, field, text) : refuse(`${field.label} is a year and a month.`);
}

const refuse = (sentence: string): FieldResult => ({ ok: false, sentence });

function accept(unit: Unit, field: ProfileField, value: FieldValue): FieldResult {
  if (field.path === 'cylinders.length') return { ok: true, unit: withCylinders(unit, Number(value)) };
  if (field.path.startsWith('wheels.dotCodes.') && value === null) {
    const position = field.path.slice('wheels.dotCodes.'.length);
    const dotCodes = Object.fromEntries(Object.entries(unit.wheels.dotCodes).filter(([key]) => key !== position));
    return { ok: true, unit: { ...unit, wheels: { ...unit.wheels, dotCodes } } };
  }
  return { ok: true, unit: settle(withValue(unit, field.path.split('.'), value) as Unit, field.path) };
}

function withCylinders(unit: Unit, count: number): Unit {
  const cylinders = Array.from({ length: count }, (_, index) => unit.cylinders[index] ?? EMPTY_CYLINDER);
  return { ...unit, cylinders };
}

/** What the change of one figure makes meaningless elsewhere. */
function settle(unit: Unit, path: string): Unit {
  if (path === 'axles') {
    const positions: readonly string[] = wheelPositions(unit.axles);
    const dotCodes = Object.fromEntries(Object.entries(unit.wheels.dotCodes).filter(([key]) => positions.includes(key)));
    return { ...unit, wheels: { ...unit.wheels, dotCodes } };
  }
  if (path === 'lift.kind') return { ...unit, lift: liftOfKind(unit.lift) };
  if (path === 'wheels.torqueNm' && unit.wheels.torqueNm === null) {
    return { ...unit, wheels: { ...unit.wheels, torqueSource: null } };
  }
  return unit;
}

function liftOfKind(lift: LiftProfile): LiftProfile {
  const withoutCables = { cables: 0, cableDiameterM: null, cableConstruction: null, pulleys: 'none' } as const;
  switch (lift.kind) {
    case 'none':
      return { ...lift, ...withoutCables, axleStubs: 'none', pinsPerSide: 0 };
    case 'hydraulic':
      return { ...lift, ...withoutCables, ...reviveFrame(lift) };
    default:
      return {
        ...lift,
        cables: lift.cables === 0 ? 2 : lift.cables,
        pulleys: lift.pulleys === 'none' ? null : lift.pulleys,
        ...reviveFrame(lift),
      };
  }
}

/** Coming from "no lift", the parts of a lift frame are no longer known to be absent. */
function reviveFrame(lift: LiftProfile): Pick<LiftProfile, 'axleStubs' | 'pinsPerSide'> {
  return {
    axleStubs: lift.axleStubs === 'none' ? null : lift.axleStubs,
    pinsPerSide: lift.pinsPerSide === 0 ? null : lift.pinsPerSide,
  };
}

function at(value: unknown, path: readonly string[]): unknown {
  let current = value;
  for (const key of path) {
    if (typeof current !== 'object' || current === null || !Object.hasOwn(current, key)) return undefined;
    current = (current as Readonly<Record<string, unknown>>)[key];
  }
  return current;
}

function withValue(value: unknown, path: readonly string[], next: FieldValue): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return next;
  if (Array.isArray(value)) return value.map((item, index) => (String(index) === key ? withValue(item, rest, next) : item));
  const record = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
  return { ...record, [key]: withValue(record[key], rest, next) };
}
