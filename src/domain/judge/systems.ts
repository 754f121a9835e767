/** Lugs, cable, batteries, heater, gas and alarms. */
import { formatQuantity, roundedText, speakAgainst, speakQuantity } from '../quantity/format.ts';
import { fromSI, toSI } from '../quantity/units.ts';
import type { Answer } from '../round/entry.ts';
import { BATTERY_PLAUSIBLE, PROPANE_BTU_PER_LB } from './numbers.ts';
import { good, judgement, type Rule, unjudged, worstCrossed } from './rules.ts';

export const judgeLugs: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'count' || !(answer.count >= 0)) return unjudged('That is no number of lugs.');
  const { lugs, torqueNm } = check.judge.params;
  if (typeof lugs === 'number' && answer.count > lugs) return unjudged(`A wheel of this unit has ${lugs} lugs.`);
  const crossed = worstCrossed(answer.count, check.judge.limits);
  if (!crossed) {
    return typeof torqueNm === 'number'
      ? good([{ label: 'torque', text: formatQuantity(torqueNm, 'lb-ft', display) }])
      : judgement('watch', 'None moved, but the torque figure of this unit is not known.', {
          todo: "Put the maker's torque in the profile.",
        });
  }
  if (answer.count === 1) {
    return judgement('watch', 'One was below its torque.', {
      todo: 'Check that wheel again after ten miles, and after twenty-five.',
      limit: crossed,
    });
  }
  const many = answer.count === lugs ? 'All of them were' : `${answer.count} were`;
  return judgement(crossed.outcome, `${many} below torque.`, {
    todo: 'Do not tow yet. Take the wheel off, look at seats, holes and studs, and torque it again in stages.',
    limit: crossed,
  });
};

export const judgeBrokenWires: Rule = (check, answer) => {
  if (answer.kind !== 'count' || !(answer.count >= 0)) return unjudged('That is no number of wires.');
  const crossed = worstCrossed(answer.count, check.judge.limits);
  if (!crossed) return good();
  const wires = answer.count === 1 ? 'One broken wire' : `${answer.count} broken wires`;
  return crossed.outcome === 'hold'
    ? judgement('hold', `${wires}: the cable is done.`, {
        todo: 'Do not lift or tow with it. Replace the cable.',
        limit: crossed,
      })
    : judgement('fix', `${wires}.`, {
        todo: 'Replace the cable before the next trip, and look at what wore it.',
        limit: crossed,
      });
};

export const judgeCablePush: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no distance.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return good();
  const give = speakAgainst(answer.si, crossed.si, 'in', display);
  return crossed.outcome === 'hold'
    ? judgement('hold', `It gives only ${give}: the house hangs on its cable.`, {
        todo: 'Do not tow. Set the pins, let the cable out until it is slack, and try again.',
        limit: crossed,
      })
    : judgement('watch', `It gives ${give}: not much.`, {
        todo: 'Let it out a little more, and compare both sides.',
        limit: crossed,
      });
};

export const judgeBattery: Rule = (check, answer) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no voltage.');
  const volts = answer.si;
  const { low, high, charging } = BATTERY_PLAUSIBLE;
  if (volts < low.value || volts > high.value)
    return unjudged('That is not a twelve volt battery at rest. Look at the meter again.');
  const { kind } = check.judge.params;
  if (volts >= charging.value) {
    return judgement('watch', 'A charger seems to be on, so this is not a rest voltage.', {
      todo: 'Read it again hours after charging.',
    });
  }
  if (check.judge.limits.length === 0) {
    return judgement('watch', 'Kept, but the kind of battery is not known, so it cannot be called good.', {
      todo: 'Put the kind of battery in the profile.',
    });
  }
  const crossed = worstCrossed(volts, check.judge.limits);
  if (!crossed) {
    return kind === 'lifepo4' ? good([{ label: 'note', text: 'the voltage of a lithium battery is no level gauge' }]) : good();
  }
  const said = `${roundedText(volts, 2)} volts`;
  return judgement(
    crossed.outcome,
    `${said}: ${crossed.outcome === 'watch' ? 'not full' : crossed.outcome === 'fix' ? 'low' : 'flat'}.`,
    {
      todo:
        crossed.outcome === 'hold'
          ? 'Do not tow on it. Charge or replace it.'
          : kind === 'lifepo4'
            ? 'Charge it, above freezing only.'
            : 'Charge it before the trip; never a frozen one.',
      limit: crossed,
    },
  );
};

export const judgeFurnace: Rule = (check, answer, { answers, at, display }) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no temperature.');
  const { startKey, minutes } = check.judge.params;
  const start = typeof startKey === 'string' ? answers.get(startKey) : undefined;
  if (start?.answer.kind !== 'reading') {
    return judgement('watch', 'Kept, but the temperature at the start is missing, so the heater is not proven.', {
      todo: 'Read the inside temperature before it is lit, and again ten minutes later.',
    });
  }
  const rise = answer.si - start.answer.si;
  const ran = (at - start.at) / 60_000;
  const planned = typeof minutes === 'number' ? minutes : 10;
  const facts = [{ label: 'rise', text: `${formatQuantity(rise, 'F-diff', display)} in ${Math.round(ran)} minutes` }];
  if (ran < planned * 0.5) {
    return judgement('watch', 'Too early to prove the heater.', { todo: 'Read it again when the time is up.', facts });
  }
  // A longer wait proves less: the limits stand for the planned time.
  const perTest = ran > planned ? (rise * planned) / ran : rise;
  const crossed = worstCrossed(perTest, check.judge.limits);
  if (!crossed) return judgement('ok', '', { facts });
  const warmed = rise <= 0 ? 'It is no warmer' : `It rose only ${speakAgainst(rise, crossed.si, 'F-diff', display)}`;
  return judgement(crossed.outcome, `${warmed} in ${Math.round(ran)} minutes.`, {
    todo:
      crossed.outcome === 'fix'
        ? 'Do not count on it tonight. Have the heater looked at before you stay.'
        : 'Compare it with the next test.',
    limit: crossed,
    facts,
  });
};

