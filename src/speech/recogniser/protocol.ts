/** What the page and the recogniser's Worker say to each other. Types only, so that either side can be compiled alone. */
import type { ListenRequest } from '../../domain/voice/ports.ts';
import type { SoundProblem } from './inputMeter.ts';

/** Down to the Worker. */
export type RecognizerCommand =
  | { readonly type: 'load'; readonly modelUrl: string }
  /** Sound arrives on this port as Float32Array pieces of the given rate. */
  | { readonly type: 'connect'; readonly port: MessagePortLike; readonly rate: number }
  | { readonly type: 'open'; readonly turn: number; readonly request: ListenRequest; readonly tailMs: number }
  | { readonly type: 'close' };

/** Up from the Worker. Events of a turn that is over are to be ignored. */
export type RecognizerEvent =
  | { readonly type: 'loading.progressed'; readonly done: number }
  | { readonly type: 'model.loaded' }
  | { readonly type: 'model.refused'; readonly sentence: string }
  | { readonly type: 'turn.opened'; readonly turn: number }
  | { readonly type: 'turn.refused'; readonly turn: number; readonly sentence: string }
  | { readonly type: 'sound.missing'; readonly turn: number }
  | { readonly type: 'speech.started'; readonly turn: number }
  | { readonly type: 'partial.heard'; readonly turn: number; readonly transcript: string }
  | {
      readonly type: 'utterance.recognized';
      readonly turn: number;
      readonly hypotheses: readonly { readonly transcript: string; readonly confidence: number | null }[];
      /** 16 kHz, 16 bit. */
      readonly samples: Int16Array;
    }
  | {
      readonly type: 'utterance.rejected';
      readonly turn: number;
      /** What it may have been, best first; none where nothing fits. */
      readonly hypotheses: readonly { readonly transcript: string; readonly confidence: number | null }[];
    }
  | { readonly type: 'sound.failed'; readonly turn: number; readonly problem: SoundProblem; readonly sentence: string };

/** A MessagePort, as far as a realm without any host types can name it. */
export interface MessagePortLike {
  postMessage(message: unknown, transfer: unknown[]): void;
}
