/**
 * What each rule is given: limits with their sources, and figures of this very unit. Frozen into a round's plan.
 *
 * Limits by id, and params (all SI; `null`: not known), as the rules read them:
 * - `state`, `record-only`, `inside-start`, `outside-temperature`: none.
 * - `choice`: params: the outcome of each option by its id.
 * - `limits`: each limit in turn; a `target` is never crossed.
 * - `tire-pressure`: limits target (placard), fix, hold (at the figure itself counts as under it), cap (sidewall).
 *   Params placardPa, sidewallMaxPa, maxLoadKg, size, elevationM, placardTemperatureK (null: cold at whatever the air is),
 *   placardKey (check whose answer stands in for a placard that the profile does not have).
 * - `tread-depth`: watch, fix, hold. `tire-age`: watch, fix, hold, in time; reaching one counts.
 * - `since-mounted`: first, second, third: the marks after mounting. Params pulledM.
 * - `lugs-moved`: watch, hold in counts; torque. Params lugs, torqueNm, torqueSource, stud, mounted.
 * - `broken-wires`: fix, hold. Params construction, diameterM. `cable-push`: watch, hold. Params forceN, spanM.
 * - `battery-rest`: watch, fix. Params kind, capacityAh. `breakaway-rest`: fix, hold.
 * - `furnace-rise`: watch, fix, for the rise over `minutes`. Params startKey, minutes, inputW.
 * - `furnace-holds`: none. Params startKey, afterKey, tonightKey: keys of the answers that it is fitted with.
 * - `cylinder-weight`: watch, in fuel left. Params tareKg, capacityKg, inputW. `cylinder-date`: fix, in time. Params suffix,
 *   stamped (the date that the suffix belongs to).
 * - `alarm-date`: fix, in time. Params alarm, dateMeans. `co-reading`: fix, hold, emergency. `ice-thickness`: hold.
 */
import { restVoltage } from '../battery/charge.ts';
import type { JudgeSpec, Limit, Outcome, RuleId, Source } from '../checks/outcome.ts';
import { toSI, type UnitId } from '../quantity/units.ts';
import type { Unit } from '../unit/unit.ts';
import { ALARMS } from './numbers/alarms.ts';
import { BATTERY } from './numbers/battery.ts';
import { ICE } from './numbers/cold.ts';
import type { Figure } from './numbers/entry.ts';
import { HEAT } from './numbers/heat.ts';
import { LIFT } from './numbers/lift.ts';
import { LUGS } from './numbers/lugs.ts';
import { BATTERY_TABLE, MAKERS_TORQUE, OWNERS_TORQUE, PLACARD, SHOPS_TORQUE, SIDEWALL } from './numbers/sources.ts';
import { TIRES } from './numbers/tires.ts';
import { ALARM_YEARS } from './numbers.ts';

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
  si: number,
  unit: UnitId,
  outcome: Outcome,
  source: Source,
): Limit => ({ id, label, relation, si, unit, outcome, source });

const ofFigure = (
  outcome: Outcome,
  label: string,
  relation: Limit['relation'],
  { si, unit, source }: Figure,
  id: string = outcome,
) => limit(id, label, relation, si, unit ?? 'count', outcome, source);

export const stateSpec = (worst: Outcome): JudgeSpec => spec('state', worst);
export const choiceSpec = (worst: Outcome, outcomes: Readonly<Record<string, Outcome>>): JudgeSpec =>
  spec('choice', worst, [], outcomes);
export const recordOnlySpec = (): JudgeSpec => spec('record-only', 'ok');
export const limitsSpec = (worst: Outcome, limits: readonly Limit[]): JudgeSpec => spec('limits', worst, limits);
export const insideStartSpec = (): JudgeSpec => spec('inside-start', 'ok');
export const outsideTemperatureSpec = (): JudgeSpec => spec('outside-temperature', 'ok');

/** @param keys the checks that hold the earlier readings of this test and tonight's forecast */
export const furnaceHoldsSpec = (keys: {
  readonly startKey: string;
  readonly afterKey: string;
  readonly tonightKey: string;
}): JudgeSpec => spec('furnace-holds', 'watch', [], keys);

/** The placard as target and the floors that follow from it. */
export function placardLimits(placardPa: number, source: Source): readonly Limit[] {
  return [
    limit('target', 'placard, cold', 'target', placardPa, 'psi', 'watch', source),
    limit('fix', 'ten percent under the placard', 'at-least', placardPa * (1 - TIRES.low.si), 'psi', 'fix', TIRES.low.source),
    limit(
      'hold',
      'twenty-five percent under the placard',
      'at-least',
      placardPa * (1 - TIRES.veryLow.si),
      'psi',
      'hold',
      TIRES.veryLow.source,
    ),
  ];
}

