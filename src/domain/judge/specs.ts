/**
 * What each rule is given: limits with their sources, and figures of this very unit. Frozen into a round's plan.
 *
 * Params read by the rules (all SI; `null`: not known):
 * - `tire-pressure`: placardPa, sidewallMaxPa, elevationM. Limits: target, fix, hold, cap.
 * - `lugs-moved`: lugs, torqueNm, torqueSource. `cable-push`: none beyond the limits.
 * - `battery-rest`: kind. `furnace-rise`: startKey, minutes. `cylinder-weight`: tareKg, capacityKg, inputW.
 * - `cylinder-date`: suffix. `alarm-date`: alarm, dateMeans. `choice`: the outcome of each option by its id.
 */
import type { JudgeSpec, Limit, Outcome, RuleId, Source } from '../checks/outcome.ts';
import { toSI, type UnitId } from '../quantity/units.ts';
import type { Unit } from '../unit/unit.ts';
import {
  ALARM_YEARS,
  BATTERY_REST,
  BREAKAWAY_REST,
  CABLE_GIVE,
  CO_PPM,
  CYLINDER_YEARS,
  FURNACE_RISE,
  ICE,
  LUGS_MOVED,
  PRESSURE_SHARE,
  ROPE_WIRES,
  TIRE_YEARS,
  TREAD,
} from './numbers.ts';

const PLACARD: Source = { kind: 'maker', text: "the unit's own tire placard" };
const SIDEWALL: Source = { kind: 'maker', text: 'maximum on the tire sidewall' };

const spec = (rule: RuleId, worst: Outcome, limits: readonly Limit[] = [], params: JudgeSpec['params'] = {}): JudgeSpec => ({
  rule,
  worst,
  limits,
  params,
});

const limit = (
  id: string,
  label: string,
  relation: Limit['relation'],
  value: number,
  unit: UnitId,
  outcome: Outcome,
  source: Source,
): Limit => ({ id, label, relation, si: toSI(value, unit), unit, outcome, source });

/** A limit worked out from an SI figure of the unit. */
const limitSi = (
  id: string,
  label: string,
  relation: Limit['relation'],
  si: number,
  unit: UnitId,
  outcome: Outcome,
  source: Source,
): Limit => ({
  id,
  label,
  relation,
  si,
  unit,
  outcome,
  source,
});

export const stateSpec = (worst: Outcome): JudgeSpec => spec('state', worst);
export const choiceSpec = (worst: Outcome, outcomes: Readonly<Record<string, Outcome>>): JudgeSpec =>
  spec('choice', worst, [], outcomes);
export const recordOnlySpec = (): JudgeSpec => spec('record-only', 'ok');
export const limitsSpec = (worst: Outcome, limits: readonly Limit[]): JudgeSpec => spec('limits', worst, limits);
export const insideStartSpec = (): JudgeSpec => spec('inside-start', 'ok');
export const outsideTemperatureSpec = (): JudgeSpec => spec('outside-temperature', 'ok');

export function tirePressureSpec(unit: Unit): JudgeSpec {
  const { placardColdPa, sidewallMaxPa } = unit.tires;
  const share = PRESSURE_SHARE;
  const limits: Limit[] = [];
  if (placardColdPa !== null) {
    limits.push(
      limitSi('target', 'placard, cold', 'target', placardColdPa, 'psi', 'watch', PLACARD),
      limitSi('fix', share.fix.label, 'at-least', placardColdPa * share.fix.value, 'psi', 'fix', share.fix.source),
      limitSi('hold', share.hold.label, 'at-least', placardColdPa * share.hold.value, 'psi', 'hold', share.hold.source),
    );
  }
  if (sidewallMaxPa !== null) limits.push(limitSi('cap', 'sidewall maximum', 'at-most', sidewallMaxPa, 'psi', 'fix', SIDEWALL));
  return spec('tire-pressure', 'hold', limits, {
    placardPa: placardColdPa,
    sidewallMaxPa,
    elevationM: unit.homeElevationM,
    placardTemperatureK: null,
  });
}

export function treadSpec(): JudgeSpec {
  return spec('tread-depth', 'hold', [
    limit('watch', TREAD.watch.label, 'at-least', TREAD.watch.value, '32nds', 'watch', TREAD.watch.source),
    limit('fix', TREAD.fix.label, 'at-least', TREAD.fix.value, '32nds', 'fix', TREAD.fix.source),
    limit('hold', TREAD.hold.label, 'at-least', TREAD.hold.value, '32nds', 'hold', TREAD.hold.source),
  ]);
}

export function tireAgeSpec(): JudgeSpec {
  return spec('tire-age', 'hold', [
    limit('watch', TIRE_YEARS.watch.label, 'at-most', TIRE_YEARS.watch.value, 'year', 'watch', TIRE_YEARS.watch.source),
    limit('fix', TIRE_YEARS.fix.label, 'at-most', TIRE_YEARS.fix.value, 'year', 'fix', TIRE_YEARS.fix.source),
    limit('hold', TIRE_YEARS.hold.label, 'at-most', TIRE_YEARS.hold.value, 'year', 'hold', TIRE_YEARS.hold.source),
  ]);
}

