/** What does not fit together in a profile, in sentences. A warning can be lived with; an error would spoil a round. */

import { isWrenchSuited } from '../lugs/tightening.ts';
import { fromSI } from '../quantity/units.ts';
import { rangeDoubt } from '../tires/capacity.ts';
import { readDotCode } from './dotCode.ts';
import { type StudSize, type Unit, wheelPositions } from './unit.ts';
import { checkVin } from './vin.ts';

export interface Problem {
  /** Path of the field, as in `fields.ts`. */
  readonly field: string;
  readonly sentence: string;
  readonly level: 'error' | 'warning';
}

/**
 * Torque that published trailer figures leave plausible for a stud, in lb-ft, dry threads, widened on both sides. They
 * disagree with each other (9/16: 90–150; 5/8: 140–325), so outside is a warning, never an error.
 */
const PLAUSIBLE_TORQUE: Readonly<Record<StudSize, readonly [min: number, max: number]>> = {
  '1/2': [45, 130],
  '9/16': [80, 165],
  '5/8': [120, 350],
  M12: [55, 110],
  M14: [75, 165],
};
/** No wheel of this kind is held by less or more, whatever its studs. */
const POSSIBLE_TORQUE = [30, 400] as const;
/** A placard and a sidewall that differ by less are one figure printed in two systems (10 kPa). */
const LABEL_ROUNDING_PA = 10_000;

/**
 * Everything wrong or doubtful in a profile, errors first.
 * @param at epoch milliseconds of now, for dates that cannot lie ahead; left out: when the profile was last saved
 */
export function validateUnit(unit: Unit, at: number = unit.updatedAt): readonly Problem[] {
  const problems = [
    ...validateIdentity(unit, at),
    ...validateTires(unit, at),
    ...validateWheels(unit),
    ...validateLift(unit),
    ...validateGas(unit, at),
    ...validateWeights(unit),
  ];
  return [...problems.filter(({ level }) => level === 'error'), ...problems.filter(({ level }) => level === 'warning')];
}

const error = (field: string, sentence: string): Problem => ({ field, sentence, level: 'error' });
const warning = (field: string, sentence: string): Problem => ({ field, sentence, level: 'warning' });

function validateIdentity(unit: Unit, at: number): readonly Problem[] {
  const problems: Problem[] = [];
  if (unit.name.trim() === '') problems.push(error('name', 'Give it a name. It is how the round speaks of it.'));
  const thisYear = new Date(at).getUTCFullYear();
  if (unit.year !== null && unit.year > thisYear + 1) {
    problems.push(error('year', `Model year ${unit.year} is still to come.`));
  }
  if (unit.vin !== null) {
    const read = checkVin(unit.vin);
    if (!read.ok) {
      problems.push(warning('vin', read.sentence));
    } else if (unit.year !== null && read.years.length > 0 && !read.years.some((year) => year === unit.year)) {
      problems.push(
        warning(
          'year',
          `The VIN says model year ${read.years.join(' or ')}, the profile ${unit.year}. One of the two is misread.`,
        ),
      );
    }
  }
  return problems;
}

function psi(pascal: number): string {
  return `${Math.round(fromSI(pascal, 'psi'))} psi`;
}

function validateTires(unit: Unit, at: number): readonly Problem[] {
  const { tires, wheels, weights } = unit;
  const problems: Problem[] = [];
  const { placardColdPa: placard, sidewallMaxPa: cap } = tires;
  if (placard !== null && cap !== null && placard > cap + LABEL_ROUNDING_PA) {
    problems.push(
      error(
        'tires.placardColdPa',
        `The placard (${psi(placard)}) is above what the tire may hold (${psi(cap)}). Wrong tires, or one figure is misread. Do not fill to either until you know.`,
      ),
    );
  }
  if (placard !== null && cap !== null && placard < cap * 0.5) {
    problems.push(
      warning(
        'tires.placardColdPa',
        `The placard (${psi(placard)}) is less than half of what the tire may hold (${psi(cap)}). Look again at both.`,
      ),
    );
  }
  const doubt = rangeDoubt(tires.loadRange, cap);
  if (doubt !== null) problems.push(warning('tires.loadRange', doubt));
  for (const position of wheelPositions(unit.axles)) {
    const code = wheels.dotCodes[position];
    if (code === undefined) continue;
    const read = readDotCode(code, at);
    if (!read.ok) problems.push(error(`wheels.dotCodes.${position}`, read.sentence));
  }
  if (tires.maxLoadKg !== null && weights.gawrKg !== null && 2 * tires.maxLoadKg < weights.gawrKg - 1) {
    problems.push(
      warning(
        'tires.maxLoadKg',
        `Two such tires carry ${pounds(2 * tires.maxLoadKg)}, less than the axle rating of ${pounds(weights.gawrKg)}.`,
      ),
    );
  }
  return problems;
}

