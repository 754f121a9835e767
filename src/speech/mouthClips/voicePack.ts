/**
 * The packed voice: one file of clips, each a run of vocoder frames with the words that it says.
 *
 * Layout, little-endian: "GSV1", CRC-32 of all that follows it, length of the packed body; then the body, deflated (RFC 1951).
 * Body: length of the index, the index as UTF-8 JSON ({@link PackIndex}), then the frames of all clips one after another, a
 * plane for each parameter, each value as the difference from the frame before in its clip (modulo 256, from 0).
 */
import { inflateSync } from 'fflate';
import { type Frame, HOP, ORDER, SAMPLE_RATE } from './vocoder.ts';

export const PACK_MAGIC = 'GSV1';
export const PACK_HEADER_BYTES = 12;

/** `line`: a whole sentence with its own ending. `part`: words cut from the middle of one, for joining. */
export type ClipKind = 'line' | 'part';

export interface PackIndex {
  /** Rises with each change of layout or of what the numbers mean. */
  readonly format: 1;
  readonly voice: string;
  readonly sampleRate: number;
  readonly hop: number;
  readonly order: number;
  /** Words with single spaces (a line that asks ends in "?"), kind, number of frames. */
  readonly clips: readonly (readonly [words: string, kind: 'l' | 'p', frames: number])[];
}

export interface VoicePack {
  readonly voice: string;
  clip(kind: ClipKind, words: string): readonly Frame[] | null;
  has(kind: ClipKind, words: string): boolean;
  /** Longest clip of kind `part`, in words. */
  readonly longestPart: number;
  readonly clips: number;
  readonly frames: number;
}

/** Line spectral frequencies are kept on a scale that follows the ear (mel), in this many steps from 0 to half the rate. */
export const LSF_STEPS = 120;
/** Levels are kept in steps of 1.5 dB below full scale; 255 is silence. */
export const GAIN_STEP_DB = 1.5;
/** Pitch is kept in steps of a quarter of a semitone above this. */
export const LOWEST_PITCH_HZ = 60;
export const PITCH_STEPS_PER_OCTAVE = 48;
/** Planes: line spectral frequencies, level, pitch, voicing. */
export const PLANES = ORDER + 3;

const mel = (hz: number): number => 1127 * Math.log1p(hz / 700);
const hertz = (mels: number): number => 700 * Math.expm1(mels / 1127);
const TOP_MEL = mel(SAMPLE_RATE / 2);

export const lsfToStep = (radians: number): number => (mel((radians * SAMPLE_RATE) / (2 * Math.PI)) / TOP_MEL) * LSF_STEPS;
export const stepToLsf = (step: number): number => (hertz((step / LSF_STEPS) * TOP_MEL) * 2 * Math.PI) / SAMPLE_RATE;
export const gainToStep = (gain: number): number => (-20 * Math.log10(Math.max(gain, 1e-9))) / GAIN_STEP_DB;
export const stepToGain = (step: number): number => (step === 255 ? 0 : 10 ** ((-step * GAIN_STEP_DB) / 20));
export const pitchToStep = (pitch: number): number => PITCH_STEPS_PER_OCTAVE * Math.log2(pitch / LOWEST_PITCH_HZ);
export const stepToPitch = (step: number): number => LOWEST_PITCH_HZ * 2 ** (step / PITCH_STEPS_PER_OCTAVE);

/** Damaged, cut off, or of another format. */
export class VoicePackError extends Error {
  override readonly name = 'VoicePackError';
}

const CRC_TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb8_8320 : 0);
  return crc;
});

/** CRC-32 as in ISO 3309 and RFC 1952 (gzip), section 8. */
export function crc32(bytes: Uint8Array): number {
  let crc = -1;
  for (let i = 0; i < bytes.length; i++) crc = (crc >>> 8) ^ (CRC_TABLE[(crc ^ (bytes[i] ?? 0)) & 255] ?? 0);
  return ~crc >>> 0;
}

