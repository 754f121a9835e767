/** The parts of "how it was given" that a press has not. */
import type { How } from './entry.ts';

export const NO_HEARING: Omit<How, 'via' | 'by'> = {
  provider: null,
  transcript: null,
  alternatives: [],
  confidence: null,
  because: [],
  clip: null,
};
