/**
 * From a hearing to what happens: every hypothesis is interpreted, the believing policy decides, and what is believed
 * becomes entries with their judgement and their read-back. Pure; the exchange machine carries the result out.
 */
import type { Position } from '../checks/expects.ts';
import { coldHandsSentence } from '../cold/coldHands.ts';
import { windBySight } from '../cold/windBySight.ts';
import type { Past } from '../history/past.ts';
import type { Judgement } from '../judge/judgement.ts';
import { believe } from '../language/believe.ts';
import type { Decision } from '../language/decision.ts';
import type { Hearing } from '../language/hearing.ts';
import { interpret } from '../language/interpret.ts';
import type { InterpretContext, Meaning, NamedCheck } from '../language/meaning.ts';
import { readBack, toAnswers } from '../language/readBack.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { fromSI } from '../quantity/units.ts';
import type { Answer, EntryDraft, How } from './entry.ts';
import { NO_HEARING } from './how.ts';
import { type Display, judgeAnswer, judgeContextOf } from './judging.ts';
import { asksForPicture } from './picture.ts';
import type { CheckState, RoundState } from './replay.ts';
import type { Keeping, Offer, Step } from './step.ts';
import { styleAsked } from './styleAsked.ts';
import type { Heard } from './topic.ts';

const WIND_CHECK = 'wind';

export interface Matter {
  readonly state: RoundState;
  readonly past: Past;
  readonly style: 'full' | 'terse';
  readonly display: Display;
  /** Epoch milliseconds. */
  readonly now: number;
}

/** The interpreter's view of where the round stands. */
export function interpretContextOf(matter: Matter, current: CheckState, mode: InterpretContext['mode']): InterpretContext {
  const { state, past } = matter;
  const siblings = state.checks.filter((entry) => entry.check.check === current.check.check);
  const positions = siblings.flatMap((entry) => (entry.check.position === null ? [] : [entry.check.position]));
  const previous = state.lastKey === null || state.lastKey === current.check.key ? undefined : state.byKey.get(state.lastKey);
  const last = past.get(current.check.key)?.last ?? null;
  return {
    expects: current.check.expects,
    names: current.check.names,
    position: current.check.position,
    positions,
    others: namedOthers(state, current),
    last: last === null ? null : { value: last.value, unit: last.unit },
    previous: previous ? named(previous.check) : null,
    previousValue: keptValue(previous),
    mode,
  };
}

/**
 * With two people the reader may give any open check by its name; alone, those of the same station. What has its answer may be
 * changed by its name from anywhere.
 */
export function namedOthers(state: RoundState, current: CheckState): readonly NamedCheck[] {
  return state.checks
    .filter((entry) => entry !== current && entry.check.check !== current.check.check)
    .flatMap((entry) => {
      if (entry.status === 'answered') return [{ ...named(entry.check), settled: true }];
      const isNear = state.people === 2 || entry.check.station === current.check.station;
      return entry.status === 'open' && isNear ? [named(entry.check)] : [];
    });
}

/** What was kept just before, in the unit it was said in; null for what is no reading. */
function keptValue(entry: CheckState | undefined): NonNullable<InterpretContext['previousValue']> | null {
  const answer = entry?.entry?.kind === 'answered' ? entry.entry.answer : null;
  if (answer?.kind === 'count') return { value: answer.count, unit: 'count' };
  return answer?.kind === 'reading' ? answer.said : null;
}

const named = ({ key, names, position, expects }: PlannedCheck): NamedCheck => ({ key, names, position, expects });

/** What a hearing leads to, when `current` is asked. */
export function considerHearing(matter: Matter, current: CheckState, { hearing, asked, confirming, faint }: Heard): Step {
  const best = hearing.hypotheses[0]?.transcript ?? '';
  if (asksForPicture(best)) return { kind: 'picture' };
  const wanted = styleAsked(best);
  if (wanted !== null) return { kind: 'style', style: wanted };
  const context = interpretContextOf(matter, current, confirming ? 'confirm' : 'answer');
  const meanings = hearing.hypotheses.map((hypothesis) => interpret(hypothesis.transcript, context));
  const decision = believe({
    hearing,
    meanings,
    context,
    expectation:
      matter.past.get(current.check.key)?.expectation(judgeContextOf(matter.state, matter.now, matter.display).outsideK) ?? null,
    limitsAt: limitsAt(current.check),
    asked,
    faintBefore: faint?.hypotheses[0] ? interpret(faint.hypotheses[0].transcript, context) : null,
    style: matter.style,
  });
  switch (decision.outcome) {
    case 'ignore':
      return { kind: 'ignore' };
    case 'again':
      return { kind: 'again', question: decision.question ?? current.check.lines.hint };
    case 'accept':
      return accepted(matter, current, decision, hearing);
    case 'confirm':
    case 'distinguish':
      return asConfirmation(matter, current, decision, hearing);
  }
}

/** A press is certain; it needs only judgement. */
export function considerPress(matter: Matter, current: CheckState, answer: Answer, via: 'button' | 'key'): Step {
  return { kind: 'keep', ...keepingOf(matter, [{ target: current, answer }], { ...NO_HEARING, via, by: 'first' }) };
}

