/**
 * The browser's own recogniser behind our port. Never waits for its `end` alone: every session has its own watchdog, and
 * closes once on `error`, `end` or that timer, whichever comes first.
 *
 * Source for the behaviour handled here: Web Speech API (WICG, community draft), error codes of
 * `SpeechRecognitionErrorEvent`, and observed behaviour of Chromium 156.
 */
import type { Hearing } from '../domain/language/hearing.ts';
import type { Ears, EarsEvent, EarsState, ListenRequest } from '../domain/voice/ports.ts';

/** The parts of the API that typings do not have yet (phrases, on-device packs). */
interface RecognitionPhrase {
  readonly phrase: string;
  readonly boost: number;
}
interface Recognition extends SpeechRecognition {
  phrases?: RecognitionPhrase[];
}
interface RecognitionClass {
  new (): Recognition;
  available?(options: {
    langs: string[];
    processLocally: boolean;
  }): Promise<'unavailable' | 'downloadable' | 'downloading' | 'available'>;
  install?(options: { langs: string[]; processLocally: boolean }): Promise<boolean>;
}
interface PhraseClass {
  new (phrase: string, boost: number): RecognitionPhrase;
}
interface RecognitionWindow {
  readonly SpeechRecognition?: RecognitionClass;
  readonly webkitSpeechRecognition?: RecognitionClass;
  readonly SpeechRecognitionPhrase?: PhraseClass;
  readonly isSecureContext: boolean;
  readonly navigator: Navigator;
}

export interface BrowserEarsOptions {
  /** Phrases that bias the recogniser for a request; only used with an on-device pack. */
  readonly phrasesFor: (request: ListenRequest) => readonly string[];
  readonly lang?: string;
  readonly scope?: RecognitionWindow;
}

/** A session that reports nothing for this long is taken for dead and started again. */
const SESSION_MS = 30_000;
/** Some engines start and never open the microphone. */
const START_MS = 4_000;
const PHRASE_BOOST = 3;
const RESTART_PAUSE_MS = 120;
/** Restarts without a single result before the engine is given up for this round. */
const RESTARTS_ALLOWED = 200;

const REASONS: Readonly<Record<string, { reason: Extract<EarsEvent, { type: 'failed' }>['reason']; sentence: string }>> = {
  'not-allowed': {
    reason: 'denied',
    sentence: 'The microphone is not allowed. Use the buttons, or allow it in the browser settings.',
  },
  'audio-capture': { reason: 'no-microphone', sentence: 'No microphone can be opened. Check the headset, or use the buttons.' },
  network: { reason: 'network', sentence: "The browser's recogniser needs a network and there is none." },
  'service-not-allowed': { reason: 'language', sentence: "The browser's recogniser cannot be used here." },
  'language-not-supported': { reason: 'language', sentence: "The browser's recogniser has no English on this device." },
};

