/** Lug checks of earlier rounds, as the rule of re-torquing after a wheel was mounted wants them. */
import type { LugCheck } from '../lugs/retorque.ts';
import { inForce } from './inForce.ts';
import type { RoundRecord } from './series.ts';

const LUG_CHECK = 'lugs-moved';

/** Every lug check in which none moved. A round does not ask for the odometer, so the distance is not known. */
export function settledLugChecks(rounds: readonly RoundRecord[]): readonly LugCheck[] {
  return rounds.flatMap(({ round, entries }) => {
    const answers = inForce(entries);
    return round.plan.checks.flatMap(({ check, key, position }) => {
      const entry = check === LUG_CHECK && position !== null ? answers.get(key) : undefined;
      if (entry?.kind !== 'answered' || entry.answer.kind !== 'count' || entry.answer.count !== 0 || position === null) return [];
      return [{ position, at: entry.at, odometerM: null }];
    });
  });
}
