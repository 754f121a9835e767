/** What an utterance can mean. The interpreter returns one of these for any text whatever. */
import type { Expects, Position } from '../checks/expects.ts';
import type { UnitId } from '../quantity/units.ts';

export const COMMANDS = [
  'repeat',
  'back',
  'skip',
  'wait',
  'resume',
  'undo',
  'where',
  'note',
  'louder',
  'quieter',
  'stop',
  'help',
  'why',
  'next',
] as const;
export type Command = (typeof COMMANDS)[number];

/** How each token was used, so that the screen can show what counted and what did not. */
export interface TokenUse {
  readonly text: string;
  readonly use:
    | 'number'
    | 'unit'
    | 'position'
    | 'state'
    | 'negation'
    | 'hedge'
    | 'command'
    | 'name'
    | 'correction'
    | 'filler'
    | 'detail'
    | 'ignored';
}

export interface SpokenReading {
  /** Null: the position that was asked about. */
  readonly position: Position | null;
  readonly value: number;
  /** The unit meant: as said, or the check's own. */
  readonly unit: UnitId;
  readonly unitSaid: boolean;
}

interface MeaningBase {
  /** 0..1: how well the words fit; not a probability of having heard right. */
  readonly certainty: number;
  readonly tokens: readonly TokenUse[];
  /** Set where the utterance corrects something already kept. `previous`: the one just read back. */
  readonly corrects: 'previous' | 'named' | null;
  /** Another open check that the speaker named; null for the one asked. A key of {@link InterpretContext.others}. */
  readonly about: string | null;
  /** The value was not said but asked to be taken from last time. Never believed without asking. */
  readonly fromLast?: boolean;
  /** Further answers of the same breath, each about another place or check. */
  readonly also?: readonly Meaning[];
  /** The value just kept belongs to another place: taken back here, kept there. */
  readonly movedFrom?: Position | null;
}

export type Meaning = MeaningBase &
  (
    | { readonly intent: 'reading'; readonly readings: readonly SpokenReading[]; readonly hedged: boolean }
    /** For state and choice checks. `option` is the choice's id; `positions` when sides were named. */
    | {
        readonly intent: 'verdict';
        readonly verdict: 'ok' | 'problem' | 'unsure';
        readonly option: string | null;
        readonly positions: readonly Position[];
        readonly detail: string | null;
      }
    | { readonly intent: 'date'; readonly value: string; readonly hedged: boolean }
    | { readonly intent: 'command'; readonly command: Command; readonly text: string | null }
    /** A bare yes or no, when the tool asked to confirm. */
    | { readonly intent: 'confirmation'; readonly yes: boolean }
    /** `chatter` is not for the app at all and is passed over without a sound. */
    | { readonly intent: 'unclear'; readonly why: UnclearWhy; readonly candidates: readonly SpokenReading[] }
  );

export type UnclearWhy =
  | 'chatter'
  | 'empty'
  | 'no-value'
  | 'out-of-range'
  | 'wrong-unit'
  | 'alternatives'
  | 'contradiction'
  | 'range'
  | 'repeated-position'
  | 'unknown-position'
  | 'not-a-step'
  | 'incomplete'
  | 'ambiguous'
  | 'no-last';

/** Another check that the helper may answer by naming it. */
export interface NamedCheck {
  readonly key: string;
  readonly names: readonly string[];
  readonly position: Position | null;
  readonly expects: Expects;
  /** It has its answer already: it is only meant where a change is asked for. */
  readonly settled?: boolean;
}

export interface InterpretContext {
  readonly expects: Expects;
  readonly names: readonly string[];
  /** Position asked about. */
  readonly position: Position | null;
  /** Every position this check has on this unit, and which are still open. */
  readonly positions: readonly Position[];
  readonly others: readonly NamedCheck[];
  /** Last round's value, for "same as last time". */
  readonly last: { readonly value: number; readonly unit: UnitId } | null;
  /** The check just read back: "no, sixty-three" is about it. */
  readonly previous: NamedCheck | null;
  /** What was kept for {@link previous}, so that "no, the right one" can move it. */
  readonly previousValue?: { readonly value: number; readonly unit: UnitId } | null;
  /** `confirm`: a yes/no or a new value is awaited. `free`: a note or a reason, every word is content. */
  readonly mode: 'answer' | 'confirm' | 'free';
}
