/** House battery and breakaway battery at rest. */
import { type Chemistry, chargeAtRest, freezesAt, hoursLeft, type NightLoad, usableAh } from '../../battery/charge.ts';
import { formatQuantity, roundedText, speakAgainst, speakQuantity } from '../../quantity/format.ts';
import type { JudgeContext, Judgement } from '../judgement.ts';
import { BATTERY } from '../numbers/battery.ts';
import { HEAT } from '../numbers/heat.ts';
import { good, judgement, numberParam, type Rule, unjudged, unknownFigure, worse, worstCrossed } from './rule.ts';

/** Outside temperatures on Earth, K: anything else was misheard and is not used. */
const isAir = (kelvin: number | null): kelvin is number => kelvin !== null && kelvin > 180 && kelvin < 335;

function chemistryOf(kind: unknown): Chemistry | null {
  return kind === 'flooded' || kind === 'agm' || kind === 'lifepo4' ? kind : null;
}

/** A voltage that no resting 12 volt battery has; null for one that it may. @param dead what a dead one comes to */
function notAtRest(volts: number, chargingFrom: number, dead: 'fix' | 'hold'): Judgement | null {
  if (volts > BATTERY.highest.si) return unjudged('That is not a twelve volt battery at rest. Look at the meter again.');
  if (volts < BATTERY.lowest.si) {
    return judgement(dead, 'It is dead, or the meter does not touch it.', {
      todo: 'Look at clamps and fuse, and read it again. If it stays, replace it.',
    });
  }
  if (volts > chargingFrom * (1 + 1e-9)) {
    return judgement('watch', 'A charger is on it, or was until just now, so this is not a rest voltage.', {
      todo: 'Take the charger off and read it again after a few hours.',
      settled: false,
    });
  }
  return null;
}

export const judgeBattery: Rule = (check, answer, context) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no voltage.');
  const volts = answer.si;
  const kind = chemistryOf(check.judge.params.kind);
  const odd = notAtRest(
    volts,
    kind === 'flooded' || kind === 'agm' ? BATTERY.leadCharging.si : BATTERY.lithiumCharging.si,
    'fix',
  );
  if (odd) return odd;
  if (kind === null) {
    const missing = unknownFigure(
      'Kept, but the kind of battery is not known, so it cannot be called good.',
      'Put the kind of battery in the profile.',
      'the kind of battery',
    );
    return volts < BATTERY.unknownFix.si
      ? {
          ...missing,
          outcome: 'fix',
          say: 'Low, whatever kind of battery it is.',
          todo: 'Charge it before the trip; never a frozen one.',
        }
      : missing;
  }
  const charge = chargeAtRest(kind, volts);
  const facts = batteryFacts(kind, charge, numberParam(check, 'capacityAh'), context);
  const own = byVoltage(check, volts, kind, facts, context);
  return mayFreeze(own, kind, charge, context);
};

function byVoltage(
  check: Parameters<Rule>[0],
  volts: number,
  kind: Chemistry,
  facts: Judgement['facts'],
  { outsideK, display }: JudgeContext,
): Judgement {
  const crossed = worstCrossed(volts, check.judge.limits);
  if (!crossed) return good(facts);
  const said = speakAgainst(volts, crossed.si, 'V', display);
  const isCold = isAir(outsideK) && outsideK < BATTERY.lithiumChargeFrom.si;
  const todo =
    kind === 'lifepo4'
      ? isCold
        ? 'Warm it above freezing first, then charge it. Charging lithium in frost ruins it.'
        : 'Charge it, above freezing only.'
      : crossed.outcome === 'fix'
        ? 'Charge it before the trip; never a frozen one.'
        : 'Charge it soon.';
  return judgement(crossed.outcome, `${said}: ${crossed.outcome === 'watch' ? 'not full' : 'low'}.`, {
    todo,
    limit: crossed,
    facts,
  });
}

/** A lead battery whose acid freezes in this cold bursts; that comes before how full it is. */
function mayFreeze(own: Judgement, kind: Chemistry, charge: number, { outsideK, display }: JudgeContext): Judgement {
  if (kind === 'lifepo4' || !isAir(outsideK)) return own;
  const freezesK = freezesAt(charge);
  if (outsideK > freezesK) return own;
  return {
    ...own,
    outcome: worse(own.outcome, 'fix'),
    say: `${own.say} At this charge it freezes near ${speakQuantity(freezesK, 'F', display)}.`.trim(),
    todo: 'Take it in and charge it once it is warm. Never charge a frozen battery.',
  };
}

function batteryFacts(kind: Chemistry, charge: number, capacityAh: number | null, { outsideK, display }: JudgeContext) {
  // To the nearest tenth: tables differ by more than that.
  const tenths = Math.round(charge * 10) * 10;
  const facts = [
    {
      label: 'charge, about',
      text: kind === 'lifepo4' ? `${tenths} % (voltage is a poor gauge for lithium)` : `${tenths} %`,
    },
  ];
  if (kind !== 'lifepo4') facts.push({ label: 'freezes near', text: formatQuantity(freezesAt(charge), 'F', display) });
  else if (isAir(outsideK) && outsideK < BATTERY.lithiumChargeFrom.si) {
    facts.push({ label: 'charging', text: 'not below freezing' });
  }
  if (capacityAh !== null && capacityAh > 0) {
    const load: NightLoad = { fanA: BATTERY.fan.value, duty: HEAT.duty.si, standbyA: BATTERY.standby.value };
    const ah = usableAh(kind, capacityAh, charge, isAir(outsideK) ? outsideK : HEAT.wanted.si);
    const hours = hoursLeft(ah, load);
    const night = hours >= BATTERY.night.value ? 'a night' : 'less than a night';
    facts.push({ label: 'runs a furnace fan for about', text: `${roundedText(hours, 0)} h, ${night}` });
  }
  return facts;
}

export const judgeBreakaway: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no voltage.');
  const odd = notAtRest(answer.si, BATTERY.leadCharging.si, 'hold');
  if (odd) return odd;
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return good();
  const said = speakAgainst(answer.si, crossed.si, 'V', display);
  return crossed.outcome === 'hold'
    ? judgement('hold', `${said}: too low to hold the brakes for fifteen minutes.`, {
        todo: 'Do not tow on it. Charge or replace it.',
        limit: crossed,
      })
    : judgement(crossed.outcome, `${said}: not full.`, {
        todo: 'Charge it. If it will not hold a charge, replace it.',
        limit: crossed,
      });
};
