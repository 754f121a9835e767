/**
 * When to believe what was heard. First the hearing by itself: how sure the recogniser is, whether its other hypotheses
 * say something else, how easily the value is taken for another and whether that would matter. Then this unit's own
 * past, which may only ever add a question: it never changes a value, never fills one in and never refuses one for good.
 */
import type { Expects, Position, ReadingExpects } from '../checks/expects.ts';
import { convert, UNITS } from '../quantity/units.ts';
import { confusionBetween, confusionsOf } from './confusions.ts';
import type { Decision, Expectation } from './decision.ts';
import type { Hearing } from './hearing.ts';
import type { Command, InterpretContext, Meaning, SpokenReading } from './meaning.ts';
import { confirmQuestion, distinguishQuestion, unclearQuestion, unsureQuestion } from './questions.ts';
import { givenConfidence, TRUST, type Trust } from './trust.ts';

export interface BelieveInput {
  readonly hearing: Hearing;
  /** One per hypothesis, best first. */
  readonly meanings: readonly Meaning[];
  readonly context: InterpretContext;
  /** What this unit's past says of the check asked; null where it says nothing. */
  readonly expectation: Expectation | null;
  /** Limits of the check asked, in its own unit. */
  readonly limitsAt: readonly number[];
  /** How often this was asked already. */
  readonly asked: number;
  /** What the hearing before this one was taken for, where nothing came of it but a question; left out: nothing. */
  readonly faintBefore?: Meaning | null;
  readonly style: 'full' | 'terse';
}

type Outcome = Decision['outcome'];

/** How much each outcome asks of the person. */
export const CARE: Readonly<Record<Outcome, number>> = { ignore: 0, accept: 0, confirm: 1, distinguish: 1, again: 2 };

/** A value farther from the past than this many spreads is asked about. */
const FAR = 4;
/** A past that never varied still has a gauge, a thermometer and a hand: no spread is taken below these. */
const LEAST_RELATIVE_SPREAD = 0.015;
const LEAST_STEPS = 1;
/** Words that fit so badly that the value is not kept without asking. */
const DOUBTFUL_WORDS = 0.76;
const HOPELESS_WORDS = 0.45;

interface Draft {
  readonly outcome: Outcome;
  readonly meaning: Meaning;
  readonly alternatives: readonly Meaning[];
  readonly why: 'heard' | 'unusual' | 'last';
  readonly because: readonly string[];
  readonly evidence: Record<string, number | string | boolean | null>;
}

/**
 * Decide what to do with a hearing.
 * @returns the meaning is always one of `meanings`, its values untouched
 * @throws RangeError without a meaning
 */
export function believe(input: BelieveInput): Decision {
  const [first] = input.meanings;
  if (!first) throw new RangeError('believe requires a meaning for each hypothesis');
  const trust = TRUST[input.hearing.provider];
  const heard = fromHearing(input, first, trust);
  const held = input.expectation === null ? heard : againstThePast(input, heard, input.expectation);
  return finished(input, held);
}

/** The hearing by itself. */
function fromHearing(input: BelieveInput, first: Meaning, trust: Trust): Draft {
  const confidence = givenConfidence(input.hearing, 0);
  const evidence = { provider: input.hearing.provider, confidence, words: first.certainty, asked: input.asked };
  const draft = (outcome: Outcome, because: readonly string[], more: Partial<Draft> = {}): Draft => ({
    outcome,
    meaning: first,
    alternatives: [],
    why: 'heard',
    because,
    evidence,
    ...more,
  });
  switch (first.intent) {
    case 'unclear':
      return fromUnclear(input, first, draft);
    case 'confirmation':
      return isTooFaint(confidence, trust)
        ? draft('again', ['It was too faint to tell a yes from a no.'])
        : draft('accept', [first.yes ? 'A plain yes.' : 'A plain no.']);
    case 'command':
      return isTooFaint(confidence, trust) || (isCostly(first.command) && confidence !== null && confidence < trust.accept)
        ? draft('again', ['It sounded like a command, too faintly to act on.'])
        : draft('accept', ['A command.']);
    case 'verdict':
    case 'date':
    case 'reading':
      return fromAnswer(input, first, trust, draft);
  }
}

const isTooFaint = (confidence: number | null, trust: Trust) => confidence !== null && confidence < trust.reject;

/** Commands that leave the check or take something back. */
const isCostly = (command: Command) => command === 'skip' || command === 'undo' || command === 'stop';

type Make = (outcome: Outcome, because: readonly string[], more?: Partial<Draft>) => Draft;

