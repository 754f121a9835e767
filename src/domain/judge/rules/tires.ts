/** Tire pressure, tread and age. */
import type { Position } from '../../checks/expects.ts';
import type { Limit } from '../../checks/outcome.ts';
import type { PlannedCheck } from '../../plan/plan.ts';
import { formatQuantity, formatRoughly, speakAgainst, speakQuantity } from '../../quantity/format.ts';
import { UNITS } from '../../quantity/units.ts';
import { heatWarning, stLoadAt } from '../../tires/capacity.ts';
import { coldEstimate, isCold } from '../../tires/cold.ts';
import { airPressureAt, gaugeIn } from '../../tires/gasLaw.ts';
import { wearLeft } from '../../tires/wear.ts';
import { readDotCode } from '../../unit/dotCode.ts';
import type { JudgeContext, Judgement } from '../judgement.ts';
import { AIR } from '../numbers/air.ts';
import { PLACARD_READ } from '../numbers/sources.ts';
import { TIRES } from '../numbers/tires.ts';
import { placardLimits } from '../specs.ts';
import {
  capital,
  crosses,
  good,
  judgement,
  numberParam,
  type Rule,
  unjudged,
  unknownFigure,
  worse,
  worstCrossed,
} from './rule.ts';

const NEVER_BLEED = 'Never let air out of a warm tire. Read it again cold.';
const ROUND_OFF = 1 + 1e-9;

export const judgeTirePressure: Rule = (check, answer, context) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no tire pressure.');
  const { si } = answer;
  const limits = limitsInForce(check, context);
  const own = alone(check, si, limits, context);
  return besideMate(check, si, own, context);
};

/** The plan's limits; where the profile had no placard, those of the placard that was read in this round. */
function limitsInForce(check: PlannedCheck, { answers }: JudgeContext): readonly Limit[] {
  const { limits, params } = check.judge;
  if (limits.some(({ id }) => id === 'target') || typeof params.placardKey !== 'string') return limits;
  const read = answers.get(params.placardKey)?.answer;
  if (read?.kind !== 'reading' || !(read.si > 0) || !Number.isFinite(read.si)) return limits;
  if (UNITS[read.said.unit]?.dimension !== 'pressure') return limits;
  return [...placardLimits(read.si, PLACARD_READ), ...limits];
}

const byId = (limits: readonly Limit[], id: string) => limits.find((limit) => limit.id === id) ?? null;

