/** Gas cylinders: what is left, whether it feeds in this cold, and their date. */
import { monthAt, monthNumber, monthsIn, monthText, requalifyMonth, type Suffix, standingOf } from '../../heat/dates.ts';
import { burnTime, feedsDownTo, fuelLeft, tankGauge } from '../../heat/propane.ts';
import { formatQuantity, roundedText, speakQuantity } from '../../quantity/format.ts';
import { airPressureAt } from '../../tires/gasLaw.ts';
import type { JudgeContext, Judgement } from '../judgement.ts';
import { HEAT } from '../numbers/heat.ts';
import { WEIGHT } from '../numbers/weight.ts';
import { good, judgement, limitOf, numberParam, type Rule, unjudged, unknownFigure, worse } from './rule.ts';

export const judgeCylinderWeight: Rule = (check, answer, context) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no weight.');
  const { display } = context;
  const tare = numberParam(check, 'tareKg');
  const capacity = numberParam(check, 'capacityKg');
  if (tare === null) {
    return unknownFigure(
      'Kept, but its tare is not known, so what is left cannot be said.',
      'Read the tare stamped on the collar, after T W.',
      'the tare of a cylinder',
    );
  }
  const left = fuelLeft(answer.si, tare, capacity);
  if (!left.ok) return unjudged(left.sentence);
  const input = numberParam(check, 'inputW');
  const facts = [
    { label: 'gas left', text: formatQuantity(left.fuelKg, 'lb', display) },
    { label: 'as a liquid', text: formatQuantity(left.fuelKg / WEIGHT.propane.si, 'gal', display) },
    ...(input !== null && input > 0
      ? [
          { label: 'at full flame', text: hours(burnTime(left.fuelKg, input)) },
          { label: 'on a cold night, about', text: hours(burnTime(left.fuelKg, input, HEAT.duty.si)) },
        ]
      : []),
    ...coldFacts(context),
  ];
  const low = limitOf(check, 'watch');
  const own =
    left.share !== null && left.share < HEAT.cylinderLow.si / (1 + 1e-9)
      ? judgement(
          'watch',
          left.fuelKg < EMPTY_KG
            ? 'It is empty.'
            : `${speakQuantity(left.fuelKg, 'lb', display)} of gas left, less than a quarter.`,
          {
            todo: 'Fill it or take another. Part empty and cold, it may starve the heater.',
            limit: low,
            facts,
          },
        )
      : good(facts);
  return feedsInCold(own, context);
};

/** Less than a scale shows. */
const EMPTY_KG = 0.1;

const hours = (seconds: number) => `${roundedText(seconds / 3600, seconds < 36_000 ? 1 : 0)} hours`;

/** Outside air that the tank stands in, as far as it is known and can be. */
function air({ outsideK, elevationM }: JudgeContext): { readonly outsideK: number; readonly pa: number } | null {
  if (outsideK === null || !(outsideK > 180 && outsideK < 335)) return null;
  const height = elevationM !== null && elevationM >= -500 && elevationM <= 11_000 ? elevationM : 0;
  return { outsideK, pa: airPressureAt(height) };
}

function coldFacts(context: JudgeContext): Judgement['facts'] {
  const here = air(context);
  if (!here) return [];
  const gauge = tankGauge(here.outsideK, here.pa);
  return [{ label: 'tank pressure in this cold, about', text: formatQuantity(Math.max(0, gauge), 'psi', context.display) }];
}

/** Near the temperature at which a full tank no longer feeds, weight says nothing. */
function feedsInCold(own: Judgement, context: JudgeContext): Judgement {
  const here = air(context);
  if (!here || here.outsideK > feedsDownTo(here.pa)) return own;
  return {
    ...own,
    outcome: worse(own.outcome, 'watch'),
    say: `${own.say} In this cold the tank gives hardly any gas, however full.`.trim(),
    todo: 'Keep it in the sun and out of the snow, never warm it with a flame, and have other heat ready.',
  };
}

export const judgeCylinderDate: Rule = (check, answer, { at }) => {
  const month = answer.kind === 'date' && answer.form === 'month-year' ? monthNumber(answer.value) : null;
  const now = monthAt(at);
  if (month === null || month > now) return unjudged('That is no date on a cylinder. Read the latest one again.');
  const { params } = check.judge;
  const [limit = null] = check.judge.limits;
  // A letter belongs to the date that it stands behind: another date read today has none that is known.
  const isStamped =
    params.stamped === null || params.stamped === undefined || params.stamped === (answer.kind === 'date' ? answer.value : '');
  const suffix: Suffix = isStamped && (params.suffix === 'E' || params.suffix === 'S') ? params.suffix : null;
  const due = isStamped && limit ? month + monthsIn(limit.si) : requalifyMonth(month, null);
  const standing = standingOf(due, now, Math.round(HEAT.requalifySoon.value));
  const facts = [{ label: 'due', text: monthText(due) }];
  if (standing === 'over') {
    return judgement('fix', 'Its test date has run out.', {
      todo: 'It may be used up, not filled again. Have it tested or exchange it.',
      limit,
      facts,
    });
  }
  if (standing === 'soon') {
    return judgement('watch', 'Its test date runs out within six months.', {
      todo: 'Exchange it, or have it tested, at the next filling.',
      limit,
      facts,
    });
  }
  if (suffix === null && now - month >= HEAT.requalifyE.value * 12) {
    return judgement('watch', 'That date is good only if no letter stands behind it.', {
      todo: 'Look for an E or an S behind the date; with one it is over. Put the letter in the profile.',
      limit,
      facts,
    });
  }
  return { ...good(facts), limit };
};
