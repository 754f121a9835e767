/** One utterance, from mel energies to hypotheses with a confidence. The mean over the whole utterance is taken out first. */
import type { AcousticModel } from './acousticModel.ts';
import { cepstraOf, featuresOf, subtractMean } from './cepstra.ts';
import { stretchTowards } from './cepstralSpread.ts';
import { confidenceOf } from './confidence.ts';
import { type Evidence, gatherEvidence } from './evidence.ts';
import { FRONT_END, LEAST_FLOOR, RELATIVE_FLOOR } from './frontEnd.ts';
import { wordsOf } from './grammar.ts';
import type { Lexicon } from './lexicon.ts';
import { likelySpeech } from './likelySpeech.ts';
import { noiseFloorOf, subtractNoise } from './melSubtraction.ts';
import { FartherVoices, hasOtherVoices, loudRegion, quietFrames } from './otherVoices.ts';
import { PhoneLoop } from './phoneLoop.ts';
import { type QuietSounds, quietSounds } from './quietSounds.ts';
import { FILLERS } from './requestGrammar.ts';
import type { FrameScorer } from './senoneScorer.ts';
import { aroundVoice, levelsOf, speechRegion } from './speechRegion.ts';
import { ViewScorer, type Views } from './viewScorer.ts';
import { type Path, ViterbiSearch } from './viterbi.ts';
import { VoiceFit, WARPS, warpEnergies } from './vocalTract.ts';
import { VOICED } from './voicing.ts';
import type { WordGraph } from './wordGraph.ts';

export interface Sounded {
  /** frames x 25, linear */
  readonly energies: Float32Array;
  readonly frames: number;
  /** Periodicity of each frame. */
  readonly voicing: Float32Array;
  readonly snrDb: number;
}

export interface Decoded {
  /** Best first; empty when nothing in the grammar fits to the end. */
  readonly hypotheses: readonly { readonly words: readonly string[]; readonly confidence: number; readonly score: number }[];
  readonly evidence: Evidence | null;
}

/** Hypotheses that are reported. */
const MOST_HYPOTHESES = 4;
/** Paths that are looked at for them: many differ only in a word that adds nothing. */
const MOST_PATHS = 12;

/** First filter above 300 Hz. */
const FIRST_FILTER = 3;

/** Words that two hypotheses may differ in and still say the same. */
const EMPTY_WORDS = new Set([...FILLERS.flatMap(wordsOf), 'and', 'of', 'a']);
/** Nats by which a hypothesis is e times less likely than the best; acoustic scores are far too sharp to be taken as they are. */
const SHARPNESS = 12;

/** Everything that one grammar needs, ready to decode again and again. */
export class UtteranceDecoder {
  readonly #search: ViterbiSearch;
  readonly #scorer: ViewScorer;
  readonly #loop: PhoneLoop;
  readonly #lexicon: Lexicon;
  readonly #voiceFit: VoiceFit;
  readonly #fartherVoices: FartherVoices;
  readonly #sounds: QuietSounds;

  /** @param scorer @param voiceFit working memory that several decoders may share @param sounds of the same model */
  constructor(
    model: AcousticModel,
    graph: WordGraph,
    lexicon: Lexicon,
    scorer = new ViewScorer(model),
    voiceFit = new VoiceFit(model),
    sounds = quietSounds(model),
  ) {
    this.#search = new ViterbiSearch(model, graph);
    this.#scorer = scorer;
    this.#loop = new PhoneLoop(model);
    this.#lexicon = lexicon;
    this.#voiceFit = voiceFit;
    this.#fartherVoices = new FartherVoices(model, scorer, scorer.rough);
    this.#sounds = sounds;
  }

