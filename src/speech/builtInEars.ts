/**
 * Our own recogniser behind the app's port: a Worker that hears what the check expects, with no network and no help from the
 * device. The gate is half duplex: sound counts only between `listen` and its stop.
 */
import type { Hearing } from '../domain/language/hearing.ts';
import type { Ears, EarsEvent, EarsState, ListenRequest } from '../domain/voice/ports.ts';
import { type Microphone, type OpenMicrophone, openMicrophone } from './microphone.ts';
import { type NoteRecorder, recordNote } from './noteRecorder.ts';
import type { RecognizerCommand, RecognizerEvent } from './recogniser/protocol.ts';
import { type SoundClip, wavClip } from './wavClip.ts';

export interface BuiltInEarsOptions {
  /** Folder that `model.bin` lies in, ending in "/". */
  readonly modelUrl: string;
  /** Keeps a clip and gives its id. Left out: no clips. */
  readonly keepClip?: (clip: SoundClip) => Promise<string>;
  /** Asked at each answer; notes are kept in any case. Left out: yes. */
  readonly clipsWanted?: () => boolean;
  readonly getUserMedia?: OpenMicrophone;
  readonly createWorker?: () => Worker;
  /** Sound that is dropped after the gate opens: the room still rings with the prompt. */
  readonly tailMs?: number;
  /** Asked after each answer: whether the microphone is kept. Given back, phones take a moment to open it again. Left out: kept. */
  readonly keepsMicrophone?: () => boolean;
}

const TAIL_MS = 120;
/** An answer does not wait longer than this for its clip to be stored. */
const CLIP_WAIT_MS = 600;
const RATE = 16_000;

const SENTENCES = {
  insecure: 'The microphone works only over a secure connection. Open the app with https, or use the buttons.',
  old: 'This browser cannot run the built-in recogniser. Use the buttons, or a newer browser.',
  missing: 'No microphone was found. Plug one in, or use the buttons.',
  busy: 'The microphone cannot be opened. Close other apps that use it, or use the buttons.',
  denied: 'The microphone is not allowed. Use the buttons, or allow it in the browser settings.',
  touch: 'Touch the screen once. Until then this browser does not let me listen.',
  lost: 'The microphone went away. Check the headset, or use the buttons.',
  crashed: 'The built-in recogniser stopped. Use the buttons.',
} as const;

type Failure = Omit<Extract<EarsEvent, { type: 'failed' }>, 'type'>;

/** What went wrong with a microphone, as a sentence. Source: Media Capture and Streams, "getUserMedia", error names. */
function microphoneFailure(error: unknown): Failure {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return { reason: 'denied', sentence: SENTENCES.denied };
  if (name === 'NotFoundError' || name === 'OverconstrainedError')
    return { reason: 'no-microphone', sentence: SENTENCES.missing };
  return { reason: 'no-microphone', sentence: SENTENCES.busy };
}

interface Turn {
  readonly id: number;
  readonly request: ListenRequest;
  readonly onEvent: (event: EarsEvent) => void;
  note: NoteRecorder | null;
  over: boolean;
}

