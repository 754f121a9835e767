/**
 * A round: brief → check after check → wrap-up → the completion call. Where it stands is never stored: it is replayed
 * from plan + entries after every entry, so that a round resumed after a crash is the same round.
 */
import { type ActorRefFrom, assign, enqueueActions, fromPromise, setup } from 'xstate';
import type { Past } from '../src/domain/history/past.ts';
import type { Command } from '../src/domain/language/meaning.ts';
import type { Answer, Entry, EntryDraft, Round } from '../src/domain/round/entry.ts';
import type { Display } from '../src/domain/round/judging.ts';
import { checkBefore, type NextStep, nextStep } from '../src/domain/round/next.ts';
import { type RoundState, replay } from '../src/domain/round/replay.ts';
import {
  briefingTopic,
  checkTopic,
  closingLines,
  holdTopic,
  keepFailedTopic,
  resumeLines,
  type Style,
  undoneLines,
  waitTopic,
  whereLines,
  wrapUpTopic,
} from '../src/domain/round/topics.ts';
import { type ExchangeOutput, exchangeMachine } from './exchangeMachine.ts';
import { type TimerDueEvent, timedCheckMachine } from './timedCheckMachine.ts';

export interface RoundInput {
  readonly round: Round;
  /** Entries already kept; empty for a new round. */
  readonly entries: readonly Entry[];
  readonly past: Past;
  readonly style: Style;
  readonly display: Display;
  readonly mute: boolean;
  /** The clock, injected. @returns epoch milliseconds */
  readonly now: () => number;
}

type Pressed = 'button' | 'key';

export type RoundEvent =
  | { type: 'round.begun'; people: 1 | 2 }
  | { type: 'entries.kept'; entries: readonly Entry[] }
  | TimerDueEvent
  | { type: 'check.requested'; key: string }
  | { type: 'finish.requested' }
  | { type: 'keep.retried' }
  | { type: 'listening.requested'; on: boolean }
  | { type: 'answer.pressed'; answer: Answer; via: Pressed }
  | { type: 'confirm.pressed'; yes: boolean; via: Pressed }
  | { type: 'skip.requested'; reason: string; via: Pressed }
  | { type: 'note.requested'; text: string; finding: boolean; via: Pressed }
  | { type: 'style.chosen'; style: Style }
  | { type: 'aside.told'; lines: readonly string[]; trouble: string | null }
  | { type: 'command.requested'; command: Command; via: Pressed };

export interface RoundContext extends RoundInput {
  readonly state: RoundState;
  /** What comes next, worked out on entering `choosing`. */
  readonly next: NextStep | null;
  readonly key: string | null;
  /** Station last announced. */
  readonly station: string | null;
  /** Read-backs and transitions to say before the next question. */
  readonly prefix: readonly string[];
  readonly drafts: readonly EntryDraft[];
  readonly timers: readonly ActorRefFrom<typeof timedCheckMachine>[];
  readonly trouble: string | null;
  /** The person said "next" at the last open check: nothing is asked again by itself. */
  readonly wrapsUp: boolean;
}

const forwarded = [
  'answer.pressed',
  'confirm.pressed',
  'skip.requested',
  'note.requested',
  'aside.told',
  'command.requested',
  'listening.requested',
  'keep.retried',
] as const;