/**
 * Check and open a packed voice.
 * @throws VoicePackError when it is not whole, not ours, or of another format; never anything else.
 */
export function openVoicePack(file: Uint8Array): VoicePack {
  return asVoicePackError(() => openBody(inflateSync(packedBody(file))));
}

/**
 * The same without holding up the page: the browser's own inflate where it has one.
 * @throws VoicePackError as {@link openVoicePack}
 */
export async function loadVoicePack(file: Uint8Array): Promise<VoicePack> {
  const packed = packedBody(file);
  let body: Uint8Array;
  try {
    const stream = new Blob([packed.slice()]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    body = new Uint8Array(await new Response(stream).arrayBuffer());
  } catch {
    // Not there, or without this format: our own is slower and always there.
    return openVoicePack(file);
  }
  return asVoicePackError(() => openBody(body));
}

function asVoicePackError<T>(work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    throw thrown instanceof VoicePackError ? thrown : new VoicePackError('The voice file cannot be read.', { cause: thrown });
  }
}

function packedBody(file: Uint8Array): Uint8Array {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.length < PACK_HEADER_BYTES || String.fromCharCode(...file.subarray(0, 4)) !== PACK_MAGIC) {
    throw new VoicePackError('This is not a voice file.');
  }
  if (view.getUint32(8, true) !== file.length - PACK_HEADER_BYTES) throw new VoicePackError('The voice file is cut off.');
  if (crc32(file.subarray(8)) !== view.getUint32(4, true)) throw new VoicePackError('The voice file is damaged.');
  return file.subarray(PACK_HEADER_BYTES);
}

function openBody(body: Uint8Array): VoicePack {
  const indexBytes = new DataView(body.buffer, body.byteOffset, body.byteLength).getUint32(0, true);
  const index: PackIndex = JSON.parse(new TextDecoder().decode(body.subarray(4, 4 + indexBytes)));
  if (index.format !== 1 || index.sampleRate !== SAMPLE_RATE || index.hop !== HOP || index.order !== ORDER) {
    throw new VoicePackError('The voice file is of another format.');
  }
  const total = index.clips.reduce((sum, [, , frames]) => sum + frames, 0);
  const planes = body.subarray(4 + indexBytes);
  if (planes.length !== total * PLANES) throw new VoicePackError('The voice file is cut off.');
  const places = new Map<string, { first: number; frames: number }>();
  let first = 0;
  let longestPart = 0;
  for (const [words, kind, frames] of index.clips) {
    places.set(`${kind}${words}`, { first, frames });
    first += frames;
    if (kind === 'p') longestPart = Math.max(longestPart, words.split(' ').length);
  }
  const place = (kind: ClipKind, words: string) => places.get(`${kind === 'line' ? 'l' : 'p'}${words}`);
  return {
    voice: index.voice,
    longestPart,
    clips: index.clips.length,
    frames: total,
    has: (kind, words) => place(kind, words) !== undefined,
    clip: (kind, words) => {
      const found = place(kind, words);
      if (found === undefined) return null;
      return framesOf(planes, total, found.first, found.frames);
    },
  };
}

/** One clip; only what is said is ever taken apart, so that opening the file stays quick. */
function framesOf(planes: Uint8Array, total: number, first: number, frames: number): readonly Frame[] {
  const row = new Uint8Array(PLANES);
  return Array.from({ length: frames }, (_, i): Frame => {
    for (let plane = 0; plane < PLANES; plane++) row[plane] = (row[plane] ?? 0) + (planes[plane * total + first + i] ?? 0);
    return {
      lsf: Float32Array.from({ length: ORDER }, (_unused, k) => stepToLsf(row[k] ?? 0)),
      gain: stepToGain(row[ORDER] ?? 255),
      pitch: stepToPitch(row[ORDER + 1] ?? 0),
      voicing: Math.min(3, row[ORDER + 2] ?? 0),
    };
  });
}
