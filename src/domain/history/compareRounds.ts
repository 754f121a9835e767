/** Two rounds side by side: of one unit, or the latest of two. */

import type { Position } from '../checks/expects.ts';
import type { Outcome } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { convert, fromSI, UNITS } from '../quantity/units.ts';
import { formatAnswer } from '../round/formatAnswer.ts';
import { convertDifference, plainNumber } from '../trend/wording.ts';
import { type InForce, inForce } from './inForce.ts';
import type { RoundRecord } from './series.ts';

export interface ComparedSide {
  /** "62 psi"; a skip's reason; null where open or not asked. */
  readonly text: string | null;
  readonly status: Outcome | 'open' | 'skipped' | 'not-asked';
}

export interface ComparedCheck {
  readonly key: string;
  readonly name: string;
  readonly position: Position | null;
  readonly left: ComparedSide;
  readonly right: ComparedSide;
  /** "3 psi less", "worse", "other limits": what differs from left to right; null where nothing does. */
  readonly change: string | null;
}

const RANK: Readonly<Record<Outcome, number>> = { ok: 0, watch: 1, fix: 2, hold: 3 };

/** Checks of both rounds, in the order of the right one, then what only the left one had. Pure. */
export function compareRounds(left: RoundRecord, right: RoundRecord, display: Display): readonly ComparedCheck[] {
  const before = new Map(left.round.plan.checks.map((check) => [check.key, check]));
  const after = new Map(right.round.plan.checks.map((check) => [check.key, check]));
  const [oldAnswers, newAnswers] = [inForce(left.entries), inForce(right.entries)];
  const keys = [...after.keys(), ...[...before.keys()].filter((key) => !after.has(key))];
  return keys.map((key): ComparedCheck => {
    const [old, now] = [before.get(key), after.get(key)];
    const named = now ?? old;
    const oldSide = sideOf(old, oldAnswers.get(key), display);
    const newSide = sideOf(now, newAnswers.get(key), display);
    const parts = [
      old && now ? valueChange(now, oldAnswers.get(key), newAnswers.get(key), display) : null,
      outcomeChange(oldSide.status, newSide.status),
      old && now && JSON.stringify(old.judge.limits) !== JSON.stringify(now.judge.limits) ? 'other limits' : null,
    ].filter((part) => part !== null);
    return {
      key,
      name: named?.lines.name ?? key,
      position: named?.position ?? null,
      left: oldSide,
      right: newSide,
      change: parts.length > 0 ? parts.join(', ') : null,
    };
  });
}

function sideOf(check: PlannedCheck | undefined, entry: InForce | undefined, display: Display): ComparedSide {
  if (!check) return { text: null, status: 'not-asked' };
  if (!entry) return { text: null, status: 'open' };
  if (entry.kind === 'skipped') return { text: entry.reason, status: 'skipped' };
  return { text: formatAnswer(check, entry.answer, display), status: entry.outcome };
}

function valueChange(check: PlannedCheck, old: InForce | undefined, now: InForce | undefined, display: Display): string | null {
  if (old?.kind !== 'answered' || now?.kind !== 'answered') return null;
  const [a, b] = [old.answer, now.answer];
  if (a.kind === 'count' && b.kind === 'count') return a.count === b.count ? null : amount(b.count - a.count, '');
  if (a.kind === 'reading' && b.kind === 'reading' && check.expects.kind === 'reading') {
    const { unit, step } = check.expects;
    const shown = displayUnit(unit, display);
    const difference = convert(fromSI(b.si, unit), unit, shown) - convert(fromSI(a.si, unit), unit, shown);
    const text = plainNumber(Math.abs(difference), convertDifference(step, unit, shown));
    return text === '0' ? null : amount(Math.sign(difference) * Number(text), UNITS[shown].symbol);
  }
  return JSON.stringify(a) === JSON.stringify(b) ? null : 'changed';
}

function amount(difference: number, symbol: string): string {
  return `${Math.abs(difference)}${symbol.startsWith('/') || symbol === '' ? symbol : ` ${symbol}`} ${difference > 0 ? 'more' : 'less'}`;
}

function outcomeChange(left: ComparedSide['status'], right: ComparedSide['status']): string | null {
  const [a, b] = [rank(left), rank(right)];
  if (a === null || b === null)
    return left === right ? null : right === 'not-asked' ? 'not asked' : left === 'not-asked' ? 'new' : null;
  return a === b ? null : b > a ? 'worse' : 'better';
}

function rank(status: ComparedSide['status']): number | null {
  return status === 'open' || status === 'skipped' || status === 'not-asked' ? null : RANK[status];
}
