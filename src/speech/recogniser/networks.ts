/** Compiled requests, the last few kept: the same check is asked again, and four tires share one grammar. */
import type { ListenRequest } from '../../domain/voice/ports.ts';
import type { AcousticModel } from './acousticModel.ts';
import { compileGrammar } from './automaton.ts';
import { densityBank } from './densityBank.ts';
import type { Rule } from './grammar.ts';
import { type AnswerDecoder, LayeredDecoder } from './layeredDecoder.ts';
import type { Lexicon } from './lexicon.ts';
import { type QuietSounds, quietSounds } from './quietSounds.ts';
import { changeRule, requestRule } from './requestGrammar.ts';
import { UtteranceDecoder } from './utteranceDecoder.ts';
import { ViewScorer } from './viewScorer.ts';
import { VoiceFit } from './vocalTract.ts';
import { buildWordGraph } from './wordGraph.ts';

const MOST_KEPT = 6;

export class Networks {
  readonly #model: AcousticModel;
  readonly #lexicon: Lexicon;
  readonly #scorer: ViewScorer;
  readonly #voiceFit: VoiceFit;
  readonly #sounds: QuietSounds;
  readonly #kept = new Map<string, UtteranceDecoder>();

  constructor(model: AcousticModel, lexicon: Lexicon) {
    this.#model = model;
    this.#lexicon = lexicon;
    const bank = densityBank(model);
    this.#scorer = new ViewScorer(model, bank);
    this.#voiceFit = new VoiceFit(model, bank);
    this.#sounds = quietSounds(model);
  }

  /**
   * @throws RangeError for a grammar that is too large, MissingPronunciation for a word nobody can pronounce
   */
  compile(rule: Rule): UtteranceDecoder {
    const graph = buildWordGraph(compileGrammar(rule), this.#lexicon, this.#model);
    return new UtteranceDecoder(this.#model, graph, this.#lexicon, this.#scorer, this.#voiceFit, this.#sounds);
  }

  /** What is usually answered, and behind it what is seldom said. */
  for(request: ListenRequest): AnswerDecoder {
    const others = request.others.filter(({ settled }) => settled !== true);
    const usual = this.#keep(JSON.stringify({ ...request, others }), () => requestRule(request));
    const changes = changeRule(request);
    if (changes === null || request.mode === 'free') return usual;
    return new LayeredDecoder(usual, () => this.#keep(JSON.stringify(request.others), () => changes));
  }

  #keep(key: string, rule: () => Rule): UtteranceDecoder {
    const known = this.#kept.get(key);
    if (known) {
      this.#kept.delete(key);
      this.#kept.set(key, known);
      return known;
    }
    const made = this.compile(rule());
    this.#kept.set(key, made);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= MOST_KEPT) break;
      this.#kept.delete(oldest);
    }
    return made;
  }
}
