/**
 * The grammar of one request: everything that the check asked about may be answered with, from the single declaration of what
 * it expects, plus commands, self-correction, other checks by name, and yes and no where the tool asked to confirm.
 *
 * Weights are natural logs. They say what is usual, never what is right: the sound decides, and what was heard is judged by
 * others.
 */
import type { CountExpects, DateExpects, Expects, Position, ReadingExpects } from '../../domain/checks/expects.ts';
import { UNITS, type UnitId } from '../../domain/quantity/units.ts';
import type { ListenRequest } from '../../domain/voice/ports.ts';
import { COMMAND_PHRASES, WISH_PHRASES } from './commandPhrases.ts';
import { EMPTY, oneOf, optional, phrase, phrases, type Rule, separated, sequence, weighted, word, wordsOf } from './grammar.ts';
import { phraseSet } from './phraseSet.ts';
import {
  decimalForms,
  digitForms,
  distinct,
  quarterForms,
  type SpokenForm,
  underHundred,
  wholeForms,
  yearForms,
} from './spokenNumbers.ts';

/**
 * Log weights. An optional word costs enough that a cough or the edge of a gust is not taken for one; found by trial on the
 * tuning clips.
 */
const WEIGHT = {
  unusualValue: -0.7,
  /** A year that would be odd on a label: the end of a teen or a ty must not decide between 2014 and 2040. */
  unusualYear: -1.5,
  betweenSteps: -0.4,
  command: -0.7,
  other: -0.7,
  correction: -2.2,
  filler: -2.5,
  hedge: -2.5,
  place: -0.7,
  unit: -0.2,
  unsure: -0.7,
  several: -1.4,
} as const;

const POSITION_PHRASES: Readonly<Record<Position, readonly string[]>> = {
  'left-front': ['left front', 'front left'],
  'right-front': ['right front', 'front right'],
  'left-middle': ['left middle', 'middle left'],
  'right-middle': ['right middle', 'middle right'],
  'left-rear': ['left rear', 'rear left', 'left back', 'back left'],
  'right-rear': ['right rear', 'rear right', 'right back', 'back right'],
  left: ['left', 'left side'],
  right: ['right', 'right side'],
  front: ['front'],
  rear: ['rear', 'back'],
};

/** Other words for the units, beside their own names. */
const UNIT_PHRASES: Partial<Readonly<Record<UnitId, readonly string[]>>> = {
  psi: ['p s i', 'pounds', 'pound', 'pounds per square inch'],
  'lb-ft': ['foot pounds', 'foot pound', 'pound feet', 'pounds', 'foot pounds of torque'],
  '32nds': ['thirty seconds', 'thirty second', '32nds'],
  F: ['degrees', 'degrees fahrenheit', 'fahrenheit', 'degree'],
  C: ['degrees', 'degrees celsius', 'celsius', 'degree'],
  percent: ['percent'],
  'N-m': ['newton meters', 'newton meter'],
  mm: ['millimeters', 'millimeter'],
  cm: ['centimeters', 'centimeter'],
  m: ['meters', 'meter'],
  L: ['liters', 'liter'],
  ppm: ['parts per million', 'p p m'],
  kPa: ['kilopascals', 'kilopascal', 'k p a'],
};

