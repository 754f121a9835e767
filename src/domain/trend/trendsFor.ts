import { buildSeries, type RoundRecord, type Series } from '../history/series.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import type { UnitEvent } from '../round/entry.ts';
import { describeTrend, STALE_DAYS, statement } from './describeTrend.ts';
import { furnaceWarmUp, warmUps } from './furnaceWarmUp.ts';
import { lugPattern, lugRounds } from './lugPattern.ts';
import { opposite, sideDivergence } from './sideDivergence.ts';
import type { TrendStatement } from './statement.ts';
import { THRESHOLDS } from './thresholds.ts';
import { DAY_MS } from './trendPoints.ts';
import { amountWords, capitalized, convertDifference, countWords, monthWords, positionWords } from './wording.ts';

/** What is kept about units, as far as looking back needs it; of one unit or of several. */
export interface UnitData {
  readonly rounds: readonly RoundRecord[];
  readonly events: readonly UnitEvent[];
}

export interface Trends {
  readonly series: readonly Series[];
  /** Concerns first, then the newest. */
  readonly statements: readonly TrendStatement[];
}

/**
 * Everything that looking back shows. Pure; computed anew from the record each time.
 * @param now epoch milliseconds
 */
export function trendsFor(data: UnitData, now: number, display: Display): Trends {
  const series = buildSeries(data.rounds, data.events);
  const statements: TrendStatement[] = [];
  const byKey = new Map(series.map((one) => [idOf(one, one.key), one]));
  const ofUnit = groupRounds(data.rounds);
  const told = new Set<string>();
  for (const one of series) {
    const records = ofUnit.get(`${one.demo} ${one.unitId}`) ?? [];
    const found = describeOne(one, records, data.events, now, display);
    if (!found) continue;
    statements.push(found);
    told.add(idOf(one, one.key));
  }
  for (const left of series) {
    const other = left.position === null ? null : opposite(left.position);
    const right = other === null ? undefined : byKey.get(idOf(left, `${left.check}@${other}`));
    // What is said of one side by itself needs no comparison.
    if (!right || !isCompared(left) || told.has(idOf(left, left.key)) || told.has(idOf(right, right.key))) continue;
    const apart = sideDivergence(left, right, display);
    if (apart && now - apart.at <= STALE_DAYS * DAY_MS) statements.push(apart);
  }
  statements.sort((a, b) => Number(b.concern) - Number(a.concern) || b.at - a.at || (a.key < b.key ? -1 : 1));
  return { series, statements };
}

function idOf(series: Series, key: string): string {
  return `${series.demo} ${series.unitId} ${key}`;
}

function isCompared(series: Series): boolean {
  return series.rule === 'tire-pressure' || series.rule === 'cable-push' || series.rule === 'tread-depth';
}

function groupRounds(rounds: readonly RoundRecord[]): ReadonlyMap<string, readonly RoundRecord[]> {
  const groups = new Map<string, RoundRecord[]>();
  for (const record of rounds) {
    const id = `${record.round.demo} ${record.round.unit}`;
    const group = groups.get(id);
    if (group) group.push(record);
    else groups.set(id, [record]);
  }
  return groups;
}

function describeOne(
  series: Series,
  records: readonly RoundRecord[],
  events: readonly UnitEvent[],
  now: number,
  display: Display,
): TrendStatement | null {
  if (series.rule === 'lugs-moved') return describeLugs(series, records, events);
  if (series.rule === 'furnace-rise') return describeFurnace(series, records, display);
  return describeTrend(series, series.limits, now, display);
}

function describeLugs(series: Series, records: readonly RoundRecord[], events: readonly UnitEvent[]): TrendStatement | null {
  // Only the newest rounds are looked at, and two more may be passed over as settling.
  const newest = series.readings.slice(-3 * THRESHOLDS.lugRounds);
  const wanted = new Set(newest.map((reading) => reading.round));
  const ofUnit = events.filter((event) => event.unit === series.unitId);
  const rounds = lugRounds(
    records.filter(({ round }) => wanted.has(round.id)),
    ofUnit,
    series.key,
    series.position,
  );
  const pattern = lugPattern(rounds, THRESHOLDS.lugRounds, THRESHOLDS.lugBackground);
  if (!pattern || pattern.p > THRESHOLDS.lugP) return null;
  const wheel = series.position === null ? 'A wheel' : `${capitalized(positionWords(series.position))} wheel`;
  const which = pattern.lug ? `, lug ${countWords(pattern.lug.number)} in ${countWords(pattern.lug.times)} of them` : '';
  return statement(
    series,
    { readings: rounds.slice(-THRESHOLDS.lugRounds) },
    {
      kind: 'lugs',
      text: `${wheel}: lugs moved in ${countWords(pattern.movedIn)} of the last ${countWords(pattern.rounds)} rounds${which}; have the studs, the seats and the hub face looked at.`,
      concern: true,
      p: pattern.p,
      because: ['Lugs settle after a wheel is put on; those rounds are left out. After that they should stay.'],
    },
  );
}

function describeFurnace(series: Series, records: readonly RoundRecord[], display: Display): TrendStatement | null {
  const wanted = new Set(series.readings.slice(-THRESHOLDS.window).map((reading) => reading.round));
  const rounds = warmUps(
    records.filter(({ round }) => wanted.has(round.id)),
    series.key,
  );
  const found = furnaceWarmUp(rounds);
  if (!found || found.p > THRESHOLDS.furnaceP || found.perDay >= 0) return null;
  const shown = displayUnit('F-diff', display);
  const slower = convertDifference(found.first - found.last, 'K', shown);
  if (slower < 2) return null;
  return statement(
    series,
    { readings: rounds },
    {
      kind: 'furnace',
      text: `The furnace warms the cabin about ${amountWords(slower, shown, 1)} less in the same time than in ${monthWords(found.from)}.`,
      concern: true,
      slopePerDay: found.perDay,
      p: found.p,
      because: [
        `${found.count} warm-ups, p ${found.p < 0.001 ? 'below 0.001' : found.p.toFixed(3)}.`,
        'Allowed for how cold it was outside; warm-ups without that are left out.',
      ],
    },
  );
}