export const roundMachine = setup({
  types: { context: {} as RoundContext, events: {} as RoundEvent, input: {} as RoundInput },
  actors: {
    exchange: exchangeMachine,
    timedCheck: timedCheckMachine,
    say: fromPromise<void, { lines: readonly string[] }>(() => Promise.reject(new Error('roundMachine requires say'))),
    keep: fromPromise<readonly Entry[], { drafts: readonly EntryDraft[] }>(() =>
      Promise.reject(new Error('roundMachine requires keep')),
    ),
  },
  actions: {
    playCue: (_, _params: { cue: 'due' }) => {},
    absorb: assign(({ context }, params: { entries: readonly Entry[] }) => absorbed(context, params.entries)),
    startTimers: enqueueActions(({ context, enqueue }) => {
      const running = new Set(context.timers.map((timer) => timer.getSnapshot().context.key));
      for (const { key, dueAt } of context.state.timers) {
        if (running.has(key)) continue;
        enqueue.assign({
          timers: ({ context: now, spawn }) => [
            ...now.timers,
            spawn('timedCheck', { id: `timer:${key}`, input: { key, dueAt } }),
          ],
        });
      }
    }),
    forward: enqueueActions(({ event, enqueue }) => {
      enqueue.sendTo('exchange', event as never);
    }),
    chooseNext: assign(({ context }) => ({ next: nextStep(context.state, context.now()) })),
    takeOutput: enqueueActions(({ context, enqueue }, params: { output: ExchangeOutput }) => {
      enqueue.assign(consequences(context, params.output));
    }),
  },
  guards: {
    isComplete: ({ context }) => context.state.phase === 'complete',
    isNotBegun: ({ context }) => context.state.phase === 'not-begun',
    isHeld: ({ context }) => context.state.phase === 'held',
    wrapsUp: ({ context }) => context.wrapsUp,
    hasDrafts: ({ context }) => context.drafts.length > 0,
    nextIs: ({ context }, params: { kind: NextStep['kind'] }) => context.next?.kind === params.kind,
  },
}).createMachine({
  id: 'round',
  context: ({ input }) => {
    const state = replay(input.round, input.entries);
    return {
      ...input,
      state,
      next: null,
      key: null,
      station: null,
      prefix: state.phase === 'under-way' ? resumeLines(state, input.display) : [],
      drafts: [],
      timers: [],
      trouble: null,
      wrapsUp: false,
    };
  },
  initial: 'choosing',
  on: {
    'entries.kept': { actions: [{ type: 'absorb', params: ({ event }) => ({ entries: event.entries }) }, 'startTimers'] },
    'timer.due': { actions: { type: 'playCue', params: { cue: 'due' } } },
    'style.chosen': { actions: assign({ style: ({ event }) => event.style }) },
    'listening.requested': { actions: [assign({ mute: ({ event }) => !event.on }), 'forward'] },
  },
  states: {
    choosing: {
      entry: ['startTimers', 'chooseNext'],
      always: [
        { guard: 'isComplete', target: 'complete' },
        { guard: 'isNotBegun', target: 'briefing' },
        { guard: 'isHeld', target: 'held' },
        { guard: 'wrapsUp', target: 'wrapUp' },
        {
          guard: { type: 'nextIs', params: { kind: 'check' } },
          target: 'asking',
          actions: assign({ key: ({ context }) => (context.next?.kind === 'check' ? context.next.key : null) }),
        },
        { guard: { type: 'nextIs', params: { kind: 'wait' } }, target: 'waiting' },
        { target: 'wrapUp' },
      ],
    },
    briefing: {
      tags: ['briefing'],
      on: {
        'round.begun': {
          target: 'keeping',
          actions: assign({ drafts: ({ event }) => [{ kind: 'begun' as const, people: event.people }] }),
        },
        ...Object.fromEntries(forwarded.map((type) => [type, { actions: 'forward' }])),
      },
      invoke: {
        id: 'exchange',
        src: 'exchange',
        input: ({ context }) => ({ topic: briefingTopic(context), mute: context.mute }),
        onDone: { target: 'keeping', actions: { type: 'takeOutput', params: ({ event }) => ({ output: event.output }) } },
      },
    },
    asking: {
      tags: ['asking'],
      on: {
        'check.requested': {
          target: 'keeping',
          actions: assign({ drafts: ({ event }) => [{ kind: 'went' as const, key: event.key }] }),
        },
        'finish.requested': 'wrapUp',
        ...Object.fromEntries(forwarded.map((type) => [type, { actions: 'forward' }])),
      },
      invoke: {
        id: 'exchange',
        src: 'exchange',
        input: ({ context }) => ({ topic: checkTopic(context, context.key ?? ''), mute: context.mute }),
        onDone: { target: 'keeping', actions: { type: 'takeOutput', params: ({ event }) => ({ output: event.output }) } },
      },
      exit: assign({
        station: ({ context }) => context.state.byKey.get(context.key ?? '')?.check.station ?? context.station,
      }),
    },
    /** Everything else is done; a timed check is not due yet. */
    waiting: {
      tags: ['waiting'],
      on: {
        'timer.due': { target: 'choosing', actions: { type: 'playCue', params: { cue: 'due' } } },
        'check.requested': {
          target: 'keeping',
          actions: assign({ drafts: ({ event }) => [{ kind: 'went' as const, key: event.key }] }),
        },
        'finish.requested': 'wrapUp',
        ...Object.fromEntries(forwarded.map((type) => [type, { actions: 'forward' }])),
      },
      invoke: {
        id: 'exchange',
        src: 'exchange',
        input: ({ context }) => ({ topic: waitTopic(context), mute: context.mute }),
        onDone: { target: 'keeping', actions: { type: 'takeOutput', params: ({ event }) => ({ output: event.output }) } },
      },
    },
    held: {
      tags: ['held'],
      on: {
        'check.requested': {
          target: 'keeping',
          actions: assign({ drafts: ({ event }) => [{ kind: 'resumed' as const }, { kind: 'went' as const, key: event.key }] }),
        },
        ...Object.fromEntries(forwarded.map((type) => [type, { actions: 'forward' }])),
      },
      invoke: {
        id: 'exchange',
        src: 'exchange',
        input: ({ context }) => ({ topic: holdTopic(context), mute: context.mute }),
        onDone: { target: 'keeping', actions: { type: 'takeOutput', params: ({ event }) => ({ output: event.output }) } },
      },
    },
    wrapUp: {
      tags: ['wrap-up'],
      entry: assign({ next: { kind: 'wrap-up' }, wrapsUp: false }),
      on: {
        'finish.requested': { target: 'keeping', actions: assign({ drafts: [{ kind: 'completed' as const }], prefix: [] }) },
        'check.requested': {
          target: 'keeping',
          actions: assign({ drafts: ({ event }) => [{ kind: 'went' as const, key: event.key }] }),
        },
        ...Object.fromEntries(forwarded.map((type) => [type, { actions: 'forward' }])),
      },
      invoke: {
        id: 'exchange',
        src: 'exchange',
        input: ({ context }) => ({ topic: wrapUpTopic(context), mute: context.mute }),
        onDone: { target: 'keeping', actions: { type: 'takeOutput', params: ({ event }) => ({ output: event.output }) } },
      },
    },
    /** Writes what the round itself has to say: begun, held, resumed, went, undone, completed. */
    keeping: {
      initial: 'deciding',
      states: {
        deciding: { always: [{ guard: 'hasDrafts', target: 'writing' }, { target: '#round.choosing' }] },
        writing: {
          tags: ['keeping'],
          invoke: {
            src: 'keep',
            input: ({ context }) => ({ drafts: context.drafts }),
            onDone: {
              target: '#round.choosing',
              actions: [
                { type: 'absorb', params: ({ event }) => ({ entries: event.output }) },
                assign({ drafts: [], trouble: null, prefix: ({ context, event }) => afterKeeping(context, event.output) }),
              ],
            },
            onError: {
              target: 'failed',
              actions: assign({
                trouble: ({ event }) => (event.error instanceof Error ? event.error.message : 'That could not be kept.'),
              }),
            },
          },
        },
        failed: {
          tags: ['keep-failed'],
          on: { 'keep.retried': 'writing', 'confirm.pressed': { guard: ({ event }) => event.yes, target: 'writing' } },
          invoke: {
            id: 'exchange',
            src: 'exchange',
            input: ({ context }) => ({ topic: keepFailedTopic(context), mute: context.mute }),
            onDone: 'writing',
          },
        },
      },
    },
    complete: {
      tags: ['complete'],
      initial: 'telling',
      states: {
        telling: {
          tags: ['speaking'],
          invoke: { src: 'say', input: ({ context }) => ({ lines: closingLines(context) }), onDone: 'told', onError: 'told' },
        },
        told: { type: 'final' },
      },
      on: { 'command.requested': { guard: ({ event }) => event.command === 'repeat', target: '.telling' } },
    },
  },
});

