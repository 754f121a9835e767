/**
 * What the record says about one check over time. Computed from rounds, entries and events and from nothing else.
 */
import type { Position } from '../checks/expects.ts';
import type { Limit, Outcome, RuleId } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { UnitId } from '../quantity/units.ts';
import { convert, fromSI, UNITS } from '../quantity/units.ts';
import type { Entry, Round, UnitEvent } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';
import { inForce } from './inForce.ts';
import { outsideAirPressure, pressureAtTemperature, REFERENCE_K } from './normalize.ts';

export interface RoundRecord {
  readonly round: Round;
  readonly entries: readonly Entry[];
}

export interface SeriesReading {
  /** Epoch milliseconds. */
  readonly at: number;
  /** In the series' unit; a tire pressure at {@link Series.referenceK} where `normalized`, else as read. */
  readonly value: number;
  /** As read, in the series' unit. */
  readonly read: number;
  readonly normalized: boolean;
  /** Outside air of that round; for a tire pressure null where the tire was still warm from the road. */
  readonly outsideK: number | null;
  readonly outcome: Outcome;
  /** Ids of where it comes from. */
  readonly round: string;
  readonly entry: string;
}

export interface Segment {
  readonly readings: readonly SeriesReading[];
  /** Why the series was cut after these readings. */
  readonly endedBy: string;
}

export interface Series {
  /** Id of the unit towed. */
  readonly unitId: string;
  /** Key of the check within a plan. */
  readonly key: string;
  readonly check: string;
  readonly position: Position | null;
  readonly quantity: string;
  readonly rule: RuleId;
  /** Heading of the check as last planned ("tire pressure"). */
  readonly name: string;
  /** Unit of every value, and the finest step read. */
  readonly unit: UnitId;
  readonly step: number;
  /** Since the last cut, oldest first; everything that is computed uses these only. */
  readonly readings: readonly SeriesReading[];
  /** Before a cut, oldest first: shown, never computed with. */
  readonly earlier: readonly Segment[];
  /** Limits of the latest plan. */
  readonly limits: readonly Limit[];
  /** Temperature that tire pressures are brought to; null for other quantities. */
  readonly referenceK: number | null;
  /** Outside air pressure used for that. */
  readonly airPa: number;
  readonly demo: boolean;
}

interface Growing {
  check: PlannedCheck;
  unitId: string;
  unit: UnitId;
  step: number;
  quantity: string;
  readings: SeriesReading[];
  earlier: Segment[];
  fingerprint: string;
  vin: string | null;
  referenceK: number | null;
  airPa: number;
  demo: boolean;
}

/**
 * One series per unit, check and position, oldest round first; readings and counts only.
 *
 * Corrections and undo are honored: only the entry in force counts. Demo rounds never mix with real ones. A tire
 * changed, or a change of the profile that makes old and new readings incomparable, cuts the series.
 * @param rounds in any order, of any number of units
 * @param events of the same units, in any order
 */
export function buildSeries(rounds: readonly RoundRecord[], events: readonly UnitEvent[]): Series[] {
  const growing = new Map<string, Growing>();
  const swaps = tireSwaps(events);
  for (const record of [...rounds].sort(byStart)) addRound(growing, record, swaps);
  return [...growing.values()].map(finished);
}

/** Same order on every device, also when two rounds share a start. */
function byStart(a: RoundRecord, b: RoundRecord): number {
  return a.round.startedAt - b.round.startedAt || (a.round.id < b.round.id ? -1 : a.round.id > b.round.id ? 1 : 0);
}

