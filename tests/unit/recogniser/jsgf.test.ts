import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accepts, compileGrammar } from '../../../src/speech/recogniser/automaton.ts';
import { GrammarSyntaxError, parseJsgf, toAbnf, toJsgf } from '../../../src/speech/recogniser/jsgf.ts';
import { requestRule } from '../../../src/speech/recogniser/requestGrammar.ts';
import { requestOf } from '../../audio/sentences.ts';

const grammar = (body: string) => compileGrammar(parseJsgf(`#JSGF V1.0;\ngrammar test;\n${body}`));

describe('JSGF (W3C Note, 5 June 2000)', () => {
  it('reads alternatives, groups, options, repeats, references, weights, tags and comments', () => {
    const automaton = grammar(`
      // a line
      public <order> = [please] (/3/ open {OPEN} | /1/ close) <thing>+ ; /* a block */
      <thing> = [the] (door | window);
    `);
    expect(accepts(automaton, ['please', 'open', 'the', 'door'])).toBe(true);
    expect(accepts(automaton, ['close', 'door', 'window'])).toBe(true);
    expect(accepts(automaton, ['open'])).toBe(false);
    const [open, close] = ['open', 'close'].map((spoken) => automaton.states[0]!.arcs.find((arc) => arc.word === spoken)!.weight);
    expect(Math.exp(open! - close!)).toBeCloseTo(3, 6);
  });

  it.each([
    ['no header', 'public <a> = b;'],
    ['an open group', '#JSGF V1.0; grammar t; public <a> = (b;'],
    ['an unknown rule', '#JSGF V1.0; grammar t; public <a> = <b>;'],
    ['a rule that refers to itself', '#JSGF V1.0; grammar t; public <a> = b <a>;'],
    ['no rule', '#JSGF V1.0; grammar t;'],
  ])('refuses %s with a sentence', (_, text) => {
    expect(() => parseJsgf(text)).toThrow(GrammarSyntaxError);
  });

  it('writes a state check so that reading it gives the same grammar', () => {
    const automaton = compileGrammar(
      parseJsgf('#JSGF V1.0; grammar t; public <a> = [uh] (left | right) (sixty | fifty) [one | two] | none;'),
    );
    const again = compileGrammar(parseJsgf(toJsgf(automaton, 'again')));
    expect(again.states.length).toBe(automaton.states.length);
    for (const words of [['uh', 'left', 'sixty'], ['right', 'fifty', 'two'], ['none']]) expect(accepts(again, words)).toBe(true);
    expect(accepts(again, ['left', 'none'])).toBe(false);
  });

  it('writes SRGS ABNF with its header and root (W3C Recommendation, 16 March 2004, §4.1)', () => {
    const text = toAbnf(compileGrammar(requestRule(requestOf('transport-pins').request)));
    expect(text).toMatch(/^#ABNF 1\.0 UTF-8;\nlanguage en-US;\nmode voice;\nroot \$s0;\n/);
    expect(text).toContain('pinned');
  });

  it('reads the grammars that the reference decoder is tested with', () => {
    const path = '/usr/share/pocketsphinx/test/data/cards/cards.gram';
    let text: string;
    try {
      text = readFileSync(path, 'utf8');
    } catch {
      text = '#JSGF v1.0; grammar cards; public <cards> = <card>; <card> = ten of clubs;';
    }
    expect(accepts(compileGrammar(parseJsgf(text)), ['ten', 'of', 'clubs'])).toBe(true);
  });
});
