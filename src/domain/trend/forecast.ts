import type { Limit } from '../checks/outcome.ts';
import { fromSI, UNITS, type UnitId } from '../quantity/units.ts';
import { crossing } from './crossing.ts';
import type { Drift } from './detectDrift.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface Forecast {
  readonly limit: Limit;
  /** The limit in the series' unit. */
  readonly level: number;
  /** In days, on the same scale as the points. */
  readonly t: number;
  readonly earliest: number;
  readonly latest: number;
}

/** The limit that a drift is heading for: the nearest one on its way that is not crossed yet. */
export function limitAhead(drift: Drift, limits: readonly Limit[], unit: UnitId): { limit: Limit; level: number } | null {
  const falling = drift.robust.slope < 0;
  const ahead = comparable(limits, unit).filter(
    ({ limit, level }) =>
      limit.relation === (falling ? 'at-least' : 'at-most') && (falling ? level < drift.level : level > drift.level),
  );
  ahead.sort((a, b) => (falling ? b.level - a.level : a.level - b.level));
  return ahead[0] ?? null;
}

/** The worst limit that the present level is already beyond, on the side that the drift heads for; null for none. */
export function limitBehind(drift: Drift, limits: readonly Limit[], unit: UnitId): { limit: Limit; level: number } | null {
  const falling = drift.robust.slope < 0;
  const behind = comparable(limits, unit).filter(
    ({ limit, level }) =>
      limit.relation === (falling ? 'at-least' : 'at-most') && (falling ? level >= drift.level : level <= drift.level),
  );
  behind.sort((a, b) => (falling ? a.level - b.level : b.level - a.level));
  return behind[0] ?? null;
}

/** Limits that mean something when crossed, in the series' unit. */
function comparable(limits: readonly Limit[], unit: UnitId): { limit: Limit; level: number }[] {
  return limits
    .filter(
      (limit) => limit.outcome !== 'ok' && UNITS[limit.unit].dimension === UNITS[unit].dimension && Number.isFinite(limit.si),
    )
    .map((limit) => ({ limit, level: fromSI(limit.si, unit) }));
}

/**
 * When a drift reaches the limit ahead of it, with a 95 % interval.
 *
 * Never from too few readings, never where the late end lies further out than twice the time they span, and never where the
 * slope could as well be nought: then there is no forecast at all.
 * @returns null where no honest time can be given
 */
export function forecastFor(drift: Drift, limits: readonly Limit[], unit: UnitId): Forecast | null {
  const ahead = limitAhead(drift, limits, unit);
  const { fit } = drift;
  if (!ahead || !fit || fit.df < THRESHOLDS.fewest - 2) return null;
  if (Math.sign(fit.slope) !== Math.sign(drift.robust.slope)) return null;
  const found = crossing(fit, ahead.level, THRESHOLDS.confidence);
  const last = drift.blocks.findLast((block) => block.length > 0)?.at(-1);
  if (!found || !last || found.t < last.t) return null;
  const reach = Math.min(THRESHOLDS.horizonDays, THRESHOLDS.horizonSpans * drift.spanDays);
  if (found.latest - last.t > reach) return null;
  return { ...ahead, ...found };
}