function validateWheels({ wheels }: Unit): readonly Problem[] {
  const { torqueNm, stud, torqueSource } = wheels;
  if (torqueNm === null) return [];
  if (!Number.isFinite(torqueNm)) return [error('wheels.torqueNm', 'The lug torque is not a number. Enter it again.')];
  const torque = fromSI(torqueNm, 'lb-ft');
  const shown = `${Math.round(torque)} lb-ft`;
  const [least, most] = POSSIBLE_TORQUE;
  if (torque < least || torque > most) {
    return [error('wheels.torqueNm', `${shown} is not a lug torque. Look again at the figure and its unit.`)];
  }
  const problems: Problem[] = [];
  if (stud !== null) {
    const [low, high] = PLAUSIBLE_TORQUE[stud];
    if (torque < low || torque > high) {
      const name = stud.startsWith('M') ? stud : `${stud} inch`;
      problems.push(
        warning(
          'wheels.torqueNm',
          `${shown} is unusual for a ${name} stud, where published figures run from ${low} to ${high}. Read the handbook again, unit and all.`,
        ),
      );
    }
  }
  const wrench = wheels.wrenchMaxNm ?? null;
  if (wrench !== null && Number.isFinite(wrench) && !isWrenchSuited(torqueNm, wrench)) {
    const end = Math.round(fromSI(wrench, 'lb-ft'));
    problems.push(
      warning(
        'wheels.wrenchMaxNm',
        torqueNm > wrench
          ? `A wrench that ends at ${end} lb-ft cannot give ${shown}. Use a larger one.`
          : `${shown} is in the lowest fifth of a wrench that ends at ${end} lb-ft, where it is not exact. Use a smaller one.`,
      ),
    );
  }
  if (torqueSource === null) {
    problems.push(
      warning('wheels.torqueSource', 'Say where the torque figure comes from. Only a maker’s figure is more than a guess.'),
    );
  }
  return problems;
}

function validateLift({ lift }: Unit): readonly Problem[] {
  const problems: Problem[] = [];
  const isCable = lift.kind === 'hand-crank-cable' || lift.kind === 'electric-winch-cable';
  if (isCable && lift.cables === 0) problems.push(error('lift.cables', 'A cable winch has at least one cable.'));
  if (lift.kind === 'none' && lift.cables > 0) problems.push(error('lift.cables', 'A unit without a lift has no lift cables.'));
  if (lift.kind !== 'none' && lift.pinsPerSide === 0) {
    problems.push(
      warning(
        'lift.pinsPerSide',
        'Without transport pins only the lift holds the unit up on the road. Ask the maker what takes the load off it.',
      ),
    );
  }
  return problems;
}

function isAhead(month: string, at: number): boolean {
  const now = new Date(at);
  const current = `${now.getUTCFullYear()}-${String(now.getUTCMonth() + 1).padStart(2, '0')}`;
  return month > current;
}

function validateGas({ cylinders, alarms, heat }: Unit, at: number): readonly Problem[] {
  const problems: Problem[] = [];
  for (const [index, { tareKg, capacityKg, date }] of cylinders.entries()) {
    if (date !== null && isAhead(date, at)) {
      problems.push(
        error(`cylinders.${index}.date`, 'The date stamped in a cylinder cannot lie ahead. Read it again: month, then year.'),
      );
    }
    // A steel cylinder weighs about as much as it holds, an aluminum or composite one somewhat less.
    if (tareKg !== null && capacityKg !== null && (tareKg < capacityKg * 0.3 || tareKg > capacityKg * 3)) {
      problems.push(
        warning(
          `cylinders.${index}.tareKg`,
          `A cylinder that holds ${pounds(capacityKg)} does not weigh ${pounds(tareKg)} empty. TW is the empty weight, WC the water it would hold.`,
        ),
      );
    }
  }
  for (const which of ['co', 'gas', 'smoke'] as const) {
    const { date, dateMeans } = alarms[which];
    if (date !== null && dateMeans === 'made' && isAhead(date, at)) {
      problems.push(
        error(`alarms.${which}.date`, 'An alarm cannot have been made in the future. Perhaps the date is "replace by".'),
      );
    }
    if (date !== null && dateMeans === null) {
      problems.push(warning(`alarms.${which}.dateMeans`, 'Say whether the date is when it was made or when to replace it.'));
    }
  }
  if (alarms.co.fitted === false && heat.heater !== 'none') {
    problems.push(warning('alarms.co.fitted', 'A heater and no carbon monoxide alarm: fit one before anyone sleeps in it.'));
  }
  if (heat.heater !== 'none' && heat.heater !== null && cylinders.length === 0) {
    problems.push(warning('cylinders.length', 'A heater and no gas cylinder: is there one in a locker?'));
  }
  return problems;
}

function pounds(kilograms: number): string {
  return `${Math.round(fromSI(kilograms, 'lb'))} lb`;
}

function validateWeights({ weights, axles }: Unit): readonly Problem[] {
  const { gvwrKg, gawrKg, emptyKg } = weights;
  const problems: Problem[] = [];
  if (gvwrKg !== null && emptyKg !== null && emptyKg > gvwrKg) {
    problems.push(
      error('weights.emptyKg', `Empty (${pounds(emptyKg)}) it cannot weigh more than it may weigh all told (${pounds(gvwrKg)}).`),
    );
  }
  // At most 15 % of a loaded trailer rests on the tongue; the axles have to carry the rest.
  if (gvwrKg !== null && gawrKg !== null && gawrKg * axles < gvwrKg * 0.85 - 1) {
    problems.push(
      warning(
        'weights.gawrKg',
        `Its axles carry ${pounds(gawrKg * axles)} together, too little for a unit of ${pounds(gvwrKg)}. Is the figure for one axle?`,
      ),
    );
  }
  return problems;
}