/** Behind a temperature, instead of a sign before it. */
const sidesOf = (side: string) => [[side], [side, 'zero'], ['degrees', side], ['degrees', side, 'zero']];
const BELOW = sidesOf('below');
const ABOVE = sidesOf('above');
const HEDGES = ['about', 'around', 'maybe', 'almost', 'just under', 'just over'];
/** Words before an answer that add nothing to it. */
export const FILLERS = ['uh', 'um', "it's", "that's", 'okay', "i've got", 'reads', 'it reads', 'looks like'];
const CORRECTIONS = ['no', 'no wait', 'wait no', 'sorry', 'correction', 'i mean', 'make that', 'wait'];
/** Words that ask for an answer of another check to be changed. */
const CHANGES = ['change', 'correct', 'correction', 'make'];
/** To a question about the unit. Not "correct": two of nine synthetic voices were surely heard to say it when they said "cracked". */
const YES = ['yes', 'yeah', 'yep', 'yes it is'];
const NO = ['no', 'nope', "it isn't"];
/** To a question whether something was heard right. */
const RIGHT = [...YES, 'right', "that's right"];
const WRONG = [...NO, 'not right'];
const UNSURE = ["i don't know", 'not sure', "i'm not sure", "can't tell", "i can't tell", "can't see"];
const SAME = ['same', 'the same', 'same as last time', 'same as before'];
const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

const formsRule = (forms: readonly SpokenForm[]): Rule => phraseSet(distinct(forms));

const unitWords = (unit: UnitId): readonly string[] => {
  const own = UNITS[unit].spoken.filter((name) => name !== '' && !/metre|litre/.test(name));
  return [...new Set([...(UNIT_PHRASES[unit] ?? []), ...own].map((name) => wordsOf(name).join(' ')))].filter(
    (name) => !/\d|kay/.test(name),
  );
};

/** All ways to say the values of a reading, in its own unit. */
function readingValues({ min, max, step, forms, usual }: ReadingExpects): Rule {
  const has = (name: ReadingExpects['forms'][number]) => forms.includes(name);
  const bare = has('spoken-decimal');
  const said: SpokenForm[] = [];
  const add = (value: number, ways: readonly SpokenForm[]) => {
    if (Math.abs(value) < 1e-9 ? min > 0 || max < 0 : value < min || value > max) return;
    // A value between two steps can be said and must be heard as it is; others then ask about it.
    const isStep = Math.abs(value / step - Math.round(value / step)) < 1e-6;
    const unusual = (value < usual.min || value > usual.max ? WEIGHT.unusualValue : 0) + (isStep ? 0 : WEIGHT.betweenSteps);
    for (const way of ways) {
      const signs = value >= 0 ? [[]] : [['minus'], ['negative']];
      for (const sign of signs) said.push({ words: [...sign, ...way.words], weight: way.weight + unusual });
      if (has('negative') && value !== 0)
        for (const side of value < 0 ? BELOW : ABOVE)
          said.push({ words: [...way.words, ...side], weight: way.weight + unusual - 0.3 });
    }
  };
  const both = (value: number, ways: readonly SpokenForm[]) => {
    add(value, ways);
    if (value > 0 && min < 0) add(-value, ways);
  };
  const top = Math.floor(Math.max(max, -min));
  const bottom = min > 0 ? Math.floor(min) : 0;
  for (let whole = bottom; whole <= top; whole += 1) {
    if (has('whole') || has('thirty-second') || has('half')) both(whole, wholeForms(whole));
    if (has('half') || has('quarter')) both(whole + 0.5, quarterForms(whole, 2));
    if (has('quarter')) {
      both(whole + 0.25, quarterForms(whole, 1));
      both(whole + 0.75, quarterForms(whole, 3));
    }
    if (has('tenth'))
      for (let tenth = 0; tenth < 10; tenth += 1) both(whole + tenth / 10, decimalForms(whole, String(tenth), bare));
    else if (has('half')) both(whole + 0.5, decimalForms(whole, '5', bare));
    if (has('hundredth')) {
      // Not two noughts: "thirteen oh oh" heard as "thirteen oh" is the same value, a long "oh" heard twice is what was not said.
      for (let part = 1; part < 100; part += 1)
        both(whole + part / 100, decimalForms(whole, String(part).padStart(2, '0'), bare));
    } else if (has('quarter')) {
      both(whole + 0.25, decimalForms(whole, '25', bare));
      both(whole + 0.75, decimalForms(whole, '75', bare));
    }
  }
  return formsRule(said);
}

