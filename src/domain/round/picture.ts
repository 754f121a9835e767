/** Pictures of a round: how one is asked for by voice, and the entry that one becomes. */
import type { EntryDraft, How } from './entry.ts';

const BEFORE = '(?:(?:ok|okay|hey|please|now|and|then|can you|could you|would you|will you|let us|lets|just)\\s+)*';
const WHAT = '(?:picture|photo|photograph|pic|snapshot)';
const ASKED = new RegExp(
  `^${BEFORE}(?:(?:take|snap|shoot|get|grab|make)\\s+(?:(?:a|an|another|one more|one|the|me a)\\s+)?(?:quick\\s+)?)?${WHAT}(?:\\s+(?:please|now|here|of\\b.*))?$`,
);

/** Whether somebody asks for a picture: "take a picture", "snap a photo of this", "picture". */
export function asksForPicture(transcript: string): boolean {
  const words = transcript
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return ASKED.test(words);
}

/** The note that a kept picture is. @param key of the check it belongs to; null: of the round */
export function pictureDraft(key: string | null, photo: string, how: How): EntryDraft {
  return { kind: 'noted', key, text: null, clip: null, photo, finding: false, how };
}
