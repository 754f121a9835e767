/**
 * Short sounds, made on the spot. They differ by shape (one or two tones, rising, falling, rough, repeated), so that they can
 * be told apart by anyone, in wind and through a thick hat; and they stay between 800 and 2500 Hz, where a telephone's
 * loudspeaker is loudest and hearing loss of age has not begun.
 */
import type { Cue } from '../domain/voice/ports.ts';

/** One tone: from one pitch to another, with a start and a length in seconds. */
export interface Tone {
  readonly atS: number;
  readonly lengthS: number;
  readonly fromHz: number;
  readonly toHz: number;
  readonly wave: 'sine' | 'triangle' | 'square';
}

export interface CueShape {
  readonly tones: readonly Tone[];
  /** Milliseconds on, off, on … */
  readonly vibration: readonly number[];
}

export const CUE_SHAPES: Readonly<globalThis.Record<Cue, CueShape>> = {
  // One short rising tone: over to you.
  listening: { tones: [{ atS: 0, lengthS: 0.09, fromHz: 900, toHz: 1500, wave: 'sine' }], vibration: [25] },
  // A dry click of a tone: kept.
  heard: { tones: [{ atS: 0, lengthS: 0.06, fromHz: 1800, toHz: 1800, wave: 'triangle' }], vibration: [40] },
  // Two equal tones with a gap: a question mark.
  'not-sure': {
    tones: [
      { atS: 0, lengthS: 0.045, fromHz: 1200, toHz: 1200, wave: 'sine' },
      { atS: 0.075, lengthS: 0.045, fromHz: 1200, toHz: 1200, wave: 'sine' },
    ],
    vibration: [30, 60, 30],
  },
  // One rough falling tone.
  wrong: { tones: [{ atS: 0, lengthS: 0.12, fromHz: 1300, toHz: 820, wave: 'square' }], vibration: [160] },
  // Three steps up, twice: something else wants attention.
  due: {
    tones: [0, 0.45].flatMap((atS) =>
      [1000, 1400, 2000].map(
        (hz, step): Tone => ({ atS: atS + step * 0.11, lengthS: 0.09, fromHz: hz, toHz: hz, wave: 'triangle' }),
      ),
    ),
    vibration: [80, 60, 80, 60, 80],
  },
};

/** A square wave sounds about three times as loud as a sine of its size. */
const LOUDNESS: Readonly<globalThis.Record<Tone['wave'], number>> = { sine: 0.5, triangle: 0.5, square: 0.16 };
/** Long enough not to click, in seconds. */
const EDGE_S = 0.006;

export interface Cues {
  /** @param how.volume 0 … 1 */
  play(cue: Cue, how: { readonly sound: boolean; readonly vibration: boolean; readonly volume: number }): void;
}

export interface CuesOptions {
  /** Asked for at the first sound, so that nothing is opened before the person has pressed something. */
  readonly context: () => AudioContext;
  readonly vibrate: (pattern: number[]) => void;
}

/** Never throws: a cue that cannot be played is no reason for anything else to fail. */
export function createCues({ context, vibrate }: CuesOptions): Cues {
  return {
    play(cue, { sound, vibration, volume }) {
      const shape = CUE_SHAPES[cue];
      try {
        if (vibration) vibrate([...shape.vibration]);
        if (sound && volume > 0) playTones(context(), shape.tones, Math.min(1, volume));
      } catch {
        // Sound may be refused or the device asleep; the screen says the same.
      }
    },
  };
}

function playTones(context: AudioContext, tones: readonly Tone[], volume: number): void {
  const start = context.currentTime + 0.005;
  for (const { atS, lengthS, fromHz, toHz, wave } of tones) {
    const from = start + atS;
    const to = from + lengthS;
    const oscillator = context.createOscillator();
    const gain = context.createGain();
    const level = volume * LOUDNESS[wave];
    oscillator.type = wave;
    oscillator.frequency.setValueAtTime(fromHz, from);
    oscillator.frequency.exponentialRampToValueAtTime(toHz, to);
    gain.gain.setValueAtTime(0, from);
    gain.gain.linearRampToValueAtTime(level, from + EDGE_S);
    gain.gain.setValueAtTime(level, to - EDGE_S);
    gain.gain.linearRampToValueAtTime(0, to);
    oscillator.connect(gain).connect(context.destination);
    oscillator.start(from);
    oscillator.stop(to);
  }
}
