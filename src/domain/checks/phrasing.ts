/** Words for places and numbers within the spoken lines. */
import type { CheckScope } from './check.ts';
import type { Position } from './expects.ts';

/** "left front", as it is spoken. */
export function spokenPosition(position: Position): string {
  return position.replace('-', ' ');
}

/** The place asked about: "left front"; empty for a check that is there once. */
export function place({ position }: Pick<CheckScope, 'position'>): string {
  return position === null ? '' : spokenPosition(position);
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `Left front tire`, to open a line with. */
export function at(scope: Pick<CheckScope, 'position'>, noun: string): string {
  return capital(`${place(scope)} ${noun}`.trim());
}

const ONES = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

/**
 * A whole number from 0 to 999 in words, as it is said in the trade ("one hundred ten").
 * @throws RangeError outside that range, or for a fraction.
 */
export function inWords(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value > 999) throw new RangeError('inWords requires a whole number from 0 to 999');
  const hundreds = Math.floor(value / 100);
  const rest = value % 100;
  const small = rest < 20 ? ONES[rest] : [TENS[Math.floor(rest / 10)], rest % 10 === 0 ? '' : `-${ONES[rest % 10]}`].join('');
  if (hundreds === 0) return String(small);
  return rest === 0 ? `${ONES[hundreds]} hundred` : `${ONES[hundreds]} hundred ${small}`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth'] as const;

/** "the second cylinder" of several, "the cylinder" of one. */
export function whichCylinder({ unit, index }: Pick<CheckScope, 'unit' | 'index'>): string {
  const ordinal = ORDINALS[index];
  return unit.cylinders.length > 1 && ordinal ? `the ${ordinal} cylinder` : 'the cylinder';
}
