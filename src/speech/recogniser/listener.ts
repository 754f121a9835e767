/**
 * An open microphone: sound in, events out. Finds utterances, decodes each against the request's grammar, keeps nothing of
 * what lies behind but the noise floor. All buffers have a fixed size.
 */
import { ANSWER_ENDPOINTS, Endpointer, NOTE_ENDPOINTS, ONSET_WINDOW } from './endpointer.ts';
import { FRONT_END } from './frontEnd.ts';
import { InputMeter, SOUND_SENTENCES, type SoundProblem } from './inputMeter.ts';
import type { AnswerDecoder } from './layeredDecoder.ts';
import { createMelFilters } from './melFilters.ts';
import { MelSpectrum } from './melSpectrum.ts';
import type { Decoded } from './utteranceDecoder.ts';
import { VOICED, Voicing } from './voicing.ts';

const { filters: FILTERS, shift: SHIFT } = FRONT_END;

/** Frames kept from before speech was noticed: the first consonant, and enough noise to measure (45 cost 2 % in noise). */
const PRE_ROLL = 90;
/**
 * Quiet frames after which the utterance is decoded ahead of its end, so that the result is there when it comes. Fewer would cut
 * off soft ends in noise.
 */
const AHEAD_AFTER = 30;
/** Frames between looks at an utterance that goes on, for the screen. */
const PARTIAL_EVERY = 90;
/** A device that takes longer than this for a look does without. */
const PARTIAL_MOST_MS = 120;
/** Looks take a twenty-fifth of the time at most: among other voices an utterance may go on and on. */
const PARTIAL_SHARE = 25;
/** Less is not a word: a click, a knock, a gust's edge. */
const LEAST_SPEECH = 12;
/** Below this an utterance counts as not understood. */
export const LEAST_CONFIDENCE = 0.2;
/** A sound that fits nothing counts as speech, and is asked about, from this voiced run on. */
const LEAST_VOICED = 8;
/**
 * Without a voiced run of this many frames nothing is decoded. Measured on the tuning clips: no answer that was understood had less
 * than 10, in any noise; three of four gusts have none.
 */
const LEAST_TO_DECODE = 5;

export type ListenerEvent =
  | { readonly type: 'speech-started' }
  | { readonly type: 'partial'; readonly transcript: string }
  | {
      readonly type: 'heard';
      readonly hypotheses: readonly { readonly transcript: string; readonly confidence: number | null }[];
      readonly decoded: Decoded | null;
      /** 16 kHz, 16 bit: the utterance with a little around it. */
      readonly samples: Int16Array;
      readonly timing: UtteranceTiming;
    }
  | { readonly type: 'not-understood'; readonly decoded: Decoded; readonly timing: UtteranceTiming }
  | { readonly type: 'sound'; readonly problem: SoundProblem; readonly sentence: string };

export interface UtteranceTiming {
  /** Seconds from the beginning of the sound that was fed. */
  readonly startS: number;
  readonly endS: number;
  readonly decodeMs: number;
  /**
   * From the endpoint to the result, for sound that comes as fast as it is spoken; 0 when decoding ahead of the endpoint was done by
   * then.
   */
  readonly waitMs: number;
  readonly snrDb: number;
}

/** What to listen with. `note`: keep the sound, decode nothing. */
export type Hearing = { readonly kind: 'answer'; readonly decoder: AnswerDecoder } | { readonly kind: 'note' };

export interface ListenerOptions {
  readonly onEvent: (event: ListenerEvent) => void;
  /** Milliseconds, any origin. */
  readonly now: () => number;
}

const SPEECH_BAND = createMelFilters().flatMap(({ centerHz }, filter) => (centerHz >= 300 && centerHz <= 3400 ? [filter] : []));
/** A full-scale sine's energy in a mel filter is about this; it sets the dB scale's zero. */
const FULL_SCALE_ENERGY = 1e10;

const levelOf = (energies: ArrayLike<number>): number => {
  let sum = 0;
  for (const filter of SPEECH_BAND) sum += energies[filter] as number;
  return 10 * Math.log10(sum / SPEECH_BAND.length / FULL_SCALE_ENERGY + 1e-13);
};

/** Hypotheses as the app speaks of them. */
export const transcripts = ({ hypotheses }: Decoded) =>
  hypotheses.map(({ words, confidence }) => ({ transcript: words.join(' '), confidence }));

const NOTHING: Decoded = { hypotheses: [], evidence: null };

