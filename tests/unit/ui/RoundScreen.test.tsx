// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { RoundRequest, RoundView } from '../../../src/domain/round/view.ts';
import { HOLD_MS } from '../../../src/ui/parts/HoldButton.tsx';
import { REST_MS } from '../../../src/ui/round/pressGate.ts';
import { RoundScreen } from '../../../src/ui/round/RoundScreen.tsx';
import { restOf } from '../../../src/ui/round/Said.tsx';
import { COLD, DATE_CODE, LINES, LUGS, NOW, PINS, PRESSURE, VALVE, viewOf } from '../../tools/gallery/fakeRound.ts';

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('scrollTo', () => {});
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** The screen with its requests; `show` gives it the next view, `rest` lets the pause after a press pass. */
function givenRound(first: Partial<RoundView>, display: 'us' | 'metric' = 'us') {
  const requests: RoundRequest[] = [];
  const ui = (view: Partial<RoundView>) => (
    <RoundScreen
      view={viewOf(view)}
      now={NOW}
      display={display}
      onRequest={(request) => requests.push(request)}
      onLeave={() => {}}
      onOpenRound={() => {}}
    />
  );
  const { rerender } = render(ui(first));
  const rest = () => act(() => vi.advanceTimersByTime(REST_MS + 1));
  rest();
  const key = (...keys: readonly string[]) => {
    for (const name of keys) fireEvent.keyDown(document.activeElement ?? document.body, { key: name });
  };
  const show = (view: Partial<RoundView>) => {
    rerender(ui(view));
    rest();
  };
  return { requests, key, show, rest };
}

const button = (name: string | RegExp) => screen.getByRole('button', { name });

