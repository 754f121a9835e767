/** Wind chill and frostbite. Acts on skin only: a tire, a battery, a tank is at the temperature of the air. */
import { COLD, FROSTBITE_ROWS, FROSTBITE_TERMS } from '../judge/numbers/cold.ts';
import { fromSI, toSI } from '../quantity/units.ts';

/**
 * Felt temperature of bare skin, K. Source: National Weather Service, 2001.
 * @param temperatureK air, K, up to 50 °F
 * @param windMps wind at standard height, m/s, above 3 mph
 * @returns null where wind chill is not defined; the air temperature stands
 */
export function windChill(temperatureK: number, windMps: number): number | null {
  if (!(temperatureK > 0) || !Number.isFinite(temperatureK) || !Number.isFinite(windMps)) return null;
  const t = fromSI(temperatureK, 'F');
  const v = fromSI(windMps, 'mph');
  if (t > COLD.warmest.value + 1e-9 || v <= COLD.calm.value + 1e-9) return null;
  const wind = v ** COLD.windExponent.value;
  return toSI(COLD.constant.value + COLD.byTemperature.value * t - COLD.byWind.value * wind + COLD.byBoth.value * t * wind, 'F');
}

/**
 * Minutes until bare skin can freeze: the shorter of the weather service's band and Environment Canada's formula.
 * @param windMps 0 for still air
 * @returns null where neither says that it freezes within half an hour
 */
export function frostbiteMinutes(temperatureK: number, windMps: number): number | null {
  const felt = fromSI(windChill(temperatureK, windMps) ?? temperatureK, 'F');
  const band = FROSTBITE_ROWS.filter(([at]) => felt <= at).at(-1)?.[1] ?? null;
  const formula = formulaMinutes(temperatureK, windMps);
  if (band === null) return formula !== null && formula <= 30 ? formula : null;
  return formula === null ? band : Math.min(band, formula);
}

/** Environment Canada's formula (from memory), minutes; null outside its range. Never below 1. */
export function formulaMinutes(temperatureK: number, windMps: number): number | null {
  const c = fromSI(temperatureK, 'C');
  const v = fromSI(windMps, 'km/h');
  const terms = FROSTBITE_TERMS;
  if (!(v > terms.windAboveKmh && c < terms.belowC)) return null;
  const minutes = (terms.a - terms.b * (terms.c * v + terms.d)) * (-terms.d - c) ** terms.e;
  return Math.max(1, minutes);
}
