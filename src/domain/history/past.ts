/** What this unit's own past says about the checks of a round, by key of the plan. Worked out once, before the round. */
import type { Expectation } from '../language/decision.ts';
import type { UnitId } from '../quantity/units.ts';

export interface PastOfCheck {
  /**
   * Robust center and spread, with tire pressures brought to the outside temperature given (null: not known).
   * @returns null with too few readings
   */
  readonly expectation: (outsideK: number | null) => Expectation | null;
  /** The value of the last round that has one. `text` is formatted for the screen. */
  readonly last: { readonly value: number; readonly unit: UnitId; readonly text: string; readonly at: number } | null;
  /** How many rounds of this unit answered it before: someone practised is asked in fewer words. */
  readonly times: number;
  /** One spoken sentence about where it is drifting; null when there is nothing to say. */
  readonly trend: string | null;
}

export type Past = ReadonlyMap<string, PastOfCheck>;
