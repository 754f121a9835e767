/**
 * The one declaration of what a check expects to hear. From it come the recogniser's word graph, the
 * phrases that bias the browser's recogniser, the interpreter, the spoken hint and the buttons.
 * Plain JSON data: it is frozen into a round's plan and must read the same years later.
 */
import type { UnitId } from '../quantity/units.ts';

/** Where on the unit, seen from behind looking forward. A single axle uses `left` and `right`. */
export const POSITIONS = [
  'left-front',
  'right-front',
  'left-middle',
  'right-middle',
  'left-rear',
  'right-rear',
  'left',
  'right',
  'front',
  'rear',
] as const;
export type Position = (typeof POSITIONS)[number];

/** Steps people read and say. `spoken-decimal` allows "twelve six" for 12.6. */
export type NumberForm = 'whole' | 'half' | 'quarter' | 'tenth' | 'hundredth' | 'thirty-second' | 'negative' | 'spoken-decimal';

/** A measured value of a quantity. Limits are in `unit`. */
export interface ReadingExpects {
  readonly kind: 'reading';
  /** Stable name of what is measured (`tire-pressure`), the key that history is grouped by. */
  readonly quantity: string;
  /** The unit meant when none is said. */
  readonly unit: UnitId;
  /** Other units that may be said, converted on the spot. */
  readonly otherUnits: readonly UnitId[];
  /** Physically possible range; a value outside is refused, never clipped. */
  readonly min: number;
  readonly max: number;
  /** Finest step read aloud, in `unit`. */
  readonly step: number;
  readonly forms: readonly NumberForm[];
  /** Where the buttons start and the word graph is heavier. Never a reason to accept a hearing. */
  readonly usual: { readonly min: number; readonly max: number };
}

/** How many of a known few ("none moved", "two moved"). */
export interface CountExpects {
  readonly kind: 'count';
  readonly quantity: string;
  /** What is counted, singular and plural ("lug", "lugs"). */
  readonly noun: readonly [singular: string, plural: string];
  readonly min: number;
  readonly max: number;
  /** Words for nought beside "none" and "zero" ("all tight"). */
  readonly nonePhrases: readonly string[];
  /** Words for the whole of them ("all of them"), when `max` is the whole. */
  readonly allPhrases: readonly string[];
}

/** A state that is right or not. First phrase of each list is the button label and the read-back. */
export interface StateExpects {
  readonly kind: 'state';
  readonly ok: readonly string[];
  readonly problem: readonly string[];
  /** What a bare "yes" means for the question as it is asked. */
  readonly yesMeans: 'ok' | 'problem';
}

export interface ChoiceOption {
  readonly id: string;
  /** Button label and read-back. */
  readonly label: string;
  readonly phrases: readonly string[];
  readonly verdict: 'ok' | 'problem';
}

/** One of a few named conditions. */
export interface ChoiceExpects {
  readonly kind: 'choice';
  readonly options: readonly ChoiceOption[];
}

/** A date as stamped or printed. `dot-week` is the four digits WWYY of 49 CFR 574.5; `month-year` a month and a year. */
export interface DateExpects {
  readonly kind: 'date';
  readonly form: 'dot-week' | 'month-year';
  /** Years for which the word graph is heavier, both within. Never a reason to accept a hearing. Plans of before have none. */
  readonly usualYears?: { readonly min: number; readonly max: number };
}

export type Expects = ReadingExpects | CountExpects | StateExpects | ChoiceExpects | DateExpects;
