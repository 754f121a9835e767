/** Tire pressure, tread and age. */
import type { Limit } from '../checks/outcome.ts';
import { outsideAirPressure, pressureAtTemperature, REFERENCE_K } from '../history/normalize.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import { formatQuantity, speakAgainst, speakQuantity } from '../quantity/format.ts';
import { readDotCode } from '../unit/dotCode.ts';
import type { JudgeContext, Judgement } from './judgement.ts';
import { COLD_AFTER } from './numbers.ts';
import { crosses, good, judgement, limitOf, type Rule, unjudged, worstCrossed } from './rules.ts';

/** Half of the sidewall maximum or less is flat: out-of-service criterion of commercial enforcement, from memory. */
const FLAT_SHARE = 0.5;
/** Over the placard by more than this is worth a word even below the sidewall maximum: common practice, no source. */
const OVER_SHARE = 1.1;
/** A gauge read to half a pound: below the placard by less than this is at the placard. */
const GAUGE_STEP_PA = 0.5 * 6894.757293168361;

export const judgeTirePressure: Rule = (check, answer, context) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no tire pressure.');
  const { si } = answer;
  const { sidewallMaxPa } = check.judge.params;
  const target = limitOf(check, 'target');
  const cap = limitOf(check, 'cap');
  const { display } = context;
  const facts = pressureFacts(si, context);
  if (typeof sidewallMaxPa === 'number' && si <= FLAT_SHARE * sidewallMaxPa) {
    return judgement('hold', 'That tire is flat.', {
      todo: 'Do not move it. Find the leak, or fit the spare.',
      limit: cap,
      facts,
    });
  }
  const warm = context.hoursParked !== null && context.hoursParked < COLD_AFTER.value;
  if (cap && si > cap.si + GAUGE_STEP_PA) {
    return warm
      ? judgement('watch', 'Over the sidewall maximum, but the tire is warm.', {
          todo: 'Never let air out of a warm tire. Read it again cold.',
          limit: cap,
          facts,
        })
      : judgement('fix', `Over the sidewall maximum of ${speakQuantity(cap.si, 'psi', display)}.`, {
          todo: 'Let air out, cold, down to the placard.',
          limit: cap,
          facts,
        });
  }
  if (!target) {
    return judgement('watch', 'Kept, but the placard pressure of this unit is not known, so it cannot be called good.', {
      todo: 'Read the cold pressure on the tire label and put it in the profile.',
      facts,
    });
  }
  const crossed = floorCrossed(check, si);
  const under = target.si - si;
  if (crossed) {
    const todo = warm
      ? 'It is low although warm. Add air now, and read it again cold.'
      : 'Add air to the placard, cold, before you tow.';
    return judgement(
      crossed.outcome,
      `${speakUnder(under, display)} under the placard's ${speakQuantity(target.si, 'psi', display)}.`,
      {
        todo: crossed.outcome === 'hold' ? `Do not tow on it. ${todo}` : todo,
        limit: crossed,
        facts,
      },
    );
  }
  if (under >= GAUGE_STEP_PA * (1 - 1e-9)) {
    return judgement('watch', `${speakUnder(under, display)} under the placard.`, {
      todo: 'Top it up, cold.',
      limit: target,
      facts,
    });
  }
  if (si > target.si * OVER_SHARE) {
    return judgement('watch', `${speakUnder(-under, display)} over the placard.`, {
      todo: warm ? 'Never let air out of a warm tire. Read it again cold.' : 'Let it down to the placard, cold.',
      limit: target,
      facts,
    });
  }
  if (warm) {
    return judgement('watch', 'Good, but the tire is warm, so the cold pressure is lower than this.', {
      todo: 'Read it again after three hours of standing.',
      limit: target,
      facts,
    });
  }
  if (context.hoursParked === null) {
    return judgement('watch', 'At the placard, if the tires are cold.', {
      todo: 'If they were driven, read it again after three hours of standing.',
      limit: target,
      question: 'Have the tires stood for three hours?',
      facts,
    });
  }
  return judgement('ok', '', { limit: target, facts });
};

/** The floor that a pressure is under; the warning threshold counts at the figure itself (49 CFR 571.138 S4.2(a)). */
function floorCrossed(check: PlannedCheck, si: number): Limit | null {
  const hold = limitOf(check, 'hold');
  if (hold && si <= hold.si * (1 + 1e-9)) return hold;
  const fix = limitOf(check, 'fix');
  return fix && crosses(si, fix) ? fix : null;
}

const speakUnder = (pa: number, display: JudgeContext['display']) => capital(speakAgainst(pa, 0, 'psi', display));
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What the same air would read at the reference temperature, for comparing rounds. */
function pressureFacts(si: number, { outsideK, elevationM, display }: JudgeContext): Judgement['facts'] {
  if (outsideK === null || !(outsideK > 0)) return [];
  const at = pressureAtTemperature(si, outsideK, REFERENCE_K, outsideAirPressure(elevationM));
  return [
    {
      label: `the same air at ${formatQuantity(REFERENCE_K, 'F', display)}`,
      text: formatQuantity(Math.max(0, at), 'psi', display),
    },
  ];
}

export const judgeTread: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no tread depth.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return good();
  const depth = capital(speakAgainst(answer.si, crossed.si, '32nds', display));
  const hold = crossed.outcome === 'hold';
  return judgement(
    crossed.outcome,
    hold ? `${depth} is under the legal minimum of ${speakQuantity(crossed.si, '32nds', display)}.` : `${depth}: getting thin.`,
    {
      todo: hold
        ? 'Do not tow on it. Replace the tire.'
        : crossed.outcome === 'fix'
          ? 'Replace it before the next long trip.'
          : 'Plan its replacement.',
      limit: crossed,
    },
  );
};

const YEAR_MS = 365.25 * 86_400_000;

export const judgeTireAge: Rule = (check, answer, { at }) => {
  if (answer.kind !== 'date' || answer.form !== 'dot-week') return unjudged('That is no tire date code.');
  const code = readDotCode(answer.value, at);
  if (!code.ok) return judgement('fix', code.sentence, { todo: 'Read the code again on the other sidewall.' });
  const years = (at - code.startsAt) / YEAR_MS;
  const facts = [{ label: 'age', text: `${years.toFixed(1)} years` }];
  const passed = check.judge.limits.filter((limit) => years >= limit.si / YEAR_S);
  const limit = passed.at(-1);
  if (!limit) return good(facts);
  const age = `${Math.floor(years)} years old`;
  return judgement(limit.outcome, `That tire is ${age}.`, {
    todo:
      limit.outcome === 'hold'
        ? 'Do not tow on it. Replace it.'
        : limit.outcome === 'fix'
          ? 'Replace it, whatever its tread.'
          : 'Look closely for cracks each time.',
    limit,
    facts,
  });
};

const YEAR_S = 86_400 * 365.2425;