function fromUnclear(input: BelieveInput, first: Extract<Meaning, { intent: 'unclear' }>, draft: Make): Draft {
  const isTalk = first.why === 'chatter' || first.why === 'empty';
  const words = input.hearing.hypotheses[0]?.transcript.trim().split(/\s+/).length ?? 0;
  // A second hypothesis may hold the answer: short, and worth a question, never worth more.
  const rescued = input.meanings.slice(1, 3).find((meaning) => isAnswer(meaning) && meaning.certainty >= DOUBTFUL_WORDS);
  const trust = TRUST[input.hearing.provider];
  if (rescued && words <= 4 && trust.isHeard && !isTooFaint(givenConfidence(input.hearing, 0), trust))
    return draft('confirm', ['The best hypothesis makes no sense here, the next one does.'], { meaning: rescued });
  if (isTalk) return draft('ignore', [first.why === 'empty' ? 'Nothing was said.' : 'Talk that is not for the app.']);
  return draft('again', [WHY_UNCLEAR[first.why] ?? 'It could not be understood.']);
}

const WHY_UNCLEAR: Readonly<Record<string, string>> = {
  'no-value': 'There was no value in it.',
  'out-of-range': 'The number lies outside what is physically possible.',
  'wrong-unit': 'The unit measures something else.',
  alternatives: 'Two values were given as alternatives.',
  contradiction: 'Two statements contradict each other.',
  range: 'A range or a bound was given, not a value.',
  'repeated-position': 'One place was named twice with different values.',
  'unknown-position': 'The place is not on this unit.',
  'not-a-step': 'The value is finer than what is counted.',
  incomplete: 'A part of the answer is missing.',
  ambiguous: 'The words can mean several things.',
  'no-last': 'There is no value from last time.',
};

const isAnswer = (meaning: Meaning): boolean =>
  meaning.intent === 'reading' || meaning.intent === 'verdict' || meaning.intent === 'date';

function fromAnswer(input: BelieveInput, first: Meaning, trust: Trust, draft: Make): Draft {
  const { hearing, context } = input;
  const confidence = givenConfidence(hearing, 0);
  if (first.intent === 'verdict' && first.verdict === 'unsure') return draft('again', ['It was said with doubt.']);
  if (first.certainty < HOPELESS_WORDS) return draft('again', ['The words fit too badly.']);
  if (isTooFaint(confidence, trust)) {
    // Chance seldom says the same twice. Asked about, never kept for that alone.
    return input.faintBefore && saysTheSame(first, input.faintBefore)
      ? draft('confirm', ['It was faint, and the same was heard just before.'])
      : draft('again', ['The recogniser is hardly sure of it.']);
  }
  if (first.fromLast)
    return draft('confirm', ['The value was asked to be taken from last time: it is said out loud first.'], { why: 'last' });
  const because: string[] = [];
  const rival = trust.isHeard ? rivalOf(input, first, trust) : null;
  if (rival) {
    const twin = twinOf(first, rival.meaning);
    if (twin !== null)
      return draft('distinguish', [`The next hypothesis says something that sounds alike (${twin}).`], {
        alternatives: [rival.meaning],
      });
    if (rival.isClose)
      return draft('confirm', ['The next hypothesis is nearly as likely and says something else.'], {
        alternatives: [rival.meaning],
      });
    because.push('Another hypothesis says something else, and is less likely.');
  }
  if (first.certainty < DOUBTFUL_WORDS) return draft('confirm', [...because, 'The words had to be guessed at in part.']);
  if (!trust.isHeard) return draft('accept', [...because, 'The text is exact.']);
  if (confidence !== null && confidence < trust.accept) return draft('confirm', [...because, 'The recogniser is not very sure.']);
  const isSure = confidence !== null && confidence >= trust.sure;
  // A value given in answer to a question was said with care; asking once more would go round in circles.
  const wasAsked = context.mode === 'confirm';
  if (first.intent === 'reading' && !isSure && !wasAsked) {
    const doubt = doubtAboutValues(input, first.readings, confidence);
    if (doubt)
      return draft(
        doubt.alternative ? 'distinguish' : 'confirm',
        [...because, doubt.because],
        doubt.alternative ? { alternatives: [withValue(first, doubt.alternative)] } : {},
      );
  }
  if (first.intent === 'verdict' && confidence === null && rival && !wasAsked)
    return draft('confirm', [...because, 'No confidence was given and the hypotheses differ.']);
  return draft('accept', [
    ...because,
    confidence === null
      ? 'The words are clear; no confidence was given.'
      : isSure
        ? 'The recogniser is sure.'
        : 'The recogniser is sure enough.',
  ]);
}

interface Rival {
  readonly meaning: Meaning;
  readonly isClose: boolean;
}

