/**
 * A WebAssembly module of one function: the log densities of one codebook and stream, four at a time in SIMD lanes.
 *
 * Written out here byte by byte since it is so small (some 600 bytes) that a second language and its compiler would cost more than
 * they give. Source: WebAssembly Core Specification 2.0, chapter 5 (binary format) with the fixed-width SIMD instructions.
 */

/** The layout that the kernel reads, in bytes: for four densities, each dimension's four means and four half inverse variances. */
export const LANES = 4;
export const BYTES_PER_DIM = 2 * LANES * 4;

/** Name of the function, and of the memory that it works on: `import` "ears" "memory". */
export const KERNEL_EXPORT = 'densities';
export const KERNEL_MODULE = 'ears';
export const KERNEL_MEMORY = 'memory';

const TYPE = { i32: 0x7f, v128: 0x7b, function: 0x60 };
const KIND = { function: 0, memory: 2 };
const SECTION = { type: 1, import: 2, function: 3, export: 7, code: 10 };
const OP = {
  loop: 0x03,
  noResult: 0x40,
  end: 0x0b,
  branchIf: 0x0d,
  get: 0x20,
  set: 0x21,
  tee: 0x22,
  constant: 0x41,
  less: 0x49,
  add: 0x6a,
};
const SIMD = { load: 0, loadSplat: 9, store: 11, subtract: 0xe5, multiply: 0xe6 };
/** Parameters: byte addresses of the Gaussians, the constants, the frame's features, the results and the results' end. */
const LOCAL = { gaussians: 0, constants: 1, features: 2, results: 3, end: 4, sum: 5, difference: 6 };

function unsigned(value: number): readonly number[] {
  const bytes: number[] = [];
  let rest = value;
  while (rest >= 0x80) {
    bytes.push((rest & 0x7f) | 0x80);
    rest >>>= 7;
  }
  return [...bytes, rest];
}

/** Signed numbers carry their sign in bit 6 of the last byte: a positive number must leave it clear. */
function signed(value: number): readonly number[] {
  const bytes: number[] = [];
  let rest = value;
  while (rest >= 0x40) {
    bytes.push((rest & 0x7f) | 0x80);
    rest >>>= 7;
  }
  return [...bytes, rest];
}

const vector = (items: readonly (readonly number[])[]) => [...unsigned(items.length), ...items.flat()];
const sized = (bytes: readonly number[]) => [...unsigned(bytes.length), ...bytes];
const text = (name: string) => sized([...name].map((letter) => letter.charCodeAt(0)));
const section = (id: number, items: readonly (readonly number[])[]) => [id, ...sized(vector(items))];

const get = (local: number) => [OP.get, local];
const set = (local: number) => [OP.set, local];
const tee = (local: number) => [OP.tee, local];
const simd = (op: number) => [0xfd, ...unsigned(op)];
/** @param align power of two that the address is a multiple of */
const access = (op: number, align: number, offset: number) => [...simd(op), ...unsigned(align), ...unsigned(offset)];
const advance = (local: number, bytes: number) => [...get(local), OP.constant, ...signed(bytes), OP.add, ...set(local)];

/** sum -= (feature - mean)^2 x half the inverse variance, in four lanes */
const dimension = (dim: number) => [
  ...get(LOCAL.sum),
  ...get(LOCAL.features),
  ...access(SIMD.loadSplat, 2, 4 * dim),
  ...get(LOCAL.gaussians),
  ...access(SIMD.load, 4, BYTES_PER_DIM * dim),
  ...simd(SIMD.subtract),
  ...tee(LOCAL.difference),
  ...get(LOCAL.difference),
  ...simd(SIMD.multiply),
  ...get(LOCAL.gaussians),
  ...access(SIMD.load, 4, BYTES_PER_DIM * dim + BYTES_PER_DIM / 2),
  ...simd(SIMD.multiply),
  ...simd(SIMD.subtract),
  ...set(LOCAL.sum),
];

/**
 * The module's bytes.
 * @param dims dimensions of a stream, 1 .. 255
 * @returns a module that imports a memory and exports `densities(gaussians, constants, features, results, end)`; all addresses but
 * the features' are multiples of 16
 */
export function densityKernel(dims: number): Uint8Array {
  const body = [
    // Two locals besides the parameters, one after the other of the same type.
    ...vector([[2, TYPE.v128]]),
    OP.loop,
    OP.noResult,
    ...get(LOCAL.constants),
    ...access(SIMD.load, 4, 0),
    ...set(LOCAL.sum),
    ...Array.from({ length: dims }, (_, dim) => dimension(dim)).flat(),
    ...get(LOCAL.results),
    ...get(LOCAL.sum),
    ...access(SIMD.store, 4, 0),
    ...advance(LOCAL.gaussians, BYTES_PER_DIM * dims),
    ...advance(LOCAL.constants, 4 * LANES),
    ...advance(LOCAL.results, 4 * LANES),
    ...get(LOCAL.results),
    ...get(LOCAL.end),
    OP.less,
    OP.branchIf,
    0,
    OP.end,
    OP.end,
  ];
  const parameters = vector([[TYPE.i32], [TYPE.i32], [TYPE.i32], [TYPE.i32], [TYPE.i32]]);
  return Uint8Array.from([
    ...[0, 0x61, 0x73, 0x6d],
    ...[1, 0, 0, 0],
    ...section(SECTION.type, [[TYPE.function, ...parameters, ...vector([])]]),
    // The memory: no upper bound, one page at least.
    ...section(SECTION.import, [[...text(KERNEL_MODULE), ...text(KERNEL_MEMORY), KIND.memory, 0, 1]]),
    ...section(SECTION.function, [[0]]),
    ...section(SECTION.export, [[...text(KERNEL_EXPORT), KIND.function, 0]]),
    ...section(SECTION.code, [sized(body)]),
  ]);
}
