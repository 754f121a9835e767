/** The three kinds of round in words, wherever a screen names one. */
import type { RoundKind } from '../../domain/checks/check.ts';

export const ROUND_NAMES: Readonly<Record<RoundKind, string>> = {
  'before-towing': 'Before towing',
  'before-leaving-the-lake': 'Before leaving the lake',
  'stop-on-the-road': 'Stop on the road',
};
