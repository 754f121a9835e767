import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { MouthSettings } from '../../../src/domain/voice/ports.ts';
import { createBrowserMouth, UTTERANCE_LIMIT, utterances, VOICES_WAIT_MS, watchdogMs } from '../../../src/speech/browserMouth.ts';

const SETTINGS: MouthSettings = { rate: 1, volume: 0.8, voice: null };

class FakeUtterance {
  text: string;
  voice: unknown = null;
  lang = '';
  rate = 1;
  volume = 1;
  onend: (() => void) | null = null;
  onerror: ((event: { error: string }) => void) | null = null;
  constructor(text: string) {
    this.text = text;
  }
}

const voice = (voiceURI: string, lang: string, localService: boolean) => ({
  voiceURI,
  name: voiceURI,
  lang,
  localService,
  default: false,
});

/** A synthesis engine of which the test is the engine. */
class FakeSynthesis extends EventTarget {
  voices: unknown[] = [voice('remote', 'en-US', false), voice('local', 'en_GB', true), voice('german', 'de-DE', true)];
  paused = false;
  readonly log: string[] = [];
  readonly queue: FakeUtterance[] = [];
  cancelReports = true;
  getVoices() {
    return this.voices;
  }
  speak(utterance: FakeUtterance) {
    this.log.push(`speak ${utterance.text}`);
    this.queue.push(utterance);
  }
  cancel() {
    this.log.push('cancel');
    const gone = this.queue.splice(0);
    if (this.cancelReports) for (const utterance of gone) utterance.onerror?.({ error: 'interrupted' });
  }
  resume() {
    this.log.push('resume');
    this.paused = false;
  }
  end() {
    this.queue.shift()?.onend?.();
  }
  fail(error: string) {
    this.queue.shift()?.onerror?.({ error });
  }
}

const mouthOf = (engine: FakeSynthesis) => createBrowserMouth(engine as unknown as SpeechSynthesis);
const settle = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('SpeechSynthesisUtterance', FakeUtterance);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('voices', () => {
  it('offers those of the language, the device’s own first', async () => {
    expect(await mouthOf(new FakeSynthesis()).prepare()).toEqual({
      ready: true,
      voices: [
        { id: 'local', name: 'local', local: true },
        { id: 'remote', name: 'remote', local: false },
      ],
    });
  });

  it('waits for late voices, past an event with an empty list', async () => {
    const engine = new FakeSynthesis();
    const late = engine.voices;
    engine.voices = [];
    const preparing = mouthOf(engine).prepare();
    engine.dispatchEvent(new Event('voiceschanged'));
    await vi.advanceTimersByTimeAsync(500);
    engine.voices = late;
    engine.dispatchEvent(new Event('voiceschanged'));
    expect((await preparing).ready).toBe(true);
  });

  it('is not ready when no voice has come in time', async () => {
    const engine = new FakeSynthesis();
    engine.voices = [voice('german', 'de-DE', true)];
    const preparing = mouthOf(engine).prepare();
    await vi.advanceTimersByTimeAsync(VOICES_WAIT_MS);
    expect(await preparing).toEqual({ ready: false, voices: [] });
  });

  it('is not ready, and fails to speak, in a browser without synthesis', async () => {
    const mouth = createBrowserMouth(null);
    expect(await mouth.prepare()).toEqual({ ready: false, voices: [] });
    expect(await mouth.say('Hello.', SETTINGS, new AbortController().signal)).toBe('failed');
  });

  it('speaks with the voice, rate and loudness chosen, and with a local one when that voice is gone', async () => {
    const engine = new FakeSynthesis();
    const mouth = mouthOf(engine);
    void mouth.say('One.', { ...SETTINGS, voice: 'remote', rate: 1.5 }, new AbortController().signal);
    await settle();
    expect(engine.queue[0]).toMatchObject({ voice: { voiceURI: 'remote' }, rate: 1.5, volume: 0.8, lang: 'en-US' });
    engine.end();
    void mouth.say('Two.', { ...SETTINGS, voice: 'gone' }, new AbortController().signal);
    await settle();
    expect(engine.queue[0]).toMatchObject({ voice: { voiceURI: 'local' } });
  });
});