export const judgeCylinderWeight: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si > 0)) return unjudged('That is no weight.');
  const { tareKg, capacityKg, inputW } = check.judge.params;
  if (typeof tareKg !== 'number') {
    return judgement('watch', 'Kept, but its tare is not known, so what is left cannot be said.', {
      todo: 'Read the tare stamped on the collar, after T W.',
    });
  }
  const fuel = answer.si - tareKg;
  const slack = toSI(1, 'lb');
  if (fuel < -slack || (typeof capacityKg === 'number' && fuel > capacityKg + slack)) {
    return unjudged('That cannot be, with the tare in the profile. Weigh it again.');
  }
  const left = Math.max(0, fuel);
  const hours =
    typeof inputW === 'number' && inputW > 0
      ? (fromSI(left, 'lb') * toSI(PROPANE_BTU_PER_LB.value, 'BTU')) / inputW / 3600
      : null;
  const facts = [
    { label: 'gas left', text: formatQuantity(left, 'lb', display) },
    ...(hours === null ? [] : [{ label: 'at full flame', text: `${roundedText(hours, 1)} hours` }]),
  ];
  const share = typeof capacityKg === 'number' && capacityKg > 0 ? left / capacityKg : null;
  if (share !== null && share < 0.25) {
    return judgement('watch', `${speakQuantity(left, 'lb', display)} of gas left, less than a quarter.`, {
      todo: 'Fill it or take another. Part empty and cold, it may starve the heater.',
      facts,
    });
  }
  return good(facts);
};

const MONTH_MS = 30.436875 * 86_400_000;

/** Whole months between a stamped month and now; negative for one still to come. Null for what is no month. */
function monthsSince(answer: Answer, at: number): number | null {
  if (answer.kind !== 'date' || answer.form !== 'month-year') return null;
  const match = /^(\d{4})-(\d{2})$/.exec(answer.value);
  const month = Number(match?.[2]);
  if (!match || month < 1 || month > 12) return null;
  const now = new Date(at);
  return (now.getUTCFullYear() - Number(match[1])) * 12 + now.getUTCMonth() + 1 - month;
}

export const judgeCylinderDate: Rule = (check, answer, { at }) => {
  const months = monthsSince(answer, at);
  if (months === null || months < 0) return unjudged('That is no date on a cylinder. Read the latest one again.');
  const [limit] = check.judge.limits;
  if (!limit || months * (MONTH_MS / 1000) < limit.si - 15 * 86_400) return good();
  return judgement('fix', 'Its test date has run out.', {
    todo: 'It may be used up, not filled again. Have it tested or exchange it.',
    limit,
  });
};

export const judgeAlarmDate: Rule = (check, answer, { at }) => {
  const months = monthsSince(answer, at);
  if (months === null) return unjudged('That is no month and year.');
  const { dateMeans } = check.judge.params;
  const [limit] = check.judge.limits;
  const replaceBy = dateMeans === 'replace-by' || (dateMeans === null && months < 0);
  const over = replaceBy ? months > 0 : months > 0 && limit !== undefined && months * (MONTH_MS / 1000) >= limit.si;
  if (!replaceBy && months < 0)
    return unjudged('That date is still to come, so it was not made then. Is it the date to replace it by?');
  if (!over && dateMeans === null && months > 0) {
    return judgement('watch', 'What that date means is not known.', {
      todo: 'Read the label again: made, or replace by?',
      question: 'Is it the date it was made, or the date to replace it by?',
      limit: limit ?? null,
    });
  }
  if (!over) return good();
  return judgement('fix', 'That alarm is past its time.', {
    todo: 'Replace it before anyone sleeps there. Its test button proves the horn, not the sensor.',
    limit: limit ?? null,
  });
};

export const judgeCarbonMonoxide: Rule = (check, answer) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no reading.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return good();
  const ppm = `${roundedText(fromSI(answer.si, 'ppm'), 0)} parts per million`;
  if (crossed.outcome === 'hold') {
    return judgement('hold', `${ppm}. Everyone out, now.`, {
      todo: 'Heater off, fresh air, call for help if anyone feels ill. Nobody goes back in until it is found.',
      limit: crossed,
    });
  }
  return crossed.outcome === 'fix'
    ? judgement('fix', `${ppm} is too much to stay in.`, {
        todo: 'Heater off, everyone out, air it, and find the cause. Do not sleep there.',
        limit: crossed,
      })
    : judgement('watch', `${ppm}.`, { todo: 'Air it and look for the cause.', limit: crossed });
};

export const judgeIce: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no thickness.');
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return judgement('ok', 'No ice is ever certain. The local authority comes first.');
  return judgement(
    'hold',
    `${speakAgainst(answer.si, crossed.si, 'in', display)} is less than the ${speakQuantity(crossed.si, 'in', display)} named for a truck with a house.`,
    {
      todo: 'Ask the local authority before anything heavy goes on it.',
      limit: crossed,
    },
  );
};
