/** The recogniser's Worker: wires model, sound and listener together and talks in the terms of the protocol. */
import { ModelError, readAcousticModel } from '../recogniser/acousticModel.ts';
import { appLexicon } from '../recogniser/lexicon.ts';
import { Listener, type ListenerEvent, transcripts } from '../recogniser/listener.ts';
import { Networks } from '../recogniser/networks.ts';
import type { RecognizerCommand, RecognizerEvent } from '../recogniser/protocol.ts';
import { Resampler } from '../recogniser/resampler.ts';
import { fetchModel } from './modelFile.ts';

declare const self: DedicatedWorkerGlobalScope;

/** No sound at all for this long while the gate is open: the microphone is gone. */
const SOUND_MISSING_MS = 4000;
const RATE = 16_000;

const tell = (event: RecognizerEvent, transfer: Transferable[] = []) => self.postMessage(event, transfer);

let networks: Networks | null = null;
let turn = 0;
let resampler: Resampler | null = null;
let ignore = 0;
let port: MessagePort | null = null;
let watchdog: ReturnType<typeof setTimeout> | undefined;

const listener = new Listener({ onEvent: report, now: () => performance.now() });

function report(event: ListenerEvent): void {
  switch (event.type) {
    case 'speech-started':
      tell({ type: 'speech.started', turn });
      break;
    case 'partial':
      tell({ type: 'partial.heard', turn, transcript: event.transcript });
      break;
    case 'heard':
      tell({ type: 'utterance.recognized', turn, hypotheses: event.hypotheses, samples: event.samples }, [
        event.samples.buffer as ArrayBuffer,
      ]);
      break;
    case 'not-understood':
      tell({ type: 'utterance.rejected', turn, hypotheses: transcripts(event.decoded) });
      break;
    case 'sound':
      tell({ type: 'sound.failed', turn, problem: event.problem, sentence: event.sentence });
      break;
  }
}

function watch(): void {
  clearTimeout(watchdog);
  if (!listener.isOpen) return;
  watchdog = setTimeout(() => tell({ type: 'sound.missing', turn }), SOUND_MISSING_MS);
}

function hear(piece: Float32Array): void {
  if (!resampler || !listener.isOpen) return;
  watch();
  const samples = resampler.process(piece);
  const skipped = Math.min(ignore, samples.length);
  ignore -= skipped;
  if (skipped < samples.length) listener.feed(samples.subarray(skipped));
}

async function load(modelUrl: string): Promise<void> {
  try {
    const bytes = await fetchModel(modelUrl, (done) => tell({ type: 'loading.progressed', done }));
    networks = new Networks(readAcousticModel(bytes), appLexicon());
    tell({ type: 'model.loaded' });
  } catch (error) {
    const sentence =
      error instanceof ModelError
        ? error.message
        : 'The built-in recogniser cannot start here. Use the buttons, or the browser’s recogniser.';
    tell({ type: 'model.refused', sentence });
  }
}

function open(command: Extract<RecognizerCommand, { type: 'open' }>): void {
  turn = command.turn;
  if (!networks) {
    tell({ type: 'turn.refused', turn, sentence: 'The built-in recogniser is not loaded.' });
    return;
  }
  try {
    const { request } = command;
    listener.open(request.mode === 'free' ? { kind: 'note' } : { kind: 'answer', decoder: networks.for(request) });
    ignore = Math.round((command.tailMs / 1000) * RATE);
    tell({ type: 'turn.opened', turn });
    watch();
  } catch {
    tell({ type: 'turn.refused', turn, sentence: 'The answers to this check cannot be listened for. Use the buttons.' });
  }
}

self.onmessage = ({ data }: MessageEvent<RecognizerCommand>) => {
  switch (data.type) {
    case 'load':
      void load(data.modelUrl);
      break;
    case 'connect':
      port?.close();
      port = data.port as MessagePort;
      resampler = new Resampler(data.rate, RATE);
      port.onmessage = (message: MessageEvent<Float32Array>) => hear(message.data);
      break;
    case 'open':
      open(data);
      break;
    case 'close':
      clearTimeout(watchdog);
      listener.close();
      break;
  }
};
