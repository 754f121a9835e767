import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { createMelFilters } from '../../../src/speech/recogniser/melFilters.ts';
import { VoiceFit, WARPS, warpEnergies } from '../../../src/speech/recogniser/vocalTract.ts';

const FILTERS = createMelFilters();

/** A single resonance, as energies of the filters. */
const resonanceAt = (hz: number) =>
  Float32Array.from(FILTERS, ({ centerHz }) => 1e6 * Math.exp(-(((centerHz - hz) / (0.15 * hz)) ** 2)) + 10);

/** Where the energy lies, Hz. */
const centerOf = (energies: Float32Array) => {
  const total = energies.reduce((sum, energy) => sum + energy, 0);
  return energies.reduce((sum, energy, filter) => sum + energy * (FILTERS[filter]?.centerHz ?? 0), 0) / total;
};

describe('warping', () => {
  it('by one changes nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.float({ min: 1, max: 1e9, noNaN: true }), { minLength: 25, maxLength: 25 }), (values) => {
        const energies = Float32Array.from(values);
        for (const [filter, energy] of warpEnergies(energies, 1, 1).entries())
          expect(energy / (energies[filter] ?? 0)).toBeCloseTo(1, 3);
      }),
    );
  });

  it.each(WARPS)('by %d brings a resonance down by that factor', (warp) => {
    const moved = centerOf(warpEnergies(resonanceAt(1500), 1, warp));
    expect(centerOf(resonanceAt(1500)) / moved).toBeCloseTo(warp, 1);
    expect(Math.abs(centerOf(resonanceAt(1500)) / moved / warp - 1)).toBeLessThan(0.03);
  });

  it('never makes energy out of nothing, and keeps every number finite', () => {
    fc.assert(
      fc.property(
        fc.array(fc.float({ min: 0, max: Math.fround(1e12), noNaN: true }), { minLength: 50, maxLength: 50 }),
        fc.constantFrom(...WARPS),
        (values, warp) => {
          const energies = Float32Array.from(values);
          const warped = warpEnergies(energies, 2, warp);
          const most = Math.max(...energies);
          for (const energy of warped) {
            expect(Number.isFinite(energy)).toBe(true);
            expect(energy).toBeLessThanOrEqual(most * 1.0001 + 1);
          }
        },
      ),
    );
  });
});

describe('how well any phones fit', () => {
  const model = readAcousticModel(readFileSync('public/ears/model.bin'));
  const { streams, dims, densities, gaussians } = model;
  /** A frame at the very middle of a density of each stream of one codebook. */
  const frameOf = (codebook: number, density: number) => {
    const frame = new Float32Array(streams * dims);
    for (let stream = 0; stream < streams; stream += 1)
      for (let dim = 0; dim < dims; dim += 1)
        frame[stream * dims + dim] =
          gaussians[((codebook * streams + stream) * densities + density) * dims * 2 + 2 * dim] ?? Number.NaN;
    return frame;
  };

  it('is better for what the model knows than for the same pushed away', () => {
    const fit = new VoiceFit(model);
    for (const codebook of [3, 10, 20]) {
      const known = frameOf(codebook, 5);
      const pushed = known.map((value, at) => (at < dims ? value + 6 : value));
      expect(fit.of(known, [0])).toBeGreaterThan(fit.of(pushed, [0]) + 1);
    }
  });

  it('is nothing where no frame has a pitch, and a mean that does not grow with length', () => {
    const fit = new VoiceFit(model);
    expect(fit.of(new Float32Array(0), [])).toBe(0);
    const one = frameOf(3, 5);
    const many = new Float32Array(200 * one.length);
    for (let at = 0; at < 200; at += 1) many.set(one, at * one.length);
    const all = [...new Array(200).keys()];
    expect(fit.of(many, all)).toBeCloseTo(fit.of(one, [0]), 6);
  });
});
