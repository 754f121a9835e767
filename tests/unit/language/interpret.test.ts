import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/domain/checks/catalogue.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import { COMMANDS, type InterpretContext } from '../../../src/domain/language/meaning.ts';
import { interpretLine } from '../../tools/interpretLine.ts';
import { contextOf, expectsOf, placesOf, readUtterances } from './corpus.ts';

const contexts: readonly InterpretContext[] = CATALOGUE.flatMap((definition) => {
  const positions = placesOf(definition);
  const base = contextOf({ check: definition.id });
  const others = CATALOGUE.slice(0, 12).map(({ id, names }) => ({ key: id, names, position: null, expects: base.expects }));
  return (['answer', 'confirm', 'free'] as const).map((mode) => ({
    ...base,
    expects: expectsOf(definition, positions[0] ?? null),
    others,
    previous: others[0] ?? null,
    last: { value: 62, unit: 'psi' as const },
    mode,
  }));
});

const anyContext = fc.constantFrom(...contexts);
/** Words that the grammars are made of, in no order at all. */
const vocabulary = [
  ...new Set(
    ['plain', 'natural', 'hard', 'refuse'].flatMap((level) => readUtterances(level).flatMap(({ text }) => text.split(/\s+/))),
  ),
];
const wordSalad = fc.array(fc.constantFrom(...vocabulary), { maxLength: 25 }).map((words) => words.join(' '));

describe('no input of any kind throws, and every meaning is whole', () => {
  const holds = (text: string, context: InterpretContext) => {
    const meaning = interpret(text, context);
    expect(meaning.certainty).toBeGreaterThanOrEqual(0);
    expect(meaning.certainty).toBeLessThanOrEqual(1);
    if (meaning.intent === 'command') expect(COMMANDS).toContain(meaning.command);
    if (meaning.intent === 'reading') {
      expect(meaning.readings.length).toBeGreaterThan(0);
      for (const { value } of meaning.readings) expect(Number.isFinite(value)).toBe(true);
    }
  };

  it('any text', () => {
    fc.assert(fc.property(fc.string({ maxLength: 200 }), anyContext, holds), { numRuns: 1500 });
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), anyContext, holds), { numRuns: 1500 });
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 100 }), anyContext, holds), { numRuns: 800 });
  });

  it('any words in any order', () => {
    fc.assert(fc.property(wordSalad, anyContext, holds), { numRuns: 4000 });
  });

  it('very long text', () => {
    const [context] = contexts;
    if (!context) throw new Error('no context');
    for (const text of [
      'six '.repeat(50_000),
      'not '.repeat(50_000),
      '1/2'.repeat(20_000),
      'no, '.repeat(20_000),
      '9'.repeat(100_000),
      'make a note '.repeat(9000),
    ])
      holds(text, context);
  });

  it('names of things that every object has', () => {
    for (const text of ['constructor', '__proto__', 'toString valueOf hasOwnProperty', 'left constructor 62'])
      for (const context of contexts) holds(text, context);
  });

  it('the same words always mean the same', () => {
    fc.assert(
      fc.property(wordSalad, anyContext, (text, context) => {
        expect(interpret(text, context)).toEqual(interpret(text, context));
      }),
      { numRuns: 300 },
    );
  });
});

describe('values stay within what is possible', () => {
  it('whatever is said', () => {
    fc.assert(
      fc.property(wordSalad, anyContext, (text, context) => {
        const meaning = interpret(text, context);
        if (meaning.intent !== 'reading' || meaning.about !== null || meaning.corrects !== null) return;
        const { expects } = context;
        if (expects.kind === 'count')
          for (const { value } of meaning.readings) expect(value >= expects.min && value <= expects.max).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('two people', () => {
  const context = contextOf({ check: 'tire-pressure', context: { others: ['tread-depth', 'coupler', 'lugs-moved', 'chains'] } });

  it.each([
    ['tread five thirty seconds', 'tread-depth@left-front'],
    ['right rear tread six', 'tread-depth@right-rear'],
    ['coupler is latched and pinned', 'coupler'],
    ['safety chains crossed', 'chains'],
    ['lug nuts none moved', 'lugs-moved@left-front'],
  ])('%s', (text, about) => {
    const meaning = interpret(text, context);
    expect(meaning.about).toBe(about);
    expect(meaning.intent === 'reading' || meaning.intent === 'verdict').toBe(true);
  });

  it('does not take a value by another name for its own', () => {
    const alone = contextOf({ check: 'tire-pressure' });
    for (const text of ['tread is five', 'lugs two', 'battery twelve six']) expect(interpret(text, alone).intent).toBe('unclear');
  });
});

describe('a line from anywhere', () => {
  it.each([
    [
      { check: 'tire_pressure', text: '62 psi' },
      { intent: 'reading', readings: [{ position: null, value: 62, unit: 'psi' }] },
    ],
    [{ check: 'lug-torque', text: 'a hundred and five foot-pounds' }, { readings: [{ value: 105, unit: 'lb-ft' }] }],
    [
      { check: 'cable-slack-left', text: "nope, it's tight" },
      { intent: 'verdict', verdict: 'problem' },
    ],
    [{ check: 'nothing known', yes_means: 'problem', text: 'yes' }, { verdict: 'problem' }],
    [{ check: 'nothing known', text: 'burned out' }, { verdict: 'problem' }],
    [{ check: 'lugs', total: 6, text: 'all six clicked' }, { readings: [{ value: 0, unit: 'count' }] }],
    [
      { expects: { kind: 'number', unit: 'psi', min: 0, max: 100 }, text: '120' },
      { intent: 'unclear', why: 'out-of-range' },
    ],
    [
      { expects: ['open', 'closed'], text: "it's closed" },
      { verdict: 'ok', option: 'closed' },
    ],
    [{ unit: 'psi', text: 'four bar' }, { readings: [{ value: 58.01509509, unit: 'psi', said: { value: 4, unit: 'bar' } }] }],
    [{ unit: 'C', check: 'outside-temperature', text: 'minus ten Celsius' }, { readings: [{ value: -10, unit: 'C' }] }],
    [
      { check: 'tire-pressure', last: 62, text: 'same as last time' },
      { readings: [{ value: 62 }], policy: 'confirm' },
    ],
    [
      { check: 'tire-pressure', text: 'same as last time' },
      { intent: 'unclear', why: 'no-last' },
    ],
    [{}, { intent: 'unclear' }],
    [null, { intent: 'unclear' }],
    [[1, 2], { intent: 'unclear' }],
  ])('%j', (line, got) => {
    expect(interpretLine(line)).toMatchObject(got);
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.string(), (expects, check, text) => {
        expect(interpretLine({ expects, check, unit: check, total: expects, last: expects, text })).toHaveProperty('intent');
      }),
      { numRuns: 2000 },
    );
  });
});