describe('buttons', () => {
  it('answers a state with its own words, once', () => {
    const { requests } = givenRound({ current: PINS });
    fireEvent.click(button('Not pinned, left'));
    fireEvent.click(button('Not pinned, left'));
    expect(requests).toEqual([{ type: 'answer', answer: { kind: 'state', verdict: 'problem', detail: null }, via: 'button' }]);
  });

  it('does not answer a check that has only just come up', () => {
    const { requests, show, rest } = givenRound({ current: VALVE });
    const pinned = { pointerId: 1, isPrimary: true };
    fireEvent.pointerDown(button('Shut'), pinned);
    show({ current: PINS });
    rest();
    fireEvent.click(button('Pinned, left'));
    expect(requests).toEqual([]);
    fireEvent.pointerUp(button('Pinned, left'), pinned);
    fireEvent.pointerDown(button('Pinned, left'), pinned);
    fireEvent.click(button('Pinned, left'));
    expect(requests).toHaveLength(1);
  });

  it('passes over a touch with two fingers', () => {
    const { requests } = givenRound({ current: PINS });
    const target = button('Pinned, left');
    fireEvent.pointerDown(target, { pointerId: 1, isPrimary: true });
    fireEvent.pointerDown(target, { pointerId: 2, isPrimary: false });
    fireEvent.click(target);
    expect(requests).toEqual([]);
  });

  it('keeps a number only after it was touched', () => {
    const { requests, rest } = givenRound({ current: PRESSURE, beforeValue: { value: 62, unit: 'psi' } });
    fireEvent.click(button(/^Keep, left front/));
    rest();
    expect(requests).toEqual([]);
    fireEvent.click(button('62 psi tap if it is this, left front'));
    fireEvent.click(button('Plus 5 psi'));
    fireEvent.click(button('Minus 1 psi'));
    fireEvent.click(button('Keep 66 psi, left front'));
    expect(requests).toMatchObject([{ type: 'answer', answer: { kind: 'reading', said: { value: 66, unit: 'psi' } } }]);
  });

  it('enters kilopascals where metric is shown', () => {
    const { requests } = givenRound({ current: PRESSURE, beforeValue: { value: 62, unit: 'psi' } }, 'metric');
    fireEvent.click(button(/^427 kPa/));
    fireEvent.click(button(/^Keep 427 kPa/));
    expect(requests).toMatchObject([{ answer: { si: 427_000, said: { value: 427, unit: 'kPa' } } }]);
  });

  it('asks for the reason of a skip; without one the button must be held', () => {
    const { requests, rest } = givenRound({ current: PINS });
    fireEvent.click(button(/^Can't see it now/));
    rest();
    expect(screen.getByRole('heading', { name: 'Why is it skipped?' })).toBe(document.activeElement);
    const bare = button(/^No reason/);
    fireEvent.pointerDown(bare, { pointerId: 1, isPrimary: true, button: 0 });
    act(() => vi.advanceTimersByTime(HOLD_MS - 100));
    fireEvent.pointerUp(bare, { pointerId: 1 });
    fireEvent.click(bare, { detail: 1 });
    expect(requests).toEqual([]);
    fireEvent.pointerDown(bare, { pointerId: 1, isPrimary: true, button: 0 });
    act(() => vi.advanceTimersByTime(HOLD_MS));
    expect(requests).toEqual([{ type: 'skip', reason: 'no reason given', via: 'button' }]);
  });

  it('lists every check with what it came to, and goes there', () => {
    const { requests, rest } = givenRound({ current: PRESSURE });
    fireEvent.click(button('More'));
    rest();
    fireEvent.click(button('All checks'));
    rest();
    const row = button(/Transport pin, left side/);
    expect(within(row).getByText('Hold')).toBeTruthy();
    fireEvent.click(row);
    expect(requests).toEqual([{ type: 'go', key: 'transport-pins@left' }]);
  });

  it('ignores presses while an entry is being written', () => {
    const { requests, show } = givenRound({ current: PINS });
    show({ current: PINS, phase: 'keeping' });
    fireEvent.click(button('Pinned, left'));
    expect(requests).toEqual([]);
  });
});

describe('what is told', () => {
  it('gives the question the focus when the check changes, and says everything to a screen reader', () => {
    const { show } = givenRound({ current: PINS });
    show({ current: PRESSURE, saying: 'Pinned. Left side, front wheel. Left front tire: what is the cold pressure?' });
    expect(document.activeElement?.textContent).toBe('Left front tire: what is the cold pressure?');
    expect(screen.getByRole('status').textContent).toContain('Pinned. Left side, front wheel. Left front tire');
  });

  it('shows what is said beyond the question only once', () => {
    expect(restOf('Sixty-two. Take care. What is it?', ['Take care.', 'What is it?'])).toBe('Sixty-two.');
    expect(restOf('What is it?', ['', 'What is it?'])).toBe('');
    expect(restOf('Because it carries the load.', ['What is it?'])).toBe('Because it carries the load.');
  });

  it('shows trouble, timers and the last read-back in words', () => {
    givenRound({
      current: PINS,
      trouble: 'The device has no room left.',
      timers: [{ key: 'f', name: 'furnace', dueAt: NOW + 61_000, due: false }],
      readBack: {
        text: 'tire pressure: 62 psi',
        outcome: 'watch',
        heard: [
          { text: 'uh', counted: false },
          { text: 'sixty-two', counted: true },
        ],
      },
    });
    expect(screen.getByRole('alert').textContent).toBe('The device has no room left.');
    expect(screen.getByText(/about 2 minutes: furnace/)).toBeTruthy();
    expect(screen.getByText('Watch')).toBeTruthy();
  });
});

describe('by keyboard alone', () => {
  it('walks a whole round', () => {
    const { requests, key, show } = givenRound({ phase: 'briefing', current: null, station: null });
    key('1');
    show({ current: PINS });
    key('y');
    show({ current: PRESSURE });
    key('6', '4', 'Enter');
    show({ current: COLD });
    key('-', '1', '2', 'Enter');
    show({ current: DATE_CODE });
    key('3', '6', '2', '3', 'Enter');
    show({ current: LUGS });
    key('2', 'Enter');
    show({ current: VALVE });
    key('s', '1');
    show({ phase: 'wrap-up', current: null, lines: LINES.slice(0, 1) });
    key('f');
    expect(requests).toMatchObject([
      { type: 'begin', people: 1 },
      { type: 'answer', answer: { kind: 'state', verdict: 'ok' }, via: 'key' },
      { type: 'answer', answer: { kind: 'reading', said: { value: 64, unit: 'psi' } }, via: 'key' },
      { type: 'answer', answer: { kind: 'reading', said: { value: -12, unit: 'F' } }, via: 'key' },
      { type: 'answer', answer: { kind: 'date', value: '3623' }, via: 'key' },
      { type: 'answer', answer: { kind: 'count', count: 2 }, via: 'key' },
      { type: 'skip', reason: 'frozen', via: 'key' },
      { type: 'finish' },
    ]);
  });

  it('does not keep a figure that cannot be', () => {
    const { requests, key } = givenRound({ current: PRESSURE });
    key('9', '9', '9', 'Enter');
    expect(requests).toEqual([]);
    expect(screen.getByText(/lies between 0 and 130/)).toBeTruthy();
  });
});

describe('by a clicker with two buttons', () => {
  it('answers with one and reaches the others with the other', () => {
    const { requests, key, show, rest } = givenRound({ current: PINS });
    key('PageDown');
    show({ current: { ...PINS, key: 'transport-pins@right', position: 'right' } });
    key('PageUp', 'PageDown');
    rest();
    expect(requests).toMatchObject([
      { answer: { kind: 'state', verdict: 'ok' }, via: 'key' },
      { answer: { kind: 'state', verdict: 'problem' }, via: 'key' },
    ]);
  });

  it('keeps the expected value with two presses, and another one by steps', () => {
    const { requests, key, show, rest } = givenRound({ current: PRESSURE, beforeValue: { value: 62, unit: 'psi' } });
    key('PageDown', 'PageDown');
    show({ current: { ...PRESSURE, key: 'tire-pressure@right-front' }, beforeValue: { value: 62, unit: 'psi' } });
    // Confirm 62, on to the step up, twice, back to keep, keep.
    key('PageDown', 'PageUp', 'PageDown', 'PageDown', 'PageUp', 'PageDown');
    rest();
    expect(requests).toMatchObject([{ answer: { said: { value: 62 } } }, { answer: { said: { value: 64 } } }]);
  });

  it('reaches every button of every phase', () => {
    for (const view of [
      { current: PINS },
      { current: PRESSURE },
      { current: LUGS },
      { current: DATE_CODE },
      { phase: 'wrap-up' as const, current: null },
      { phase: 'complete' as const, current: null },
      { phase: 'held' as const, current: null },
    ]) {
      const { key } = givenRound(view);
      const ring = [...document.querySelectorAll('[data-ring]')];
      const reached = new Set<Element>();
      const first = ring.find((element) => element.getAttribute('data-ring') === '0');
      if (first) reached.add(first);
      for (const _ of ring) {
        key('PageUp');
        if (document.activeElement) reached.add(document.activeElement);
      }
      expect(ring.filter((element) => !reached.has(element)).map((element) => element.textContent)).toEqual([]);
      cleanup();
    }
  });

  it('finishes with two presses, never with one', () => {
    const { requests, key, rest } = givenRound({ phase: 'wrap-up', current: null, lines: LINES.slice(0, 1) });
    key('PageUp', 'PageUp');
    (document.querySelector('.hold-button') as HTMLElement).focus();
    key('PageDown');
    expect(requests).toEqual([]);
    rest();
    key('PageDown');
    expect(requests).toEqual([{ type: 'finish' }]);
  });
});
