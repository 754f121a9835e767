/**
 * One timed check beside the round: waits for an absolute deadline and reports once. The deadline is worked out from the
 * record, so a resumed round waits for what is left, or is told at once that it is due.
 */
import { fromPromise, sendParent, setup } from 'xstate';

export type TimerDueEvent = { readonly type: 'timer.due'; readonly key: string };

export const timedCheckMachine = setup({
  types: { context: {} as { key: string; dueAt: number }, input: {} as { key: string; dueAt: number } },
  actors: {
    /** Resolves when the clock reaches `at` (epoch milliseconds), at once when it has passed. */
    deadline: fromPromise<void, { at: number }>(() => Promise.reject(new Error('timedCheckMachine requires deadline'))),
  },
}).createMachine({
  id: 'timedCheck',
  context: ({ input }) => input,
  initial: 'running',
  states: {
    running: {
      invoke: { src: 'deadline', input: ({ context }) => ({ at: context.dueAt }), onDone: 'due', onError: 'due' },
    },
    due: {
      type: 'final',
      entry: sendParent(({ context }): TimerDueEvent => ({ type: 'timer.due', key: context.key })),
    },
  },
});
