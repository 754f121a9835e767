/** The one place where the app reads the clock and makes ids; everything else is given them. */
export interface Clock {
  /** Epoch milliseconds. */
  now(): number;
  /** Resolves when the time has passed or the signal is aborted; never rejects. */
  sleep(ms: number, signal: AbortSignal): Promise<void>;
}

const LONGEST_TIMER_MS = 2 ** 31 - 1;

function sleepFor(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, Math.min(Math.max(0, ms), LONGEST_TIMER_MS));
    signal.addEventListener(
      'abort',
      () => {
        clearTimeout(timer);
        resolve();
      },
      { once: true },
    );
  });
}

export const realClock: Clock = { now: () => Date.now(), sleep: sleepFor };

/** A clock that runs faster, so that a rehearsal need not wait ten minutes for a furnace. */
export function fastClock(times: number): Clock {
  const start = Date.now();
  return {
    now: () => start + (Date.now() - start) * times,
    sleep: (ms, signal) => sleepFor(ms / times, signal),
  };
}

export function newId(): string {
  return crypto.randomUUID();
}
