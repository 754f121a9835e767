/** Plays clips to the app's ears under given conditions, and says what came of each. */
import { believe } from '../../src/domain/language/believe.ts';
import { interpret } from '../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../src/domain/language/meaning.ts';
import { type Automaton, accepts, compileGrammar } from '../../src/speech/recogniser/automaton.ts';
import type { Evidence } from '../../src/speech/recogniser/evidence.ts';
import { requestRule } from '../../src/speech/recogniser/requestGrammar.ts';
import type { Decoded, UtteranceDecoder } from '../../src/speech/recogniser/utteranceDecoder.ts';
import { type Clip, loadClips, readClip } from '../tools/makeClips.ts';
import { hearSound, openEars } from '../tools/nodeEars.ts';
import { type Mixed, makeNoise, mix, type NoiseKind } from './noise.ts';
import { hash, pick, seeded } from './random.ts';
import { CHECKS, requestOf } from './sentences.ts';

export interface Condition {
  readonly name: string;
  readonly noise: NoiseKind | null;
  /** Over the whole band. */
  readonly snrDb: number;
}

export const CONDITIONS: readonly Condition[] = [
  { name: 'clean', noise: null, snrDb: 50 },
  { name: 'wind 20 dB', noise: 'wind', snrDb: 20 },
  { name: 'wind 10 dB', noise: 'wind', snrDb: 10 },
  { name: 'wind 5 dB', noise: 'wind', snrDb: 5 },
  { name: 'gusts 10 dB', noise: 'gusts', snrDb: 10 },
  { name: 'gusts 5 dB', noise: 'gusts', snrDb: 5 },
  { name: 'engine 10 dB', noise: 'engine', snrDb: 10 },
  { name: 'babble 10 dB', noise: 'babble', snrDb: 10 },
];

/** Seconds of the noise alone before and after: the ears need to know it. */
const PAD_S = 0.8;

/** The same clip under the same condition is the same sound every time. */
export function soundOf(clip: Clip, { name, noise, snrDb }: Condition, talk: readonly Float32Array[]): Mixed {
  const speech = readClip(clip);
  const random = seeded(hash(`${clip.set} ${clip.words.join(' ')} ${clip.voice} ${name}`));
  const length = speech.length + 2 * PAD_S * 16_000;
  // "Clean" is a quiet room, not digital silence.
  const made = noise ? makeNoise(noise, length, random, talk) : Float32Array.from({ length }, () => random() - 0.5);
  return mix(speech, made, snrDb, PAD_S);
}

/** Words as they count: "and" is not heard apart, "oh" is a nought. */
export const counted = (words: readonly string[]) =>
  words
    .filter((word) => word !== 'and')
    .join(' ')
    .replace(/\boh\b/g, 'zero');

function contextOf(check: string): InterpretContext {
  const { names, request } = requestOf(check);
  return {
    expects: request.expects,
    names,
    position: request.position,
    positions: request.positions,
    others: [],
    last: null,
    previous: null,
    mode: 'answer',
  };
}

/** Whether the app takes it without a question, as it would where nothing of the unit's past is known. */
function isTaken(check: string, hypotheses: Decoded['hypotheses']): boolean {
  if (hypotheses.length === 0) return false;
  const context = contextOf(check);
  const heard = hypotheses.map(({ words, confidence }) => ({ transcript: words.join(' '), confidence }));
  const meanings = heard.map(({ transcript }) => interpret(transcript, context));
  const hearing = { hypotheses: heard, provider: 'built-in', clip: null } as const;
  const { outcome } = believe({ hearing, meanings, context, expectation: null, limitsAt: [], asked: 0, style: 'full' });
  return outcome === 'accept';
}

/** What words mean for a check, as a text to compare. */
export function meaningOf(check: string, words: readonly string[]): string {
  const meaning = interpret(words.join(' '), contextOf(check));
  switch (meaning.intent) {
    case 'reading':
      return `reading ${meaning.readings.map(({ position, value, unit }) => `${position ?? ''} ${value} ${unit}`).join(';')}`;
    case 'verdict':
      return `verdict ${meaning.verdict} ${meaning.option ?? ''} ${meaning.positions.join()}`;
    case 'date':
      return `date ${meaning.value}`;
    case 'command':
      return `command ${meaning.command}`;
    case 'confirmation':
      return `confirmation ${meaning.yes}`;
    case 'unclear':
      return 'unclear';
  }
}