export function createBrowserEars(options: BrowserEarsOptions): Ears {
  const scope = options.scope ?? (window as unknown as RecognitionWindow);
  const lang = options.lang ?? 'en-US';
  const Recognizer = scope.SpeechRecognition ?? scope.webkitSpeechRecognition;
  let local = false;
  let usePhrases = false;

  return {
    id: 'browser',
    async prepare(): Promise<EarsState> {
      if (!Recognizer) return { kind: 'unavailable', sentence: 'This browser has no recogniser of its own.' };
      // Only "available" counts as on-device: "downloadable" may promise a pack that never comes.
      try {
        if (Recognizer.available) {
          let pack = await Recognizer.available({ langs: [lang], processLocally: true });
          if (
            pack === 'downloadable' &&
            scope.navigator.onLine &&
            Recognizer.install &&
            (await Recognizer.install({ langs: [lang], processLocally: true }))
          ) {
            pack = await Recognizer.available({ langs: [lang], processLocally: true });
          }
          local = pack === 'available';
        }
      } catch {
        local = false;
      }
      usePhrases = local && scope.SpeechRecognitionPhrase !== undefined;
      if (!local && !scope.navigator.onLine) {
        return { kind: 'unavailable', sentence: "The browser's recogniser needs a network and there is none." };
      }
      try {
        const permission = await scope.navigator.permissions.query({ name: 'microphone' });
        if (permission.state === 'denied') return { kind: 'denied' };
      } catch {
        // Not every browser can be asked; the first session will tell.
      }
      return { kind: 'ready' };
    },

    listen(request, onEvent) {
      if (!Recognizer) {
        onEvent({ type: 'failed', reason: 'other', sentence: 'This browser has no recogniser of its own.' });
        return () => {};
      }
      let stopped = false;
      let restarts = 0;
      let closeSession = () => {};
      let timer: ReturnType<typeof setTimeout> | undefined;

      const later = (run: () => void, ms: number) => {
        timer = setTimeout(() => {
          if (!stopped) run();
        }, ms);
      };
      const fail = (code: string) => {
        if (stopped) return;
        stopped = true;
        const known = REASONS[code] ?? {
          reason: 'other' as const,
          sentence: `The browser's recogniser stopped (${code || 'no reason given'}).`,
        };
        onEvent({ type: 'failed', ...known });
      };

      const start = () => {
        const recognition = new Recognizer();
        recognition.lang = lang;
        recognition.interimResults = true;
        recognition.maxAlternatives = 5;
        recognition.continuous = request.mode === 'free';
        if (local) recognition.processLocally = true;
        if (usePhrases && scope.SpeechRecognitionPhrase) {
          const Phrase = scope.SpeechRecognitionPhrase;
          try {
            recognition.phrases = options.phrasesFor(request).map((phrase) => new Phrase(phrase, PHRASE_BOOST));
          } catch {
            usePhrases = false;
          }
        }
        let over = false;
        let opened = false;
        let heard = false;
        let watchdog = setTimeout(() => close('silent-start'), START_MS);
        const alive = () => {
          clearTimeout(watchdog);
          watchdog = setTimeout(() => close('watchdog'), SESSION_MS);
        };
        /** Runs once, whatever comes first. */
        const close = (why: string) => {
          if (over) return;
          over = true;
          clearTimeout(watchdog);
          try {
            recognition.abort();
          } catch {
            // Already stopped.
          }
          if (stopped) return;
          if (why === 'phrases-not-supported') {
            usePhrases = false;
          } else if (why === 'silent-start' && !opened) {
            return fail('audio-capture');
          } else if (REASONS[why]) {
            return fail(why);
          }
          restarts = heard ? 0 : restarts + 1;
          if (restarts > RESTARTS_ALLOWED) return fail(why);
          // `no-speech`, `aborted` by another app and a plain `end` are all normal: listen on.
          later(start, RESTART_PAUSE_MS);
        };
        closeSession = () => close('stopped');
        recognition.onstart = alive;
        recognition.onaudiostart = () => {
          opened = true;
          alive();
          if (!stopped) onEvent({ type: 'listening' });
        };
        recognition.onspeechstart = () => {
          alive();
          if (!stopped) onEvent({ type: 'speech-started' });
        };
        recognition.onresult = (event) => {
          opened = true;
          heard = true;
          alive();
          if (stopped || over) return;
          const result = event.results[event.results.length - 1];
          if (!result) return;
          if (!result.isFinal) {
            onEvent({ type: 'partial', transcript: Array.from(event.results, (part) => part[0]?.transcript ?? '').join(' ') });
            return;
          }
          const hearing = hearingOf(result);
          if (hearing) onEvent({ type: 'heard', hearing });
        };
        recognition.onnomatch = () => {
          if (!stopped && !over) onEvent({ type: 'not-understood' });
        };
        recognition.onerror = (event) => close(event.error);
        recognition.onend = () => close('end');
        try {
          recognition.start();
        } catch (error) {
          close(error instanceof Error ? error.name : 'start');
        }
      };

      start();
      return () => {
        if (stopped) return;
        stopped = true;
        clearTimeout(timer);
        closeSession();
      };
    },

    close() {},
  };
}

/** N-best of a final result; null where the engine reports an empty one. */
function hearingOf(result: SpeechRecognitionResult): Hearing | null {
  const hypotheses = Array.from(result, ({ transcript, confidence }) => ({
    transcript: transcript.trim(),
    // Android reports 0 for "no idea".
    confidence: confidence > 0 && confidence <= 1 ? confidence : null,
  })).filter((hypothesis) => hypothesis.transcript !== '');
  return hypotheses.length === 0 ? null : { hypotheses, provider: 'browser', clip: null };
}
