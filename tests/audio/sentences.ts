/** What people would answer, drawn with a seed: which check, which words. */
import type { ListenRequest } from '../../src/domain/voice/ports.ts';
import { wordsOf } from '../../src/speech/recogniser/grammar.ts';
import {
  decimalForms,
  digitForms,
  quarterForms,
  underHundred,
  wholeForms,
  yearForms,
} from '../../src/speech/recogniser/spokenNumbers.ts';
import { type CatalogueRequest, catalogueRequests } from '../tools/catalogueRequests.ts';
import { pick, type Random } from './random.ts';

export interface Sentence {
  readonly check: string;
  readonly words: readonly string[];
  /** Recordings that say it, where the professional speaker has them. */
  readonly recordings?: readonly string[];
}

/** The checks that the tables are made with: every kind of answer, the hardest numbers. */
export const CHECKS = [
  'tire-pressure',
  'tread-depth',
  'lugs-moved',
  'battery-rest',
  'outside-temperature',
  'ice-thickness',
  'transport-pins',
  'cable-slack',
  'parked-time',
  'tire-date',
  'co-alarm-date',
  'deadbolt',
] as const;

export function requestOf(check: string): CatalogueRequest {
  const found = catalogueRequests().find((one) => one.check === check);
  if (!found) throw new Error(`no check ${check}`);
  return found;
}

const between = (random: Random, low: number, high: number) => low + Math.floor(random() * (high - low + 1));

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

/** A likely answer. Numbers come as people say them: plain, digit by digit, with a unit, corrected, with a place. */
export function drawSentence(check: string, { expects, positions }: ListenRequest, random: Random): Sentence {
  const say = (...parts: readonly (readonly string[])[]): Sentence => ({ check, words: parts.flat() });
  if (expects.kind === 'reading') {
    const { usual, forms } = expects;
    const number = (): readonly string[] => {
      const value = between(random, Math.ceil(usual.min), Math.floor(usual.max));
      const size = Math.abs(value);
      const sign = value < 0 ? ['minus'] : [];
      const roll = random();
      if (forms.includes('tenth') && roll < 0.7)
        return [
          ...sign,
          ...pick(random, decimalForms(size, String(between(random, 0, 9)), forms.includes('spoken-decimal'))).words,
        ];
      if (forms.includes('half') && roll < 0.15 && size > 0) return [...sign, ...pick(random, quarterForms(size, 2)).words];
      if (size >= 10 && roll > 0.85) return [...sign, ...pick(random, digitForms(String(size))).words];
      return [
        ...sign,
        ...pick(
          random,
          wholeForms(size).filter((form) => form.weight > -0.3),
        ).words,
      ];
    };
    const roll = random();
    const unit: Partial<Record<string, string>> = {
      psi: 'pounds',
      '32nds': 'thirty seconds',
      F: 'degrees',
      in: 'inches',
      V: 'volts',
    };
    if (roll < 0.15 && unit[expects.unit]) return say(number(), wordsOf(unit[expects.unit] ?? ''));
    if (roll < 0.23) return say(number(), [pick(random, ['no', 'sorry', 'correction'])], number());
    if (roll < 0.31 && positions.length === 4)
      return say(
        pick(random, [
          ['left', 'front'],
          ['right', 'rear'],
          ['left', 'rear'],
        ]),
        number(),
      );
    return say(number());
  }
  if (expects.kind === 'count') {
    const roll = random();
    if (roll < 0.3) return say(wordsOf(pick(random, ['none', ...expects.nonePhrases])));
    const count = between(random, 0, Math.min(expects.max, 12));
    return say(underHundred(count), roll < 0.5 ? wordsOf(expects.noun[count === 1 ? 0 : 1]) : []);
  }
  if (expects.kind === 'state') return say(wordsOf(pick(random, [...expects.ok, ...expects.problem])));
  if (expects.kind === 'choice')
    return say(
      wordsOf(
        pick(
          random,
          expects.options.flatMap((option) => option.phrases),
        ),
      ),
    );
  if (expects.form === 'month-year')
    return say(
      [pick(random, MONTHS)],
      pick(
        random,
        yearForms(between(random, 2012, 2026)).filter((form) => form.words.length > 1 && form.weight >= -0.2),
      ).words,
    );
  const week = between(random, 1, 52);
  const year = between(random, 15, 25);
  return random() < 0.5
    ? say(...[week, year].map((part) => pick(random, digitForms(String(part).padStart(2, '0'))).words))
    : say(week < 10 ? ['oh', ...underHundred(week)] : underHundred(week), underHundred(year));
}

/** Numbers that the professional speaker's recordings can be joined to. */
export function drawRecordedNumber(random: Random): Sentence {
  const value = between(random, 2, 149);
  const ones = value % 100;
  const tail =
    ones === 0
      ? []
      : ones < 20
        ? [String(ones)]
        : ones % 10 === 0
          ? [String(ones)]
          : [String(ones - (ones % 10)), String(ones % 10)];
  const digits = random() < 0.25 && value >= 10;
  if (digits) {
    const names = [...String(value)];
    return {
      check: 'tire-pressure',
      words: names.map((digit) => underHundred(Number(digit))[0] ?? ''),
      recordings: names.map((digit) => `digits/${digit}`),
    };
  }
  const hundred = value >= 100 ? ['digits/1', 'digits/hundred'] : [];
  return {
    check: 'tire-pressure',
    words: [...(value >= 100 ? ['one', 'hundred'] : []), ...(ones === 0 ? [] : underHundred(ones))],
    recordings: [...hundred, ...tail.map((name) => `digits/${name}`)],
  };
}

/** Speech that is for somebody else, for the reject tests and for babble. */
export const OTHER_TALK = [
  'did you remember to bring the coffee from the truck',
  'the weather man said it would snow again tomorrow evening',
  'my brother caught a walleye over there last winter',
  'hand me that rag would you',
  'we should have left an hour ago',
  'i told him the road was closed but he never listens',
  'put the dog in the back seat before we leave',
  'there is a good place to eat near the bridge',
  'who left the door open all night',
  'call your mother and say we will be late for supper',
  'this heater smells funny when it starts up',
  'the radio says the wind turns to the north tonight',
  'watch your fingers over there please',
  'i think the neighbors are coming down to help us',
  'look at those tracks on the other shore',
  'it was much colder when we were kids',
] as const;
