import { describe, expect, it, vi } from 'vitest';
import { CUE_SHAPES, createCues } from '../../../src/speech/cues.ts';

type Step = { readonly what: string; readonly value: number; readonly at: number };

/** Writes down what is scheduled. */
function givenContext(currentTime = 10) {
  const steps: Step[] = [];
  const parameter = (name: string) => ({
    setValueAtTime: (value: number, at: number) => steps.push({ what: `${name} set`, value, at }),
    linearRampToValueAtTime: (value: number, at: number) => steps.push({ what: `${name} ramp`, value, at }),
    exponentialRampToValueAtTime: (value: number, at: number) => steps.push({ what: `${name} ramp`, value, at }),
  });
  const context = {
    currentTime,
    destination: {},
    createOscillator: () => ({
      type: '',
      frequency: parameter('pitch'),
      connect: (next: unknown) => next,
      start: (at: number) => steps.push({ what: 'start', value: 0, at }),
      stop: (at: number) => steps.push({ what: 'stop', value: 0, at }),
    }),
    createGain: () => ({ gain: parameter('level'), connect: (next: unknown) => next }),
  };
  return { context: context as unknown as AudioContext, steps };
}

const names = Object.keys(CUE_SHAPES) as (keyof typeof CUE_SHAPES)[];

describe('shapes', () => {
  it.each(names)('%s lies where loudspeakers and ears are good, and is short', (name) => {
    const { tones } = CUE_SHAPES[name];
    for (const { fromHz, toHz } of tones) {
      for (const hz of [fromHz, toHz]) {
        expect(hz).toBeGreaterThanOrEqual(800);
        expect(hz).toBeLessThanOrEqual(2500);
      }
    }
    const length = Math.max(...tones.map(({ atS, lengthS }) => atS + lengthS));
    expect(length).toBeGreaterThanOrEqual(0.06);
    expect(length).toBeLessThanOrEqual(name === 'due' ? 1 : 0.1200001);
  });

  it('no two have the same shape, pitch left out of it', () => {
    const shapes = names.map((name) => {
      const { tones } = CUE_SHAPES[name];
      return JSON.stringify([tones.length, tones.map(({ fromHz, toHz, wave }) => [Math.sign(toHz - fromHz), wave])]);
    });
    expect(new Set(shapes).size).toBe(names.length);
    expect(new Set(names.map((name) => CUE_SHAPES[name].vibration.join())).size).toBe(names.length);
  });
});

describe('createCues', () => {
  it('fades each tone in and out from nothing, at the loudness asked for', () => {
    const { context, steps } = givenContext();
    createCues({ context: () => context, vibrate: () => undefined }).play('not-sure', {
      sound: true,
      vibration: false,
      volume: 0.5,
    });
    const starts = steps.filter(({ what }) => what === 'start').map(({ at }) => at);
    expect(starts[0]).toBeGreaterThanOrEqual(10);
    expect((starts[1] ?? 0) - (starts[0] ?? 0)).toBeCloseTo(0.075, 9);
    const levels = steps.filter(({ what }) => what.startsWith('level'));
    expect(levels.map(({ value }) => value)).toEqual([0, 0.25, 0.25, 0, 0, 0.25, 0.25, 0]);
  });

  it('makes no sound when sound is off or loudness is nought, and asks for no context', () => {
    const context = vi.fn();
    const vibrate = vi.fn();
    const cues = createCues({ context, vibrate });
    cues.play('wrong', { sound: false, vibration: true, volume: 1 });
    cues.play('wrong', { sound: true, vibration: false, volume: 0 });
    expect(context).not.toHaveBeenCalled();
    expect(vibrate.mock.calls).toEqual([[[160]]]);
  });

  it('a device that refuses does not stop anything', () => {
    const cues = createCues({
      context: () => {
        throw new Error('no audio');
      },
      vibrate: () => {
        throw new Error('no motor');
      },
    });
    expect(() => cues.play('due', { sound: true, vibration: true, volume: 1 })).not.toThrow();
  });
});
