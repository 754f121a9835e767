import type { Limit, RuleId } from '../checks/outcome.ts';
import type { Series } from '../history/series.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { type Drift, detectDrift } from './detectDrift.ts';
import { detectOutlier } from './detectOutlier.ts';
import { detectShift, type Shift } from './detectShift.ts';
import { forecastFor, limitAhead, limitBehind } from './forecast.ts';
import { splitAtRefills } from './splitAtRefills.ts';
import type { ForecastTime, TrendKind, TrendLine, TrendStatement } from './statement.ts';
import { type Point, theilSen } from './theilSen.ts';
import { THRESHOLDS } from './thresholds.ts';
import { DAY_MS, type TrendPoints, trendPoints } from './trendPoints.ts';
import {
  amountWords,
  capitalized,
  convertDifference,
  countWords,
  dateWords,
  positionWords,
  rateWords,
  valueWords,
  whenWords,
} from './wording.ts';

/** Quantities whose drift means something. The others change with the weather or with use, or are told elsewhere. */
const DRIFTING: ReadonlySet<RuleId> = new Set<RuleId>([
  'tire-pressure',
  'tread-depth',
  'cable-push',
  'battery-rest',
  'breakaway-rest',
  'co-reading',
  'broken-wires',
  'limits',
]);

/** Nothing is said about what has not been measured for so long. */
export const STALE_DAYS = 400;

/**
 * What one series says, as one plain sentence; null where there is nothing worth saying or too little to say it from.
 *
 * Pure. In this order: a newest reading that does not fit, a level that changed once, a steady drift with the day it
 * reaches its limit.
 * @param series of one unit, check and position
 * @param limits in force, normally {@link Series.limits}
 * @param now epoch milliseconds
 * @example "Left rear loses about one pound a week; it reaches 58 by January 20, give or take ten days."
 */
export function describeTrend(series: Series, limits: readonly Limit[], now: number, display: Display): TrendStatement | null {
  if (!DRIFTING.has(series.rule)) return null;
  const seen = trendPoints(series);
  const newest = seen.readings.at(-1);
  if (!newest || now - newest.at > STALE_DAYS * DAY_MS) return null;
  if (series.rule === 'broken-wires') return describeBroken(series, seen, now);
  if (!seen.comparable) return null;
  const blocks = series.rule === 'tire-pressure' ? splitAtRefills(seen.points, series.step, 'up') : [[...seen.points]];
  const apart = detectOutlier(blocks, series.step);
  if (apart) {
    const words = (value: number) => valueWords(value, series.unit, series.step, display);
    return statement(series, seen, {
      kind: 'outlier',
      text: `${subject(series)} was ${words(apart.value)} last time, where about ${words(apart.expected)} was to be expected: measure it again.`,
      concern: true,
      because: ['The newest reading lies far from the line through the ones before it.'],
    });
  }
  const drift = detectDrift(blocks, series.step);
  // Tread only ever wears: a step in it is wear seen in coarse readings.
  const found = blocks.length === 1 && series.rule !== 'tread-depth' ? detectShift(seen.points, series.step) : null;
  // A sound tire loses a little all year; less than the damage of a month is no step.
  const least = series.rule === 'tire-pressure' ? convertDifference(THRESHOLDS.tireDamagePsiPerMonth, 'psi', series.unit) : 0;
  const shift = found && Math.abs(found.after - found.before) >= least ? found : null;
  if (shift && (!drift || fitsBetter(shift, drift, seen.points))) return describeShift(series, seen, shift, now, display);
  return drift ? describeDrift(series, seen, drift, limits, now, display) : null;
}

/** Whether two flat levels lie closer to the points since the drift began than its sloping line. */
function fitsBetter(shift: Shift, drift: Drift, points: readonly Point[]): boolean {
  const last = points.at(-1)?.t ?? 0;
  const began = drift.began ?? Number.NEGATIVE_INFINITY;
  const steady = drift.level + drift.robust.slope * ((drift.began ?? last) - last);
  let flat = 0;
  let sloping = 0;
  for (const [index, point] of points.entries()) {
    flat += Math.abs(point.x - (index < shift.from ? shift.before : shift.after));
    sloping += Math.abs(point.x - (point.t < began ? steady : drift.level + drift.robust.slope * (point.t - last)));
  }
  return flat < sloping;
}