export class Listener {
  readonly #onEvent: (event: ListenerEvent) => void;
  readonly #now: () => number;
  readonly #mel = new MelSpectrum();
  readonly #voicing = new Voicing();
  readonly #endpointer = new Endpointer();
  readonly #meter = new InputMeter();
  #hearing: Hearing | null = null;
  readonly #capacity = NOTE_ENDPOINTS.mostFrames + 2 * PRE_ROLL;
  readonly #energies = new Float32Array(this.#capacity * FILTERS);
  readonly #voiced = new Float32Array(this.#capacity);
  readonly #levels = new Float32Array(this.#capacity);
  readonly #sound = new Int16Array(this.#capacity * SHIFT);
  #frames = 0;
  /** Frames since the sound began, for the timings. */
  #clock = 0;
  readonly #block = new Float32Array(SHIFT);
  #blockCount = 0;
  readonly #scaled = new Float32Array(SHIFT);
  #floorAtStart = Number.NEGATIVE_INFINITY;
  #ahead: { readonly frames: number; readonly decoded: Decoded; readonly ms: number } | null = null;
  #lastPartial = 0;
  #partialMs = 0;
  #shown = '';

  constructor({ onEvent, now }: ListenerOptions) {
    this.#onEvent = onEvent;
    this.#now = now;
  }

  /** Open for an answer or a note. What is known of the noise stays. */
  open(hearing: Hearing): void {
    this.#hearing = hearing;
    this.#endpointer.begin(hearing.kind === 'note' ? NOTE_ENDPOINTS : ANSWER_ENDPOINTS);
    this.#mel.reset();
    this.#frames = 0;
    this.#blockCount = 0;
    this.#forget();
  }

  /** Sound that comes now is dropped. */
  close(): void {
    this.#hearing = null;
  }

  get isOpen(): boolean {
    return this.#hearing !== null;
  }

  /** @param samples 16 kHz mono, -1 .. 1, any number */
  feed(samples: Float32Array): void {
    if (!this.#hearing) return;
    const problem = this.#meter.feed(samples, this.#endpointer.floorDb);
    if (problem) this.#onEvent({ type: 'sound', problem, sentence: SOUND_SENTENCES[problem] });
    for (let at = 0; at < samples.length && this.#hearing; ) {
      const part = Math.min(SHIFT - this.#blockCount, samples.length - at);
      this.#block.set(samples.subarray(at, at + part), this.#blockCount);
      this.#blockCount += part;
      at += part;
      if (this.#blockCount === SHIFT) {
        this.#blockCount = 0;
        this.#tenMilliseconds();
      }
    }
  }

  /** The sound is over: what is being said is taken as said. */
  finish(): void {
    if (this.#hearing && this.#endpointer.isSpeaking) this.#end();
  }

  #tenMilliseconds(): void {
    const block = this.#block;
    for (let n = 0; n < SHIFT; n += 1) {
      // A broken device may give anything; nothing but numbers in range goes on.
      const sample = Math.min(1, Math.max(-1, block[n] as number)) || 0;
      block[n] = sample;
      this.#scaled[n] = sample * 32768;
    }
    this.#voicing.feed(block);
    this.#mel.feed(this.#scaled, (energies) => this.#frame(energies));
  }

  #frame(energies: Float64Array): void {
    const hearing = this.#hearing;
    if (!hearing) return;
    this.#clock += 1;
    if (this.#frames === this.#capacity) this.#keepLast(PRE_ROLL);
    const at = this.#frames;
    this.#energies.set(energies, at * FILTERS);
    const level = levelOf(energies);
    this.#levels[at] = level;
    this.#voiced[at] = this.#voicing.periodicity();
    for (let n = 0; n < SHIFT; n += 1) this.#sound[at * SHIFT + n] = Math.round((this.#block[n] as number) * 32767);
    this.#frames += 1;

    const event = this.#endpointer.frame(level);
    if (event === 'started') {
      this.#keepLast(PRE_ROLL + ONSET_WINDOW);
      this.#floorAtStart = this.#endpointer.floorDb;
      this.#forget();
      this.#onEvent({ type: 'speech-started' });
    } else if (event === 'ended') {
      this.#end();
    } else if (this.#endpointer.isSpeaking) {
      if (hearing.kind === 'answer') this.#lookAhead(hearing.decoder);
    } else if (this.#frames > 2 * PRE_ROLL + ONSET_WINDOW) {
      this.#keepLast(PRE_ROLL + ONSET_WINDOW);
    }
  }

  #forget(): void {
    this.#ahead = null;
    this.#lastPartial = this.#frames;
    this.#partialMs = 0;
    this.#shown = '';
  }

  #keepLast(frames: number): void {
    const drop = this.#frames - frames;
    if (drop <= 0) return;
    this.#energies.copyWithin(0, drop * FILTERS, this.#frames * FILTERS);
    this.#voiced.copyWithin(0, drop, this.#frames);
    this.#levels.copyWithin(0, drop, this.#frames);
    this.#sound.copyWithin(0, drop * SHIFT, this.#frames * SHIFT);
    this.#frames = frames;
  }

