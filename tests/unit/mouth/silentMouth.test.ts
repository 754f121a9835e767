import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createSilentMouth, SILENT_LINE_MS } from '../../../src/speech/silentMouth.ts';

const SETTINGS = { rate: 1, volume: 1, voice: null };

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

it('is always ready and is done after a moment', async () => {
  const mouth = createSilentMouth();
  expect(await mouth.prepare()).toEqual({ ready: true, voices: [] });
  const done = vi.fn();
  void mouth.say('Line.', SETTINGS, new AbortController().signal).then(done);
  await vi.advanceTimersByTimeAsync(SILENT_LINE_MS - 1);
  expect(done).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1);
  expect(done).toHaveBeenCalledWith('spoken');
});

it('can be cancelled before and during', async () => {
  const mouth = createSilentMouth();
  const abort = new AbortController();
  const during = mouth.say('Line.', SETTINGS, abort.signal);
  abort.abort();
  expect(await during).toBe('cancelled');
  expect(await mouth.say('Line.', SETTINGS, abort.signal)).toBe('cancelled');
  expect(vi.getTimerCount()).toBe(0);
});
