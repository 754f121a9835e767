/**
 * Reads the freely licensed US English acoustic model in CMU Sphinx form, as Debian's `pocketsphinx-en-us` carries it.
 * Formats: SphinxTrain "s3" parameter files, PocketSphinx binary model definition and `sendump`. Little-endian only.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const SPHINX_MODEL_FOLDER = '/usr/share/pocketsphinx/model/en-us/en-us';

export interface SphinxTriphone {
  readonly position: number;
  readonly base: number;
  readonly left: number;
  readonly right: number;
  readonly sequence: number;
}

export interface SphinxModel {
  readonly phones: readonly string[];
  readonly fillers: readonly boolean[];
  /** Senone sequence of each context-independent phone. */
  readonly ciSequences: readonly number[];
  readonly triphones: readonly SphinxTriphone[];
  /** Three senones a sequence. */
  readonly sequences: Uint16Array;
  readonly senones: number;
  /** Phone whose codebook a senone uses. */
  readonly senoneCodebook: Uint8Array;
  readonly streams: number;
  readonly densities: number;
  readonly dims: number;
  /** [codebook][stream][density][dim] */
  readonly means: Float32Array;
  readonly variances: Float32Array;
  /** Negative log weights in steps of 1024 ln 1.0001, [stream][density][senone]. */
  readonly weights: Uint8Array;
  /** Natural log, [phone][state][next]; rows 3, columns 4. */
  readonly transitions: Float32Array;
  readonly params: Readonly<Record<string, string>>;
}

const TRANSITION_FLOOR = 1e-4;
const VARIANCE_FLOOR = 1e-4;

interface ParameterFile {
  readonly sizes: readonly number[];
  readonly values: Float32Array;
}

/** A parameter file: text header, byte-order mark, integers, floats. */
function readParameters(path: string, integers: number): ParameterFile {
  const bytes = readFileSync(path);
  const end = bytes.indexOf('endhdr\n') + 'endhdr\n'.length;
  if (end < 7) throw new Error(`${path}: no header`);
  if (bytes.readUInt32LE(end) !== 0x11223344) throw new Error(`${path}: not little-endian`);
  const sizes = Array.from({ length: integers }, (_, index) => bytes.readInt32LE(end + 4 + 4 * index));
  const count = sizes.at(-1) ?? 0;
  const from = end + 4 + 4 * integers;
  return { sizes, values: new Float32Array(bytes.buffer.slice(bytes.byteOffset + from, bytes.byteOffset + from + 4 * count)) };
}

function readDefinition(path: string) {
  const bytes = readFileSync(path);
  if (bytes.toString('latin1', 0, 4) !== 'BMDF') throw new Error(`${path}: not a little-endian binary model definition`);
  let at = 8;
  const int = () => {
    const value = bytes.readInt32LE(at);
    at += 4;
    return value;
  };
  const text = int();
  at += text;
  const [ciPhones, phoneCount, states, ciSenones, senones, , sequenceCount, , treeNodes] = Array.from({ length: 10 }, int) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (states !== 3) throw new Error(`${path}: three emitting states are expected`);
  const phones: string[] = [];
  for (let index = 0; index < ciPhones; index += 1) {
    const end = bytes.indexOf(0, at);
    phones.push(bytes.toString('latin1', at, end));
    at = end + 1;
  }
  at = (at + 3) & ~3;
  at += 8 * treeNodes;
  const fillers: boolean[] = [];
  const ciSequences: number[] = [];
  const triphones: SphinxTriphone[] = [];
  for (let index = 0; index < phoneCount; index += 1, at += 12) {
    const sequence = bytes.readInt32LE(at);
    if (index < ciPhones) {
      ciSequences.push(sequence);
      fillers.push(bytes[at + 8] === 1);
    } else {
      const [position, base, left, right] = [...bytes.subarray(at + 8, at + 12)] as [number, number, number, number];
      triphones.push({ position, base, left, right, sequence });
    }
  }
  const length = int();
  if (length !== 3 * sequenceCount) throw new Error(`${path}: senone sequences of three are expected`);
  const sequences = new Uint16Array(bytes.buffer.slice(bytes.byteOffset + at, bytes.byteOffset + at + 2 * length));
  const senoneCodebook = new Uint8Array(senones);
  ciSequences.forEach((sequence, phone) => {
    for (let state = 0; state < 3; state += 1) senoneCodebook[sequences[3 * sequence + state]!] = phone;
  });
  for (const { base, sequence } of triphones) {
    for (let state = 0; state < 3; state += 1) senoneCodebook[sequences[3 * sequence + state]!] = base;
  }
  return { phones, fillers, ciSequences, triphones, sequences, senones, senoneCodebook, ciSenones };
}

function readWeights(path: string, densities: number, streams: number, senones: number): Uint8Array {
  const bytes = readFileSync(path);
  let at = 0;
  for (;;) {
    const length = bytes.readInt32LE(at);
    at += 4;
    if (length === 0) break;
    at += length;
  }
  const rows = bytes.readInt32LE(at);
  const columns = bytes.readInt32LE(at + 4);
  if (rows !== densities || columns !== senones) throw new Error(`${path}: ${rows} x ${columns} weights are not expected`);
  return new Uint8Array(bytes.subarray(at + 8, at + 8 + streams * rows * columns));
}

export function readSphinxModel(folder = SPHINX_MODEL_FOLDER): SphinxModel {
  const definition = readDefinition(join(folder, 'mdef'));
  const means = readParameters(join(folder, 'means'), 7);
  const variances = readParameters(join(folder, 'variances'), 7);
  const [codebooks, streams, densities, dims] = means.sizes as [number, number, number, number];
  if (codebooks !== definition.phones.length || streams !== 3)
    throw new Error('one codebook a phone and three streams are expected');
  const transitionFile = readParameters(join(folder, 'transition_matrices'), 4);
  const transitions = transitionFile.values.slice();
  for (let row = 0; row < transitions.length; row += 4) {
    let sum = 0;
    for (let column = row; column < row + 4; column += 1) {
      const value = transitions[column]!;
      transitions[column] = value > 0 ? Math.max(value, TRANSITION_FLOOR) : 0;
      sum += transitions[column]!;
    }
    for (let column = row; column < row + 4; column += 1) transitions[column] = Math.log(transitions[column]! / sum);
  }
  const params: Record<string, string> = {};
  for (const line of readFileSync(join(folder, 'feat.params'), 'utf8').split('\n')) {
    const match = /^-(\S+)\s+(\S+)/.exec(line);
    if (match) params[match[1]!] = match[2]!;
  }
  return {
    ...definition,
    streams,
    densities,
    dims,
    means: means.values,
    variances: variances.values.map((value) => Math.max(value, VARIANCE_FLOOR)),
    weights: readWeights(join(folder, 'sendump'), densities, streams, definition.senones),
    transitions,
    params,
  };
}
