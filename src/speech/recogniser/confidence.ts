/**
 * How likely the best hypothesis is right: a logistic model of the evidence. Its weights are trained by
 * `tests/tools/trainConfidence.ts` on clips that no reported figure uses.
 */
import { CONFIDENCE_WEIGHTS } from './confidenceWeights.ts';
import type { Evidence } from './evidence.ts';

/** The model's inputs; squares and hinges let it prefer a middle. */
export function inputsOf(evidence: Evidence): readonly number[] {
  const { fit, worstWord, overSilence, margin, rivals, unexplained, voiced, longestVoiced, pace, words, phones, snrDb } =
    evidence;
  const others = evidence.otherVoices ? 1 : 0;
  return [
    1,
    fit,
    worstWord / 4,
    overSilence / 10,
    Math.log1p(margin),
    voiced,
    longestVoiced / 10,
    Math.log(pace),
    Math.log(pace) ** 2,
    words / 4,
    1 / words,
    snrDb / 10,
    (fit * Math.max(0, 20 - snrDb)) / 10,
    rivals,
    unexplained / 10,
    longestVoiced < 8 ? 1 : 0,
    1 / phones,
    Math.max(0, worstWord - 1),
    Math.max(0, Math.log(pace / 12)),
    Math.max(0, Math.log(6 / pace)),
    others,
    others * Math.log1p(margin),
    others * fit,
  ];
}

/**
 * Other voices this near, in dB below the answer, may be what was heard: they say numbers too. However well it fits, it is then not sure
 * enough to be taken without a question. Measured on 372 answers before six other voices 10 dB lower: 5 wrong values would have passed.
 */
const NEAR_VOICES_DB = 20;
const MOST_AMONG_VOICES = 0.65;

/** 0..1 */
export function confidenceOf(evidence: Evidence, weights: readonly number[] = CONFIDENCE_WEIGHTS): number {
  const most = evidence.otherVoices && evidence.snrDb < NEAR_VOICES_DB ? MOST_AMONG_VOICES : 1;
  const sum = inputsOf(evidence).reduce((total, input, index) => total + input * (weights[index] ?? 0), 0);
  return Math.min(most, 1 / (1 + Math.exp(-sum)));
}
