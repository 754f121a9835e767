/**
 * What the round says and asks, at each point. Written for the ear: one challenge at a time, short, and always with a way
 * on. Pure functions from the round's state to an exchange's topic.
 */
import type { Expects } from '../checks/expects.ts';
import { interpret } from '../language/interpret.ts';
import { askAgainLine, commandHelp } from '../language/questions.ts';
import { readBack } from '../language/readBack.ts';
import type { ListenRequest } from '../voice/ports.ts';
import type { SpeakingStyle } from '../voice/settings.ts';
import { CARRY_ON, DONE, READY } from './calls.ts';
import { considerHearing, considerPress, type Matter, namedOthers, sentence } from './consider.ts';
import type { EntryDraft } from './entry.ts';
import { NO_HEARING } from './how.ts';
import { verdictOf } from './judging.ts';
import type { NextStep } from './next.ts';
import { asksForPicture, pictureDraft } from './picture.ts';
import type { AnsweredEntry, CheckState, RoundState, SkippedEntry } from './replay.ts';
import { SKIP_REASONS } from './skipReasons.ts';
import type { Keeping, Step } from './step.ts';
import { styleAsked } from './styleAsked.ts';
import type { ExchangeTopic, Via } from './topic.ts';

/** How much is said: all of it for someone new, little for a practised user. */
export type Style = SpeakingStyle;

/** Answered this often in earlier rounds, a check is asked in few words. */
const PRACTISED_AFTER = 3;

function styleFor(speaking: Speaking, key: string): 'full' | 'terse' {
  if (speaking.style !== 'adaptive') return speaking.style;
  return (speaking.past.get(key)?.times ?? 0) >= PRACTISED_AFTER ? 'terse' : 'full';
}

/** Where no check is asked: practised when half of the plan was answered often enough. */
function callStyle(speaking: Speaking): 'full' | 'terse' {
  const { checks } = speaking.state.round.plan;
  const practised = checks.filter((check) => styleFor(speaking, check.key) === 'terse').length;
  return practised * 2 >= checks.length ? 'terse' : 'full';
}

/** The part of the round machine's context that the lines are made from. */
export interface Speaking {
  readonly state: RoundState;
  readonly past: Matter['past'];
  readonly style: Style;
  readonly display: Matter['display'];
  readonly now: () => number;
  readonly key: string | null;
  readonly station: string | null;
  readonly prefix: readonly string[];
  readonly next: NextStep | null;
  readonly trouble: string | null;
}

const ROUND_NAMES = {
  'before-towing': 'Before towing',
  'before-leaving-the-lake': 'Before leaving the lake',
  'stop-on-the-road': 'Stop on the road',
} as const;

/** Words for a round's kind, for the screen and the ear. */
export function roundName(kind: keyof typeof ROUND_NAMES): string {
  return ROUND_NAMES[kind];
}

const CALL_PATIENCE_MS = 20_000;

/** Before the first check: which unit, how many checks, what is not known, and how to talk to the tool. */
export function briefingTopic(speaking: Speaking): ExchangeTopic {
  const { state } = speaking;
  const style = callStyle(speaking);
  const { plan } = state.round;
  const opening = [
    `${roundName(plan.round)}. ${plan.unit.name}. ${count(plan.checks.length, 'check')} at ${count(plan.stations.length, 'stop')}.`,
    ...(plan.demo ? ['This is demo data.'] : []),
    ...(plan.due ?? []),
    ...plan.unknowns.slice(0, style === 'full' ? 3 : 1),
    ...(plan.unknowns.length > 3 && style === 'full'
      ? [`And ${plan.unknowns.length - 3} more figures are not known; they are on the screen.`]
      : []),
    ...(style === 'full' ? ['Answer with what you see. Say "hold on" to pause, "skip it" with a reason, or "why".'] : []),
    'Say "start" when you are ready.',
  ];
  return callTopic(speaking, opening, READY, ['Say "start", or press the big button.']);
}

