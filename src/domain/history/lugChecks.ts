/** Lug checks of earlier rounds, as the rule of re-torquing after a wheel was mounted wants them. */
import type { LugCheck } from '../lugs/retorque.ts';
import { inForce } from './inForce.ts';
import type { RoundRecord } from './series.ts';

const LUG_CHECK = 'lugs-moved';

/** Every lug check in which none moved, with how far its wheel had gone by then where the same round asked. */
export function settledLugChecks(rounds: readonly RoundRecord[]): readonly LugCheck[] {
  return rounds.flatMap(({ round, entries }) => {
    const answers = inForce(entries);
    return round.plan.checks.flatMap(({ check, key, position }) => {
      const entry = check === LUG_CHECK && position !== null ? answers.get(key) : undefined;
      if (entry?.kind !== 'answered' || entry.answer.kind !== 'count' || entry.answer.count !== 0 || position === null) return [];
      const distance = round.plan.checks.find((other) => other.judge.rule === 'since-mounted' && other.position === position);
      const gone = distance ? answers.get(distance.key) : undefined;
      const goneM = gone?.kind === 'answered' && gone.answer.kind === 'reading' ? gone.answer.si : null;
      return [{ position, at: entry.at, goneM }];
    });
  });
}
