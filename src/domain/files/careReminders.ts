/** What the use of a unit makes due: a wet awning, the work when the ice goes, the work before it comes back. */
import { inForce } from '../history/inForce.ts';
import type { UnitData } from '../trend/trendsFor.ts';
import type { Unit } from '../unit/unit.ts';

export interface Care {
  readonly what: string;
  /** Epoch milliseconds. */
  readonly due: number;
  /** After the unit's name, as in "Heron: dry the awning". */
  readonly summary: string;
  readonly description: string;
}

const DAY_MS = 86_400_000;
const AWNING_CHECK = 'awning-dry';

/** Month from 0 and day: design choices, no source. Owners move them to suit their own ice. */
const ICE_GOES = { month: 3, day: 15 } as const;
const ICE_COMES = { month: 9, day: 15 } as const;

/**
 * @param data rounds and events of any units; those of other units are passed over
 * @returns nothing for a unit that was never walked and of whose awning nothing is known
 */
export function careOf(unit: Unit, data: UnitData): readonly Care[] {
  const awning = wetAwning(unit, data);
  return [...(awning === null ? [] : [awning]), ...seasons(unit, data)];
}

/** EPA, A Brief Guide to Mold, Moisture and Your Home (from memory): dry what is wet within 24 to 48 hours. The earlier end. */
function wetAwning(unit: Unit, { rounds, events }: UnitData): Care | null {
  let latest: { readonly at: number; readonly isWet: boolean } | null = null;
  const see = (at: number, isWet: boolean) => {
    if (latest === null || at >= latest.at) latest = { at, isWet };
  };
  for (const event of events) {
    if (event.unit !== unit.id) continue;
    if (event.kind === 'awning-wet' || event.kind === 'awning-dried') see(event.at, event.kind === 'awning-wet');
  }
  for (const { round, entries } of rounds) {
    if (round.unit !== unit.id) continue;
    const keys = round.plan.checks.filter(({ check }) => check === AWNING_CHECK).map(({ key }) => key);
    for (const key of keys) {
      const entry = inForce(entries).get(key);
      if (entry?.kind === 'answered' && entry.answer.kind === 'choice') see(entry.at, entry.answer.option === 'wet');
    }
  }
  const found = latest as { readonly at: number; readonly isWet: boolean } | null;
  if (!found?.isWet) return null;
  return {
    what: 'awning',
    due: found.at + DAY_MS,
    summary: 'dry the awning',
    description:
      'It was put away wet. Open it and let it dry within a day or two of thawing, or it grows mold. Write it down as dried when it is.',
  };
}

/** The next ones after the last round: a unit in use has had its season's work; one that was never out needs none. */
function seasons(unit: Unit, { rounds }: UnitData): readonly Care[] {
  const last = rounds.reduce((latest, { round }) => (round.unit === unit.id ? Math.max(latest, round.startedAt) : latest), -1);
  if (last < 0) return [];
  const goes = nextAfter(last, ICE_GOES);
  const comes = nextAfter(last, ICE_COMES);
  return [
    {
      what: `off-season-${new Date(goes).getUTCFullYear()}`,
      due: goes,
      summary: 'put it up for the off season',
      description: [
        'Lower the frame onto blocks off the ground: one wherever the frame changes direction, shimmed so that every block carries, with a slight fall so that water drains. Keep out from under a frame that only the lift holds.',
        unit.lift.cables > 0 ? 'Leave the cables slack.' : 'Take the load off the lift.',
        'Take the load off the tires, shut the gas at the cylinders, charge the battery and take it off, dry the inside and the awning, and mend what is still open.',
        "Common practice; the maker's manual comes first, and the day is yours to move.",
      ].join(' '),
    },
    {
      what: `season-${new Date(comes).getUTCFullYear()}`,
      due: comes,
      summary: 'get it ready for the ice',
      description: [
        `Grease what this frame has: ${greasePoints(unit).join(', ')}.`,
        'Test the alarms, charge and test the battery, set the tires cold, look at the brakes, the lamps and the breakaway, and walk one whole round before the first trip.',
        "Common practice; the maker's manual comes first, and the day is yours to move.",
      ].join(' '),
    },
  ];
}

/** The points that this build has, and none that it has not. */
function greasePoints({ lift, wheels, tongue }: Unit): readonly string[] {
  return [
    ...(lift.pulleys === 'greasable' ? ['every pulley pin'] : []),
    ...(lift.axleStubs === 'greasable' ? ['the pivots of the wheel arms'] : []),
    ...(wheels.bearings === 'greased' ? ['the wheel bearings'] : []),
    ...(tongue.jack === 'swivel' || tongue.jack === 'fixed' ? ['the tongue jack'] : []),
    ...(lift.pinsPerSide !== null && lift.pinsPerSide > 0 ? ['the transport pins, thinly'] : []),
    ...(tongue.pivotPins === true ? ['the pivot and the pins of the hitch'] : []),
    'the coupler, thinly',
  ];
}

function nextAfter(at: number, { month, day }: { readonly month: number; readonly day: number }): number {
  const year = new Date(at).getUTCFullYear();
  const here = Date.UTC(year, month, day);
  return here > at ? here : Date.UTC(year + 1, month, day);
}
