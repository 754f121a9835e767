/** Every check there is. Order matters twice: within a station it is the order asked, and ties are broken by it. */
import { ALARM_CHECKS } from './catalogue/alarms.ts';
import { GAS_CHECKS } from './catalogue/gas.ts';
import { ICE_CHECKS } from './catalogue/ice.ts';
import { INSIDE_CHECKS } from './catalogue/inside.ts';
import { LEAVING_CHECKS } from './catalogue/leaving.ts';
import { LIFT_CHECKS } from './catalogue/lift.ts';
import { OUTSIDE_CHECKS } from './catalogue/outside.ts';
import { START_CHECKS } from './catalogue/start.ts';
import { TONGUE_CHECKS } from './catalogue/tongue.ts';
import { WHEEL_CHECKS } from './catalogue/wheels.ts';
import type { CheckDefinition } from './check.ts';

export const CATALOGUE: readonly CheckDefinition[] = [
  ...START_CHECKS,
  ...INSIDE_CHECKS,
  ...ALARM_CHECKS,
  ...ICE_CHECKS,
  ...TONGUE_CHECKS,
  ...LIFT_CHECKS,
  ...WHEEL_CHECKS,
  ...OUTSIDE_CHECKS,
  ...GAS_CHECKS,
  ...LEAVING_CHECKS,
];

const byId: ReadonlyMap<string, CheckDefinition> = new Map(CATALOGUE.map((definition) => [definition.id, definition]));

/** The definition with this id, or `undefined` where there is none. */
export function findCheck(id: string): CheckDefinition | undefined {
  return byId.get(id);
}
