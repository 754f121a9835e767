/**
 * Simulated hearings for the believing policy: a person reads true values, the ears mishear some of them, the policy asks,
 * the person answers, until a value is kept. Units with histories that leak and jump.
 */
import type { ReadingExpects } from '../../../src/domain/checks/expects.ts';
import { believe } from '../../../src/domain/language/believe.ts';
import { confusionsOf } from '../../../src/domain/language/confusions.ts';
import type { Decision, Expectation } from '../../../src/domain/language/decision.ts';
import type { Hearing } from '../../../src/domain/language/hearing.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext, Meaning } from '../../../src/domain/language/meaning.ts';
import { speakDigits, speakNumber } from '../../../src/domain/language/speakNumber.ts';
import RATES from './earsRates.json' with { type: 'json' };

export type Random = () => number;

/** mulberry32: small, fast, the same everywhere. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const gaussian = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Confidences from least to most, evenly spaced by rank. */
type Quantiles = readonly number[];

/** Rates of the ears. */
export interface EarsModel {
  /** Share of utterances whose best hypothesis is another value. */
  readonly wrong: number;
  /** Share of those where the truth is the second or third hypothesis. */
  readonly truthBehind: number;
  /** Share of right ones with a confusable rival behind. */
  readonly rival: number;
  /** Confidences of right and of wrong best hypotheses, and of the rival behind. */
  readonly confidenceRight: Quantiles;
  readonly confidenceWrong: Quantiles;
  readonly confidenceRival: Quantiles;
  /** Share of utterances with a confidence at all. */
  readonly confidenceGiven: number;
  readonly provider: Hearing['provider'];
}

const measured = (rates: (typeof RATES)['at10dB']): EarsModel => ({ ...rates, confidenceGiven: 1, provider: 'built-in' });

/** Of the built-in ears, measured by `tests/tools/measureHearing.ts` on spoken readings in wind, gusts and beside an engine. */
export const AT_10_DB = measured(RATES.at10dB);
/** The same in wind and gusts at 5 dB. */
export const AT_5_DB = measured(RATES.at5dB);
/**
 * Ears that say nothing of how sure they are, as some browsers' do not. All of their rates are assumed: no browser was measured. What is
 * kept wrong hangs on how often the truth is among the other hypotheses; `tests/bench/belief.ts` shows a worse case too.
 */
export const NO_CONFIDENCE: EarsModel = {
  ...AT_10_DB,
  wrong: 0.03,
  truthBehind: 0.95,
  rival: 0.3,
  confidenceGiven: 0,
  provider: 'browser',
};

function drawn(quantiles: Quantiles, random: Random): number {
  const at = random() * (quantiles.length - 1);
  const below = Math.floor(at);
  const low = quantiles[below] ?? 0;
  return low + (at - below) * ((quantiles[below + 1] ?? low) - low);
}

export const PRESSURE: ReadingExpects = {
  kind: 'reading',
  quantity: 'tire-pressure',
  unit: 'psi',
  otherUnits: ['kPa', 'bar'],
  min: 0,
  max: 150,
  step: 0.5,
  forms: ['whole', 'half'],
  usual: { min: 49, max: 70 },
};

const contextFor = (mode: InterpretContext['mode']): InterpretContext => ({
  expects: PRESSURE,
  names: [],
  position: 'left',
  positions: ['left', 'right'],
  others: [],
  last: null,
  previous: null,
  mode,
});

const CONTEXTS = { answer: contextFor('answer'), confirm: contextFor('confirm') } as const;
const clamp = (value: number) => Math.min(0.999, Math.max(0.01, value));

/** What the ears make of a value that was said. Digit by digit a teen is not taken for a ty. */
export function hear(value: number, byDigits: boolean, ears: EarsModel, random: Random): Hearing {
  const alike = confusionsOf(value).filter(
    ({ value: other, kind }) =>
      other >= PRESSURE.min && other <= PRESSURE.max && !(byDigits && kind === 'teen-ty') && kind !== 'lost-sign',
  );
  const other = alike[Math.floor(random() * alike.length)]?.value ?? null;
  const isWrong = other !== null && random() < ears.wrong;
  const confidence =
    random() < ears.confidenceGiven ? clamp(drawn(isWrong ? ears.confidenceWrong : ears.confidenceRight, random)) : null;
  const values = [isWrong ? other : value];
  if (isWrong && random() < ears.truthBehind) values.push(value);
  else if (!isWrong && other !== null && random() < ears.rival) values.push(other);
  const say = byDigits ? speakDigits : (one: number) => speakNumber(one, PRESSURE.forms);
  return {
    provider: ears.provider,
    clip: null,
    hypotheses: values.map((one, index) => ({
      transcript: say(one),
      confidence:
        confidence === null || index === 0 ? confidence : clamp(Math.min(confidence, drawn(ears.confidenceRival, random))),
    })),
  };
}

