/**
 * Every figure and table behind a judgement, by topic: what the page "where our numbers come from" lists. The rules, the
 * limits frozen into plans and the physics take their constants from the very same entries.
 */
import { AIR } from './numbers/air.ts';
import { ALARM_TABLES, ALARMS } from './numbers/alarms.ts';
import { BATTERY, BATTERY_TABLES } from './numbers/battery.ts';
import { COLD, COLD_TABLES, ICE } from './numbers/cold.ts';
import type { NumberEntry, Topic } from './numbers/entry.ts';
import { HEAT, HEAT_TABLES } from './numbers/heat.ts';
import { LIFT, LIFT_TABLES } from './numbers/lift.ts';
import { LUG_TABLES, LUGS } from './numbers/lugs.ts';
import { TIRE_TABLES, TIRES } from './numbers/tires.ts';
import { WEIGHT } from './numbers/weight.ts';

/** Ages at which a tire is worth a word, by what they come to. */
export const TIRE_YEARS = { watch: TIRES.ageWatch, fix: TIRES.ageFix, hold: TIRES.ageHold } as const;

/** How long a cylinder's date is good for, by the letter behind it. */
export const CYLINDER_YEARS = { none: HEAT.requalifyNone, external: HEAT.requalifyE, proof: HEAT.requalifyS } as const;

/** From the date of manufacture; the label on the alarm comes first. */
export const ALARM_YEARS = { co: ALARMS.coLife, gas: ALARMS.gasLife, smoke: ALARMS.smokeLife } as const;

export interface TopicNumbers {
  readonly topic: Topic;
  readonly entries: readonly NumberEntry[];
}

export const NUMBER_TOPICS: readonly TopicNumbers[] = [
  { topic: 'tires', entries: [...Object.values(TIRES), ...Object.values(TIRE_TABLES)] },
  { topic: 'lugs', entries: [...Object.values(LUGS), ...Object.values(LUG_TABLES)] },
  { topic: 'lift', entries: [...Object.values(LIFT), ...Object.values(LIFT_TABLES)] },
  { topic: 'towing weight', entries: Object.values(WEIGHT) },
  { topic: 'heat and gas', entries: [...Object.values(HEAT), ...Object.values(HEAT_TABLES)] },
  { topic: 'alarms', entries: [...Object.values(ALARMS), ...Object.values(ALARM_TABLES)] },
  { topic: 'battery', entries: [...Object.values(BATTERY), ...Object.values(BATTERY_TABLES)] },
  { topic: 'cold', entries: [...Object.values(COLD), ...Object.values(COLD_TABLES)] },
  { topic: 'ice', entries: Object.values(ICE) },
  { topic: 'air', entries: Object.values(AIR) },
];
