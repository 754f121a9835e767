/** A new version of the app: found, told, and applied only when the person agrees and no round is open. */
import { setup, stateIn } from 'xstate';

export type UpdateEvent =
  | { type: 'version.found' }
  | { type: 'round.opened' }
  | { type: 'round.closed' }
  | { type: 'update.requested' };

export const updateMachine = setup({
  types: { events: {} as UpdateEvent },
  actions: {
    /** Hands over to the waiting version and reloads. */
    applyUpdate: () => {
      throw new Error('updateMachine requires applyUpdate');
    },
  },
  guards: { noRoundOpen: stateIn({ round: 'none' }) },
}).createMachine({
  id: 'update',
  type: 'parallel',
  states: {
    version: {
      initial: 'current',
      states: {
        current: { on: { 'version.found': 'waiting' } },
        waiting: { on: { 'update.requested': { guard: 'noRoundOpen', target: 'applying' } } },
        applying: { entry: 'applyUpdate' },
      },
    },
    round: {
      initial: 'none',
      states: { none: { on: { 'round.opened': 'open' } }, open: { on: { 'round.closed': 'none' } } },
    },
  },
});
