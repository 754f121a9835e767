/**
 * One exchange: say → listen → consider → keep. One challenge at a time; the tool never runs ahead of the person.
 *
 * What was kept is read back by whoever asks next, so that a press never has to wait for a voice; since the exchange
 * ends only when the record has the entry, nothing is read back before it is kept.
 *
 * The exchange also serves where no check is asked (briefing, hold, wrap-up): then it returns the command or the yes/no
 * that it heard.
 */
import { assign, enqueueActions, fromCallback, fromPromise, setup } from 'xstate';
import type { Hearing } from '../src/domain/language/hearing.ts';
import type { Command } from '../src/domain/language/meaning.ts';
import type { Answer, Entry, EntryDraft } from '../src/domain/round/entry.ts';
import type { Keeping, Offer, Step } from '../src/domain/round/step.ts';
import { STYLE_LINES } from '../src/domain/round/styleAsked.ts';
import type { ExchangeTopic, Via } from '../src/domain/round/topic.ts';
import type { Cue, EarsEvent, ListenRequest } from '../src/domain/voice/ports.ts';

export type ExchangeOutput =
  | { readonly kind: 'kept'; readonly readBack: readonly string[] }
  | { readonly kind: 'command'; readonly command: Command; readonly text: string | null }
  | { readonly kind: 'yes-no'; readonly yes: boolean };

export type ExchangeEvent =
  | { type: 'answer.pressed'; answer: Answer; via: 'button' | 'key' }
  | { type: 'confirm.pressed'; yes: boolean; via: 'button' | 'key' }
  | { type: 'skip.requested'; reason: string; via: 'button' | 'key' }
  | { type: 'note.requested'; text: string; finding: boolean; via: 'button' | 'key' }
  /** Something happened beside the exchange and is to be told: a picture that a press gave was kept, or why not. */
  | { type: 'aside.told'; lines: readonly string[]; trouble: string | null }
  | { type: 'command.requested'; command: Command; via: 'button' | 'key' }
  | { type: 'listening.requested'; on: boolean }
  | { type: 'keep.retried' }
  | { type: 'ears.reported'; event: EarsEvent };

export interface ExchangeContext {
  readonly topic: ExchangeTopic;
  /** About to be said. */
  readonly lines: readonly string[];
  /** Said last, word for word; for the screen and for "say again". */
  readonly saying: string;
  readonly partial: string | null;
  readonly ears: 'closed' | 'opening' | 'open' | 'hearing';
  readonly asked: number;
  /** The last hearing, where nothing came of it but a question. */
  readonly faint: Hearing | null;
  readonly reminded: number;
  readonly dictating: 'reason' | 'note' | null;
  readonly step: Step | null;
  readonly via: Via;
  readonly offers: readonly Offer[];
  readonly pending: Keeping | null;
  /** Whether the exchange goes on after the pending entries are kept (a note in passing). */
  readonly goesOn: boolean;
  readonly trouble: string | null;
  readonly soundTold: boolean;
  readonly mute: boolean;
  readonly output: ExchangeOutput | null;
}

const NO_PICTURE = 'No picture was taken. Press More, then Take a picture.';

