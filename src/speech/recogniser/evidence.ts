/**
 * What speaks for and against a hypothesis, as numbers: how the words fit beside any phones at all and beside silence, how far
 * the next hypothesis is, how voiced and how long the sound is. Each is bounded, so that odd sound cannot make it run away.
 */
import type { Path } from './viterbi.ts';

export interface Evidence {
  /** Nats a frame by which the words lose to the phone loop, over the speech. Near 0 is good. */
  readonly fit: number;
  /** The same for the worst word. */
  readonly worstWord: number;
  /** Nats a frame by which the words win over silence. */
  readonly overSilence: number;
  /** Nats to the next hypothesis that says something else. */
  readonly margin: number;
  /** Weight of all other hypotheses together beside the best, e-folding over 12 nats: 0 where nothing else is near. */
  readonly rivals: number;
  /** Voiced frames between and around the words: something was said that they do not explain. */
  readonly unexplained: number;
  /** Part of the spoken frames that is voiced. */
  readonly voiced: number;
  /** Longest voiced run, frames. */
  readonly longestVoiced: number;
  /** Frames a phone on average: words that are squeezed or stretched are suspect. */
  readonly pace: number;
  readonly words: number;
  /** Phones of all words: a short word fits many sounds. */
  readonly phones: number;
  /** dB of the speech over the noise in the speech band. */
  readonly snrDb: number;
  /** Other people talk behind: their words may be taken for an answer. */
  readonly otherVoices: boolean;
}

export interface EvidenceInput {
  readonly paths: readonly Path[];
  /** Best phone-loop score after each frame. */
  readonly loop: Float64Array;
  /** Silence score of each frame. */
  readonly silence: Float64Array;
  readonly voicing: Float32Array;
  readonly voicedFrom: number;
  readonly phonesOf: (words: readonly string[]) => number;
  readonly snrDb: number;
  readonly otherVoices: boolean;
}

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, Number.isFinite(value) ? value : low));

/** @returns null when there is no hypothesis with a word in it */
export function gatherEvidence(input: EvidenceInput): Evidence | null {
  const { paths, loop, silence, voicing, voicedFrom, phonesOf, snrDb, otherVoices } = input;
  const [best, second] = paths;
  if (!best || best.words.length === 0) return null;
  const at = (frame: number) => (frame < 0 ? 0 : (loop[frame] as number));
  let frames = 0;
  let lost = 0;
  let overSilence = 0;
  let worstWord = 0;
  let voiced = 0;
  let run = 0;
  let longestVoiced = 0;
  for (const { word, start, end, score } of best.spoken) {
    if (word < 0) {
      run = 0;
      continue;
    }
    const length = Math.max(1, end - start + 1);
    const loss = at(end) - at(start - 1) - score;
    lost += loss;
    frames += length;
    worstWord = Math.max(worstWord, loss / length);
    for (let frame = start; frame <= end; frame += 1) {
      overSilence += at(frame) - at(frame - 1) - (silence[frame] as number);
      if ((voicing[frame] ?? 0) >= voicedFrom) {
        voiced += 1;
        run += 1;
        longestVoiced = Math.max(longestVoiced, run);
      } else run = 0;
    }
  }
  if (frames === 0) return null;
  let allVoiced = 0;
  for (const one of voicing) if (one >= voicedFrom) allVoiced += 1;
  return {
    fit: clamp(lost / frames, -5, 20),
    worstWord: clamp(worstWord, -5, 40),
    overSilence: clamp(overSilence / frames, -10, 60),
    margin: clamp(second ? best.score - second.score : 100, 0, 100),
    rivals: clamp(
      paths.slice(1).reduce((sum, { score }) => sum + Math.exp((score - best.score) / 12), 0),
      0,
      4,
    ),
    unexplained: clamp(allVoiced - voiced, 0, 100),
    voiced: voiced / frames,
    longestVoiced: clamp(longestVoiced, 0, 60),
    pace: clamp(frames / Math.max(1, phonesOf(best.words)), 1, 30),
    words: clamp(best.words.length, 1, 12),
    phones: clamp(phonesOf(best.words), 1, 40),
    snrDb: clamp(snrDb, 0, 50),
    otherVoices,
  };
}
