/**
 * A mouth of our own, for a device without a voice: recorded lines and words, spoken by the vocoder and played through Web
 * Audio. It needs no network once its file is kept, sounds the same everywhere, and knows to the sample when it has ended.
 */
import type { Mouth } from '../domain/voice/ports.ts';
import { joinText, limit, PAUSE_FRAMES } from './mouthClips/joinLine.ts';
import { HOP, SAMPLE_RATE, synthesize } from './mouthClips/vocoder.ts';
import { VOICE_FILE } from './mouthClips/voiceFile.ts';
import { loadVoicePack, type VoicePack } from './mouthClips/voicePack.ts';

export interface BundledMouthOptions {
  /** Folder of the voice file, ending in "/". */
  readonly url: string;
  /** Asked for when something is to be said; running only after the person has pressed something. */
  readonly context: () => AudioContext;
  /** For tests; the browser's own otherwise. */
  readonly load?: (url: string) => Promise<Uint8Array>;
}

/** Time to get the first samples ready before they are due, in seconds. */
const LEAD_S = 0.02;
/** How much longer than its own length a line may take before it is given up, in milliseconds. */
export const WATCHDOG_SLACK_MS = 1500;

type Outcome = Awaited<ReturnType<Mouth['say']>>;

/** Loads nothing until it is asked to prepare or to speak; a failed load is tried again the next time. */
export function createBundledMouth({ url, context, load = fetchBytes }: BundledMouthOptions): Mouth {
  let loading: Promise<VoicePack> | null = null;
  const pack = (): Promise<VoicePack> => {
    loading ??= load(`${url}${VOICE_FILE}`).then(loadVoicePack);
    loading.catch(() => {
      loading = null;
    });
    return loading;
  };

  return {
    id: 'bundled',
    async prepare() {
      try {
        const { voice } = await pack();
        return { ready: true, voices: [{ id: voice, name: 'Gloveside', local: true }] };
      } catch {
        return { ready: false, voices: [] };
      }
    },
    async say(text, { rate, volume }, signal) {
      try {
        const { sentences } = joinText(text, await pack());
        if (signal.aborted) return 'cancelled';
        if (sentences.length === 0) return 'spoken';
        const audio = context();
        if (audio.state !== 'running') await Promise.race([audio.resume(), wait(300)]);
        if (audio.state !== 'running') return 'failed';
        if (signal.aborted) return 'cancelled';
        return await play(audio, sentences, { rate: Math.min(2, Math.max(0.5, rate)), volume }, signal);
      } catch {
        return 'failed';
      }
    },
  };
}

async function play(
  audio: AudioContext,
  sentences: ReturnType<typeof joinText>['sentences'],
  { rate, volume }: { readonly rate: number; readonly volume: number },
  signal: Parameters<Mouth['say']>[2],
): Promise<Outcome> {
  const gain = audio.createGain();
  gain.gain.value = Math.min(1, Math.max(0, volume));
  gain.connect(audio.destination);
  const sources = new Set<AudioBufferSourceNode>();
  let cancelled = false;
  const stop = (): void => {
    cancelled = true;
    for (const source of sources) source.stop();
  };
  signal.addEventListener('abort', stop, { once: true });

  // Each sentence is made while the one before it is heard, and starts on the very sample where the silence ends.
  const pauseS = (PAUSE_FRAMES.sentence * HOP) / SAMPLE_RATE / rate;
  let next = audio.currentTime + LEAD_S;
  let last: Promise<void> = Promise.resolve();
  for (const frames of sentences) {
    const samples = limit(synthesize(frames, rate));
    if (cancelled) break;
    const buffer = audio.createBuffer(1, Math.max(1, samples.length), SAMPLE_RATE);
    buffer.getChannelData(0).set(samples);
    const source = audio.createBufferSource();
    source.buffer = buffer;
    source.connect(gain);
    last = new Promise((resolve) => {
      source.onended = () => {
        sources.delete(source);
        resolve();
      };
    });
    sources.add(source);
    const start = Math.max(next, audio.currentTime + LEAD_S);
    source.start(start);
    next = start + samples.length / SAMPLE_RATE + pauseS;
    // Let a cancel, a button or the screen have its turn before the next sentence is made.
    await wait(0);
  }
  const outcome = await Promise.race([
    last.then((): Outcome => (cancelled ? 'cancelled' : 'spoken')),
    wait((next - audio.currentTime) * 1000 + WATCHDOG_SLACK_MS).then((): Outcome => (cancelled ? 'cancelled' : 'timed-out')),
    aborted(signal),
  ]);
  if (outcome === 'timed-out') stop();
  gain.disconnect();
  return outcome;
}

function aborted(signal: Parameters<Mouth['say']>[2]): Promise<Outcome> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve('cancelled');
    else signal.addEventListener('abort', () => resolve('cancelled'), { once: true });
  });
}

const wait = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

async function fetchBytes(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}
