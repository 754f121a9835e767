/** Writes the packed voice that `src/speech/mouthClips/voicePack.ts` reads. */
import { deflateSync } from 'fflate';
import { type Frame, HOP, ORDER, SAMPLE_RATE } from '../../src/speech/mouthClips/vocoder.ts';
import {
  type ClipKind,
  crc32,
  gainToStep,
  LSF_STEPS,
  lsfToStep,
  PACK_HEADER_BYTES,
  PACK_MAGIC,
  type PackIndex,
  PLANES,
  pitchToStep,
} from '../../src/speech/mouthClips/voicePack.ts';

export interface Clip {
  readonly words: string;
  readonly kind: ClipKind;
  readonly frames: readonly Frame[];
}

/** A value moves to another step only when it is clearly past the border: fewer changes, and nobody hears the difference. */
const SLACK = 0.62;

/** One clip as rows of {@link PLANES} bytes. */
export function quantize(frames: readonly Frame[]): Uint8Array[] {
  const held = new Float64Array(PLANES).fill(Number.NaN);
  return frames.map((frame) => {
    const row = new Uint8Array(PLANES);
    const settle = (plane: number, exact: number, most: number): number => {
      const before = held[plane] ?? Number.NaN;
      const step = Math.abs(exact - before) <= SLACK ? before : Math.round(exact);
      const kept = Math.min(most, Math.max(0, step));
      held[plane] = kept;
      return kept;
    };
    let floor = 0;
    for (let k = 0; k < ORDER; k++) {
      // Strictly rising, with room for those above: otherwise the filter would not be stable.
      const exact = lsfToStep(frame.lsf[k] ?? 0);
      const step = Math.min(Math.max(settle(k, exact, LSF_STEPS - 1), floor + 1), LSF_STEPS - (ORDER - k));
      held[k] = step;
      row[k] = step;
      floor = step;
    }
    row[ORDER] = frame.gain < 1e-5 ? 255 : settle(ORDER, gainToStep(frame.gain), 254);
    // Pitch is not heard in noise, so it stays where it was.
    const isPitchHeard = frame.voicing > 0 || Number.isNaN(held[ORDER + 1] ?? Number.NaN);
    row[ORDER + 1] = isPitchHeard ? settle(ORDER + 1, pitchToStep(frame.pitch), 255) : (held[ORDER + 1] ?? 0);
    row[ORDER + 2] = frame.voicing;
    return row;
  });
}

/** The whole file. The same clips give the same bytes. */
export function packVoice(voice: string, clips: readonly Clip[]): Uint8Array {
  const index: PackIndex = {
    format: 1,
    voice,
    sampleRate: SAMPLE_RATE,
    hop: HOP,
    order: ORDER,
    clips: clips.map(({ words, kind, frames }) => [words, kind === 'line' ? 'l' : 'p', frames.length]),
  };
  const rows = clips.flatMap(({ frames }) => quantize(frames));
  const starts = new Set<number>();
  let total = 0;
  for (const { frames } of clips) {
    starts.add(total);
    total += frames.length;
  }
  const indexBytes = new TextEncoder().encode(JSON.stringify(index));
  const body = new Uint8Array(4 + indexBytes.length + rows.length * PLANES);
  new DataView(body.buffer).setUint32(0, indexBytes.length, true);
  body.set(indexBytes, 4);
  for (let plane = 0; plane < PLANES; plane++) {
    let before = 0;
    rows.forEach((row, i) => {
      const value = row[plane] ?? 0;
      if (starts.has(i)) before = 0;
      body[4 + indexBytes.length + plane * rows.length + i] = (value - before) & 255;
      before = value;
    });
  }
  const packed = deflateSync(body, { level: 9 });
  const file = new Uint8Array(PACK_HEADER_BYTES + packed.length);
  const view = new DataView(file.buffer);
  file.set(new TextEncoder().encode(PACK_MAGIC));
  view.setUint32(8, packed.length, true);
  file.set(packed, PACK_HEADER_BYTES);
  view.setUint32(4, crc32(file.subarray(8)), true);
  return file;
}
