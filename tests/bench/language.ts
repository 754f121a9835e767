/** Time per utterance, the rates of the corpus, and number phrases side by side with a general number-words library. */
import { performance } from 'node:perf_hooks';
import wordsToNumbersModule from 'words-to-numbers';
import type { ReadingExpects } from '../../src/domain/checks/expects.ts';
import { interpret } from '../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../src/domain/language/meaning.ts';
import { spokenForms } from '../../src/domain/language/spokenForms.ts';
import { convert } from '../../src/domain/quantity/units.ts';
import { contextOf, percent, rateOf, readUtterances } from '../unit/language/corpus.ts';

const TURNS = 5;
const LEVELS = ['plain', 'natural', 'hard', 'refuse'] as const;

/** The library comes as a module or as its default, by the loader. */
const wordsToNumbers: (text: string) => string | number | null =
  typeof wordsToNumbersModule === 'function'
    ? wordsToNumbersModule
    : (wordsToNumbersModule as unknown as { wordsToNumbers: (text: string) => string | number | null }).wordsToNumbers;

function timings(): void {
  const all = LEVELS.flatMap((level) => readUtterances(level)).map((utterance) => ({
    text: utterance.text,
    context: contextOf(utterance),
  }));
  const cpu = () => {
    const { user, system } = process.cpuUsage();
    return user + system;
  };
  const coldFrom = cpu();
  for (const { text, context } of all) interpret(text, context);
  const cold = (cpu() - coldFrom) / all.length;
  const warmFrom = cpu();
  const best = all.map(() => Number.POSITIVE_INFINITY);
  for (let turn = 0; turn < TURNS; turn += 1) {
    for (const [index, { text, context }] of all.entries()) {
      const start = performance.now();
      interpret(text, context);
      best[index] = Math.min(best[index] ?? 0, 1000 * (performance.now() - start));
    }
  }
  const warm = (cpu() - warmFrom) / (TURNS * all.length);
  best.sort((a, b) => a - b);
  const at = (share: number) => (best[Math.floor(share * (best.length - 1))] ?? 0).toFixed(0);
  console.log(
    `\nTime per utterance, ${all.length} utterances, processor time: ${warm.toFixed(0)} µs; the first for each check, with its words built: ${cold.toFixed(0)} µs`,
  );
  console.log(`Best of ${TURNS} turns: median ${at(0.5)} µs, 99 % ${at(0.99)} µs, slowest ${at(1)} µs`);
}

function rates(): void {
  console.log('\nCorpus   right    of  rate');
  for (const file of [...LEVELS, 'held-out']) {
    const rate = rateOf(file, readUtterances(file));
    console.log(`${file.padEnd(8)} ${String(rate.right).padStart(5)} ${String(rate.all).padStart(5)}  ${percent(rate)}`);
  }
}

const reading = (more: Partial<ReadingExpects>): ReadingExpects => ({
  kind: 'reading',
  quantity: 'bench',
  unit: 'psi',
  otherUnits: [],
  min: 0,
  max: 999.99,
  step: 0.5,
  forms: ['whole', 'half'],
  usual: { min: 0, max: 999 },
  ...more,
});

const contextFor = (expects: ReadingExpects): InterpretContext => ({
  expects,
  names: [],
  position: null,
  positions: [],
  others: [],
  last: null,
  previous: null,
  mode: 'answer',
});

interface Group {
  readonly name: string;
  readonly expects: ReadingExpects;
  readonly values: readonly number[];
}

const every = (count: number, part = 0): readonly number[] => Array.from({ length: count }, (_, whole) => whole + part);

const GROUPS: readonly Group[] = [
  { name: 'whole, 0 to 999', expects: reading({}), values: every(1000) },
  { name: 'halves', expects: reading({}), values: every(1000, 0.5) },
  {
    name: 'quarters',
    expects: reading({ unit: 'in', forms: ['whole', 'half', 'quarter'], step: 0.25 }),
    values: [...every(300, 0.25), ...every(300, 0.75)],
  },
  {
    name: 'tenths',
    expects: reading({ forms: ['whole', 'tenth'], step: 0.1 }),
    values: every(1000).map((whole) => Number(`${whole}.${1 + (whole % 9)}`)),
  },
  {
    name: 'thirty-seconds',
    expects: reading({ unit: '32nds', max: 40, forms: ['whole', 'half', 'thirty-second'] }),
    values: [...every(41), ...every(40, 0.5)],
  },
  {
    name: 'volts said short',
    expects: reading({ unit: 'V', max: 18, step: 0.05, forms: ['whole', 'tenth', 'hundredth', 'spoken-decimal'] }),
    values: Array.from({ length: 360 }, (_, index) => index / 20),
  },
  {
    name: 'below zero',
    expects: reading({ unit: 'F', min: -70, max: 130, step: 1, forms: ['whole', 'negative'] }),
    values: Array.from({ length: 70 }, (_, index) => -1 - index),
  },
];

function sideBySide(): void {
  console.log('\nNumber phrases              phrases   ours      words-to-numbers');
  for (const { name, expects, values } of GROUPS) {
    const context = contextFor(expects);
    let phrases = 0;
    let ours = 0;
    let theirs = 0;
    for (const value of values) {
      for (const form of spokenForms(value, expects)) {
        phrases += 1;
        const meaning = interpret(form, context);
        const [only] = meaning.intent === 'reading' && meaning.readings.length === 1 ? meaning.readings : [];
        if (only && Math.abs(convert(only.value, only.unit, expects.unit) - value) < 1e-9) ours += 1;
        const got = wordsToNumbers(form);
        if (typeof got === 'number' && Math.abs(got - value) < 1e-9) theirs += 1;
      }
    }
    const share = (right: number) => `${((100 * right) / phrases).toFixed(1)} %`;
    console.log(`${name.padEnd(26)} ${String(phrases).padStart(8)}   ${share(ours).padEnd(9)} ${share(theirs)}`);
  }
}

rates();
timings();
sideBySide();
