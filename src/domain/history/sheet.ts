/** A round on one sheet of paper: every check once, with what it came to, what it was before a correction, and its limits. */
import type { Limit, Source } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Round } from '../round/entry.ts';
import type { TimelineItem } from './timeline.ts';

export interface SheetLine {
  readonly check: PlannedCheck;
  readonly outcome: NonNullable<TimelineItem['outcome']> | 'open';
  /** "62 psi", "skipped: under ice"; null while open. */
  readonly value: string | null;
  /** "voice, built-in", "button"; null while open. */
  readonly by: string | null;
  /** The words that were heard; null where they say no more than the value, or it was pressed. */
  readonly heard: string | null;
  /** What stood there before it was corrected or taken back, oldest first. */
  readonly before: readonly string[];
  /** What the judgement says, where it is not good. */
  readonly because: string | null;
  /** None where the line above with the same check has the same ones. */
  readonly limits: readonly Limit[];
  /** The limits are those of an earlier line of the same check. */
  readonly limitsAsAbove: boolean;
  /** Notes and findings about this check. */
  readonly notes: readonly string[];
}

export interface Sheet {
  /** In the order walked. */
  readonly stations: readonly { readonly name: string; readonly lines: readonly SheetLine[] }[];
  /** About the round as a whole. */
  readonly notes: readonly string[];
  /** Each source once; a limit's number is its place here, from 1. */
  readonly sources: readonly string[];
}

/** How a source reads on paper. */
export function sourceText(source: Source): string {
  return `${source.text}${source.fromMemory ? ', not re-read' : ''}`;
}

/** @param timeline of the same round, whole */
export function sheetOf(round: Round, timeline: readonly TimelineItem[]): Sheet {
  const seen = new Map<string, Set<string>>();
  const sources: string[] = [];
  const lineOf = (check: PlannedCheck): SheetLine => {
    const own = timeline.filter((item) => item.check?.key === check.key);
    const answers = own.filter(({ kind }) => kind === 'answered' || kind === 'skipped');
    const inForce = answers.findLast(({ standing }) => standing === 'in-force' || standing === 'correction');
    const limits = inForce?.limits ?? check.judge.limits;
    const text = JSON.stringify(limits);
    const before = seen.get(check.check) ?? new Set<string>();
    const limitsAsAbove = limits.length > 0 && before.has(text);
    seen.set(check.check, before.add(text));
    for (const { source } of limits) if (!sources.includes(sourceText(source))) sources.push(sourceText(source));
    return {
      check,
      outcome: inForce?.outcome ?? 'open',
      value: inForce?.understood ?? null,
      by: inForce?.by ?? null,
      heard: inForce ? otherWords(inForce) : null,
      before: answers.flatMap((item) =>
        (item.standing === 'replaced' || item.standing === 'taken-back') && item.understood !== null ? [item.understood] : [],
      ),
      because: inForce?.judgement && inForce.judgement.outcome !== 'ok' ? inForce.judgement.say : null,
      limits: limitsAsAbove ? [] : limits,
      limitsAsAbove,
      notes: notesOf(own),
    };
  };
  const lines = round.plan.checks.map(lineOf);
  return {
    stations: round.plan.stations
      .map(({ key, name }) => ({ name: name.replace(/\.$/, ''), lines: lines.filter(({ check }) => check.station === key) }))
      .filter((station) => station.lines.length > 0),
    notes: notesOf(timeline.filter(({ check }) => check === null)),
    sources,
  };
}

function otherWords({ heard, understood }: TimelineItem): string | null {
  const words = heard?.transcript ?? '';
  const isSame = (understood ?? '').toLowerCase().startsWith(words.toLowerCase());
  return words === '' || isSame ? null : words;
}

function notesOf(items: readonly TimelineItem[]): readonly string[] {
  return items.flatMap(({ kind, understood, standing }) =>
    kind === 'noted' && standing !== 'taken-back' && understood !== null && understood !== '' ? [understood] : [],
  );
}
