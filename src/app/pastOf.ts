/** What this unit's own record says about the checks of a plan, gathered once before a round. */
import { expectationFor } from '../domain/history/expectation.ts';
import type { Past, PastOfCheck } from '../domain/history/past.ts';
import type { RoundRecord } from '../domain/history/series.ts';
import type { Plan } from '../domain/plan/plan.ts';
import { formatQuantity } from '../domain/quantity/format.ts';
import { toSI } from '../domain/quantity/units.ts';
import type { UnitEvent } from '../domain/round/entry.ts';
import { spokenTrends } from '../domain/trend/spokenTrends.ts';
import { trendsFor } from '../domain/trend/trendsFor.ts';
import type { Display } from '../domain/voice/settings.ts';

export interface PastInput {
  readonly plan: Plan;
  /** Earlier rounds of the same unit, without the one that is about to be walked. */
  readonly rounds: readonly RoundRecord[];
  readonly events: readonly UnitEvent[];
  readonly display: Display;
  /** Epoch milliseconds. */
  readonly now: number;
}

export function pastOf({ plan, rounds, events, display, now }: PastInput): Past {
  const trends = trendsFor({ rounds, events }, now, display);
  const series = new Map(trends.series.map((one) => [one.key, one]));
  const spoken = spokenTrends(trends, plan.unit.id);
  const times = answeredTimes(rounds);
  const past = new Map<string, PastOfCheck>();
  for (const check of plan.checks) {
    const own = series.get(check.key);
    const last = own?.readings.at(-1);
    const { expects } = check;
    past.set(check.key, {
      expectation: (outsideK) =>
        expects.kind === 'reading' ? expectationFor(own, { unit: expects.unit, step: expects.step, outsideK }) : null,
      last:
        own && last
          ? {
              value: last.read,
              unit: own.unit,
              at: last.at,
              text: own.unit === 'count' ? String(last.read) : formatQuantity(toSI(last.read, own.unit), own.unit, display),
            }
          : null,
      times: times.get(check.key) ?? 0,
      trend: spoken.get(check.key) ?? null,
    });
  }
  return past;
}

function answeredTimes(rounds: readonly RoundRecord[]): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const { entries } of rounds) {
    const answered = new Set(entries.flatMap((entry) => (entry.kind === 'answered' ? [entry.key] : [])));
    for (const key of answered) times.set(key, (times.get(key) ?? 0) + 1);
  }
  return times;
}
