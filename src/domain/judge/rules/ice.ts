/** Ice under the way out. Never called safe. */
import { speakAgainst, speakQuantity } from '../../quantity/format.ts';
import { ICE } from '../numbers/cold.ts';
import { judgement, type Rule, unjudged, worstCrossed } from './rule.ts';

export const judgeIce: Rule = (check, answer, { display }) => {
  if (answer.kind !== 'reading' || !(answer.si >= 0)) return unjudged('That is no thickness.');
  const [limit = null] = check.judge.limits;
  const crossed = worstCrossed(answer.si, check.judge.limits);
  if (!crossed) return judgement('ok', 'No ice is ever certain. The local authority comes first.', { limit });
  const inches = speakAgainst(answer.si, crossed.si, 'in', display);
  const truckAlone =
    answer.si < ICE.truck.si / (1 + 1e-9)
      ? ` It is less than the ${speakQuantity(ICE.truck.si, 'in', display)} for a truck alone.`
      : '';
  return judgement(
    'hold',
    `${inches} is less than the ${speakQuantity(crossed.si, 'in', display)} named for a truck with a house.${truckAlone}`,
    { todo: 'Leave it where it is. Ask whoever looks after this lake before anything heavy goes on it.', limit: crossed },
  );
};

/** White ice counts half. @param clearM @param whiteM thicknesses, m, >= 0 */
export function clearIceEquivalent(clearM: number, whiteM: number): number {
  return clearM + whiteM * ICE.whiteCounts.si;
}
