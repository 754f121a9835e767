/** What this unit's own past says about the checks of a round, by key of the plan. Worked out once, before the round. */
import type { Expectation } from '../language/decision.ts';
import type { UnitId } from '../quantity/units.ts';

export interface PastOfCheck {
  /** Robust centre and spread; null with too few readings. */
  readonly expectation: Expectation | null;
  /** The value of the last round that has one. `text` is formatted for the screen. */
  readonly last: { readonly value: number; readonly unit: UnitId; readonly text: string; readonly at: number } | null;
  /** One spoken sentence about where it is drifting; null when there is nothing to say. */
  readonly trend: string | null;
}

export type Past = ReadonlyMap<string, PastOfCheck>;
