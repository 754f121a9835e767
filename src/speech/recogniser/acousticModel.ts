/**
 * The acoustic model as the decoder uses it, read from the compact file that `tests/tools/buildModel.ts` writes.
 *
 * A phonetically tied mixture: one codebook of Gaussians for each phone and stream, one set of weights for each senone.
 * File, little-endian: "EARS", u32 version, u32 CRC-32 of all that follows, u32 length when inflated, then a raw DEFLATE
 * stream (RFC 1951) of the sections in the order of {@link readAcousticModel}.
 */
import { inflateSync } from 'fflate';
import { crc32 } from './crc32.ts';

export const MODEL_VERSION = 1;
export const MODEL_MAGIC = 0x53524145;
export const MODEL_HEADER_BYTES = 16;
/** Emitting states of a phone. */
export const STATES = 3;
/** Places of a phone in its word, in the order of the planes. */
export const WORD_POSITION = { internal: 0, begin: 1, end: 2, single: 3 } as const;
export type WordPosition = (typeof WORD_POSITION)[keyof typeof WORD_POSITION];
/** No file that we would accept is larger than this when inflated; a forged length must not exhaust the memory. */
const MOST_BYTES = 16 * 1024 * 1024;
const VARIANCE_FLOOR = 1e-4;

/** The model file cannot be used; `message` is a sentence for the person. */
export class ModelError extends Error {
  override readonly name = 'ModelError';
}

export interface AcousticModel {
  readonly phones: readonly string[];
  readonly phoneIndex: ReadonlyMap<string, number>;
  readonly silence: number;
  readonly isFiller: readonly boolean[];
  readonly senones: number;
  /** Phone whose codebook a senone uses. */
  readonly senoneCodebook: Uint8Array;
  readonly streams: number;
  readonly densities: number;
  readonly dims: number;
  /** [codebook][stream][density][dim][mean, half the inverse variance]: side by side, since they are read together. */
  readonly gaussians: Float32Array;
  /** Log of the normalization, [codebook][stream][density]. */
  readonly constants: Float32Array;
  /** Steps of negative log weight, [senone][stream][density]. */
  readonly weights: Uint8Array;
  /** Linear weight of each step. */
  readonly weightOfStep: Float32Array;
  /** Natural logs, [phone][state][next state], 3 x 4. */
  readonly transitions: Float32Array;
  /** Senone of a state of a phone between two others. */
  senoneOf(phone: number, state: number, position: WordPosition, left: number, right: number): number;
  /** Senone of a state of a phone without context. */
  ciSenoneOf(phone: number, state: number): number;
}

const DAMAGED = 'The voice model on this device is damaged. Load the app again with a network; the buttons keep working.';

/** Walks over the sections; every read is checked against the end. */
class SectionReader {
  readonly #bytes: Uint8Array;
  readonly #view: DataView;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  #take(length: number): number {
    const at = this.#at;
    if (length < 0 || at + length > this.#bytes.length) throw new ModelError(DAMAGED);
    this.#at = at + length;
    return at;
  }

  u16(): number {
    return this.#view.getUint16(this.#take(2), true);
  }

  f32(): number {
    return this.#view.getFloat32(this.#take(4), true);
  }

  bytes(length: number): Uint8Array {
    const at = this.#take(length);
    return this.#bytes.slice(at, at + length);
  }

