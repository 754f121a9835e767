/** Propane: pressure in the tank, and how long what is left burns. Fuel-grade gas carries ethane: up to 15 percent higher. */
import { HEAT, PROPANE_TERMS } from '../judge/numbers/heat.ts';

/**
 * Absolute vapor pressure of pure propane, Pa.
 *
 * Source: saturation equation of Lemmon, McLinden and Wagner, 2009. Its boiling point at 101 325 Pa, 231.036 K, is met; the
 * common three-term equation for this range reads about three percent high in winter.
 * @param temperatureK K, from the triple point (85.525) to the critical point (369.89)
 * @throws RangeError outside
 */
export function vaporPressure(temperatureK: number): number {
  const critical = HEAT.criticalTemperature.si;
  if (!(temperatureK >= HEAT.triplePoint.si && temperatureK <= critical)) {
    throw new RangeError('vaporPressure requires a temperature from the triple to the critical point of propane');
  }
  const t = 1 - temperatureK / critical;
  const sum = PROPANE_TERMS.reduce((total, [coefficient, exponent]) => total + coefficient * t ** exponent, 0);
  return HEAT.criticalPressure.si * Math.exp((critical / temperatureK) * sum);
}

/** What a gauge on the tank reads, Pa; below 0 the tank can not feed at all. */
export function tankGauge(temperatureK: number, outsidePa: number): number {
  return vaporPressure(temperatureK) - outsidePa;
}

/**
 * Temperature at which the tank no longer gives the first-stage regulator its pressure, K. A burning tank is colder than the
 * air around it, and a low one more so: it stops sooner.
 * @param outsidePa absolute pressure of the air, Pa
 */
export function feedsDownTo(outsidePa: number, regulatorPa: number = HEAT.regulator.si): number {
  const wanted = outsidePa + regulatorPa;
  let low: number = HEAT.triplePoint.si;
  let high: number = HEAT.criticalTemperature.si;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (vaporPressure(middle) < wanted) low = middle;
    else high = middle;
  }
  return high;
}

/** Fuel a cylinder takes by its stamped water capacity, kg. Source: 49 CFR 173.304a(d), 42 percent (from memory). */
export function fillOf(waterCapacityKg: number): number {
  return waterCapacityKg * HEAT.fill.si;
}

export type FuelLeft =
  | { readonly ok: true; readonly fuelKg: number; readonly share: number | null }
  | { readonly ok: false; readonly sentence: string };

/**
 * Fuel by weighing: scale less tare.
 * @param capacityKg fuel when full; null: share is null
 */
export function fuelLeft(scaleKg: number, tareKg: number, capacityKg: number | null): FuelLeft {
  const slack = HEAT.fillSlack.si;
  if (!(scaleKg > 0 && tareKg > 0) || !Number.isFinite(scaleKg + tareKg)) return { ok: false, sentence: 'That is no weight.' };
  const fuelKg = scaleKg - tareKg;
  if (fuelKg < -slack / 2) {
    return { ok: false, sentence: 'That is less than the empty cylinder weighs. Weigh it again, or look at the tare.' };
  }
  if (capacityKg !== null && fuelKg > capacityKg + slack) {
    return { ok: false, sentence: 'That is more than a full cylinder weighs. Weigh it again, or look at the tare.' };
  }
  const left = Math.max(0, fuelKg);
  return { ok: true, fuelKg: left, share: capacityKg !== null && capacityKg > 0 ? left / capacityKg : null };
}

/**
 * Seconds of burning.
 * @param inputW INPUT rating of the heater, W, > 0
 * @param duty part of the time it burns, > 0, <= 1
 * @throws RangeError out of range
 */
export function burnTime(fuelKg: number, inputW: number, duty = 1): number {
  if (!(fuelKg >= 0 && inputW > 0 && duty > 0 && duty <= 1) || !Number.isFinite(fuelKg + inputW)) {
    throw new RangeError('burnTime requires fuel >= 0, input > 0 and duty in (0, 1]');
  }
  return (fuelKg * HEAT.propaneHeat.si) / (inputW * duty);
}
