/** Wind speed from how the wind looks and feels, for the answers of the catalogue's wind check. */
import { WIND_BY_SIGHT } from '../judge/numbers/cold.ts';

/** @returns m/s; null for an answer that is not one of the check's */
export function windBySight(option: string): number | null {
  return Object.hasOwn(WIND_BY_SIGHT, option) ? (WIND_BY_SIGHT[option]?.mps ?? null) : null;
}
