/** Which check comes next. */
import type { CheckState, RoundState } from './replay.ts';

export type NextStep =
  | { readonly kind: 'check'; readonly key: string }
  /** Everything else is done; this one is not due yet. */
  | { readonly kind: 'wait'; readonly key: string; readonly dueAt: number }
  | { readonly kind: 'wrap-up' };

/**
 * The next check to ask.
 *
 * A check asked for by the person comes first. The order walked is kept from the last answer on; what was left
 * behind follows at the end. A timed check that is due is asked when the station at hand is finished, so that nobody is
 * sent indoors between two wheels of lug nuts; one that is not due is passed over until nothing else is left.
 *
 * @param now epoch milliseconds
 */
export function nextStep(state: RoundState, now: number): NextStep {
  const asked = state.wentTo === null ? undefined : state.byKey.get(state.wentTo);
  if (asked) return { kind: 'check', key: asked.check.key };

  const dueAt = new Map(state.timers.map((timer) => [timer.key, timer.dueAt]));
  const open = state.checks.filter((entry) => entry.status === 'open');
  const isPending = (entry: CheckState) =>
    entry.check.timed !== null && (dueAt.get(entry.check.key) ?? Number.POSITIVE_INFINITY) > now;
  const askable = open.filter((entry) => !isPending(entry));
  const last = state.lastKey === null ? undefined : state.byKey.get(state.lastKey);
  const lastIndex = last ? state.checks.indexOf(last) : -1;
  const later = askable.filter((entry) => state.checks.indexOf(entry) > lastIndex);
  const following = later[0] ?? askable[0];

  const due = askable.find((entry) => entry.check.timed !== null);
  const leavesStation = !following || following.check.station !== last?.check.station;
  if (due && leavesStation) return { kind: 'check', key: due.check.key };
  const untimed = later.find((entry) => entry.check.timed === null) ?? askable.find((entry) => entry.check.timed === null);
  if (untimed) return { kind: 'check', key: untimed.check.key };
  if (due) return { kind: 'check', key: due.check.key };

  const first = state.timers[0];
  if (first) return { kind: 'wait', key: first.key, dueAt: first.dueAt };
  // A timed check whose start was skipped can never come due; it is asked as it stands.
  const orphan = open[0];
  return orphan ? { kind: 'check', key: orphan.check.key } : { kind: 'wrap-up' };
}

/** The check before a given one in the order walked; null at the first. */
export function checkBefore(state: RoundState, key: string): string | null {
  const index = state.checks.findIndex((entry) => entry.check.key === key);
  return state.checks[index - 1]?.check.key ?? null;
}
