// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_SETTINGS, type Settings } from '../../../src/domain/voice/settings.ts';
import { HomeScreen, type HomeScreenProps } from '../../../src/ui/home/HomeScreen.tsx';
import { timeLeft } from '../../../src/ui/parts/countdown.ts';
import { HOLD_MS, HoldButton } from '../../../src/ui/parts/HoldButton.tsx';
import { type MarkOutcome, OutcomeMark } from '../../../src/ui/parts/OutcomeMark.tsx';
import { withUnit } from '../../../src/ui/parts/shownUnit.ts';
import { SettingsScreen, stepped } from '../../../src/ui/settings/SettingsScreen.tsx';
import { PLAN } from '../../tools/gallery/fakeRound.ts';

afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('OutcomeMark', () => {
  it('tells every outcome by a word and by a shape of its own', () => {
    const outcomes: readonly MarkOutcome[] = ['ok', 'watch', 'fix', 'hold', 'open', 'skipped', 'not-cleared'];
    const seen = outcomes.map((outcome) => {
      const { container } = render(<OutcomeMark outcome={outcome} />);
      return { word: container.textContent, shape: container.querySelector('svg')?.innerHTML };
    });
    expect(new Set(seen.map(({ word }) => word)).size).toBe(outcomes.length);
    expect(new Set(seen.map(({ shape }) => shape)).size).toBe(outcomes.length);
    expect(seen.every(({ word }) => word !== '')).toBe(true);
  });
});

describe('HoldButton', () => {
  it('acts when it was held, not when it was let go early or slid off', () => {
    vi.useFakeTimers();
    const held = vi.fn();
    render(<HoldButton label="Stop the round" onHeld={held} />);
    const target = screen.getByRole('button');
    const start = () => fireEvent.pointerDown(target, { pointerId: 1, isPrimary: true, button: 0 });
    start();
    act(() => vi.advanceTimersByTime(HOLD_MS - 1));
    fireEvent.pointerUp(target);
    start();
    fireEvent.pointerLeave(target);
    act(() => vi.advanceTimersByTime(HOLD_MS * 2));
    expect(held).not.toHaveBeenCalled();
    start();
    act(() => vi.advanceTimersByTime(HOLD_MS));
    expect(held).toHaveBeenCalledTimes(1);
  });

  it('asks for a second press of a key, and forgets the first', () => {
    vi.useFakeTimers();
    const held = vi.fn();
    render(<HoldButton label="Stop the round" onHeld={held} />);
    const target = screen.getByRole('button');
    fireEvent.click(target);
    expect(target.textContent).toContain('Press again');
    act(() => vi.advanceTimersByTime(10_000));
    fireEvent.click(target);
    expect(held).not.toHaveBeenCalled();
    fireEvent.click(target);
    expect(held).toHaveBeenCalledTimes(1);
  });
});

describe('words for figures', () => {
  it('counts down in whole minutes, never early', () => {
    expect([0, 1, 59_999, 60_000, 60_001, 599_000].map((left) => timeLeft(left, 0))).toEqual([
      'due now',
      'under a minute',
      'under a minute',
      'about 1 minute',
      'about 2 minutes',
      'about 10 minutes',
    ]);
  });

  it('writes a value as a gauge does', () => {
    expect([withUnit('62', 'psi'), withUnit('5', '32nds'), withUnit('-4', 'F'), withUnit('3', 'count')]).toEqual([
      '62 psi',
      '5/32 in',
      '−4 °F',
      '3',
    ]);
  });
});