/** The best-placed other hypothesis that answers something else. */
function rivalOf({ hearing, meanings }: BelieveInput, first: Meaning, trust: Trust): Rival | null {
  for (let index = 1; index < Math.min(meanings.length, 5); index += 1) {
    const meaning = meanings[index];
    if (!meaning || !isAnswer(meaning) || saysTheSame(first, meaning)) continue;
    const best = givenConfidence(hearing, 0);
    const own = givenConfidence(hearing, index);
    const isClose =
      best !== null && own !== null
        ? best - own < trust.margin
        : index === 1 && meaning.certainty >= first.certainty - 0.1 && best === null;
    // Far behind and by its own account unlikely: only a twin matters, and only at the second place.
    if (!isClose && (index > 2 || twinOf(first, meaning) === null || (best !== null && best >= trust.sure))) continue;
    return { meaning, isClose };
  }
  return null;
}

/** Whether two meanings would be kept as the same answer. */
export function saysTheSame(a: Meaning, b: Meaning): boolean {
  if (a.about !== b.about) return false;
  const [more, others] = [a.also ?? [], b.also ?? []];
  if (more.length !== others.length || !more.every((one, index) => saysTheSame(one, others[index] ?? one))) return false;
  if (a.intent === 'reading' && b.intent === 'reading') {
    if (a.readings.length !== b.readings.length) return false;
    return a.readings.every((reading, index) => {
      const other = b.readings[index];
      return other !== undefined && reading.position === other.position && sameValue(reading, other);
    });
  }
  if (a.intent === 'verdict' && b.intent === 'verdict')
    return a.verdict === b.verdict && a.option === b.option && samePlaces(a.positions, b.positions);
  if (a.intent === 'date' && b.intent === 'date') return a.value === b.value;
  return a.intent === b.intent && a.intent !== 'reading' && a.intent !== 'verdict' && a.intent !== 'date';
}

const samePlaces = (a: readonly Position[], b: readonly Position[]) => a.length === b.length && a.every((one) => b.includes(one));

function sameValue(a: SpokenReading, b: SpokenReading): boolean {
  if (a.unit === b.unit) return Math.abs(a.value - b.value) < 1e-9;
  if (UNITS[a.unit].dimension !== UNITS[b.unit].dimension) return false;
  return Math.abs(convert(a.value, a.unit, b.unit) - b.value) < 1e-6 * Math.max(1, Math.abs(b.value));
}

/** How two single values sound alike, or null. */
function twinOf(a: Meaning, b: Meaning): string | null {
  if (a.intent !== 'reading' || b.intent !== 'reading') return null;
  const [one, other] = [a.readings[0], b.readings[0]];
  if (!one || !other || a.readings.length !== 1 || b.readings.length !== 1 || one.unit !== other.unit) return null;
  return confusionBetween(one.value, other.value);
}

/** The same meaning with one other value, offered as the other choice of a question. It is never kept unasked. */
function withValue(meaning: Meaning, value: number): Meaning {
  if (meaning.intent !== 'reading') return meaning;
  return { ...meaning, readings: meaning.readings.map((reading) => ({ ...reading, value })) };
}

interface Doubt {
  readonly because: string;
  /** The value that it may have been, where there is just one. */
  readonly alternative: number | null;
}

/** A value that sounds like another one that would be judged otherwise. */
function doubtAboutValues(
  { context, limitsAt }: BelieveInput,
  readings: readonly SpokenReading[],
  confidence: number | null,
): Doubt | null {
  const { expects } = context;
  if (expects.kind !== 'reading') return null;
  for (const reading of readings) {
    const own = inUnitOf(reading, expects);
    if (own === null) continue;
    const isUsual = own >= expects.usual.min && own <= expects.usual.max;
    for (const { value: other, kind } of confusionsOf(reading.value)) {
      const otherOwn = inUnitOf({ ...reading, value: other }, expects);
      if (otherOwn === null || otherOwn < expects.min || otherOwn > expects.max) continue;
      const otherIsUsual = otherOwn >= expects.usual.min && otherOwn <= expects.usual.max;
      const crosses = limitsAt.some((limit) => own < limit !== otherOwn < limit);
      const single = readings.length === 1 ? other : null;
      if (kind === 'teen-ty' && (crosses || (!isUsual && otherIsUsual)))
        return { because: 'A teen and a ty sound alike here and would be judged differently.', alternative: single };
      if (kind === 'lost-sign' || kind === 'lost-half' || kind === 'lost-hundred') continue;
      if (crosses && !isUsual && otherIsUsual && confidence !== null)
        return { because: 'It is unusual, and sounds like a usual value on the other side of a limit.', alternative: single };
    }
    if (confidence !== null && limitsAt.some((limit) => Math.abs(own - limit) < expects.step * 0.51 && own !== limit))
      return { because: 'It lies within a step of a limit, and the recogniser is not quite sure.', alternative: null };
  }
  return null;
}