function absorbed(context: RoundContext, entries: readonly Entry[]): Partial<RoundContext> {
  const known = new Set(context.state.entries.map((entry) => entry.id));
  const fresh = entries.filter((entry) => !known.has(entry.id));
  return fresh.length === 0 ? {} : { state: replay(context.round, [...context.state.entries, ...fresh]) };
}

/** What an exchange's outcome makes the round write and say. */
function consequences(context: RoundContext, output: ExchangeOutput): Partial<RoundContext> {
  const { state } = context;
  if (output.kind === 'kept') return { drafts: [], prefix: output.readBack };
  if (output.kind === 'yes-no') {
    if (!output.yes) return { drafts: state.phase === 'not-begun' ? [] : wrapUpNo(state), prefix: [] };
    return { drafts: agreed(context), prefix: [] };
  }
  switch (output.command) {
    case 'wait':
    case 'stop':
      return { drafts: state.phase === 'under-way' ? [{ kind: 'held', reason: output.text }] : [], prefix: [] };
    case 'resume':
    case 'next':
      return { drafts: agreed(context), prefix: [], wrapsUp: isLastOpen(context) };
    case 'back': {
      const to =
        context.key === null || context.next?.kind !== 'check'
          ? (firstLeft(state) ?? state.lastKey)
          : checkBefore(state, context.key);
      return to === null
        ? { drafts: [], prefix: ['This is the first check.'] }
        : { drafts: [{ kind: 'went', key: to }], prefix: [] };
    }
    case 'undo': {
      const entry = state.lastKey === null ? null : (state.byKey.get(state.lastKey)?.entry ?? null);
      return entry === null
        ? { drafts: [], prefix: ['There is nothing to take back.'] }
        : { drafts: [{ kind: 'undone', key: entry.key, supersedes: entry.id }], prefix: undoneLines(state, entry) };
    }
    case 'where':
      return { drafts: [], prefix: whereLines(state, context.key) };
    default:
      return { drafts: [], prefix: [] };
  }
}

