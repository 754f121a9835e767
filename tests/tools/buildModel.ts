/**
 * Writes `public/ears/` from Debian's `pocketsphinx-en-us`: `npx tsx tests/tools/buildModel.ts [folder]`.
 *
 * All senones are kept: with the triphones resolved ahead of time into planes and everything deflated that costs less than
 * the choice would save, and any word of the pronouncing dictionary can be added later without touching the model.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'fflate';
import { MODEL_HEADER_BYTES, MODEL_MAGIC, MODEL_VERSION, STATES } from '../../src/speech/recogniser/acousticModel.ts';
import { crc32 } from '../../src/speech/recogniser/crc32.ts';
import { FRONT_END } from '../../src/speech/recogniser/frontEnd.ts';
import { readSphinxModel, SPHINX_MODEL_FOLDER, type SphinxModel } from './sphinxModel.ts';

/** Steps of the reference file's weights that are merged into one; 4 steps are 0.41 nats. */
const WEIGHT_STEPS = 4;
const REFERENCE_NATS = 1024 * Math.log(1.0001);

class SectionWriter {
  readonly #parts: Uint8Array[] = [];

  bytes(values: ArrayLike<number>): void {
    this.#parts.push(Uint8Array.from(values));
  }

  u16(...values: readonly number[]): void {
    const part = new DataView(new ArrayBuffer(2 * values.length));
    for (const [index, value] of values.entries()) part.setUint16(2 * index, value, true);
    this.#parts.push(new Uint8Array(part.buffer));
  }

  floats(values: ArrayLike<number>): void {
    const part = new DataView(new ArrayBuffer(4 * values.length));
    for (let index = 0; index < values.length; index += 1) part.setFloat32(4 * index, values[index]!, true);
    this.#parts.push(new Uint8Array(part.buffer));
  }

