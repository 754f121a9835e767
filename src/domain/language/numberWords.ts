/** The words that numbers are made of, in American usage, and words that recognisers write in their place. */

export const DIGIT_WORDS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
export const TEEN_WORDS = [
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
/** Index 2 is twenty. */
export const TENS_WORDS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

export type AtomKind = 'digit' | 'teen' | 'tens' | 'hundred' | 'thousand' | 'written';

export interface Atom {
  readonly kind: AtomKind;
  readonly n: number;
  /** As digits: "05" keeps its nought. */
  readonly digits: string;
  /** A word that only sounds like the number. */
  readonly homophone: boolean;
}

const words = new Map<string, Atom>();
const add = (word: string, kind: AtomKind, n: number) => words.set(word, { kind, n, digits: String(n), homophone: false });
for (const [n, word] of DIGIT_WORDS.entries()) add(word, 'digit', n);
for (const [n, word] of TEEN_WORDS.entries()) add(word, 'teen', n + 10);
for (const [n, word] of TENS_WORDS.entries()) if (word !== '') add(word, 'tens', n * 10);
for (const word of ['oh', 'o', 'nought', 'naught', 'aught']) add(word, 'digit', 0);
add('hundred', 'hundred', 100);
add('hundreds', 'hundred', 100);
add('thousand', 'thousand', 1000);
add('dozen', 'teen', 12);

/** A word that is a number, whatever stands around it. */
export function numberAtom(word: string): Atom | undefined {
  return words.get(word);
}

const HOMOPHONES: Readonly<Record<string, number>> = {
  for: 4,
  fore: 4,
  to: 2,
  too: 2,
  tu: 2,
  ate: 8,
  won: 1,
  wan: 1,
  tree: 3,
  sicks: 6,
  nein: 9,
  fi: 5,
};

/** A word that sounds like a digit; only where a number is possible. */
export function homophoneAtom(word: string): Atom | undefined {
  if (!Object.hasOwn(HOMOPHONES, word)) return undefined;
  const n = HOMOPHONES[word] ?? 0;
  return { kind: 'digit', n, digits: String(n), homophone: true };
}

/** Denominators as they are spoken. */
const DENOMINATORS: Readonly<Record<string, number>> = {
  half: 2,
  halves: 2,
  third: 3,
  thirds: 3,
  quarter: 4,
  quarters: 4,
  fourth: 4,
  fourths: 4,
  eighth: 8,
  eighths: 8,
  tenth: 10,
  tenths: 10,
  sixteenth: 16,
  sixteenths: 16,
  '32nds': 32,
  '32nd': 32,
};

export function denominator(word: string): number | undefined {
  return Object.hasOwn(DENOMINATORS, word) ? DENOMINATORS[word] : undefined;
}
