/**
 * Log likelihoods of senones for one frame: a phonetically tied mixture with the best few densities of each codebook.
 *
 * Method: for each codebook and stream the N densities nearest to the frame (search starts from the last frame's, and leaves
 * a density as soon as it falls behind); senone = sum over streams of log sum over those of exp(density) weight. Only the
 * codebooks and senones that are asked for are worked out, each once a frame. No allocation after construction.
 * Source: the tied mixtures of Bellegarda and Nahamoo 1990, as PocketSphinx applies them; N from our own measurement.
 */
import type { AcousticModel } from './acousticModel.ts';

/** Densities kept; 4 costs some accuracy in noise, 16 gains less than a point. */
export const TOP_DENSITIES = 8;

/** Frames from one look at all densities of a codebook to the next. */
export const SEARCH_EVERY = 2;

/** Scores senones in the frame that it stands at. */
export interface FrameScorer {
  /** Natural log likelihood of a senone in the current frame. */
  score(senone: number): number;
}

export class SenoneScorer implements FrameScorer {
  readonly #model: AcousticModel;
  readonly #top: number;
  readonly #every: number;
  /** Frame stamps: a value is valid when its stamp equals the frame's. */
  #stamp = 0;
  readonly #codebookStamp: Uint32Array;
  /** Frame in which all densities of a codebook were last looked at. */
  readonly #searchStamp: Uint32Array;
  readonly #senoneStamp: Uint32Array;
  readonly #senoneScore: Float64Array;
  /** [codebook][stream][rank] */
  readonly #topIndex: Uint8Array;
  readonly #topScore: Float64Array;
  /** exp(score - best) */
  readonly #topLinear: Float64Array;
  /** Sum over streams of the best density's score, per codebook. */
  readonly #best: Float64Array;
  #features: Float32Array = new Float32Array(0);
  #row = 0;

  constructor(model: AcousticModel, top = TOP_DENSITIES, every = SEARCH_EVERY) {
    this.#every = every;
    const codebooks = model.phones.length;
    this.#model = model;
    this.#top = Math.min(top, model.densities);
    this.#codebookStamp = new Uint32Array(codebooks);
    this.#searchStamp = new Uint32Array(codebooks);
    this.#senoneStamp = new Uint32Array(model.senones);
    this.#senoneScore = new Float64Array(model.senones);
    const slots = codebooks * model.streams * this.#top;
    this.#topIndex = new Uint8Array(slots);
    this.#topScore = new Float64Array(slots);
    this.#topLinear = new Float64Array(slots);
    this.#best = new Float64Array(codebooks);
    this.begin();
  }