  floats(count: number): Float32Array {
    const at = this.#take(4 * count);
    const values = Float32Array.from({ length: count }, (_, index) => this.#view.getFloat32(at + 4 * index, true));
    if (!values.every((value) => !Number.isNaN(value))) throw new ModelError(DAMAGED);
    return values;
  }

  end(): void {
    if (this.#at !== this.#bytes.length) throw new ModelError(DAMAGED);
  }
}

function inflate(file: Uint8Array): Uint8Array {
  if (file.length < MODEL_HEADER_BYTES) throw new ModelError(DAMAGED);
  const header = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (header.getUint32(0, true) !== MODEL_MAGIC) throw new ModelError(DAMAGED);
  if (header.getUint32(4, true) !== MODEL_VERSION) {
    throw new ModelError('The voice model on this device is of another version. Load the app again with a network.');
  }
  if (crc32(file.subarray(8 + 4)) !== header.getUint32(8, true)) throw new ModelError(DAMAGED);
  const length = header.getUint32(12, true);
  if (length > MOST_BYTES) throw new ModelError(DAMAGED);
  try {
    return inflateSync(file.subarray(MODEL_HEADER_BYTES), { out: new Uint8Array(length) });
  } catch {
    throw new ModelError(DAMAGED);
  }
}

/** Values stored as bytes between a low and a high bound for each codebook, stream and dimension. */
function dequantize(reader: SectionReader, groups: number, densities: number, dims: number): Float32Array {
  const low = reader.floats(groups * dims);
  const step = reader.floats(groups * dims);
  const codes = reader.bytes(groups * densities * dims);
  const values = new Float32Array(codes.length);
  let at = 0;
  for (let group = 0; group < groups; group += 1) {
    for (let density = 0; density < densities; density += 1) {
      for (let dim = 0; dim < dims; dim += 1, at += 1) {
        const bound = group * dims + dim;
        values[at] = (low[bound] ?? 0) + (codes[at] ?? 0) * (step[bound] ?? 0);
      }
    }
  }
  return values;
}

/** The recogniser is compiled without any host library, so there is no TextDecoder. */
function asciiText(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte & 0x7f);
  return text;
}

/**
 * Read a model file.
 * @throws ModelError with a sentence for the person when it is damaged, cut short or of another version.
 */
export function readAcousticModel(file: Uint8Array): AcousticModel {
  const reader = new SectionReader(inflate(file));
  const count = reader.u16();
  const streams = reader.u16();
  const densities = reader.u16();
  const dims = reader.u16();
  const phones = asciiText(reader.bytes(reader.u16())).split(' ');
  if (phones.length !== count || count === 0 || streams * densities * dims === 0) throw new ModelError(DAMAGED);
  const isFiller = [...reader.bytes(count)].map((flag) => flag === 1);
  const silence = phones.indexOf('SIL');
  if (silence < 0) throw new ModelError(DAMAGED);

  const groupSizes = Array.from({ length: count * STATES }, () => reader.u16());
  const groupStart = new Uint16Array(groupSizes.length);
  let senones = 0;
  for (const [group, size] of groupSizes.entries()) {
    if (size === 0) throw new ModelError(DAMAGED);
    groupStart[group] = senones;
    senones += size;
  }
  const senoneCodebook = new Uint8Array(senones);
  for (const [group, size] of groupSizes.entries()) {
    const start = groupStart[group] ?? 0;
    senoneCodebook.fill(Math.floor(group / STATES), start, start + size);
  }
  const ci = reader.bytes(count * STATES);
  const planes = reader.bytes(count * STATES * 4 * count * count);
  const planeSize = 4 * count * count;
  for (const [group, size] of groupSizes.entries()) {
    if ((ci[group] ?? 0) >= size) throw new ModelError(DAMAGED);
    for (let at = group * planeSize; at < (group + 1) * planeSize; at += 1) {
      if ((planes[at] ?? 0) >= size) throw new ModelError(DAMAGED);
    }
  }

  const groups = count * streams;
  const means = dequantize(reader, groups, densities, dims);
  const logVariances = dequantize(reader, groups, densities, dims);
  const gaussians = new Float32Array(2 * means.length);
  const constants = new Float32Array(groups * densities);
  for (let density = 0; density < constants.length; density += 1) {
    let constant = -0.5 * dims * Math.log(2 * Math.PI);
    for (let at = density * dims; at < (density + 1) * dims; at += 1) {
      const variance = Math.max(Math.exp(logVariances[at] ?? 0), VARIANCE_FLOOR);
      constant -= 0.5 * Math.log(variance);
      gaussians[2 * at] = means[at] ?? 0;
      gaussians[2 * at + 1] = 0.5 / variance;
    }
    constants[density] = constant;
  }

  const nats = reader.f32();
  if (!(nats > 0 && nats < 10)) throw new ModelError(DAMAGED);
  const codes = reader.bytes(streams * densities * senones);
  const weights = new Uint8Array(codes.length);
  for (let row = 0; row < streams * densities; row += 1) {
    for (let senone = 0; senone < senones; senone += 1)
      weights[senone * streams * densities + row] = codes[row * senones + senone] ?? 0;
  }
  const transitions = reader.floats(count * STATES * (STATES + 1));
  reader.end();

  return {
    phones,
    phoneIndex: new Map(phones.map((phone, index) => [phone, index])),
    silence,
    isFiller,
    senones,
    senoneCodebook,
    streams,
    densities,
    dims,
    gaussians,
    constants,
    weights,
    weightOfStep: Float32Array.from({ length: 256 }, (_, step) => Math.exp(-step * nats)),
    transitions,
    senoneOf(phone, state, position, left, right) {
      const group = phone * STATES + state;
      return (groupStart[group] ?? 0) + (planes[group * planeSize + (position * count + left) * count + right] ?? 0);
    },
    ciSenoneOf(phone, state) {
      const group = phone * STATES + state;
      return (groupStart[group] ?? 0) + (ci[group] ?? 0);
    },
  };
}
