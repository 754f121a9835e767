/** The heater test: inside temperature when lit and some minutes later. */
import { heaterReport } from '../../heat/heaterReport.ts';
import { formatQuantity, speakAgainst } from '../../quantity/format.ts';
import { UNITS } from '../../quantity/units.ts';
import { HEAT } from '../numbers/heat.ts';
import { judgement, numberParam, type Rule, unjudged, worstCrossed } from './rule.ts';

export const judgeFurnace: Rule = (check, answer, { answers, at, display }) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no temperature.');
  const { startKey } = check.judge.params;
  const start = typeof startKey === 'string' ? answers.get(startKey) : undefined;
  if (
    start?.answer.kind !== 'reading' ||
    !(start.answer.si > 0) ||
    !Number.isFinite(start.answer.si) ||
    UNITS[start.answer.said.unit]?.dimension !== 'temperature'
  ) {
    return judgement('watch', 'Kept, but the temperature at the start is missing, so the heater is not proven.', {
      todo: 'Read the inside temperature before it is lit, and again ten minutes later.',
    });
  }
  const rise = answer.si - start.answer.si;
  const ran = (at - start.at) / 60_000;
  const planned = numberParam(check, 'minutes') ?? HEAT.riseMinutes.value;
  if (!(ran >= planned * 0.5)) {
    return judgement('watch', 'Too early to prove the heater.', { todo: 'Read it again when the time is up.' });
  }
  const minutes = Math.round(ran);
  const facts = [
    { label: 'rise', text: `${formatQuantity(rise, 'F-diff', display)} in ${minutes} minutes` },
    { label: 'that is, in an hour', text: formatQuantity((rise * 60) / ran, 'F-diff', display) },
  ];
  // A longer wait proves less: the limits stand for the planned time.
  const perTest = ran > planned ? (rise * planned) / ran : rise;
  const crossed = worstCrossed(perTest, check.judge.limits);
  if (!crossed) return judgement('ok', '', { facts });
  // A cabin that is warm already has a thermostat that has done its work.
  if (answer.si >= HEAT.warmEnough.si && rise >= 0) return judgement('ok', 'Warm already.', { facts });
  const warmed = rise <= 0 ? 'It is no warmer' : `It rose only ${speakAgainst(rise, crossed.si, 'F-diff', display)}`;
  return judgement(crossed.outcome, `${warmed} in ${minutes} minutes.`, {
    todo:
      crossed.outcome === 'fix'
        ? 'Do not count on it tonight. Have the heater looked at before you stay.'
        : 'Compare it with the next test. Look at gas, battery and burner.',
    limit: crossed,
    facts,
  });
};

/** The same test with a third reading: where it ends, and whether that holds tonight. */
export const judgeFurnaceHolds: Rule = (check, answer, { answers, at, outsideK, display }) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no temperature.');
  const temperatureAt = (name: string) => {
    const key = check.judge.params[name];
    const found = typeof key === 'string' ? answers.get(key) : undefined;
    if (found?.answer.kind !== 'reading' || UNITS[found.answer.said.unit]?.dimension !== 'temperature') return null;
    return { at: found.at, kelvin: found.answer.si };
  };
  const start = temperatureAt('startKey');
  const after = temperatureAt('afterKey');
  if (!start || !after) {
    return judgement('watch', 'Kept, but the earlier temperatures are missing, so it can not be told where it ends.', {
      todo: 'Read the inside temperature when it is lit, and again after ten and twenty minutes.',
    });
  }
  const report = heaterReport({
    readings: [start, after, { at, kelvin: answer.si }].map((one) => ({
      s: (one.at - start.at) / 1000,
      temperatureK: one.kelvin,
    })),
    outsideK,
    tonightK: temperatureAt('tonightKey')?.kelvin ?? null,
    earlierK: [],
    display,
  });
  const say = report.sentences.join(' ');
  if (report.holds === 'yes') return judgement('ok', say, { facts: report.facts });
  if (report.holds === null) {
    return judgement('watch', say === '' ? 'Whether it holds tonight can not be told without the forecast.' : say, {
      todo: 'Ask for the low of tonight, and read the air outside.',
      facts: report.facts,
    });
  }
  return judgement('watch', say, { todo: 'Have more heat ready, or stay where there is some.', facts: report.facts });
};