/** "Next", "carry on" or "yes", by where the round stands. */
function agreed(context: RoundContext): EntryDraft[] {
  const { state, next, key } = context;
  if (state.phase === 'not-begun') return [{ kind: 'begun', people: 1 }];
  if (state.phase === 'held') return [{ kind: 'resumed' }];
  if (next?.kind === 'wait') return [{ kind: 'went', key: next.key }];
  if (next?.kind === 'wrap-up') return [{ kind: 'completed' }];
  return [{ kind: 'went', key: openAfter(state, key) }];
}

/** The open check after a given one in the order walked, round to those before it. */
function openAfter(state: RoundState, key: string | null): string | null {
  const index = state.checks.findIndex((entry) => entry.check.key === key);
  const inOrder = [...state.checks.slice(index + 1), ...state.checks.slice(0, Math.max(0, index))];
  return inOrder.find((entry) => entry.status === 'open' && entry.check.timed === null)?.check.key ?? null;
}

function isLastOpen(context: RoundContext): boolean {
  return context.next?.kind === 'check' && context.state.phase === 'under-way' && openAfter(context.state, context.key) === null;
}

/** "No" at the wrap-up: there is something left to do. */
function wrapUpNo(state: RoundState): EntryDraft[] {
  const left = firstLeft(state);
  return left === null ? [] : [{ kind: 'went', key: left }];
}

function firstLeft(state: RoundState): string | null {
  const left = state.checks.find((entry) => entry.status === 'open') ?? state.checks.find((entry) => entry.status === 'skipped');
  return left?.check.key ?? null;
}

/** On resuming, say where we are and the last value kept. */
function afterKeeping(context: RoundContext, kept: readonly Entry[]): readonly string[] {
  if (!kept.some((entry) => entry.kind === 'resumed')) return context.prefix;
  return resumeLines(context.state, context.display);
}
