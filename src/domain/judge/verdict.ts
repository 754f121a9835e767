/** A round's verdict: the worst in it, in sentences that say what to do. */

import type { Position } from '../checks/expects.ts';
import type { Outcome, Source } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Judgement } from './judgement.ts';
import { worse } from './rules.ts';

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

const MOST_SPOKEN = 4;

/**
 * Worst wins. A check that could be a `hold` and was not answered means "not cleared", never ok; a `hold` that was found
 * stays a hold. The tool advises: it never says that a unit is safe.
 */
export function roundVerdict(input: { readonly lines: readonly VerdictLine[]; readonly display: 'us' | 'metric' }): Verdict {
  const judged = input.lines.flatMap((line) => (line.judgement ? [{ ...line, judgement: line.judgement }] : []));
  const worst = judged.reduce<Outcome>((outcome, line) => worse(outcome, line.judgement.outcome), 'ok');
  const missing = input.lines.filter((line) => line.status !== 'answered' && line.check.judge.worst === 'hold');
  const outcome = worst === 'hold' ? 'hold' : missing.length > 0 ? 'not-cleared' : worst;
  const of = (wanted: Outcome) => judged.filter((line) => line.judgement.outcome === wanted);
  const todos = (['hold', 'fix', 'watch'] as const).flatMap((wanted) =>
    of(wanted).map((line) => ({
      key: line.check.key,
      outcome: wanted,
      text: [line.judgement.say, line.judgement.todo ?? ''].filter((part) => part !== '').join(' '),
      source: line.judgement.limit?.source ?? null,
    })),
  );
  return { outcome, sentences: sentencesFor(outcome, of, missing), todos };
}

function sentencesFor(
  outcome: Verdict['outcome'],
  of: (wanted: Outcome) => readonly (VerdictLine & { judgement: Judgement })[],
  missing: readonly VerdictLine[],
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
    const names = missing.slice(0, MOST_SPOKEN).map((line) => nameOf(line.check));
    const more = missing.length > MOST_SPOKEN ? ` and ${missing.length - MOST_SPOKEN} more` : '';
    sentences.push(`${outcome === 'not-cleared' ? 'Not cleared to tow. ' : ''}Not seen: ${names.join(', ')}${more}.`);
  }
  if (fixes.length > 0) sentences.push(`${outcome === 'fix' ? 'Fix. ' : ''}To mend before the next trip: ${listed(fixes)}.`);
  if (watches.length > 0) sentences.push(`${outcome === 'watch' ? 'Watch. ' : ''}To look at again: ${listed(watches)}.`);
  if (outcome === 'ok') sentences.push('OK. Nothing was found. Look for yourself, and drive by the road.');
  return sentences;
}

/** One sentence: what, why, what to do, and by which figure. */
function reason(line: VerdictLine & { judgement: Judgement }): string {
  const { say, todo, limit } = line.judgement;
  const source = limit ? ` By ${limit.source.text}.` : '';
  return `${capital(nameOf(line.check))}. ${say} ${todo ?? ''}${source}`.replace(/\s+/g, ' ').trim();
}

function listed(lines: readonly VerdictLine[]): string {
  const names = lines.slice(0, MOST_SPOKEN).map((line) => nameOf(line.check));
  return lines.length > MOST_SPOKEN ? `${names.join(', ')} and ${lines.length - MOST_SPOKEN} more` : names.join(', ');
}

/** "tire pressure, left front"; names that say their side already are left alone. */
function nameOf({ lines, position }: PlannedCheck): string {
  if (position === null || position.split('-').some((word) => lines.name.includes(word))) return lines.name;
  return `${lines.name}, ${words(position)}`;
}

const words = (position: Position) => position.replace('-', ' ');
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