function readingRule(expects: ReadingExpects): Rule {
  const units = oneOf(...[expects.unit, ...expects.otherUnits].flatMap(unitWords).map(phrase));
  return sequence(optional(phrases(HEDGES), WEIGHT.hedge), readingValues(expects), optional(units, WEIGHT.unit));
}

function countRule({ min, max, noun, nonePhrases, allPhrases }: CountExpects): Rule {
  const numbers: SpokenForm[] = [];
  for (let value = min; value <= max; value += 1) numbers.push(...wholeForms(value).filter(({ weight }) => weight > -0.5));
  const nouns = optional(oneOf(phrase(noun[0]), phrase(noun[1]), phrase('of them')));
  const none = phrases(['none', ...nonePhrases]);
  const all = allPhrases.length > 0 ? [[phrases(allPhrases), 0] as const] : [];
  return weighted(
    [sequence(formsRule(numbers), nouns), 0],
    [sequence(none, optional(oneOf(phrase(noun[1]), phrase('of them')), -0.5)), 0],
    ...all,
  );
}

/** Years that can be said at all beside the usual ones: old stock, a label far ahead. */
const YEARS_AROUND = 20;
/** Where nothing is known of when it is asked. */
const ANY_YEARS = { min: 1995, max: 2040 };

function dateRule({ form, usualYears }: DateExpects): Rule {
  const years: SpokenForm[] = [];
  const { min, max } = usualYears ? { min: usualYears.min - YEARS_AROUND, max: usualYears.max + YEARS_AROUND } : ANY_YEARS;
  const weightOf = (year: number) => (usualYears && (year < usualYears.min || year > usualYears.max) ? WEIGHT.unusualYear : 0);
  const formsOf = (year: number) => yearForms(year).map(({ words, weight }) => ({ words, weight: weight + weightOf(year) }));
  if (form === 'month-year') {
    for (let year = min; year <= max; year += 1) years.push(...formsOf(year));
    const months = oneOf(
      ...MONTHS.map(word),
      ...Array.from({ length: 12 }, (_, month) =>
        oneOf(
          sequence(...underHundred(month + 1).map(word)),
          ...(month < 9 ? [sequence(word('oh'), word(underHundred(month + 1)[0] ?? ''))] : []),
        ),
      ),
    );
    return sequence(months, optional(word('of'), -0.3), formsRule(years));
  }
  const weeks: SpokenForm[] = [];
  const pairs: SpokenForm[] = [];
  const pair = (value: number): SpokenForm[] => {
    const digits = String(value).padStart(2, '0');
    return [...digitForms(digits), ...(value >= 10 ? [{ words: underHundred(value), weight: 0 }] : [])];
  };
  for (let week = 1; week <= 53; week += 1) weeks.push(...pair(week));
  // Two digits are a year of this century: before 2000 the code had three figures (49 CFR 574.5).
  for (let year = 0; year <= 99; year += 1) {
    const unusual = usualYears ? weightOf(2000 + year) : year > 45 ? WEIGHT.unusualYear : 0;
    pairs.push(...pair(year).map(({ words, weight }) => ({ words, weight: weight + unusual })));
  }
  for (let year = Math.max(2000, min); year <= max; year += 1)
    years.push(...formsOf(year).filter(({ words }) => words.length >= 2));
  const week = formsRule(weeks);
  return oneOf(
    sequence(week, formsRule(pairs)),
    sequence(
      word('week'),
      oneOf(week, ...Array.from({ length: 9 }, (_, index) => word(underHundred(index + 1)[0] ?? ''))),
      optional(word('of')),
      formsRule(years),
    ),
  );
}

