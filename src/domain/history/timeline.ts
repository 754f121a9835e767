/** A round played back: what was asked, heard, understood and decided, in the order in which it happened. */
import type { Limit, Outcome } from '../checks/outcome.ts';
import type { Judgement } from '../judge/judgement.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Entry, Round } from '../round/entry.ts';
import { formatAnswer } from '../round/formatAnswer.ts';
import { type HeardWord, heardWords } from '../round/heardWords.ts';
import { inOrder } from './inForce.ts';

export interface Heard {
  readonly transcript: string;
  /** Its words, and which of them counted. */
  readonly words: readonly HeardWord[];
  readonly alternatives: readonly string[];
  /** In percent, rounded; null where the ears give none. */
  readonly confidencePercent: number | null;
}

export interface TimelineItem {
  readonly id: string;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly kind: Entry['kind'];
  readonly check: PlannedCheck | null;
  /** Name of the station, where the round came to another one with this item; null else. */
  readonly arrivedAt: string | null;
  /** What was asked; null where nothing was. */
  readonly asked: string | null;
  readonly heard: Heard | null;
  /** "voice, built-in", "button": how it came in; null where nobody answered. */
  readonly by: string | null;
  /** What it was understood as: "62 psi", "skipped: under ice", "held", a note's text. */
  readonly understood: string | null;
  /** As judged at the time; null where nothing was. */
  readonly outcome: Outcome | 'skipped' | null;
  /** What the judgement says today; null for what is no longer in force. */
  readonly judgement: Judgement | null;
  /** Why it was believed. */
  readonly because: readonly string[];
  readonly limits: readonly Limit[];
  /** `replaced`: a later entry took its place. `correction`: it took the place of another. `taken-back`: undone. */
  readonly standing: 'in-force' | 'replaced' | 'correction' | 'taken-back' | null;
  readonly clip: string | null;
  readonly photo: string | null;
  readonly finding: boolean;
}

/**
 * The timeline of a round. Pure; entries about checks that the plan does not hold are shown without one.
 * @param judgements of the answers in force, by key
 */
export function timelineOf(
  round: Round,
  entries: readonly Entry[],
  judgements: ReadonlyMap<string, Judgement>,
  display: 'us' | 'metric',
): readonly TimelineItem[] {
  const checks = new Map(round.plan.checks.map((check) => [check.key, check]));
  const stations = new Map(round.plan.stations.map((station) => [station.key, station.name]));
  const ordered = inOrder(entries);
  const standings = standingsOf(ordered);
  let station: string | null = null;
  return ordered.map((entry): TimelineItem => {
    const key = 'key' in entry ? entry.key : null;
    const check = key === null ? null : (checks.get(key) ?? null);
    const arrivedAt = check && check.station !== station ? (stations.get(check.station) ?? null) : null;
    if (check) station = check.station;
    const how = 'how' in entry ? entry.how : null;
    const standing = standings.get(entry.id) ?? null;
    const judged = entry.kind === 'answered' && (standing === 'in-force' || standing === 'correction');
    return {
      id: entry.id,
      at: entry.at,
      kind: entry.kind,
      check,
      arrivedAt,
      asked: check && (entry.kind === 'answered' || entry.kind === 'skipped') ? check.lines.ask : null,
      heard: how?.transcript
        ? {
            transcript: how.transcript,
            words:
              key !== null && entry.kind === 'answered'
                ? heardWords(round.plan, key, how.transcript)
                : [{ text: how.transcript, counted: true }],
            alternatives: how.alternatives.map((alternative) => alternative.transcript),
            confidencePercent: how.confidence === null ? null : Math.round(how.confidence * 100),
          }
        : null,
      by: how
        ? [how.via, how.via === 'voice' ? how.provider : null, how.by === 'second' ? 'second person' : null]
            .filter(Boolean)
            .join(', ')
        : null,
      understood: understoodAs(entry, check, display),
      outcome: entry.kind === 'answered' ? entry.outcome : entry.kind === 'skipped' ? 'skipped' : null,
      judgement: judged && key !== null ? (judgements.get(key) ?? null) : null,
      because: how?.because ?? [],
      limits: entry.kind === 'answered' ? (check?.judge.limits ?? []) : [],
      standing,
      clip: how?.clip ?? (entry.kind === 'noted' ? entry.clip : null),
      photo: entry.kind === 'noted' ? entry.photo : null,
      finding: entry.kind === 'noted' && entry.finding,
    };
  });
}

function standingsOf(entries: readonly Entry[]): ReadonlyMap<string, TimelineItem['standing']> {
  const standings = new Map<string, TimelineItem['standing']>();
  const inForce = new Map<string, string>();
  for (const entry of entries) {
    if (entry.kind === 'answered' || entry.kind === 'skipped') {
      const before = inForce.get(entry.key);
      if (before !== undefined) standings.set(before, 'replaced');
      standings.set(entry.id, before === undefined ? 'in-force' : 'correction');
      inForce.set(entry.key, entry.id);
    } else if (entry.kind === 'undone' && inForce.get(entry.key) === entry.supersedes) {
      standings.set(entry.supersedes, 'taken-back');
      inForce.delete(entry.key);
    }
  }
  return standings;
}

function understoodAs(entry: Entry, check: PlannedCheck | null, display: 'us' | 'metric'): string | null {
  switch (entry.kind) {
    case 'begun':
      return entry.people === 2 ? 'The round began, two people.' : 'The round began.';
    case 'answered':
      return formatAnswer(check ?? { expects: { kind: 'date', form: 'dot-week' } }, entry.answer, display);
    case 'skipped':
      return `skipped: ${entry.reason}`;
    case 'undone':
      return 'Taken back; open again.';
    case 'noted':
      return entry.text ?? (entry.photo === null ? 'A spoken note.' : 'A picture.');
    case 'went':
      return entry.key === null ? 'Back to the order walked.' : 'Asked for out of order.';
    case 'held':
      return entry.reason === null ? 'Held.' : `Held: ${entry.reason}.`;
    case 'resumed':
      return 'Resumed.';
    case 'completed':
      return 'The round was called complete.';
  }
}
