/** Whether an answer is one to the question asked at all, before any rule looks at it. */
import type { PlannedCheck } from '../plan/plan.ts';
import { fromSI, UNITS } from '../quantity/units.ts';
import type { Answer } from '../round/entry.ts';

/** Binary fractions must not put the end of a range outside of it. */
const TOLERANCE = 1e-9;

/**
 * Why an answer cannot be judged, as a sentence for the ear; null where it can.
 * A value of another kind, of another quantity, or outside what is physically possible is refused, never clipped.
 */
export function whyUnbelievable({ expects }: PlannedCheck, answer: Answer): string | null {
  switch (answer.kind) {
    case 'reading': {
      if (!Number.isFinite(answer.si)) return 'That value cannot be read.';
      if (expects.kind !== 'reading') return NO_ANSWER;
      const { dimension } = UNITS[expects.unit];
      if (UNITS[answer.said.unit]?.dimension !== dimension) return `That is no ${WORDS[dimension] ?? dimension}.`;
      const value = fromSI(answer.si, expects.unit);
      const slack = TOLERANCE * Math.max(1, Math.abs(expects.min), Math.abs(expects.max));
      return value < expects.min - slack || value > expects.max + slack ? 'That value cannot be.' : null;
    }
    case 'count':
      if (!Number.isFinite(answer.count)) return 'That number cannot be read.';
      if (expects.kind !== 'count') return NO_ANSWER;
      return Number.isInteger(answer.count) && answer.count >= 0 ? null : 'That is no number of whole things.';
    case 'date':
      return expects.kind === 'date' && expects.form === answer.form ? null : NO_ANSWER;
    case 'state':
    case 'choice':
      return expects.kind === answer.kind ? null : NO_ANSWER;
  }
}

const NO_ANSWER = 'That is no answer to this check.';

const WORDS: Readonly<Record<string, string>> = {
  'temperature-difference': 'difference of temperature',
  mass: 'weight',
};