/** Answers to a check, without position, name or correction. */
function answerRule(expects: Expects): Rule {
  switch (expects.kind) {
    case 'reading':
      return weighted([readingRule(expects), 0], [phrases(SAME), WEIGHT.unsure]);
    case 'count':
      return countRule(expects);
    case 'state':
      return weighted(
        [phrases([...expects.ok, ...expects.problem]), 0],
        [phrases([...YES, ...NO]), 0],
        [phrases(UNSURE), WEIGHT.unsure],
      );
    case 'choice':
      return weighted([phrases(expects.options.flatMap((option) => option.phrases)), 0], [phrases(UNSURE), WEIGHT.unsure]);
    case 'date':
      return dateRule(expects);
  }
}

const filler = optional(phrases(FILLERS), WEIGHT.filler);
const positionRule = (position: Position): Rule => phrases(POSITION_PHRASES[position]);

/**
 * One check: a place or none, the answer, and again after a correction or for another place. Numbers stand in the graph only
 * once, in one loop; states and dates are said again once at most, since "no" may be the answer as well as the correction.
 */
function checkRule(expects: Expects, answer: Rule, positions: readonly Position[]): Rule {
  const spoken = [...new Set(positions)];
  const where = spoken.length > 0 ? oneOf(...spoken.map(positionRule)) : null;
  const before = where ? optional(where, WEIGHT.place) : EMPTY;
  const after = where ? optional(where, 2 * WEIGHT.place) : EMPTY;
  const correction = sequence(phrases(CORRECTIONS), before);
  if (expects.kind !== 'reading') {
    return sequence(before, filler, answer, optional(sequence(correction, answer), WEIGHT.correction), after);
  }
  const links: (readonly [Rule, number])[] = [[correction, WEIGHT.correction]];
  if (where && spoken.length > 1) links.push([sequence(optional(word('and')), where), WEIGHT.several]);
  return sequence(before, filler, separated(answer, weighted(...links)), after);
}

/** What may be said at any time. */
function commandRule(): Rule {
  return phrases([...Object.values(COMMAND_PHRASES).flat(), ...WISH_PHRASES]);
}

/** Answers as rules; four tires expect the same, and their answers are built into the graph once. */
function answerRules(): (one: Expects) => Rule {
  const answers = new Map<string, Rule>();
  return (one) => {
    const key = JSON.stringify(one);
    const known = answers.get(key) ?? answerRule(one);
    answers.set(key, known);
    return known;
  };
}

/** A check by its name, with its place before or after. */
function headRule({ names, position }: ListenRequest['others'][number]): Rule {
  const name = phrases(names);
  const place = position ? positionRule(position) : EMPTY;
  return position ? oneOf(sequence(place, name), sequence(name, place)) : name;
}

/** What is usually said. The same request gives the same rule. */
export function requestRule(request: ListenRequest): Rule {
  const { expects, mode, others } = request;
  if (mode === 'free') return commandRule();
  const answerTo = answerRules();
  const positions = request.position ? [request.position, ...request.positions] : request.positions;
  const asked = checkRule(expects, answerTo(expects), positions);
  const yesNo: readonly (readonly [Rule, number])[] =
    mode === 'confirm'
      ? [
          [phrases([...RIGHT, ...WRONG]), 0],
          [sequence(phrases(['no', 'nope']), asked), -0.3],
        ]
      : [];
  const named = others
    .filter(({ settled }) => settled !== true)
    .map((other) => [sequence(headRule(other), filler, answerTo(other.expects)), WEIGHT.other] as const);
  return weighted([asked, 0], ...yesNo, ...named, [commandRule(), WEIGHT.command]);
}

/** "Change left tread to five": what is seldom said, and makes the graph several times as large. Null where nothing can be changed. */
export function changeRule({ others }: Pick<ListenRequest, 'others'>): Rule | null {
  const settled = others.filter((other) => other.settled === true);
  if (settled.length === 0) return null;
  const answerTo = answerRules();
  const changes = settled.map((other) => sequence(headRule(other), optional(word('to')), answerTo(other.expects)));
  return sequence(phrases(CHANGES), optional(word('the')), oneOf(...changes));
}
