/** Reasons that are offered when a check is skipped. Any other words are kept as they were said. */
import type { ChoiceExpects } from '../checks/expects.ts';

export const SKIP_REASONS: ChoiceExpects = {
  kind: 'choice',
  options: [
    { id: 'frozen', label: 'frozen', phrases: ['frozen', 'frozen shut', 'iced up', 'it is frozen'], verdict: 'problem' },
    {
      id: 'cannot-reach',
      label: "can't reach",
      phrases: ["can't reach", "can't get at it", "can't get to it", 'blocked'],
      verdict: 'problem',
    },
    { id: 'too-dark', label: "can't see", phrases: ["can't see", 'too dark', "can't see it"], verdict: 'problem' },
    { id: 'later', label: 'later', phrases: ['later', 'do it later', 'not now', 'after'], verdict: 'problem' },
  ],
};