/** Whether the level has not come to rest after the change: then it is no step. */
function goesOn(shift: Shift, points: readonly Point[]): boolean {
  const since = points.slice(shift.from);
  const first = since[0];
  const last = since.at(-1);
  const slope = theilSen([since], THRESHOLDS.confidence)?.slope ?? 0;
  if (!first || !last) return false;
  return slope * (last.t - first.t) * Math.sign(shift.after - shift.before) > 0.6 * Math.abs(shift.after - shift.before);
}

function describeShift(series: Series, seen: TrendPoints, shift: Shift, now: number, display: Display): TrendStatement {
  const shown = displayUnit(series.unit, display);
  const size = Math.abs(convertDifference(shift.after - shift.before, series.unit, shown));
  const since = seen.readings[shift.from]?.at ?? now;
  const fell = shift.after < shift.before;
  const amount = amountWords(size, shown, convertDifference(series.step, series.unit, shown));
  const day = dateWords(since, now);
  return statement(series, seen, {
    kind: 'shift',
    text: goesOn(shift, seen.points)
      ? `${subject(series)} has been ${fell ? 'falling' : 'rising'} since about ${day}.`
      : `${subject(series)} ${fell ? 'dropped' : 'rose'} by about ${amount} around ${day} and has stayed there.`,
    concern: true,
    because: [
      `CUSUM against the first ${countWords(THRESHOLDS.shiftBaseline)} readings of the window.`,
      `Median before ${valueWords(shift.before, series.unit, series.step / 10, display)}, since then ${valueWords(shift.after, series.unit, series.step / 10, display)}.`,
    ],
  });
}

function describeDrift(
  series: Series,
  seen: TrendPoints,
  drift: Drift,
  limits: readonly Limit[],
  now: number,
  display: Display,
): TrendStatement | null {
  const falling = drift.robust.slope < 0;
  const forecast = forecastTime(forecastFor(drift, limits, series.unit), seen.origin);
  const ahead = limitAhead(drift, limits, series.unit);
  const behind = limitBehind(drift, limits, series.unit);
  const perMonth = series.rule === 'tire-pressure' ? pressureLossPerMonth(drift, series) : 0;
  const isNear = forecast !== null && forecast.at - now < THRESHOLDS.tireSoonDays * DAY_MS;
  if (series.rule === 'tire-pressure' && Math.abs(perMonth) < THRESHOLDS.tireNormalPsiPerMonth && !isNear) return null;
  const rate = rateWords(Math.abs(drift.robust.slope), series.unit, series.step, display);
  const lead = `${subject(series)} ${changes(series.rule, falling)} about ${rate}`;
  return statement(series, seen, {
    kind: 'drift',
    text: `${lead}${consequence()}.`,
    concern: forecast !== null || behind !== null || perMonth > THRESHOLDS.tireDamagePsiPerMonth,
    slopePerDay: drift.robust.slope,
    p: drift.p,
    forecast,
    line: lineOf(drift, seen),
    because: [
      `Theil–Sen slope of ${drift.count} readings over ${Math.round(drift.spanDays)} days, Mann–Kendall p ${drift.p < 0.001 ? 'below 0.001' : drift.p.toFixed(3)}.`,
      ...(drift.blocks.length > 1
        ? [`Pumped up ${drift.blocks.length === 2 ? 'once' : `${countWords(drift.blocks.length - 1)} times`} in that time.`]
        : []),
      ...(perMonth > THRESHOLDS.tireDamagePsiPerMonth
        ? ['More than two pounds a month means damage somewhere: have it inspected (a major tire maker’s owner booklet).']
        : []),
      ...(drift.outliers > 0 ? [`${capitalized(countWords(drift.outliers))} left out as not fitting.`] : []),
      ...(drift.began === null
        ? []
        : [`Steady until about ${dateWords(seen.origin + drift.began * DAY_MS, now)}; only the readings since then count.`]),
      ...(seen.atK === null ? [] : ['All brought to the cold of the last reading.']),
    ],
  });

  function consequence(): string {
    const limitWords = (level: number) => valueWords(level, series.unit, series.step, display);
    if (behind) return ` and is ${falling ? 'below' : 'above'} ${limitWords(behind.level)} now`;
    if (!forecast || !ahead) return '';
    return `; it reaches ${limitWords(ahead.level)} ${whenWords(forecast.at, forecast.earliest, forecast.latest, now)}`;
  }
}