function alone(check: PlannedCheck, si: number, limits: readonly Limit[], context: JudgeContext): Judgement {
  const { display } = context;
  const target = byId(limits, 'target');
  const cap = byId(limits, 'cap');
  const facts = pressureFacts(check, si, target, context);
  const cold = isCold(context.hoursParked);
  const gauge = TIRES.gauge.si;
  if (si <= 0) {
    return judgement('hold', 'That tire is flat.', {
      todo: 'Do not fill one that was driven flat. Fit the spare.',
      limit: byId(limits, 'hold') ?? cap,
      facts,
    });
  }
  if (cap && si <= TIRES.flat.si * cap.si) {
    return judgement('hold', `${spoken(si, cap, context)} is half of what the tire is made for, or less: it is flat.`, {
      todo: 'Do not move it. Find the leak, or fit the spare.',
      limit: cap,
      facts,
    });
  }
  if (cap && si > cap.si + gauge) {
    const over = `${spoken(si, cap, context)} is over the sidewall maximum of ${speakQuantity(cap.si, 'psi', display)}`;
    return cold === false
      ? judgement('watch', `${over}, but the tire is warm.`, { todo: NEVER_BLEED, limit: cap, facts })
      : judgement(si > cap.si * (1 + TIRES.overCap.si) * ROUND_OFF ? 'hold' : 'fix', `${over}.`, {
          todo: cold ? 'Let air out, cold, down to the placard.' : 'Once it has stood three hours, let it down to the placard.',
          limit: cap,
          question: cold === null ? 'Have the tires stood for three hours?' : null,
          facts,
        });
  }
  if (!target) {
    if (!cap && si < TIRES.floor.si) {
      return judgement('hold', 'No road tire carries a load on so little air.', {
        todo: 'Find the placard, look for the leak, or fit the spare.',
        facts,
      });
    }
    return unknownFigure(
      'Kept, but the placard pressure of this unit is not known, so it cannot be called good.',
      cap
        ? 'The sidewall figure is a cap, not a target. Read the cold pressure on the tire label and put it in the profile.'
        : 'Read the cold pressure on the tire label and put it in the profile.',
      'the placard pressure',
      facts,
    );
  }
  const placard = `the placard's ${speakQuantity(target.si, 'psi', display)}`;
  const under = target.si - si;
  const floor = floorCrossed(si, limits);
  if (floor) {
    const margin = speakQuantity(TIRES.warmMargin.si, 'psi', display);
    const todo =
      cold === false
        ? `It is low although warm. Add air to ${margin} over the placard, and read it again cold.`
        : 'Add air before you tow, cold.';
    return judgement(floor.outcome, `${spoken(si, floor, context)} is ${difference(under, display)} under ${placard}.`, {
      todo: floor.outcome === 'hold' ? `Do not tow on it. ${todo}` : todo,
      limit: floor,
      facts,
    });
  }
  if (under >= gauge / ROUND_OFF) {
    return judgement('watch', `${spoken(si, target, context)} is ${difference(under, display)} under ${placard}.`, {
      todo: cold === false ? 'It is low although warm. Top it up, and read it again cold.' : 'Top it up, cold.',
      limit: target,
      facts,
    });
  }
  if (si > target.si * (1 + TIRES.high.si) * ROUND_OFF) {
    return judgement('watch', `${spoken(si, target, context)} is ${difference(-under, display)} over ${placard}.`, {
      todo: cold === true ? 'Let it down to the placard, cold.' : NEVER_BLEED,
      limit: target,
      facts,
    });
  }
  if (cold === false) {
    const estimate = coldEstimate(si, numberParam(check, 'maxLoadKg'));
    const most = speakQuantity(estimate, 'psi', display);
    return judgement('watch', `Warm from the road it reads high; cold it may be as little as ${most}.`, {
      todo: 'Let no air out. Read it again after three hours of standing.',
      limit: target,
      facts,
    });
  }
  if (cold === null) {
    return judgement('watch', 'At the placard, if the tires are cold.', {
      todo: 'If they were driven, read it again after three hours of standing.',
      limit: target,
      question: 'Have the tires stood for three hours?',
      facts,
    });
  }
  return judgement('ok', '', { limit: target, facts });
}

/** The floor that a pressure is under; the warning threshold counts at the figure itself (49 CFR 571.138 S4.2(a)). */
function floorCrossed(si: number, limits: readonly Limit[]): Limit | null {
  const hold = byId(limits, 'hold');
  if (hold && si <= hold.si * ROUND_OFF) return hold;
  const fix = byId(limits, 'fix');
  return fix && crosses(si, fix) ? fix : null;
}

/**
 * Against the other tire of the axle, when that was read in this round: one much lower than its mate, in the same cold, is
 * losing air even while it is above its own limit. Never makes a verdict better.
 */
function besideMate(check: PlannedCheck, si: number, own: Judgement, { answers, display }: JudgeContext): Judgement {
  const mate = mateOf(check.position);
  const other = mate === null ? undefined : answers.get(`${check.check}@${mate}`)?.answer;
  if (mate === null || other?.kind !== 'reading' || !(other.si > 0) || !Number.isFinite(other.si) || si >= other.si) return own;
  if (UNITS[other.said.unit]?.dimension !== 'pressure') return own;
  const share = (other.si - si) / other.si;
  if (share < TIRES.sideNote.si / ROUND_OFF) return own;
  const amount = speakAgainst(other.si - si, 0, 'psi', display);
  const facts = [
    ...own.facts,
    { label: `lower than ${mate.replace('-', ' ')} by`, text: formatQuantity(share, 'percent', display) },
  ];
  if (share < TIRES.sideSuspect.si / ROUND_OFF) return { ...own, facts };
  const outcome = worse(own.outcome, 'watch');
  const say = `It is ${amount} under its mate: look for a leak.`;
  return {
    ...own,
    outcome,
    say: `${own.say} ${say}`.trim(),
    todo: own.todo ?? 'Listen at valve and bead, and read it again tomorrow.',
    facts,
  };
}

