/** What is expected where the round itself asks, and not a check: to begin, to go on, to be done. */
import type { Expects } from '../checks/expects.ts';

export const READY: Expects = { kind: 'state', ok: ['ready', 'start', 'begin'], problem: ['not yet'], yesMeans: 'ok' };

export const CARRY_ON: Expects = {
  kind: 'state',
  ok: ['carry on', 'back', 'resume', 'ready'],
  problem: ['not yet'],
  yesMeans: 'ok',
};

export const DONE: Expects = {
  kind: 'state',
  ok: ['round complete', 'complete', 'finished', 'done'],
  problem: ['not yet'],
  yesMeans: 'ok',
};

export const CALLS: readonly Expects[] = [READY, CARRY_ON, DONE];
