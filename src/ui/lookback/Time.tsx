import { clockText, dayText, dayTimeText, machineTime } from './dates.ts';

const FORMS = { day: dayText, 'day-time': dayTimeText, clock: clockText } as const;

/** A time, for people and for machines. */
export function Time({ at, form = 'day' }: { readonly at: number; readonly form?: keyof typeof FORMS }) {
  return <time dateTime={machineTime(at)}>{FORMS[form](at)}</time>;
}
