/** How the model's phones sound in quiet, roughly: what the noise handling measures noisy sound against. */
import { type AcousticModel, STATES } from './acousticModel.ts';
import { LIFTS } from './cepstra.ts';

/** Each state of each phone as one Gaussian over static cepstra without lifter, about the utterance's mean. */
export interface QuietSounds {
  readonly count: number;
  /** count x 13 */
  readonly means: Float64Array;
  readonly variances: Float64Array;
  /** Standard deviation of each liftered cepstrum over all of them. */
  readonly spread: Float64Array;
}

/** Noises are no speech; silence stands between words. */
const isSpeech = ({ isFiller, silence }: AcousticModel, phone: number) => !isFiller[phone] || phone === silence;

export function quietSounds(model: AcousticModel): QuietSounds {
  const { streams, densities, dims, gaussians, weights, weightOfStep } = model;
  const means: number[] = [];
  const variances: number[] = [];
  for (const phone of model.phones.keys()) {
    if (!isSpeech(model, phone)) continue;
    for (let state = 0; state < STATES; state += 1) {
      const own = model.ciSenoneOf(phone, state) * streams * densities;
      const parts = Array.from({ length: densities }, (_, density) => weightOfStep[weights[own + density] as number] as number);
      const whole = parts.reduce((sum, part) => sum + part, 0);
      for (let dim = 0; dim < dims; dim += 1) {
        let mean = 0;
        let square = 0;
        for (const [density, part] of parts.entries()) {
          const at = ((phone * streams * densities + density) * dims + dim) * 2;
          const center = gaussians[at] as number;
          mean += (part / whole) * center;
          square += (part / whole) * (0.5 / (gaussians[at + 1] as number) + center * center);
        }
        const lift = LIFTS[dim] as number;
        means.push(mean / lift);
        variances.push((square - mean * mean) / (lift * lift));
      }
    }
  }
  const count = means.length / dims;
  const spread = Float64Array.from({ length: dims }, (_, dim) => {
    let sum = 0;
    let squares = 0;
    for (let at = dim; at < means.length; at += dims) {
      sum += (means[at] as number) / count;
      squares += ((variances[at] as number) + (means[at] as number) ** 2) / count;
    }
    return (LIFTS[dim] as number) * Math.sqrt(squares - sum * sum);
  });
  return { count, means: Float64Array.from(means), variances: Float64Array.from(variances), spread };
}
