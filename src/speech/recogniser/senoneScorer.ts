/**
 * Log likelihoods of senones for one frame: a phonetically tied mixture with the best few densities of each codebook.
 *
 * Method: for each codebook and stream the N densities nearest to the frame; senone = sum over streams of log sum over those of
 * exp(density) weight. Only the codebooks and senones that are asked for are worked out, each once a frame. No allocation after
 * construction.
 * Source: the tied mixtures of Bellegarda and Nahamoo 1990, as PocketSphinx applies them; N from our own measurement.
 */
import type { AcousticModel } from './acousticModel.ts';
import { type DensityBank, densityBank } from './densityBank.ts';

/** Densities kept; 4 costs some accuracy in noise, 16 gains less than a point. */
export const TOP_DENSITIES = 8;

/** Scores senones in the frame that it stands at. */
export interface FrameScorer {
  /** Natural log likelihood of a senone in the current frame. */
  score(senone: number): number;
}

export class SenoneScorer implements FrameScorer {
  readonly #model: AcousticModel;
  readonly #bank: DensityBank;
  readonly #top: number;
  /** Frame stamps: a value is valid when its stamp equals the frame's. */
  #stamp = 0;
  readonly #codebookStamp: Uint32Array;
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

  /** @param bank of the same model; scorers may share one */
  constructor(model: AcousticModel, top = TOP_DENSITIES, bank = densityBank(model)) {
    const codebooks = model.phones.length;
    this.#model = model;
    this.#bank = bank;
    this.#top = Math.min(top, model.densities);
    this.#codebookStamp = new Uint32Array(codebooks);
    this.#senoneStamp = new Uint32Array(model.senones);
    this.#senoneScore = new Float64Array(model.senones);
    const slots = codebooks * model.streams * this.#top;
    this.#topIndex = new Uint8Array(slots);
    this.#topScore = new Float64Array(slots);
    this.#topLinear = new Float64Array(slots);
    this.#best = new Float64Array(codebooks);
    for (let slot = 0; slot < slots; slot += 1) this.#topIndex[slot] = slot % this.#top;
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
    const { streams, densities } = this.#model;
    const top = this.#top;
    const index = this.#topIndex;
    const scores = this.#topScore;
    const { logs } = this.#bank;
    this.#bank.evaluate(codebook, this.#features, this.#row);
    let best = 0;
    for (let stream = 0; stream < streams; stream += 1) {
      const first = (codebook * streams + stream) * top;
      const last = first + top - 1;
      const start = stream * densities;
      // Speech changes slowly against 10 ms: the worst of the last frame's best is a bound that few others reach.
      let bound = Infinity;
      for (let slot = first; slot <= last; slot += 1) bound = Math.min(bound, logs[start + (index[slot] as number)] as number);
      let end = first;
      for (let density = 0; density < densities; density += 1) {
        const score = logs[start + density] as number;
        if (score < bound) continue;
        let place = end;
        if (end <= last) end += 1;
        else if (score > (scores[last] as number)) place = last;
        else continue;
        while (place > first && (scores[place - 1] as number) < score) {
          scores[place] = scores[place - 1] as number;
          index[place] = index[place - 1] as number;
          place -= 1;
        }
        scores[place] = score;
        index[place] = density;
        if (end > last) bound = scores[last] as number;
      }
      const highest = scores[first] as number;
      for (let slot = first; slot <= last; slot += 1) this.#topLinear[slot] = Math.exp((scores[slot] as number) - highest);
      best += highest;
    }
    this.#best[codebook] = best;
    this.#codebookStamp[codebook] = this.#stamp;
  }
}
