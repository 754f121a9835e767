/**
 * RNNoise (Valin 2018) as WebAssembly behind a frame-wise interface. The module is instantiated by whoever owns the realm (a
 * Worker, Node) and handed in; here is only what its functions mean.
 */
import type { FrameSuppressor } from './noiseSuppressor.ts';

/** What the module exports, as far as it is used. */
export interface RnnoiseExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly malloc: (bytes: number) => number;
  readonly rnnoise_create: (model: number) => number;
  readonly rnnoise_destroy: (state: number) => void;
  readonly rnnoise_get_frame_size: () => number;
  readonly rnnoise_process_frame: (state: number, output: number, input: number) => number;
  readonly __wasm_call_ctors: () => void;
  readonly emscripten_stack_init: () => void;
}

/** What the module asks for. It writes nothing and grows nothing in normal use. */
export const RNNOISE_IMPORTS = {
  env: {
    __assert_fail: (): never => {
      throw new Error('the noise suppressor failed an assertion');
    },
    emscripten_resize_heap: (): number => 0,
  },
  wasi_snapshot_preview1: { fd_write: (): number => 0 },
} as const;

/** @throws RangeError when the module's frame is not 10 ms at 48 kHz */
export function createRnnoise(exports: RnnoiseExports): FrameSuppressor {
  exports.emscripten_stack_init();
  exports.__wasm_call_ctors();
  const size = exports.rnnoise_get_frame_size();
  if (size !== 480) throw new RangeError(`a frame of 480 samples is expected, not ${size}`);
  const buffer = exports.malloc(4 * size);
  let state = exports.rnnoise_create(0);
  return {
    process(frame) {
      // The memory's buffer changes when it grows, so it is looked up each time.
      const view = new Float32Array(exports.memory.buffer, buffer, size);
      for (let index = 0; index < size; index += 1) view[index] = (frame[index] as number) * 32768;
      const speech = exports.rnnoise_process_frame(state, buffer, buffer);
      const output = new Float32Array(exports.memory.buffer, buffer, size);
      for (let index = 0; index < size; index += 1) frame[index] = (output[index] as number) / 32768;
      return speech;
    },
    reset() {
      exports.rnnoise_destroy(state);
      state = exports.rnnoise_create(0);
    },
  };
}