function addRound(growing: Map<string, Growing>, { round, entries }: RoundRecord, swaps: ReadonlyMap<string, readonly number[]>) {
  const answers = inForce(entries);
  const outsideK = outsideOf(round, answers);
  const coldK = readWarm(round, answers) ? null : outsideK;
  const prefix = `${round.demo ? 'demo' : 'real'} ${round.unit} `;
  for (const check of round.plan.checks) {
    const { expects } = check;
    if (expects.kind !== 'reading' && expects.kind !== 'count') continue;
    const entry = answers.get(check.key);
    if (entry?.kind !== 'answered') continue;
    const { answer } = entry;
    const unit: UnitId = expects.kind === 'reading' ? expects.unit : 'count';
    const si = answer.kind === 'reading' ? answer.si : answer.kind === 'count' ? answer.count : Number.NaN;
    if (!Number.isFinite(si)) continue;
    const id = prefix + check.key;
    let series = growing.get(id);
    const fingerprint = fingerprintFor(check.judge.rule, round.plan.unit, check.position);
    if (!series) {
      series = begin(check, round, unit, fingerprint);
      growing.set(id, series);
    }
    const cut = cutBefore(series, check, round, unit, fingerprint, swaps, entry.at);
    if (cut) {
      series.earlier.push({ readings: series.readings, endedBy: cut });
      series.readings = [];
    }
    update(series, check, round, unit, fingerprint);
    series.readings.push(
      readingOf(series, si, entry.at, entry.outcome, entry.id, round.id, check.judge.rule === 'tire-pressure' ? coldK : outsideK),
    );
  }
}

function begin(check: PlannedCheck, round: Round, unit: UnitId, fingerprint: string): Growing {
  return {
    check,
    unitId: round.unit,
    unit,
    step: 1,
    quantity: '',
    readings: [],
    earlier: [],
    fingerprint,
    vin: round.plan.unit.vin,
    referenceK: null,
    airPa: 0,
    demo: round.demo,
  };
}

function update(series: Growing, check: PlannedCheck, round: Round, unit: UnitId, fingerprint: string): void {
  const { expects } = check;
  series.check = check;
  if (unit !== series.unit) inUnit(series, unit);
  series.step = expects.kind === 'reading' ? expects.step : 1;
  series.quantity = expects.kind === 'reading' || expects.kind === 'count' ? expects.quantity : '';
  series.fingerprint = fingerprint;
  series.vin = round.plan.unit.vin ?? series.vin;
  if (series.readings.length > 0 || check.judge.rule !== 'tire-pressure') return;
  // One reference and one air pressure for the whole of a segment, or its values could not be compared.
  const { placardTemperatureK, elevationM } = check.judge.params;
  series.referenceK = typeof placardTemperatureK === 'number' && placardTemperatureK > 0 ? placardTemperatureK : REFERENCE_K;
  series.airPa = outsideAirPressure(typeof elevationM === 'number' ? elevationM : round.plan.unit.homeElevationM);
}

/** The metric switch was turned: the same readings in the unit asked for now. What measured something else is dropped. */
function inUnit(series: Growing, unit: UnitId): void {
  const { unit: before } = series;
  series.unit = unit;
  if (UNITS[before].dimension !== UNITS[unit].dimension) {
    series.earlier = [];
    return;
  }
  const converted = (reading: SeriesReading): SeriesReading => ({
    ...reading,
    value: convert(reading.value, before, unit),
    read: convert(reading.read, before, unit),
  });
  series.readings = series.readings.map(converted);
  series.earlier = series.earlier.map((segment) => ({ ...segment, readings: segment.readings.map(converted) }));
}

function readingOf(
  series: Growing,
  si: number,
  at: number,
  outcome: Outcome,
  entry: string,
  round: string,
  outsideK: number | null,
): SeriesReading {
  const read = fromSI(si, series.unit);
  if (series.referenceK === null || outsideK === null || si <= -series.airPa) {
    return { at, value: read, read, normalized: false, outsideK, outcome, round, entry };
  }
  const value = fromSI(pressureAtTemperature(si, outsideK, series.referenceK, series.airPa), series.unit);
  return { at, value, read, normalized: true, outsideK, outcome, round, entry };
}

/** Why this reading cannot follow the ones before it, or null. */
function cutBefore(
  series: Growing,
  check: PlannedCheck,
  round: Round,
  unit: UnitId,
  fingerprint: string,
  swaps: ReadonlyMap<string, readonly number[]>,
  at: number,
): string | null {
  const last = series.readings.at(-1);
  if (!last) return null;
  const { vin } = round.plan.unit;
  if (vin !== null && series.vin !== null && vin !== series.vin) return 'another unit under this name';
  if (isTire(check.judge.rule) && check.position !== null) {
    const swapped = swaps.get(`${round.unit} ${check.position}`)?.some((when) => when > last.at && when <= at);
    if (swapped) return 'tire changed';
  }
  if (fingerprint !== series.fingerprint && comparableUnknown(fingerprint, series.fingerprint)) return 'the profile was changed';
  return UNITS[unit].dimension === UNITS[series.unit].dimension ? null : 'something else is measured from here on';
}

