/**
 * The Gaussians of the model, asked for one codebook and one frame at a time: nine tenths of the ears' arithmetic.
 *
 * In SIMD where the engine has it (every browser since 2023), else in plain code with the same result but for rounding. Measured for
 * one codebook of 384 densities: 2.0 and 27 microseconds on one core of a small server.
 */
import { BYTES_PER_DIM, densityKernel, KERNEL_EXPORT, KERNEL_MEMORY, KERNEL_MODULE, LANES } from './densityKernel.ts';

/** What the bank is made of. */
export interface Gaussians {
  /** Codebooks, one for each phone. */
  readonly phones: readonly string[];
  readonly streams: number;
  readonly densities: number;
  readonly dims: number;
  /** [codebook][stream][density][dim][mean, half the inverse variance] */
  readonly gaussians: Float32Array;
  /** [codebook][stream][density] */
  readonly constants: Float32Array;
}

export interface DensityBank {
  /** Natural log densities of the codebook that was asked for last, [stream][density]. */
  readonly logs: Float32Array;
  /**
   * Works out `logs`.
   * @param features frames x (streams x dims)
   * @param at where the frame's begin
   */
  evaluate(codebook: number, features: Float32Array, at: number): void;
}

/** The recogniser is compiled without a host library; of WebAssembly it needs this much. */
interface WasmHost {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Memory: new (size: { readonly initial: number }) => { readonly buffer: ArrayBuffer };
  readonly Instance: new (
    module: object,
    imports: Record<string, Record<string, unknown>>,
  ) => { readonly exports: Record<string, unknown> };
}
type Kernel = (gaussians: number, constants: number, features: number, results: number, end: number) => void;

const PAGE = 65_536;
/** A model with more dimensions is none of ours; its kernel would be too long. */
const MOST_DIMS = 64;

/** In plain code, for engines without SIMD and to compare with. */
export function plainBank({ streams, densities, dims, gaussians, constants }: Gaussians): DensityBank {
  const logs = new Float32Array(streams * densities);
  return {
    logs,
    evaluate(codebook, features, at) {
      let row = codebook * streams * densities;
      let place = row * dims * 2;
      for (let slot = 0; slot < logs.length; slot += 1, row += 1) {
        const first = at + Math.floor(slot / densities) * dims;
        let sum = constants[row] as number;
        for (let dim = first; dim < first + dims; dim += 1, place += 2) {
          const difference = (features[dim] as number) - (gaussians[place] as number);
          sum -= difference * difference * (gaussians[place + 1] as number);
        }
        logs[slot] = sum;
      }
    },
  };
}

/** @throws whatever the engine throws where it has no SIMD, or may not compile */
function simdBank(model: Gaussians, host: WasmHost): DensityBank {
  const { streams, densities, dims, gaussians, constants } = model;
  const rows = model.phones.length * streams * densities;
  const constantsAt = rows * dims * 8;
  const featuresAt = constantsAt + rows * 4;
  // Results begin at a multiple of 16.
  const logsAt = 16 * Math.ceil((featuresAt + streams * dims * 4) / 16);
  const memory = new host.Memory({ initial: Math.ceil((logsAt + streams * densities * 4) / PAGE) });
  const { exports } = new host.Instance(new host.Module(densityKernel(dims)), { [KERNEL_MODULE]: { [KERNEL_MEMORY]: memory } });
  const kernel = exports[KERNEL_EXPORT] as Kernel;
  const all = new Float32Array(memory.buffer);
  all.set(constants, constantsAt / 4);
  for (let row = 0; row < rows; row += 1) {
    const lane = row % LANES;
    for (let dim = 0; dim < dims; dim += 1) {
      const from = (row * dims + dim) * 2;
      const to = ((row - lane) * dims * 8 + dim * BYTES_PER_DIM) / 4 + lane;
      all[to] = gaussians[from] as number;
      all[to + LANES] = gaussians[from + 1] as number;
    }
  }
  const frame = all.subarray(featuresAt / 4, featuresAt / 4 + streams * dims);
  return {
    logs: all.subarray(logsAt / 4, logsAt / 4 + streams * densities),
    evaluate(codebook, features, at) {
      for (let dim = 0; dim < frame.length; dim += 1) frame[dim] = features[at + dim] as number;
      for (let stream = 0; stream < streams; stream += 1) {
        const row = (codebook * streams + stream) * densities;
        const results = logsAt + stream * densities * 4;
        kernel(row * dims * 8, constantsAt + row * 4, featuresAt + stream * dims * 4, results, results + densities * 4);
      }
    },
  };
}

/** The fastest bank that this engine can have. */
export function densityBank(model: Gaussians): DensityBank {
  const host = (globalThis as { readonly WebAssembly?: WasmHost }).WebAssembly;
  if (!host || model.densities % LANES !== 0 || model.dims > MOST_DIMS) return plainBank(model);
  try {
    return simdBank(model, host);
  } catch {
    // No SIMD, or a policy that forbids to compile: slower, and no reason not to listen.
    return plainBank(model);
  }
}