const PLACARD_KEY = 'placard-pressure';

export function tirePressureSpec(unit: Unit): JudgeSpec {
  const { placardColdPa, sidewallMaxPa, maxLoadKg, size } = unit.tires;
  return spec(
    'tire-pressure',
    'hold',
    [
      ...(placardColdPa === null ? [] : placardLimits(placardColdPa, PLACARD)),
      ...(sidewallMaxPa === null ? [] : [limit('cap', 'sidewall maximum', 'at-most', sidewallMaxPa, 'psi', 'fix', SIDEWALL)]),
    ],
    {
      placardPa: placardColdPa,
      sidewallMaxPa,
      maxLoadKg,
      size,
      elevationM: unit.homeElevationM,
      placardTemperatureK: null,
      placardKey: PLACARD_KEY,
    },
  );
}

export function treadSpec(): JudgeSpec {
  return spec('tread-depth', 'hold', [
    ofFigure('watch', 'wear is well on', 'at-least', TIRES.treadWorn),
    ofFigure('fix', 'replace before the next trip', 'at-least', TIRES.treadLow),
    ofFigure('hold', 'legal minimum', 'at-least', TIRES.treadMinimum),
  ]);
}

export function tireAgeSpec(): JudgeSpec {
  return spec('tire-age', 'hold', [
    ofFigure('watch', 'look closely', 'at-most', TIRES.ageWatch),
    ofFigure('fix', 'replacing is advised', 'at-most', TIRES.ageFix),
    ofFigure('hold', 'not towed on', 'at-most', TIRES.ageHold),
  ]);
}

/** @param mounted this wheel was put back within the last fifty miles: some settling is normal */
export function lugsMovedSpec(unit: Unit, { mounted = false }: { readonly mounted?: boolean } = {}): JudgeSpec {
  const { lugs, torqueNm, torqueSource, stud } = unit.wheels;
  const source = torqueSource === 'maker' ? MAKERS_TORQUE : torqueSource === 'shop' ? SHOPS_TORQUE : OWNERS_TORQUE;
  return spec(
    'lugs-moved',
    'hold',
    [
      ofFigure('watch', 'none may move', 'at-most', LUGS.movedWatch),
      ofFigure('hold', 'wheel off and look', 'at-most', mounted ? LUGS.movedHoldMounted : LUGS.movedHold),
      ...(torqueNm === null ? [] : [limit('torque', 'torque', 'target', torqueNm, 'lb-ft', 'watch', source)]),
    ],
    { lugs, torqueNm, torqueSource, stud, mounted },
  );
}

/** @param pulledM how far the wheel had gone when its lugs were last pulled and none moved, m */
export function sinceMountedSpec(pulledM: number): JudgeSpec {
  return spec(
    'since-mounted',
    'ok',
    [
      ofFigure('ok', 'first pull after mounting', 'at-least', LUGS.retorqueFirst, 'first'),
      ofFigure('ok', 'second pull', 'at-least', LUGS.retorqueSecond, 'second'),
      ofFigure('ok', 'third pull', 'at-least', LUGS.retorqueThird, 'third'),
    ],
    { pulledM },
  );
}

export function brokenWiresSpec(unit: Unit): JudgeSpec {
  const { wiresPerStrand } = LIFT;
  return spec(
    'broken-wires',
    'hold',
    [
      limit('fix', 'no broken wires', 'at-most', 0, 'count', 'fix', {
        kind: 'common-practice',
        text: 'common practice, no source',
      }),
      limit('hold', 'broken wires in one place', 'at-most', wiresPerStrand.si - 1, 'count', 'hold', wiresPerStrand.source),
    ],
    { construction: unit.lift.cableConstruction, diameterM: unit.lift.cableDiameterM },
  );
}

/** @param spanM free length of the cable where it is pushed, where it was measured */
export function cablePushSpec(_unit: Unit, spanM: number | null = null): JudgeSpec {
  return spec(
    'cable-push',
    'hold',
    [
      ofFigure('watch', 'clearly slack', 'at-least', LIFT.stiff),
      ofFigure('hold', 'less gives: the cable carries weight', 'at-least', LIFT.tight),
    ],
    { forceN: LIFT.push.si, spanM },
  );
}

