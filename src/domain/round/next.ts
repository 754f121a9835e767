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
    entry.check.timed !== null && (dueAt.get(entry.check.key) ?? Number.NEGATIVE_INFINITY) > now;
  const pending = new Set(open.filter(isPending).map((entry) => entry.check.key));
  const openKeys = new Set(open.map((entry) => entry.check.key));
  const isAfter = (entry: CheckState, keys: ReadonlySet<string>) => (entry.check.after ?? []).some((key) => keys.has(key));
  // What must come after a reading that is still running (heater off, deadbolt) waits with it; what must come after a check
  // that was left open waits until nothing else is left.
  const free = open.filter((entry) => !pending.has(entry.check.key) && !isAfter(entry, pending));
  const inOrder = free.filter((entry) => !isAfter(entry, openKeys));
  const askable = inOrder.length > 0 ? inOrder : free;
  const last = state.walkKey === null ? undefined : state.byKey.get(state.walkKey);
  const lastIndex = last ? state.checks.indexOf(last) : -1;
  const later = askable.filter((entry) => state.checks.indexOf(entry) > lastIndex);
  const following = later[0] ?? askable[0];

  const due = askable.find((entry) => dueAt.has(entry.check.key));
  if (due && following?.check.station !== last?.check.station) return { kind: 'check', key: due.check.key };
  if (following) return { kind: 'check', key: following.check.key };

  const first = state.timers[0];
  return first ? { kind: 'wait', key: first.key, dueAt: first.dueAt } : { kind: 'wrap-up' };
}

/** The check before a given one in the order walked; null at the first. */
export function checkBefore(state: RoundState, key: string): string | null {
  const index = state.checks.findIndex((entry) => entry.check.key === key);
  return state.checks[index - 1]?.check.key ?? null;
}
