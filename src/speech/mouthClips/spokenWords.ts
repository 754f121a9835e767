/**
 * Any text as the words that are said for it: numbers, unit symbols and abbreviations in full, pauses where the stops are.
 * Used at build time for what is to be recorded and at run time for what is to be said, so that the two agree.
 */
import { UNITS } from '../../domain/quantity/units.ts';

/** A word in lower case; a letter of the alphabet said by its name is one capital. */
export type Spoken = { readonly word: string } | { readonly pause: 'short' | 'long' };

export interface SpokenSentence {
  readonly items: readonly Spoken[];
  readonly ending: '.' | '?' | '!';
}

const ONES = (
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen ' +
  'eighteen nineteen'
).split(' ');
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const SCALES: readonly [size: number, name: string][] = [
  [1_000_000, 'million'],
  [1000, 'thousand'],
];

/** Whole numbers up to 999 999 999 in words; longer ones digit by digit, as nobody can follow them otherwise. */
export function numberWords(digits: string): string[] {
  if (digits.length > 9 || (digits.length > 1 && digits.startsWith('0'))) return [...digits].map(digitWord);
  let rest = Number(digits);
  if (rest === 0) return ['zero'];
  const words: string[] = [];
  for (const [size, name] of SCALES) {
    if (rest < size) continue;
    words.push(...belowThousand(Math.floor(rest / size)), name);
    rest %= size;
  }
  return [...words, ...belowThousand(rest)];
}

function belowThousand(value: number): string[] {
  const words: string[] = [];
  const hundreds = Math.floor(value / 100);
  const rest = value % 100;
  if (hundreds > 0) words.push(digitWord(String(hundreds)), 'hundred');
  if (rest > 0 && rest < 20) words.push(ONES[rest] ?? '');
  else if (rest >= 20) {
    words.push(TENS[Math.floor(rest / 10)] ?? '');
    if (rest % 10 > 0) words.push(ONES[rest % 10] ?? '');
  }
  return words;
}

const digitWord = (digit: string): string => ONES[Number(digit)] ?? '';

/** 1900 to 2099 as a year is said: "twenty nineteen", "two thousand five". */
function yearWords(digits: string): string[] {
  const century = digits.slice(0, 2);
  const rest = digits.slice(2);
  if (century === '20' && rest.startsWith('0')) return numberWords(digits);
  if (rest === '00') return [...belowThousand(Number(century)), 'hundred'];
  const tail = rest.startsWith('0') ? ['oh', digitWord(rest.slice(1))] : belowThousand(Number(rest));
  return [...belowThousand(Number(century)), ...tail];
}

const FRACTIONS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  '2': ['half', 'halves'],
  '3': ['third', 'thirds'],
  '4': ['quarter', 'quarters'],
  '8': ['eighth', 'eighths'],
  '16': ['sixteenth', 'sixteenths'],
};

/** Written after a number (or alone) and said in full. Singular after a one. */
const SYMBOLS: ReadonlyMap<string, readonly [singular: string, plural: string]> = new Map(
  Object.values(UNITS)
    .filter(({ symbol }) => symbol.length > 1 || symbol === '%')
    .map(({ symbol, spoken }) => [symbol.toLowerCase(), spoken]),
);

/** Unit symbols of one letter, which are units only right after a number. */
const SHORT_SYMBOLS: ReadonlyMap<string, readonly [singular: string, plural: string]> = new Map(
  Object.values(UNITS)
    .filter(({ symbol }) => /^[A-Za-z]$/.test(symbol))
    .map(({ symbol, spoken }) => [symbol, spoken]),
);

/** Abbreviations that are said otherwise than they are written. */
const SAID_AS: Readonly<Record<string, string>> = {
  ok: 'okay',
  mr: 'mister',
  no: 'no',
  vs: 'versus',
  'e.g.': 'for example',
  'i.e.': 'that is',
  etc: 'and so on',
  metre: 'meter',
  metres: 'meters',
  millimetre: 'millimeter',
  millimetres: 'millimeters',
  centimetre: 'centimeter',
  centimetres: 'centimeters',
  kilometre: 'kilometer',
  kilometres: 'kilometers',
  litre: 'liter',
  litres: 'liters',
  '&': 'and',
  '+': 'plus',
  '=': 'equals',
  '×': 'times',
  '#': 'number',
  '@': 'at',
  $: 'dollars',
  '§': 'section',
  '½': 'and a half',
  '¼': 'and a quarter',
  '¾': 'and three quarters',
  '°': 'degrees',
  '±': 'plus or minus',
  '≥': 'at least',
  '≤': 'at most',
  '>': 'more than',
  '<': 'less than',
  '→': 'to',
};

