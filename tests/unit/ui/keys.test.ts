import { describe, expect, it } from 'vitest';
import type { RoundPhase, RoundView } from '../../../src/domain/round/view.ts';
import { type KeyPlace, keyMeaning } from '../../../src/ui/round/keys.ts';
import { COLD, DATE_CODE, LUGS, PINS, PRESSURE, VALVE, viewOf } from '../../tools/gallery/fakeRound.ts';

const place = (over: Partial<Omit<KeyPlace, 'view'>> & { readonly view?: Partial<RoundView> } = {}): KeyPlace => ({
  panel: null,
  inText: false,
  typed: false,
  ...over,
  view: viewOf(over.view),
});
const press = (key: string, at: KeyPlace, how: { modified?: boolean; repeat?: boolean } = {}) =>
  keyMeaning({ key, modified: false, repeat: false, ...how }, at);
const request = (what: object) => ({ kind: 'request', request: what });
const local = (action: object) => ({ kind: 'local', action });

describe('keys on a state', () => {
  it('answers yes and no to the question as it is asked', () => {
    const at = place({ view: { current: PINS } });
    expect(press('y', at)).toEqual(
      request({ type: 'answer', answer: { kind: 'state', verdict: 'ok', detail: null }, via: 'key' }),
    );
    expect(press('N', at)).toEqual(
      request({ type: 'answer', answer: { kind: 'state', verdict: 'problem', detail: null }, via: 'key' }),
    );
  });

  it('turns yes round where yes is the bad news', () => {
    const leaks = {
      ...PINS,
      expects: { kind: 'state' as const, ok: ['dry'], problem: ['leaking'], yesMeans: 'problem' as const },
    };
    expect(press('y', place({ view: { current: leaks } }))).toMatchObject({ request: { answer: { verdict: 'problem' } } });
    expect(press('n', place({ view: { current: leaks } }))).toMatchObject({ request: { answer: { verdict: 'ok' } } });
    expect(press('1', place({ view: { current: leaks } }))).toMatchObject({ request: { answer: { verdict: 'ok' } } });
  });
});

describe('keys on a number', () => {
  it('types, steps, erases and keeps', () => {
    const at = place({ view: { current: PRESSURE } });
    expect(press('6', at)).toEqual(local({ type: 'digit', digit: '6' }));
    expect(press(',', at)).toEqual(local({ type: 'digit', digit: '.' }));
    expect(press('Backspace', at)).toEqual(local({ type: 'erase' }));
    expect(press('ArrowUp', at)).toEqual(local({ type: 'step', by: 1 }));
    expect(press('ArrowLeft', at)).toEqual(local({ type: 'step', by: '-big' }));
    expect(press('Enter', place({ view: { current: PRESSURE }, typed: true }))).toEqual(local({ type: 'keep' }));
  });

  it('takes a minus for a sign only where it can be below zero', () => {
    expect(press('-', place({ view: { current: COLD } }))).toEqual(local({ type: 'digit', digit: '-' }));
    expect(press('-', place({ view: { current: PRESSURE } }))).toEqual(local({ type: 'step', by: -1 }));
  });

  it('never keeps anything with Enter alone', () => {
    expect(press('Enter', place({ view: { current: PRESSURE } }))).toEqual(local({ type: 'press' }));
  });
});

describe('keys elsewhere', () => {
  it('chooses by number', () => {
    expect(press('3', place({ view: { current: VALVE } }))).toMatchObject({ request: { answer: { option: 'leaking' } } });
    expect(press('5', place({ view: { current: VALVE } }))).toBeNull();
  });

  it.each([LUGS, DATE_CODE])('types the digits of $key', (current) => {
    expect(press('4', place({ view: { current } }))).toEqual(local({ type: 'digit', digit: '4' }));
  });

  it('skips with a reason by number, and only when the reasons are shown', () => {
    const at = place({ view: { current: PINS } });
    expect(press('s', at)).toEqual(local({ type: 'open', panel: 'skip' }));
    expect(press('4', { ...at, panel: 'skip' })).toEqual(request({ type: 'skip', reason: 'later', via: 'key' }));
    expect(press('Escape', { ...at, panel: 'skip' })).toEqual(local({ type: 'open', panel: null }));
  });

  it('takes an offer by its number', () => {
    const answer = { kind: 'reading', si: 1, said: { value: 50, unit: 'psi' }, hedged: false } as const;
    const at = place({
      view: {
        phase: 'confirming',
        offers: [
          { label: '15 psi', answer: null },
          { label: '50 psi', answer },
        ],
      },
    });
    expect(press('y', at)).toEqual(request({ type: 'confirm', yes: true, via: 'key' }));
    expect(press('2', at)).toEqual(request({ type: 'answer', answer, via: 'key' }));
    expect(press('n', at)).toEqual(request({ type: 'confirm', yes: false, via: 'key' }));
  });

  it.each<[string, RoundPhase, object]>([
    ['2', 'briefing', { type: 'begin', people: 2 }],
    ['h', 'held', { type: 'command', command: 'resume', via: 'key' }],
    ['h', 'asking', { type: 'command', command: 'wait', via: 'key' }],
    ['y', 'keep-failed', { type: 'retry-keep' }],
    ['f', 'wrap-up', { type: 'finish' }],
    ['b', 'asking', { type: 'command', command: 'back', via: 'key' }],
    ['u', 'asking', { type: 'command', command: 'undo', via: 'key' }],
    ['w', 'asking', { type: 'command', command: 'where', via: 'key' }],
    ['r', 'complete', { type: 'command', command: 'repeat', via: 'key' }],
    ['l', 'asking', { type: 'listen', on: false }],
  ])('%s while %s', (key, phase, expected) => {
    expect(press(key, place({ view: { phase } }))).toEqual(request(expected));
  });

  it('completes a round only when everything was asked', () => {
    expect(press('f', place({ view: { phase: 'asking' } }))).toBeNull();
  });

  it.each(['PageDown', 'Enter', ' '])('presses the marked button with %j in every phase', (key) => {
    for (const phase of ['briefing', 'asking', 'confirming', 'held', 'keep-failed', 'wrap-up', 'complete'] as const) {
      expect(press(key, place({ view: { phase, current: phase === 'asking' ? PINS : null } }))).toEqual(local({ type: 'press' }));
    }
  });

  it('leaves the browser its own, and text fields their letters', () => {
    expect(press('r', place(), { modified: true })).toBeNull();
    expect(press('y', place({ inText: true }))).toBeNull();
    expect(press('Tab', place())).toBeNull();
  });

  it('counts a key that is held down once', () => {
    expect(press('y', place({ view: { current: PINS } }), { repeat: true })).toEqual(local({ type: 'nothing' }));
    expect(press('Enter', place({ view: { current: PINS } }), { repeat: true })).toEqual(local({ type: 'nothing' }));
    expect(press('ArrowUp', place({ view: { current: PRESSURE } }), { repeat: true })).toEqual(local({ type: 'step', by: 1 }));
  });
});
