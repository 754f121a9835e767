/** How far each recogniser's own confidence is to be trusted. The scales have nothing in common; so each has its own row. */
import type { Hearing } from './hearing.ts';

export interface Trust {
  /** Below: ask again. */
  readonly reject: number;
  /** From here on a value needs no second question for its sound alone. */
  readonly accept: number;
  /** From here on even an easily confused or important value is taken with its read-back. */
  readonly sure: number;
  /** A second hypothesis that means something else and is nearer than this is a rival. */
  readonly margin: number;
  /** Whether sound can be misheard at all. */
  readonly isHeard: boolean;
  readonly reason: string;
}

export const TRUST: Readonly<Record<Hearing['provider'], Trust>> = {
  browser: {
    reject: 0.3,
    accept: 0.55,
    sure: 0.8,
    margin: 0.15,
    isHeard: true,
    reason:
      'Browsers give a posterior that is high for short clear phrases (0.8 to 0.98) and drops below a half in noise; several give 0 or nothing, which counts as not given (Web Speech API leaves the scale open).',
  },
  'built-in': {
    reject: 0.2,
    accept: 0.7,
    sure: 0.88,
    margin: 0.2,
    isHeard: true,
    reason:
      'A logistic score, trained to doubt: from 0.7 on one wrong answer in some hundred passes in noise at 5 dB and hardly any at 10 dB; between 0.2 and 0.7 an answer is asked to be confirmed. In noise at 5 dB wrong answers reach 0.85: only above 0.88 is an easily confused value taken without a question.',
  },
  scripted: { reject: 0, accept: 0, sure: 0, margin: 0, isHeard: false, reason: 'Text from a script is exact.' },
  typed: { reject: 0, accept: 0, sure: 0, margin: 0, isHeard: false, reason: 'Typed text is exact.' },
};

/** The confidence as given, or null where the provider gives none: browsers say 0 for "not given". */
export function givenConfidence(hearing: Hearing, index: number): number | null {
  const confidence = hearing.hypotheses[index]?.confidence ?? null;
  if (confidence === null || !Number.isFinite(confidence)) return null;
  if (confidence === 0 && hearing.provider === 'browser') return null;
  return Math.min(1, Math.max(0, confidence));
}
