/** A small voice made on the spot: each word a steady vowel of its own pitch, so that what is played can be recognized. */

import { type Frame, ORDER } from '../../../src/speech/mouthClips/vocoder.ts';
import type { ClipKind } from '../../../src/speech/mouthClips/voicePack.ts';
import { type Clip, packVoice } from '../../tools/renderVoicePack.ts';

/** `frames` of 10 ms each. */
export function vowel(frames: number, change: Partial<Frame> = {}): readonly Frame[] {
  const lsf = Float32Array.from({ length: ORDER }, (_, k) => ((k + 1) * Math.PI) / (ORDER + 1));
  return Array.from({ length: frames }, () => ({ lsf, gain: 0.05, pitch: 170, voicing: 3, ...change }));
}

export const clip = (words: string, kind: ClipKind = 'part', frames = 20, change: Partial<Frame> = {}): Clip => ({
  words,
  kind,
  frames: vowel(frames, change),
});

export const LETTERS: readonly Clip[] = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => clip(letter, 'part', 10));

export const givenPackFile = (clips: readonly Clip[]): Uint8Array => packVoice('test', clips);

/** Samples of one second of a vowel with resonances where they are asked for, by a textbook all-pole cascade. */
export function steadyVowel(pitch: number, resonancesHz: readonly number[], seconds = 0.5): Float32Array {
  const rate = 16_000;
  let signal = Float64Array.from({ length: rate * seconds }, (_, i) => {
    const phase = (i * pitch) / rate;
    return Math.floor(phase) !== Math.floor(phase - pitch / rate) ? 1 : 0;
  });
  for (const hz of resonancesHz) {
    const radius = Math.exp((-Math.PI * 90) / rate);
    const c1 = 2 * radius * Math.cos((2 * Math.PI * hz) / rate);
    const c2 = -radius * radius;
    let [y1, y2] = [0, 0];
    signal = signal.map((x) => {
      const y = x + c1 * y1 + c2 * y2;
      [y2, y1] = [y1, y];
      return y;
    });
  }
  const peak = signal.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return Float32Array.from(signal, (x) => (0.5 * x) / peak);
}
