/** Pressure of the same air at another temperature or height. */
import { AIR } from '../judge/numbers/air.ts';

/**
 * Absolute pressure of the outside air.
 *
 * Method: p = p0 (1 - L h / T0)^5.25588. Source: US Standard Atmosphere 1976, troposphere.
 * @param elevationM metres above sea level, -500 to 11 000
 * @returns Pa
 * @throws RangeError outside that range
 */
export function airPressureAt(elevationM: number): number {
  if (!(elevationM >= -500 && elevationM <= 11_000)) throw new RangeError('airPressureAt requires -500 to 11 000 m');
  return AIR.seaLevel.si * (1 - (AIR.lapse.si * elevationM) / AIR.standardTemperature.si) ** AIR.exponent.si;
}

export interface AirState {
  /** Of the air inside the tire, K, > 0. */
  readonly temperatureK: number;
  /** Absolute pressure of the air outside, Pa, > 0. */
  readonly outsidePa: number;
}

/**
 * What a gauge would read, had the same air in the same tire another temperature, or stood it at another height.
 *
 * Method: p / T is constant at constant volume, both absolute; gauge = absolute - outside. A tire grows a little with its
 * pressure, which makes the true change a few percent smaller.
 * @param gaugePa reading, Pa, > -from.outsidePa
 * @returns gauge pressure, Pa
 * @throws RangeError for a value out of range or not finite
 */
export function gaugeIn(gaugePa: number, from: AirState, to: AirState): number {
  for (const { temperatureK, outsidePa } of [from, to]) {
    if (!(temperatureK > 0 && outsidePa > 0 && Number.isFinite(temperatureK) && Number.isFinite(outsidePa))) {
      throw new RangeError('gaugeIn requires temperatures and outside pressures above 0');
    }
  }
  if (!(gaugePa > -from.outsidePa) || !Number.isFinite(gaugePa)) throw new RangeError('gaugeIn requires a pressure above vacuum');
  return ((gaugePa + from.outsidePa) * to.temperatureK) / from.temperatureK - to.outsidePa;
}

/** Change of a gauge reading for each kelvin, Pa/K: (gauge + outside) / T. @throws RangeError as {@link gaugeIn} */
export function gaugePerKelvin(gaugePa: number, { temperatureK, outsidePa }: AirState): number {
  if (!(temperatureK > 0 && outsidePa > 0 && gaugePa > -outsidePa) || !Number.isFinite(gaugePa + temperatureK + outsidePa)) {
    throw new RangeError('gaugePerKelvin requires a pressure above vacuum and a temperature above 0 K');
  }
  return (gaugePa + outsidePa) / temperatureK;
}
