/**
 * One round being walked: the machines with their real side effects, seen from outside as a view and a list of requests.
 */
import { createActor, fromCallback, fromPromise, type SnapshotFrom } from 'xstate';
import { earsMachine } from '../../machines/earsMachine.ts';
import { exchangeMachine } from '../../machines/exchangeMachine.ts';
import { type RoundEvent, roundMachine } from '../../machines/roundMachine.ts';
import { timedCheckMachine } from '../../machines/timedCheckMachine.ts';
import type { Past } from '../domain/history/past.ts';
import type { Entry, EntryDraft, Round } from '../domain/round/entry.ts';
import { NO_HEARING } from '../domain/round/how.ts';
import type { Display } from '../domain/round/judging.ts';
import { pictureDraft } from '../domain/round/picture.ts';
import { presentRound } from '../domain/round/present.ts';
import type { Style } from '../domain/round/topics.ts';
import type { EarsView, RoundPhase, RoundRequest, RoundView } from '../domain/round/view.ts';
import type { Cue, Ears, EarsEvent, EarsId, ListenRequest, Mouth, MouthSettings } from '../domain/voice/ports.ts';
import type { Record } from '../record/record.ts';
import { RecordError } from '../record/recordError.ts';
import type { Clock } from './clock.ts';
import { createKeeper } from './keeper.ts';
import { FIRST_WORDS } from './marks.ts';
import { takePicture } from './pictures/camera.ts';
import { PictureError } from './pictures/pictureError.ts';
import { KEPT_TYPE, shrinkPicture } from './pictures/shrinkPicture.ts';

export interface RoundSessionOptions {
  readonly round: Round;
  readonly entries: readonly Entry[];
  readonly past: Past;
  readonly style: Style;
  readonly display: Display;
  /** In order of preference. */
  readonly ears: readonly Ears[];
  readonly mute: boolean;
  /** Spoken with; may change while the round runs. */
  readonly mouth: () => { readonly mouth: Mouth; readonly settings: MouthSettings };
  readonly playCue: (cue: Cue) => void;
  readonly adjustLoudness: (by: 1 | -1) => void;
  /** The person said how to be asked; for later rounds too. */
  readonly chooseStyle: (style: 'full' | 'terse') => void;
  readonly record: Record;
  readonly clock: Clock;
  readonly newId: () => string;
}

export interface RoundSession {
  view(): RoundView;
  subscribe(listener: () => void): () => void;
  request(request: RoundRequest): void;
  /**
   * Keeps a picture that a press of a button gave, whatever the round is doing meanwhile; tells how it went.
   * @param key of the check that it was taken for; null: of the round
   */
  keepPicture(picture: Blob, key: string | null): Promise<void>;
  /** Stops listening and speaking; the record already has everything. */
  stop(): void;
}

/** After the last word: loudspeaker and room need a moment before the ears may open. */
const TAIL_MS = 150;

