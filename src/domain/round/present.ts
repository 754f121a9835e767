/** The round's screen, projected from the record and from what the conversation is doing right now. */
import type { Past } from '../history/past.ts';

import { formatAnswer } from './formatAnswer.ts';
import { heardWords } from './heardWords.ts';
import { type Display, judgementsOf, verdictOf } from './judging.ts';
import type { AnsweredEntry, RoundState, SkippedEntry } from './replay.ts';
import type { Offer } from './step.ts';
import type { EarsView, RoundPhase, RoundView } from './view.ts';

/** What the machines know beyond the record. */
export interface Conversation {
  readonly phase: RoundPhase;
  readonly key: string | null;
  readonly saying: string;
  readonly speaking: boolean;
  readonly partial: string | null;
  readonly offers: readonly Offer[];
  readonly ears: EarsView;
  readonly trouble: string | null;
  readonly taking?: 'note' | 'reason' | null;
}

/** @param now epoch milliseconds, for the timers */
export function presentRound(
  state: RoundState,
  past: Past,
  conversation: Conversation,
  display: Display,
  now: number,
): RoundView {
  const judgements = judgementsOf(state, display);
  const current = conversation.key === null ? undefined : state.byKey.get(conversation.key);
  const station = state.round.plan.stations.find((place) => place.key === current?.check.station);
  const isDone = (key: string) => state.byKey.get(key)?.status !== 'open';
  const before = current ? (past.get(current.check.key)?.last ?? null) : null;
  const finished = conversation.phase === 'wrap-up' || conversation.phase === 'complete';
  return {
    round: state.round,
    entries: state.entries,
    phase: conversation.phase,
    people: state.people,
    station: station ? { name: station.name, done: station.checks.filter(isDone).length, total: station.checks.length } : null,
    done: state.checks.filter((entry) => entry.status !== 'open').length,
    total: state.checks.length,
    lines: state.checks.map(({ check, status, entry }) => ({
      check,
      status:
        entry?.kind === 'answered'
          ? (judgements.get(check.key)?.outcome ?? entry.outcome)
          : status === 'skipped'
            ? 'skipped'
            : 'open',
      value:
        entry?.kind === 'answered' ? formatAnswer(check, entry.answer, display) : entry?.kind === 'skipped' ? entry.reason : null,
      because: judgements.get(check.key)?.say || null,
    })),
    current: current?.check ?? null,
    before: before === null ? null : before.text,
    beforeValue: before === null ? null : { value: before.value, unit: before.unit },
    saying: conversation.saying,
    speaking: conversation.speaking,
    partial: conversation.partial,
    readBack: lastReadBack(state, display),
    offers: conversation.offers.map(({ label, answer }) => ({ label, answer })),
    ears: conversation.ears,
    timers: state.timers.map(({ key, dueAt }) => ({
      key,
      name: state.byKey.get(key)?.check.lines.name ?? key,
      dueAt,
      due: dueAt <= now,
    })),
    verdict: finished ? { outcome: verdictOf(state, display).outcome, sentences: verdictOf(state, display).sentences } : null,
    trouble: conversation.trouble,
    taking: conversation.taking ?? null,
  };
}

function lastReadBack(state: RoundState, display: Display): RoundView['readBack'] {
  const entry = lastInForce(state);
  if (!entry) return null;
  const check = state.byKey.get(entry.key)?.check;
  if (!check) return null;
  if (entry.kind === 'skipped') return { text: `${check.lines.name}: ${entry.reason}`, outcome: 'skipped', heard: null };
  const { transcript } = entry.how;
  const words = transcript === null ? [] : heardWords(state.round.plan, entry.key, transcript);
  // Where every word counted the value says it all.
  const heard = words.some(({ counted, text }) => !counted && /\w/.test(text)) ? words : null;
  return { text: `${check.lines.name}: ${formatAnswer(check, entry.answer, display)}`, outcome: entry.outcome, heard };
}

function lastInForce(state: RoundState): AnsweredEntry | SkippedEntry | null {
  return state.lastKey === null ? null : (state.byKey.get(state.lastKey)?.entry ?? null);
}
