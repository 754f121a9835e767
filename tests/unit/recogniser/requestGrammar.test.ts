import { describe, expect, it } from 'vitest';
import type { RoundKind } from '../../../src/domain/checks/check.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import { COMMANDS, type InterpretContext } from '../../../src/domain/language/meaning.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { ListenRequest } from '../../../src/domain/voice/ports.ts';
import { type Automaton, accepts, compileGrammar, vocabularyOf } from '../../../src/speech/recogniser/automaton.ts';
import { COMMAND_PHRASES } from '../../../src/speech/recogniser/commandPhrases.ts';
import { wordsOf } from '../../../src/speech/recogniser/grammar.ts';
import { appLexicon } from '../../../src/speech/recogniser/lexicon.ts';
import { changeRule, requestRule } from '../../../src/speech/recogniser/requestGrammar.ts';
import { type Random, seeded } from '../../audio/random.ts';
import { requestOf } from '../../audio/sentences.ts';
import { type CatalogueRequest, catalogueRequests, namedRequest } from '../../tools/catalogueRequests.ts';

const grammarOf = (check: string, mode: 'answer' | 'confirm' = 'answer') =>
  compileGrammar(requestRule({ ...requestOf(check).request, mode }));
const allows = (automaton: Automaton, text: string) => accepts(automaton, wordsOf(text));

const contextOf = ({ names, request }: CatalogueRequest): InterpretContext => ({
  expects: request.expects,
  names,
  position: request.position,
  positions: request.positions,
  others: [],
  last: { value: 20, unit: request.expects.kind === 'reading' ? request.expects.unit : 'count' },
  previous: null,
  mode: 'answer',
});

/** A random walk to an end. */
function utter({ states }: Automaton, random: Random): string {
  const words: string[] = [];
  let state = 0;
  for (;;) {
    const here = states[state]!;
    if (here.final > -Infinity && (here.arcs.length === 0 || random() < 0.6)) return words.join(' ');
    const arc = here.arcs[Math.floor(random() * here.arcs.length)]!;
    words.push(arc.word);
    state = arc.target;
  }
}

/** Log weight of a sentence; the automaton has one way for it. */
function weightOf({ states }: Automaton, text: string): number {
  let state = 0;
  let weight = 0;
  for (const spoken of wordsOf(text)) {
    const arc = states[state]!.arcs.find(({ word }) => word === spoken);
    if (!arc) throw new Error(`not in the grammar: ${text}`);
    weight += arc.weight;
    state = arc.target;
  }
  return weight + states[state]!.final;
}

describe('years on a label', () => {
  const ASKED = 2026;

  it.each([
    ['tire-date', 'fifty two twenty three', 'fifty two ninety three'],
    ['tire-date', 'twelve nineteen', 'twelve thirty'],
    ['tire-date', 'week twelve two thousand nineteen', 'week twelve two thousand thirty'],
    ['co-alarm-date', 'february two thousand twenty', 'february two thousand forty'],
    ['cylinder-date', 'june two thousand thirteen', 'june two thousand thirty'],
  ])('%s: "%s" is likelier than "%s", which can be said too', (check, usual, odd) => {
    const { expects } = requestOf(check).request;
    expect(expects).toMatchObject({ kind: 'date', usualYears: { max: ASKED } });
    const grammar = grammarOf(check);
    expect(weightOf(grammar, usual) - weightOf(grammar, odd)).toBeGreaterThan(1);
  });

  it('are all alike in a plan of before, which does not say what is usual', () => {
    const { request } = requestOf('co-alarm-date');
    const grammar = compileGrammar(requestRule({ ...request, expects: { kind: 'date', form: 'month-year' } }));
    expect(weightOf(grammar, 'february two thousand fourteen')).toBeCloseTo(weightOf(grammar, 'february two thousand forty'), 6);
  });
});

