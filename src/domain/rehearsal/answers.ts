/** What a person with a sound unit would say to each check; for the rehearsal and for tests that walk whole rounds. */
import type { Expects } from '../checks/expects.ts';
import type { Limit } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { fromSI } from '../quantity/units.ts';

/**
 * A good answer in words. Readings are taken from the check's own limits, so that nothing is flagged.
 * @param at epoch milliseconds, for dates that must lie ahead or not too far back
 */
export function goodAnswer(check: Pick<PlannedCheck, 'expects' | 'judge' | 'check'>, at: number): string {
  const { expects } = check;
  switch (expects.kind) {
    case 'state':
      return expects.ok[0] ?? 'good';
    case 'choice':
      return (
        (
          expects.options.find((option) => check.judge.params[option.id] === 'ok') ??
          expects.options.find((option) => option.verdict === 'ok') ??
          expects.options[0]
        )?.phrases[0] ?? ''
      );
    case 'count':
      return 'none';
    case 'date':
      return expects.form === 'dot-week' ? dotWeek(at) : monthYear(check.judge.rule, at);
    case 'reading':
      return spokenValue(goodValue(expects, check.judge.limits));
  }
}

/** The target where there is one, else the middle of what is usual. */
function goodValue(expects: Extract<Expects, { kind: 'reading' }>, limits: readonly Limit[]): number {
  const target = limits.find((limit) => limit.relation === 'target');
  const floor = limits.find((limit) => limit.relation === 'at-least');
  const middle = (expects.usual.min + expects.usual.max) / 2;
  const value = target
    ? fromSI(target.si, expects.unit)
    : floor
      ? Math.max(middle, fromSI(floor.si, expects.unit) + expects.step)
      : middle;
  const stepped = Math.round(value / expects.step) * expects.step;
  return Number(stepped.toFixed(4));
}

/** Digits as a recogniser writes them; below zero in words, as people say a temperature. */
export function spokenValue(value: number): string {
  return value < 0 ? `${-value} below` : String(value);
}

function dotWeek(at: number): string {
  return `20${String(new Date(at).getUTCFullYear() - 2).slice(2)}`;
}

function monthYear(rule: string, at: number): string {
  const year = new Date(at).getUTCFullYear() + (rule === 'alarm-date' ? 3 : -2);
  return `June ${year}`;
}
