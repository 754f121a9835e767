import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { SOUND_SENTENCES } from '../../../src/speech/recogniser/inputMeter.ts';
import { appLexicon } from '../../../src/speech/recogniser/lexicon.ts';
import { Listener, type ListenerEvent } from '../../../src/speech/recogniser/listener.ts';
import { Networks } from '../../../src/speech/recogniser/networks.ts';
import { Resampler } from '../../../src/speech/recogniser/resampler.ts';
import { makeNoise } from '../../audio/noise.ts';
import { seeded } from '../../audio/random.ts';
import { requestOf } from '../../audio/sentences.ts';

const networks = new Networks(readAcousticModel(new Uint8Array(readFileSync('public/ears/model.bin'))), appLexicon());
const decoder = networks.for(requestOf('cable-slack').request);

function listen(kind: 'answer' | 'note' = 'answer'): { listener: Listener; events: ListenerEvent[] } {
  const events: ListenerEvent[] = [];
  let time = 0;
  const listener = new Listener({
    onEvent: (event) => events.push(event),
    now: () => {
      time += 1;
      return time;
    },
  });
  listener.open(kind === 'answer' ? { kind, decoder } : { kind });
  return { listener, events };
}

const feed = (listener: Listener, samples: Float32Array, piece = 512) => {
  for (let at = 0; at < samples.length; at += piece) listener.feed(samples.subarray(at, at + piece));
};
const hiss = (seconds: number, level: number, seed = 5) => {
  const random = seeded(seed);
  return Float32Array.from({ length: Math.round(16_000 * seconds) }, () => level * (random() - 0.5));
};
/** A vowel-like buzz: periodic, so it is voice to the ears, and no word. */
const buzz = (seconds: number) =>
  Float32Array.from(
    { length: Math.round(16_000 * seconds) },
    (_, n) => 0.3 * Math.sin((2 * Math.PI * 150 * n) / 16_000) * (1 + Math.sin((2 * Math.PI * 900 * n) / 16_000)),
  );
const joinAll = (...parts: readonly Float32Array[]) => {
  const all = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
};
const types = (events: readonly ListenerEvent[]) => events.map(({ type }) => type);

describe('an open microphone', () => {
  it('hears nothing in a quiet room', () => {
    const { listener, events } = listen();
    feed(listener, hiss(5, 0.002));
    expect(events).toEqual([]);
  });

  it('keeps a note as sound, without a word', () => {
    const { listener, events } = listen('note');
    feed(listener, joinAll(hiss(1, 0.002), buzz(1.5), hiss(2.5, 0.002)));
    expect(types(events)).toEqual(['speech-started', 'heard']);
    const heard = events[1]!;
    if (heard.type !== 'heard') throw new Error('a note is expected');
    expect(heard.hypotheses).toEqual([{ transcript: '', confidence: null }]);
    expect(heard.samples.length / 16_000).toBeGreaterThan(1.5);
    expect(heard.samples.length / 16_000).toBeLessThan(5);
  });

  it.each([
    [100, 0],
    [260, 0],
    [700, 440],
  ])('waits for a decoder that takes %d ms for %d ms: it begins 260 ms ahead of the endpoint', (takesMs, waitMs) => {
    let time = 0;
    const waits: number[] = [];
    const slow = {
      decode: () => {
        time += takesMs;
        return { hypotheses: [], evidence: null };
      },
      partial: () => [],
    };
    const listener = new Listener({
      now: () => time,
      onEvent: (event) => {
        if (event.type === 'not-understood') waits.push(event.timing.waitMs);
      },
    });
    listener.open({ kind: 'answer', decoder: slow });
    feed(listener, joinAll(hiss(1, 0.002), buzz(1), hiss(1.5, 0.002)));
    expect(waits).toEqual([waitMs]);
  });

  it('never takes a buzz for an answer, and says that it did not understand', () => {
    const { listener, events } = listen();
    feed(listener, joinAll(hiss(1, 0.002), buzz(1), hiss(1.5, 0.002)));
    expect(events.filter((event) => event.type === 'heard' && (event.hypotheses[0]?.confidence ?? 0) >= 0.6)).toEqual([]);
  });

  it('drops what comes while the gate is closed', () => {
    const { listener, events } = listen();
    listener.close();
    feed(listener, joinAll(hiss(1, 0.002), buzz(1), hiss(1.5, 0.002)));
    expect(events).toEqual([]);
  });

  it('says that no sound comes from the microphone, once', () => {
    const { listener, events } = listen();
    feed(listener, new Float32Array(16_000 * 12));
    expect(events).toEqual([{ type: 'sound', problem: 'silent', sentence: SOUND_SENTENCES.silent }]);
  });

  it('says that the sound breaks up', () => {
    const { listener, events } = listen();
    const square = Float32Array.from({ length: 16_000 * 3 }, (_, n) => (Math.floor(n / 50) % 2 === 0 ? 1 : -1));
    feed(listener, square);
    expect(events.some((event) => event.type === 'sound' && event.problem === 'clipping')).toBe(true);
  });

  it('says that it is too windy', () => {
    const { listener, events } = listen();
    const wind = makeNoise('wind', 16_000 * 6, seeded(6), []);
    const peak = wind.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    const rush = hiss(6, 0.25, 8);
    feed(
      listener,
      wind.map((sample, n) => (0.6 * sample) / peak + rush[n]!),
    );
    expect(events.some((event) => event.type === 'sound' && event.problem === 'wind')).toBe(true);
  });

  it('gives the same result however the sound is cut', () => {
    const sound = joinAll(hiss(1, 0.002), buzz(1), hiss(1.5, 0.002));
    const results = [64, 512, 4096, sound.length].map((piece) => {
      const { listener, events } = listen();
      feed(listener, sound, piece);
      return types(events).filter((type) => type !== 'partial');
    });
    for (const result of results) expect(result).toEqual(results[0]);
  });

  it('survives any sound at any rate', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(8000, 44_100, 48_000),
        fc.array(fc.oneof(fc.float({ min: -2, max: 2, noNaN: true }), fc.constantFrom(Number.NaN, Infinity, -Infinity, 0)), {
          minLength: 1,
          maxLength: 400,
        }),
        (rate, pattern) => {
          const { listener, events } = listen();
          const resampler = new Resampler(rate, 16_000);
          for (let round = 0; round < 60; round += 1)
            listener.feed(
              resampler.process(Float32Array.from({ length: 1024 }, (_, n) => pattern[(n + round) % pattern.length]!)),
            );
          listener.finish();
          for (const event of events)
            if (event.type === 'heard')
              for (const { confidence } of event.hypotheses) expect(Number.isFinite(confidence)).toBe(true);
        },
      ),
      { numRuns: 12 },
    );
  });

  it('does not grow in a long noise', () => {
    const { listener } = listen();
    const wind = makeNoise('gusts', 16_000 * 20, seeded(9), []).map((sample) => sample / 60);
    feed(listener, wind);
    globalThis.gc?.();
    const before = process.memoryUsage();
    for (let round = 0; round < 4; round += 1) feed(listener, wind);
    globalThis.gc?.();
    const after = process.memoryUsage();
    expect(after.arrayBuffers - before.arrayBuffers).toBeLessThan(30_000_000);
  });
});
