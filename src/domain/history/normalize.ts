/**
 * Bring a gauge pressure from one air temperature to another: what the same amount of air would read there.
 *
 * Method: Gay-Lussac's law on absolute pressure at constant volume, p2 = (pg + pa) * T2 / T1 - pa; exact for an ideal gas.
 * A tire's volume grows slightly with pressure, which makes the true change a few percent smaller.
 * Source: ideal gas law, standard physics.
 * @param gaugePa gauge pressure, Pa, above -atmosphericPa
 * @param fromK temperature of the air in the tire at the reading, K, > 0
 * @param toK temperature to bring it to, K, > 0
 * @param atmosphericPa absolute pressure of the outside air, Pa, > 0
 * @returns gauge pressure at `toK`, Pa
 * @throws RangeError for a value out of range or not finite
 */
export function pressureAtTemperature(gaugePa: number, fromK: number, toK: number, atmosphericPa: number): number {
  if (!Number.isFinite(gaugePa) || !(fromK > 0 && Number.isFinite(fromK)) || !(toK > 0 && Number.isFinite(toK))) {
    throw new RangeError('pressureAtTemperature requires a finite pressure and temperatures above 0 K');
  }
  if (!(atmosphericPa > 0 && Number.isFinite(atmosphericPa)) || gaugePa <= -atmosphericPa) {
    throw new RangeError('pressureAtTemperature requires an absolute pressure above 0 Pa');
  }
  return ((gaugePa + atmosphericPa) * toK) / fromK - atmosphericPa;
}

/** Sea-level pressure of the US Standard Atmosphere 1976, Pa. */
export const SEA_LEVEL_PA = 101_325;

/**
 * Absolute pressure of the outside air at a height.
 *
 * Method: p = 101325 (1 - 0.0065 h / 288.15)^5.25588, the troposphere layer.
 * Source: US Standard Atmosphere 1976 (formula from memory; its table gives 98,945 Pa at 200 m within rounding).
 * @param elevationM metres above sea level, -500 .. 11000; null where it is not known: sea level is taken, an error
 * of at most 0.6 % of a tire's change with temperature per 300 m
 * @returns Pa
 */
export function outsideAirPressure(elevationM: number | null): number {
  if (elevationM === null || !Number.isFinite(elevationM) || elevationM < -500 || elevationM > 11_000) return SEA_LEVEL_PA;
  return SEA_LEVEL_PA * (1 - (0.0065 * elevationM) / 288.15) ** 5.25588;
}

/** Temperature that cold placard pressures are commonly understood at, 20 °C: common practice, no source. */
export const REFERENCE_K = 293.15;
