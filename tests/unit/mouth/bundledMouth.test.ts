import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Mouth } from '../../../src/domain/voice/ports.ts';
import { createBundledMouth, WATCHDOG_SLACK_MS } from '../../../src/speech/bundledMouth.ts';
import { joinText, PAUSE_FRAMES } from '../../../src/speech/mouthClips/joinLine.ts';
import { HOP, SAMPLE_RATE, synthesize } from '../../../src/speech/mouthClips/vocoder.ts';
import { openVoicePack } from '../../../src/speech/mouthClips/voicePack.ts';
import { clip, givenPackFile, LETTERS } from './givenVoice.ts';

const SETTINGS = { rate: 1, volume: 0.7, voice: null };
const FILE = givenPackFile([clip('left front', 'line', 60), clip('sixty two', 'line', 50), clip('left'), ...LETTERS]);

interface Played {
  readonly startS: number;
  readonly samples: Float32Array;
  readonly sampleRate: number;
  stoppedS: number | null;
}

/** A context whose clock the test moves; a source ends when it has played out or was stopped. */
function givenContext({ state = 'running' as AudioContextState, ends = true } = {}) {
  const played: Played[] = [];
  const volumes: number[] = [];
  const began = Date.now();
  const context = {
    state,
    destination: {},
    get currentTime() {
      return (Date.now() - began) / 1000;
    },
    resume: vi.fn(async () => undefined),
    createGain: () => {
      const node = { gain: { value: 1 }, connect: () => volumes.push(node.gain.value), disconnect: () => undefined };
      return node;
    },
    createBuffer: (_channels: number, length: number, sampleRate: number) => {
      const samples = new Float32Array(length);
      return { samples, sampleRate, length, getChannelData: () => samples };
    },
    createBufferSource: () => {
      let record: Played | null = null;
      const source = {
        buffer: null as { samples: Float32Array; sampleRate: number } | null,
        onended: null as (() => void) | null,
        connect: () => undefined,
        start: (at: number) => {
          const { samples = new Float32Array(), sampleRate = 1 } = source.buffer ?? {};
          record = { startS: at, samples, sampleRate, stoppedS: null };
          played.push(record);
          const untilEnd = (at + samples.length / sampleRate - context.currentTime) * 1000;
          if (ends) setTimeout(() => source.onended?.(), untilEnd);
        },
        stop: () => {
          if (record) record.stoppedS = context.currentTime;
          source.onended?.();
        },
      };
      return source;
    },
  };
  return { context: context as unknown as AudioContext, raw: context, played, volumes };
}

let live: AudioContext;
let mouth: Mouth;

/** The mouth of this test, its file already opened, on this context. */
const mouthOn = (context: AudioContext): Mouth => {
  live = context;
  return mouth;
};

