/** Times in words, for lists. */
const DAY_MS = 86_400_000;

/** "today", "yesterday", "5 days ago", then the date; by calendar days in the device's own time zone. */
export function ago(at: number, now: number): string {
  const days = Math.round((startOfDay(now) - startOfDay(at)) / DAY_MS);
  if (days <= 0) return 'today';
  if (days === 1) return 'yesterday';
  if (days < 30) return `${days} days ago`;
  return new Date(at).toLocaleDateString('en-US', { year: 'numeric', month: 'long', day: 'numeric' });
}

function startOfDay(at: number): number {
  return new Date(at).setHours(0, 0, 0, 0);
}