  decode({ energies, frames: all, voicing, snrDb }: Sounded): Decoded {
    if (all === 0) return { hypotheses: [], evidence: null };
    const { views, start, frames, quiet } = this.#views(energies, all, voicing);
    const loop = new Float64Array(frames);
    const silence = new Float64Array(frames);
    this.#search.begin();
    this.#loop.begin();
    for (let frame = 0; frame < frames; frame += 1) {
      this.#scorer.setFrame(views, frame);
      this.#search.step(this.#behind(quiet, start + frame));
      loop[frame] = this.#loop.step(this.#scorer.rough);
      silence[frame] = this.#loop.silenceScore(this.#scorer.rough);
    }
    const paths = rivals(this.#search.paths(MOST_PATHS)).slice(0, MOST_HYPOTHESES);
    const phonesOf = (words: readonly string[]) =>
      words.reduce((sum, word) => sum + (this.#lexicon.get(word)?.[0]?.length ?? 3), 0);
    const spoken = voicing.subarray(start, start + frames);
    const evidence = gatherEvidence({
      paths,
      loop,
      silence,
      voicing: spoken,
      voicedFrom: VOICED,
      phonesOf,
      snrDb,
      otherVoices: quiet !== null,
    });
    return { hypotheses: evidence ? withConfidence(paths, evidence) : [], evidence };
  }

  /** What the search asks: with other voices behind, silence is scored otherwise. */
  #behind(quiet: Uint8Array | null, frame: number): FrameScorer {
    if (!quiet) return this.#scorer;
    this.#fartherVoices.setFrame(quiet[frame] === 1);
    return this.#fartherVoices;
  }

  /** The best words so far, for the screen; no competitor, no confidence. */
  partial(energies: Float32Array, all: number): readonly string[] {
    const { views, frames } = this.#views(energies, all, null);
    this.#search.begin();
    for (let frame = 0; frame < frames; frame += 1) {
      this.#scorer.setFrame(views, frame);
      this.#search.step(this.#scorer);
    }
    return this.#search.bestWords();
  }

  /**
   * Noise is measured on all of the sound; mean and features are taken of the speech alone. Two views: the vocal tract length that
   * fits the voice best with the noise subtracted, and the second best with the likely speech under the noise.
   */
  #views(energies: Float32Array, all: number, voicing: Float32Array | null): Viewed {
    const { filters } = FRONT_END;
    const levels = levelsOf(energies, all);
    const isBusy = voicing !== null && hasOtherVoices(levels, voicing);
    const loud = speechRegion(levels);
    const voicedPart = voicing ? aroundVoice(loud, voicing, VOICED) : loud;
    const { start, end } = isBusy ? loudRegion(voicedPart, levels) : voicedPart;
    const frames = end - start;
    const quiet = isBusy ? quietFrames(levels) : null;
    const inRegion = (every: Float32Array) => every.subarray(start * filters, end * filters);
    const reading = (speech: Float32Array) => {
      const floor = floorFor(speech);
      return (warp: number) => {
        const cepstra = cepstraOf(warp === 1 ? speech : warpEnergies(speech, frames, warp), frames, floor);
        subtractMean(cepstra, frames);
        if (!isBusy) stretchTowards(this.#sounds.spread, cepstra, frames);
        return featuresOf(cepstra, frames);
      };
    };
    const noise = noiseFloorOf(energies, all);
    const cleaned = inRegion(subtractNoise(energies, all, noise));
    const heardAt = reading(cleaned);
    const voiced = voicing ? voicedFrames(voicing.subarray(start, end)) : [];
    if (voiced.length === 0) return { views: [heardAt(1)], start, frames, quiet };
    const [best, second] = WARPS.map((warp) => {
      const features = heardAt(warp);
      return { warp, features, fit: this.#voiceFit.of(features, voiced) };
    }).sort((a, b) => b.fit - a.fit);
    if (!best || !second) return { views: [heardAt(1)], start, frames, quiet };
    const likely = likelySpeech(this.#sounds, inRegion(energies), cleaned, frames, noise);
    return { views: [best.features, reading(likely)(second.warp)], start, frames, quiet };
  }
}

/** What is looked at, and how. */
interface Viewed {
  readonly views: Views;
  /** First frame of it. */
  readonly start: number;
  readonly frames: number;
  /** With other voices behind: which frames of all are quiet. */
  readonly quiet: Uint8Array | null;
}

const voicedFrames = (voicing: Float32Array): readonly number[] =>
  [...voicing.keys()].filter((frame) => (voicing[frame] as number) >= VOICED);

/** Of the paths that say the same in other words only the best. */
function rivals(paths: readonly Path[]): readonly Path[] {
  const seen = new Set<string>();
  return paths.filter(({ words }) => {
    const content = words
      .filter((word) => !EMPTY_WORDS.has(word))
      .join(' ')
      .replace(/\boh\b/g, 'zero');
    if (words.length === 0 || seen.has(content)) return false;
    seen.add(content);
    return true;
  });
}

/** The floor that goes with how loud the speech is: its 98th percentile energy, without the lowest filters, which wind fills. */
function floorFor(energies: Float32Array): number {
  const sorted = energies.filter((_, at) => at % FRONT_END.filters >= FIRST_FILTER).sort();
  return Math.max(LEAST_FLOOR, RELATIVE_FLOOR * (sorted[Math.floor(0.98 * sorted.length)] ?? 0));
}

/** The best takes the model's confidence; the others share the doubt by their distance from it. */
function withConfidence(paths: readonly Path[], evidence: Evidence): Decoded['hypotheses'] {
  const best = confidenceOf(evidence);
  const top = paths[0]?.score ?? 0;
  const shares = paths.map(({ score }) => Math.exp((score - top) / SHARPNESS));
  const others = shares.slice(1).reduce((sum, share) => sum + share, 0);
  return paths.map(({ words, score }, index) => ({
    words,
    score,
    confidence: index === 0 ? best : Math.min(best, ((shares[index] as number) / Math.max(1, others)) * Math.min(best, 1 - best)),
  }));
}
