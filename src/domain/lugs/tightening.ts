/** The order and the stages in which lugs are tightened, and the wrench for it. */
import { LUGS, STAGE_ROWS, STAR_ORDERS, TYPICAL_TORQUE_ROWS } from '../judge/numbers/lugs.ts';
import { fromSI, toSI } from '../quantity/units.ts';
import { numberInWords } from '../quantity/words.ts';
import type { LugCount, StudSize } from '../unit/unit.ts';

/** Lugs in the order of tightening, numbered from 1 clockwise from the valve stem. Common practice; the manual comes first. */
export function starOrder(lugs: LugCount): readonly number[] {
  return STAR_ORDERS[lugs];
}

/** "Clockwise from the valve: one, three, five, two, four." */
export function starOrderSentence(lugs: LugCount): string {
  return `Clockwise from the valve: ${starOrder(lugs)
    .map((lug) => numberInWords(lug))
    .join(', ')}.`;
}

export interface Stage {
  readonly lowNm: number;
  readonly highNm: number;
}

/**
 * Passes over the whole star, first to last; the last is the full torque. Source: trailer owner's manuals.
 * @param fullNm torque figure, N m, > 0
 * @returns empty for a figure that is not one; a pass that would be above the full torque is left out
 */
export function stages(fullNm: number): readonly Stage[] {
  if (!(fullNm > 0) || !Number.isFinite(fullNm)) return [];
  const rows = fullNm < LUGS.stageSplit.si ? STAGE_ROWS.small : STAGE_ROWS.large;
  const early = rows.map(([low, high]) => ({ lowNm: toSI(low, 'lb-ft'), highNm: toSI(high, 'lb-ft') }));
  return [...early.filter(({ highNm }) => highNm < fullNm), { lowNm: fullNm, highNm: fullNm }];
}

/** "All of them to twenty to twenty-five foot-pounds, then fifty to sixty, then one hundred. Never finish with an air gun." */
export function stagesSentence(fullNm: number, display: 'us' | 'metric'): string {
  const unit = display === 'metric' ? 'N-m' : 'lb-ft';
  const all = stages(fullNm);
  if (all.length === 0) return 'Look up the torque of this unit first.';
  const nearest = (nm: number, step: number) => numberInWords(Math.round(fromSI(nm, unit) / step) * step);
  const step = display === 'metric' ? 5 : 1;
  const said = all.map(({ lowNm, highNm }) =>
    lowNm === highNm ? nearest(lowNm, 1) : `${nearest(lowNm, step)} to ${nearest(highNm, step)}`,
  );
  const noun = display === 'metric' ? 'newton-meters' : 'foot-pounds';
  return `All of them to ${said.join(', then ')} ${noun}. Never finish with an air gun.`;
}

/**
 * Whether a click wrench suits a torque: from a fifth of its range up. Source: ISO 6789-1 (from memory).
 * @param highestNm end of its scale, N m, > 0
 */
export function isWrenchSuited(torqueNm: number, highestNm: number): boolean {
  return torqueNm > 0 && highestNm > 0 && torqueNm <= highestNm && torqueNm >= LUGS.wrenchLowest.si * highestNm * (1 - 1e-9);
}

/** Usual torque of a stud, N m, where its maker's figure is not known: a hint only. Null for a stud without one. */
export function typicalTorque(stud: StudSize): Stage | null {
  const row = TYPICAL_TORQUE_ROWS.find((candidate) => candidate.stud === stud);
  return row ? { lowNm: toSI(row.low, 'lb-ft'), highNm: toSI(row.high, 'lb-ft') } : null;
}

export const THREAD_CAUTION = 'Studs clean and dry. Oil or anti-seize makes the same torque stretch them by a third or more.';
