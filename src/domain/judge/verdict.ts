/** A round's verdict: the worst in it, in sentences that say what to do. */

import type { Position } from '../checks/expects.ts';
import type { Outcome, Source } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Judgement } from './judgement.ts';
import { capital, worse } from './rules/rule.ts';

export interface VerdictLine {
  readonly check: PlannedCheck;
  readonly judgement: Judgement | null;
  readonly status: 'answered' | 'skipped' | 'open';
  readonly reason?: string | null;
}

export interface Todo {
  readonly key: string;
  readonly outcome: Outcome;
  readonly text: string;
  readonly source: Source | null;
}

export interface Verdict {
  readonly outcome: Outcome | 'not-cleared';
  /** For the ear, worst first. */
  readonly sentences: readonly string[];
  readonly todos: readonly Todo[];
}

type Judged = VerdictLine & { readonly judgement: Judgement };

const MOST_SPOKEN = 4;

/**
 * Worst wins. A check that could be a `hold` and was not answered, or whose answer could not be taken, or that waits for a
 * question, means "not cleared", never ok; a `hold` that was found stays a hold. Lesser checks that were not seen make it
 * `watch` at best. The tool advises: it never says that a unit is safe.
 */
export function roundVerdict(input: { readonly lines: readonly VerdictLine[]; readonly display: 'us' | 'metric' }): Verdict {
  const judged = input.lines.flatMap((line): Judged[] =>
    line.status === 'answered' && line.judgement ? [{ ...line, judgement: line.judgement }] : [],
  );
  const unseen = input.lines.filter((line) => line.status !== 'answered' || line.judgement === null);
  const unsettled = judged.filter(({ judgement }) => judgement.settled === false || judgement.question !== null);
  const isSafety = ({ check }: VerdictLine) => check.judge.worst === 'hold';
  const missing = [...unseen, ...unsettled].filter(isSafety);
  const found = judged.reduce<Outcome>((outcome, line) => worse(outcome, line.judgement.outcome), 'ok');
  const worst = unseen.length > 0 || input.lines.length === 0 ? worse(found, 'watch') : found;
  const outcome = worst === 'hold' ? 'hold' : missing.length > 0 || input.lines.length === 0 ? 'not-cleared' : worst;
  const of = (wanted: Outcome) => judged.filter((line) => line.judgement.outcome === wanted);
  const todos = (['hold', 'fix', 'watch'] as const).flatMap((wanted) =>
    of(wanted).map((line) => ({
      key: line.check.key,
      outcome: wanted,
      text: [line.judgement.seen ? `${capital(line.judgement.seen)}.` : line.judgement.say, line.judgement.todo ?? '']
        .filter((part) => part !== '')
        .join(' '),
      source: sourceOf(line),
    })),
  );
  return {
    outcome,
    sentences: sentencesFor(
      outcome,
      of,
      missing,
      unseen.filter((line) => !isSafety(line)),
      judged,
    ),
    todos,
  };
}

function sentencesFor(
  outcome: Verdict['outcome'],
  of: (wanted: Outcome) => readonly Judged[],
  missing: readonly VerdictLine[],
  passedOver: readonly VerdictLine[],
  judged: readonly Judged[],
): readonly string[] {
  const holds = of('hold');
  const fixes = of('fix');
  const watches = of('watch');
  const sentences: string[] = [];
  if (outcome === 'hold') {
    sentences.push(
      holds.length === 1
        ? 'Hold. Do not tow until one thing is mended.'
        : `Hold. Do not tow until ${holds.length} things are mended.`,
    );
    for (const line of holds.slice(0, MOST_SPOKEN)) sentences.push(reason(line));
    if (holds.length > MOST_SPOKEN) sentences.push(`And ${holds.length - MOST_SPOKEN} more; they are on the screen.`);
  }
  if (missing.length > 0) {
    sentences.push(`${outcome === 'not-cleared' ? 'Not cleared to tow. ' : ''}Not settled: ${listed(missing)}.`);
  } else if (outcome === 'not-cleared') {
    sentences.push('Not cleared to tow. Nothing was looked at.');
  }
  if (fixes.length > 0) sentences.push(`${outcome === 'fix' ? 'Fix. ' : ''}To mend before the next trip: ${listed(fixes)}.`);
  if (watches.length > 0) sentences.push(`${outcome === 'watch' ? 'Watch. ' : ''}To look at again: ${listed(watches)}.`);
  if (passedOver.length > 0) {
    const opening = outcome === 'watch' && watches.length === 0 ? 'Watch. ' : '';
    sentences.push(`${opening}Not looked at: ${listed(passedOver)}.`);
  }
  const figures = [...new Set(judged.flatMap(({ judgement }) => judgement.missing ?? []))];
  if (figures.length > 0) sentences.push(`Not known: ${some(figures)}. Put it in the profile.`);
  if (outcome === 'ok') sentences.push('OK. Nothing was found. Look for yourself, and drive as the road allows.');
  return sentences;
}

/** What, by which figure, and what to do, spoken in one go. */
function reason(line: Judged): string {
  const { say, seen, todo } = line.judgement;
  const what = seen ?? say.replace(/[.!]\s*$/, '');
  const { limit } = line.judgement;
  const source = sourceOf(line);
  // A figure is always spoken with where it comes from; behind a state stands a text that only reads well when it is short.
  const by = source && (limit || isShort(source)) ? `, by ${spokenSource(source)}` : '';
  return `${capital(nameOf(line.check))}: ${what}${by}. ${todo ?? ''}`.replace(/\s+/g, ' ').trim();
}

function sourceOf({ check, judgement }: Judged): Source | null {
  return judgement.limit?.source ?? check.sources?.[0] ?? null;
}

/** A source as it can be spoken: no section signs, no brackets. "federal rule 571.138", "the unit's tire placard". */
export function spokenSource({ kind, text }: Source): string {
  if (kind === 'common-practice') return text.startsWith('common practice') ? 'common practice' : plain(text);
  const rule = /^(?:\d+) CFR (\d+(?:\.\d+)?)/.exec(text);
  if (rule) return `federal rule ${rule[1]}`;
  return kind === 'maker' ? `the ${plain(text).replace(/^the /, '')}` : plain(text);
}

function isShort(source: Source): boolean {
  return source.kind !== 'published' || /^\d+ CFR /.test(source.text);
}

function plain(text: string): string {
  return (text.split(/[(;:]/)[0] ?? text).trim();
}

function some(names: readonly string[]): string {
  const first = names.slice(0, MOST_SPOKEN).join(', ');
  return names.length > MOST_SPOKEN ? `${first} and ${names.length - MOST_SPOKEN} more` : first;
}

const listed = (lines: readonly VerdictLine[]) => some([...new Set(lines.map((line) => nameOf(line.check)))]);

/** "tire pressure, left front"; names that say their side already are left alone. */
function nameOf({ lines, position }: PlannedCheck): string {
  if (position === null || position.split('-').some((word) => lines.name.includes(word))) return lines.name;
  return `${lines.name}, ${words(position)}`;
}

const words = (position: Position) => position.replace('-', ' ');
