/** Alarms by their date, and the number that a carbon monoxide alarm shows. */
import { alarmMinutes } from '../../heat/carbonMonoxide.ts';
import { monthAt, monthNumber, monthsIn, monthText, standingOf } from '../../heat/dates.ts';
import { roundedText } from '../../quantity/format.ts';
import { fromSI } from '../../quantity/units.ts';
import { ALARMS } from '../numbers/alarms.ts';
import { ALARM_LABEL } from '../numbers/sources.ts';
import { good, judgement, type Rule, unjudged, worstCrossed } from './rule.ts';

const REPLACE = 'Replace it before anyone sleeps there. Its test button proves the horn, not the sensor.';
const WHICH = 'Is it the date it was made, or the date to replace it by?';

export const judgeAlarmDate: Rule = (check, answer, { at }) => {
  const month = answer.kind === 'date' && answer.form === 'month-year' ? monthNumber(answer.value) : null;
  if (month === null) return unjudged('That is no month and year.');
  const now = monthAt(at);
  const { dateMeans, alarm } = check.judge.params;
  const [limit = null] = check.judge.limits;
  const isReplaceBy = dateMeans === 'replace-by' || (dateMeans !== 'made' && month > now);
  if (!isReplaceBy && month > now) {
    return unjudged('That date is still to come, so it was not made then. Is it the date to replace it by?');
  }
  if (month < now - MOST_MONTHS || month > now + MOST_MONTHS) return unjudged('No alarm carries that date. Read it again.');
  // Good through the month that is printed to replace it by.
  const end = isReplaceBy ? month + 1 : month + monthsIn(limit?.si ?? 0);
  const standing = standingOf(end, now, Math.round(ALARMS.soon.value));
  const facts = [{ label: isReplaceBy ? 'replace by' : 'reaches its age in', text: monthText(isReplaceBy ? month : end) }];
  const decided = isReplaceBy && limit ? { ...limit, source: ALARM_LABEL, label: 'date on its label' } : limit;
  if (standing === 'over') return judgement('fix', 'That alarm is past its time.', { todo: REPLACE, limit: decided, facts });
  if (dateMeans !== 'made' && dateMeans !== 'replace-by' && month <= now) {
    return judgement('watch', 'What that date means is not known.', {
      todo: 'Read the label again: made, or replace by?',
      question: WHICH,
      limit,
      facts,
    });
  }
  if (standing === 'soon') {
    return judgement('watch', 'That alarm is near its end.', { todo: 'Have a new one ready.', limit: decided, facts });
  }
  if (alarm === 'co' && !isReplaceBy && now - month >= ALARMS.coLifeShort.value * 12) {
    return judgement('watch', 'Some alarms end at five years.', {
      todo: 'Look on its label for how long it lasts.',
      limit,
      facts,
    });
  }
  return { ...good(facts), limit: decided };
};

/** A hundred years either way: anything further was misheard. */
const MOST_MONTHS = 1200;

export const judgeCarbonMonoxide: Rule = (check, answer) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no reading.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  const facts = silenceFacts(answer.si);
  if (!crossed) return good(facts);
  const ppm = `${roundedText(fromSI(answer.si, 'ppm'), 0)} parts per million`;
  const emergency = check.judge.limits.find(({ id }) => id === 'emergency');
  if (crossed.outcome === 'hold') {
    const isEmergency = emergency !== undefined && answer.si > emergency.si * (1 + 1e-9);
    return judgement('hold', `${ppm}. Everyone out, now.`, {
      todo: isEmergency
        ? 'Heater off if it is on your way. Call for help from outside. Nobody goes back in until it is found.'
        : 'Heater off, fresh air. Headache or dizziness: call for help. Nobody goes back in until it is found.',
      limit: isEmergency ? emergency : crossed,
      facts,
    });
  }
  return judgement(crossed.outcome, `${ppm} is too much to sleep in.`, {
    todo: 'Heater off, air it, find the cause: flue, vents, snow against the wall, exhaust.',
    limit: crossed,
    facts,
  });
};

/** Why a silent alarm proves little: the times that the standard gives it. */
function silenceFacts(share: number): { readonly label: string; readonly text: string }[] {
  const times = alarmMinutes(fromSI(share, 'ppm'));
  return [
    {
      label: 'an alarm must sound at this level',
      text: times === null ? 'never' : `after ${times.from} to ${times.to} minutes`,
    },
  ];
}
