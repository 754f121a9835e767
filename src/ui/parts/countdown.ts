/** How long until something is due, in words short enough for a glance. */

/**
 * @param dueAt epoch milliseconds
 * @param now epoch milliseconds
 * @returns "due now", "under a minute", "about 7 minutes"; minutes are rounded up, so that nobody comes early
 */
export function timeLeft(dueAt: number, now: number): string {
  const left = dueAt - now;
  if (left <= 0) return 'due now';
  if (left < 60_000) return 'under a minute';
  const minutes = Math.ceil(left / 60_000);
  return minutes === 1 ? 'about 1 minute' : `about ${minutes} minutes`;
}