export function lugsMovedSpec(unit: Unit): JudgeSpec {
  const { lugs, torqueNm, torqueSource } = unit.wheels;
  return spec(
    'lugs-moved',
    'hold',
    [
      limit('watch', LUGS_MOVED.watch.label, 'at-most', LUGS_MOVED.watch.value, 'count', 'watch', LUGS_MOVED.watch.source),
      limit('hold', LUGS_MOVED.hold.label, 'at-most', LUGS_MOVED.hold.value, 'count', 'hold', LUGS_MOVED.hold.source),
    ],
    { lugs, torqueNm, torqueSource },
  );
}

export function brokenWiresSpec(unit: Unit): JudgeSpec {
  return spec(
    'broken-wires',
    'hold',
    [
      limit('fix', ROPE_WIRES.fix.label, 'at-most', ROPE_WIRES.fix.value, 'count', 'fix', ROPE_WIRES.fix.source),
      limit('hold', ROPE_WIRES.hold.label, 'at-most', ROPE_WIRES.hold.value, 'count', 'hold', ROPE_WIRES.hold.source),
    ],
    { construction: unit.lift.cableConstruction },
  );
}

export function cablePushSpec(_unit: Unit): JudgeSpec {
  return spec('cable-push', 'hold', [
    limit('watch', CABLE_GIVE.watch.label, 'at-least', CABLE_GIVE.watch.value, 'in', 'watch', CABLE_GIVE.watch.source),
    limit('hold', CABLE_GIVE.hold.label, 'at-least', CABLE_GIVE.hold.value, 'in', 'hold', CABLE_GIVE.hold.source),
  ]);
}

export function batteryRestSpec(unit: Unit): JudgeSpec {
  const { kind } = unit.battery;
  const rows = kind === 'flooded' || kind === 'agm' || kind === 'lifepo4' ? BATTERY_REST[kind] : null;
  return spec(
    'battery-rest',
    'fix',
    rows === null
      ? []
      : [
          limit('watch', rows.watch.label, 'at-least', rows.watch.value, 'V', 'watch', rows.watch.source),
          limit('fix', rows.fix.label, 'at-least', rows.fix.value, 'V', 'fix', rows.fix.source),
        ],
    { kind },
  );
}

export function breakawayRestSpec(): JudgeSpec {
  return spec('breakaway-rest', 'hold', [
    limit('watch', BREAKAWAY_REST.watch.label, 'at-least', BREAKAWAY_REST.watch.value, 'V', 'watch', BREAKAWAY_REST.watch.source),
    limit('fix', BREAKAWAY_REST.fix.label, 'at-least', BREAKAWAY_REST.fix.value, 'V', 'fix', BREAKAWAY_REST.fix.source),
    limit('hold', BREAKAWAY_REST.hold.label, 'at-least', BREAKAWAY_REST.hold.value, 'V', 'hold', BREAKAWAY_REST.hold.source),
  ]);
}

export function furnaceRiseSpec(
  unit: Unit,
  { startKey, minutes }: { readonly startKey: string; readonly minutes: number },
): JudgeSpec {
  return spec(
    'furnace-rise',
    'fix',
    [
      limit(
        'watch',
        FURNACE_RISE.watch.label,
        'at-least',
        FURNACE_RISE.watch.value,
        'F-diff',
        'watch',
        FURNACE_RISE.watch.source,
      ),
      limit('fix', FURNACE_RISE.fix.label, 'at-least', FURNACE_RISE.fix.value, 'F-diff', 'fix', FURNACE_RISE.fix.source),
    ],
    { startKey, minutes, inputW: unit.heat.inputW },
  );
}

export function cylinderWeightSpec(unit: Unit, index: number): JudgeSpec {
  const cylinder = unit.cylinders[index];
  return spec('cylinder-weight', 'watch', [], {
    tareKg: cylinder?.tareKg ?? null,
    capacityKg: cylinder?.capacityKg ?? null,
    inputW: unit.heat.inputW,
  });
}

export function cylinderDateSpec(unit: Unit, index: number): JudgeSpec {
  const suffix = unit.cylinders[index]?.dateSuffix ?? null;
  const row = suffix === 'E' ? CYLINDER_YEARS.external : suffix === 'S' ? CYLINDER_YEARS.proof : CYLINDER_YEARS.none;
  return spec('cylinder-date', 'fix', [limit('fix', row.label, 'at-most', row.value, 'year', 'fix', row.source)], { suffix });
}

export function alarmDateSpec(unit: Unit, alarm: 'co' | 'gas' | 'smoke'): JudgeSpec {
  const row = ALARM_YEARS[alarm];
  return spec('alarm-date', 'fix', [limit('fix', row.label, 'at-most', row.value, 'year', 'fix', row.source)], {
    alarm,
    dateMeans: unit.alarms[alarm].dateMeans,
  });
}

export function coReadingSpec(): JudgeSpec {
  return spec('co-reading', 'hold', [
    limit('watch', CO_PPM.watch.label, 'at-most', CO_PPM.watch.value, 'ppm', 'watch', CO_PPM.watch.source),
    limit('fix', CO_PPM.fix.label, 'at-most', CO_PPM.fix.value, 'ppm', 'fix', CO_PPM.fix.source),
    limit('hold', CO_PPM.hold.label, 'at-most', CO_PPM.hold.value, 'ppm', 'hold', CO_PPM.hold.source),
  ]);
}

export function iceThicknessSpec(): JudgeSpec {
  return spec('ice-thickness', 'hold', [
    limit('hold', ICE.house.label, 'at-least', ICE.house.value, 'in', 'hold', ICE.house.source),
  ]);
}
