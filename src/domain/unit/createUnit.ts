/** New profiles. Ids and times come in: this layer has neither a clock nor randomness. */
import type { UnitTemplate } from './templates.ts';
import { UNIT_SCHEMA, type Unit } from './unit.ts';

export interface UnitIdentity {
  readonly id: string;
  readonly name: string;
  /** Epoch milliseconds. */
  readonly at: number;
}

/**
 * A new unit from a template.
 * @throws RangeError when the id or the name is empty, or the time is not finite.
 */
export function createUnit(template: UnitTemplate, { id, name, at }: UnitIdentity): Unit {
  requireIdentity({ id, name, at });
  return {
    schema: UNIT_SCHEMA,
    id,
    name: name.trim(),
    archived: false,
    demo: false,
    createdAt: at,
    updatedAt: at,
    revision: 1,
    ...template.body,
  };
}

/**
 * A copy under a new name, for the second unit of the same build. What belongs to one unit alone (VIN, tire date
 * codes, cylinder and alarm dates) is not carried over: it would be wrong on the copy and look right.
 * @throws RangeError as {@link createUnit}.
 */
export function duplicateUnit(unit: Unit, { id, name, at }: UnitIdentity): Unit {
  requireIdentity({ id, name, at });
  const undated = { date: null, dateMeans: null };
  return {
    ...unit,
    id,
    name: name.trim(),
    vin: null,
    archived: false,
    demo: false,
    createdAt: at,
    updatedAt: at,
    revision: 1,
    wheels: { ...unit.wheels, dotCodes: {} },
    cylinders: unit.cylinders.map((cylinder) => ({ ...cylinder, date: null, dateSuffix: null })),
    alarms: {
      co: { ...unit.alarms.co, ...undated },
      gas: { ...unit.alarms.gas, ...undated },
      smoke: { ...unit.alarms.smoke, ...undated },
    },
  };
}

/**
 * The unit with a change saved: revision and time move on together.
 * @throws RangeError when the time is not finite.
 */
export function touchUnit(unit: Unit, at: number): Unit {
  if (!Number.isFinite(at)) throw new RangeError('touchUnit requires a finite time');
  return { ...unit, updatedAt: at, revision: unit.revision + 1 };
}

/**
 * The unit put away or taken out again. Its rounds stay where they are.
 * @throws RangeError when the time is not finite.
 */
export function setArchived(unit: Unit, archived: boolean, at: number): Unit {
  return { ...touchUnit(unit, at), archived };
}

function requireIdentity({ id, name, at }: UnitIdentity): void {
  if (id === '') throw new RangeError('a unit requires an id');
  if (name.trim() === '') throw new RangeError('a unit requires a name');
  if (!Number.isFinite(at)) throw new RangeError('a unit requires a finite time');
}