/** One check: read-back of the last one, close of the station, the new station, what is drifting, caution, question. */
export function checkTopic(speaking: Speaking, key: string): ExchangeTopic {
  const { state } = speaking;
  const style = styleFor(speaking, key);
  const current = state.byKey.get(key);
  if (!current) throw new Error(`checkTopic requires a check of the plan, not ${key}`);
  const { check } = current;
  const matter = matterOf(speaking, style);
  const trend = speaking.past.get(key)?.trend ?? null;
  const opening = [
    ...speaking.prefix,
    ...stationLines(speaking, current),
    ...(trend === null ? [] : [trend]),
    ...(check.lines.caution === null ? [] : [check.lines.caution]),
    ...revisitLines(speaking, current),
    style === 'terse' ? sentence(check.lines.askTerse) : sentence(check.lines.ask),
  ];
  const request = checkRequest(state, current);
  const how = (via: Via) => ({
    ...NO_HEARING,
    via,
    by: state.people === 2 && via === 'voice' ? ('second' as const) : ('first' as const),
  });
  return {
    opening,
    request,
    reasonRequest: { ...request, expects: SKIP_REASONS, positions: [], others: [], mode: 'answer' },
    patienceMs: Math.max(6, check.patienceS) * 1000,
    reminders: [sentence(check.lines.hint), 'Take your time. The buttons work too.'],
    consider: (heard) => considerHearing({ ...matter, now: speaking.now() }, current, heard),
    press: (answer, via) => considerPress({ ...matter, now: speaking.now() }, current, answer, via),
    speakFor: (command) => {
      if (command === 'why') return [check.lines.why];
      if (command === 'help') return [sentence(check.lines.hint), commandHelp(style)];
      if (command === 'where') return whereLines(state, key);
      return null;
    },
    askAgain: (asked) => askAgainLine(check, asked),
    skip: (reason, hearing, via): Keeping => ({
      drafts: [
        {
          kind: 'skipped',
          key,
          reason,
          how: hearing
            ? {
                ...how(via),
                provider: hearing.provider,
                transcript: hearing.hypotheses[0]?.transcript ?? null,
                clip: hearing.clip,
              }
            : how(via),
          supersedes: current.entry?.id ?? null,
        },
      ],
      readBack: [`Skipped: ${reason}. ${check.judge.worst === 'hold' ? 'The unit is not cleared without it.' : ''}`.trim()],
    }),
    note: (text, finding, hearing, via): Keeping => ({
      drafts: [
        noteDraft(
          key,
          text,
          finding,
          hearing?.clip ?? null,
          hearing ? { ...how(via), provider: hearing.provider, clip: hearing.clip } : how(via),
        ),
      ],
      readBack: [text === null ? 'Note kept as sound.' : `Noted: ${text}.`],
    }),
    photo: (photo, via): Keeping => ({ drafts: [pictureDraft(key, photo, how(via))], readBack: ['Picture kept.'] }),
  };
}

/** After a pause: what to say to go on. */
export function holdTopic(speaking: Speaking): ExchangeTopic {
  return callTopic(speaking, [...speaking.prefix, 'Holding. Say "carry on" when you are back.'], CARRY_ON, []);
}

/** Only a timed check is left and it is not due yet. */
export function waitTopic(speaking: Speaking): ExchangeTopic {
  const { next, state } = speaking;
  const waiting = next?.kind === 'wait' ? state.byKey.get(next.key) : undefined;
  const minutes = next?.kind === 'wait' ? Math.max(1, Math.ceil((next.dueAt - speaking.now()) / 60_000)) : 1;
  const opening = [
    ...speaking.prefix,
    `All that is left is ${waiting?.check.lines.name ?? 'a timed check'}, due in about ${count(minutes, 'minute')}. I will ask when it is time. Say "next one" to take it now.`,
  ];
  return callTopic(speaking, opening, READY, []);
}

/** Everything was asked: what is open or skipped, and the call for completion. */
export function wrapUpTopic(speaking: Speaking): ExchangeTopic {
  const { state } = speaking;
  const open = state.checks.filter((entry) => entry.status === 'open');
  const skipped = state.checks.filter((entry) => entry.status === 'skipped');
  const opening = [
    ...speaking.prefix,
    open.length + skipped.length === 0 ? 'Every check is answered.' : '',
    listed(open, 'open'),
    listed(skipped, 'skipped'),
    open.length + skipped.length === 0
      ? 'Say "round complete" to finish.'
      : 'Say "go back" to take them now, or "round complete" to finish as it is.',
  ].filter((line) => line !== '');
  return callTopic(speaking, opening, DONE, ['Say "round complete" to finish, or "go back".']);
}