export function batteryRestSpec(unit: Unit): JudgeSpec {
  const { kind, capacityAh } = unit.battery;
  const params = { kind, capacityAh };
  if (kind !== 'flooded' && kind !== 'agm' && kind !== 'lifepo4') return spec('battery-rest', 'fix', [], params);
  const [watch, fix] = kind === 'lifepo4' ? [BATTERY.lithiumWatch, BATTERY.lithiumFix] : [BATTERY.watchCharge, BATTERY.fixCharge];
  const at = ({ si }: Figure) => Math.round(restVoltage(kind, si) * 100) / 100;
  return spec(
    'battery-rest',
    'fix',
    [
      limit('watch', `about ${watch.value} percent full`, 'at-least', at(watch), 'V', 'watch', BATTERY_TABLE),
      limit('fix', `about ${fix.value} percent full`, 'at-least', at(fix), 'V', 'fix', BATTERY_TABLE),
    ],
    params,
  );
}

export function breakawayRestSpec(): JudgeSpec {
  return spec('breakaway-rest', 'hold', [
    ofFigure('fix', 'about three quarters full', 'at-least', BATTERY.breakawayFix),
    ofFigure('hold', 'about half full', 'at-least', BATTERY.breakawayHold),
  ]);
}

export function furnaceRiseSpec(
  unit: Unit,
  { startKey, minutes }: { readonly startKey: string; readonly minutes: number },
): JudgeSpec {
  // Stated for ten minutes; a test of another length asks for as much more or less.
  const scale = (minutes * 60) / HEAT.riseMinutes.si;
  return spec(
    'furnace-rise',
    'fix',
    [
      limit(
        'watch',
        'warms as a sound heater does',
        'at-least',
        HEAT.riseWatch.si * scale,
        'F-diff',
        'watch',
        HEAT.riseWatch.source,
      ),
      limit('fix', 'hardly warms', 'at-least', HEAT.riseFix.si * scale, 'F-diff', 'fix', HEAT.riseFix.source),
    ],
    { startKey, minutes, inputW: unit.heat.inputW },
  );
}

export function cylinderWeightSpec(unit: Unit, index: number): JudgeSpec {
  const { tareKg = null, capacityKg = null } = unit.cylinders[index] ?? {};
  // In what the scale reads, so that the limit stands beside the reading.
  const low = tareKg === null || capacityKg === null ? null : tareKg + capacityKg * HEAT.cylinderLow.si;
  return spec(
    'cylinder-weight',
    'watch',
    low === null ? [] : [limit('watch', 'a quarter full', 'at-least', low, 'lb', 'watch', HEAT.cylinderLow.source)],
    { tareKg, capacityKg, inputW: unit.heat.inputW },
  );
}

export function cylinderDateSpec(unit: Unit, index: number): JudgeSpec {
  const cylinder = unit.cylinders[index];
  const suffix = cylinder?.dateSuffix ?? null;
  const figure = suffix === 'E' ? HEAT.requalifyE : suffix === 'S' ? HEAT.requalifyS : HEAT.requalifyNone;
  return spec('cylinder-date', 'fix', [ofFigure('fix', 'requalification', 'at-most', figure)], {
    suffix,
    stamped: cylinder?.date ?? null,
  });
}

export function alarmDateSpec(unit: Unit, alarm: 'co' | 'gas' | 'smoke'): JudgeSpec {
  return spec('alarm-date', 'fix', [ofFigure('fix', 'life of the alarm', 'at-most', ALARM_YEARS[alarm])], {
    alarm,
    dateMeans: unit.alarms[alarm].dateMeans,
  });
}

export function coReadingSpec(): JudgeSpec {
  const { coAir, coOut, coEmergency } = ALARMS;
  // The figures are the first that are too much, and meters read whole numbers: one less may be.
  const below = (id: string, label: string, outcome: Outcome, { value, source }: Figure) =>
    limit(id, label, 'at-most', toSI(value - 1, 'ppm'), 'ppm', outcome, source);
  return spec('co-reading', 'hold', [
    below('fix', 'more: air out, find the cause, do not sleep there', 'fix', coAir),
    below('hold', 'more: heater off, everyone out', 'hold', coOut),
    below('emergency', 'more: call for help', 'hold', coEmergency),
  ]);
}

export function iceThicknessSpec(): JudgeSpec {
  return spec('ice-thickness', 'hold', [
    ofFigure('hold', 'heavy truck with a wheelhouse, new clear ice', 'at-least', ICE.truckAndHouse),
  ]);
}