/** What a tire loses in psi a month; negative where it gains. */
function pressureLossPerMonth(drift: Drift, series: Series): number {
  return -convertDifference(drift.robust.slope, series.unit, 'psi') * (365.2425 / 12);
}

function describeBroken(series: Series, seen: TrendPoints, now: number): TrendStatement | null {
  const [before, last] = seen.readings.slice(-2);
  if (!before || !last || last.read <= before.read) return null;
  const from = before.read === 0 ? 'none' : countWords(before.read);
  return statement(series, seen, {
    kind: 'shift',
    text: `${subject(series)} went from ${from} to ${countWords(last.read)} since ${dateWords(before.at, now)}.`,
    concern: true,
    because: ['Broken wires never mend: one more is a change.'],
  });
}

function changes(rule: RuleId, falling: boolean): string {
  if (rule === 'tire-pressure') return falling ? 'loses' : 'gains';
  return falling ? 'falls by' : 'rises by';
}

/** At its own check a tire's pressure needs no name: "Left rear". */
export function subject(series: Pick<Series, 'rule' | 'position' | 'name'>): string {
  if (series.position === null) return capitalized(series.name);
  const where = positionWords(series.position);
  if (series.rule === 'tire-pressure') return capitalized(where);
  return capitalized(series.name.includes(where) ? series.name : `${where} ${series.name}`);
}

function forecastTime(found: ReturnType<typeof forecastFor>, origin: number): ForecastTime | null {
  if (!found) return null;
  const time = (t: number) => Math.round(origin + t * DAY_MS);
  return { at: time(found.t), earliest: time(found.earliest), latest: time(found.latest), limit: found.limit };
}

function lineOf(drift: Drift, seen: TrendPoints): TrendLine | null {
  const block = drift.blocks.findLast((candidate) => candidate.length > 0);
  const first = block?.[0];
  const last = block?.at(-1);
  if (!first || !last) return null;
  return {
    from: seen.origin + first.t * DAY_MS,
    to: seen.origin + last.t * DAY_MS,
    atFrom: drift.level - drift.robust.slope * (last.t - first.t),
    atTo: drift.level,
    slopeLower: drift.robust.lower,
    slopeUpper: drift.robust.upper,
  };
}

interface Told {
  readonly kind: TrendKind;
  readonly text: string;
  readonly concern: boolean;
  readonly because: readonly string[];
  readonly slopePerDay?: number;
  readonly p?: number;
  readonly forecast?: ForecastTime | null;
  readonly line?: TrendLine | null;
}

/** A statement about a series with what is the same for all of them. */
export function statement(
  series: Pick<Series, 'unitId' | 'key' | 'check' | 'position' | 'name' | 'demo'>,
  seen: { readonly readings: readonly { readonly at: number }[] },
  told: Told,
): TrendStatement {
  return {
    kind: told.kind,
    unitId: series.unitId,
    key: series.key,
    check: series.check,
    position: series.position,
    name: series.name,
    text: told.text,
    concern: told.concern,
    at: seen.readings.at(-1)?.at ?? 0,
    count: seen.readings.length,
    slopePerDay: told.slopePerDay ?? null,
    p: told.p ?? null,
    forecast: told.forecast ?? null,
    line: told.line ?? null,
    because: told.because,
    demo: series.demo,
  };
}