export function keepFailedTopic(speaking: Speaking): ExchangeTopic {
  return callTopic(speaking, [`Not kept. ${speaking.trouble ?? ''}`, 'Say "yes" to try again.'], READY, []);
}

/** The verdict as it is spoken at the end, worst first. */
export function closingLines(speaking: Speaking): readonly string[] {
  return ['Round complete.', ...verdictOf(speaking.state, speaking.display).sentences];
}

/** On resuming: where we are and the last value kept. */
export function resumeLines(state: RoundState, display: Matter['display'] = 'us'): readonly string[] {
  const last = state.lastKey === null ? undefined : state.byKey.get(state.lastKey);
  const lines = [`Carrying on: ${state.round.plan.unit.name}, ${roundName(state.round.plan.round).toLowerCase()}.`];
  if (last?.entry?.kind === 'answered') {
    lines.push(`Last kept: ${last.check.lines.name}, ${readBack(last.check, last.entry.answer, { style: 'full', display })}.`);
  }
  return lines;
}

export function undoneLines(state: RoundState, entry: AnsweredEntry | SkippedEntry): readonly string[] {
  const target = state.byKey.get(entry.key);
  return [`Taken back: ${target?.check.lines.name ?? 'the last answer'}.`];
}

export function whereLines(state: RoundState, key: string | null): readonly string[] {
  const current = key === null ? undefined : state.byKey.get(key);
  const left = state.checks.filter((entry) => entry.status === 'open').length;
  const station = state.round.plan.stations.find((place) => place.key === current?.check.station);
  const last = state.lastKey === null ? undefined : state.byKey.get(state.lastKey);
  return [
    `${station ? `${station.name}. ` : ''}${current ? sentence(current.check.lines.name) : ''}`.trim(),
    last && last !== current ? `Before that, ${last.check.lines.name}.` : '',
    `${count(left, 'check')} left.`,
  ].filter((line) => line !== '');
}

function matterOf(speaking: Speaking, style: 'full' | 'terse'): Omit<Matter, 'now'> {
  const { state, past, display } = speaking;
  return { state, past, style, display };
}

function checkRequest(state: RoundState, current: CheckState): ListenRequest {
  const { check } = current;
  return {
    expects: check.expects,
    position: check.position,
    positions: state.checks
      .filter((entry) => entry.check.check === check.check)
      .flatMap((entry) => (entry.check.position === null ? [] : [entry.check.position])),
    others: [
      ...(state.people === 2 ? namedOthers(state, current).filter(({ settled }) => settled !== true) : []),
      ...changeable(state, current),
    ],
    mode: 'answer',
  };
}

/** Answers that people still think of: more of them would make the ears' grammar large for little. */
const MOST_CHANGEABLE = 6;

/** The latest answers of other checks, which may be changed by name. */
function changeable(state: RoundState, current: CheckState): ListenRequest['others'] {
  const settled = state.checks
    .filter(({ status, check }) => status === 'answered' && check.check !== current.check.check)
    .sort((a, b) => (b.entry?.seq ?? 0) - (a.entry?.seq ?? 0))
    .slice(0, MOST_CHANGEABLE);
  return settled.map(({ check: { names, position, expects } }) => ({ names, position, expects, settled: true }));
}

