/** Lift cable: broken wires and sideways give. */
import { sidesDiffer, tensionEstimate } from '../../lift/cableTension.ts';
import { layLength, removalReasons } from '../../lift/ropeRemoval.ts';
import { formatQuantity, formatRoughly, speakAgainst } from '../../quantity/format.ts';
import { UNITS } from '../../quantity/units.ts';
import type { Judgement } from '../judgement.ts';
import { good, judgement, numberParam, type Rule, unjudged, worse, worstCrossed } from './rule.ts';

export const judgeBrokenWires: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'count' || !(answer.count >= 0)) return unjudged('That is no number of wires.');
  const diameter = numberParam(check, 'diameterM');
  const facts: Judgement['facts'] =
    diameter !== null && diameter > 0
      ? [{ label: 'one turn of a strand is about', text: formatQuantity(layLength(diameter), 'in', display) }]
      : [];
  const crossed = worstCrossed(answer.count, check.judge.limits);
  if (!crossed) return good(facts);
  const wires = answer.count === 1 ? 'One broken wire' : `${answer.count} broken wires`;
  return crossed.outcome === 'hold'
    ? judgement('hold', `${wires}. ${brokenReasons(answer.count)}`.trim(), {
        todo: 'Do not lift or tow with it. Replace the cable.',
        limit: crossed,
        facts,
      })
    : judgement('fix', `${wires}.`, {
        todo: 'Replace the cable before the next trip, and look at what wore it.',
        limit: crossed,
        facts,
      });
};

/** They were counted in the worst place and may all be in one strand. */
const brokenReasons = (count: number) =>
  removalReasons({
    brokenPerLay: count,
    brokenInStrand: null,
    brokenPerEight: null,
    construction: null,
    nominalM: null,
    measuredM: null,
    outerWireWorn: null,
    kinked: false,
    corroded: false,
  }).join(' ');

export const judgeCablePush: Rule = (check, answer, { answers, display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no distance.');
  const { si } = answer;
  const facts: { label: string; text: string }[] = [];
  const span = numberParam(check, 'spanM');
  const force = numberParam(check, 'forceN');
  const tension = span === null || force === null ? null : tensionEstimate(si, span, force);
  if (tension) {
    const roughly = (n: number) => (Number.isFinite(n) ? formatRoughly(n, 'lbf', display) : 'much more');
    facts.push({
      label: 'cable tension while pushed, about',
      text: `${roughly(tension.likelyN)} (${roughly(tension.lowN)} to ${roughly(tension.highN)})`,
    });
  }
  const side = check.position === 'left' ? 'right' : check.position === 'right' ? 'left' : null;
  const other = side === null ? undefined : answers.get(`${check.check}@${side}`)?.answer;
  const uneven =
    other?.kind === 'reading' &&
    UNITS[other.said.unit]?.dimension === 'length' &&
    other.si >= 0 &&
    Number.isFinite(other.si) &&
    sidesDiffer(si, other.si);
  if (side !== null && other?.kind === 'reading' && uneven) {
    facts.push({ label: `the ${side} cable gives`, text: formatQuantity(other.si, 'in', display) });
  }
  const crossed = worstCrossed(si, check.judge.limits);
  const isTighter = uneven && other?.kind === 'reading' && si < other.si;
  if (!crossed) {
    return isTighter
      ? judgement('watch', 'It gives half as far as the other side, or less.', {
          todo: 'Look at pulleys, wraps and pins on this side.',
          facts,
        })
      : good(facts);
  }
  const give = speakAgainst(si, crossed.si, 'in', display);
  if (crossed.outcome === 'hold') {
    return judgement(
      'hold',
      si === 0
        ? 'It does not give at all: the house hangs on its cable.'
        : `It gives only ${give}: the house hangs on its cable.`,
      {
        todo: 'Do not tow. Set the pins, let the cable out until it is slack, and try again. Nobody under it while you do.',
        limit: crossed,
        facts,
      },
    );
  }
  return judgement(worse(crossed.outcome, 'watch'), `It gives ${give}: not much.`, {
    todo: 'Let it out a little more, and compare both sides.',
    limit: crossed,
    facts,
  });
};
