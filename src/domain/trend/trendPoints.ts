import { valueAt } from '../history/expectation.ts';
import type { Series, SeriesReading } from '../history/series.ts';
import type { Point } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';

export const DAY_MS = 86_400_000;

export interface TrendPoints {
  /** Comparable readings of the window, oldest first; t in days since `origin`, x in the series' unit. */
  readonly points: readonly Point[];
  /** The reading behind each point. */
  readonly readings: readonly SeriesReading[];
  /** Epoch milliseconds of t = 0. */
  readonly origin: number;
  /** Temperature that tire pressures were brought to, K; null where they are as read or it does not apply. */
  readonly atK: number | null;
  /** False for tire pressures whose temperature is not known: the weather would look like a leak. */
  readonly comparable: boolean;
}

/**
 * The readings of a series that may be compared with each other, newest window only.
 *
 * Tire pressures are brought to the outside temperature of the latest reading that has one, so that what is said agrees
 * with what the gauge shows in the same cold.
 */
export function trendPoints(series: Series): TrendPoints {
  const isTire = series.referenceK !== null;
  const normalized = isTire ? series.readings.filter((reading) => reading.normalized) : [];
  const enough = normalized.length >= Math.min(THRESHOLDS.fewest, series.readings.length) && normalized.length > 0;
  const usable = isTire && enough ? normalized : series.readings;
  const atK = isTire && enough ? (normalized.at(-1)?.outsideK ?? null) : null;
  const newest = usable.at(-1)?.at ?? 0;
  const readings = usable.slice(-THRESHOLDS.window).filter((reading) => newest - reading.at <= THRESHOLDS.windowDays * DAY_MS);
  const origin = readings[0]?.at ?? 0;
  const points = readings.map((reading) => ({
    t: (reading.at - origin) / DAY_MS,
    x: atK === null ? reading.read : valueAt(series, reading, atK),
  }));
  return { points, readings, origin, atK, comparable: !isTire || enough };
}
