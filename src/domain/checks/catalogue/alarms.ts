/** Alarms: the horn tested, the date on the back asked for where the profile does not settle it. */

import { alarmDateSpec, stateSpec } from '../../judge/specs.ts';
import type { Unit } from '../../unit/unit.ts';
import type { CheckDefinition } from '../check.ts';
import { date, defineCheck, state } from '../define.ts';
import { isAlarmDateSettled } from '../known.ts';
import type { Source } from '../outcome.ts';
import { BEFORE_TOWING } from '../rounds.ts';
import { CARBON_MONOXIDE, COMMON_PRACTICE, GAS_ALARM } from '../sources.ts';

type AlarmId = keyof Unit['alarms'];

interface AlarmWords {
  readonly id: AlarmId;
  readonly name: string;
  readonly names: readonly string[];
  readonly why: string;
  readonly source: Source;
}

const ALARMS: readonly AlarmWords[] = [
  {
    id: 'co',
    name: 'carbon monoxide alarm',
    names: ['carbon monoxide alarm', 'monoxide alarm', 'c o alarm', 'monoxide detector', 'carbon monoxide detector'],
    why: 'Carbon monoxide has no smell. The alarm is the only thing that notices in time.',
    source: CARBON_MONOXIDE,
  },
  {
    id: 'gas',
    name: 'gas alarm',
    names: ['gas alarm', 'propane alarm', 'gas detector', 'propane detector'],
    why: 'Leaked gas lies on the floor while you sleep.',
    source: GAS_ALARM,
  },
  {
    id: 'smoke',
    name: 'smoke alarm',
    names: ['smoke alarm', 'smoke detector', 'fire alarm'],
    why: 'In a small cabin you have a minute or two.',
    source: COMMON_PRACTICE,
  },
];

function alarmChecks({ id, name, names, why, source }: AlarmWords): readonly CheckDefinition[] {
  const fitted = ({ unit }: { readonly unit: Unit }) => unit.alarms[id].fitted !== false;
  return [
    defineCheck({
      id: `${id}-alarm`,
      rounds: BEFORE_TOWING,
      station: 'inside',
      applies: fitted,
      names,
      after: ['gas-smell'],
      expects: state(
        ['it sounds', 'loud', 'it beeps', 'beeped', 'horn works', 'it works', 'sounded', 'loud and clear', 'works'],
        [
          'no sound',
          'dead',
          'silent',
          'does not sound',
          'weak',
          'chirping',
          'no alarm',
          'missing',
          'no battery',
          'not there',
          'does not work',
        ],
      ),
      lines: {
        name,
        ask: `Press and hold the test button on the ${name}. Does it sound loud?`,
        askTerse: `${name.charAt(0).toUpperCase()}${name.slice(1)} sounds?`,
        hint: 'Say "it sounds", or "no sound".',
        why,
        mend: 'New battery, or a new alarm. No heater and no sleeping inside until it sounds.',
        caution: null,
      },
      judge: stateSpec('fix'),
      takes: 20,
      worst: 'fix',
      sources: [source],
    }),
    defineCheck({
      id: `${id}-alarm-date`,
      rounds: BEFORE_TOWING,
      station: 'inside',
      applies: (scope) => fitted(scope) && !isAlarmDateSettled(scope.unit, id, scope.at),
      names: [`${name} date`, `date on the ${name}`],
      after: [`${id}-alarm`],
      expects: (scope) =>
        // They last five to ten years. Common practice, no source.
        date(
          'month-year',
          scope.unit.alarms[id].dateMeans === 'replace-by' ? { back: 5, ahead: 11 } : { back: 14, ahead: 0 },
          scope,
        ),
      lines: {
        name: `date on the ${name}`,
        ask: ({ unit }) =>
          unit.alarms[id].dateMeans === 'replace-by'
            ? `Turn the ${name} over. What month and year is it to be replaced by?`
            : `Turn the ${name} over. What month and year was it made?`,
        askTerse: `${name.charAt(0).toUpperCase()}${name.slice(1)} date?`,
        hint: 'Say the month and the year, like "March twenty twenty-four".',
        why: 'The sensor wears out with the years while the test button still works.',
        mend: 'Replace it by the date on its label, and put the new date in the profile.',
        caution: null,
      },
      judge: ({ unit }) => {
        const spec = alarmDateSpec(unit, id);
        // What is asked decides what the answer means.
        return { ...spec, params: { ...spec.params, dateMeans: unit.alarms[id].dateMeans ?? 'made' } };
      },
      takes: 25,
      worst: 'fix',
      sources: [source, COMMON_PRACTICE],
    }),
  ];
}

export const ALARM_CHECKS: readonly CheckDefinition[] = ALARMS.flatMap(alarmChecks);