describe('the grammar of a check', () => {
  it('does not take a long "oh" for two', () => {
    const grammar = grammarOf('battery-rest');
    expect(allows(grammar, 'thirteen oh')).toBe(true);
    expect(allows(grammar, 'thirteen point zero five')).toBe(true);
    expect(allows(grammar, 'thirteen oh oh')).toBe(false);
  });

  it('has a pronunciation for every word that any check can be answered with', () => {
    const lexicon = appLexicon();
    const missing = new Set<string>();
    for (const { request } of catalogueRequests()) {
      for (const spoken of vocabularyOf(compileGrammar(requestRule(request)))) if (!lexicon.has(spoken)) missing.add(spoken);
    }
    for (const { names } of catalogueRequests())
      for (const spoken of names.flatMap(wordsOf)) if (!lexicon.has(spoken)) missing.add(spoken);
    expect([...missing]).toEqual([]);
  });

  it('allows every phrase that the catalogue lists', () => {
    for (const { check, request } of catalogueRequests()) {
      const { expects } = request;
      const phrases =
        expects.kind === 'state'
          ? [...expects.ok, ...expects.problem]
          : expects.kind === 'choice'
            ? expects.options.flatMap((option) => option.phrases)
            : expects.kind === 'count'
              ? [...expects.nonePhrases, ...expects.allPhrases]
              : [];
      if (phrases.length === 0) continue;
      const automaton = compileGrammar(requestRule(request));
      for (const text of phrases) expect([check, text, allows(automaton, text)]).toEqual([check, text, true]);
    }
  });

  it.each([
    ['tire-pressure', 'sixty-two'],
    ['tire-pressure', 'six two'],
    ['tire-pressure', 'one oh five'],
    ['tire-pressure', 'a hundred and five pounds'],
    ['tire-pressure', 'sixty two and a half'],
    ['tire-pressure', 'left front sixty two'],
    ['tire-pressure', 'left front fifty eight right front sixty one left rear sixty'],
    ['tire-pressure', 'fifty no sixty two'],
    ['tire-pressure', "uh it's sixty two"].map((text) => text.replace('uh ', '')),
    ['tire-pressure', 'same as last time'],
    ['tread-depth', 'six thirty seconds'],
    ['battery-rest', 'twelve six'],
    ['battery-rest', 'twelve point six five'],
    ['outside-temperature', 'minus twelve degrees'],
    ['outside-temperature', 'twelve below'],
    ['lugs-moved', 'two lugs'],
    ['transport-pins', 'left pinned'],
    ['tire-date', 'two three two one'],
    ['tire-date', 'week twenty three of twenty twenty one'],
    ['co-alarm-date', 'march of twenty twenty four'],
  ])('%s may be answered with "%s"', (check, text) => {
    expect(allows(grammarOf(check!), text!)).toBe(true);
  });

  it('allows yes, no and a new value only where the tool asked to confirm', () => {
    expect(allows(grammarOf('tire-pressure', 'confirm'), 'yes')).toBe(true);
    expect(allows(grammarOf('tire-pressure', 'confirm'), 'no sixty three')).toBe(true);
    expect(allows(grammarOf('tire-pressure'), 'yes')).toBe(false);
  });

  it('keeps to the range', () => {
    expect(allows(grammarOf('tire-pressure'), 'one hundred fifty')).toBe(true);
    expect(allows(grammarOf('tire-pressure'), 'two hundred')).toBe(false);
  });

  it('lets every command be said, and the interpreter understands each', () => {
    const found = catalogueRequests().find(({ check }) => check === 'tire-pressure')!;
    const automaton = grammarOf('tire-pressure');
    for (const command of COMMANDS) {
      for (const text of COMMAND_PHRASES[command]) {
        expect([text, allows(automaton, text)]).toEqual([text, true]);
        expect([text, interpret(text, contextOf(found))]).toEqual([
          text,
          expect.objectContaining({ intent: 'command', command }),
        ]);
      }
    }
  });

  it('lets another check be answered by its name', () => {
    const { request } = requestOf('tire-pressure');
    const deadbolt = requestOf('deadbolt');
    const automaton = compileGrammar(
      requestRule({ ...request, others: [{ names: deadbolt.names, position: null, expects: deadbolt.request.expects }] }),
    );
    const [answer] = deadbolt.request.expects.kind === 'state' ? deadbolt.request.expects.ok : [];
    expect(allows(automaton, `deadbolt ${answer}`)).toBe(true);
  });

  it('compiles with every check of the catalogue open at once', () => {
    const automaton = compileGrammar(requestRule(namedRequest()));
    expect(automaton.states.length).toBeLessThan(20_000);
  });

  it('allows a settled check to be changed by its name, in a graph of its own', () => {
    const tread = requestOf('tread-depth');
    const other = { names: tread.names, position: 'left-rear', expects: tread.request.expects, settled: true } as const;
    const request = { ...requestOf('tire-pressure').request, others: [other] };
    const rule = changeRule(request);
    if (rule === null) throw new Error('there is something to change');
    const changes = compileGrammar(rule);
    expect(allows(changes, 'change left rear tread to five')).toBe(true);
    expect(allows(changes, 'correct the tread left rear seven')).toBe(true);
    expect(allows(changes, 'five')).toBe(false);
    expect(allows(compileGrammar(requestRule(request)), 'change left rear tread to five')).toBe(false);
    expect(changeRule(requestOf('tire-pressure').request)).toBeNull();
    const lexicon = appLexicon();
    expect([...vocabularyOf(changes)].filter((spoken) => !lexicon.has(spoken))).toEqual([]);
    const context: InterpretContext = {
      ...contextOf(requestOf('tire-pressure')),
      others: [{ key: 'tread-depth@left-rear', ...other }],
    };
    expect(interpret('change left rear tread to five', context)).toMatchObject({
      intent: 'reading',
      about: 'tread-depth@left-rear',
      readings: [{ value: 5 }],
    });
  });

  it('rarely allows what the interpreter cannot understand', () => {
    const random = seeded(20_261_125);
    let understood = 0;
    let total = 0;
    const puzzling: string[] = [];
    for (const found of catalogueRequests()) {
      const automaton = compileGrammar(requestRule(found.request));
      for (let index = 0; index < 10; index += 1) {
        const text = utter(automaton, random);
        const meaning = interpret(text, contextOf(found));
        total += 1;
        if (meaning.intent !== 'unclear' || meaning.why !== 'no-value') understood += 1;
        else puzzling.push(`${found.check}: ${text}`);
      }
    }
    expect([understood / total > 0.9, puzzling.slice(0, 20)]).toEqual([true, expect.anything()]);
  });
});

describe('what the app says can be said', () => {
  const checks = [...DEMO_UNITS, ...TEMPLATES.map((template) => createUnit(template, { id: template.id, name: 'Test', at: 0 }))]
    .flatMap((unit) =>
      (['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'] as const satisfies readonly RoundKind[]).map((kind) =>
        planRound(unit, kind, Date.UTC(2026, 0, 15)),
      ),
    )
    .flatMap(({ checks }) => checks);
  const quoted = new Map<string, { readonly phrase: string; readonly request: ListenRequest }>();
  for (const { key, position, expects, lines } of checks)
    for (const [, phrase = ''] of `${lines.hint} ${lines.ask}`.matchAll(/"([^"]+)"/g))
      quoted.set(`${key.replace(/@.*/, '')} ${phrase}`, {
        phrase: phrase.toLowerCase(),
        request: { expects, position, positions: [], others: [], mode: 'answer' },
      });

  it.each([...quoted])('is heard: %s', (_, { phrase, request }) => {
    expect(allows(compileGrammar(requestRule(request)), phrase.replace(/-/g, ' '))).toBe(true);
  });
});