export interface Kept {
  /** Null: not settled by voice; the buttons were used. */
  readonly value: number | null;
  readonly questions: number;
  /** The first hearing was kept without a question. */
  readonly unasked: boolean;
}

const valueIn = (meaning: Meaning): number | null => (meaning.intent === 'reading' ? (meaning.readings[0]?.value ?? null) : null);
const MOST_QUESTIONS = 6;

/**
 * One reading from the first word until it is kept. The person knows the true value and answers questions truthfully.
 * After `mostQuestions` without a value the buttons are used.
 */
export function exchange(
  truth: number,
  expectation: Expectation | null,
  limitsAt: readonly number[],
  ears: EarsModel,
  random: Random,
  mostQuestions = MOST_QUESTIONS,
): Kept {
  let asked = 0;
  let mode: 'answer' | 'confirm' = 'answer';
  let byDigits = false;
  while (asked <= mostQuestions) {
    const hearing = hear(truth, byDigits, ears, random);
    const context = CONTEXTS[mode];
    const decision: Decision = believe({
      hearing,
      meanings: hearing.hypotheses.map(({ transcript }) => interpret(transcript, context)),
      context,
      expectation,
      limitsAt,
      asked,
      style: 'terse',
    });
    const value = valueIn(decision.meaning);
    if (decision.outcome === 'accept') return { value, questions: asked, unasked: asked === 0 };
    asked += 1;
    if (decision.outcome === 'confirm') {
      // "yes" to what is true; else the value once more. A plain yes or no is hardly ever misheard.
      if (value === truth) return { value, questions: asked, unasked: false };
      mode = 'confirm';
      byDigits = false;
    } else if (decision.outcome === 'distinguish') {
      mode = 'confirm';
      byDigits = true;
    } else mode = 'answer';
  }
  return { value: null, questions: asked, unasked: false };
}

export interface Tire {
  readonly base: number;
  /** Loss per round. */
  readonly leak: number;
}

/** Robust center and spread of the values kept, as the history gives them. */
export function expectationOf(kept: readonly number[]): Expectation | null {
  const recent = kept.slice(-9);
  if (recent.length < 3) return null;
  const middle = median(recent);
  const spread = 1.4826 * median(recent.map((value) => Math.abs(value - middle)));
  return { median: middle, spread: Math.max(spread, PRESSURE.step / 2), count: recent.length };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}

export interface Tally {
  readonly readings: number;
  readonly rounds: number;
  readonly wrongKept: number;
  readonly questions: number;
  readonly unsettled: number;
  readonly drops: number;
  /** True drops of 15 % that ended as anything but the true value. */
  readonly dropsMasked: number;
}

export interface SimulationOptions {
  readonly units: number;
  readonly roundsEach: number;
  readonly ears: EarsModel;
  readonly withHistory: boolean;
  readonly seed: number;
}

const TIRES = 4;
const DROP_CHANCE = 0.02;

/** Many units over many rounds: pressures that wander, leak, are filled up, and now and then drop by 15 %. */
export function simulate({ units, roundsEach, ears, withHistory, seed }: SimulationOptions): Tally {
  // The ears have a stream of their own for each reading, so that the same worlds are heard with and without history.
  const random = seeded(seed);
  const tally = { readings: 0, rounds: 0, wrongKept: 0, questions: 0, unsettled: 0, drops: 0, dropsMasked: 0 };
  for (let unit = 0; unit < units; unit += 1) {
    const target = 50 + 5 * Math.floor(random() * 5);
    const limits = [target, target * 0.9, target * 0.8];
    for (let tire = 0; tire < TIRES; tire += 1) {
      const leak = random() < 0.25 ? 0.3 + 0.7 * random() : 0;
      let level = target;
      const kept: number[] = [];
      for (let round = 0; round < roundsEach; round += 1) {
        level -= leak;
        if (level < target * 0.9 && random() < 0.5) level = target;
        const dropped = random() < DROP_CHANCE;
        const truth = Math.round(2 * ((dropped ? level * 0.85 : level) + 0.7 * gaussian(random))) / 2;
        const result = exchange(
          truth,
          withHistory ? expectationOf(kept) : null,
          limits,
          ears,
          seeded(seed * 1_000_003 + tally.readings),
        );
        tally.readings += 1;
        tally.questions += result.questions;
        if (result.value === null) tally.unsettled += 1;
        else if (result.value !== truth) tally.wrongKept += 1;
        if (dropped) {
          tally.drops += 1;
          // What the buttons settle is not masked; a wrong value kept is.
          if (result.value !== null && Math.abs(result.value - truth) > 1 && result.value > truth) tally.dropsMasked += 1;
        }
        // The read-back corrects most of what was misheard; the history holds what stayed.
        const isMissed = random() < 0.1;
        kept.push(result.value !== null && isMissed ? result.value : truth);
      }
    }
    tally.rounds += roundsEach;
  }
  return tally;
}
