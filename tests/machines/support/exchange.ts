/** A scripted world for the exchange machine: nothing is heard, said or kept unless the test says so. */
import { type Actor, createActor, fromCallback, fromPromise, SimulatedClock } from 'xstate';
import { exchangeMachine } from '../../../machines/exchangeMachine.ts';
import type { Entry, EntryDraft } from '../../../src/domain/round/entry.ts';
import { NO_HEARING } from '../../../src/domain/round/how.ts';
import type { Step } from '../../../src/domain/round/step.ts';
import type { ExchangeTopic } from '../../../src/domain/round/topic.ts';
import type { EarsEvent, ListenRequest } from '../../../src/domain/voice/ports.ts';

export const REQUEST: ListenRequest = {
  expects: { kind: 'state', ok: ['pinned'], problem: ['loose'], yesMeans: 'ok' },
  position: null,
  positions: [],
  others: [],
  mode: 'answer',
};

export const heard = (...transcripts: string[]): EarsEvent => ({
  type: 'heard',
  hearing: { hypotheses: transcripts.map((transcript) => ({ transcript, confidence: null })), provider: 'scripted', clip: null },
});

export const draft = (detail: string): EntryDraft => ({
  kind: 'answered',
  key: 'pins',
  answer: { kind: 'state', verdict: 'ok', detail },
  outcome: 'ok',
  how: { ...NO_HEARING, via: 'voice', by: 'first' },
  supersedes: null,
});

const noted = (text: string | null): EntryDraft => ({
  kind: 'noted',
  key: 'pins',
  text,
  clip: null,
  photo: null,
  finding: true,
  how: { ...NO_HEARING, via: 'voice', by: 'first' },
});

/** "pinned" is kept, "maybe" is asked to confirm, "mumble" is unclear, "hello" is not for the app. */
export const topic = (changes: Partial<ExchangeTopic> = {}): ExchangeTopic => ({
  opening: ['Pins?'],
  request: REQUEST,
  reasonRequest: REQUEST,
  patienceMs: 10_000,
  reminders: ['Say pinned or loose.', 'The buttons work too.'],
  consider: ({ hearing }): Step => {
    const words = hearing.hypotheses[0]?.transcript ?? '';
    if (words === 'pinned') return { kind: 'keep', drafts: [draft('pinned')], readBack: ['Pinned.'] };
    if (words === 'maybe') {
      return {
        kind: 'confirm',
        question: 'Pinned, is that right?',
        offers: [{ label: 'pinned', answer: null, drafts: [draft('pinned')], readBack: ['Pinned.'] }],
      };
    }
    if (words === 'yes' || words === 'no') return { kind: 'yes-no', yes: words === 'yes' };
    if (words === 'hello') return { kind: 'ignore' };
    if (words === 'skip it') return { kind: 'command', command: 'skip', text: null };
    if (words === 'skip it frozen') return { kind: 'command', command: 'skip', text: 'frozen' };
    if (words === 'make a note') return { kind: 'command', command: 'note', text: null };
    if (words === 'why') return { kind: 'command', command: 'why', text: null };
    if (words === 'say again') return { kind: 'command', command: 'repeat', text: null };
    if (words === 'louder') return { kind: 'command', command: 'louder', text: null };
    if (words === 'take a picture') return { kind: 'picture' };
    if (words === 'hold on') return { kind: 'command', command: 'wait', text: null };
    return { kind: 'again', question: 'Say that once more.' };
  },
  press: () => ({ kind: 'keep', drafts: [draft('pressed')], readBack: ['Pinned.'] }),
  speakFor: (command) => (command === 'why' ? ['Because pins carry the weight.'] : null),
  askAgain: (asked) => `Again ${asked}.`,
  skip: (reason) => ({
    drafts: [{ kind: 'skipped', key: 'pins', reason, how: { ...NO_HEARING, via: 'voice', by: 'first' }, supersedes: null }],
    readBack: [`Skipped: ${reason}.`],
  }),
  note: (text) => ({ drafts: [noted(text)], readBack: ['Noted.'] }),
  photo: (photo) => ({
    drafts: [{ ...(noted(null) as Extract<EntryDraft, { kind: 'noted' }>), photo }],
    readBack: ['Picture kept.'],
  }),
  ...changes,
});

export interface World {
  readonly actor: Actor<typeof exchangeMachine>;
  readonly clock: SimulatedClock;
  /** Everything said, in order. */
  readonly said: string[];
  readonly kept: EntryDraft[];
  readonly requests: ListenRequest[];
  readonly cues: string[];
  readonly reported: Entry[];
  readonly loudness: number[];
  /** Reports to the open ears; fails when they are closed. */
  hear(event: EarsEvent): void;
  earsOpen(): boolean;
  /** Makes the next writes fail with this sentence, or succeed again. */
  breakRecord(sentence: string | null): void;
  /** Makes the camera fail with this sentence, or work again. */
  breakCamera(sentence: string | null): void;
  /** Lets promises settle. */
  settle(): Promise<void>;
}

export function world(given: ExchangeTopic = topic(), mute = false): World {
  const clock = new SimulatedClock();
  const said: string[] = [];
  const kept: EntryDraft[] = [];
  const requests: ListenRequest[] = [];
  const cues: string[] = [];
  const reported: Entry[] = [];
  const loudness: number[] = [];
  let ears: ((event: EarsEvent) => void) | null = null;
  let broken: string | null = null;
  let noCamera: string | null = null;
  const actor = createActor(
    exchangeMachine.provide({
      actors: {
        say: fromPromise(async ({ input }) => {
          said.push(...input.lines);
        }),
        listen: fromCallback(({ input, sendBack }) => {
          requests.push((input as { request: ListenRequest }).request);
          ears = (event) => sendBack({ type: 'ears.reported', event });
          return () => {
            ears = null;
          };
        }),
        takePicture: fromPromise(async () => {
          if (noCamera !== null) throw new Error(noCamera);
          cues.push('taken');
          return 'p1';
        }),
        keep: fromPromise(async ({ input }) => {
          if (broken !== null) throw new Error(broken);
          kept.push(...input.drafts);
          return input.drafts.map(
            (entry, index): Entry => ({ ...entry, id: `e${kept.length}-${index}`, round: 'r', seq: index, at: 0 }) as Entry,
          );
        }),
      },
      actions: {
        playCue: (_, { cue }) => cues.push(cue),
        reportKept: (_, { entries }) => reported.push(...entries),
        adjustLoudness: (_, { by }) => loudness.push(by),
      },
    }),
    { input: { topic: given, mute }, clock },
  );
  actor.start();
  return {
    actor,
    clock,
    said,
    kept,
    requests,
    cues,
    reported,
    loudness,
    hear(event) {
      if (!ears) throw new Error('the ears are closed');
      ears(event);
    },
    earsOpen: () => ears !== null,
    breakRecord(sentence) {
      broken = sentence;
    },
    breakCamera(sentence) {
      noCamera = sentence;
    },
    async settle() {
      for (let turn = 0; turn < 16; turn += 1) await Promise.resolve();
    },
  };
}
