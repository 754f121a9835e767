import type { Position } from '../checks/expects.ts';
import type { Series } from '../history/series.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { statement, subject } from './describeTrend.ts';
import { detectDrift } from './detectDrift.ts';
import { median } from './median.ts';
import { splitAtRefills } from './splitAtRefills.ts';
import type { TrendStatement } from './statement.ts';
import { THRESHOLDS } from './thresholds.ts';
import { DAY_MS } from './trendPoints.ts';
import { amountWords, convertDifference, positionWords, rateWords } from './wording.ts';

/**
 * One side falling behind the other: needs no temperature, since both sides stand in the same cold.
 *
 * Shape: two series of one check on one axle; only rounds that have both count. Pure.
 * Method: Mann–Kendall and Theil–Sen on left minus right, cut wherever either side was pumped up.
 * @returns null where the two keep their distance
 */
export function sideDivergence(left: Series, right: Series, display: Display): TrendStatement | null {
  const others = new Map(right.readings.map((reading) => [reading.round, reading]));
  const pairs = left.readings
    .flatMap((reading) => {
      const other = others.get(reading.round);
      return other ? [{ at: reading.at, x: reading.read - other.read }] : [];
    })
    .slice(-THRESHOLDS.window);
  const origin = pairs[0]?.at ?? 0;
  const points = pairs.map(({ at, x }) => ({ t: (at - origin) / DAY_MS, x }));
  const drift = detectDrift(splitAtRefills(points, left.step, 'either'), left.step);
  if (!drift || (left.rule === 'tire-pressure' && !isMoreThanNormal(drift.robust.slope, left))) return null;
  const [behind, ahead] = drift.robust.slope < 0 ? [left, right] : [right, left];
  if (behind.position === null || ahead.position === null) return null;
  const gap = median(points.slice(-3).map((point) => point.x)) * (behind === left ? -1 : 1);
  const shown = displayUnit(left.unit, display);
  const step = convertDifference(left.step, left.unit, shown);
  const rate = rateWords(Math.abs(drift.robust.slope), left.unit, left.step, display);
  const gapWords =
    gap > left.step ? `; it is about ${amountWords(convertDifference(gap, left.unit, shown), shown, step)} lower now` : '';
  return statement(
    behind,
    { readings: pairs },
    {
      kind: 'divergence',
      text: `${subject(behind)} falls behind ${positionWords(ahead.position)} by about ${rate}${gapWords}.`,
      concern: true,
      slopePerDay: -Math.abs(drift.robust.slope),
      p: drift.p,
      because: [
        `Difference of the two sides in ${pairs.length} rounds, Mann–Kendall p ${drift.p < 0.001 ? 'below 0.001' : drift.p.toFixed(3)}.`,
        'Both sides stand in the same cold, so the weather cancels.',
      ],
    },
  );
}

function isMoreThanNormal(perDay: number, { unit }: Series): boolean {
  return convertDifference(Math.abs(perDay), unit, 'psi') * (365.2425 / 12) >= THRESHOLDS.tireNormalPsiPerMonth;
}

/** The position opposite on the same axle; null for one that has none. */
export function opposite(position: Position): Position | null {
  if (position === 'left') return 'right';
  if (position.startsWith('left-')) return position.replace('left-', 'right-') as Position;
  return null;
}
