/**
 * Clips of one sentence joined into one run of frames. Parameters are joined, not samples: the vocoder glides from the last
 * frame of one clip to the first of the next within 10 ms, so that there is no click, and the pitch follows one line through
 * the sentence as it does when somebody speaks.
 */
import { type Choice, chooseClips } from './chooseClips.ts';
import { type SpokenSentence, spokenSentences } from './spokenWords.ts';
import { type Frame, HOP, SAMPLE_RATE } from './vocoder.ts';
import type { VoicePack } from './voicePack.ts';

/** Silence within a sentence and after one, in frames of 10 ms. */
export const PAUSE_FRAMES = { short: 14, long: 22, sentence: 34 } as const;
/** Frame rate. */
const PER_SECOND = SAMPLE_RATE / HOP;

/** Where joined words begin and end in pitch; a question ends higher. In hertz, about the voice's own middle. */
const PITCH_LINE = { from: 186, to: 160, question: 176 } as const;
/** How much of a clip's own melody is kept around the line; all of it would jump about. */
const OWN_MELODY = 0.65;
/** Fall over the last stretch of a sentence, and how much slower that stretch is said. */
const FINAL = { seconds: 0.28, fall: 0.86, rise: 1.12, stretch: 1.25 } as const;

/**
 * Frames of one sentence without the silence after it.
 * @throws Error when the choice names a clip that the pack does not hold: they belong together
 */
export function joinSentence(choice: Choice, pack: Pick<VoicePack, 'clip'>): readonly Frame[] {
  const clipOf = (kind: 'line' | 'part', words: string): readonly Frame[] => {
    const frames = pack.clip(kind, words);
    if (frames === null) throw new Error(`no ${kind} "${words}"`);
    return frames;
  };
  const [first] = choice.pieces;
  if (first?.kind === 'line') return clipOf('line', first.words);

  const runs = choice.pieces.map((piece) => (piece.kind === 'pause' ? null : clipOf(piece.kind, piece.words)));
  const total = runs.reduce((sum, run) => sum + (run?.length ?? 0), 0);
  const end = choice.ending === '?' ? PITCH_LINE.question : PITCH_LINE.to;
  const joined: Frame[] = [];
  let said = 0;
  choice.pieces.forEach((piece, index) => {
    const run = runs[index];
    if (piece.kind === 'pause') {
      joined.push(...silence(PAUSE_FRAMES[piece.length], joined[joined.length - 1]));
    } else if (run) {
      const middle = PITCH_LINE.from + (end - PITCH_LINE.from) * ((said + run.length / 2) / total);
      joined.push(...onLine(run, middle));
      said += run.length;
    }
  });
  return withEnding(joined, choice.ending);
}

/** Frames that are not heard: the filter stays where it was and its input is nought. */
export function silence(frames: number, before: Frame | undefined): readonly Frame[] {
  if (before === undefined) return [];
  return Array.from({ length: frames }, () => ({ ...before, gain: 0, voicing: 0 }));
}

function onLine(frames: readonly Frame[], middle: number): readonly Frame[] {
  const voiced = frames.filter(({ voicing }) => voicing > 0);
  if (voiced.length === 0) return frames.map((frame) => ({ ...frame, pitch: middle }));
  const mean = Math.exp(voiced.reduce((sum, { pitch }) => sum + Math.log(pitch), 0) / voiced.length);
  return frames.map((frame) => ({ ...frame, pitch: middle * (frame.pitch / mean) ** OWN_MELODY }));
}

/** The last stretch falls (or rises, where something is asked) and is drawn out, as at the end of anything said. */
function withEnding(frames: readonly Frame[], ending: Choice['ending']): readonly Frame[] {
  // Only what is said after the last pause is drawn out, never the pause.
  const sounding = frames.length - 1 - frames.findLastIndex(({ gain }) => gain === 0);
  const length = Math.min(sounding, Math.round(FINAL.seconds * PER_SECOND));
  if (length < 2) return frames;
  const start = frames.length - length;
  const stretched = Math.round(length * FINAL.stretch);
  const goal = ending === '?' ? FINAL.rise : FINAL.fall;
  const tail = Array.from({ length: stretched }, (_, i): Frame => {
    const place = (i * (length - 1)) / (stretched - 1);
    const left = Math.floor(place);
    const a = frames[start + left] as Frame;
    const b = frames[Math.min(start + left + 1, frames.length - 1)] as Frame;
    const w = place - left;
    return {
      lsf: a.lsf.map((value, k) => value * (1 - w) + (b.lsf[k] ?? value) * w),
      gain: a.gain > 0 && b.gain > 0 ? a.gain ** (1 - w) * b.gain ** w : a.gain,
      pitch: (a.pitch * (1 - w) + b.pitch * w) * (1 + (goal - 1) * (i / (stretched - 1))),
      voicing: w < 0.5 ? a.voicing : b.voicing,
    };
  });
  return [...frames.slice(0, start), ...tail];
}

export interface SpokenLine {
  /** One run of frames for each sentence; the silence between them is {@link PAUSE_FRAMES}. */
  readonly sentences: readonly (readonly Frame[])[];
  /** Words that could not be said, in order. */
  readonly unsaid: readonly string[];
}

/** A whole text, ready for the vocoder. Empty where there is nothing to say. */
export function joinText(text: string, pack: VoicePack): SpokenLine {
  const choices = spokenSentences(text).map((sentence: SpokenSentence) => chooseClips(sentence, pack));
  return {
    sentences: choices.map((choice) => joinSentence(choice, pack)),
    unsaid: choices.flatMap(({ unsaid }) => unsaid),
  };
}

/**
 * Samples never beyond full scale: untouched up to the knee, then bent. A pulse may stand far above the level that is heard.
 */
export function limit(samples: Float32Array): Float32Array {
  const knee = 0.7;
  return samples.map((x) => {
    const size = Math.abs(x);
    return size <= knee ? x : Math.sign(x) * (knee + (1 - knee) * Math.tanh((size - knee) / (1 - knee)));
  });
}