describe('HomeScreen', () => {
  const nothing = () => {};
  const home = (over: Partial<HomeScreenProps>) => (
    <HomeScreen
      units={[]}
      unfinished={[]}
      readiness={{ offline: 'ready', update: 'none', install: 'done', durable: true, onInstall: nothing, onUpdate: nothing }}
      trouble={null}
      onStart={nothing}
      onResume={nothing}
      onRehearse={nothing}
      onOpenUnit={nothing}
      onOpenRound={nothing}
      onGo={nothing}
      {...over}
    />
  );

  it('asks for a backup when rounds are on this device alone, and leads to it', () => {
    const onGo = vi.fn();
    render(home({ atRisk: 6, onGo }));
    expect(screen.getByText(/6 rounds are on this device alone/)).toBeDefined();
    fireEvent.click(screen.getByRole('button', { name: 'Save a backup' }));
    expect(onGo).toHaveBeenCalledWith('files');
    cleanup();
    render(home({}));
    expect(screen.queryByText(/on this device alone/)).toBeNull();
  });

  it('lets a newcomer watch a rehearsal with one press', () => {
    const onRehearse = vi.fn();
    render(home({ onRehearse }));
    fireEvent.click(screen.getByRole('button', { name: 'Watch a rehearsal' }));
    expect(onRehearse).toHaveBeenCalledTimes(1);
  });

  it('puts the unfinished round before everything else', () => {
    const onResume = vi.fn();
    const round = { round: 'r9', unitName: 'Heron', kind: 'before-towing', when: 'today', done: 23, total: 61 } as const;
    render(home({ units: [{ unit: PLAN.unit, last: null, due: [] }], unfinished: [round], onResume }));
    const first = screen.getAllByRole('button')[0] as HTMLElement;
    expect(first.textContent).toContain('Carry on: Heron');
    fireEvent.click(first);
    expect(onResume).toHaveBeenCalledWith('r9');
  });

  it('starts each kind of round for the unit it stands with', () => {
    const started: string[] = [];
    render(home({ units: [{ unit: PLAN.unit, last: null, due: [] }], onStart: (unit, kind) => started.push(`${unit} ${kind}`) }));
    for (const name of [/^Before towing/, /^Before leaving the lake/, /^Stop on the road/]) {
      fireEvent.click(screen.getByRole('button', { name }));
    }
    expect(started).toEqual(['heron before-towing', 'heron before-leaving-the-lake', 'heron stop-on-the-road']);
  });

  it('says that it certifies nothing', () => {
    render(home({}));
    expect(screen.getByText(/certifies nothing/)).toBeTruthy();
  });
});

describe('SettingsScreen', () => {
  function givenSettings(over: Partial<Settings> = {}) {
    const changes: Settings[] = [];
    const nothing = () => {};
    render(
      <SettingsScreen
        settings={{ ...DEFAULT_SETTINGS, ...over }}
        onChange={(next) => changes.push(next)}
        voices={[]}
        mouths={['browser']}
        ears={['built-in']}
        onTestVoice={nothing}
        onTestMicrophone={nothing}
        microphone={null}
        storage="Nothing kept yet."
        onBack={nothing}
      />,
    );
    return changes;
  }

  it('changes one setting and leaves the others', () => {
    const changes = givenSettings();
    fireEvent.click(screen.getByLabelText('Bright sun'));
    fireEvent.click(screen.getByRole('button', { name: 'Slower' }));
    expect(changes).toEqual([
      { ...DEFAULT_SETTINGS, theme: 'sun' },
      { ...DEFAULT_SETTINGS, speech: { ...DEFAULT_SETTINGS.speech, rate: 0.9 } },
    ]);
  });

  it('keeps an elevation in meters and refuses one that cannot be', () => {
    const changes = givenSettings();
    const box = screen.getByLabelText('Height above the sea');
    fireEvent.change(box, { target: { value: '1300' } });
    fireEvent.change(box, { target: { value: '99999' } });
    // 1 ft = 0.3048 m exactly (NIST SP 811 B.8).
    expect(changes.map((change) => change.elevationM)).toEqual([expect.closeTo(396.24, 6)]);
    expect(screen.getByRole('alert').textContent).toContain('Between');
  });

  it('holds its steps within their range', () => {
    expect(stepped(0.1, 0.2, { min: 0, max: 1 })).toBe(0.3);
    expect(stepped(1.95, 0.1, { min: 0.5, max: 2 })).toBe(2);
    expect(stepped(0, -0.1, { min: 0, max: 1 })).toBe(0);
  });
});
