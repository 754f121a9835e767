/**
 * Ears and mouth as the rest of the app sees them. Each has several providers; the machines know only
 * these shapes. Types only: no code here, so that a Worker and the page can share it.
 */
import type { Expects, Position } from '../checks/expects.ts';
import type { Hearing } from '../language/hearing.ts';

export type EarsId = 'built-in' | 'browser' | 'scripted';

export type EarsState =
  | { readonly kind: 'ready' }
  | { readonly kind: 'loading'; readonly done: number }
  /** Permission refused. Never asked again by itself. */
  | { readonly kind: 'denied' }
  /** Cannot be used here or now; `sentence` says what to do. */
  | { readonly kind: 'unavailable'; readonly sentence: string };

/** What to listen for: enough to compile a grammar or to bias a recogniser. */
export interface ListenRequest {
  readonly expects: Expects;
  readonly position: Position | null;
  readonly positions: readonly Position[];
  /** Other checks: open ones that may be answered by name (two-person rounds), settled ones that may be changed by name. */
  readonly others: readonly {
    readonly names: readonly string[];
    readonly position: Position | null;
    readonly expects: Expects;
    readonly settled?: boolean;
  }[];
  /** `confirm` adds yes and no; `free` is a note: keep the audio, end only after a long pause. */
  readonly mode: 'answer' | 'confirm' | 'free';
}

export type EarsEvent =
  /** The microphone is open and the person may speak. */
  | { readonly type: 'listening' }
  | { readonly type: 'speech-started' }
  | { readonly type: 'partial'; readonly transcript: string }
  | { readonly type: 'heard'; readonly hearing: Hearing }
  /** Speech ended and nothing in it fitted well; not silence. `faint`: what it may have been, never to be acted upon by itself. */
  | { readonly type: 'not-understood'; readonly faint?: Hearing }
  /** Something about the sound itself: too windy, clipping, no signal. */
  | { readonly type: 'sound'; readonly problem: 'wind' | 'clipping' | 'silent'; readonly sentence: string }
  /** The provider is gone for this round; the machine falls back to the next without losing the exchange. */
  | {
      readonly type: 'failed';
      readonly reason: 'denied' | 'no-microphone' | 'network' | 'language' | 'model' | 'other';
      readonly sentence: string;
    };

export interface Ears {
  readonly id: EarsId;
  /** Ask once; may load a model. Resolves with what was found; never throws. */
  prepare(onProgress: (done: number) => void): Promise<EarsState>;
  /**
   * Listen until `stop` is called. A provider may report several hearings. Never two at once: the caller
   * stops the old one first.
   * @returns stop; closes the microphone gate at once, idempotent.
   */
  listen(request: ListenRequest, onEvent: (event: EarsEvent) => void): () => void;
  /** Give back the microphone and the Worker. */
  close(): void;
}

/** The part of an AbortSignal that is needed; the domain is compiled without the DOM. */
export interface CancelSignal {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void, options?: { once?: boolean }): void;
}

export type MouthId = 'browser' | 'bundled' | 'silent';

export interface MouthSettings {
  /** 0.5 .. 2; 1 is normal. */
  readonly rate: number;
  /** 0 .. 1. */
  readonly volume: number;
  readonly voice: string | null;
}

export interface Mouth {
  readonly id: MouthId;
  /** Whether it can speak here; waits a bounded time for late voices. Never throws. */
  prepare(): Promise<{
    readonly ready: boolean;
    readonly voices: readonly { readonly id: string; readonly name: string; readonly local: boolean }[];
  }>;
  /**
   * Speak one line. Resolves when it was spoken, was cancelled, or its watchdog ran out; never rejects, never hangs.
   */
  say(text: string, settings: MouthSettings, signal: CancelSignal): Promise<'spoken' | 'cancelled' | 'timed-out' | 'failed'>;
}

/** Short sounds, told apart by shape and not only pitch. */
export type Cue = 'listening' | 'heard' | 'not-sure' | 'wrong' | 'due';