  #lookAhead(decoder: AnswerDecoder): void {
    const quiet = this.#endpointer.quietFrames;
    if (quiet === 0) this.#ahead = null;
    const pause = Math.max(PARTIAL_EVERY, (PARTIAL_SHARE * this.#partialMs) / 10);
    const isPartial = quiet === 0 && this.#frames - this.#lastPartial >= pause && this.#partialMs < PARTIAL_MOST_MS;
    if (quiet !== AHEAD_AFTER && !isPartial) return;
    if (this.#longestVoiced() < LEAST_TO_DECODE) return;
    if (quiet === AHEAD_AFTER) {
      const started = this.#now();
      const decoded = this.#decode(decoder);
      this.#ahead = { frames: this.#frames, decoded, ms: this.#now() - started };
      this.#lastPartial = this.#frames;
      this.#show(decoded.hypotheses[0]?.words ?? []);
    } else {
      const started = this.#now();
      this.#lastPartial = this.#frames;
      this.#show(decoder.partial(this.#energies.subarray(0, this.#frames * FILTERS), this.#frames));
      this.#partialMs = this.#now() - started;
    }
  }

  /** Frames of the longest voiced run. */
  #longestVoiced(): number {
    let run = 0;
    let longest = 0;
    for (let frame = 0; frame < this.#frames; frame += 1) {
      run = (this.#voiced[frame] as number) >= VOICED ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  }

  #show(words: readonly string[]): void {
    const transcript = words.join(' ');
    if (transcript === '' || transcript === this.#shown) return;
    this.#shown = transcript;
    this.#onEvent({ type: 'partial', transcript });
  }

  /** dB of the louder half of the utterance over the floor before it. */
  #snrDb(): number {
    const levels = [...this.#levels.subarray(0, this.#frames)].sort((a, b) => a - b);
    const loud = levels[Math.floor(0.85 * levels.length)] ?? -120;
    const quiet = Math.max(this.#floorAtStart, levels[Math.floor(0.1 * levels.length)] ?? -120);
    return Math.max(0, loud - quiet);
  }

  #decode(decoder: AnswerDecoder): Decoded {
    return decoder.decode({
      energies: this.#energies.subarray(0, this.#frames * FILTERS),
      frames: this.#frames,
      voicing: this.#voiced.subarray(0, this.#frames),
      snrDb: this.#snrDb(),
    });
  }

  #end(): void {
    const hearing = this.#hearing;
    if (!hearing) return;
    const started = this.#now();
    const samples = this.#sound.slice(0, this.#frames * SHIFT);
    const timing = (decodeMs: number, leadMs = 0): UtteranceTiming => ({
      startS: Math.max(0, this.#clock - this.#frames) / 100,
      endS: this.#clock / 100,
      decodeMs,
      waitMs: Math.max(this.#now() - started, decodeMs - leadMs, 0),
      snrDb: this.#snrDb(),
    });
    if (hearing.kind === 'note') {
      this.#frames = 0;
      this.#onEvent({
        type: 'heard',
        hypotheses: [{ transcript: '', confidence: null }],
        decoded: null,
        samples,
        timing: timing(0),
      });
      return;
    }
    const longest = this.#longestVoiced();
    const ahead = this.#ahead;
    const decoded = ahead ? ahead.decoded : longest >= LEAST_TO_DECODE ? this.#decode(hearing.decoder) : NOTHING;
    const made = ahead ? timing(ahead.ms, 10 * (this.#frames - ahead.frames)) : timing(this.#now() - started);
    const long = this.#frames >= LEAST_SPEECH + PRE_ROLL;
    this.#frames = 0;
    this.#forget();
    const best = decoded.hypotheses[0];
    if (best && best.confidence >= LEAST_CONFIDENCE) {
      this.#onEvent({
        type: 'heard',
        hypotheses: transcripts(decoded),
        decoded,
        samples,
        timing: made,
      });
    } else if (long && longest >= LEAST_VOICED) {
      this.#onEvent({ type: 'not-understood', decoded, timing: made });
    }
  }
}
