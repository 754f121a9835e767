/** Times as a person reads them, in the device's own zone and the app's language. */
const DAY = new Intl.DateTimeFormat('en-US', { year: 'numeric', month: 'short', day: 'numeric' });
const DAY_TIME = new Intl.DateTimeFormat('en-US', {
  year: 'numeric',
  month: 'short',
  day: 'numeric',
  hour: 'numeric',
  minute: '2-digit',
});
const CLOCK = new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit', second: '2-digit' });

export const dayText = (at: number): string => DAY.format(at);
export const dayTimeText = (at: number): string => DAY_TIME.format(at);
export const clockText = (at: number): string => CLOCK.format(at);
/** For the `datetime` attribute. */
export const machineTime = (at: number): string => new Date(at).toISOString();
