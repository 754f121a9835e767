/** Ball and coupler. A larger coupler drops onto a smaller ball, looks right and comes off. */
import type { Outcome } from '../checks/outcome.ts';

export interface CouplingVerdict {
  readonly outcome: Outcome;
  readonly sentence: string;
}

/** @param couplerIn @param ballIn sizes as stamped, in; null where not known */
export function judgeCoupling(couplerIn: number | null, ballIn: number | null): CouplingVerdict {
  if (couplerIn === null || ballIn === null || !(couplerIn > 0 && ballIn > 0)) {
    return { outcome: 'watch', sentence: 'Read the size on the coupler and on the ball. They must be the same.' };
  }
  if (Math.abs(couplerIn - ballIn) < 1 / 32) return { outcome: 'ok', sentence: 'Ball and coupler are of one size.' };
  return couplerIn > ballIn
    ? { outcome: 'hold', sentence: 'The ball is too small: it looks right and comes off on the road. Change the ball.' }
    : { outcome: 'hold', sentence: 'The ball is too large for the coupler. Change the ball.' };
}