/** A figure that was unknown and is now known is not a change of the thing itself. */
function comparableUnknown(a: string, b: string): boolean {
  const left = a.split('|');
  const right = b.split('|');
  return left.some((part, index) => part !== '?' && right[index] !== '?' && right[index] !== undefined && part !== right[index]);
}

function isTire(rule: RuleId): boolean {
  return rule === 'tire-pressure' || rule === 'tread-depth';
}

/** The parts of the profile that a rule's readings depend on; joined with `|`, `?` where not known. */
function fingerprintFor(rule: RuleId, unit: Unit, position: Position | null): string {
  const join = (...parts: readonly (string | number | null | undefined)[]) => parts.map((part) => part ?? '?').join('|');
  switch (rule) {
    case 'tire-pressure':
    case 'tread-depth':
      return join(unit.axles, unit.tires.size, unit.tires.loadRange, position === null ? null : unit.wheels.dotCodes[position]);
    case 'lugs-moved':
      return join(unit.axles, unit.wheels.lugs, unit.wheels.stud, unit.wheels.rim);
    case 'cable-push':
    case 'broken-wires':
      return join(unit.lift.kind, unit.lift.cables, unit.lift.cableDiameterM, unit.lift.cableConstruction);
    case 'battery-rest':
      return join(unit.battery.kind, unit.battery.capacityAh);
    case 'inside-start':
    case 'furnace-rise':
    case 'furnace-holds':
      return join(unit.heat.heater, unit.heat.inputW);
    case 'cylinder-weight':
      return join(unit.cylinders.length, ...unit.cylinders.map((cylinder) => cylinder.tareKg));
    default:
      return '';
  }
}

function tireSwaps(events: readonly UnitEvent[]): ReadonlyMap<string, readonly number[]> {
  const swaps = new Map<string, number[]>();
  for (const event of events) {
    if (event.kind !== 'tire-changed') continue;
    const id = `${event.unit} ${event.position}`;
    const times = swaps.get(id) ?? [];
    times.push(event.at);
    swaps.set(id, times);
  }
  return swaps;
}

/** Below this the air in a tire is still warmer than the air around it: common practice, three hours parked is cold. */
const COLD_AFTER_S = 3 * 3600;

/** Whether the round says that the unit was towed too recently for a pressure to be a cold one. */
function readWarm(round: Round, answers: ReturnType<typeof inForce>): boolean {
  return round.plan.checks.some((check) => {
    const entry = check.check === 'parked-time' || isHoursParked(check) ? answers.get(check.key) : undefined;
    if (entry?.kind !== 'answered') return false;
    const { answer } = entry;
    return answer.kind === 'choice' ? answer.option === 'warm' : answer.kind === 'reading' && answer.si < COLD_AFTER_S;
  });
}

function isHoursParked({ expects }: PlannedCheck): boolean {
  return expects.kind === 'reading' && expects.quantity === 'hours-parked';
}

/** Outside air temperature answered in this round, K; null when it was not. */
export function outsideOf(round: Round, answers: ReturnType<typeof inForce>): number | null {
  for (const check of round.plan.checks) {
    if (check.judge.rule !== 'outside-temperature') continue;
    const entry = answers.get(check.key);
    if (entry?.kind !== 'answered' || entry.answer.kind !== 'reading') continue;
    if (Number.isFinite(entry.answer.si) && entry.answer.si > 0) return entry.answer.si;
  }
  return null;
}

function finished(series: Growing): Series {
  return {
    unitId: series.unitId,
    key: series.check.key,
    check: series.check.check,
    position: series.check.position,
    quantity: series.quantity,
    rule: series.check.judge.rule,
    name: series.check.lines.name,
    unit: series.unit,
    step: series.step,
    readings: byTime(series.readings),
    earlier: series.earlier,
    limits: series.check.judge.limits,
    referenceK: series.referenceK,
    airPa: series.airPa,
    demo: series.demo,
  };
}

/** A round that was held for days may answer after one that was begun later. */
function byTime(readings: SeriesReading[]): readonly SeriesReading[] {
  return readings.sort((a, b) => a.at - b.at);
}
