/**
 * What is kept. Entries are only ever appended; a correction is a new entry that supersedes an older
 * one. State, verdict, trends and resume are all computed from plan + entries.
 */
import type { Position } from '../checks/expects.ts';
import type { Outcome } from '../checks/outcome.ts';
import type { Plan } from '../plan/plan.ts';
import type { UnitId } from '../quantity/units.ts';

/** The answer itself. */
export type Answer =
  | {
      readonly kind: 'reading';
      readonly si: number;
      readonly said: { readonly value: number; readonly unit: UnitId };
      readonly hedged: boolean;
    }
  | { readonly kind: 'count'; readonly count: number }
  | { readonly kind: 'state'; readonly verdict: 'ok' | 'problem'; readonly detail: string | null }
  | { readonly kind: 'choice'; readonly option: string; readonly detail: string | null }
  /** `dot-week`: "WWYY"; `month-year`: "YYYY-MM". */
  | { readonly kind: 'date'; readonly form: 'dot-week' | 'month-year'; readonly value: string };

/** How an answer reached the app. */
export interface How {
  readonly via: 'voice' | 'button' | 'key';
  /** Ears provider id for voice ('browser', 'built-in', 'scripted'). */
  readonly provider: string | null;
  readonly by: 'first' | 'second';
  readonly transcript: string | null;
  readonly alternatives: readonly { readonly transcript: string; readonly confidence: number | null }[];
  /** 0..1, or null where the provider gives none. Not comparable between providers. */
  readonly confidence: number | null;
  /** Why it was believed, as the policy explains it; shown on the round page. */
  readonly because: readonly string[];
  /** Clip of what was heard, when clips are kept. */
  readonly clip: string | null;
}

interface EntryBase {
  /** Unique; made by the caller, so that a repeated append is harmless. */
  readonly id: string;
  readonly round: string;
  /** Rises by one from 0 within a round; no gaps. */
  readonly seq: number;
  /** Epoch milliseconds. */
  readonly at: number;
}

export type Entry = EntryBase &
  (
    | { readonly kind: 'begun'; readonly people: 1 | 2 }
    | {
        readonly kind: 'answered';
        readonly key: string;
        readonly answer: Answer;
        readonly outcome: Outcome;
        readonly how: How;
        readonly supersedes: string | null;
      }
    | {
        readonly kind: 'skipped';
        readonly key: string;
        readonly reason: string;
        readonly how: How;
        readonly supersedes: string | null;
      }
    /** Takes an answer or skip back; the check is open again. */
    | { readonly kind: 'undone'; readonly key: string; readonly supersedes: string }
    /** Free text or a clip or a photo, attached to a check or to the round. `finding`: something to mend. */
    | {
        readonly kind: 'noted';
        readonly key: string | null;
        readonly text: string | null;
        readonly clip: string | null;
        readonly photo: string | null;
        readonly finding: boolean;
        readonly how: How;
      }
    /** The person asked for this check out of order; a resumed round starts here. `null`: back to the order walked. */
    | { readonly kind: 'went'; readonly key: string | null }
    | { readonly kind: 'held'; readonly reason: string | null }
    | { readonly kind: 'resumed' }
    /** The completion call. Without it a round is not complete, and says so. */
    | { readonly kind: 'completed' }
  );

export type EntryKind = Entry['kind'];
/** Entry without what the record gives it: id, round, seq, at. */
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
export type EntryDraft = DistributiveOmit<Entry, keyof EntryBase>;

/** A stored round: the frozen plan and who it belongs to. Never changed after it is written. */
export interface Round {
  readonly schema: 1;
  readonly id: string;
  readonly unit: string;
  readonly startedAt: number;
  readonly plan: Plan;
  readonly demo: boolean;
}

/** Things that happen to a unit outside a round; append-only like entries. */
export type UnitEvent = {
  readonly id: string;
  readonly unit: string;
  readonly at: number;
} /** A finding (entry id, or `round/key` of a check that was not ok) was mended. */ & (
  | {
      readonly kind: 'mended';
      readonly finding: string;
      readonly what: string;
      readonly who: string | null;
      readonly cost: number | null;
    }
  /** A wheel was taken off and put back: lugs are due again by distance. */
  | { readonly kind: 'wheel-mounted'; readonly position: Position; readonly odometerM: number | null }
  | { readonly kind: 'tire-changed'; readonly position: Position; readonly dotCode: string | null }
  | { readonly kind: 'awning-wet' }
  | { readonly kind: 'awning-dried' }
  | { readonly kind: 'noted'; readonly text: string }
);
