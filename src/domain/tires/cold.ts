/** Whether a tire is cold, and what a warm reading may be when it is. "Cold" is about driving, not about weather. */
import { TIRES } from '../judge/numbers/tires.ts';

/**
 * Whether a tire counts as cold: parked three hours, or hardly driven since it was.
 * @param hoursParked h, >= 0; null where it is not known
 * @param drivenM metres driven since the tire was last cold; null where it is not known
 * @returns null where neither settles it
 */
export function isCold(hoursParked: number | null, drivenM: number | null = null): boolean | null {
  if (hoursParked !== null && hoursParked >= TIRES.coldAfter.value) return true;
  if (drivenM !== null && drivenM >= 0) return drivenM < TIRES.coldWithin.si;
  return hoursParked === null || !(hoursParked >= 0) ? null : false;
}

/**
 * Lowest cold pressure that a reading taken on the road may stand for.
 * Source: build-up of 49 CFR 393.75(i), Table 1, for 41 to 55 mph in the hour before (from memory).
 * @param gaugePa Pa
 * @param maxLoadKg rated load of the tire; null: the larger build-up is taken
 * @returns Pa, never below 0
 */
export function coldEstimate(gaugePa: number, maxLoadKg: number | null): number {
  const isLight = maxLoadKg !== null && maxLoadKg <= TIRES.buildUpSplit.si;
  return Math.max(0, gaugePa - (isLight ? TIRES.buildUpLight.si : TIRES.buildUpHeavy.si));
}