/** The tire on the other end of the same axle. */
function mateOf(position: Position | null): Position | null {
  switch (position) {
    case 'left':
      return 'right';
    case 'right':
      return 'left';
    case 'left-front':
      return 'right-front';
    case 'right-front':
      return 'left-front';
    case 'left-middle':
      return 'right-middle';
    case 'right-middle':
      return 'left-middle';
    case 'left-rear':
      return 'right-rear';
    case 'right-rear':
      return 'left-rear';
    default:
      return null;
  }
}

const spoken = (si: number, limit: Limit, { display }: JudgeContext) =>
  capital(speakAgainst(si, limit.si, 'psi', display).replace(/ (pounds?|kilopascals?)$/, ''));
const difference = (pa: number, display: JudgeContext['display']) => speakAgainst(pa, 0, 'psi', display);

/** What else follows from the reading, for the round page. */
function pressureFacts(check: PlannedCheck, si: number, target: Limit | null, context: JudgeContext): Judgement['facts'] {
  const { outsideK, display } = context;
  const facts: { label: string; text: string }[] = [];
  const heightM = context.elevationM ?? numberParam(check, 'elevationM') ?? 0;
  if (outsideK !== null && outsideK > 150 && outsideK < 400 && heightM >= -500 && heightM <= 11_000) {
    const air = { temperatureK: outsideK, outsidePa: airPressureAt(heightM) };
    const at = { temperatureK: AIR.compareAt.si, outsidePa: air.outsidePa };
    facts.push({
      label: `the same air at ${formatQuantity(AIR.compareAt.si, 'F', display)}`,
      text: formatQuantity(Math.max(0, gaugeIn(si, air, at)), 'psi', display),
    });
    if (target) {
      facts.push({
        label: `set to the placard at ${formatQuantity(AIR.compareAt.si, 'F', display)}, it would read here`,
        text: formatQuantity(Math.max(0, gaugeIn(target.si, at, air)), 'psi', display),
      });
    }
  }
  const { size } = check.judge.params;
  const load = typeof size === 'string' && si > 0 ? stLoadAt(size, si) : null;
  if (load !== null) facts.push({ label: 'one tire carries at this pressure, about', text: formatRoughly(load, 'lb', display) });
  const heat = heatWarning(outsideK, null, display);
  if (heat !== null) facts.push({ label: 'in this heat', text: heat });
  return facts;
}

export const judgeTread: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no tread depth.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  const facts = [{ label: 'left above the legal minimum', text: formatQuantity(wearLeft(answer.si), '32nds', display) }];
  if (!crossed) return good(facts);
  const depth = capital(speakAgainst(answer.si, crossed.si, '32nds', display));
  const hold = crossed.outcome === 'hold';
  return judgement(
    crossed.outcome,
    hold ? `${depth} is under the legal minimum of ${speakQuantity(crossed.si, '32nds', display)}.` : `${depth}: getting thin.`,
    {
      todo: hold
        ? 'Do not tow on it. Replace the tire.'
        : crossed.outcome === 'fix'
          ? 'Replace it before the next trip.'
          : 'Plan its replacement.',
      limit: crossed,
      facts,
    },
  );
};

const YEAR_MS = 365.25 * 86_400_000;

export const judgeTireAge: Rule = (check, answer, { at }) => {
  if (answer.kind !== 'date' || answer.form !== 'dot-week') return unjudged('That is no tire date code.');
  const code = readDotCode(answer.value, at);
  if (!code.ok) {
    return judgement('fix', code.sentence, {
      todo: 'Read the code again; only one sidewall may carry it. If it reads the same, the tire is too old.',
      settled: false,
    });
  }
  const years = (at - code.startsAt) / YEAR_MS;
  const facts = [
    { label: 'age', text: `${years.toFixed(1)} years` },
    { label: 'made', text: `week ${code.week} of ${code.year}` },
  ];
  const passed = check.judge.limits.filter((limit) => years >= limit.si / UNITS.year.factor);
  const limit = passed.at(-1);
  if (!limit) return good(facts);
  return judgement(limit.outcome, `That tire is ${Math.floor(years)} years old.`, {
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