export function createRoundSession(options: RoundSessionOptions): RoundSession {
  const { record, round, clock } = options;
  const now = () => clock.now();
  const providers = new Map<EarsId, Ears>(options.ears.map((ears) => [ears.id, ears]));
  const keeper = createKeeper({
    record,
    round,
    nextSeq: options.entries.reduce((next, entry) => Math.max(next, entry.seq + 1), 0),
    now,
    newId: options.newId,
  });

  const ears = createActor(
    earsMachine.provide({
      actors: {
        prepare: fromPromise(({ input, self }) => {
          const provider = providers.get(input.id);
          if (!provider) return Promise.resolve({ kind: 'unavailable' as const, sentence: 'That recogniser is not here.' });
          return provider.prepare((done) => self._parent?.send({ type: 'loading.progressed', done }));
        }),
        hear: fromCallback<{ type: 'unused' }, { id: EarsId; request: ListenRequest }>(({ input, sendBack }) => {
          const provider = providers.get(input.id);
          return provider?.listen(input.request, (event) => sendBack({ type: 'provider.reported', event }));
        }),
      },
    }),
    { input: { providers: options.ears.map((provider) => provider.id) } },
  );

  const say = fromPromise<void, { lines: readonly string[] }>(async ({ input, signal }) => {
    const { mouth, settings } = options.mouth();
    for (const line of input.lines) {
      if (signal.aborted) return;
      if (performance.getEntriesByName(FIRST_WORDS).length === 0) performance.mark(FIRST_WORDS);
      await mouth.say(line, settings, signal);
    }
    if (mouth.id !== 'silent' && input.lines.length > 0) await clock.sleep(TAIL_MS, signal);
  });
  const keep = fromPromise<readonly Entry[], { drafts: readonly EntryDraft[] }>(({ input }) =>
    keeper.keep(input.drafts).catch(sayWhy),
  );
  const listen = fromCallback<{ type: 'unused' }, { request: ListenRequest }>(({ input, sendBack }) => {
    const reply = (event: EarsEvent) => {
      if (event.type === 'listening') options.playCue('listening');
      sendBack({ type: 'ears.reported', event });
    };
    ears.send({ type: 'listen.requested', request: input.request, reply });
    return () => ears.send({ type: 'listen.stopped', reply });
  });
  const keepBytes = async (bytes: ArrayBuffer): Promise<string> => {
    const id = options.newId();
    await record.putPhoto(id, bytes, KEPT_TYPE);
    return id;
  };
  const picture = fromPromise<string>(({ signal }) =>
    takePicture({ signal, onTaken: () => options.playCue('due') })
      .then(keepBytes)
      .catch(sayWhy),
  );
  const deadline = fromPromise<void, { at: number }>(({ input, signal }) => clock.sleep(input.at - now(), signal));

  const actor = createActor(
    roundMachine.provide({
      actors: {
        say,
        keep,
        timedCheck: timedCheckMachine.provide({ actors: { deadline } }),
        exchange: exchangeMachine.provide({
          actors: { say, keep, listen, takePicture: picture },
          actions: {
            playCue: (_, { cue }) => options.playCue(cue),
            adjustLoudness: (_, { by }) => options.adjustLoudness(by),
            chooseStyle: ({ self }, { style }) => {
              options.chooseStyle(style);
              self._parent?.send({ type: 'style.chosen', style });
            },
            reportKept: ({ self }, { entries }) => self._parent?.send({ type: 'entries.kept', entries }),
          },
        }),
      },
      actions: { playCue: (_, { cue }) => options.playCue(cue) },
    }),
    {
      input: {
        round,
        entries: options.entries,
        past: options.past,
        style: options.style,
        display: options.display,
        mute: options.mute,
        now,
      },
    },
  );

  const listeners = new Set<() => void>();
  let cached: RoundView | null = null;
  const changed = () => {
    cached = null;
    for (const listener of listeners) listener();
  };
  let exchangeWatch: { unsubscribe(): void } | undefined;
  let watched: unknown;
  actor.subscribe((snapshot) => {
    const child = snapshot.children.exchange;
    if (child !== watched) {
      exchangeWatch?.unsubscribe();
      watched = child;
      exchangeWatch = child?.subscribe(changed);
    }
    changed();
  });
  ears.subscribe(changed);

  ears.start();
  actor.start();
  if (!options.mute) ears.send({ type: 'prepare.requested' });

  const view = (): RoundView => {
    const snapshot = actor.getSnapshot();
    const exchange = snapshot.children.exchange?.getSnapshot() as SnapshotFrom<typeof exchangeMachine> | undefined;
    const { context } = snapshot;
    return presentRound(
      context.state,
      context.past,
      {
        phase: phaseOf(snapshot, exchange),
        key: atCheck(snapshot) ? context.key : null,
        saying: exchange?.context.saying ?? '',
        speaking: exchange?.hasTag('speaking') ?? snapshot.hasTag('speaking'),
        partial: exchange?.context.partial ?? null,
        offers: exchange?.context.offers ?? [],
        ears: earsView(ears.getSnapshot(), exchange),
        trouble: exchange?.context.trouble ?? context.trouble,
        taking: exchange?.context.dictating ?? null,
      },
      options.display,
      now(),
    );
  };

  return {
    view: () => {
      cached ??= view();
      return cached;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    request(request) {
      if (request.type === 'listen' && request.on) ears.send({ type: 'prepare.requested' });
      actor.send(eventOf(request));
    },
    async keepPicture(given, key) {
      try {
        const photo = await shrinkPicture(given).then(keepBytes);
        const entries = await keeper.keep([pictureDraft(key, photo, { ...NO_HEARING, via: 'button', by: 'first' })]);
        actor.send({ type: 'entries.kept', entries });
        options.playCue('heard');
        actor.send({ type: 'aside.told', lines: ['Picture kept.'], trouble: null });
      } catch (error) {
        options.playCue('wrong');
        const sentence = sentenceOf(error);
        actor.send({ type: 'aside.told', lines: [sentence], trouble: sentence });
      }
    },
    stop() {
      exchangeWatch?.unsubscribe();
      actor.stop();
      ears.stop();
    },
  };
}

/** The record's own sentence is what the person hears; the detail is for whoever mends it. */
function sentenceOf(error: unknown): string {
  return error instanceof RecordError || error instanceof PictureError ? error.sentence : 'That could not be kept. Try again.';
}

function sayWhy(error: unknown): never {
  throw new Error(sentenceOf(error), { cause: error });
}

function eventOf(request: RoundRequest): RoundEvent {
  switch (request.type) {
    case 'begin':
      return { type: 'round.begun', people: request.people };
    case 'answer':
      return { type: 'answer.pressed', answer: request.answer, via: request.via };
    case 'confirm':
      return { type: 'confirm.pressed', yes: request.yes, via: request.via };
    case 'skip':
      return { type: 'skip.requested', reason: request.reason, via: request.via };
    case 'note':
      return { type: 'note.requested', text: request.text, finding: request.finding, via: request.via };
    case 'go':
      return { type: 'check.requested', key: request.key };
    case 'command':
      return { type: 'command.requested', command: request.command, via: request.via };
    case 'listen':
      return { type: 'listening.requested', on: request.on };
    case 'retry-keep':
      return { type: 'keep.retried' };
    case 'finish':
      return { type: 'finish.requested' };
  }
}

/** Between two checks the last one stays on the screen, so that nothing flickers. */
function atCheck(snapshot: SnapshotFrom<typeof roundMachine>): boolean {
  return snapshot.hasTag('asking') || snapshot.hasTag('keeping') || snapshot.hasTag('keep-failed');
}

function phaseOf(
  snapshot: SnapshotFrom<typeof roundMachine>,
  exchange: SnapshotFrom<typeof exchangeMachine> | undefined,
): RoundPhase {
  if (snapshot.hasTag('complete')) return 'complete';
  if (snapshot.hasTag('keep-failed') || exchange?.matches('keepFailed')) return 'keep-failed';
  if (snapshot.hasTag('briefing')) return 'briefing';
  if (snapshot.hasTag('held')) return 'held';
  if (snapshot.hasTag('wrap-up') || snapshot.hasTag('waiting')) return 'wrap-up';
  if (exchange?.context.dictating) return 'noting';
  if (exchange && exchange.context.offers.length > 0) return 'confirming';
  if (exchange?.hasTag('keeping') || snapshot.hasTag('keeping')) return 'keeping';
  return 'asking';
}

function earsView(
  snapshot: SnapshotFrom<typeof earsMachine>,
  exchange: SnapshotFrom<typeof exchangeMachine> | undefined,
): EarsView {
  const { context } = snapshot;
  const provider = context.providers[context.index] ?? null;
  const view = (
    state: EarsView['state'],
    sentence: string | null = context.sentence,
    progress: number | null = null,
  ): EarsView => ({
    state,
    sentence,
    progress,
    provider,
  });
  if (snapshot.matches('denied')) return view('denied');
  if (snapshot.matches('unavailable')) return view('unavailable');
  if (exchange?.context.mute || snapshot.matches('idle')) return view('off', null);
  if (snapshot.matches('preparing')) return view('loading', null, context.progress);
  const open = exchange?.context.ears ?? 'closed';
  return view(open === 'hearing' ? 'hearing' : open === 'open' ? 'listening' : 'waiting', exchange?.context.trouble ?? null);
}
