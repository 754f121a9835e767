/**
 * Which parts a unit has, as far as its profile says. A part that may be there counts as there: a check too many is
 * answered in a word, a check too few is never noticed.
 */
import type { Unit } from '../unit/unit.ts';
import type { CheckScope } from './check.ts';

type Scope = Pick<CheckScope, 'unit'>;

export const hasHeater = ({ unit }: Scope) => unit.heat.heater !== 'none';
/** A third inside temperature can be read without going in, so that it can be told where the heater ends. */
export const canForecast = ({ unit }: Scope) => hasHeater({ unit }) && unit.heat.readFromOutside === true;
export const hasCylinders = ({ unit }: Scope) => unit.cylinders.length > 0;
/** Anything on board that can leak or burn gas. */
export const hasGas = ({ unit }: Scope) => unit.cylinders.length > 0;
export const hasBattery = ({ unit }: Scope) => unit.battery.kind !== 'none';
export const hasLift = ({ unit }: Scope) => unit.lift.kind !== 'none';
export const hasCableWinch = ({ unit }: Scope) => isCableLift(unit);
export const hasHydraulics = ({ unit }: Scope) => unit.lift.kind === 'hydraulic';
export const hasElectricBrakes = ({ unit }: Scope) => unit.brakes === 'electric' || unit.brakes === null;
export const hasBreakaway = ({ unit }: Scope) => unit.tongue.breakaway !== false;
export const hasPins = ({ unit }: Scope) => hasLift({ unit }) && unit.lift.pinsPerSide !== 0;

/** One cable serves both sides and is looked at on the left; with two or more each side has its own. */
export const hasCableHere = ({ unit, position }: Pick<CheckScope, 'unit' | 'position'>) =>
  unit.lift.cables >= 2 || (unit.lift.cables === 1 && position === 'left');

export const hasPulleysHere = (scope: Pick<CheckScope, 'unit' | 'position'>) =>
  hasCableHere(scope) && scope.unit.lift.pulleys !== 'none';

function isCableLift(unit: Unit): boolean {
  return unit.lift.cables > 0 && (unit.lift.kind === 'hand-crank-cable' || unit.lift.kind === 'electric-winch-cable');
}

/** What the person calls the heater. */
export function heaterName({ unit }: Scope): string {
  return unit.heat.heater === 'furnace' ? 'furnace' : 'heater';
}