  join(): Uint8Array {
    return new Uint8Array(Buffer.concat(this.#parts));
  }
}

/** Senones renumbered so that those of one state of one phone stand together. */
function groupSenones(model: SphinxModel) {
  const groups = Array.from({ length: model.phones.length * STATES }, () => new Set<number>());
  const add = (base: number, sequence: number) => {
    for (let state = 0; state < STATES; state += 1)
      groups[base * STATES + state]!.add(model.sequences[STATES * sequence + state]!);
  };
  for (const [phone, sequence] of model.ciSequences.entries()) add(phone, sequence);
  for (const { base, sequence } of model.triphones) add(base, sequence);
  return groups.map((group) => [...group].sort((a, b) => a - b));
}

/**
 * The senone of every state of every phone in every context, with the usual back-off: the same contexts at another place in
 * the word, then silence for the right, the left, both, then no context. Filler contexts count as silence.
 */
function resolveTriphones(model: SphinxModel, groups: readonly (readonly number[])[]): { planes: Uint8Array; ci: Uint8Array } {
  const count = model.phones.length;
  const silence = model.phones.indexOf('SIL');
  const key = (position: number, base: number, left: number, right: number) =>
    ((position * count + base) * count + left) * count + right;
  const known = new Map(
    model.triphones.map(({ position, base, left, right, sequence }) => [key(position, base, left, right), sequence]),
  );
  const local = groups.map((group) => new Map(group.map((senone, index) => [senone, index])));
  const asContext = (phone: number) => (model.fillers[phone] ? silence : phone);
  const planes = new Uint8Array(count * STATES * 4 * count * count);
  const ci = new Uint8Array(count * STATES);
  const set = (target: Uint8Array, at: (state: number) => number, base: number, sequence: number) => {
    for (let state = 0; state < STATES; state += 1) {
      target[at(state)] = local[base * STATES + state]!.get(model.sequences[STATES * sequence + state]!)!;
    }
  };
  for (let base = 0; base < count; base += 1) {
    set(ci, (state) => base * STATES + state, base, model.ciSequences[base]!);
    for (let position = 0; position < 4; position += 1) {
      const find = (left: number, right: number) => {
        for (const place of [position, 0, 1, 2, 3]) {
          const sequence = known.get(key(place, base, left, right));
          if (sequence !== undefined) return sequence;
        }
        return undefined;
      };
      for (let left = 0; left < count; left += 1) {
        for (let right = 0; right < count; right += 1) {
          const [l, r] = [asContext(left), asContext(right)];
          const sequence =
            find(l, r) ?? find(l, silence) ?? find(silence, r) ?? find(silence, silence) ?? model.ciSequences[base]!;
          set(planes, (state) => (((base * STATES + state) * 4 + position) * count + left) * count + right, base, sequence);
        }
      }
    }
  }
  return { planes, ci };
}

/** Bytes between the lowest and the highest value of each codebook, stream and dimension. */
function writeQuantized(writer: SectionWriter, values: Float32Array, groups: number, densities: number, dims: number): void {
  const low = new Float32Array(groups * dims).fill(Infinity);
  const high = new Float32Array(groups * dims).fill(-Infinity);
  const boundOf = (at: number) => Math.floor(at / (densities * dims)) * dims + (at % dims);
  values.forEach((value, at) => {
    const bound = boundOf(at);
    low[bound] = Math.min(low[bound]!, value);
    high[bound] = Math.max(high[bound]!, value);
  });
  const step = low.map((value, bound) => (high[bound]! - value) / 255);
  writer.floats(low);
  writer.floats(step);
  writer.bytes(
    Array.from(values, (value, at) =>
      step[boundOf(at)]! > 0 ? Math.round((value - low[boundOf(at)]!) / step[boundOf(at)]!) : 0,
    ),
  );
}

/** @throws when `feat.params` asks for another front end than ours. */
function checkFrontEnd({ params }: SphinxModel): void {
  const wanted: Record<string, string> = {
    lowerf: String(FRONT_END.lowHz),
    upperf: String(FRONT_END.highHz),
    nfilt: String(FRONT_END.filters),
    lifter: String(FRONT_END.lifter),
    transform: 'dct',
    feat: '1s_c_d_dd',
    svspec: '0-12/13-25/26-38',
    agc: 'none',
    cmn: 'batch',
    varnorm: 'no',
    model: 'ptm',
  };
  for (const [name, value] of Object.entries(wanted)) {
    if (params[name] !== value) throw new Error(`feat.params says ${name} ${params[name]}; the front end does ${value}`);
  }
}

/** The compact file of a model. The same input gives the same bytes. */
export function buildModel(model: SphinxModel): Uint8Array {
  checkFrontEnd(model);
  const groups = groupSenones(model);
  const { planes, ci } = resolveTriphones(model, groups);
  const order = groups.flat();
  const writer = new SectionWriter();
  const { phones, streams, densities, dims } = model;
  writer.u16(phones.length, streams, densities, dims);
  const names = Buffer.from(phones.join(' '), 'latin1');
  writer.u16(names.length);
  writer.bytes(names);
  writer.bytes(model.fillers.map(Number));
  writer.u16(...groups.map((group) => group.length));
  writer.bytes(ci);
  writer.bytes(planes);
  writeQuantized(writer, model.means, phones.length * streams, densities, dims);
  writeQuantized(writer, model.variances.map(Math.log), phones.length * streams, densities, dims);
  writer.floats([WEIGHT_STEPS * REFERENCE_NATS]);
  const weights = new Uint8Array(streams * densities * order.length);
  for (let row = 0; row < streams * densities; row += 1) {
    order.forEach((senone, index) => {
      weights[row * order.length + index] = Math.round(model.weights[row * model.senones + senone]! / WEIGHT_STEPS);
    });
  }
  writer.bytes(weights);
  writer.floats(model.transitions);
  const raw = writer.join();
  const packed = deflateSync(raw, { level: 9 });
  const file = new Uint8Array(MODEL_HEADER_BYTES + packed.length);
  file.set(packed, MODEL_HEADER_BYTES);
  const header = new DataView(file.buffer);
  header.setUint32(0, MODEL_MAGIC, true);
  header.setUint32(4, MODEL_VERSION, true);
  header.setUint32(12, raw.length, true);
  header.setUint32(8, crc32(file.subarray(12)), true);
  return file;
}

const TARGET = 'public/ears';
const DIGEST = 'src/speech/recogniser/modelDigest.ts';

function main(folder: string): void {
  if (!existsSync(join(folder, 'mdef'))) {
    console.error(`No model in ${folder}: install pocketsphinx-en-us, or name the folder.`);
    process.exit(1);
  }
  const file = buildModel(readSphinxModel(folder));
  mkdirSync(TARGET, { recursive: true });
  writeFileSync(join(TARGET, 'model.bin'), file);
  const license = readFileSync(join(folder, 'README'), 'utf8');
  writeFileSync(
    join(TARGET, 'LICENSE-model.txt'),
    `model.bin is the US English 16 kHz acoustic model of CMU Sphinx in a compact form: quantized, its triphones resolved.\nIts licence follows, unchanged.\n\n${license}`,
  );
  const sha256 = createHash('sha256').update(file).digest('hex');
  writeFileSync(
    DIGEST,
    `/** Written by tests/tools/buildModel.ts beside public/ears/model.bin. */\nexport const MODEL_BYTES = ${file.length};\nexport const MODEL_SHA256 = '${sha256}';\n`,
  );
  console.log(`model.bin: ${file.length} bytes, SHA-256 ${sha256}`);
}

if (process.argv[1]?.endsWith('buildModel.ts')) main(process.argv[2] ?? SPHINX_MODEL_FOLDER);
