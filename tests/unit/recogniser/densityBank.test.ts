/** The Gaussians in SIMD are those of the formula. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { densityBank, type Gaussians, plainBank } from '../../../src/speech/recogniser/densityBank.ts';
import { densityKernel } from '../../../src/speech/recogniser/densityKernel.ts';
import { seeded } from '../../audio/random.ts';

afterEach(() => vi.unstubAllGlobals());

function madeUp(phones: number, streams: number, densities: number, dims: number, seed: number): Gaussians {
  const random = seeded(seed);
  const rows = phones * streams * densities;
  return {
    phones: Array.from({ length: phones }, (_, index) => `P${index}`),
    streams,
    densities,
    dims,
    gaussians: Float32Array.from({ length: rows * dims * 2 }, (_, at) => (at % 2 === 0 ? 8 * (random() - 0.5) : 0.1 + random())),
    constants: Float32Array.from({ length: rows }, () => -20 * random()),
  };
}

/** Log of a normal density of independent dimensions, NIST/SEMATECH e-Handbook 1.3.6.6.1, summed; constants as the model gives them. */
function exact({ streams, densities, dims, gaussians, constants }: Gaussians, codebook: number, frame: Float32Array): number[] {
  return Array.from({ length: streams * densities }, (_, slot) => {
    const row = codebook * streams * densities + slot;
    const stream = Math.floor(slot / densities);
    let sum = constants[row]!;
    for (let dim = 0; dim < dims; dim += 1) {
      const at = (row * dims + dim) * 2;
      sum -= (frame[stream * dims + dim]! - gaussians[at]!) ** 2 * gaussians[at + 1]!;
    }
    return sum;
  });
}

const closeTo = (logs: ArrayLike<number>, wanted: readonly number[]) => {
  expect(logs.length).toBe(wanted.length);
  for (const [slot, value] of wanted.entries())
    expect(Math.abs(logs[slot]! - value)).toBeLessThan(1e-4 * Math.max(1, Math.abs(value)));
};

describe('densityBank', () => {
  it('is compiled: this engine has SIMD, so the tests below are about it', () => {
    expect(WebAssembly.validate(densityKernel(13).slice())).toBe(true);
    const Instance = vi.fn(WebAssembly.Instance);
    vi.stubGlobal('WebAssembly', { Module: WebAssembly.Module, Memory: WebAssembly.Memory, Instance });
    densityBank(madeUp(1, 1, 4, 1, 1));
    expect(Instance).toHaveBeenCalledOnce();
  });

  it('gives the log densities of every codebook, whatever the shape of the model', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 40 }),
        fc.nat(),
        (phones, streams, fours, dims, seed) => {
          const model = madeUp(phones, streams, 4 * fours, dims, seed);
          const random = seeded(seed + 1);
          const features = Float32Array.from({ length: 3 * streams * dims }, () => 8 * (random() - 0.5));
          for (const bank of [densityBank(model), plainBank(model)]) {
            for (const frame of [2, 0, 1]) {
              for (let codebook = phones - 1; codebook >= 0; codebook -= 1) {
                const at = frame * streams * dims;
                bank.evaluate(codebook, features, at);
                closeTo(bank.logs, exact(model, codebook, features.subarray(at)));
              }
            }
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('gives those of the model that the app carries', () => {
    const model = readAcousticModel(readFileSync('public/ears/model.bin'));
    const bank = densityBank(model);
    const random = seeded(9);
    for (let codebook = 0; codebook < model.phones.length; codebook += 1) {
      const features = Float32Array.from({ length: 39 }, () => 6 * (random() - 0.5));
      bank.evaluate(codebook, features, 0);
      closeTo(bank.logs, exact(model, codebook, features));
    }
  });

  it.each([
    ['has no WebAssembly', undefined],
    [
      'may not compile',
      {
        Memory: WebAssembly.Memory,
        Module: class {
          constructor() {
            throw new WebAssembly.CompileError('blocked by the policy');
          }
        },
      },
    ],
  ])('does without where the engine %s', (_, host) => {
    const model = madeUp(2, 3, 8, 13, 5);
    const features = Float32Array.from({ length: 39 }, (__, at) => at / 10);
    vi.stubGlobal('WebAssembly', host);
    const bank = densityBank(model);
    bank.evaluate(1, features, 0);
    closeTo(bank.logs, exact(model, 1, features));
  });

  it('does without for a number of densities that does not fill the lanes', () => {
    const model = madeUp(2, 1, 6, 5, 6);
    const features = Float32Array.from({ length: 5 }, (_, at) => at);
    const bank = densityBank(model);
    bank.evaluate(1, features, 0);
    closeTo(bank.logs, exact(model, 1, features));
  });
});
