/** What the believing policy decided about a hearing, explained in data. The policy itself is `believe.ts`. */
import type { Meaning } from './meaning.ts';

export interface Decision {
  /**
   * `accept`: keep it and read it back. `confirm`: ask a yes/no before keeping. `distinguish`: ask which of two
   * ("one-five or five-zero?"). `again`: ask again. `ignore`: not for the app, no sound.
   */
  readonly outcome: 'accept' | 'confirm' | 'distinguish' | 'again' | 'ignore';
  readonly meaning: Meaning;
  /** For `distinguish`: the other meanings that were possible, most likely first. Offered as buttons. */
  readonly alternatives?: readonly Meaning[];
  /** The question to speak for `confirm`, `distinguish` and `again`; null otherwise. */
  readonly question: string | null;
  /** Reasons in plain words, each one fact. */
  readonly because: readonly string[];
  /** Numbers behind the reasons, for the round page and the tests. */
  readonly evidence: Readonly<Record<string, number | string | boolean | null>>;
}

/** What this unit's own past says about the value asked for. It can only make the tool more careful. */
export interface Expectation {
  /** In the check's own unit, already brought to today's temperature where that matters. */
  readonly median: number;
  /** Robust spread in the same unit, floored at half a reading step. */
  readonly spread: number;
  readonly count: number;
}
