/** How fast a tire loses air. */
import { TIRES } from '../judge/numbers/tires.ts';
import { UNITS } from '../quantity/units.ts';

/**
 * Loss in a month between two pressures brought to the same temperature, Pa; negative where it rose.
 * @param days time between them, > 0
 * @throws RangeError for no time
 */
export function lossPerMonth(beforePa: number, nowPa: number, days: number): number {
  if (!(days > 0) || !Number.isFinite(beforePa + nowPa)) throw new RangeError('lossPerMonth requires time and finite pressures');
  const monthDays = UNITS.month.factor / UNITS.day.factor;
  return ((beforePa - nowPa) * monthDays) / days;
}

/** Whether the loss is more than a sound tire's (2 psi a month). Source: tire-maker's booklet. */
export function isLeak(perMonthPa: number): boolean {
  return perMonthPa > TIRES.lossPerMonth.si * (1 + 1e-9);
}
