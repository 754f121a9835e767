/** What is to be mended: carried from round to round until someone says that it was. */
import type { Position } from '../checks/expects.ts';
import type { Outcome } from '../checks/outcome.ts';
import type { UnitEvent } from '../round/entry.ts';
import { inForce, inOrder } from './inForce.ts';
import type { RoundRecord } from './series.ts';

export type MendedEvent = Extract<UnitEvent, { kind: 'mended' }>;

export interface Finding {
  /** What a `mended` event names: the id of the note, or `round/key` of the check. */
  readonly id: string;
  readonly unitId: string;
  /** Null for a note about the whole round. */
  readonly key: string | null;
  readonly position: Position | null;
  /** What it is about, for a list: the name of the check, or the note itself. */
  readonly title: string;
  /** What was seen, or the note's words; null where only a clip or photo tells. */
  readonly text: string | null;
  /** Null for a note. */
  readonly outcome: Exclude<Outcome, 'ok'> | null;
  /** What to do, from the plan. */
  readonly mend: string | null;
  /** When it was first seen, epoch milliseconds, in which round, and in how many rounds since then. */
  readonly since: number;
  readonly round: string;
  readonly seen: number;
  /** When last seen. */
  readonly last: number;
  /** The newest picture of it. */
  readonly photo: string | null;
  readonly clip: string | null;
  readonly demo: boolean;
}

export interface MendedFinding {
  readonly finding: Finding;
  readonly event: MendedEvent;
}

export interface Findings {
  /** Worst first, then the oldest. */
  readonly open: readonly Finding[];
  /** Newest first. */
  readonly mended: readonly MendedFinding[];
}

interface Running {
  finding: Finding;
  /** Every id that means this finding: it may be mended under any of them. */
  readonly ids: Set<string>;
}

const RANK: Readonly<Record<string, number>> = { hold: 0, fix: 1, watch: 2 };

/**
 * Open and mended findings of one unit or of several.
 *
 * A check that was not `ok` stays open under its first appearance until it is mended, or until a later round finds it ok:
 * the same check seen wrong again is the same finding. A check left open or skipped later proves nothing. A note marked as a
 * finding stays open until it is mended. Pure.
 * @param rounds in any order
 */
export function openFindings(data: { readonly rounds: readonly RoundRecord[]; readonly events: readonly UnitEvent[] }): Findings {
  const mendings = new Map<string, MendedEvent>();
  for (const event of [...data.events].sort((a, b) => a.at - b.at))
    if (event.kind === 'mended') mendings.set(event.finding, event);
  const runnings = new Map<string, Map<string, Running>>();
  const notes: Running[] = [];
  const mended: MendedFinding[] = [];
  const rounds = [...data.rounds].sort((a, b) => a.round.startedAt - b.round.startedAt || (a.round.id < b.round.id ? -1 : 1));

  /** What is not mended before that time. */
  const stillOpen = (running: Map<string, Running>, key: string, before: number): Running | undefined => {
    const found = running.get(key);
    const event = found && mendingOf(found, mendings);
    if (!found || !event || event.at > before) return found;
    mended.push({ finding: found.finding, event });
    running.delete(key);
    return undefined;
  };

  for (const record of rounds) {
    const { round, entries } = record;
    const answers = inForce(entries);
    const ofUnit = `${round.demo} ${round.unit}`;
    const running = runnings.get(ofUnit) ?? new Map<string, Running>();
    runnings.set(ofUnit, running);
    for (const check of round.plan.checks) {
      const entry = answers.get(check.key);
      if (entry?.kind !== 'answered') continue;
      const known = stillOpen(running, check.key, entry.at);
      if (entry.outcome === 'ok') {
        if (known) running.delete(check.key);
        continue;
      }
      const id = `${round.id}/${check.key}`;
      if (known) {
        known.ids.add(id).add(entry.id);
        const worse = RANK[entry.outcome] ?? 2;
        const outcome = worse <= (RANK[known.finding.outcome ?? 'watch'] ?? 2) ? entry.outcome : known.finding.outcome;
        const photo = pictureOf(entries, check.key) ?? known.finding.photo;
        known.finding = { ...known.finding, outcome, seen: known.finding.seen + 1, last: entry.at, photo };
        continue;
      }
      const detail = entry.answer.kind === 'state' || entry.answer.kind === 'choice' ? entry.answer.detail : null;
      const finding: Finding = {
        id,
        unitId: round.unit,
        key: check.key,
        position: check.position,
        title: check.lines.name,
        text: detail,
        outcome: entry.outcome,
        mend: check.lines.mend,
        since: entry.at,
        round: round.id,
        seen: 1,
        last: entry.at,
        photo: pictureOf(entries, check.key),
        clip: entry.how.clip,
        demo: round.demo,
      };
      running.set(check.key, { finding, ids: new Set([id, entry.id]) });
    }
    notes.push(...notesOf(record));
  }

  const open: Finding[] = [];
  for (const found of [...[...runnings.values()].flatMap((running) => [...running.values()]), ...notes]) {
    const event = mendingOf(found, mendings);
    if (event) mended.push({ finding: found.finding, event });
    else open.push(found.finding);
  }
  open.sort((a, b) => rankOf(a) - rankOf(b) || a.since - b.since || (a.id < b.id ? -1 : 1));
  mended.sort((a, b) => b.event.at - a.event.at || (a.finding.id < b.finding.id ? -1 : 1));
  return { open, mended };
}

/** The newest picture that was taken of a check. */
function pictureOf(entries: RoundRecord['entries'], key: string): string | null {
  const pictures = entries.filter((entry) => entry.kind === 'noted' && entry.key === key && entry.photo !== null);
  const newest = inOrder(pictures).at(-1);
  return newest?.kind === 'noted' ? newest.photo : null;
}

function notesOf({ round, entries }: RoundRecord): Running[] {
  // Looked through first: a thousand rounds have seventy thousand entries and a handful of notes.
  const noted = entries.filter((entry) => entry.kind === 'noted' && entry.finding);
  return inOrder(noted).flatMap((entry): Running[] => {
    if (entry.kind !== 'noted') return [];
    const check = round.plan.checks.find((candidate) => candidate.key === entry.key);
    return [
      {
        ids: new Set([entry.id]),
        finding: {
          id: entry.id,
          unitId: round.unit,
          key: entry.key,
          position: check?.position ?? null,
          title: check?.lines.name ?? 'note',
          text: entry.text,
          outcome: null,
          mend: null,
          since: entry.at,
          round: round.id,
          seen: 1,
          last: entry.at,
          photo: entry.photo,
          clip: entry.clip,
          demo: round.demo,
        },
      },
    ];
  });
}

function mendingOf(found: Running, mendings: ReadonlyMap<string, MendedEvent>): MendedEvent | undefined {
  let latest: MendedEvent | undefined;
  for (const id of found.ids) {
    const event = mendings.get(id);
    // Mended and then seen wrong again is a new finding, not a mended one.
    if (event && event.at >= found.finding.last && (!latest || event.at > latest.at)) latest = event;
  }
  return latest;
}

function rankOf(finding: Finding): number {
  return finding.outcome === null ? 3 : (RANK[finding.outcome] ?? 3);
}
