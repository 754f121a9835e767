import type { RoundKind } from './check.ts';

/** Which rounds a check belongs to. */
export const BEFORE_TOWING: readonly RoundKind[] = ['before-towing'];
export const BEFORE_LEAVING: readonly RoundKind[] = ['before-leaving-the-lake'];
export const BOTH_DEPARTURES: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake'];
export const ON_THE_ROAD: readonly RoundKind[] = ['stop-on-the-road'];
export const EVERY_ROUND: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];