const TOKEN =
  /\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+|\d+\/\d+|\d+|e\.g\.|i\.e\.|\/32 in|lb-ft|lb-in|n·m|km\/h|m\/s|btu\/h|°[cf]?|[\p{L}\p{M}]+(?:['’][\p{L}\p{M}]+)*|[.?!]+(?=\s|$)|[,;:()"“”—–]|[-−](?=\d)|[%&+=×#@$§½¼¾±≥≤><→/]/giu;

/** The sentences of a text. A text without a single word gives none. */
export function spokenSentences(text: string): readonly SpokenSentence[] {
  const sentences: SpokenSentence[] = [];
  let items: Spoken[] = [];
  const end = (ending: SpokenSentence['ending']): void => {
    while (isPause(items[items.length - 1])) items.pop();
    if (items.some((item) => 'word' in item)) sentences.push({ items, ending });
    items = [];
  };
  const say = (words: readonly string[]): void => {
    for (const word of words) if (word !== '') items.push({ word });
  };
  const tokens = [...text.normalize('NFC').matchAll(TOKEN)];
  tokens.forEach((match, index) => {
    const token = match[0];
    const before = tokens[index - 1]?.[0] ?? '';
    if (/^[.?!]+$/.test(token)) end(token.includes('?') ? '?' : token.includes('!') ? '!' : '.');
    else if (/^[,;:()"“”—–]$/.test(token)) {
      const last = items[items.length - 1];
      if (last !== undefined && !isPause(last) && !/["“”(]/.test(token))
        items.push({ pause: /[—–:;]/.test(token) ? 'long' : 'short' });
    } else if (token === '-' || token === '−') {
      if (/[\d\p{L}]/u.test(text.charAt(match.index - 1))) return;
      say(['minus']);
    } else if (token === '/') {
      if (/\d/.test(before)) say(['over']);
    } else if (/^\d/.test(token)) say(amountWords(token, tokens[index + 1]?.[0] ?? ''));
    else if (/^in$/i.test(token) && /^\d/.test(before)) say(inchWords(before, tokens[index + 1]?.[0] ?? '.'));
    else say(wordsOf(token, before, text.charAt(match.index - 1)));
  });
  end('.');
  return sentences;
}

const isPause = (item: Spoken | undefined): boolean => item !== undefined && 'pause' in item;

function amountWords(token: string, after: string): string[] {
  const plain = token.replaceAll(',', '');
  if (plain.includes('/')) {
    const [over = '', under = ''] = plain.split('/');
    const names = FRACTIONS[under] ?? (under === '32' ? (['thirty-second', 'thirty-seconds'] as const) : undefined);
    if (names === undefined) return [...numberWords(over), 'over', ...numberWords(under)];
    return [...numberWords(over), ...(over === '1' ? names[0] : names[1]).split('-')];
  }
  const [whole = '', fraction] = plain.split('.');
  if (fraction !== undefined) return [...numberWords(whole), 'point', ...[...fraction].map(digitWord)];
  const isYear = /^(19|20)\d\d$/.test(token) && !SYMBOLS.has(after.toLowerCase()) && !SHORT_SYMBOLS.has(after);
  return isYear ? yearWords(token) : numberWords(plain);
}

/** "in" after a number is inches where the phrase ends with it, and the plain word otherwise ("sixty in the left one"). */
function inchWords(before: string, after: string): string[] {
  if (before.includes('/')) return ['of', 'an', 'inch'];
  if (!/^[.?!,;:)]/.test(after)) return ['in'];
  return [before === '1' ? 'inch' : 'inches'];
}

function wordsOf(token: string, before: string, joinedTo: string): string[] {
  const plain = token.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('’', "'");
  const lower = plain.toLowerCase();
  const afterNumber = /^\d/.test(before);
  const unit = SYMBOLS.get(lower) ?? (afterNumber ? SHORT_SYMBOLS.get(plain) : undefined);
  if (unit !== undefined && (afterNumber || /[^a-z]/.test(lower) || ['psi', 'kpa', 'ppm', 'mph', 'btu'].includes(lower))) {
    if (lower === 'btu') return ['B', 'T', 'U'];
    if (lower === 'btu/h') return ['B', 'T', 'U', 'an', 'hour'];
    return (before === '1' ? unit[0] : unit[1])
      .toLowerCase()
      .split(/[\s-]/)
      .map((word) => SAID_AS[word] ?? word);
  }
  const said = SAID_AS[lower];
  if (said !== undefined) return said.split(' ');
  // "CO", "VIN", "R" in "R15": by the letter. A word in capitals that is longer is a word in capitals.
  const capitals = /^[A-Z]+$/.test(plain) && plain !== 'A' && plain !== 'I';
  if (capitals && plain.length <= 4 && plain.length !== 1) return [...plain];
  if (/^[A-Za-z]$/.test(plain) && (capitals || /\d/.test(joinedTo)) && !(lower === 'a' && joinedTo === ''))
    return [plain.toUpperCase()];
  return [lower];
}

/** A word that has no recording, by the letter. Empty for a script that has no letters here. */
export function spelled(word: string): readonly string[] {
  const letters = [...word.toUpperCase()].filter((letter) => letter !== "'");
  return letters.every((letter) => /^[A-Z]$/.test(letter)) ? letters : [];
}
