import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { EarsEvent, ListenRequest } from '../../../src/domain/voice/ports.ts';
import { type BrowserEarsOptions, createBrowserEars } from '../../../src/speech/browserEars.ts';

const REQUEST: ListenRequest = {
  expects: { kind: 'state', ok: ['pinned'], problem: ['loose'], yesMeans: 'ok' },
  position: null,
  positions: [],
  others: [],
  mode: 'answer',
};

/** Stands in for the browser's recogniser; the events it sends are those that Chromium 156 was seen to send. */
class FakeRecognition {
  static made: FakeRecognition[] = [];
  lang = '';
  interimResults = false;
  maxAlternatives = 1;
  continuous = false;
  processLocally = false;
  phrases: unknown[] = [];
  aborted = false;
  started = false;
  onstart: (() => void) | null = null;
  onaudiostart: (() => void) | null = null;
  onspeechstart: (() => void) | null = null;
  onresult: ((event: unknown) => void) | null = null;
  onnomatch: (() => void) | null = null;
  onerror: ((event: { error: string }) => void) | null = null;
  onend: (() => void) | null = null;
  constructor() {
    FakeRecognition.made.push(this);
  }
  start() {
    if (this.started) throw new DOMException('already started', 'InvalidStateError');
    this.started = true;
  }
  abort() {
    this.aborted = true;
  }
  result(isFinal: boolean, ...alternatives: [string, number][]) {
    const result = Object.assign(
      alternatives.map(([transcript, confidence]) => ({ transcript, confidence })),
      { isFinal },
    );
    this.onresult?.({ results: [result], resultIndex: 0 });
  }
}

type Scope = NonNullable<BrowserEarsOptions['scope']>;

function ears(changes: { available?: string; online?: boolean; permission?: string; none?: boolean } = {}) {
  FakeRecognition.made = [];
  const Recognition = Object.assign(class extends FakeRecognition {}, {
    available: async () => changes.available ?? 'downloadable',
    install: async () => false,
  });
  const scope = {
    ...(changes.none ? {} : { SpeechRecognition: Recognition }),
    SpeechRecognitionPhrase: class {
      phrase: string;
      boost: number;
      constructor(phrase: string, boost: number) {
        this.phrase = phrase;
        this.boost = boost;
      }
    },
    isSecureContext: true,
    navigator: {
      onLine: changes.online ?? true,
      permissions: { query: async () => ({ state: changes.permission ?? 'granted' }) },
    },
  } as unknown as Scope;
  return createBrowserEars({ phrasesFor: () => ['pinned', 'loose'], scope });
}

const latest = () => {
  const made = FakeRecognition.made.at(-1);
  if (!made) throw new Error('no recogniser was made');
  return made;
};

describe("the browser's ears", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('are not there where the browser has none', async () => {
    expect((await ears({ none: true }).prepare(() => {})).kind).toBe('unavailable');
  });

  it('are not there offline without an on-device pack: "downloadable" is not "available"', async () => {
    expect((await ears({ online: false }).prepare(() => {})).kind).toBe('unavailable');
    expect((await ears({ online: false, available: 'available' }).prepare(() => {})).kind).toBe('ready');
  });

  it('know a refused microphone before they ask for it', async () => {
    expect((await ears({ permission: 'denied' }).prepare(() => {})).kind).toBe('denied');
  });

  it('bias the recogniser only when it runs on the device', async () => {
    const remote = ears();
    await remote.prepare(() => {});
    remote.listen(REQUEST, () => {});
    expect(latest().phrases).toEqual([]);
    const local = ears({ available: 'available' });
    await local.prepare(() => {});
    local.listen(REQUEST, () => {});
    expect(latest().processLocally).toBe(true);
    expect(latest().phrases).toHaveLength(2);
  });

  it('report a final result with its alternatives, and no confidence where the engine says 0', async () => {
    const own = ears();
    await own.prepare(() => {});
    const events: EarsEvent[] = [];
    own.listen(REQUEST, (event) => events.push(event));
    latest().onaudiostart?.();
    latest().result(false, ['pin', 0]);
    latest().result(true, ['pinned', 0.9], ['pined', 0]);
    expect(events).toEqual([
      { type: 'listening' },
      { type: 'partial', transcript: 'pin' },
      {
        type: 'heard',
        hearing: {
          hypotheses: [
            { transcript: 'pinned', confidence: 0.9 },
            { transcript: 'pined', confidence: null },
          ],
          provider: 'browser',
          clip: null,
        },
      },
    ]);
  });

  it.each([
    ['not-allowed', 'denied'],
    ['audio-capture', 'no-microphone'],
    ['network', 'network'],
    ['service-not-allowed', 'language'],
    ['language-not-supported', 'language'],
  ])('give up on %s once, although the browser says it twice and then ends', async (code, reason) => {
    const own = ears();
    await own.prepare(() => {});
    const events: EarsEvent[] = [];
    own.listen(REQUEST, (event) => events.push(event));
    latest().onerror?.({ error: code });
    latest().onerror?.({ error: code });
    latest().onend?.();
    vi.advanceTimersByTime(60_000);
    expect(events).toHaveLength(1);
    expect(events[0]).toMatchObject({ type: 'failed', reason });
    expect(FakeRecognition.made).toHaveLength(1);
  });

  it.each(['no-speech', 'aborted'])('listen on after %s: silence is not an error', async (code) => {
    const own = ears();
    await own.prepare(() => {});
    const events: EarsEvent[] = [];
    own.listen(REQUEST, (event) => events.push(event));
    latest().onaudiostart?.();
    latest().onerror?.({ error: code });
    latest().onend?.();
    vi.advanceTimersByTime(1_000);
    expect(events).toEqual([{ type: 'listening' }]);
    expect(FakeRecognition.made).toHaveLength(2);
  });

  it('drop the bias and listen on when phrases are not supported', async () => {
    const own = ears({ available: 'available' });
    await own.prepare(() => {});
    own.listen(REQUEST, () => {});
    latest().onerror?.({ error: 'phrases-not-supported' });
    latest().onerror?.({ error: 'phrases-not-supported' });
    latest().onend?.();
    vi.advanceTimersByTime(1_000);
    expect(FakeRecognition.made).toHaveLength(2);
    expect(latest().phrases).toEqual([]);
  });

  it('give up on an engine that starts and never opens the microphone', async () => {
    const own = ears();
    await own.prepare(() => {});
    const events: EarsEvent[] = [];
    own.listen(REQUEST, (event) => events.push(event));
    vi.advanceTimersByTime(4_000);
    expect(events).toMatchObject([{ type: 'failed', reason: 'no-microphone' }]);
  });

  it('start again when an engine falls silent and its end never comes', async () => {
    const own = ears();
    await own.prepare(() => {});
    own.listen(REQUEST, () => {});
    latest().onstart?.();
    latest().onaudiostart?.();
    vi.advanceTimersByTime(31_000);
    expect(FakeRecognition.made.length).toBeGreaterThan(1);
  });

  it('fall silent at once when stopped, whatever comes later', async () => {
    const own = ears();
    await own.prepare(() => {});
    const events: EarsEvent[] = [];
    const stop = own.listen(REQUEST, (event) => events.push(event));
    const recogniser = latest();
    stop();
    stop();
    expect(recogniser.aborted).toBe(true);
    recogniser.result(true, ['pinned', 0.9]);
    recogniser.onend?.();
    vi.advanceTimersByTime(60_000);
    expect(events).toEqual([]);
    expect(FakeRecognition.made).toHaveLength(1);
  });
});
