/** What a person at a demo unit would answer to a planned check. */
import { outsideAirPressure, pressureAtTemperature, REFERENCE_K } from '../history/normalize.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { convert, fromSI, toSI, type UnitId } from '../quantity/units.ts';
import type { Answer } from '../round/entry.ts';
import type { Random } from './random.ts';
import type { Truth } from './story.ts';

export interface Moment {
  readonly truth: Truth;
  readonly outsideF: number;
  readonly insideStartF: number;
  /** Years since the history began. */
  readonly years: number;
  readonly elevationM: number | null;
  readonly year: number;
}

/** A believable answer that the check can take: on a reading's step and inside its range. */
export function answerFor(check: PlannedCheck, moment: Moment, random: Random): Answer {
  const { expects } = check;
  switch (expects.kind) {
    case 'reading': {
      const value = onStep(readingFor(check, expects.unit, moment, random), expects);
      return { kind: 'reading', si: toSI(value, expects.unit), said: { value, unit: expects.unit }, hedged: false };
    }
    case 'count':
      return { kind: 'count', count: Math.min(expects.max, Math.max(expects.min, countFor(check, moment, random))) };
    case 'state':
      return { kind: 'state', verdict: random.chance(0.0012) ? 'problem' : 'ok', detail: null };
    case 'choice': {
      const good = expects.options.filter((option) => option.verdict === 'ok');
      const option = (random.chance(0.001) ? expects.options.at(-1) : good[0]) ?? expects.options[0];
      return { kind: 'choice', option: option?.id ?? 'ok', detail: null };
    }
    case 'date':
      return expects.form === 'dot-week'
        ? { kind: 'date', form: 'dot-week', value: `22${String((moment.year - 3) % 100).padStart(2, '0')}` }
        : { kind: 'date', form: 'month-year', value: `${moment.year - 1}-06` };
  }
}

/** In the check's unit, before it is rounded to its step. */
function readingFor(check: PlannedCheck, unit: UnitId, moment: Moment, random: Random): number {
  const { truth } = moment;
  const wheel = check.position === null ? undefined : truth.wheels.get(check.position);
  switch (check.judge.rule) {
    case 'outside-temperature':
      return convert(moment.outsideF, 'F', unit);
    case 'tire-pressure': {
      // The tire is not quite at the temperature that the person read off, and the gauge has its own mind.
      const tireK = toSI(moment.outsideF + 1.5 * random.normal(), 'F');
      const air = outsideAirPressure(moment.elevationM);
      const pa = pressureAtTemperature(toSI(wheel?.pressurePsi ?? truth.placardPsi, 'psi'), REFERENCE_K, tireK, air);
      return fromSI(pa + toSI(0.4 * random.normal(), 'psi'), unit);
    }
    case 'tread-depth':
      return convert((wheel?.treadThirtySeconds ?? 9) + 0.25 * random.normal(), '32nds', unit);
    case 'battery-rest':
      return convert(truth.batteryVolts + 0.03 * random.normal(), 'V', unit);
    case 'breakaway-rest':
      return convert(12.7 + 0.05 * random.normal(), 'V', unit);
    case 'inside-start':
      return convert(moment.insideStartF, 'F', unit);
    case 'furnace-rise': {
      const cold = 0.15 * (moment.insideStartF - moment.outsideF);
      const rise = truth.furnaceRise + truth.furnaceSlows * moment.years - cold + 0.8 * random.normal();
      return convert(moment.insideStartF + rise, 'F', unit);
    }
    case 'furnace-holds': {
      // First-order warming: twenty minutes bring less than twice what ten did.
      const rise = truth.furnaceRise + truth.furnaceSlows * moment.years;
      return convert(
        moment.insideStartF + 1.7 * rise - 0.15 * (moment.insideStartF - moment.outsideF) + 0.8 * random.normal(),
        'F',
        unit,
      );
    }
    case 'cable-push':
      return convert(truth.pushInches + 0.15 * random.normal(), 'in', unit);
    case 'ice-thickness':
      return convert(27 + 2 * random.normal(), 'in', unit);
    case 'co-reading':
      return 0;
    default:
      return middleOf(check);
  }
}

function middleOf({ expects, key }: PlannedCheck): number {
  if (expects.kind !== 'reading') throw new RangeError(`middleOf requires a reading: ${key}`);
  return (expects.usual.min + expects.usual.max) / 2;
}

function onStep(
  value: number,
  { min, max, step }: { readonly min: number; readonly max: number; readonly step: number },
): number {
  const inside = Math.min(max, Math.max(min, value));
  const steps = Math.round(inside / step) * step;
  return Number(Math.min(max, Math.max(min, steps)).toFixed(6));
}

function countFor(check: PlannedCheck, { truth }: Moment, random: Random): number {
  if (check.judge.rule !== 'lugs-moved') return 0;
  const wheel = check.position === null ? undefined : truth.wheels.get(check.position);
  if (wheel?.lugLoosens) return random.chance(0.92) ? 1 : 0;
  return random.chance(0.04) ? 1 : 0;
}
