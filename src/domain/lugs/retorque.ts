/** When the lugs of a wheel are due again after it was mounted: at 10, 25 and 50 miles. Source: trailer and axle manuals. */
import type { Position } from '../checks/expects.ts';
import { LUGS } from '../judge/numbers/lugs.ts';
import { fromSI, UNITS } from '../quantity/units.ts';
import { numberInWords } from '../quantity/words.ts';
import type { UnitEvent } from '../round/entry.ts';

/** Distances after mounting, m. */
export const RETORQUE_M = [LUGS.retorqueFirst.si, LUGS.retorqueSecond.si, LUGS.retorqueThird.si] as const;

/** The lugs of a wheel were pulled with a wrench, and none of them moved. */
export interface LugCheck {
  readonly position: Position;
  readonly at: number;
  readonly odometerM: number | null;
}

export type Retorque =
  /** Never mounted as far as the record says, or done with. */
  | { readonly state: 'settled' }
  /** `inM`: metres to go until `markM` after mounting. */
  | { readonly state: 'coming'; readonly markM: number; readonly inM: number; readonly sentence: string }
  /** `byM`: metres past the mark. */
  | { readonly state: 'due'; readonly markM: number; readonly byM: number; readonly sentence: string }
  /** Mounted, but how far it went since is not known. */
  | { readonly state: 'unknown'; readonly sentence: string };

/**
 * Where a wheel stands. Pure function of the record.
 * @param events of this unit, in any order
 * @param checks lug checks of this unit, in any order
 * @param now with the odometer, where it is known
 */
export function retorqueOf(
  position: Position,
  events: readonly UnitEvent[],
  checks: readonly LugCheck[],
  now: { readonly at: number; readonly odometerM: number | null },
): Retorque {
  const mounted = lastMounting(position, events, now.at);
  if (mounted === null) return { state: 'settled' };
  const { at: mountedAt, odometerM: from } = mounted;
  const since = checks.filter((check) => check.position === position && check.at >= mountedAt && check.at <= now.at);
  // Where the distance is not known the first pull is taken for the one at mounting, and three more settle the wheel.
  const unmeasured = since.filter((check) => from === null || check.odometerM === null).length;
  const furthest = Math.max(
    0,
    ...since.flatMap((check) => (from === null || check.odometerM === null ? [] : [check.odometerM - from])),
  );
  const settledMarks = Math.max(RETORQUE_M.filter((mark) => furthest >= mark * (1 - 1e-9)).length, Math.max(0, unmeasured - 1));
  const markM = RETORQUE_M[settledMarks];
  if (markM === undefined) return { state: 'settled' };
  const where = position.replace('-', ' ');
  const miles = numberInWords(Math.round(fromSI(markM, 'mi')));
  if (from === null || now.odometerM === null || now.odometerM < from) {
    return {
      state: 'unknown',
      sentence: `The ${where} wheel was mounted and I do not know how far it went since. Pull its lugs at every stop until fifty miles.`,
    };
  }
  const gone = now.odometerM - from;
  if (gone >= markM * (1 - 1e-9)) {
    return {
      state: 'due',
      markM,
      byM: gone - markM,
      sentence: `The ${where} lugs are due: ${miles} miles have passed since that wheel was mounted.`,
    };
  }
  return {
    state: 'coming',
    markM,
    inM: markM - gone,
    sentence: `Pull the ${where} lugs again ${miles} miles after mounting.`,
  };
}

/** The last time that this wheel was off and put back; changing a tire takes the wheel off. */
function lastMounting(position: Position, events: readonly UnitEvent[], now: number) {
  let last: { readonly at: number; readonly odometerM: number | null } | null = null;
  for (const event of events) {
    if (event.kind !== 'wheel-mounted' && event.kind !== 'tire-changed') continue;
    if (event.position !== position || event.at > now || (last !== null && event.at < last.at)) continue;
    last = { at: event.at, odometerM: event.kind === 'wheel-mounted' ? event.odometerM : null };
  }
  return last;
}

/** Wheels whose lugs are not settled: they are carried into the next round. */
export function wheelsDue(
  positions: readonly Position[],
  events: readonly UnitEvent[],
  checks: readonly LugCheck[],
  now: { readonly at: number; readonly odometerM: number | null },
): readonly { readonly position: Position; readonly retorque: Exclude<Retorque, { state: 'settled' }> }[] {
  return positions.flatMap((position) => {
    const retorque = retorqueOf(position, events, checks, now);
    return retorque.state === 'settled' ? [] : [{ position, retorque }];
  });
}

/** The same for the ear: one sentence a wheel, or one for all of them where the distance is not known. */
export function dueSentences(wheels: ReturnType<typeof wheelsDue>): readonly string[] {
  const unknown = wheels.filter(({ retorque }) => retorque.state === 'unknown');
  const known = wheels.flatMap(({ retorque }) => (retorque.state === 'unknown' ? [] : [retorque.sentence]));
  if (unknown.length < 2) return [...known, ...unknown.map(({ retorque }) => retorque.sentence)];
  const names = unknown.map(({ position }) => position.replace('-', ' '));
  const list = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return [...known, `These wheels were off: ${list}. Pull their lugs at every stop until fifty miles.`];
}

/** Whether the yearly rhythm (three months or 3,000 miles) has come round. Nulls are not known and never count as due. */
export function isRoutineDue(sinceDays: number | null, sinceM: number | null): boolean {
  const days = LUGS.retorqueMonths.si / UNITS.day.factor;
  return (sinceDays !== null && sinceDays >= days) || (sinceM !== null && sinceM >= LUGS.retorqueMiles.si);
}
