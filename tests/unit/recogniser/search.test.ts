import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAcousticModel, STATES, WORD_POSITION } from '../../../src/speech/recogniser/acousticModel.ts';
import { compileGrammar } from '../../../src/speech/recogniser/automaton.ts';
import { oneOf, optional, phrase, phrases, type Rule, sequence, word } from '../../../src/speech/recogniser/grammar.ts';
import { type Lexicon, parseLexicon } from '../../../src/speech/recogniser/lexicon.ts';
import { SenoneScorer } from '../../../src/speech/recogniser/senoneScorer.ts';
import { ViterbiSearch } from '../../../src/speech/recogniser/viterbi.ts';
import { buildWordGraph, MissingPronunciation } from '../../../src/speech/recogniser/wordGraph.ts';
import { normal, seeded } from '../../audio/random.ts';

const model = readAcousticModel(new Uint8Array(readFileSync('public/ears/model.bin')));
const lexicon: Lexicon = parseLexicon('two T UW\nsix S IH K S\noh OW\na AH|EY\n');
const COSTS = { wordInsertion: -1.5, silence: -40 };
const OPTIONS = { tokens: 4, beam: 1e9, wordBeam: 1e9 };

/** Features that look like the given phones, six frames a phone, with some disorder. */
function featuresLike(phones: readonly string[], seed: number): { features: Float32Array; frames: number } {
  const random = seeded(seed);
  const frames = 6 * phones.length;
  const features = new Float32Array(frames * 39);
  for (let frame = 0; frame < frames; frame += 1) {
    const phone = model.phoneIndex.get(phones[Math.floor(frame / 6)]!)!;
    for (let stream = 0; stream < 3; stream += 1) {
      const density = Math.floor(random() * 20);
      for (let dim = 0; dim < 13; dim += 1) {
        const at = 2 * (((phone * 3 + stream) * 128 + density) * 13 + dim);
        features[frame * 39 + stream * 13 + dim] =
          model.gaussians[at]! + 0.3 * normal(random) * Math.sqrt(0.5 / model.gaussians[at + 1]!);
      }
    }
  }
  return { features, frames };
}

function decode(rule: Rule, features: Float32Array, frames: number) {
  const graph = buildWordGraph(compileGrammar(rule), lexicon, model, COSTS);
  const search = new ViterbiSearch(model, graph, OPTIONS);
  const scorer = new SenoneScorer(model, 8);
  search.begin();
  for (let frame = 0; frame < frames; frame += 1) {
    scorer.setFrame(features, frame);
    search.step(scorer);
  }
  return search.paths(4);
}

interface ChainState {
  readonly senone: number;
  readonly phone: number;
  readonly state: number;
  readonly enters: number;
}

/** The best score of one row of states, by dynamic programming. */
function alongStates(chain: readonly ChainState[], features: Float32Array, frames: number): number {
  const scorer = new SenoneScorer(model, 8);
  const transition = (phone: number, from: number, to: number) =>
    model.transitions[phone * STATES * (STATES + 1) + from * (STATES + 1) + to]!;
  let scores = chain.map(() => -Infinity);
  for (let frame = 0; frame < frames; frame += 1) {
    scorer.setFrame(features, frame);
    scores = chain.map(({ senone, phone, state, enters }, at) => {
      const before = chain[at - 1];
      const come =
        frame === 0
          ? at === 0
            ? enters
            : -Infinity
          : before
            ? scores[at - 1]! + transition(before.phone, before.state, before.state + 1) + enters
            : -Infinity;
      const stay = frame === 0 ? -Infinity : scores[at]! + transition(phone, state, state);
      return Math.max(come, stay) + scorer.score(senone);
    });
  }
  const end = chain.at(-1)!;
  return scores.at(-1)! + transition(end.phone, end.state, STATES);
}