function accepted(matter: Matter, current: CheckState, decision: Decision, hearing: Hearing): Step {
  const { meaning } = decision;
  if (meaning.intent === 'command') return { kind: 'command', command: meaning.command, text: meaning.text };
  if (meaning.intent === 'confirmation') return { kind: 'yes-no', yes: meaning.yes };
  const answers = answersOf(matter.state, current, meaning);
  if (answers.length === 0) return { kind: 'again', question: decision.question ?? current.check.lines.hint };
  const keeping = keepingOf(matter, answers, howHeard(matter, hearing, decision));
  return { kind: 'keep', ...keeping, drafts: [...takenBack(matter.state, meaning, answers), ...keeping.drafts] };
}

/** "No, the right one": what was kept for the wrong place is taken back there. */
function takenBack(state: RoundState, meaning: Meaning, answers: readonly Targeted[]): readonly EntryDraft[] {
  if (meaning.movedFrom === undefined || state.lastKey === null) return [];
  const entry = state.byKey.get(state.lastKey)?.entry;
  if (!entry || answers.some(({ target }) => target.check.key === entry.key)) return [];
  return [{ kind: 'undone', key: entry.key, supersedes: entry.id }];
}

function asConfirmation(matter: Matter, current: CheckState, decision: Decision, hearing: Hearing): Step {
  const question = decision.question ?? current.check.lines.hint;
  const how = howHeard(matter, hearing, decision);
  const offer = (meaning: Meaning): Offer[] => {
    const answers = answersOf(matter.state, current, meaning);
    const first = answers[0];
    if (!first) return [];
    const label = answers
      .map(({ target, answer }) => readBack(target.check, answer, { style: 'terse', display: matter.display }))
      .join('; ');
    return [
      {
        label,
        answer: first.target === current && answers.length === 1 ? first.answer : null,
        ...keepingOf(matter, answers, how),
      },
    ];
  };
  const offers = [decision.meaning, ...(decision.alternatives ?? [])].flatMap(offer);
  return offers.length === 0 ? { kind: 'again', question } : { kind: 'confirm', question, offers };
}

interface Targeted {
  readonly target: CheckState;
  readonly answer: Answer;
}

/** Which checks the meaning answers, each with its answer. Positions that this unit has not were refused by the interpreter. */
function answersOf(state: RoundState, current: CheckState, meaning: Meaning): readonly Targeted[] {
  return [meaning, ...(meaning.also ?? [])].flatMap((one) => answersOfOne(state, current, one));
}

function answersOfOne(state: RoundState, current: CheckState, meaning: Meaning): readonly Targeted[] {
  const base =
    (meaning.about === null ? undefined : state.byKey.get(meaning.about)) ??
    (meaning.corrects === 'previous' && state.lastKey !== null ? state.byKey.get(state.lastKey) : undefined) ??
    current;
  return toAnswers(meaning, base.check).flatMap(({ position, answer }) => {
    const target = position === null || position === base.check.position ? base : siblingAt(state, base.check, position);
    return target ? [{ target, answer }] : [];
  });
}

function siblingAt(state: RoundState, check: PlannedCheck, position: Position): CheckState | undefined {
  return state.checks.find((entry) => entry.check.check === check.check && entry.check.position === position);
}

function keepingOf(matter: Matter, answers: readonly Targeted[], how: How): Keeping {
  const drafts: EntryDraft[] = [];
  const lines: string[] = [];
  for (const { target, answer } of answers) {
    const judgement = judgeAnswer(matter.state, target.check, answer, matter.now, matter.display);
    drafts.push({
      kind: 'answered',
      key: target.check.key,
      answer,
      outcome: judgement.outcome,
      how,
      supersedes: target.entry?.id ?? null,
    });
    lines.push(...readBackLines(matter, target, answer, judgement));
  }
  return { drafts, readBack: lines };
}

/** The value said back, and what it comes to when it is not simply good or leaves something to do. */
function readBackLines(matter: Matter, target: CheckState, answer: Answer, judgement: Judgement): string[] {
  const value = sentence(readBack(target.check, answer, { style: matter.style, display: matter.display }));
  const isPlain = judgement.outcome === 'ok' && judgement.todo === null;
  const more = isPlain ? [] : [judgement.say, judgement.todo ?? ''];
  return [value, ...more, judgement.question ?? '', coldHandsLine(matter, target, answer)].filter((line) => line.trim() !== '');
}

/** Spoken once, at the start: when the wind is known, how long bare skin has. */
function coldHandsLine(matter: Matter, target: CheckState, answer: Answer): string {
  if (target.check.check !== WIND_CHECK || answer.kind !== 'choice') return '';
  const { outsideK } = judgeContextOf(matter.state, matter.now, matter.display);
  return coldHandsSentence({ temperatureK: outsideK, windMps: windBySight(answer.option), display: matter.display }) ?? '';
}

/** First letter large, full stop at the end: read on screen and spoken as one sentence. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '') return '';
  const capital = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

function howHeard(matter: Matter, hearing: Hearing, decision: Decision): How {
  const best = hearing.hypotheses[0];
  return {
    via: 'voice',
    provider: hearing.provider,
    by: matter.state.people === 2 ? 'second' : 'first',
    transcript: best?.transcript ?? null,
    alternatives: hearing.hypotheses.slice(1),
    confidence: best?.confidence ?? null,
    because: decision.because,
    clip: hearing.clip,
  };
}

/** Limits in the check's own unit, for the policy: a value near one is worth a second thought. */
function limitsAt(check: PlannedCheck): readonly number[] {
  const { expects } = check;
  if (expects.kind !== 'reading') return [];
  return check.judge.limits.map((limit) => fromSI(limit.si, expects.unit));
}
