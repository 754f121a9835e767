import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ModelError, readAcousticModel } from '../../../src/speech/recogniser/acousticModel.ts';
import { crc32 } from '../../../src/speech/recogniser/crc32.ts';
import { MODEL_BYTES, MODEL_SHA256 } from '../../../src/speech/recogniser/modelDigest.ts';
import { SenoneScorer } from '../../../src/speech/recogniser/senoneScorer.ts';
import { seeded } from '../../audio/random.ts';
import { buildModel } from '../../tools/buildModel.ts';
import { readSphinxModel, SPHINX_MODEL_FOLDER } from '../../tools/sphinxModel.ts';

const file = new Uint8Array(readFileSync('public/ears/model.bin'));
const model = readAcousticModel(file);
const isInstalled = existsSync(join(SPHINX_MODEL_FOLDER, 'mdef'));

const refusal = (bytes: Uint8Array): unknown => {
  try {
    readAcousticModel(bytes);
    return null;
  } catch (error) {
    return error;
  }
};

describe('the model file', () => {
  it('is the one that the app expects, at most 2 MB, with its licence beside it', () => {
    expect(createHash('sha256').update(file).digest('hex')).toBe(MODEL_SHA256);
    expect(file.length).toBe(MODEL_BYTES);
    expect(file.length).toBeLessThanOrEqual(2 * 1024 * 1024);
    expect(readFileSync('public/ears/LICENSE-model.txt', 'utf8')).toContain('Redistribution and use in source and binary forms');
  });

  it('comes out of the Debian package byte for byte, where that is installed', () => {
    // Without the package the digest above is the check.
    expect(isInstalled ? createHash('sha256').update(buildModel(readSphinxModel())).digest('hex') : MODEL_SHA256).toBe(
      MODEL_SHA256,
    );
  });

  it('holds every senone, and keeps Gaussians and weights close to the source', () => {
    expect(model.senones).toBe(5126);
    expect(model.phones.length).toBe(42);
    if (!isInstalled) return;
    const source = readSphinxModel();
    const errors = Float64Array.from(
      source.means,
      (mean, at) => Math.abs(model.gaussians[2 * at]! - mean) / Math.sqrt(source.variances[at]!),
    );
    // A handful of Gaussians have collapsed to the variance floor; a step is many of their deviations.
    expect(errors.sort()[Math.floor(0.999 * errors.length)]).toBeLessThan(0.5);
  });

  it('checks with the usual CRC-32 (check value of "123456789" is cbf43926)', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('is refused with a sentence when cut short anywhere', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: file.length - 1 }), (length) => {
        const error = refusal(file.subarray(0, length));
        expect(error).toBeInstanceOf(ModelError);
        expect((error as ModelError).message).toMatch(/\.$/);
      }),
      { numRuns: 25 },
    );
  });

  it('is refused when a single bit is wrong', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: file.length - 1 }), fc.integer({ min: 0, max: 7 }), (at, bit) => {
        const damaged = file.slice();
        damaged[at] = damaged[at]! ^ (1 << bit);
        expect(refusal(damaged)).toBeInstanceOf(ModelError);
      }),
      { numRuns: 15 },
    );
  });

  it('is refused when it is anything else, even with a right checksum', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (body) => {
        const made = new Uint8Array(16 + body.length);
        made.set([0x45, 0x41, 0x52, 0x53, 1, 0, 0, 0]);
        made.set(body, 16);
        const view = new DataView(made.buffer);
        view.setUint32(12, body.length * 3, true);
        view.setUint32(8, crc32(made.subarray(12)), true);
        expect(refusal(made)).toBeInstanceOf(ModelError);
      }),
      { numRuns: 100 },
    );
  });
});

describe('senone scores', () => {
  /** The mixture by its definition, with all densities. */
  const exact = (features: Float32Array, senone: number): number => {
    const codebook = model.senoneCodebook[senone]!;
    let total = 0;
    for (let stream = 0; stream < 3; stream += 1) {
      let sum = 0;
      for (let density = 0; density < model.densities; density += 1) {
        const row = (codebook * 3 + stream) * model.densities + density;
        let score = model.constants[row]!;
        for (let dim = 0; dim < 13; dim += 1) {
          const at = 2 * (row * 13 + dim);
          score -= (features[stream * 13 + dim]! - model.gaussians[at]!) ** 2 * model.gaussians[at + 1]!;
        }
        sum += Math.exp(score) * model.weightOfStep[model.weights[(senone * 3 + stream) * model.densities + density]!]!;
      }
      total += Math.log(sum);
    }
    return total;
  };

  it('are the mixture’s log likelihood when all densities are kept', () => {
    const random = seeded(3);
    const scorer = new SenoneScorer(model, 128);
    for (let round = 0; round < 10; round += 1) {
      const features = Float32Array.from({ length: 39 }, (_, index) => (index < 13 ? 8 : 3) * (random() - 0.5));
      scorer.setFrame(features, 0);
      for (let index = 0; index < 20; index += 1) {
        const senone = Math.floor(random() * model.senones);
        expect(Math.abs(scorer.score(senone) - exact(features, senone))).toBeLessThan(1e-3);
      }
    }
  });

  it('with the best eight densities never exceed the whole mixture and lose little', () => {
    const random = seeded(4);
    const scorer = new SenoneScorer(model, 8);
    let lost = 0;
    for (let round = 0; round < 100; round += 1) {
      const features = Float32Array.from({ length: 39 }, (_, index) => (index < 13 ? 8 : 3) * (random() - 0.5));
      scorer.setFrame(features, 0);
      const senone = Math.floor(random() * model.senones);
      const difference = exact(features, senone) - scorer.score(senone);
      expect(difference).toBeGreaterThan(-1e-3);
      lost += difference;
    }
    expect(lost / 100).toBeLessThan(4);
  });

  it('are the same for the same utterance, whatever was heard before it', () => {
    const random = seeded(5);
    const sound = (frames: number) =>
      Float32Array.from({ length: 39 * frames }, (_, index) => (index % 39 < 13 ? 8 : 3) * (random() - 0.5));
    const [other, utterance] = [sound(7), sound(12)];
    const scorer = new SenoneScorer(model);
    const scoresOf = (features: Float32Array) => {
      return Array.from({ length: features.length / 39 }, (_, frame) => {
        scorer.setFrame(features, frame);
        return [0, 100, 1000, model.senones - 1].map((senone) => scorer.score(senone));
      });
    };
    const first = scoresOf(utterance);
    scoresOf(other);
    expect(scoresOf(utterance)).toEqual(first);
  });
});