export function createBuiltInEars(options: BuiltInEarsOptions): Ears {
  const getUserMedia = options.getUserMedia ?? ((constraints) => navigator.mediaDevices.getUserMedia(constraints));
  const createWorker =
    options.createWorker ??
    (() => new Worker(new URL('./worker/earsWorker.ts', import.meta.url), { type: 'module', name: 'ears' }));
  let worker: Worker | null = null;
  let loading: Promise<EarsState> | null = null;
  let onProgress: (done: number) => void = () => {};
  let settleLoading: (state: EarsState) => void = () => {};
  let microphone: Microphone | null = null;
  let opening: Promise<Microphone> | null = null;
  let turn: Turn | null = null;
  let turns = 0;
  /** The sound system waits for a touch: what is missing then is not the microphone. */
  let asleep = false;
  let closed = false;

  const command = (message: RecognizerCommand, transfer: Transferable[] = []) => worker?.postMessage(message, transfer);

  const end = (finished: Turn) => {
    finished.over = true;
    finished.note?.cancel();
    finished.note = null;
    if (turn === finished) {
      turn = null;
      command({ type: 'close' });
      if (options.keepsMicrophone?.() === false) closeMicrophone();
    }
  };
  const fail = (failure: Failure) => {
    const failed = turn;
    if (!failed) return;
    end(failed);
    failed.onEvent({ type: 'failed', ...failure });
  };

  const closeMicrophone = () => {
    microphone?.close();
    microphone = null;
    opening = null;
  };

  /** One microphone at a time, opened once and kept. */
  const openOnce = (): Promise<Microphone> => {
    opening ??= openMicrophone(getUserMedia).then(
      (opened) => {
        if (closed) {
          opened.close();
          throw new DOMException('closed', 'AbortError');
        }
        microphone = opened;
        const channel = new MessageChannel();
        opened.connect(channel.port1);
        command({ type: 'connect', port: channel.port2, rate: opened.rate }, [channel.port2]);
        opened.onLost(() => {
          if (microphone !== opened) return;
          closeMicrophone();
          const interrupted = turn;
          // A headset that changes over drops the track and is there again at once.
          if (interrupted) void openTurn(interrupted);
        });
        return opened;
      },
      (error: unknown) => {
        opening = null;
        throw error;
      },
    );
    return opening;
  };

  const load = (): Promise<EarsState> => {
    loading ??= new Promise<EarsState>((resolve) => {
      settleLoading = (state) => {
        // What failed may be tried again.
        if (state.kind !== 'ready') {
          loading = null;
          worker?.terminate();
          worker = null;
        }
        resolve(state);
      };
      try {
        worker = createWorker();
      } catch {
        settleLoading({ kind: 'unavailable', sentence: SENTENCES.old });
        return;
      }
      worker.onmessage = ({ data }: MessageEvent<RecognizerEvent>) => receive(data);
      worker.onerror = () => {
        settleLoading({ kind: 'unavailable', sentence: SENTENCES.crashed });
        fail({ reason: 'other', sentence: SENTENCES.crashed });
      };
      command({
        type: 'load',
        modelUrl: new URL('model.bin', new URL(options.modelUrl, location.href)).href,
      });
    });
    return loading;
  };

  const keep = async (clip: SoundClip): Promise<string | null> => {
    const { keepClip } = options;
    if (!keepClip) return null;
    const timeout = new Promise<null>((resolve) => setTimeout(() => resolve(null), CLIP_WAIT_MS));
    return Promise.race([keepClip(clip).catch(() => null), timeout]);
  };

  const hear = async (heard: Turn, event: Extract<RecognizerEvent, { type: 'utterance.recognized' }>) => {
    const isNote = heard.request.mode === 'free';
    const { note } = heard;
    heard.note = null;
    const recorded = isNote && note ? await note.finish() : null;
    const wanted = isNote || (options.clipsWanted?.() ?? true);
    const clip = wanted ? await keep(recorded ?? wavClip(event.samples, RATE)) : null;
    if (heard.over) return;
    const hearing: Hearing = { hypotheses: event.hypotheses, provider: 'built-in', clip };
    heard.onEvent({ type: 'heard', hearing });
  };

  const receive = (event: RecognizerEvent) => {
    if (event.type === 'loading.progressed') return onProgress(event.done);
    if (event.type === 'model.loaded') return settleLoading({ kind: 'ready' });
    if (event.type === 'model.refused') return settleLoading({ kind: 'unavailable', sentence: event.sentence });
    const current = turn;
    if (!current || event.turn !== current.id) return;
    switch (event.type) {
      case 'turn.opened':
        return current.onEvent({ type: 'listening' });
      case 'turn.refused':
        return fail({ reason: 'other', sentence: event.sentence });
      case 'sound.missing':
        return fail({ reason: 'no-microphone', sentence: asleep ? SENTENCES.touch : SENTENCES.lost });
      case 'speech.started':
        return current.onEvent({ type: 'speech-started' });
      case 'partial.heard':
        return current.onEvent({ type: 'partial', transcript: event.transcript });
      case 'utterance.recognized':
        void hear(current, event);
        return;
      case 'utterance.rejected':
        return current.onEvent({
          type: 'not-understood',
          // Its sound is not kept: it may be other people's talk.
          ...(event.hypotheses.length > 0 ? { faint: { hypotheses: event.hypotheses, provider: 'built-in', clip: null } } : {}),
        });
      case 'sound.failed':
        return current.onEvent({ type: 'sound', problem: event.problem, sentence: event.sentence });
    }
  };

  const openTurn = async (opened: Turn) => {
    const state = await load();
    if (opened.over) return;
    if (state.kind !== 'ready') {
      return fail({ reason: 'model', sentence: state.kind === 'unavailable' ? state.sentence : SENTENCES.crashed });
    }
    try {
      const live = await openOnce();
      const awake = await live.resume();
      if (opened.over) return;
      asleep = !awake;
      if (asleep) opened.onEvent({ type: 'sound', problem: 'silent', sentence: SENTENCES.touch });
      if (opened.request.mode === 'free') opened.note = recordNote(live.stream);
      command({ type: 'open', turn: opened.id, request: opened.request, tailMs: options.tailMs ?? TAIL_MS });
    } catch (error) {
      if (!opened.over) fail(microphoneFailure(error));
    }
  };

  return {
    id: 'built-in',

    async prepare(progressed) {
      closed = false;
      onProgress = progressed;
      if (!isSecureContext) return { kind: 'unavailable', sentence: SENTENCES.insecure };
      if (typeof Worker === 'undefined' || typeof AudioWorkletNode === 'undefined' || !navigator.mediaDevices) {
        return { kind: 'unavailable', sentence: SENTENCES.old };
      }
      const state = await load();
      if (state.kind !== 'ready') return state;
      try {
        await openOnce();
        if (options.keepsMicrophone?.() === false) closeMicrophone();
        return state;
      } catch (error) {
        const { reason, sentence } = microphoneFailure(error);
        return reason === 'denied' ? { kind: 'denied' } : { kind: 'unavailable', sentence };
      }
    },

    listen(request, onEvent) {
      if (turn) end(turn);
      turns += 1;
      const opened: Turn = { id: turns, request, onEvent, note: null, over: false };
      turn = opened;
      void openTurn(opened);
      return () => {
        if (!opened.over) end(opened);
      };
    },

    close() {
      closed = true;
      if (turn) end(turn);
      closeMicrophone();
      worker?.terminate();
      worker = null;
      loading = null;
    },
  };
}
