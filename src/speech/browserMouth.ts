/**
 * The device's own voices through `speechSynthesis` (Web Speech API). Nothing here waits for the browser alone: voices may
 * come late or never, `end` may never come, `speak` right after `cancel` may be lost, long utterances may be cut off.
 */
import type { CancelSignal, Mouth, MouthSettings } from '../domain/voice/ports.ts';

/** How long to wait for voices that load after the page. */
export const VOICES_WAIT_MS = 2000;
/** Longest utterance in characters: browsers cut longer ones off after about 15 seconds. */
export const UTTERANCE_LIMIT = 120;
/** After a cancel some engines swallow the next utterance; wait for its end, but no longer than this. */
export const CANCEL_SETTLE_MS = 60;
/** Voices shown to choose from; some systems offer thousands. */
const VOICES_SHOWN = 30;

type Outcome = Awaited<ReturnType<Mouth['say']>>;

/** How long an utterance may take before it is given up, in milliseconds: twice what it should. */
export function watchdogMs(characters: number, rate: number): number {
  return 2 * (400 + (characters * 85) / Math.max(rate, 0.1));
}

/**
 * A text in utterances no longer than `limit` characters: at the ends of sentences, else at commas, else between words.
 * Nothing is lost: joined by spaces they are the text with its white space made single.
 */
export function utterances(text: string, limit = UTTERANCE_LIMIT): readonly string[] {
  const clean = text.replace(/\s+/g, ' ').trim();
  const out: string[] = [];
  let rest = clean;
  while (rest.length > limit) {
    const head = rest.slice(0, limit + 1);
    const breaks = [/[.?!]["”)]? (?!.*[.?!]["”)]? )/, /[,;:—–] (?!.*[,;:—–] )/, / (?!.* )/];
    const at = breaks.map((pattern) => head.match(pattern)).find((match) => match !== null && (match.index ?? 0) > 0);
    const end = at ? (at.index ?? 0) + at[0].length : limit;
    out.push(rest.slice(0, end).trim());
    rest = rest.slice(end).trim();
  }
  if (rest !== '') out.push(rest);
  return out;
}

/**
 * @param synthesis left out: the browser's own, or none
 * @param language primary subtag of the voices to use
 */
export function createBrowserMouth(
  synthesis: SpeechSynthesis | null = typeof speechSynthesis === 'undefined' ? null : speechSynthesis,
  language = 'en',
): Mouth {
  /** Resolves when whatever was cancelled last has gone quiet. */
  let settled: Promise<unknown> = Promise.resolve();
  /** Held, because some engines drop the events of an utterance that nobody refers to. */
  const speaking = new Set<SpeechSynthesisUtterance>();

  const usableVoices = (): readonly SpeechSynthesisVoice[] =>
    (synthesis?.getVoices() ?? [])
      .filter(({ lang }) => lang.toLowerCase().split(/[-_]/)[0] === language)
      .sort((a, b) => Number(b.localService) - Number(a.localService) || Number(b.default) - Number(a.default));

  const waitForVoices = (): Promise<readonly SpeechSynthesisVoice[]> =>
    new Promise((resolve) => {
      const now = usableVoices();
      if (now.length > 0 || synthesis === null) {
        resolve(now);
        return;
      }
      // The event may come with an empty list, so it is not believed: only voices end the wait, or the time does.
      const done = (voices: readonly SpeechSynthesisVoice[]): void => {
        clearTimeout(timer);
        synthesis.removeEventListener?.('voiceschanged', look);
        resolve(voices);
      };
      const look = (): void => {
        const voices = usableVoices();
        if (voices.length > 0) done(voices);
      };
      const timer = setTimeout(() => done(usableVoices()), VOICES_WAIT_MS);
      synthesis.addEventListener?.('voiceschanged', look);
    });

  const sayOne = (engine: SpeechSynthesis, text: string, settings: MouthSettings, signal: CancelSignal): Promise<Outcome> =>
    new Promise((resolve) => {
      const utterance = new SpeechSynthesisUtterance(text);
      const voices = usableVoices();
      const voice = voices.find(({ voiceURI }) => voiceURI === settings.voice) ?? voices[0];
      if (voice !== undefined) utterance.voice = voice;
      utterance.lang = voice?.lang ?? 'en-US';
      utterance.rate = settings.rate;
      utterance.volume = settings.volume;
      speaking.add(utterance);

      let outcome: Outcome | null = null;
      let quiet: () => void = () => undefined;
      const finish = (result: Outcome): void => {
        if (outcome !== null) return;
        outcome = result;
        clearTimeout(watchdog);
        resolve(result);
      };
      /** The engine itself has let go of the utterance. */
      const over = (result: Outcome): void => {
        speaking.delete(utterance);
        finish(result);
        quiet();
      };
      const stop = (result: Outcome): void => {
        if (outcome !== null) return;
        settled = Promise.race([
          new Promise<void>((resolveQuiet) => {
            quiet = resolveQuiet;
          }),
          new Promise((resolveLate) => setTimeout(resolveLate, CANCEL_SETTLE_MS)),
        ]).then(() => speaking.delete(utterance));
        finish(result);
        engine.cancel();
      };
      utterance.onend = () => over('spoken');
      utterance.onerror = ({ error }) => over(error === 'interrupted' || error === 'canceled' ? 'cancelled' : 'failed');
      const watchdog = setTimeout(() => stop('timed-out'), watchdogMs(text.length, settings.rate));
      signal.addEventListener('abort', () => stop('cancelled'), { once: true });
      // A page that was paused leaves the engine paused; without this nothing would ever be heard.
      if (engine.paused) engine.resume();
      engine.speak(utterance);
    });

  return {
    id: 'browser',
    async prepare() {
      const voices = await waitForVoices();
      return {
        ready: voices.length > 0,
        voices: voices
          .slice(0, VOICES_SHOWN)
          .map(({ voiceURI, name, localService }) => ({ id: voiceURI, name, local: localService })),
      };
    },
    async say(text, settings, signal) {
      if (synthesis === null) return 'failed';
      let worst: Outcome = 'spoken';
      for (const part of utterances(text)) {
        await settled;
        if (signal.aborted) return 'cancelled';
        let outcome: Outcome;
        try {
          outcome = await sayOne(synthesis, part, settings, signal);
        } catch {
          return 'failed';
        }
        if (outcome === 'cancelled' || outcome === 'failed') return outcome;
        // One part that never reported its end is no reason to swallow the next.
        if (outcome === 'timed-out') worst = outcome;
      }
      return worst;
    },
  };
}
