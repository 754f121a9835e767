/** What comes due: alarms, cylinders and tires by their dates, lugs after a wheel was on, care by use, and where a trend leads. */
import { inForce } from '../history/inForce.ts';
import { LUGS } from '../judge/numbers/lugs.ts';
import { routineDueAt } from '../lugs/retorque.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { TrendStatement } from '../trend/statement.ts';
import type { UnitData } from '../trend/trendsFor.ts';
import { capitalized, positionWords } from '../trend/wording.ts';
import type { Unit } from '../unit/unit.ts';
import { careOf } from './careReminders.ts';
import type { Reminder } from './icalendar.ts';

const DAY_MS = 86_400_000;

/** Years from the date of making, the earlier figure where makers differ; the label on the back comes first (from memory). */
const ALARM_YEARS = { co: 5, gas: 5, smoke: 10 } as const;
const ALARM_NAMES = { co: 'Carbon monoxide alarm', gas: 'Gas alarm', smoke: 'Smoke alarm' } as const;
/** 49 CFR 180.209: no letter 12 years, E 5 years; S is 7 or 10 depending on the edition: the earlier one. */
const CYLINDER_YEARS = { none: 12, E: 5, S: 7 } as const;
/** Some vehicle makers: six years whatever the tread (NHTSA TireWise, from memory). */
const TIRE_YEARS = 6;

/**
 * Reminders of one unit, earliest first; only what is known, nothing assumed. Past dates are kept: they are overdue.
 * @param trends statements of this unit
 */
export function remindersFor(unit: Unit, data: UnitData, trends: readonly TrendStatement[]): Reminder[] {
  const reminders = [
    ...alarms(unit),
    ...cylinders(unit),
    ...tires(unit),
    ...lugs(unit, data),
    ...routineLugs(unit, data),
    ...careOf(unit, data).map((care) => reminder(unit, care.what, care.due, `${unit.name}: ${care.summary}`, care.description)),
    ...forecasts(unit, trends),
  ];
  return reminders.sort((a, b) => a.due - b.due || (a.uid < b.uid ? -1 : 1));
}

function alarms(unit: Unit): Reminder[] {
  return (['co', 'gas', 'smoke'] as const).flatMap((kind) => {
    const { date, dateMeans } = unit.alarms[kind];
    const years = dateMeans === 'made' ? ALARM_YEARS[kind] : 0;
    const due = dateMeans === null ? null : monthStart(date, years);
    if (due === null) return [];
    return [
      reminder(
        unit,
        `alarm-${kind}`,
        due,
        `${unit.name}: replace the ${ALARM_NAMES[kind].toLowerCase()}`,
        `${ALARM_NAMES[kind]}: the date on its back says so. The label wins over any rule of thumb.`,
      ),
    ];
  });
}

function cylinders(unit: Unit): Reminder[] {
  return unit.cylinders.flatMap((cylinder, index) => {
    const due = monthStart(cylinder.date, CYLINDER_YEARS[cylinder.dateSuffix ?? 'none']);
    if (due === null) return [];
    return [
      reminder(
        unit,
        `cylinder-${index}`,
        due,
        `${unit.name}: gas cylinder ${index + 1} needs requalification`,
        'It may not be filled after this month until it is requalified (49 CFR 180.209, check the current edition).',
      ),
    ];
  });
}

function tires(unit: Unit): Reminder[] {
  return Object.entries(unit.wheels.dotCodes).flatMap(([position, code]) => {
    const made = code === undefined ? null : weekStart(code);
    if (made === null) return [];
    const due = addYears(made, TIRE_YEARS);
    const where = position.replace('-', ' ');
    return [
      reminder(
        unit,
        `tire-${position}`,
        due,
        `${unit.name}: ${where} tire is six years old`,
        'Some makers advise to replace a tire at six years whatever its tread. No federal limit; have it looked at.',
      ),
    ];
  });
}

