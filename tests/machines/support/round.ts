/** A whole round in a test: real plans and real topics, a simulated clock, a record in memory. */
import { type Actor, createActor, fromCallback, fromPromise, SimulatedClock } from 'xstate';
import { exchangeMachine } from '../../../machines/exchangeMachine.ts';
import { roundMachine } from '../../../machines/roundMachine.ts';
import { timedCheckMachine } from '../../../machines/timedCheckMachine.ts';
import type { RoundKind } from '../../../src/domain/checks/check.ts';
import type { Past } from '../../../src/domain/history/past.ts';
import type { PlannedCheck } from '../../../src/domain/plan/plan.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { goodAnswer } from '../../../src/domain/rehearsal/answers.ts';
import type { Answer, Entry, EntryDraft, Round } from '../../../src/domain/round/entry.ts';
import type { Style } from '../../../src/domain/round/topics.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';
import type { EarsEvent, ListenRequest } from '../../../src/domain/voice/ports.ts';

export const START = Date.UTC(2026, 10, 25, 6, 0, 0);

export interface RoundWorld {
  readonly actor: Actor<typeof roundMachine>;
  readonly clock: SimulatedClock;
  readonly said: string[];
  readonly entries: Entry[];
  readonly round: Round;
  readonly cues: string[];
  /** The check that is asked now; null where none is. */
  current(): PlannedCheck | null;
  request(): ListenRequest | null;
  /** Says words to the open ears and lets everything settle. */
  speak(...transcripts: string[]): Promise<void>;
  press(answer: Answer): Promise<void>;
  settle(): Promise<void>;
  /** Moves both clocks on. */
  pass(ms: number): Promise<void>;
  breakRecord(sentence: string | null): void;
  /** Answers every check well until the wrap-up. @returns how many were answered */
  answerAll(except?: (check: PlannedCheck) => boolean): Promise<number>;
  /** As after a crash: only round and entries survive. */
  crash(): RoundWorld;
}

export interface RoundWorldOptions {
  readonly unit: Unit;
  readonly kind?: RoundKind;
  readonly entries?: readonly Entry[];
  readonly round?: Round;
  readonly past?: Past;
  readonly style?: Style;
  readonly mute?: boolean;
  readonly at?: number;
}

export function roundWorld(options: RoundWorldOptions): RoundWorld {
  const clock = new SimulatedClock();
  const begun = options.at ?? START;
  const now = () => begun + clock.now();
  const round: Round = options.round ?? {
    schema: 1,
    id: 'round-1',
    unit: options.unit.id,
    startedAt: begun,
    plan: planRound(options.unit, options.kind ?? 'before-towing', begun),
    demo: options.unit.demo,
  };
  const said: string[] = [];
  const entries: Entry[] = [...(options.entries ?? [])];
  const cues: string[] = [];
  let ears: ((event: EarsEvent) => void) | null = null;
  let request: ListenRequest | null = null;
  let broken: string | null = null;
  const say = fromPromise<void, { lines: readonly string[] }>(async ({ input }) => {
    said.push(...input.lines);
  });
  const keep = fromPromise<readonly Entry[], { drafts: readonly EntryDraft[] }>(async ({ input }) => {
    if (broken !== null) throw new Error(broken);
    const kept = input.drafts.map((draft, index): Entry => {
      const seq = entries.length + index;
      return { ...draft, id: `entry-${seq}`, round: round.id, seq, at: now() } as Entry;
    });
    entries.push(...kept);
    return kept;
  });
  const actor = createActor(
    roundMachine.provide({
      actors: {
        say,
        keep,
        timedCheck: timedCheckMachine.provide({
          actors: {
            deadline: fromPromise<void, { at: number }>(
              ({ input }) => new Promise((resolve) => clock.setTimeout(() => resolve(), Math.max(0, input.at - now()))),
            ),
          },
        }),
        exchange: exchangeMachine.provide({
          actors: {
            say,
            keep,
            listen: fromCallback(({ input, sendBack }) => {
              request = (input as { request: ListenRequest }).request;
              ears = (event) => sendBack({ type: 'ears.reported', event });
              return () => {
                ears = null;
                request = null;
              };
            }),
          },
          actions: {
            playCue: (_, { cue }) => cues.push(cue),
            reportKept: ({ self }, { entries: kept }) => self._parent?.send({ type: 'entries.kept', entries: kept }),
            chooseStyle: ({ self }, { style }) => self._parent?.send({ type: 'style.chosen', style }),
          },
        }),
      },
      actions: { playCue: (_, { cue }) => cues.push(cue) },
    }),
    {
      input: {
        round,
        entries: options.entries ?? [],
        past: options.past ?? new Map(),
        style: options.style ?? 'full',
        display: 'us',
        mute: options.mute ?? false,
        now,
      },
      clock,
    },
  );
  const settle = async () => {
    for (let turn = 0; turn < 30; turn += 1) await Promise.resolve();
  };
  const current = () => {
    const { context } = actor.getSnapshot();
    return actor.getSnapshot().hasTag('asking') ? (context.state.byKey.get(context.key ?? '')?.check ?? null) : null;
  };
  const speak = async (...transcripts: string[]) => {
    await settle();
    if (!ears) throw new Error(`the ears are closed; said last: ${said.at(-1)}`);
    ears({
      type: 'heard',
      hearing: {
        hypotheses: transcripts.map((transcript) => ({ transcript, confidence: null })),
        provider: 'scripted',
        clip: null,
      },
    });
    await settle();
  };
  actor.start();
  return {
    actor,
    clock,
    said,
    entries,
    round,
    cues,
    current,
    request: () => request,
    speak,
    settle,
    async press(answer) {
      await settle();
      actor.send({ type: 'answer.pressed', answer, via: 'button' });
      await settle();
    },
    async pass(ms) {
      clock.increment(ms);
      await settle();
    },
    breakRecord(sentence) {
      broken = sentence;
    },
    async answerAll(except = () => false) {
      let answered = 0;
      await settle();
      for (let turn = 0; turn < 400; turn += 1) {
        const check = current();
        if (!check || except(check)) break;
        await speak(goodAnswer(check, now()));
        if (request?.mode === 'confirm' && current() === check) await speak('yes');
        if (current()?.key === check.key)
          throw new Error(`"${goodAnswer(check, now())}" was not taken for ${check.key}: ${said.at(-1)}`);
        answered += 1;
      }
      return answered;
    },
    crash: () => roundWorld({ ...options, round, entries: [...entries], at: now() }),
  };
}