  /** A new utterance: nothing of the last one, so that the same sound is always scored the same. */
  begin(): void {
    this.#stamp += this.#every;
    for (let slot = 0; slot < this.#topIndex.length; slot += 1) this.#topIndex[slot] = slot % this.#top;
  }

  /** Move on to a frame. @param features frames x (streams x dims) */
  setFrame(features: Float32Array, frame: number): void {
    this.#features = features;
    this.#row = frame * this.#model.streams * this.#model.dims;
    this.#stamp += 1;
  }

  /** Natural log likelihood of a senone in the current frame. */
  score(senone: number): number {
    if (this.#senoneStamp[senone] === this.#stamp) return this.#senoneScore[senone] as number;
    const { streams, densities, weights, weightOfStep, senoneCodebook } = this.#model;
    const codebook = senoneCodebook[senone] as number;
    if (this.#codebookStamp[codebook] !== this.#stamp) this.#evaluate(codebook);
    const top = this.#top;
    const index = this.#topIndex;
    const linear = this.#topLinear;
    let product = 1;
    let slot = codebook * streams * top;
    let row = senone * streams * densities;
    for (let stream = 0; stream < streams; stream += 1, row += densities) {
      let sum = 0;
      for (const end = slot + top; slot < end; slot += 1) {
        sum += (linear[slot] as number) * (weightOfStep[weights[row + (index[slot] as number)] as number] as number);
      }
      product *= sum;
    }
    const score = (this.#best[codebook] as number) + Math.log(product);
    this.#senoneStamp[senone] = this.#stamp;
    this.#senoneScore[senone] = score;
    return score;
  }

  /** Whether a senone's codebook has been worked out in the current frame, so that its score costs next to nothing. */
  isCheap(senone: number): boolean {
    return this.#codebookStamp[this.#model.senoneCodebook[senone] as number] === this.#stamp;
  }

  #evaluate(codebook: number): void {
    const { streams, densities, dims, gaussians, constants } = this.#model;
    const top = this.#top;
    const index = this.#topIndex;
    const scores = this.#topScore;
    const features = this.#features;
    // Speech changes slowly against 10 ms: the best densities of one frame serve the next, scored anew.
    const isSearch = this.#stamp - (this.#searchStamp[codebook] as number) >= this.#every;
    if (isSearch) this.#searchStamp[codebook] = this.#stamp;
    let best = 0;
    for (let stream = 0; stream < streams; stream += 1) {
      const group = codebook * streams + stream;
      const first = group * top;
      const last = first + top - 1;
      const x = this.#row + stream * dims;
      // Last frame's best, scored anew and sorted, give a bound that few others reach.
      for (let slot = first; slot <= last; slot += 1) {
        const density = index[slot] as number;
        let score = constants[group * densities + density] as number;
        let at = (group * densities + density) * dims * 2;
        for (let dim = x; dim < x + dims; dim += 1, at += 2) {
          const difference = (features[dim] as number) - (gaussians[at] as number);
          score -= difference * difference * (gaussians[at + 1] as number);
        }
        let place = slot;
        while (place > first && (scores[place - 1] as number) < score) {
          scores[place] = scores[place - 1] as number;
          index[place] = index[place - 1] as number;
          place -= 1;
        }
        scores[place] = score;
        index[place] = density;
      }
      let bound = scores[last] as number;
      const end = isSearch ? (group + 1) * densities : 0;
      for (let row = group * densities; row < end; row += 1) {
        let score = constants[row] as number;
        if (score <= bound) continue;
        let at = row * dims * 2;
        let from = x;
        const stop = x + dims;
        // Three dimensions between two looks at the bound: fewer branches than one look each.
        while (from + 3 <= stop) {
          const a = (features[from] as number) - (gaussians[at] as number);
          const b = (features[from + 1] as number) - (gaussians[at + 2] as number);
          const c = (features[from + 2] as number) - (gaussians[at + 4] as number);
          score -=
            a * a * (gaussians[at + 1] as number) + b * b * (gaussians[at + 3] as number) + c * c * (gaussians[at + 5] as number);
          if (score <= bound) break;
          from += 3;
          at += 6;
        }
        if (score <= bound) continue;
        for (; from < stop; from += 1, at += 2) {
          const difference = (features[from] as number) - (gaussians[at] as number);
          score -= difference * difference * (gaussians[at + 1] as number);
        }
        if (score <= bound) continue;
        const density = row - group * densities;
        let held = false;
        for (let slot = first; slot <= last; slot += 1) {
          if (index[slot] === density) {
            held = true;
            break;
          }
        }
        if (held) continue;
        let place = last;
        while (place > first && (scores[place - 1] as number) < score) {
          scores[place] = scores[place - 1] as number;
          index[place] = index[place - 1] as number;
          place -= 1;
        }
        scores[place] = score;
        index[place] = density;
        bound = scores[last] as number;
      }
      const highest = scores[first] as number;
      for (let slot = first; slot <= last; slot += 1) this.#topLinear[slot] = Math.exp((scores[slot] as number) - highest);
      best += highest;
    }
    this.#best[codebook] = best;
    this.#codebookStamp[codebook] = this.#stamp;
  }
}
