/** Lugs that moved before the click. */

import { clampEstimate } from '../../lugs/clampLoad.ts';
import { stagesSentence, starOrderSentence, THREAD_CAUTION, typicalTorque } from '../../lugs/tightening.ts';
import type { PlannedCheck } from '../../plan/plan.ts';
import { formatQuantity, formatRoughly, speakQuantity } from '../../quantity/format.ts';
import { toSI } from '../../quantity/units.ts';
import type { LugCount, StudSize } from '../../unit/unit.ts';
import type { JudgeContext, Judgement } from '../judgement.ts';
import { good, judgement, limitOf, numberParam, type Rule, unjudged, unknownFigure, worstCrossed } from './rule.ts';

const STUD_M: Readonly<Record<StudSize, number>> = {
  '1/2': toSI(0.5, 'in'),
  '9/16': toSI(9 / 16, 'in'),
  '5/8': toSI(5 / 8, 'in'),
  M12: 0.012,
  M14: 0.014,
};

export const judgeLugs: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'count' || !(answer.count >= 0)) return unjudged('That is no number of lugs.');
  const lugs = numberParam(check, 'lugs');
  if (lugs !== null && answer.count > lugs) return unjudged(`A wheel of this unit has ${lugs} lugs.`);
  const torque = numberParam(check, 'torqueNm');
  const facts = torqueFacts(check, torque, display);
  const counts = check.judge.limits.filter(({ unit }) => unit === 'count');
  const crossed = worstCrossed(answer.count, counts);
  if (!crossed) {
    return torque !== null
      ? { ...good(facts), limit: limitOf(check, 'torque') }
      : unknownFigure(
          'None moved, but the torque figure of this unit is not known.',
          `Put the maker's torque in the profile. ${usually(check, display)}`.trim(),
          'the lug torque',
          facts,
        );
  }
  const mounted = check.judge.params.mounted === true;
  if (crossed.outcome !== 'hold') {
    return judgement(
      'watch',
      answer.count === 1 ? 'One lug was below its torque.' : `${answer.count} lugs were below their torque.`,
      {
        todo: mounted
          ? 'A wheel just put on settles. Pull them all again after ten miles.'
          : 'Pull that wheel again after ten miles, and after twenty-five. If the same one moves, take the wheel off and look.',
        limit: crossed,
        facts,
      },
    );
  }
  const many = answer.count === lugs ? 'All of them were' : `${answer.count} lugs were`;
  return judgement('hold', `${many} below torque.`, {
    todo: `Do not tow yet. Block the frame, take the wheel off, look at seats, holes and studs, and torque it again in stages. ${howTightened(lugs, torque, display)} ${THREAD_CAUTION}`,
    limit: crossed,
    facts,
  });
};

/** Star and stages of this wheel, as far as its figures are known. */
function howTightened(lugs: number | null, torque: number | null, display: JudgeContext['display']): string {
  const count = LUG_COUNTS.find((one) => one === lugs);
  const star = count === undefined ? 'Across the wheel, in a star.' : starOrderSentence(count);
  return torque === null ? star : `${star} ${stagesSentence(torque, display)}`;
}

const LUG_COUNTS: readonly LugCount[] = [4, 5, 6, 8];

function torqueFacts(check: PlannedCheck, torque: number | null, display: JudgeContext['display']): Judgement['facts'] {
  if (torque === null || !(torque > 0)) return [];
  const facts = [{ label: 'torque', text: formatQuantity(torque, 'lb-ft', display) }];
  const diameter = diameterOf(check);
  if (diameter === null) return facts;
  const { lowN, likelyN, highN } = clampEstimate(torque, diameter);
  const [low, likely, high] = [lowN, likelyN, highN].map((force) => formatRoughly(force, 'lbf', display));
  return [...facts, { label: 'each stud clamps with about', text: `${likely} (${low} to ${high}, clean and dry)` }];
}

const isStud = (value: unknown): value is StudSize => typeof value === 'string' && Object.hasOwn(STUD_M, value);

function diameterOf({ judge: { params } }: PlannedCheck): number | null {
  return isStud(params.stud) ? STUD_M[params.stud] : null;
}

/** A hint while the figure is looked up, never a verdict. */
function usually({ judge: { params } }: PlannedCheck, display: JudgeContext['display']): string {
  const typical = isStud(params.stud) ? typicalTorque(params.stud) : null;
  if (typical === null) return '';
  const low = speakQuantity(typical.lowNm, 'lb-ft', display).replace(/ \D+$/, '');
  return `Studs like these usually take ${low} to ${speakQuantity(typical.highNm, 'lb-ft', display)}, by common practice only.`;
}
