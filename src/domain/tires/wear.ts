/** Tread: what is left. */
import { TIRES } from '../judge/numbers/tires.ts';

/** Depth left above the legal minimum, m; 0 at or below it. */
export function wearLeft(depthM: number): number {
  return Math.max(0, depthM - TIRES.treadMinimum.si);
}