/** A reading in the check's own unit; null where it measures something else. */
function inUnitOf({ value, unit }: Pick<SpokenReading, 'value' | 'unit'>, expects: ReadingExpects): number | null {
  return UNITS[unit].dimension === UNITS[expects.unit].dimension ? convert(value, unit, expects.unit) : null;
}

/** The reading that the past speaks about: the one asked for. */
function askedReading(meaning: Meaning, context: InterpretContext): SpokenReading | null {
  if (meaning.intent !== 'reading' || meaning.about !== null || meaning.corrects !== null) return null;
  return meaning.readings.find(({ position }) => position === null || position === context.position) ?? null;
}

const numberOf = (reading: SpokenReading, expects: Expects): number | null =>
  expects.kind === 'reading' ? inUnitOf(reading, expects) : expects.kind === 'count' ? reading.value : null;

/**
 * What was heard, held against this unit's past. Only ever adds a question; an answer to a question is kept as it is, or
 * a real change could never be kept.
 */
function againstThePast(input: BelieveInput, heard: Draft, { median, spread, count }: Expectation): Draft {
  const { context } = input;
  const reading = askedReading(heard.meaning, context);
  const own = reading === null ? null : numberOf(reading, context.expects);
  if (reading === null || own === null || !Number.isFinite(median) || !Number.isFinite(spread)) return heard;
  const step = context.expects.kind === 'reading' ? context.expects.step : 1;
  const scale = Math.max(spread, LEAST_STEPS * step, LEAST_RELATIVE_SPREAD * Math.abs(median));
  const distance = Math.abs(own - median) / scale;
  const evidence = { ...heard.evidence, median, spread: scale, distance, pastReadings: count };
  if (heard.outcome !== 'accept' && heard.outcome !== 'confirm') return { ...heard, evidence };
  if (distance <= FAR) return { ...heard, evidence, because: [...heard.because, 'It is within what this unit usually reads.'] };
  if (context.mode === 'confirm' && heard.outcome === 'accept')
    return {
      ...heard,
      evidence,
      because: [...heard.because, 'It is far from what this unit usually reads, and was said again when asked.'],
    };
  const because = [...heard.because, 'It is far from what this unit usually reads.'];
  const isSingle = heard.meaning.intent === 'reading' && heard.meaning.readings.length === 1;
  const twin =
    TRUST[input.hearing.provider].isHeard && isSingle && !heard.meaning.fromLast ? nearTwin(reading, input, median, scale) : null;
  if (twin !== null)
    return {
      ...heard,
      outcome: 'distinguish',
      alternatives: [withValue(heard.meaning, twin)],
      because: [...because, 'A value that sounds like it would be usual: which of the two was said?'],
      evidence,
    };
  return { ...heard, outcome: 'confirm', why: heard.why === 'last' ? 'last' : 'unusual', because, evidence };
}

/** A value that sounds like the one heard and would be usual here. */
function nearTwin(reading: SpokenReading, { context }: BelieveInput, median: number, scale: number): number | null {
  for (const { value } of confusionsOf(reading.value)) {
    const own = numberOf({ ...reading, value }, context.expects);
    const { expects } = context;
    if (own === null || (expects.kind === 'reading' || expects.kind === 'count' ? own < expects.min || own > expects.max : true))
      continue;
    if (Math.abs(own - median) / scale <= FAR) return value;
  }
  return null;
}

function finished(input: BelieveInput, draft: Draft): Decision {
  const { outcome, meaning, alternatives, because, evidence } = draft;
  return {
    outcome,
    meaning,
    ...(alternatives.length > 0 ? { alternatives } : {}),
    question: questionFor(input, draft),
    because,
    evidence: { ...evidence, outcome },
  };
}

function questionFor({ context, asked, style }: BelieveInput, { outcome, meaning, alternatives, why }: Draft): string | null {
  const { expects } = context;
  const about =
    meaning.about === null
      ? expects
      : (context.others.find(({ key }) => key === meaning.about)?.expects ??
        (context.previous?.key === meaning.about ? context.previous.expects : expects));
  switch (outcome) {
    case 'accept':
    case 'ignore':
      return null;
    case 'confirm':
      return confirmQuestion(meaning, about, asked, why);
    case 'distinguish':
      return distinguishQuestion([meaning, ...alternatives], about, asked);
    case 'again':
      if (meaning.intent === 'verdict' && meaning.verdict === 'unsure') return unsureQuestion(about, asked);
      return unclearQuestion(meaning.intent === 'unclear' ? meaning.why : 'chatter', about, asked, style);
  }
}
