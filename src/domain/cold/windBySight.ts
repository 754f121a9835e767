/**
 * Wind speed from how the wind looks and feels, for the answers of the catalogue's wind check.
 * Source: Beaufort scale, middle of forces 0, 3, 5 and 7 in m/s (from memory).
 */
const SPEEDS_MPS: Readonly<Record<string, number>> = { calm: 0, light: 4.4, windy: 9.4, strong: 15.5 };

/** @returns m/s; null for an answer that is not one of the check's */
export function windBySight(option: string): number | null {
  return SPEEDS_MPS[option] ?? null;
}
