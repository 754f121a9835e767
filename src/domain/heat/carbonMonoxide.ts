/** What a carbon monoxide number means. */
import { ALARMS, CO_ALARM_ROWS } from '../judge/numbers/alarms.ts';

export type CoBand = 'air' | 'find' | 'out' | 'emergency';

/** @param share of the air by volume (ppm times 1e-6), >= 0 */
export function coBand(share: number): CoBand {
  const from = (si: number) => share >= si * (1 - 1e-9);
  if (from(ALARMS.coEmergency.si)) return 'emergency';
  if (from(ALARMS.coOut.si)) return 'out';
  return from(ALARMS.coAir.si) ? 'find' : 'air';
}

/** Molar mass of carbon monoxide over the molar volume at 25 °C and one atmosphere (28.01 g, 24.45 L). */
const MG_PER_M3 = 28.01 / 24.45;

/** Parts per million as milligrams in a cubic meter at 25 °C, and back. */
export const ppmToMgPerM3 = (ppm: number) => ppm * MG_PER_M3;
export const mgPerM3ToPpm = (mgPerM3: number) => mgPerM3 / MG_PER_M3;

/** Propane in air at which a gas alarm sounds at the latest, ppm: a quarter of the lower flammable limit. */
export function gasAlarmPpm(lowerLimitPercent: number = ALARMS.propaneLower.value): number {
  return lowerLimitPercent * 1e4 * ALARMS.gasAlarmAt.si;
}

/**
 * When an alarm must sound at a level, minutes; null below the lowest level at which it must at all: silence proves nothing
 * there. Source: UL 2034.
 */
export function alarmMinutes(ppm: number): { readonly from: number; readonly to: number } | null {
  const row = CO_ALARM_ROWS.filter(([level]) => ppm >= level - 1e-6).at(-1);
  return row ? { from: row[1], to: row[2] } : null;
}
