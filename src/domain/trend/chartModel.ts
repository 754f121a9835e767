/** What a chart of one series draws: numbers in the unit shown, nothing about pixels. */
import type { Limit, Outcome } from '../checks/outcome.ts';
import { valueAt } from '../history/expectation.ts';
import type { Series, SeriesReading } from '../history/series.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { convert, fromSI, UNITS, type UnitId } from '../quantity/units.ts';
import type { TrendStatement } from './statement.ts';
import { trendPoints } from './trendPoints.ts';

export interface ChartPoint {
  readonly at: number;
  readonly value: number;
  /** As read, where `value` was brought to another temperature. */
  readonly read: number;
  readonly outcome: Outcome;
  readonly round: string;
  readonly entry: string;
  /** Before a cut: shown pale, never computed with. */
  readonly earlier: boolean;
}

export interface ChartLimit {
  readonly value: number;
  readonly limit: Limit;
}

export interface ChartModel {
  readonly unit: UnitId;
  /** Oldest first. */
  readonly points: readonly ChartPoint[];
  readonly limits: readonly ChartLimit[];
  /** Cuts of the series, with why. */
  readonly cuts: readonly { readonly at: number; readonly why: string }[];
  /** Trend line and the band of its slope, to the end of the forecast; null without a drift. */
  readonly line: readonly { readonly at: number; readonly value: number; readonly low: number; readonly high: number }[] | null;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly note: string | null;
}

/** Charts show the newest of these; the table beside them shows all. */
const MOST_POINTS = 120;

/**
 * The model of a chart; null without a reading. Pure.
 * @param statement about this series, or null
 */
export function chartModel(series: Series, statement: TrendStatement | null, display: Display): ChartModel | null {
  const unit = displayUnit(series.unit, display);
  const shown = (value: number) => convert(value, series.unit, unit);
  const { atK } = trendPoints(series);
  const point =
    (earlier: boolean) =>
    (reading: SeriesReading): ChartPoint => ({
      at: reading.at,
      value: shown(atK === null ? reading.read : valueAt(series, reading, atK)),
      read: shown(reading.read),
      outcome: reading.outcome,
      round: reading.round,
      entry: reading.entry,
      earlier,
    });
  const points = [
    ...series.earlier.flatMap((segment) => segment.readings.map(point(true))),
    ...series.readings.map(point(false)),
  ].slice(-MOST_POINTS);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return null;
  const limits = series.limits
    .filter((limit) => UNITS[limit.unit].dimension === UNITS[unit].dimension && Number.isFinite(limit.si))
    .map((limit) => ({ value: fromSI(limit.si, unit), limit }));
  const until = statement?.forecast ? Math.max(last.at, statement.forecast.latest) : last.at;
  const line = lineOf(statement, until, shown);
  const values = [
    ...points.map(({ value }) => value),
    ...limits.map(({ value }) => value),
    ...(line ?? []).map(({ value }) => value),
  ];
  const { low, high, ticks } = niceRange(Math.min(...values), Math.max(...values), unit === 'count' ? 1 : 0);
  const cuts = series.earlier.flatMap((segment) => {
    const at = segment.readings.at(-1)?.at;
    return at === undefined || at < first.at ? [] : [{ at, why: segment.endedBy }];
  });
  return {
    unit,
    points,
    limits,
    cuts,
    line,
    from: first.at,
    to: Math.max(until, first.at + 1),
    low,
    high,
    ticks,
    note:
      atK === null
        ? null
        : 'Pressures are brought to the cold of the last reading, so that they can be compared; the table gives them as read.',
  };
}

function lineOf(statement: TrendStatement | null, until: number, shown: (value: number) => number): ChartModel['line'] {
  const line = statement?.line;
  if (!line || line.to <= line.from) return null;
  const middle = (line.from + line.to) / 2;
  const center = (line.atFrom + line.atTo) / 2;
  const slope = (line.atTo - line.atFrom) / (line.to - line.from);
  const perMs = (perDay: number) => perDay / 86_400_000;
  return [line.from, middle, line.to, ...(until > line.to ? [until] : [])].map((at) => {
    const ends = [center + perMs(line.slopeLower) * (at - middle), center + perMs(line.slopeUpper) * (at - middle)];
    return { at, value: shown(center + slope * (at - middle)), low: shown(Math.min(...ends)), high: shown(Math.max(...ends)) };
  });
}

/**
 * A range that holds all values with a little room, and a few round ticks in it; never below nought for what never is.
 *
 * Method: steps of 1, 2 or 5 times a power of ten.
 * @param finest least distance of two ticks, >= 0; 1 for what is counted
 */
export function niceRange(least: number, most: number, finest: number): { low: number; high: number; ticks: number[] } {
  const span = most - least || Math.max(1, Math.abs(most) * 0.1);
  const rough = Math.max(span / 4, finest);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => size >= rough) ?? 10 * power;
  const room = Math.floor((least - 0.02 * span) / step) * step;
  const low = least >= 0 && room < 0 ? 0 : room;
  const high = Math.ceil((most + 0.02 * span) / step) * step;
  const count = Math.round((high - low) / step);
  return { low, high, ticks: Array.from({ length: count + 1 }, (_, index) => Number((low + index * step).toPrecision(12))) };
}