export const exchangeMachine = setup({
  types: {
    context: {} as ExchangeContext,
    events: {} as ExchangeEvent,
    input: {} as { topic: ExchangeTopic; mute: boolean },
    output: {} as ExchangeOutput,
  },
  actors: {
    /** Says lines one after another; falls silent at once when its state is left. */
    say: fromPromise<void, { lines: readonly string[] }>(() => Promise.reject(new Error('exchangeMachine requires say'))),
    /** Opens the ears and reports what they hear until its state is left. */
    listen: fromCallback<{ type: 'unused' }, { request: ListenRequest }>(() => {
      throw new Error('exchangeMachine requires listen');
    }),
    /** Takes a picture with the device's camera and keeps its bytes. @returns its id. Rejects with a sentence. */
    takePicture: fromPromise<string>(() => Promise.reject(new Error('exchangeMachine requires takePicture'))),
    /** Appends entries durably; resolves only when they are kept. */
    keep: fromPromise<readonly Entry[], { drafts: readonly EntryDraft[] }>(() =>
      Promise.reject(new Error('exchangeMachine requires keep')),
    ),
  },
  actions: {
    playCue: (_, _params: { cue: Cue }) => {},
    /** Hands kept entries to the round at once, so that its state is never older than the record. */
    reportKept: (_, _params: { entries: readonly Entry[] }) => {},
    adjustLoudness: (_, _params: { by: 1 | -1 }) => {},
    chooseStyle: (_, _params: { style: 'full' | 'terse' }) => {},
    applyEars: assign(({ context, event }) => {
      if (event.type !== 'ears.reported') return {};
      const report = event.event;
      switch (report.type) {
        case 'listening':
          return { ears: 'open' as const };
        case 'speech-started':
          return { ears: 'hearing' as const };
        case 'partial':
          return { ears: 'hearing' as const, partial: report.transcript };
        case 'failed':
          return { mute: true, trouble: report.sentence, lines: [report.sentence] };
        case 'sound':
          return { trouble: report.sentence, soundTold: true, lines: context.soundTold ? [] : [report.sentence] };
        case 'not-understood':
          return considerFaint(context, report.faint);
        case 'heard':
          return considerHearing(context, report.hearing);
      }
    }),
    applyPress: assign(({ context, event }) =>
      event.type === 'answer.pressed' ? { step: context.topic.press(event.answer, event.via), via: event.via, offers: [] } : {},
    ),
  },
  guards: {
    isMute: ({ context }) => context.mute,
    hasReminder: ({ context }) =>
      context.dictating === null && context.offers.length === 0 && context.reminded < context.topic.reminders.length,
    heard: ({ event }) => event.type === 'ears.reported' && event.event.type === 'heard',
    heardFaintlyAgain: ({ context, event }) =>
      event.type === 'ears.reported' &&
      event.event.type === 'not-understood' &&
      considerFaint(context, event.event.faint).step !== undefined,
    speaksUp: ({ context, event }) =>
      event.type === 'ears.reported' &&
      (event.event.type === 'not-understood' ||
        event.event.type === 'failed' ||
        (event.event.type === 'sound' && !context.soundTold)),
    canSkip: ({ context }) => context.topic.skip !== null,
    wantsPicture: ({ context }) => context.step?.kind === 'picture',
    hasOffers: ({ context }) => context.offers.length > 0,
    goesOn: ({ context }) => context.goesOn,
  },
  delays: {
    /** Each further reminder waits longer: a person at work is not nagged. */
    patience: ({ context }) => context.topic.patienceMs * (context.reminded + 1),
    dictation: 25_000,
    /** The browser may ask first whether the camera is allowed, and nobody may be there to answer. */
    pictureLimit: 30_000,
  },
}).createMachine({
  id: 'exchange',
  context: ({ input }) => ({
    topic: input.topic,
    lines: input.topic.opening,
    saying: '',
    partial: null,
    ears: 'closed',
    asked: 0,
    faint: null,
    reminded: 0,
    dictating: null,
    step: null,
    via: 'voice',
    offers: [],
    pending: null,
    goesOn: false,
    trouble: null,
    soundTold: false,
    mute: input.mute,
    output: null,
  }),
  output: ({ context }) => context.output ?? { kind: 'kept', readBack: [] },
  initial: 'open',
  states: {
    /** Buttons and keys are live here, whatever the ears and the mouth are doing. */
    open: {
      initial: 'speaking',
      on: {
        'answer.pressed': { target: 'considering', actions: 'applyPress' },
        'confirm.pressed': {
          target: 'considering',
          actions: assign({ step: ({ event }) => ({ kind: 'yes-no' as const, yes: event.yes }), via: ({ event }) => event.via }),
        },
        'command.requested': {
          target: 'considering',
          actions: assign({
            step: ({ event }) => ({ kind: 'command' as const, command: event.command, text: null }),
            via: ({ event }) => event.via,
          }),
        },
        'skip.requested': {
          guard: 'canSkip',
          target: 'keeping',
          actions: assign({
            pending: ({ context, event }) => context.topic.skip?.(event.reason, null, event.via) ?? null,
            goesOn: false,
          }),
        },
        'note.requested': {
          target: 'keeping',
          actions: assign({
            pending: ({ context, event }) => context.topic.note(event.text, event.finding, null, event.via),
            goesOn: true,
            dictating: null,
          }),
        },
      },
      states: {
        speaking: {
          tags: ['speaking'],
          entry: assign({
            saying: ({ context }) => (context.lines.length > 0 ? context.lines.join(' ') : context.saying),
            partial: null,
          }),
          on: {
            'listening.requested': { actions: assign({ mute: ({ event }) => !event.on }) },
            // The question is not cut short; what happened is on the screen.
            'aside.told': { actions: assign({ trouble: ({ event }) => event.trouble }) },
          },
          invoke: {
            src: 'say',
            input: ({ context }) => ({ lines: context.lines }),
            onDone: 'waiting',
            // A mouth that fails must not stop the round: the words are on the screen.
            onError: 'waiting',
          },
          exit: assign({ lines: [] }),
        },
        waiting: {
          initial: 'choosing',
          on: {
            'aside.told': {
              target: 'speaking',
              actions: assign({ lines: ({ event }) => event.lines, trouble: ({ event }) => event.trouble }),
            },
            'ears.reported': [
              { guard: 'heard', target: '#exchange.considering', actions: 'applyEars' },
              { guard: 'heardFaintlyAgain', target: '#exchange.considering', actions: 'applyEars' },
              { guard: 'speaksUp', target: 'speaking', actions: ['applyEars', { type: 'playCue', params: { cue: 'not-sure' } }] },
              { actions: 'applyEars' },
            ],
          },
          after: {
            patience: {
              guard: 'hasReminder',
              target: 'speaking',
              actions: assign({
                lines: ({ context }) => context.topic.reminders.slice(context.reminded, context.reminded + 1),
                reminded: ({ context }) => context.reminded + 1,
              }),
            },
            dictation: {
              guard: ({ context }) => context.dictating !== null,
              target: 'speaking',
              actions: assign({ dictating: null, lines: ({ context }) => [context.topic.askAgain(0)] }),
            },
          },
          states: {
            choosing: { always: [{ guard: 'isMute', target: 'silent' }, { target: 'listening' }] },
            listening: {
              tags: ['mic.open'],
              entry: assign({ ears: 'opening' }),
              on: {
                'listening.requested': { guard: ({ event }) => !event.on, target: 'silent', actions: assign({ mute: true }) },
              },
              invoke: { src: 'listen', input: ({ context }) => ({ request: requestFor(context) }) },
              exit: assign({ ears: 'closed', partial: null }),
            },
            silent: {
              on: {
                'listening.requested': {
                  guard: ({ event }) => event.on,
                  target: 'listening',
                  actions: assign({ mute: false, trouble: null }),
                },
              },
            },
          },
        },
        /** The camera, without a hand. A press calls it off. */
        picturing: {
          initial: 'telling',
          after: {
            pictureLimit: {
              target: 'speaking',
              actions: [assign({ lines: [NO_PICTURE], trouble: NO_PICTURE }), { type: 'playCue', params: { cue: 'wrong' } }],
            },
          },
          states: {
            telling: {
              tags: ['speaking'],
              entry: assign({ saying: 'Hold still.', partial: null }),
              invoke: { src: 'say', input: { lines: ['Hold still.'] }, onDone: 'taking', onError: 'taking' },
            },
            taking: {
              invoke: {
                src: 'takePicture',
                onDone: {
                  target: '#exchange.keeping',
                  actions: assign({
                    pending: ({ context, event }) => context.topic.photo(event.output, context.via),
                    goesOn: true,
                  }),
                },
                onError: {
                  target: '#exchange.open.speaking',
                  actions: [
                    assign(({ event }) => {
                      const sentence = event.error instanceof Error ? event.error.message : NO_PICTURE;
                      return { lines: [sentence], trouble: sentence };
                    }),
                    { type: 'playCue', params: { cue: 'wrong' } },
                  ],
                },
              },
            },
          },
        },
      },
    },
    considering: {
      entry: enqueueActions(({ context, enqueue }) => {
        const { step, offers, topic } = context;
        if (step?.kind === 'again') {
          enqueue.assign({ lines: [step.question], asked: context.asked + 1, offers: [] });
          enqueue({ type: 'playCue', params: { cue: 'not-sure' } });
        } else if (step?.kind === 'confirm') {
          enqueue.assign({ lines: [step.question], offers: step.offers, asked: context.asked + 1 });
          enqueue({ type: 'playCue', params: { cue: 'not-sure' } });
        } else if (step?.kind === 'keep') {
          enqueue.assign({ pending: step, goesOn: false, offers: [] });
        } else if (step?.kind === 'yes-no' && offers.length > 0) {
          const first = offers[0];
          if (step.yes && first) enqueue.assign({ pending: first, goesOn: false, offers: [] });
          else enqueue.assign({ lines: [topic.askAgain(context.asked)], offers: [], step: null });
        } else if (step?.kind === 'yes-no') {
          enqueue.assign({ output: { kind: 'yes-no', yes: step.yes } });
        } else if (step?.kind === 'style') {
          enqueue({ type: 'chooseStyle', params: { style: step.style } });
          enqueue.assign({ lines: [STYLE_LINES[step.style]] });
        } else if (step?.kind === 'command') {
          const lines = topic.speakFor(step.command);
          if (step.command === 'louder' || step.command === 'quieter') {
            enqueue({ type: 'adjustLoudness', params: { by: step.command === 'louder' ? 1 : -1 } });
            enqueue.assign({ lines: [step.command === 'louder' ? 'Louder.' : 'Quieter.'] });
          } else if (step.command === 'repeat') {
            enqueue.assign({ lines: [context.saying] });
          } else if (lines) {
            enqueue.assign({ lines });
          } else if (step.command === 'skip' && topic.skip) {
            if (step.text) enqueue.assign({ pending: topic.skip(step.text, null, context.via), goesOn: false });
            else enqueue.assign({ dictating: 'reason', lines: ['Why is it skipped?'] });
          } else if (step.command === 'note') {
            if (step.text) enqueue.assign({ pending: topic.note(step.text, true, null, context.via), goesOn: true });
            else enqueue.assign({ dictating: 'note', lines: ['Go ahead.'] });
          } else {
            enqueue.assign({ output: { kind: 'command', command: step.command, text: step.text } });
          }
        }
      }),
      always: [
        { guard: ({ context }) => context.output !== null, target: 'done' },
        { guard: 'wantsPicture', target: 'open.picturing' },
        { guard: ({ context }) => context.pending !== null, target: 'keeping' },
        { guard: ({ context }) => context.lines.length > 0, target: 'open.speaking' },
        { target: 'open.waiting' },
      ],
      exit: assign({ step: null }),
    },
    keeping: {
      tags: ['keeping'],
      invoke: {
        src: 'keep',
        input: ({ context }) => ({ drafts: context.pending?.drafts ?? [] }),
        onDone: [
          {
            guard: 'goesOn',
            target: 'open.speaking',
            actions: [
              { type: 'reportKept', params: ({ event }) => ({ entries: event.output }) },
              { type: 'playCue', params: { cue: 'heard' } },
              assign({
                lines: ({ context }) => context.pending?.readBack ?? [],
                pending: null,
                goesOn: false,
                dictating: null,
                trouble: null,
              }),
            ],
          },
          {
            target: 'done',
            actions: [
              { type: 'reportKept', params: ({ event }) => ({ entries: event.output }) },
              { type: 'playCue', params: { cue: 'heard' } },
              assign({ output: ({ context }) => ({ kind: 'kept', readBack: context.pending?.readBack ?? [] }), trouble: null }),
            ],
          },
        ],
        onError: {
          target: 'keepFailed',
          actions: [
            assign({ trouble: ({ event }) => (event.error instanceof Error ? event.error.message : 'That could not be kept.') }),
            { type: 'playCue', params: { cue: 'wrong' } },
          ],
        },
      },
    },
    /** Nothing was confirmed. The answer is still here; it is tried again when the person says so. */
    keepFailed: {
      initial: 'telling',
      on: { 'keep.retried': 'keeping', 'confirm.pressed': { guard: ({ event }) => event.yes, target: 'keeping' } },
      states: {
        telling: {
          tags: ['speaking'],
          entry: assign({ saying: ({ context }) => `Not kept. ${context.trouble ?? ''} Press try again, or say yes.` }),
          invoke: { src: 'say', input: ({ context }) => ({ lines: [context.saying] }), onDone: 'asking', onError: 'asking' },
        },
        asking: {
          initial: 'choosing',
          on: {
            'ears.reported': {
              guard: ({ context, event }) =>
                event.event.type === 'heard' &&
                isYes(
                  context.topic.consider({ hearing: event.event.hearing, asked: context.asked, confirming: true, faint: null }),
                ),
              target: '#exchange.keeping',
            },
          },
          states: {
            choosing: { always: [{ guard: 'isMute', target: 'silent' }, { target: 'listening' }] },
            listening: {
              tags: ['mic.open'],
              invoke: {
                src: 'listen',
                input: ({ context }) => ({ request: { ...context.topic.request, mode: 'confirm' as const } }),
              },
            },
            silent: {},
          },
        },
      },
    },
    done: { type: 'final' },
  },
});