export interface Outcome {
  readonly clip: Clip;
  readonly condition: string;
  readonly isAnswer: boolean;
  /** Whole utterance, word for word. */
  readonly exact: boolean;
  /** The meaning is the one that was spoken. */
  readonly right: boolean;
  readonly amongThree: boolean;
  readonly heard: readonly string[];
  readonly confidence: number;
  /** The hypotheses behind the best. */
  readonly others: readonly (readonly string[])[];
  readonly otherConfidences: readonly number[];
  readonly evidence: Evidence | null;
  readonly meaning: string;
  /** The app's policy takes it without a question. */
  readonly taken: boolean;
  readonly bandSnrDb: number;
  readonly seconds: number;
  readonly cpuMs: number;
  readonly waitMs: number;
}

export interface HearOptions {
  readonly set: Clip['set'];
  /** Every n-th clip. */
  readonly every: number;
  readonly conditions: readonly Condition[];
  /** Left out: the full set. */
  readonly size?: 'full' | 'reduced';
  /** Also answers to other checks, which the grammar does not allow; left out: no. */
  readonly strays?: boolean;
  /** Also noise alone; left out: yes. */
  readonly noiseAlone?: boolean;
  /** Answers too; left out: yes. Else only what must not be accepted. */
  readonly answers?: boolean;
}

export async function hearConditions({
  set,
  every,
  conditions,
  size = 'full',
  strays = false,
  noiseAlone = true,
  answers = true,
}: HearOptions): Promise<Outcome[]> {
  const ears = await openEars();
  const decoders = new Map<string, UtteranceDecoder>();
  const decoderFor = (check: string) => {
    const known = decoders.get(check) ?? ears.networks.compile(requestRule(requestOf(check).request));
    decoders.set(check, known);
    return known;
  };
  const automata = new Map<string, Automaton>();
  const automatonFor = (check: string) => {
    const known = automata.get(check) ?? compileGrammar(requestRule(requestOf(check).request));
    automata.set(check, known);
    return known;
  };
  const all = loadClips(size).filter((clip) => clip.set === set);
  const talk = all.filter((clip) => clip.check === null).map(readClip);
  const clips = all.filter(({ check }) => answers || check === null).filter((_, index) => index % every === 0);
  const outcomes: Outcome[] = [];
  const hear = (clip: Clip, check: string, condition: string, { samples, bandSnrDb }: Mixed) => {
    const { utterances, seconds, cpuMs } = hearSound(ears, decoderFor(check), { rate: 16_000, samples });
    // Of several utterances the surest counts: the app would have gone on with it.
    const best = [...utterances].sort(
      (a, b) => (b.decoded?.hypotheses[0]?.confidence ?? 0) - (a.decoded?.hypotheses[0]?.confidence ?? 0),
    )[0];
    const hypotheses = best?.decoded?.hypotheses ?? [];
    const words = hypotheses[0]?.words ?? [];
    const wanted = counted(clip.words);
    const meaning = words.length > 0 ? meaningOf(check, words) : 'nothing';
    const isAnswer = clip.check !== null;
    outcomes.push({
      clip,
      condition,
      isAnswer,
      exact: isAnswer && counted(words) === wanted,
      right: isAnswer && (counted(words) === wanted || meaning === meaningOf(check, clip.words)),
      amongThree: isAnswer && hypotheses.slice(0, 3).some((one) => counted(one.words) === wanted),
      heard: words,
      confidence: hypotheses[0]?.confidence ?? 0,
      others: hypotheses.slice(1).map((one) => one.words),
      otherConfidences: hypotheses.slice(1).map((one) => one.confidence),
      evidence: best?.decoded?.evidence ?? null,
      meaning,
      taken: best?.type === 'heard' && isTaken(check, hypotheses),
      bandSnrDb,
      seconds,
      cpuMs,
      waitMs: Math.max(0, ...utterances.map(({ timing }) => timing.waitMs)),
    });
  };
  for (const condition of conditions) {
    for (const clip of clips) {
      const random = seeded(hash(`${clip.file} ${condition.name}`));
      const sound = soundOf(clip, condition, talk);
      hear(clip, clip.check ?? pick(random, CHECKS), condition.name, sound);
      if (!strays || clip.check === null) continue;
      const other = pick(random, CHECKS);
      if (!accepts(automatonFor(other), clip.words)) hear({ ...clip, check: null }, other, condition.name, sound);
    }
  }
  // Noise alone, loud: nothing may come of it.
  for (const noise of noiseAlone ? (['wind', 'gusts', 'engine'] as const) : []) {
    for (let index = 0; index < Math.ceil(24 / every); index += 1) {
      const random = seeded(hash(`${set} ${noise} alone ${index}`));
      const made = makeNoise(noise, 4 * 16_000, random, talk);
      const peak = made.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
      const clip: Clip = { file: '', set, voice: 'none', check: null, words: [`${noise} alone`] };
      hear(clip, pick(random, CHECKS), `${noise} alone`, {
        samples: made.map((sample) => (0.6 * sample) / peak),
        bandSnrDb: -99,
      });
    }
  }
  return outcomes;
}
