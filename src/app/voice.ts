/** Ears, mouth and cues by the settings, with what to fall back to. */
import { phrasesFor } from '../domain/language/grammarPhrases.ts';
import type { Cue, Ears, EarsId, Mouth, MouthId, MouthSettings } from '../domain/voice/ports.ts';
import type { Settings } from '../domain/voice/settings.ts';
import type { Record } from '../record/record.ts';
import { createBrowserEars } from '../speech/browserEars.ts';
import { createBrowserMouth } from '../speech/browserMouth.ts';
import { createBuiltInEars } from '../speech/builtInEars.ts';
import { type Cues, createCues } from '../speech/cues.ts';
import { createLazyMouth } from '../speech/lazyMouth.ts';
import { createScriptedEars, type Script } from '../speech/scriptedEars.ts';
import { createSilentMouth } from '../speech/silentMouth.ts';
import type { Store } from './store.ts';

export interface Voice {
  /** In order of preference; empty when the ears are off. */
  ears(): readonly Ears[];
  /** A person who answers by a script, for the rehearsal. */
  scripted(script: Script): readonly Ears[];
  mouth(): { readonly mouth: Mouth; readonly settings: MouthSettings };
  playCue(cue: Cue): void;
  adjustLoudness(by: 1 | -1): void;
  /** Call in the first press of a round: browsers allow sound only after one. Picks a mouth that can speak. */
  unlock(): Promise<void>;
  voicesOf(id: MouthId): Promise<readonly { readonly id: string; readonly name: string; readonly local: boolean }[]>;
  /** Which of the device's and our own voice can speak here. */
  mouthsThatSpeak(): Promise<readonly ('browser' | 'bundled')[]>;
}

export interface VoiceOptions {
  readonly settings: Store<Settings>;
  readonly saveSettings: (settings: Settings) => void;
  readonly record: Record;
  readonly newId: () => string;
  /** `scripted`: browser tests speak through events instead of a microphone. `off`: buttons only, for this visit. */
  readonly earsFromAddress: 'scripted' | 'off' | null;
  /** Nothing is said aloud on this visit: the words are on the screen. */
  readonly silent: boolean;
}

const LOUDNESS_STEP = 0.2;

export function createVoice(options: VoiceOptions): Voice {
  const { settings, record } = options;
  let context: AudioContext | null = null;
  let cues: Cues | null = null;
  const audio = () => {
    context ??= new AudioContext();
    return context;
  };
  const mouths: Readonly<globalThis.Record<MouthId, Mouth>> = {
    browser: createBrowserMouth(),
    bundled: createLazyMouth('bundled', async () => {
      const { createBundledMouth } = await import('../speech/bundledMouth.ts');
      return createBundledMouth({ url: '/voice/', context: audio });
    }),
    silent: createSilentMouth(),
  };
  /** The chosen mouth first; then one that needs nothing from the device; then the screen alone. */
  let live: MouthId = 'silent';

  const keepClip = async (clip: { bytes: ArrayBuffer; type: string }) => {
    const id = options.newId();
    const cap = settings.get().clipCapMb * 1_000_000;
    try {
      await record.putClip(id, clip.bytes, clip.type);
      await record.dropOldestClips(cap);
    } catch {
      // A clip may be lost; an answer may not wait for it.
    }
    return id;
  };
  const builtIn = createBuiltInEars({
    modelUrl: '/ears/',
    keepClip: (clip) => keepClip(clip),
    clipsWanted: () => settings.get().keepClips,
    keepsMicrophone: () => settings.get().keepMicrophone,
  });
  const browser = createBrowserEars({ phrasesFor });
  const byId: Readonly<globalThis.Record<Exclude<EarsId, 'scripted'>, Ears>> = { 'built-in': builtIn, browser };

  return {
    ears() {
      if (options.earsFromAddress === 'scripted') return [createScriptedEars(null, window)];
      if (options.earsFromAddress === 'off') return [];
      const { ears } = settings.get();
      if (ears === 'off') return [];
      const order: readonly Exclude<EarsId, 'scripted'>[] =
        ears === 'browser' ? ['browser', 'built-in'] : ['built-in', 'browser'];
      return order.map((id) => byId[id]);
    },
    scripted: (script) => [createScriptedEars(script, window)],
    mouth() {
      const { speech } = settings.get();
      return {
        mouth: mouths[live],
        settings: { rate: speech.rate, volume: speech.volume, voice: live === speech.mouth ? speech.voice : null },
      };
    },
    playCue(cue) {
      const { cues: sound, vibration, speech } = settings.get();
      cues ??= createCues({ context: audio, vibrate: (pattern) => navigator.vibrate?.(pattern) });
      cues.play(cue, { sound, vibration, volume: speech.volume });
    },
    adjustLoudness(by) {
      const now = settings.get();
      const volume = Math.min(1, Math.max(LOUDNESS_STEP, now.speech.volume + by * LOUDNESS_STEP));
      options.saveSettings({ ...now, speech: { ...now.speech, volume } });
    },
    async unlock() {
      void audio().resume();
      const chosen = options.silent ? 'silent' : settings.get().speech.mouth;
      for (const id of [...new Set<MouthId>([chosen, 'browser', 'bundled', 'silent'])]) {
        if (chosen === 'silent' || (await mouths[id].prepare()).ready) {
          live = chosen === 'silent' ? 'silent' : id;
          return;
        }
      }
    },
    voicesOf: async (id) => (await mouths[id].prepare()).voices,
    async mouthsThatSpeak() {
      const speaking: ('browser' | 'bundled')[] = [];
      for (const id of ['browser', 'bundled'] as const) if ((await mouths[id].prepare()).ready) speaking.push(id);
      return speaking;
    },
  };
}
