/**
 * What a sideways push says of a cable's tension. Nobody pushes a cable that holds a raised unit from beneath it: in travel
 * position only, pins in, from the side.
 */
import { LIFT } from '../judge/numbers/lift.ts';

/**
 * Tension of a cable pushed sideways at its middle, in the pushed state, N.
 *
 * Method: balance of forces at the middle, exact: T = (F / 2) sqrt(1 + (L / 2d)²). For small d it is F L / 4d.
 * @param forceN push, N, >= 0
 * @param spanM free length between its fixed points, m, > 0
 * @param giveM how far the middle moved, m, > 0
 * @throws RangeError out of range
 */
export function pushedTension(forceN: number, spanM: number, giveM: number): number {
  if (!(forceN >= 0 && spanM > 0 && giveM > 0) || !Number.isFinite(forceN + spanM + giveM)) {
    throw new RangeError('pushedTension requires force >= 0, span > 0 and give > 0');
  }
  return (forceN / 2) * Math.hypot(1, spanM / (2 * giveM));
}

/** The give that a tension allows, m: inverse of {@link pushedTension}; infinite for a cable that does not resist. */
export function giveFor(forceN: number, spanM: number, tensionN: number): number {
  const ratio = (2 * tensionN) / forceN;
  return ratio <= 1 ? Number.POSITIVE_INFINITY : spanM / (2 * Math.sqrt(ratio * ratio - 1));
}

/**
 * Tension before the push, N: the push itself stretches the cable and adds some. Never below 0.
 * @param stiffnessN modulus times metal area of the cable, N, > 0
 */
export function restTension(tensionN: number, spanM: number, giveM: number, stiffnessN: number): number {
  const stretch = Math.hypot(1, (2 * giveM) / spanM) - 1;
  return Math.max(0, tensionN - stiffnessN * stretch);
}

export interface TensionEstimate {
  readonly lowN: number;
  readonly likelyN: number;
  readonly highN: number;
}

/**
 * Tension with what it may be off: the push is a hand's (20 lbf, give or take half), the give is read by eye.
 * @returns null for no give at all: then the cable is tight and nothing can be worked out
 */
export function tensionEstimate(giveM: number, spanM: number, pushN: number = LIFT.push.si): TensionEstimate | null {
  if (!(giveM > 0 && spanM > 0 && pushN > 0)) return null;
  const spread = LIFT.pushSpread.si;
  const read = LIFT.readSpread.si;
  return {
    lowN: pushedTension(pushN * (1 - spread), spanM, giveM + read),
    likelyN: pushedTension(pushN, spanM, giveM),
    highN: giveM > read ? pushedTension(pushN * (1 + spread), spanM, giveM - read) : Number.POSITIVE_INFINITY,
  };
}

/** Whether two sides differ enough to say so: one gives twice as much as the other. */
export function sidesDiffer(aM: number, bM: number): boolean {
  const [less, more] = aM < bM ? [aM, bM] : [bM, aM];
  return more > 0 && less * LIFT.sideRatio.value <= more;
}
