import type { Trends } from './trendsFor.ts';

/**
 * The sentence to speak at each check of the next round of a unit, by key of the plan: concerns only, one for each check.
 * @param trends of that unit; demo and real rounds are never in one unit
 */
export function spokenTrends(trends: Trends, unitId: string): ReadonlyMap<string, string> {
  const spoken = new Map<string, string>();
  for (const { unitId: of, key, text, concern } of trends.statements) {
    if (of === unitId && concern && !spoken.has(key)) spoken.set(key, text);
  }
  return spoken;
}
