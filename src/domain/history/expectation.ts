/** What a unit's own past leads one to expect. It only ever makes the tool more careful; nothing is filled in from it. */
import type { Expectation } from '../language/decision.ts';
import type { UnitId } from '../quantity/units.ts';
import { convert, fromSI, toSI, UNITS } from '../quantity/units.ts';
import { MAD_TO_SIGMA, median, medianAbsoluteDeviation } from '../trend/median.ts';
import { pressureAtTemperature } from './normalize.ts';
import type { Series, SeriesReading } from './series.ts';

export interface ExpectationContext {
  /** The unit the check asks in. */
  readonly unit: UnitId;
  /** Finest step read, in that unit. */
  readonly step: number;
  /** Outside air now; null when not known. */
  readonly outsideK: number | null;
}

/** Older readings say little about the next one: a tire loses, a battery fades. */
const RECENT = 9;
const FEWEST = 3;

/**
 * Robust center and spread of the recent readings, in the unit asked for, tire pressures brought to today's temperature.
 *
 * Shape: the last nine readings since the last cut. Spread is 1.4826 times the median absolute deviation, never below
 * half a step.
 * Source: median and MAD as in NIST/SEMATECH e-Handbook 1.3.5.6 (from memory).
 * @returns null with fewer than three readings, or where the units do not measure the same thing
 */
export function expectationFor(series: Series | undefined, context: ExpectationContext): Expectation | null {
  if (!series || UNITS[series.unit].dimension !== UNITS[context.unit].dimension) return null;
  const values = comparableValues(series, context.outsideK)
    .slice(-RECENT)
    .map((value) => convert(value, series.unit, context.unit));
  if (values.length < FEWEST) return null;
  const spread = Math.max(MAD_TO_SIGMA * medianAbsoluteDeviation(values), context.step / 2);
  return { median: median(values), spread, count: values.length };
}

/**
 * Readings of a series as they would read today. Where today's and the old temperatures are known, tire pressures are
 * brought to today's; with too few of those, as they were read.
 */
function comparableValues(series: Series, outsideK: number | null): readonly number[] {
  const { referenceK } = series;
  if (referenceK !== null && outsideK !== null) {
    const known = series.readings.filter((reading) => reading.normalized);
    if (known.length >= FEWEST) return known.map((reading) => valueAt(series, reading, outsideK));
  }
  return series.readings.map((reading) => reading.read);
}

/**
 * A reading's value at an outside temperature, in the series' unit; as read where it was never normalized.
 * @param outsideK K, > 0
 */
export function valueAt(series: Series, reading: SeriesReading, outsideK: number): number {
  if (series.referenceK === null || !reading.normalized) return reading.read;
  const si = pressureAtTemperature(toSI(reading.value, series.unit), series.referenceK, outsideK, series.airPa);
  return fromSI(si, series.unit);
}

/**
 * The latest reading as it was read, since the last cut; null where there is none.
 */
export function lastValue(
  series: Series | undefined,
): { readonly value: number; readonly unit: UnitId; readonly at: number } | null {
  const last = series?.readings.at(-1);
  return series && last ? { value: last.read, unit: series.unit, at: last.at } : null;
}