describe('say', () => {
  it('speaks part after part and resolves at the last end', async () => {
    const engine = new FakeSynthesis();
    const text = `${'First sentence of some length here. '.repeat(3)}${'And another one after it. '.repeat(3)}`;
    const saying = mouthOf(engine).say(text, SETTINGS, new AbortController().signal);
    await settle();
    expect(engine.log).toHaveLength(1);
    engine.end();
    await settle();
    expect(engine.log).toHaveLength(2);
    engine.end();
    expect(await saying).toBe('spoken');
  });

  it('gives up an utterance whose end never comes, cancels it, and goes on', async () => {
    const engine = new FakeSynthesis();
    const saying = mouthOf(engine).say('Sixty-two, left front.', SETTINGS, new AbortController().signal);
    await vi.advanceTimersByTimeAsync(watchdogMs(22, 1) - 1);
    expect(engine.log).toEqual(['speak Sixty-two, left front.']);
    await vi.advanceTimersByTimeAsync(1);
    expect(await saying).toBe('timed-out');
    expect(engine.log).toEqual(['speak Sixty-two, left front.', 'cancel']);
  });

  it('stops at once when cancelled, and speaks the next line only when the old one has gone quiet', async () => {
    const engine = new FakeSynthesis();
    engine.cancelReports = false;
    const mouth = mouthOf(engine);
    const abort = new AbortController();
    const saying = mouth.say('Old.', SETTINGS, abort.signal);
    await settle();
    const old = engine.queue[0];
    abort.abort();
    expect(await saying).toBe('cancelled');
    const next = mouth.say('New.', SETTINGS, new AbortController().signal);
    await vi.advanceTimersByTimeAsync(20);
    expect(engine.log).toEqual(['speak Old.', 'cancel']);
    old?.onerror?.({ error: 'interrupted' });
    await settle();
    expect(engine.log).toEqual(['speak Old.', 'cancel', 'speak New.']);
    engine.end();
    expect(await next).toBe('spoken');
  });

  it('does not wait for ever for an engine that never reports the cancel', async () => {
    const engine = new FakeSynthesis();
    engine.cancelReports = false;
    const mouth = mouthOf(engine);
    const abort = new AbortController();
    void mouth.say('Old.', SETTINGS, abort.signal);
    await settle();
    abort.abort();
    void mouth.say('New.', SETTINGS, new AbortController().signal);
    await vi.advanceTimersByTimeAsync(60);
    expect(engine.log.at(-1)).toBe('speak New.');
  });

  it.each([
    ['interrupted', 'cancelled'],
    ['canceled', 'cancelled'],
    ['synthesis-failed', 'failed'],
    ['not-allowed', 'failed'],
  ])('takes the error %s as %s', async (error, outcome) => {
    const engine = new FakeSynthesis();
    const saying = mouthOf(engine).say('Line.', SETTINGS, new AbortController().signal);
    await settle();
    engine.fail(error);
    expect(await saying).toBe(outcome);
  });

  it('says nothing at all when it was cancelled before it began', async () => {
    const engine = new FakeSynthesis();
    const abort = new AbortController();
    abort.abort();
    expect(await mouthOf(engine).say('Line.', SETTINGS, abort.signal)).toBe('cancelled');
    expect(engine.log).toEqual([]);
  });

  it('wakes an engine that was left paused, and fails where speak throws', async () => {
    const engine = new FakeSynthesis();
    engine.paused = true;
    engine.speak = () => {
      throw new Error('no');
    };
    expect(await mouthOf(engine).say('Line.', SETTINGS, new AbortController().signal)).toBe('failed');
    expect(engine.log).toEqual(['resume']);
  });
});

describe('utterances', () => {
  it('breaks at the end of the last sentence that fits, else at a comma, else between words', () => {
    expect(utterances('One two. Three four. Five six.', 22)).toEqual(['One two. Three four.', 'Five six.']);
    expect(utterances('One two, three four, five six', 22)).toEqual(['One two, three four,', 'five six']);
    expect(utterances('one two three four five six', 12)).toEqual(['one two', 'three four', 'five six']);
    expect(utterances('  ')).toEqual([]);
  });

  it('does not break inside a decimal', () => {
    expect(utterances('Battery at 12.6 volts, fine', 14)).toEqual(['Battery at', '12.6 volts,', 'fine']);
  });

  it('law: nothing is lost, nothing is too long', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z0-9]{1,30}[.,?;]?$/), { maxLength: 60 }), (words) => {
        const parts = utterances(words.join(' '));
        expect(parts.join(' ')).toBe(words.join(' '));
        for (const part of parts) expect(part.length).toBeLessThanOrEqual(UTTERANCE_LIMIT);
      }),
    );
  });
});
