/** A round's plan: everything a round needs, frozen as it was when the round began. JSON data only. */
import type { CheckLines, RoundKind, StationKind } from '../checks/check.ts';
import type { Expects, Position } from '../checks/expects.ts';
import type { JudgeSpec, Source } from '../checks/outcome.ts';
import type { Answer } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';

export const PLAN_SCHEMA = 1;

export interface PlannedCheck {
  /** Unique in the plan: `tire-pressure@left-front`, `deadbolt`. */
  readonly key: string;
  readonly check: string;
  readonly position: Position | null;
  /** Key of a {@link PlannedStation}. */
  readonly station: string;
  readonly names: readonly string[];
  readonly expects: Expects;
  readonly lines: CheckLines;
  readonly judge: JudgeSpec;
  readonly timed: { readonly startedBy: string; readonly minutes: number } | null;
  readonly patienceS: number;
  /** Keys of this plan that must be answered or skipped before this one makes sense. */
  readonly after?: readonly string[];
  /** Where the check comes from; limits name theirs in `judge`. */
  readonly sources?: readonly Source[];
}

/** A figure that the profile already holds, within its limits on the day of planning, and so is not asked for again. */
export interface KnownFigure {
  /** The key that the check would have had: `tire-date@left`. */
  readonly key: string;
  readonly check: string;
  readonly position: Position | null;
  readonly name: string;
  readonly answer: Answer;
  readonly judge: JudgeSpec;
}

export interface PlannedStation {
  /** Unique: `inside`, `inside-again`, `wheel@left`. */
  readonly key: string;
  readonly kind: StationKind;
  readonly position: Position | null;
  /** Spoken on arrival: "Left side, front wheel." */
  readonly name: string;
  /** Keys of its checks in order. */
  readonly checks: readonly string[];
}

export interface Plan {
  readonly schema: typeof PLAN_SCHEMA;
  readonly round: RoundKind;
  /** The unit as it was when the plan was made. */
  readonly unit: Unit;
  readonly createdAt: number;
  /** In the order walked. Timed checks stand where they are answered if nothing comes due earlier. */
  readonly stations: readonly PlannedStation[];
  readonly checks: readonly PlannedCheck[];
  /** Figures that were not known when the plan was made, each as a sentence for the briefing. */
  readonly unknowns: readonly string[];
  /** What is due on this round because of what happened before it, each as a sentence for the briefing. */
  readonly due?: readonly string[];
  /** Shown on the round page beside what was asked. */
  readonly known?: readonly KnownFigure[];
  /** Metres walked along the chosen order, for the bench and the tests. */
  readonly walkM: number;
  readonly demo: boolean;
}