/** A call without a check: only commands and yes or no mean anything. */
function callTopic(
  speaking: Speaking,
  opening: readonly string[],
  expects: Expects,
  reminders: readonly string[],
): ExchangeTopic {
  const { state } = speaking;
  const request: ListenRequest = { expects, position: null, positions: [], others: [], mode: 'confirm' };
  const how = (via: Via) => ({ ...NO_HEARING, via, by: 'first' as const });
  return {
    opening,
    request,
    reasonRequest: request,
    patienceMs: CALL_PATIENCE_MS,
    reminders,
    consider: ({ hearing }) =>
      considerCall(
        hearing.hypotheses.map((hypothesis) => hypothesis.transcript),
        expects,
      ),
    press: () => ({ kind: 'ignore' }),
    speakFor: (command) =>
      command === 'help'
        ? [...reminders, commandHelp(callStyle(speaking))]
        : command === 'where'
          ? whereLines(state, speaking.key)
          : null,
    askAgain: () => reminders[0] ?? 'Say it again, please.',
    skip: null,
    note: (text, finding, hearing, via): Keeping => ({
      drafts: [noteDraft(null, text, finding, hearing?.clip ?? null, how(via))],
      readBack: [text === null ? 'Note kept as sound.' : `Noted: ${text}.`],
    }),
    photo: (photo, via): Keeping => ({ drafts: [pictureDraft(null, photo, how(via))], readBack: ['Picture kept.'] }),
  };
}

/** The first hypothesis that means anything to a call. */
function considerCall(transcripts: readonly string[], expects: Expects): Step {
  for (const transcript of transcripts) {
    const step = callStep(transcript, expects);
    if (step.kind !== 'ignore') return step;
  }
  return { kind: 'ignore' };
}

function callStep(transcript: string, expects: Expects): Step {
  if (asksForPicture(transcript)) return { kind: 'picture' };
  const style = styleAsked(transcript);
  if (style !== null) return { kind: 'style', style };
  const words = transcript
    .toLowerCase()
    .replace(/[^a-z' ]+/g, ' ')
    .trim();
  if (expects.kind === 'state') {
    if (expects.problem.some((phrase) => words.includes(phrase))) return { kind: 'yes-no', yes: false };
    if (expects.ok.some((phrase) => ` ${words} `.includes(` ${phrase} `))) return { kind: 'yes-no', yes: true };
  }
  const meaning = interpret(transcript, {
    expects,
    names: [],
    position: null,
    positions: [],
    others: [],
    last: null,
    previous: null,
    mode: 'confirm',
  });
  if (meaning.intent === 'command') return { kind: 'command', command: meaning.command, text: meaning.text };
  if (meaning.intent === 'confirmation') return { kind: 'yes-no', yes: meaning.yes };
  return { kind: 'ignore' };
}

function noteDraft(
  key: string | null,
  text: string | null,
  finding: boolean,
  clip: string | null,
  how: AnsweredEntry['how'],
): EntryDraft {
  return { kind: 'noted', key, text, clip, photo: null, finding, how };
}

/** Long lists come in chunks by station, each with a short close. */
function stationLines(speaking: Speaking, current: CheckState): readonly string[] {
  const { state, station } = speaking;
  if (current.check.station === station) return [];
  const { stations } = state.round.plan;
  const to = stations.find((place) => place.key === current.check.station);
  const from = stations.find((place) => place.key === station);
  const left = stations.filter((place) => place.checks.some((key) => state.byKey.get(key)?.status === 'open')).length;
  const finished = from?.checks.every((key) => state.byKey.get(key)?.status !== 'open') ?? false;
  return [
    ...(from && finished ? [`${from.name} done, ${left} ${left === 1 ? 'stop' : 'stops'} left.`] : []),
    ...(to ? [sentence(to.name)] : []),
  ];
}

function revisitLines(speaking: Speaking, current: CheckState): readonly string[] {
  const { entry, check } = current;
  if (entry?.kind === 'answered') {
    return [
      `It was kept as ${readBack(check, entry.answer, { style: 'terse', display: speaking.display })}. Say what it is now, or "next one".`,
    ];
  }
  if (entry?.kind === 'skipped') return [`It was skipped: ${entry.reason}.`];
  return [];
}

function listed(checks: readonly CheckState[], word: string): string {
  if (checks.length === 0) return '';
  const names = checks.slice(0, 3).map((entry) => entry.check.lines.name);
  const more = checks.length > 3 ? ` and ${checks.length - 3} more` : '';
  return `${count(checks.length, word === 'open' ? 'check is open' : 'check was skipped', word === 'open' ? 'checks are open' : 'checks were skipped')}: ${names.join(', ')}${more}.`;
}

function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}
