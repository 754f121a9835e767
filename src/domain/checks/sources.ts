/** Where the checks of the catalogue come from. */
import type { Source } from './outcome.ts';

/** Trade knowledge that nobody has written down in a place that can be cited. */
export const COMMON_PRACTICE: Source = { kind: 'common-practice', text: 'common practice, no source' };
export const MAKERS_HANDBOOK: Source = { kind: 'maker', text: "maker's handbook for this unit" };

/** A rule or guide in print. `fromMemory` where its words were not read again for this project. */
export function published(text: string, fromMemory = false): Source {
  return { kind: 'published', text, ...(fromMemory ? { fromMemory } : {}) };
}

/**
 * The federal motor carrier rules bind commercial vehicles. For a private unit they are sound engineering guidance;
 * state law comes first.
 */
export const COUPLING = published('49 CFR 393.70 (commercial vehicles; guidance here)');
export const BREAKAWAY = published('49 CFR 393.43(d) (commercial vehicles; guidance here)');
export const TIRES = published('49 CFR 393.75 (commercial vehicles; guidance here)');
export const WHEELS = published('49 CFR 570.10 (vehicles in use)');
export const RIMS = published('49 CFR 393.205 (commercial vehicles; guidance here)', true);
export const LAMPS = published('49 CFR 571.108; 49 CFR 393.11', true);
export const FRAME = published('49 CFR 393.201 (commercial vehicles; guidance here)');
export const SUSPENSION = published('49 CFR 570.61 (vehicles in use)');
export const TIRE_CODE = published('49 CFR 574.5');
export const ROPE = published('29 CFR 1926.1413(a)(2) (cranes; guidance here)');
export const BLOCKING = published('29 CFR 1926.305(d)(1)', true);
export const DRIVER_SATISFIED = published('49 CFR 392.7 and 396.13 (commercial drivers; guidance here)');
export const DRIVER_MANUAL = published('commercial driver license manual, section 11 (walkaround of the towed unit)');
export const LOAD_SECURE = published('49 CFR 392.9 (commercial vehicles; guidance here)', true);
export const CARBON_MONOXIDE = published('UL 2034 (carbon monoxide alarms), test and response');
export const GAS_ALARM = published('UL 1484 (gas alarms)', true);
export const CYLINDERS = published('49 CFR 180.205 and 180.209', true);
export const ICE_GUIDE = published(
  'Minnesota natural-resources guidance for new clear ice, December 2024; local authority first',
);
