/** Rounds read from storage each bring their own copy of the same hundred checks; a pool keeps one. */
import type { Round } from '../round/entry.ts';

/**
 * Gives rounds back with equal checks and equal unit profiles as the same objects: a thousand rounds of three units then
 * take a few megabytes instead of a hundred. The data stay equal to what they were.
 * @returns a function to pass every round through that is held at the same time
 */
export function partsPool(): (round: Round) => Round {
  const known = new Map<string, unknown>();
  const pooled = new WeakSet<object>();
  const shared = <T extends object>(part: T): T => {
    // Rounds read together may share their parts already.
    if (pooled.has(part)) return part;
    const text = JSON.stringify(part);
    const before = known.get(text);
    if (before !== undefined) return before as T;
    known.set(text, part);
    pooled.add(part);
    return part;
  };
  return (round) => ({ ...round, plan: { ...round.plan, unit: shared(round.plan.unit), checks: round.plan.checks.map(shared) } });
}
