/** When the lugs of a wheel are due again after it was mounted: at 10, 25 and 50 miles. Source: trailer and axle manuals. */
import type { Mounted } from '../checks/check.ts';
import type { Position } from '../checks/expects.ts';
import { LUGS } from '../judge/numbers/lugs.ts';
import { fromSI } from '../quantity/units.ts';
import { numberInWords } from '../quantity/words.ts';
import type { UnitEvent } from '../round/entry.ts';

/** Distances after mounting, m. */
export const RETORQUE_M = [LUGS.retorqueFirst.si, LUGS.retorqueSecond.si, LUGS.retorqueThird.si] as const;

/** The lugs of a wheel were pulled with a wrench, and none of them moved. */
export interface LugCheck {
  readonly position: Position;
  readonly at: number;
  /** How far the wheel had gone since it was mounted, m; null where nobody said. */
  readonly goneM: number | null;
}

export type Retorque =
  /** Never mounted as far as the record says, or done with. */
  | { readonly state: 'settled' }
  /** `inM`: metres to go until `markM` after mounting. */
  | { readonly state: 'coming'; readonly markM: number; readonly inM: number; readonly sentence: string }
  /** `byM`: metres past the mark. */
  | { readonly state: 'due'; readonly markM: number; readonly byM: number; readonly sentence: string }
  /** Mounted, but how far it has gone by now is not known. */
  | { readonly state: 'unknown'; readonly sentence: string };

/**
 * Where a wheel stands. Pure function of the record.
 * @param events of this unit, in any order
 * @param checks lug checks of this unit, in any order
 * @param now with how far the wheel has gone since it was mounted, m, where that is known
 */
export function retorqueOf(
  position: Position,
  events: readonly UnitEvent[],
  checks: readonly LugCheck[],
  now: { readonly at: number; readonly goneM: number | null },
): Retorque {
  const mounted = lastMounting(position, events, now.at);
  if (mounted === null) return { state: 'settled' };
  const since = checks.filter((check) => check.position === position && check.at >= mounted.at && check.at <= now.at);
  // Where the distance is not known the first pull is taken for the one at mounting, and three more settle the wheel.
  const unmeasured = since.filter((check) => check.goneM === null).length;
  const furthest = pulledFrom(since);
  const settledMarks = Math.max(RETORQUE_M.filter((mark) => furthest >= mark * (1 - 1e-9)).length, Math.max(0, unmeasured - 1));
  const markM = RETORQUE_M[settledMarks];
  if (markM === undefined) return { state: 'settled' };
  const where = position.replace('-', ' ');
  const miles = numberInWords(milesOf(markM));
  const gone = now.goneM;
  if (gone === null) {
    return {
      state: 'unknown',
      sentence:
        furthest > 0
          ? `The ${where} lugs held at ${inMiles(furthest)} after that wheel was mounted. They are due again at ${miles}.`
          : `The ${where} wheel was mounted and I do not know how far it went since. Pull its lugs at every stop until fifty miles.`,
    };
  }
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

const milesOf = (metres: number) => Math.round(fromSI(metres, 'mi'));

/** "one mile", "twelve miles". */
const inMiles = (metres: number) => `${numberInWords(milesOf(metres))} ${milesOf(metres) === 1 ? 'mile' : 'miles'}`;

/** The furthest pull in which none moved, m after mounting; 0 where no distance is known. */
const pulledFrom = (checks: readonly LugCheck[]) => Math.max(0, ...checks.map(({ goneM }) => goneM ?? 0));

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

/** A wheel whose lugs are not settled. */
export interface UnsettledWheel extends Mounted {
  readonly retorque: Exclude<Retorque, { state: 'settled' }>;
}

/** Wheels whose lugs are not settled: they are carried into the next round, which asks how far they went. */
export function wheelsDue(
  positions: readonly Position[],
  events: readonly UnitEvent[],
  checks: readonly LugCheck[],
  at: number,
): readonly UnsettledWheel[] {
  return positions.flatMap((position) => {
    const mounted = lastMounting(position, events, at);
    const retorque = retorqueOf(position, events, checks, { at, goneM: null });
    if (mounted === null || retorque.state === 'settled') return [];
    const since = checks.filter((check) => check.position === position && check.at >= mounted.at && check.at <= at);
    return [{ position, odometerM: mounted.odometerM, pulledM: pulledFrom(since), retorque }];
  });
}

/** The same for the ear: one sentence a wheel, or one for all of them where the distance is not known. */
export function dueSentences(wheels: readonly UnsettledWheel[]): readonly string[] {
  const unknown = wheels.filter(({ retorque, pulledM }) => retorque.state === 'unknown' && pulledM === 0);
  const known = wheels.filter((wheel) => !unknown.includes(wheel)).map(({ retorque }) => retorque.sentence);
  if (unknown.length < 2) return [...known, ...unknown.map(({ retorque }) => retorque.sentence)];
  const names = unknown.map(({ position }) => position.replace('-', ' '));
  const list = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return [...known, `These wheels were off: ${list}. Pull their lugs at every stop until fifty miles.`];
}

/** When lugs that were last pulled then are due by the calendar; a distance would make them due sooner. Epoch milliseconds. */
export function routineDueAt(pulledAt: number): number {
  return pulledAt + LUGS.retorqueMonths.si * 1000;
}
