/** Ears that hear a script: the rehearsal's person, and the provider that browser tests speak through. */
import type { Ears, ListenRequest } from '../domain/voice/ports.ts';

export interface Script {
  /**
   * Asked each time the ears open.
   * @returns what the scripted person says and after how long, or null to stay silent
   */
  answer(request: ListenRequest): { readonly transcript: string; readonly afterMs: number } | null;
}

/** The event that a page's test speaks with: `detail` is the transcript, or a list of alternatives, best first. */
export const UTTERANCE_EVENT = 'gloveside:utterance';

/**
 * @param script null: hear only what is dispatched as {@link UTTERANCE_EVENT} on `target`
 */
export function createScriptedEars(script: Script | null, target: EventTarget): Ears {
  return {
    id: 'scripted',
    prepare: async () => ({ kind: 'ready' }),
    listen(request, onEvent) {
      onEvent({ type: 'listening' });
      const hear = (transcripts: readonly string[]) =>
        onEvent({
          type: 'heard',
          hearing: {
            hypotheses: transcripts.map((transcript) => ({ transcript, confidence: null })),
            provider: 'scripted',
            clip: null,
          },
        });
      const onUtterance = (event: Event) => {
        const { detail } = event as CustomEvent<string | readonly string[]>;
        hear(typeof detail === 'string' ? [detail] : detail);
      };
      target.addEventListener(UTTERANCE_EVENT, onUtterance);
      const answer = script?.answer(request) ?? null;
      const timer =
        answer === null
          ? undefined
          : setTimeout(() => {
              onEvent({ type: 'partial', transcript: answer.transcript });
              hear([answer.transcript]);
            }, answer.afterMs);
      return () => {
        clearTimeout(timer);
        target.removeEventListener(UTTERANCE_EVENT, onUtterance);
      };
    },
    close() {},
  };
}
