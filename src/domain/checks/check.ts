/** The shape of one check in the catalogue. The catalogue itself is data in `catalogue/`. */
import type { Unit } from '../unit/unit.ts';
import type { Expects, Position } from './expects.ts';
import type { JudgeSpec, Outcome, Source } from './outcome.ts';

export type RoundKind = 'before-towing' | 'before-leaving-the-lake' | 'stop-on-the-road';

/** Places where the person stands. Wheel stations exist once per wheel position. */
export type StationKind =
  | 'inside'
  | 'doorway'
  | 'tongue'
  | 'left-lift'
  | 'right-lift'
  | 'wheel'
  | 'left-side'
  | 'right-side'
  | 'rear'
  | 'tow-vehicle';

/** Once for the unit, or once for each side or wheel. */
export type Spread = 'unit' | 'side' | 'wheel' | 'cylinder';

export interface CheckScope {
  readonly unit: Unit;
  readonly round: RoundKind;
  readonly position: Position | null;
  /** 0-based, for `spread: 'cylinder'`. */
  readonly index: number;
  /** Epoch milliseconds of the planning; missing: ages cannot be judged, so dates are asked for. */
  readonly at?: number;
  /** The system in which a bare number is meant and lines speak; missing: US. */
  readonly display?: 'us' | 'metric';
  /** This wheel was taken off and put back not long ago, so its lugs are due again. */
  readonly mounted?: Mounted;
}

/** A wheel that was off and back on not long ago. */
export interface Mounted {
  readonly position: Position;
  /** What the truck's odometer showed then, m; null where nobody wrote it down. */
  readonly odometerM: number | null;
  /** How far it had gone when its lugs were last pulled and none moved, m; 0 where that is not known. */
  readonly pulledM: number;
}

/** Lines to be spoken. Written for the ear: short, no abbreviations, numbers as words are spoken. */
export interface CheckLines {
  /** Short noun phrase shown as the heading and used in read-backs ("tire pressure"). */
  readonly name: string;
  /** For someone new: says what to do and what to answer. */
  readonly ask: string;
  /** For a practised user: two to five words. */
  readonly askTerse: string;
  /** What can be said, after an unclear answer: 'Say the pressure, like "sixty-two".' */
  readonly hint: string;
  /** One sentence, on "why". */
  readonly why: string;
  /** What to do when it is not right. */
  readonly mend: string;
  /** Spoken before the check where work can hurt; null where it cannot. */
  readonly caution: string | null;
}

export interface CheckDefinition {
  readonly id: string;
  readonly rounds: readonly RoundKind[];
  readonly spread: Spread;
  readonly station: (scope: CheckScope) => StationKind;
  readonly applies: (scope: CheckScope) => boolean;
  /** Words by which a helper may name it ("tread", "pressure", "lugs"). */
  readonly names: readonly string[];
  readonly expects: (scope: CheckScope) => Expects;
  readonly lines: (scope: CheckScope) => CheckLines;
  readonly judge: (scope: CheckScope) => JudgeSpec;
  /** Checks that must come before this one, by id; a missing one is no obstacle. */
  readonly after: readonly string[];
  /** Comes due by itself, this long after the named check is answered, while the round goes on. */
  readonly timed: { readonly startedBy: string; readonly minutes: number } | null;
  /** Kneeling or crouching work; counted when the order is chosen. */
  readonly kneeling: boolean;
  /** How long the work usually takes before an answer, in seconds: the tool waits that long before it asks again. */
  readonly patienceS: number;
  /** Things whose failure means "do not tow until mended". */
  readonly worst: Outcome;
  /** Where the check comes from; the limits name theirs themselves. */
  readonly sources?: readonly Source[];
}
