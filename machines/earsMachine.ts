/**
 * The ears: which recogniser is live, whether the microphone is allowed, and what to fall back to. An exchange asks to
 * listen and is told what was heard; when a recogniser gives up half-way, the next one takes over the same request.
 */
import { assign, fromCallback, fromPromise, setup } from 'xstate';
import type { EarsEvent, EarsId, EarsState, ListenRequest } from '../src/domain/voice/ports.ts';

export type EarsMachineEvent =
  | { type: 'prepare.requested' }
  /** In order of preference. Starts over with the first. */
  | { type: 'providers.chosen'; providers: readonly EarsId[] }
  | { type: 'listen.requested'; request: ListenRequest; reply: (event: EarsEvent) => void }
  | { type: 'listen.stopped'; reply: (event: EarsEvent) => void }
  | { type: 'loading.progressed'; done: number }
  | { type: 'provider.reported'; event: EarsEvent };

interface Listening {
  readonly request: ListenRequest;
  readonly reply: (event: EarsEvent) => void;
}

interface EarsContext {
  readonly providers: readonly EarsId[];
  readonly index: number;
  readonly listening: Listening | null;
  readonly progress: number;
  /** What to do about it, when the ears cannot hear; null when all is well. */
  readonly sentence: string | null;
}

const NO_EARS = 'No voice recogniser can run here. Use the buttons: every check works with them.';
const DENIED = 'The microphone is not allowed. Use the buttons, or allow the microphone in the browser settings and start again.';

export const earsMachine = setup({
  types: { context: {} as EarsContext, events: {} as EarsMachineEvent, input: {} as { providers: readonly EarsId[] } },
  actors: {
    /** Listens with a provider and reports `provider.reported` events. */
    hear: fromCallback<{ type: 'unused' }, { id: EarsId; request: ListenRequest }>(() => {
      throw new Error('earsMachine requires hear');
    }),
    /** Gets a provider ready (permission, model, language pack) and resolves with what was found. */
    prepare: fromPromise<EarsState, { id: EarsId }>(() => Promise.reject(new Error('earsMachine requires prepare'))),
  },
  actions: {
    reply: ({ context }, params: { event: EarsEvent }) => context.listening?.reply(params.event),
  },
  guards: {
    hasNext: ({ context }) => context.index + 1 < context.providers.length,
    isListening: ({ context }) => context.listening !== null,
    /** A late stop of an exchange that is over must not stop its successor. */
    stopsCurrent: ({ context, event }) => event.type === 'listen.stopped' && event.reply === context.listening?.reply,
  },
}).createMachine({
  id: 'ears',
  context: ({ input }) => ({ providers: input.providers, index: 0, listening: null, progress: 0, sentence: null }),
  initial: 'idle',
  on: {
    'providers.chosen': {
      target: '.preparing',
      actions: assign({ providers: ({ event }) => event.providers, index: 0, sentence: null, progress: 0 }),
    },
    'listen.stopped': { guard: 'stopsCurrent', actions: assign({ listening: null }) },
  },
  states: {
    idle: {
      on: {
        'prepare.requested': 'preparing',
        'listen.requested': {
          target: 'preparing',
          actions: assign({ listening: ({ event }) => ({ request: event.request, reply: event.reply }) }),
        },
      },
    },
    preparing: {
      always: {
        guard: ({ context }) => context.providers.length === 0,
        target: 'unavailable',
        actions: assign({ sentence: NO_EARS }),
      },
      on: {
        'loading.progressed': { actions: assign({ progress: ({ event }) => event.done }) },
        'listen.requested': { actions: assign({ listening: ({ event }) => ({ request: event.request, reply: event.reply }) }) },
      },
      invoke: {
        src: 'prepare',
        input: ({ context }) => ({ id: context.providers[context.index] ?? 'built-in' }),
        onDone: [
          { guard: ({ event }) => event.output.kind === 'ready', target: 'ready', actions: assign({ sentence: null }) },
          // A refused permission is refused for every provider: asking again by another road would be a trick.
          { guard: ({ event }) => event.output.kind === 'denied', target: 'denied' },
          {
            guard: 'hasNext',
            target: 'preparing',
            reenter: true,
            actions: assign({ index: ({ context }) => context.index + 1 }),
          },
          {
            target: 'unavailable',
            actions: assign({ sentence: ({ event }) => (event.output.kind === 'unavailable' ? event.output.sentence : NO_EARS) }),
          },
        ],
        onError: [
          {
            guard: 'hasNext',
            target: 'preparing',
            reenter: true,
            actions: assign({ index: ({ context }) => context.index + 1 }),
          },
          { target: 'unavailable', actions: assign({ sentence: NO_EARS }) },
        ],
      },
    },
    ready: {
      initial: 'quiet',
      states: {
        quiet: {
          always: { guard: 'isListening', target: 'hearing' },
          on: {
            'listen.requested': {
              target: 'hearing',
              actions: assign({ listening: ({ event }) => ({ request: event.request, reply: event.reply }) }),
            },
          },
        },
        hearing: {
          invoke: {
            src: 'hear',
            input: ({ context }) => {
              if (!context.listening) throw new Error('earsMachine hears only for a request');
              return { id: context.providers[context.index] ?? 'built-in', request: context.listening.request };
            },
          },
          on: {
            'listen.requested': {
              target: 'hearing',
              reenter: true,
              actions: assign({ listening: ({ event }) => ({ request: event.request, reply: event.reply }) }),
            },
            'listen.stopped': { guard: 'stopsCurrent', target: 'quiet', actions: assign({ listening: null }) },
            'provider.reported': [
              {
                guard: ({ event }) => event.event.type === 'failed' && event.event.reason === 'denied',
                target: '#ears.denied',
              },
              {
                guard: ({ context, event }) => event.event.type === 'failed' && context.index + 1 < context.providers.length,
                target: '#ears.preparing',
                actions: assign({ index: ({ context }) => context.index + 1 }),
              },
              {
                guard: ({ event }) => event.event.type === 'failed',
                target: '#ears.unavailable',
                actions: assign({ sentence: ({ event }) => (event.event.type === 'failed' ? event.event.sentence : NO_EARS) }),
              },
              { actions: { type: 'reply', params: ({ event }) => ({ event: event.event }) } },
            ],
          },
        },
      },
    },
    denied: {
      entry: [
        assign({ sentence: DENIED }),
        { type: 'reply', params: { event: { type: 'failed', reason: 'denied', sentence: DENIED } } },
        assign({ listening: null }),
      ],
      on: {
        'listen.requested': { actions: ({ event }) => event.reply({ type: 'failed', reason: 'denied', sentence: DENIED }) },
        'prepare.requested': { target: 'preparing', actions: assign({ index: 0 }) },
      },
    },
    unavailable: {
      entry: [
        {
          type: 'reply',
          params: ({ context }) => ({ event: { type: 'failed', reason: 'other', sentence: context.sentence ?? NO_EARS } }),
        },
        assign({ listening: null }),
      ],
      on: {
        'listen.requested': {
          actions: ({ context, event }) =>
            event.reply({ type: 'failed', reason: 'other', sentence: context.sentence ?? NO_EARS }),
        },
        'prepare.requested': { target: 'preparing', actions: assign({ index: 0 }) },
      },
    },
  },
});
