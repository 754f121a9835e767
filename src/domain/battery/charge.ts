/** Charge of a resting 12 volt battery, when it freezes, and how long it lasts. Tables are approximate: always "about". */
import { BATTERY, COLD_CAPACITY_ROWS, FREEZE_ROWS, REST_ROWS } from '../judge/numbers/battery.ts';
import { fromSI, toSI } from '../quantity/units.ts';

export type Chemistry = keyof typeof REST_ROWS;

/** Straight lines between rows [x, y] with x rising; held at the ends. */
function interpolate(rows: readonly (readonly [number, number])[], x: number): number {
  const first = rows[0];
  const last = rows.at(-1);
  if (!first || !last) throw new RangeError('interpolate requires rows');
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  const above = rows.findIndex(([at]) => at >= x);
  const [x0, y0] = rows[above - 1] ?? first;
  const [x1, y1] = rows[above] ?? last;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/**
 * Charge from a rest voltage, 0 to 1. Rested four hours without load or charger; the table is for 77 °F, and rest voltage
 * hardly changes with temperature.
 * @throws RangeError for a voltage that is not finite
 */
export function chargeAtRest(chemistry: Chemistry, volts: number): number {
  if (!Number.isFinite(volts)) throw new RangeError('chargeAtRest requires a finite voltage');
  return (
    interpolate(
      REST_ROWS[chemistry].map(([percent, at]) => [at, percent] as const),
      volts,
    ) / 100
  );
}

/** Rest voltage at a charge, V: inverse of {@link chargeAtRest} between its ends. */
export function restVoltage(chemistry: Chemistry, charge: number): number {
  return interpolate(REST_ROWS[chemistry], charge * 100);
}

/** Where a lead battery freezes at a charge, K. */
export function freezesAt(charge: number): number {
  const f = interpolate(
    FREEZE_ROWS.map(([percent, , freezesF]) => [percent, freezesF] as const),
    charge * 100,
  );
  return toSI(f, 'F');
}

/** Where lead acid of a specific gravity freezes, K. */
export function freezesAtGravity(gravity: number): number {
  return toSI(
    interpolate(
      FREEZE_ROWS.map(([, at, freezesF]) => [at, freezesF] as const),
      gravity,
    ),
    'F',
  );
}

/** Part of its capacity that a battery gives at a temperature; lithium gives nearly all down to its own cut-off. */
export function capacityShare(chemistry: Chemistry, temperatureK: number): number {
  return chemistry === 'lifepo4' ? 1 : interpolate(COLD_CAPACITY_ROWS, fromSI(temperatureK, 'F'));
}

export interface NightLoad {
  readonly fanA: number;
  /** Part of the time the fan runs, 0 to 1. */
  readonly duty: number;
  readonly standbyA: number;
}

/** Charge that so many hours take, Ah. */
export function nightAh({ fanA, duty, standbyA }: NightLoad, hours: number): number {
  return (fanA * duty + standbyA) * hours;
}

/**
 * Charge to be used at a temperature, Ah: lead to half, lithium to four fifths, less in the cold.
 * @param charge 0 to 1, now
 */
export function usableAh(chemistry: Chemistry, capacityAh: number, charge: number, temperatureK: number): number {
  const floor = 1 - (chemistry === 'lifepo4' ? BATTERY.lithiumUsable.si : BATTERY.leadUsable.si);
  return capacityAh * capacityShare(chemistry, temperatureK) * Math.max(0, charge - floor);
}

/** Hours that the usable charge lasts. */
export function hoursLeft(ah: number, { fanA, duty, standbyA }: NightLoad): number {
  const amps = fanA * duty + standbyA;
  return amps > 0 ? ah / amps : Number.POSITIVE_INFINITY;
}

/** Least charge that holds electric brakes for the fifteen minutes after a breakaway, Ah. */
export function breakawayAh(wheels: number): number {
  return (wheels * BATTERY.brakePerWheel.value * BATTERY.breakawayMinutes.si) / 3600;
}

/**
 * Specific gravity brought to 80 °F: 0.004 for each 10 °F, added above, taken off below. From memory.
 */
export function gravityAt80F(gravity: number, acidK: number): number {
  return gravity + (0.004 * (fromSI(acidK, 'F') - 80)) / 10;
}
