/** What the round's screen shows and what it can say back. Speech and screen are two views of the same state. */
import type { Outcome } from '../checks/outcome.ts';
import type { PlannedCheck } from '../plan/plan.ts';
import type { UnitId } from '../quantity/units.ts';
import type { Answer, Entry, Round } from './entry.ts';
import type { HeardWord } from './heardWords.ts';

export type RoundPhase =
  /** Before the first check: who, what, cold, unknowns. */
  | 'briefing'
  /** A check is asked and an answer awaited. */
  | 'asking'
  /** "Thirty-eight, left front. Is that right?" or "one-five or five-zero?" */
  | 'confirming'
  /** A note, or the reason for a skip, is being taken. */
  | 'noting'
  /** Being written; too short to show a spinner for. */
  | 'keeping'
  /** The record could not be written; nothing was confirmed. */
  | 'keep-failed'
  | 'held'
  /** All asked; the completion call is awaited, open checks listed. */
  | 'wrap-up'
  | 'complete';

export interface EarsView {
  readonly state: 'off' | 'loading' | 'waiting' | 'listening' | 'hearing' | 'denied' | 'unavailable';
  /** What to do about it; null when all is well. */
  readonly sentence: string | null;
  /** 0..1 while loading. */
  readonly progress: number | null;
  readonly provider: string | null;
}

export interface CheckLineView {
  readonly check: PlannedCheck;
  readonly status: Outcome | 'open' | 'skipped';
  /** "62 psi" / "pinned" / skip reason; null while open. */
  readonly value: string | null;
  /** Judgement in one sentence, or null. */
  readonly because: string | null;
}

export interface TimerView {
  readonly key: string;
  readonly name: string;
  /** Epoch milliseconds. */
  readonly dueAt: number;
  readonly due: boolean;
}

export interface RoundView {
  readonly round: Round;
  readonly entries: readonly Entry[];
  readonly phase: RoundPhase;
  readonly people: 1 | 2;
  readonly station: { readonly name: string; readonly done: number; readonly total: number } | null;
  readonly done: number;
  readonly total: number;
  /** Every check of the plan in the order walked. */
  readonly lines: readonly CheckLineView[];
  readonly current: PlannedCheck | null;
  /** Last round's value for the current check, formatted, with its date; null when there is none. */
  readonly before: string | null;
  /** The same as a number, where it is one: the number board starts there. */
  readonly beforeValue?: { readonly value: number; readonly unit: UnitId } | null;
  /** What the tool is saying or said last; shown word for word. */
  readonly saying: string;
  readonly speaking: boolean;
  /** Interim words while the person speaks. */
  readonly partial: string | null;
  /** The last kept answer as read back, and its outcome. */
  readonly readBack: {
    readonly text: string;
    readonly outcome: Outcome | 'skipped';
    /** The words it was heard in; null for a press. */
    readonly heard: readonly HeardWord[] | null;
  } | null;
  /** For `noting`: what is being taken; a note when absent. */
  readonly taking?: 'note' | 'reason' | null;
  /** For `confirming`: the answers offered as buttons, first is the one asked about. */
  readonly offers: readonly { readonly label: string; readonly answer: Answer | null }[];
  readonly ears: EarsView;
  readonly timers: readonly TimerView[];
  /** Set in `wrap-up` and `complete`. */
  readonly verdict: { readonly outcome: Outcome | 'not-cleared'; readonly sentences: readonly string[] } | null;
  /** Sentence of a failed write, and so on; null when all is well. */
  readonly trouble: string | null;
}

/** What the person can do from the screen, a key or a clicker. */
export type RoundRequest =
  | { readonly type: 'begin'; readonly people: 1 | 2 }
  | { readonly type: 'answer'; readonly answer: Answer; readonly via: 'button' | 'key' }
  /** To a question with yes and no. */
  | { readonly type: 'confirm'; readonly yes: boolean; readonly via: 'button' | 'key' }
  | { readonly type: 'skip'; readonly reason: string; readonly via: 'button' | 'key' }
  | { readonly type: 'note'; readonly text: string; readonly finding: boolean; readonly via: 'button' | 'key' }
  | { readonly type: 'go'; readonly key: string }
  | {
      readonly type: 'command';
      readonly command:
        | 'repeat'
        | 'back'
        | 'next'
        | 'wait'
        | 'resume'
        | 'undo'
        | 'where'
        | 'why'
        | 'help'
        | 'louder'
        | 'quieter'
        | 'stop';
      readonly via: 'button' | 'key';
    }
  | { readonly type: 'listen'; readonly on: boolean }
  | { readonly type: 'retry-keep' }
  /** The completion call. */
  | { readonly type: 'finish' };
