/** Numbers in words for the mouth, and digit by digit where a number is easily taken for another. */
import type { NumberForm } from '../checks/expects.ts';
import { DIGIT_WORDS, TEEN_WORDS, TENS_WORDS } from './numberWords.ts';

const underHundred = (value: number): string => {
  if (value < 10) return DIGIT_WORDS[value] ?? '';
  if (value < 20) return TEEN_WORDS[value - 10] ?? '';
  const ones = value % 10;
  const tens = TENS_WORDS[Math.floor(value / 10)] ?? '';
  return ones === 0 ? tens : `${tens}-${DIGIT_WORDS[ones]}`;
};

const underThousand = (value: number): string => {
  if (value < 100) return underHundred(value);
  const rest = value % 100;
  const head = `${DIGIT_WORDS[Math.floor(value / 100)]} hundred`;
  return rest === 0 ? head : `${head} ${underHundred(rest)}`;
};

/**
 * A whole number in words: "one hundred five".
 * @param value a whole number from 0 to 999 999
 * @throws RangeError otherwise
 */
export function speakWhole(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value > 999_999)
    throw new RangeError('speakWhole requires a whole number from 0 to 999999');
  if (value < 1000) return underThousand(value);
  const rest = value % 1000;
  const head = `${underThousand(Math.floor(value / 1000))} thousand`;
  return rest === 0 ? head : `${head} ${underThousand(rest)}`;
}

const FRACTIONS: readonly (readonly [part: number, words: string])[] = [
  [0.25, 'a quarter'],
  [0.5, 'a half'],
  [0.75, 'three quarters'],
];

/**
 * Any number in words: "sixty-two and a half", "twelve point six", "minus ten". Decimals are read digit by digit, at most
 * four of them.
 * @param forms of the declaration: halves and quarters are spoken as such where no tenths are
 * @throws RangeError for a number that is not finite or has more than six digits before the point
 */
export function speakNumber(value: number, forms: readonly NumberForm[] = []): string {
  if (!Number.isFinite(value)) throw new RangeError('speakNumber requires a finite number');
  if (value < 0) return `minus ${speakNumber(-value, forms)}`;
  const rounded = Math.round(value * 10_000) / 10_000;
  const whole = Math.floor(rounded);
  const part = Math.round((rounded - whole) * 10_000) / 10_000;
  if (part === 0) return speakWhole(whole);
  const fraction = forms.includes('tenth') || forms.includes('hundredth') ? undefined : FRACTIONS.find(([one]) => one === part);
  if (fraction) return whole === 0 ? fraction[1] : `${speakWhole(whole)} and ${fraction[1]}`;
  const digits = part.toFixed(4).slice(2).replace(/0+$/, '');
  return `${speakWhole(whole)} point ${[...digits].map((digit) => DIGIT_WORDS[Number(digit)]).join(' ')}`;
}

/** Digit by digit, joined so that it is heard as one: "one-five", "one-oh-five", "six-two point five". */
export function speakDigits(value: number): string {
  const sign = value < 0 ? 'minus ' : '';
  const [whole = '', decimals] = String(Math.round(Math.abs(value) * 10_000) / 10_000).split('.');
  const spell = (digits: string) => [...digits].map((digit) => DIGIT_WORDS[Number(digit)] ?? digit).join('-');
  return `${sign}${spell(whole)}${decimals === undefined ? '' : ` point ${spell(decimals)}`}`;
}

/**
 * The value that sounds alike but for its ending: 15 and 50, 113 and 130. Null for a number without such a twin.
 */
export function teenTyTwin(value: number): number | null {
  if (!Number.isInteger(value)) return null;
  const sign = value < 0 ? -1 : 1;
  const size = Math.abs(value);
  const head = Math.floor(size / 100) * 100;
  const last = size % 100;
  if (last >= 13 && last <= 19) return sign * (head + (last - 10) * 10);
  if (last >= 30 && last % 10 === 0) return sign * (head + last / 10 + 10);
  return null;
}
