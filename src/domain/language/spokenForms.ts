/** Every way in which the grammar lets a value be said, from the same declaration that the interpreter reads. */
import type { CountExpects, ReadingExpects } from '../checks/expects.ts';
import { DIGIT_WORDS, TEEN_WORDS, TENS_WORDS } from './numberWords.ts';

const underHundred = (value: number): string => {
  if (value < 10) return DIGIT_WORDS[value] ?? '';
  if (value < 20) return TEEN_WORDS[value - 10] ?? '';
  const ones = value % 10;
  return `${TENS_WORDS[Math.floor(value / 10)] ?? ''}${ones === 0 ? '' : ` ${DIGIT_WORDS[ones]}`}`;
};

/** Digit by digit, nought as "oh" or "zero". */
function digitByDigit(digits: string): readonly string[] {
  return [...digits].reduce<readonly string[]>(
    (made, digit) => {
      const words = digit === '0' ? ['zero', 'oh'] : [DIGIT_WORDS[Number(digit)] ?? ''];
      return made.flatMap((before) => words.map((word) => (before === '' ? word : `${before} ${word}`)));
    },
    [''],
  );
}

/** Two digits behind a first group: "oh five", "zero five", "ten", "twenty five". */
const tailWords = (value: number): readonly string[] =>
  value < 10 ? [`oh ${DIGIT_WORDS[value]}`, `zero ${DIGIT_WORDS[value]}`] : [underHundred(value)];

/** A whole number from 0 to 999 as a cardinal, with and without "and". */
function cardinals(value: number): readonly string[] {
  if (value < 100) return [underHundred(value)];
  const hundreds = Math.floor(value / 100);
  const rest = value % 100;
  const heads = [`${DIGIT_WORDS[hundreds]} hundred`, ...(hundreds === 1 ? ['a hundred', 'hundred'] : [])];
  if (rest === 0) return heads;
  return heads.flatMap((head) => [`${head} ${underHundred(rest)}`, `${head} and ${underHundred(rest)}`]);
}

/** Beside cardinals: digits one by one, and "one ten". */
function shortWholes(value: number): readonly string[] {
  if (value < 10) return [];
  const digits = String(value);
  const forms = [...digitByDigit(digits)];
  if (value >= 100 && value % 100 !== 0)
    forms.push(...tailWords(value % 100).map((tail) => `${DIGIT_WORDS[Math.floor(value / 100)]} ${tail}`));
  return forms;
}

/** Digits that are possible as one number are heard as one number. */
const isPossible = (value: number, { min, max }: ReadingExpects | CountExpects): boolean => value >= min && value <= max;

const FRACTIONS: readonly (readonly [part: number, words: readonly string[]])[] = [
  [1 / 4, ['a quarter', 'one quarter', 'one fourth']],
  [1 / 2, ['a half', 'one half']],
  [3 / 4, ['three quarters', 'three fourths']],
];

/** The part behind the whole number, each way with what joins it: " point five", " and a half". */
function parts(part: number, expects: ReadingExpects | CountExpects): readonly string[] {
  const has = (form: ReadingExpects['forms'][number]) => expects.kind === 'reading' && expects.forms.includes(form);
  const made: string[] = [];
  const fraction = FRACTIONS.find(([one]) => one === part);
  const isHalf = part === 0.5 && (has('half') || has('tenth') || has('quarter'));
  if (fraction && (isHalf || has('quarter'))) made.push(...fraction[1].map((words) => ` and ${words}`));
  const tenths = part * 10;
  const isTenth = Math.abs(tenths - Math.round(tenths)) < 1e-9;
  const hundredths = Math.round(part * 100);
  if (isTenth && (isHalf || has('tenth') || has('hundredth'))) made.push(` point ${DIGIT_WORDS[Math.round(tenths)]}`);
  else if (Math.abs(part * 100 - hundredths) < 1e-9 && has('hundredth')) {
    const digits = String(hundredths).padStart(2, '0');
    made.push(...digitByDigit(digits).map((words) => ` point ${words}`));
    if (hundredths >= 10) made.push(` point ${underHundred(hundredths)}`);
  }
  const thirtySeconds = part * 32;
  const isOwnUnit = expects.kind === 'reading' && expects.unit === '32nds';
  if (has('thirty-second') && !isOwnUnit && Math.abs(thirtySeconds - Math.round(thirtySeconds)) < 1e-9)
    made.push(
      ` and ${underHundred(Math.round(thirtySeconds))} ${Math.round(thirtySeconds) === 1 ? 'thirty second' : 'thirty seconds'}`,
    );
  return made;
}

/** "twelve six", "twelve oh five", "twelve sixty five". */
function shortDecimals(whole: number, part: number, expects: ReadingExpects): readonly string[] {
  if (!expects.forms.includes('spoken-decimal') || part === 0 || whole < 1 || whole > 99 || (whole >= 20 && whole % 10 === 0))
    return [];
  const digits = String(Math.round(part * 100))
    .padStart(2, '0')
    .replace(/0$/, '');
  if (Math.abs(Number(`0.${digits}`) - part) > 1e-9) return [];
  const together = Number(`${whole}${digits}`);
  if (isPossible(together, expects)) return [];
  if (digits.length === 1) return [`${underHundred(whole)} ${DIGIT_WORDS[Number(digits)]}`];
  return digits.startsWith('0')
    ? [`${underHundred(whole)} oh ${DIGIT_WORDS[Number(digits)]}`]
    : [`${underHundred(whole)} ${underHundred(Number(digits))}`];
}

/**
 * All spoken forms of a value, in words, unit and place left out.
 * @param value in the declaration's own unit; up to 999.99 either side of zero
 * @returns none twice; empty for a value outside the declared range or finer than its forms
 */
export function spokenForms(value: number, expects: ReadingExpects | CountExpects): string[] {
  if (!Number.isFinite(value) || value < expects.min || value > expects.max || Math.abs(value) >= 1000) return [];
  const size = Math.abs(value);
  const whole = Math.floor(size + 1e-9);
  const part = Math.round((size - whole) * 1e6) / 1e6;
  const forms: string[] = [];
  if (part === 0) forms.push(...cardinals(whole), ...shortWholes(whole));
  else {
    for (const tail of parts(part, expects)) {
      forms.push(...cardinals(whole).map((head) => `${head}${tail}`));
      if (whole === 0) forms.push(tail.replace(/^ and /, '').trim());
    }
    if (expects.kind === 'reading') forms.push(...shortDecimals(whole, part, expects));
  }
  const isThirtySeconds = expects.kind === 'reading' && expects.unit === '32nds';
  const all = isThirtySeconds
    ? forms.flatMap((form) => [form, ...(isCardinalForm(form) ? [`${form} thirty seconds`] : [])])
    : forms;
  const distinct = [...new Set(all)].filter((form) => form !== '');
  if (value >= 0) return distinct;
  return distinct.flatMap((form) => [
    `minus ${form}`,
    `negative ${form}`,
    ...(expects.kind === 'reading' && expects.forms.includes('negative') ? [`${form} below`, `${form} below zero`] : []),
  ]);
}

/** "point five thirty seconds" is nobody's tread. */
const isCardinalForm = (form: string): boolean => !form.includes('point') && !/quarter|fourth/.test(form);
