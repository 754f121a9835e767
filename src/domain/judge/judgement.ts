/** What a judgement says. The judging itself is `judge.ts`. */
import type { Limit, Outcome } from '../checks/outcome.ts';
import type { Answer } from '../round/entry.ts';

/** What is known besides the answer. Everything optional is `null` when not known, never guessed. */
export interface JudgeContext {
  /** Epoch milliseconds of the answer. */
  readonly at: number;
  /** Outside air temperature given in this round. */
  readonly outsideK: number | null;
  /** Metres above sea level where the reading is taken. */
  readonly elevationM: number | null;
  /** Hours since the unit was last towed; null when not said (then a pressure may not be cold). */
  readonly hoursParked: number | null;
  /** Latest answers of this round by check key, for rules that need two ("furnace after ten minutes"). */
  readonly answers: ReadonlyMap<string, { readonly answer: Answer; readonly at: number }>;
  /** The system people hear and see. */
  readonly display: 'us' | 'metric';
}

export interface Judgement {
  readonly outcome: Outcome;
  /** One short spoken sentence: what it is against which limit. Empty when there is nothing to add to the read-back. */
  readonly say: string;
  /** What to do, when the outcome is not `ok`. */
  readonly todo: string | null;
  /** The limit that decided, with its source. */
  readonly limit: Limit | null;
  /** A question that must be settled before the value means anything ("Were the tires parked for three hours?"). */
  readonly question: string | null;
  /** What was seen, in words, for a state or choice that is not right ("cracked"); absent for readings. */
  readonly seen?: string;
  /** False: the answer could not be taken, so that the check counts as not answered. */
  readonly settled?: false;
  /** Makers' figures that this would need and that are not known, as noun phrases ("the lug torque"); absent: none. */
  readonly missing?: readonly string[];
  /** Figures worked out on the way, for the round page: label, value, unit already formatted. */
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}