/** The best score of fixed words, with and without silence before, between and behind them. */
function chainScore(rows: readonly (readonly string[])[], features: Float32Array, frames: number): number {
  const { silence } = model;
  let best = -Infinity;
  for (let mask = 0; mask < 2 ** (rows.length + 1); mask += 1) {
    const isSilent = (gap: number) => (mask & (1 << gap)) !== 0;
    const chain: ChainState[] = [];
    const pause = (cost: number) => {
      for (let state = 0; state < STATES; state += 1) {
        chain.push({ senone: model.ciSenoneOf(silence, state), phone: silence, state, enters: state === 0 ? cost : 0 });
      }
    };
    if (isSilent(0)) pause(0);
    for (const [at, phones] of rows.entries()) {
      const ids = phones.map((phone) => model.phoneIndex.get(phone)!);
      const before = at === 0 || isSilent(at) ? silence : model.phoneIndex.get(rows[at - 1]!.at(-1)!)!;
      const after = at === rows.length - 1 || isSilent(at + 1) ? silence : model.phoneIndex.get(rows[at + 1]![0]!)!;
      for (const [index, phone] of ids.entries()) {
        const last = ids.length - 1;
        const { single, begin, end, internal } = WORD_POSITION;
        const position = last === 0 ? single : index === 0 ? begin : index === last ? end : internal;
        for (let state = 0; state < STATES; state += 1) {
          const senone = model.senoneOf(phone, state, position, ids[index - 1] ?? before, ids[index + 1] ?? after);
          chain.push({ senone, phone, state, enters: index === 0 && state === 0 ? COSTS.wordInsertion : 0 });
        }
      }
      if (isSilent(at + 1)) pause(COSTS.silence);
    }
    best = Math.max(best, alongStates(chain, features, frames));
  }
  return best;
}

describe('the search', () => {
  it('finds what dynamic programming over the same states finds, contexts across words included', () => {
    const { features, frames } = featuresLike(['S', 'IH', 'K', 'S', 'T', 'UW'], 11);
    const [best] = decode(phrase('six two'), features, frames);
    expect(best!.words).toEqual(['six', 'two']);
    expect(best!.score).toBeCloseTo(
      chainScore(
        [
          ['S', 'IH', 'K', 'S'],
          ['T', 'UW'],
        ],
        features,
        frames,
      ),
      4,
    );
  });

  it('chooses the best of all sentences, and lists the others in order', () => {
    const { features, frames } = featuresLike(['OW', 'T', 'UW', 'S', 'IH', 'K', 'S'], 12);
    const digit = phrases(['six', 'two', 'oh']);
    const found = decode(sequence(digit, digit, digit), features, frames);
    const pronounced: Record<string, string[]> = { six: ['S', 'IH', 'K', 'S'], two: ['T', 'UW'], oh: ['OW'] };
    const all = Object.keys(pronounced).flatMap((a) =>
      Object.keys(pronounced).flatMap((b) => Object.keys(pronounced).map((c) => [a, b, c])),
    );
    const scored = all
      .map((words) => ({
        words,
        score: chainScore(
          words.map((one) => pronounced[one]!),
          features,
          frames,
        ),
      }))
      .sort((a, b) => b.score - a.score);
    expect(found[0]!.words).toEqual(scored[0]!.words);
    expect(found[0]!.score).toBeCloseTo(scored[0]!.score, 4);
    expect(found.map(({ score }) => score)).toEqual([...found.map(({ score }) => score)].sort((a, b) => b - a));
    expect(new Set(found.map(({ words }) => words.join(' '))).size).toBe(found.length);
  });

  it('takes the better of two pronunciations', () => {
    for (const phone of ['AH', 'EY']) {
      const { features, frames } = featuresLike([phone, 'T', 'UW'], 13);
      const [best] = decode(phrase('a two'), features, frames);
      expect(best!.score).toBeCloseTo(
        Math.max(chainScore([['AH'], ['T', 'UW']], features, frames), chainScore([['EY'], ['T', 'UW']], features, frames)),
        4,
      );
    }
  });

  it('says where each word was', () => {
    const { features, frames } = featuresLike(['S', 'IH', 'K', 'S', 'T', 'UW'], 14);
    const spoken = decode(sequence(word('six'), optional(word('oh')), word('two')), features, frames)[0]!.spoken.filter(
      ({ word: id }) => id >= 0,
    );
    expect(spoken[0]!.start).toBe(0);
    expect(Math.abs(spoken[0]!.end - 23)).toBeLessThanOrEqual(4);
    expect(spoken.at(-1)!.end).toBe(frames - 1);
  });

  it('finds nothing in too little sound, and does not fail', () => {
    const { features } = featuresLike(['T'], 15);
    expect(decode(phrase('six two'), features, 3)).toEqual([]);
    expect(decode(phrase('six two'), features, 0)).toEqual([]);
  });

  it('names the words that nobody can pronounce', () => {
    expect(() => buildWordGraph(compileGrammar(oneOf(word('sprocket'), word('two'))), lexicon, model)).toThrow(
      MissingPronunciation,
    );
  });
});
