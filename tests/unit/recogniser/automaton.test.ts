import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Automaton, accepts, compileGrammar } from '../../../src/speech/recogniser/automaton.ts';
import {
  oneOf,
  oneOrMore,
  optional,
  phrase,
  type Rule,
  separated,
  sequence,
  weighted,
  word,
} from '../../../src/speech/recogniser/grammar.ts';
import { phraseSet } from '../../../src/speech/recogniser/phraseSet.ts';

/** All sentences of a rule without loops. */
function sentences(rule: Rule): string[] {
  if (rule.kind === 'word') return [rule.word];
  if (rule.kind === 'sequence') {
    return rule.parts.reduce<string[]>(
      (before, part) => before.flatMap((head) => sentences(part).map((tail) => `${head} ${tail}`.trim())),
      [''],
    );
  }
  if (rule.kind === 'choice') return rule.options.flatMap((option) => sentences(option.rule));
  throw new Error('loops are not listed');
}

function allSentences({ states }: Automaton, state = 0, before = ''): string[] {
  const here = states[state]!;
  return [
    ...(here.final > -Infinity ? [before.trim()] : []),
    ...here.arcs.flatMap((arc) => allSentences({ states }, arc.target, `${before} ${arc.word}`)),
  ];
}

const bestWeight = ({ states }: Automaton, words: readonly string[]): number => {
  let [state, weight] = [0, 0];
  for (const spoken of words) {
    const arc = states[state]!.arcs.find((one) => one.word === spoken);
    if (!arc) return -Infinity;
    weight += arc.weight;
    state = arc.target;
  }
  return weight + states[state]!.final;
};

const { rule } = fc.letrec<{ rule: Rule; leaf: Rule }>((tie) => ({
  leaf: fc.constantFrom('a', 'b', 'c').map(word),
  rule: fc.oneof(
    { maxDepth: 4 },
    tie('leaf'),
    fc.array(tie('rule'), { minLength: 1, maxLength: 3 }).map((parts) => sequence(...parts)),
    fc.array(tie('rule'), { minLength: 1, maxLength: 3 }).map((options) => oneOf(...options)),
    tie('rule').map((inner) => optional(inner)),
  ),
}));

describe('a grammar as an automaton', () => {
  it('allows exactly the sentences of the grammar, each on one path', () => {
    fc.assert(
      fc.property(rule, (made) => {
        const wanted = new Set(sentences(made));
        const found = allSentences(compileGrammar(made));
        expect(new Set(found)).toEqual(wanted);
        expect(found.length).toBe(wanted.size);
      }),
      { numRuns: 200 },
    );
  });

  it('gives an ambiguous sentence its best weight', () => {
    const automaton = compileGrammar(
      weighted([phrase('sixty two'), -2], [sequence(word('sixty'), word('two')), -0.5], [phrase('sixty'), -1]),
    );
    expect(bestWeight(automaton, ['sixty', 'two'])).toBeCloseTo(-0.5, 6);
    expect(bestWeight(automaton, ['sixty'])).toBeCloseTo(-1, 6);
  });

  it('shares equal ends: three numbers times ten need few states', () => {
    const tens = ['twenty', 'thirty', 'forty'];
    const ones = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
    const automaton = compileGrammar(
      phraseSet(tens.flatMap((ten) => [[ten], ...ones.map((one) => [ten, one])].map((words) => ({ words, weight: 0 })))),
    );
    expect(automaton.states.length).toBe(3);
  });

  it('loops', () => {
    const automaton = compileGrammar(separated(word('five'), word('and')));
    expect(accepts(automaton, ['five', 'and', 'five', 'and', 'five'])).toBe(true);
    expect(accepts(automaton, ['five', 'five'])).toBe(false);
    expect(accepts(compileGrammar(oneOrMore(word('five'))), ['five', 'five'])).toBe(true);
  });

  it('refuses a grammar in which nothing can be said', () => {
    expect(() => compileGrammar(oneOf())).toThrow(RangeError);
  });
});
