/** Tire pressures of different days brought to one air temperature, so that they can be compared. */
import { AIR } from '../judge/numbers/air.ts';
import { airPressureAt, gaugeIn } from '../tires/gasLaw.ts';

/** Temperature that cold placard pressures are commonly understood at. */
export const REFERENCE_K = AIR.compareAt.si;

/** Sea-level pressure of the US Standard Atmosphere 1976, Pa. */
export const SEA_LEVEL_PA = AIR.seaLevel.si;

/**
 * What the same amount of air would read at another temperature, at the same place ({@link gaugeIn}).
 * @param gaugePa gauge pressure, Pa, above -outsidePa
 * @param fromK temperature of the air in the tire at the reading, K, > 0
 * @param toK temperature to bring it to, K, > 0
 * @param outsidePa absolute pressure of the outside air, Pa, > 0
 * @throws RangeError for a value out of range or not finite
 */
export function pressureAtTemperature(gaugePa: number, fromK: number, toK: number, outsidePa: number): number {
  return gaugeIn(gaugePa, { temperatureK: fromK, outsidePa }, { temperatureK: toK, outsidePa });
}

/**
 * Absolute pressure of the outside air ({@link airPressureAt}).
 * @param elevationM metres above sea level; null or out of range: sea level is taken, an error of at most 0.6 % of a tire's
 * change with temperature per 300 m
 * @returns Pa
 */
export function outsideAirPressure(elevationM: number | null): number {
  if (elevationM === null || !(elevationM >= -500 && elevationM <= 11_000)) return SEA_LEVEL_PA;
  return airPressureAt(elevationM);
}