/** A wheel that was on: pull the lugs again, until a round has done so. */
function lugs(unit: Unit, data: UnitData): Reminder[] {
  const events = data.events.filter((event) => event.unit === unit.id);
  return events.flatMap((event) => {
    if (event.kind !== 'wheel-mounted' && event.kind !== 'tire-changed') return [];
    if (pulledSince(unit, data, event.position, event.at)) return [];
    const where = positionWords(event.position);
    return [
      reminder(
        unit,
        `lugs-${event.id}`,
        event.at + DAY_MS,
        `${unit.name}: pull the ${where} lugs again`,
        `${capitalized(where)} wheel was on. Pull the lugs again after ten, twenty-five and fifty miles (common practice).`,
      ),
    ];
  });
}

/** The yearly rhythm, from the last time that every lug of a wheel was pulled. */
function routineLugs(unit: Unit, data: UnitData): Reminder[] {
  let last = -1;
  for (const { round, entries } of data.rounds) {
    if (round.unit !== unit.id) continue;
    const answers = inForce(entries);
    for (const check of round.plan.checks) {
      const entry = check.judge.rule === 'lugs-moved' ? answers.get(check.key) : undefined;
      if (entry?.kind === 'answered') last = Math.max(last, entry.at);
    }
  }
  if (last < 0) return [];
  return [
    reminder(
      unit,
      'routine-torque',
      routineDueAt(last),
      `${unit.name}: pull all lugs again`,
      `${LUGS.retorqueMonths.label} three months or ${formatQuantity(LUGS.retorqueMiles.si, 'mi', 'us')}, whichever comes first (${LUGS.retorqueMonths.source.text}).`,
    ),
  ];
}

function pulledSince(unit: Unit, data: UnitData, position: string, at: number): boolean {
  return data.rounds.some(({ round, entries }) => {
    if (round.unit !== unit.id || (entries.at(-1)?.at ?? 0) <= at) return false;
    const answers = inForce(entries);
    return round.plan.checks.some((check) => {
      const entry = check.judge.rule === 'lugs-moved' && check.position === position ? answers.get(check.key) : undefined;
      return entry?.kind === 'answered' && entry.at > at;
    });
  });
}

/** At the early end of the forecast: a reminder after the fact is none. */
function forecasts(unit: Unit, trends: readonly TrendStatement[]): Reminder[] {
  return trends.flatMap((trend) => {
    if (trend.forecast === null || trend.unitId !== unit.id) return [];
    const due = Math.max(trend.forecast.earliest, trend.at);
    return [reminder(unit, `trend-${trend.key}`, due, `${unit.name}: ${trend.name} nears its limit`, trend.text)];
  });
}

function reminder(unit: Unit, what: string, due: number, summary: string, description: string): Reminder {
  const demo = unit.demo ? 'Demo data. ' : '';
  return { uid: `${unit.id}-${what}`, due, summary, description: `${demo}${description}` };
}

/** First day of `YYYY-MM`, so many years on; null for anything else. */
function monthStart(month: string | null, years: number): number | null {
  const match = /^(\d{4})-(\d{2})$/.exec(month ?? '');
  if (!match || Number(match[2]) < 1 || Number(match[2]) > 12) return null;
  return Date.UTC(Number(match[1]) + years, Number(match[2]) - 1, 1);
}

/** Monday of the week stamped WWYY, of this century (49 CFR 574.5); null where there is no such week. */
function weekStart(code: string): number | null {
  const match = /^(\d{2})(\d{2})$/.exec(code);
  const week = Number(match?.[1]);
  if (!match || week < 1 || week > 53) return null;
  const fourth = Date.UTC(2000 + Number(match[2]), 0, 4);
  const monday = fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * DAY_MS;
  return monday + (week - 1) * 7 * DAY_MS;
}

function addYears(at: number, years: number): number {
  const date = new Date(at);
  return Date.UTC(date.getUTCFullYear() + years, date.getUTCMonth(), date.getUTCDate());
}
