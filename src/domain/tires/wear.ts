/** Tread: what is left, and what uneven wear says. */
import { TIRES } from '../judge/numbers/tires.ts';

/** Depth left above the legal minimum, m; 0 at or below it. */
export function wearLeft(depthM: number): number {
  return Math.max(0, depthM - TIRES.treadMinimum.si);
}

export type WearPattern = 'even' | 'both-shoulders' | 'center' | 'one-shoulder';

/**
 * What depths across one tire say (common practice): both shoulders worn is air too low, the center too high, one
 * shoulder a bent or misaligned axle.
 * @param depths inner shoulder, center, outer shoulder, m
 */
export function wearPattern([inner, center, outer]: readonly [number, number, number]): WearPattern {
  const uneven = TIRES.treadUneven.si * (1 + 1e-9);
  if (Math.abs(inner - outer) > uneven) return 'one-shoulder';
  const shoulders = (inner + outer) / 2;
  if (center - shoulders > uneven) return 'both-shoulders';
  if (shoulders - center > uneven) return 'center';
  return 'even';
}

export const WEAR_SENTENCES: Readonly<Record<WearPattern, string>> = {
  even: 'Worn evenly.',
  'both-shoulders': 'Worn at both shoulders: it ran with too little air.',
  center: 'Worn in the center: it ran with too much air.',
  'one-shoulder': 'Worn at one shoulder: have the axle looked at before a new tire goes on.',
};
