/** What happened to a unit between rounds, as a person writes it down: read, checked, and made into an event. */
import type { Position } from '../checks/expects.ts';
import type { Display } from '../quantity/format.ts';
import { toSI } from '../quantity/units.ts';
import type { UnitEvent } from '../round/entry.ts';
import { readDotCode } from './dotCode.ts';
import { type Unit, wheelPositions } from './unit.ts';

/** Kinds a person may write down; mending a finding has a form of its own. */
export const HAPPENINGS = ['wheel-mounted', 'tire-changed', 'awning-wet', 'awning-dried', 'noted'] as const;
export type Happening = (typeof HAPPENINGS)[number];

/** As typed. Fields that a kind does not use are ignored. */
export interface HappenedForm {
  readonly kind: string;
  readonly position: string;
  readonly odometer: string;
  readonly dotCode: string;
  readonly text: string;
}

type EventBody = UnitEvent extends infer Each ? (Each extends UnitEvent ? Omit<Each, 'id' | 'unit' | 'at'> : never) : never;

export type ReadHappening =
  | {
      readonly ok: true;
      readonly event: EventBody;
      /** The next revision of the profile, where what happened changes it; null where it does not. */
      readonly unit: Unit | null;
    }
  | { readonly ok: false; readonly field: keyof HappenedForm; readonly sentence: string };

/** Odometers of trucks end here, m. */
const MOST_M = toSI(2_000_000, 'mi');
const LONGEST_TEXT = 500;

/** @param at epoch milliseconds of now @param display the system that the odometer was typed in */
export function readHappening(form: HappenedForm, unit: Unit, at: number, display: Display): ReadHappening {
  switch (form.kind) {
    case 'awning-wet':
    case 'awning-dried':
      return { ok: true, event: { kind: form.kind }, unit: null };
    case 'noted': {
      const text = form.text.trim();
      if (text === '') return refused('text', 'Say in a few words what happened.');
      return { ok: true, event: { kind: 'noted', text: text.slice(0, LONGEST_TEXT) }, unit: null };
    }
    case 'wheel-mounted': {
      const position = positionOf(form, unit);
      if (position === null) return refused('position', 'Choose the wheel that was off.');
      const odometerM = odometerOf(form.odometer, display);
      if (odometerM === 'unclear') {
        return refused('odometer', "Give the reading of the truck's odometer as a number, or leave it empty.");
      }
      return { ok: true, event: { kind: 'wheel-mounted', position, odometerM }, unit: null };
    }
    case 'tire-changed': {
      const position = positionOf(form, unit);
      if (position === null) return refused('position', 'Choose the wheel whose tire is new.');
      const dotCode = form.dotCode.trim() === '' ? null : form.dotCode.trim();
      if (dotCode !== null) {
        const read = readDotCode(dotCode, at);
        if (!read.ok) return refused('dotCode', read.sentence);
      }
      return { ok: true, event: { kind: 'tire-changed', position, dotCode }, unit: withTire(unit, position, dotCode, at) };
    }
    default:
      return refused('kind', 'Choose what happened.');
  }
}

/** The old date code does not belong to the new tire, so an unknown one is taken out: the round will ask for it. */
function withTire(unit: Unit, position: Position, dotCode: string | null, at: number): Unit {
  const { [position]: _old, ...others } = unit.wheels.dotCodes;
  const dotCodes = dotCode === null ? others : { ...others, [position]: dotCode };
  return { ...unit, wheels: { ...unit.wheels, dotCodes }, updatedAt: at, revision: unit.revision + 1 };
}

const positionOf = ({ position }: HappenedForm, unit: Unit) =>
  wheelPositions(unit.axles).find((candidate) => candidate === position) ?? null;

function odometerOf(typed: string, display: Display): number | null | 'unclear' {
  const text = typed.trim().replace(/[ ,](?=\d{3}\b)/g, '');
  if (text === '') return null;
  if (!/^\d{1,9}(\.\d+)?$/.test(text)) return 'unclear';
  const metres = toSI(Number(text), display === 'metric' ? 'km' : 'mi');
  return metres <= MOST_M ? metres : 'unclear';
}

const refused = (field: keyof HappenedForm, sentence: string): ReadHappening => ({ ok: false, field, sentence });