beforeEach(async () => {
  mouth = createBundledMouth({ url: '/voice/', context: () => live, load: async () => FILE });
  // Opening the file takes real time; only what comes after is on the test's clock.
  await mouth.prepare();
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('prepare', () => {
  it('loads the file once, from the folder it was given', async () => {
    vi.useRealTimers();
    const load = vi.fn(async () => FILE);
    const mouth = createBundledMouth({ url: '/voice/', context: () => givenContext().context, load });
    expect(load).not.toHaveBeenCalled();
    expect(await mouth.prepare()).toMatchObject({ ready: true, voices: [{ id: 'test', local: true }] });
    await mouth.prepare();
    expect(load.mock.calls).toEqual([['/voice/slt.voice']]);
  });

  it('is not ready when the file is damaged or missing, and tries again', async () => {
    vi.useRealTimers();
    const damaged = FILE.slice();
    damaged[40] = (damaged[40] ?? 0) ^ 1;
    const load = vi
      .fn<() => Promise<Uint8Array>>()
      .mockResolvedValueOnce(damaged)
      .mockRejectedValueOnce(new Error('offline'))
      .mockResolvedValue(FILE);
    const mouth = createBundledMouth({ url: '/voice/', context: () => givenContext().context, load });
    expect(await mouth.prepare()).toEqual({ ready: false, voices: [] });
    expect(await mouth.prepare()).toEqual({ ready: false, voices: [] });
    expect((await mouth.prepare()).ready).toBe(true);
  });
});

describe('say', () => {
  it('plays each sentence where the silence after the one before ends, to the sample', async () => {
    const { context, played, volumes } = givenContext();
    const saying = mouthOn(context).say('Left front. 62.', SETTINGS, new AbortController().signal);
    await vi.runAllTimersAsync();
    expect(await saying).toBe('spoken');
    const [first, second] = played;
    const gap = ((second?.startS ?? 0) - (first?.startS ?? 0)) * SAMPLE_RATE - (first?.samples.length ?? 0);
    expect(gap).toBeCloseTo(PAUSE_FRAMES.sentence * HOP, 6);
    expect(played.map(({ sampleRate }) => sampleRate)).toEqual([SAMPLE_RATE, SAMPLE_RATE]);
    expect(volumes).toEqual([0.7]);
    const [frames = []] = joinText('Left front.', openVoicePack(FILE)).sentences;
    expect(first?.samples.length).toBe(synthesize(frames).length);
  });

  it('speaks faster at a higher rate, silences too', async () => {
    const { context, played } = givenContext();
    void mouthOn(context).say('Left front. 62.', { ...SETTINGS, rate: 2 }, new AbortController().signal);
    await vi.runAllTimersAsync();
    const [first, second] = played;
    expect(first?.samples.length).toBe(30 * HOP);
    expect(((second?.startS ?? 0) - (first?.startS ?? 0)) * SAMPLE_RATE).toBeCloseTo(
      30 * HOP + (PAUSE_FRAMES.sentence * HOP) / 2,
      6,
    );
  });

  it('stops at once when cancelled, and what was still to come too', async () => {
    const { context, played } = givenContext();
    const abort = new AbortController();
    const saying = mouthOn(context).say('Left front. 62.', SETTINGS, abort.signal);
    await vi.advanceTimersByTimeAsync(200);
    abort.abort();
    expect(await saying).toBe('cancelled');
    expect(played.map(({ stoppedS }) => stoppedS !== null)).toEqual([true, true]);
  });

  it('makes no sound when cancelled before it began', async () => {
    const { context, played } = givenContext();
    const abort = new AbortController();
    abort.abort();
    expect(await mouthOn(context).say('Left front.', SETTINGS, abort.signal)).toBe('cancelled');
    expect(played).toEqual([]);
  });

  it('does not wait for an end that never comes', async () => {
    const { context, played } = givenContext({ ends: false });
    const saying = mouthOn(context).say('Left front.', SETTINGS, new AbortController().signal);
    const done = vi.fn();
    void saying.then(done);
    await vi.advanceTimersByTimeAsync(600 + WATCHDOG_SLACK_MS);
    expect(done).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(600);
    expect(done).toHaveBeenCalledWith('timed-out');
    expect(played[0]?.stoppedS).not.toBeNull();
  });

  it('fails when sound is not allowed yet, when the file is gone, and when there is no sound at all', async () => {
    const { context, raw } = givenContext({ state: 'suspended' });
    const suspended = mouthOn(context).say('Left front.', SETTINGS, new AbortController().signal);
    await vi.runAllTimersAsync();
    expect(await suspended).toBe('failed');
    expect(raw.resume).toHaveBeenCalledOnce();
    const gone = createBundledMouth({ url: '/', context: () => context, load: () => Promise.reject(new Error('offline')) });
    expect(await gone.say('Left.', SETTINGS, new AbortController().signal)).toBe('failed');
    vi.useRealTimers();
    const none = createBundledMouth({
      url: '/',
      context: () => {
        throw new Error('no audio');
      },
      load: async () => FILE,
    });
    expect(await none.say('Left.', SETTINGS, new AbortController().signal)).toBe('failed');
  });

  it('is done at once where there is nothing to say', async () => {
    const { context, played } = givenContext();
    expect(await mouthOn(context).say(' … ', SETTINGS, new AbortController().signal)).toBe('spoken');
    expect(played).toEqual([]);
  });
});
