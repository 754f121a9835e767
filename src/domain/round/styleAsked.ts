/** How somebody says which way of asking they want: "short questions", "tell me more each time". */
import type { SpeakingStyle } from '../voice/settings.ts';

const PHRASES: Readonly<Record<Exclude<SpeakingStyle, 'adaptive'>, readonly string[]>> = {
  terse: ['short questions', 'shorter questions', 'fewer words', 'less talk', 'keep it short', 'be brief', 'short prompts'],
  full: [
    'full questions',
    'long questions',
    'longer questions',
    'more words',
    'ask in full',
    'explain each check',
    'full prompts',
  ],
};

const LEAD = /^(?:ok|okay|hey|please|now|use|give me|i want|go to|switch to|ask)\s+/;

/** The style asked for; null where the words are about something else. */
export function styleAsked(transcript: string): 'full' | 'terse' | null {
  let words = transcript
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  while (LEAD.test(words) && !PHRASES.full.includes(words)) words = words.replace(LEAD, '');
  words = words.replace(/\s+(?:please|now|from now on)$/, '');
  if (PHRASES.terse.includes(words)) return 'terse';
  return PHRASES.full.includes(words) ? 'full' : null;
}

export const STYLE_LINES = {
  terse: 'Short questions from now on. Say "full questions" for more.',
  full: 'Full questions from now on. Say "short questions" for less.',
} as const;