function isYes(step: Step): boolean {
  return step.kind === 'yes-no' && step.yes;
}

function requestFor(context: ExchangeContext): ListenRequest {
  if (context.dictating === 'reason') return context.topic.reasonRequest;
  if (context.dictating === 'note') return { ...context.topic.request, mode: 'free' };
  if (context.offers.length > 0) return { ...context.topic.request, mode: 'confirm' };
  return context.topic.request;
}

/** While a reason or a note is dictated every word is content; otherwise the domain considers the hearing. */
/** Of what was hardly heard only a question can come, and only where the hearing before it said the same. */
function considerFaint(context: ExchangeContext, hearing: Hearing | undefined): Partial<ExchangeContext> {
  const { topic, asked, offers, faint, dictating } = context;
  if (hearing && dictating === null) {
    const step = topic.consider({ hearing, asked, confirming: offers.length > 0, faint });
    if (step.kind === 'confirm') return { step, faint: hearing, via: 'voice', partial: null };
  }
  return { asked: asked + 1, lines: [topic.askAgain(asked)], faint: hearing ?? faint, partial: null };
}

function considerHearing(context: ExchangeContext, hearing: Hearing): Partial<ExchangeContext> {
  const transcript = hearing.hypotheses[0]?.transcript.trim() ?? '';
  if (context.dictating === 'reason' && context.topic.skip) {
    return {
      step: null,
      pending: context.topic.skip(transcript || 'not said', hearing, 'voice'),
      goesOn: false,
      dictating: null,
      via: 'voice',
    };
  }
  if (context.dictating === 'note') {
    return {
      step: null,
      pending: context.topic.note(transcript || null, true, hearing, 'voice'),
      goesOn: true,
      dictating: null,
      via: 'voice',
    };
  }
  const step = context.topic.consider({
    hearing,
    asked: context.asked,
    confirming: context.offers.length > 0,
    faint: context.faint,
  });
  const isOpen = step.kind === 'again' || step.kind === 'confirm';
  return { step, faint: isOpen ? hearing : null, via: 'voice', partial: null };
}
