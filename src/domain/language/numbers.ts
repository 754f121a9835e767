/**
 * Numbers as people say and recognisers write them: "a hundred and five", "one oh five", "six two", "sixty-two and a
 * half", "point five", "five thirty-seconds", "twelve six", "62 1/2". A stretch of words may be a number in more than one
 * way; all of them are returned and the quantity's own range and steps decide, or nobody does.
 */
import { type Atom, denominator, homophoneAtom, numberAtom } from './numberWords.ts';
import type { Word } from './tokens.ts';

/** How the number was put. `pairs`: "one ten", "twelve fifty"; `short-decimal`: "twelve six". */
export type SpokenForm = 'cardinal' | 'digits' | 'pairs' | 'short-decimal' | 'decimal' | 'fraction';

export interface SpokenNumber {
  readonly value: number;
  readonly form: SpokenForm;
  /** Index of the word behind it. */
  readonly end: number;
  readonly homophone: boolean;
  /** The fraction said, when one was: 5/32 is `{ num: 5, den: 32, whole: null }`. */
  readonly fraction: { readonly whole: number | null; readonly num: number; readonly den: number } | null;
}

export interface NumberOptions {
  /** "twelve six" may be 12.6. */
  readonly shortDecimal: boolean;
  /** "five thirty-two" may be 5/32. */
  readonly thirtySeconds: boolean;
  /** "to", "for", "ate" may stand for digits where nothing else makes sense. */
  readonly homophones: 'inside' | 'anywhere';
}

interface RunItem {
  readonly atom: Atom | 'and';
  readonly at: number;
}

const SECONDS = new Set(['second', 'seconds', 'secs', 'sec', 'twos']);
const isPoint = (word: string | undefined) => word === 'point' || word === 'dot' || word === 'decimal';

function atomOf(word: Word | undefined): Atom | undefined {
  if (!word) return undefined;
  if (word.kind === 'word') return numberAtom(word.word);
  if (word.kind !== 'digits' || word.word.includes('.')) return undefined;
  return { kind: 'written', n: Number(word.word), digits: word.word, homophone: false };
}

/** "thirty seconds" is a denominator, not thirty of something. */
const isThirtySeconds = (words: readonly Word[], at: number): boolean =>
  (words[at]?.word === 'thirty' || words[at]?.word === '30') && SECONDS.has(words[at + 1]?.word ?? '');

/** Whether the word at `at` can stand for a digit, seen from the run before it. */
function homophoneInside(words: readonly Word[], at: number, run: readonly RunItem[], options: NumberOptions): Atom | undefined {
  const word = words[at];
  if (word?.kind !== 'word') return undefined;
  const atom = homophoneAtom(word.word);
  if (!atom) return undefined;
  const next = words[at + 1];
  const nextAtom = atomOf(next);
  const last = run.at(-1)?.atom;
  if (options.homophones === 'anywhere' && isThirtySeconds(words, at + 1)) return atom;
  if (options.homophones === 'anywhere') return nextAtom && !isNought(nextAtom) && nextAtom.kind !== 'hundred' ? undefined : atom;
  if (last === undefined) return nextAtom && (isNought(nextAtom) || nextAtom.kind === 'hundred') ? atom : undefined;
  if (last === 'and') return nextAtom ? undefined : atom;
  const endsHere = next === undefined || next.kind === 'mark' || isPoint(next.word) || endsNumber(next.word);
  if (!endsHere) return undefined;
  if (last.kind === 'tens' || last.kind === 'hundred' || isNought(last)) return atom;
  return options.shortDecimal && (last.kind === 'teen' || last.kind === 'digit') ? atom : undefined;
}

const UNIT_STARTS = new Set([
  'psi',
  'pounds',
  'foot',
  'feet',
  'degrees',
  'volts',
  'volt',
  'inches',
  'lbs',
  'moved',
  'below',
  'and',
]);
const endsNumber = (word: string) => UNIT_STARTS.has(word);
const isNought = (atom: Atom) => atom.kind === 'digit' && atom.n === 0;

/** The longest stretch of number words from `at`. */
function runAt(words: readonly Word[], at: number, options: NumberOptions): RunItem[] {
  const run: RunItem[] = [];
  let index = at;
  // "a hundred", "a thousand", "a dozen".
  if (words[at]?.word === 'a' && ['hundred', 'thousand', 'dozen'].includes(words[at + 1]?.word ?? '')) index += 1;
  for (; index < words.length && run.length < 12; index += 1) {
    if (isThirtySeconds(words, index)) break;
    const word = words[index];
    const atom = atomOf(word) ?? homophoneInside(words, index, run, options);
    if (atom) {
      run.push({ atom, at: index });
      continue;
    }
    const last = run.at(-1)?.atom;
    const joins = last !== undefined && last !== 'and' && (last.kind === 'hundred' || last.kind === 'thousand' || isRound(last));
    if (word?.word === 'and' && joins && !isThirtySeconds(words, index + 1)) {
      const next = atomOf(words[index + 1]) ?? homophoneInside(words, index + 1, [...run, { atom: 'and', at: index }], options);
      if (next && next.n < 100) {
        run.push({ atom: 'and', at: index });
        continue;
      }
    }
    break;
  }
  return run;
}

const isRound = (atom: Atom) => atom.kind === 'written' && atom.n >= 100 && atom.n % 100 === 0;

interface Group {
  readonly value: number;
  readonly next: number;
}

/** 0 to 99 from `at`: "sixty two", "twelve", "five", "62". */
function below100(atoms: readonly (Atom | 'and')[], at: number): Group | null {
  const atom = atoms[at];
  if (atom === undefined || atom === 'and') return null;
  if (atom.kind === 'tens' || (atom.kind === 'written' && atom.n >= 20 && atom.n < 100 && atom.n % 10 === 0)) {
    const next = atoms[at + 1];
    const isUnits =
      next !== undefined && next !== 'and' && next.n >= 1 && next.n <= 9 && (next.kind === 'digit' || next.digits.length === 1);
    // "60 2" is sixty-two, but "60 02" is not.
    if (isUnits && (next.kind === 'digit' || next.kind === 'written')) return { value: atom.n + next.n, next: at + 2 };
    return { value: atom.n, next: at + 1 };
  }
  if (atom.kind === 'digit' || atom.kind === 'teen') return { value: atom.n, next: at + 1 };
  if (atom.kind === 'written' && atom.n < 100 && !(atom.digits.length > 1 && atom.digits.startsWith('0')))
    return { value: atom.n, next: at + 1 };
  return null;
}

const skipAnd = (atoms: readonly (Atom | 'and')[], at: number) => (atoms[at] === 'and' ? at + 1 : at);

/** 0 to 999 from `at`. */
function below1000(atoms: readonly (Atom | 'and')[], at: number): Group | null {
  const first = atoms[at];
  if (first === undefined || first === 'and') return null;
  let head: Group | null = null;
  if (first.kind === 'hundred') head = { value: 100, next: at + 1 };
  else if (first.kind === 'written' && first.n >= 100) {
    if (first.digits.startsWith('0')) return null;
    if (!isRound(first)) return { value: first.n, next: at + 1 };
    head = { value: first.n, next: at + 1 };
  } else {
    const small = below100(atoms, at);
    if (!small) return null;
    const next = atoms[small.next];
    if (next === undefined || next === 'and' || next.kind !== 'hundred' || small.value === 0) return small;
    head = { value: small.value * 100, next: small.next + 1 };
  }
  const rest = below100(atoms, skipAnd(atoms, head.next));
  return rest && rest.value > 0 ? { value: head.value + rest.value, next: rest.next } : head;
}

/** The whole run as one cardinal, or null. */
function cardinal(atoms: readonly (Atom | 'and')[]): number | null {
  const first = atoms[0];
  if (first === undefined || first === 'and') return null;
  let head: Group | null = first.kind === 'thousand' ? { value: 1, next: 0 } : below1000(atoms, 0);
  if (!head) return null;
  const next = atoms[head.next];
  if (next !== undefined && next !== 'and' && next.kind === 'thousand' && head.value > 0) {
    const thousands = { value: head.value * 1000, next: head.next + 1 };
    const rest = below1000(atoms, skipAnd(atoms, thousands.next));
    head = rest && rest.value > 0 ? { value: thousands.value + rest.value, next: rest.next } : thousands;
  }
  return head.next === atoms.length ? head.value : null;
}

/** The whole run digit by digit: "one oh five", "6 2"; at least two. */
function digitString(atoms: readonly (Atom | 'and')[]): string | null {
  if (atoms.length < 2) return null;
  let digits = '';
  for (const atom of atoms) {
    if (atom === 'and') return null;
    const isDigit =
      atom.kind === 'digit' || (atom.kind === 'written' && (atom.digits.length === 1 || atom.digits.startsWith('0')));
    if (!isDigit) return null;
    digits += atom.digits;
  }
  return digits.length <= 6 ? digits : null;
}

/** What may follow a first group said short: "oh five", "ten", "twenty five", "six", "two five"; as digits. */
function tailDigits(atoms: readonly (Atom | 'and')[]): string | null {
  const [first, second] = atoms;
  if (first === undefined || first === 'and' || second === 'and') return null;
  if (first.kind === 'written' && first.digits.length <= 2 && second === undefined) return first.digits;
  if (isNought(first) && second && second.n >= 1 && second.n <= 9 && atoms.length === 2) return `0${second.n}`;
  const group = below100(atoms, 0);
  if (group && group.next === atoms.length) return String(group.value);
  return digitString(atoms);
}

/** "one ten", "one oh five", "twelve fifty". */
function pairs(atoms: readonly (Atom | 'and')[]): number | null {
  const head = below100(atoms, 0);
  if (!head || head.value === 0 || head.next === atoms.length) return null;
  const tail = tailDigits(atoms.slice(head.next));
  return tail !== null && tail.length === 2 ? head.value * 100 + Number(tail) : null;
}

/** "twelve six", "twelve oh six", "twelve sixty five". "Twenty six" is 26 and never 20.6. */
function shortDecimal(atoms: readonly (Atom | 'and')[]): number | null {
  const head = below100(atoms, 0);
  if (!head || head.next === atoms.length) return null;
  const first = atoms[0];
  const next = atoms[head.next];
  const isTens = first !== undefined && first !== 'and' && head.value >= 20 && head.value % 10 === 0;
  // "Twenty six" never comes here; "twenty" and "sixteen" is no decimal either.
  if (isTens && next !== undefined && next !== 'and' && !isNought(next)) return null;
  const tail = tailDigits(atoms.slice(head.next));
  return tail !== null && tail.length <= 2 ? Number(`${head.value}.${tail}`) : null;
}

interface Whole {
  readonly value: number;
  readonly form: SpokenForm;
}

function wholes(atoms: readonly (Atom | 'and')[], options: NumberOptions): Whole[] {
  const found: Whole[] = [];
  const add = (value: number | null, form: SpokenForm) => {
    if (value !== null && !found.some((one) => one.value === value)) found.push({ value, form });
  };
  add(cardinal(atoms), 'cardinal');
  const digits = digitString(atoms);
  add(digits === null ? null : Number(digits), 'digits');
  add(pairs(atoms), 'pairs');
  if (options.shortDecimal) add(shortDecimal(atoms), 'short-decimal');
  return found;
}

/** Digits behind a point. */
function decimalsAt(words: readonly Word[], at: number, options: NumberOptions): { digits: string; end: number } | null {
  const written = words[at];
  if (written?.kind === 'digits' && !written.word.includes('.')) {
    let digits = written.word;
    let end = at + 1;
    // "point 2 5"
    while (digits.length < 4 && words[end]?.kind === 'digits' && words[end]?.word.length === 1 && written.word.length === 1) {
      digits += words[end]?.word ?? '';
      end += 1;
    }
    return { digits, end };
  }
  const run = runAt(words, at, { ...options, homophones: options.homophones });
  const atoms = run.map(({ atom }) => atom);
  const single = atoms.findIndex((atom) => atom === 'and' || atom.kind !== 'digit');
  const count = single === -1 ? atoms.length : single;
  if (count > 0) {
    const digits = atoms.slice(0, count).map((atom) => (atom === 'and' ? '' : atom.digits));
    return { digits: digits.join(''), end: (run[count - 1]?.at ?? at) + 1 };
  }
  const group = below100(atoms, 0);
  return group && group.value >= 10 ? { digits: String(group.value), end: (run[group.next - 1]?.at ?? at) + 1 } : null;
}

/** A denominator from `at`: "half", "quarters", "thirty seconds", "32nds", "over thirty two". */
function denominatorAt(
  words: readonly Word[],
  at: number,
  options: NumberOptions,
): { den: number; end: number; isShort: boolean } | null {
  const word = words[at];
  if (!word || word.kind === 'mark') return null;
  const den = denominator(word.word);
  if (den !== undefined) {
    // "quarter inch" and "quarter of an inch" end here as well.
    return { den, end: at + 1, isShort: false };
  }
  if (isThirtySeconds(words, at)) return { den: 32, end: at + 2, isShort: false };
  if (word.word === 'thirtysecond' || word.word === 'thirtyseconds') return { den: 32, end: at + 1, isShort: false };
  const over = word.word === 'over' ? 1 : word.word === 'out' && words[at + 1]?.word === 'of' ? 2 : 0;
  if (over > 0 || options.thirtySeconds) {
    const from = at + over;
    if (words[from]?.word === '32') return { den: 32, end: from + 1, isShort: over === 0 };
    if (words[from]?.word === 'thirty' && (words[from + 1]?.word === 'two' || words[from + 1]?.word === '2'))
      return { den: 32, end: from + 2, isShort: over === 0 };
    if (over > 0 && words[from]?.word === '16') return { den: 16, end: from + 1, isShort: false };
  }
  return null;
}

const parseFraction = (written: string): { num: number; den: number } | null => {
  const [num, den] = written.split('/').map(Number);
  return num !== undefined && den !== undefined && den > 0 && Number.isFinite(num) ? { num, den } : null;
};

/** A fraction by itself from `at`: "a half", "three quarters", "3/4". Without a whole number before it. */
function bareFractionAt(
  words: readonly Word[],
  at: number,
  options: NumberOptions,
): { num: number; den: number; end: number } | null {
  const word = words[at];
  if (!word) return null;
  if (word.kind === 'fraction') {
    const parsed = parseFraction(word.word);
    return parsed ? { ...parsed, end: at + 1 } : null;
  }
  if (word.word === 'a' || word.word === 'an') {
    const den = denominatorAt(words, at + 1, { ...options, thirtySeconds: false });
    return den ? { num: 1, den: den.den, end: den.end } : null;
  }
  if (word.word === 'half' || word.word === 'quarter') return { num: 1, den: denominator(word.word) ?? 2, end: at + 1 };
  const run = runAt(words, at, options).filter(({ atom }) => atom !== 'and');
  const [first] = run;
  if (!first || first.atom === 'and') return null;
  const atoms = run.map(({ atom }) => atom);
  // "one two thirty-seconds" is twelve of them, digit by digit.
  const digits = digitString(atoms);
  const behindRun = (run.at(-1)?.at ?? at) + 1;
  if (digits !== null && denominatorAt(words, behindRun, options)?.den === 32)
    return { num: Number(digits), den: 32, end: denominatorAt(words, behindRun, options)?.end ?? behindRun };
  const group = below100(atoms, 0);
  if (!group) return null;
  const den = denominatorAt(words, (run[group.next - 1]?.at ?? at) + 1, options);
  if (!den || (group.value === 0 && den.den !== 32)) return null;
  return { num: group.value, den: den.den, end: den.end };
}

/**
 * Every way in which a number begins at `at`, the longest first.
 * @returns nothing where no number begins
 */
export function numbersAt(words: readonly Word[], at: number, options: NumberOptions): readonly SpokenNumber[] {
  const found: SpokenNumber[] = [];
  const add = (one: SpokenNumber) => {
    if (!found.some((known) => known.value === one.value && known.end === one.end)) found.push(one);
  };
  const first = words[at];
  if (!first || first.kind === 'mark') return [];
  if (first.kind === 'clock') {
    const [hour, minute] = first.word.split(':');
    if (options.shortDecimal && minute !== undefined)
      add({
        value: Number(`${hour}.${minute}`),
        form: 'short-decimal',
        end: at + 1,
        homophone: false,
        fraction: null,
      });
    return found;
  }
  if (isPoint(first.word)) {
    const decimals = decimalsAt(words, at + 1, options);
    if (decimals)
      add({ value: Number(`0.${decimals.digits}`), form: 'decimal', end: decimals.end, homophone: false, fraction: null });
    return found;
  }
  // "62.5", and "62.5 and a half" is nobody's number.
  if (first.kind === 'digits' && first.word.includes('.')) {
    add({ value: Number(first.word), form: 'decimal', end: at + 1, homophone: false, fraction: null });
    return found;
  }
  const bare = bareFractionAt(words, at, options);
  if (bare) {
    const { num, den, end } = bare;
    // "a half thirty-second"
    const more = den === 2 ? denominatorAt(words, end, { ...options, thirtySeconds: false }) : null;
    if (more?.den === 32)
      add({
        value: num / den / 32,
        form: 'fraction',
        end: more.end,
        homophone: false,
        fraction: { whole: null, num: num / den, den: 32 },
      });
    add({ value: num / den, form: 'fraction', end, homophone: false, fraction: { whole: null, num, den } });
  }
  const run = runAt(words, at, options);
  // Every start of the run, longest first: the reader of several values takes what fits.
  for (let count = run.length; count > 0; count -= 1) {
    const items = run.slice(0, count);
    const lastItem = items.at(-1);
    if (!lastItem || lastItem.atom === 'and') continue;
    const atoms = items.map(({ atom }) => atom);
    const homophone = atoms.some((atom) => atom !== 'and' && atom.homophone);
    const end = lastItem.at + 1;
    for (const whole of wholes(atoms, options)) {
      // "twenty-one thirty-seconds" is never twenty and one.
      if (!splitsCardinal(lastItem.atom, run[count]?.atom) && !splitsDigits(words, run, count, options))
        for (const one of continued(words, end, whole, homophone, options)) add(one);
      add({ ...whole, end, homophone, fraction: null });
    }
  }
  return found.sort((a, b) => b.end - a.end);
}

const splitsCardinal = (last: Atom, next: Atom | 'and' | undefined): boolean =>
  last.kind === 'tens' && next !== undefined && next !== 'and' && next.kind === 'digit';

/** "one two thirty-seconds": digits of one number, not one and two of them. */
const splitsDigits = (words: readonly Word[], run: readonly RunItem[], count: number, options: NumberOptions): boolean =>
  count < run.length &&
  digitString(run.map(({ atom }) => atom)) !== null &&
  denominatorAt(words, (run.at(-1)?.at ?? 0) + 1, options)?.den === 32;

/** A whole number with what follows it: a point, a half, three quarters, thirty-seconds. */
function continued(
  words: readonly Word[],
  end: number,
  whole: Whole,
  homophone: boolean,
  options: NumberOptions,
): readonly SpokenNumber[] {
  if (whole.form === 'short-decimal') return [];
  if (isPoint(words[end]?.word)) {
    const decimals = decimalsAt(words, end + 1, options);
    return decimals
      ? [{ value: Number(`${whole.value}.${decimals.digits}`), form: 'decimal', end: decimals.end, homophone, fraction: null }]
      : [];
  }
  const found: SpokenNumber[] = [];
  const hasAnd = words[end]?.word === 'and';
  const isWrittenHyphen = words[end]?.word === '-' && words[end + 1]?.kind === 'fraction';
  const from = end + (hasAnd || isWrittenHyphen ? 1 : 0);
  const fraction = bareFractionAt(words, from, { ...options, thirtySeconds: false });
  // "one half" is a half, never one and a half.
  const isBareWord = !hasAnd && /^(half|quarter)$/.test(words[from]?.word ?? '');
  if (fraction && !isBareWord && fraction.num < fraction.den) {
    const { num, den, end: after } = fraction;
    // "five and a half thirty-seconds"
    const more = denominatorAt(words, after, { ...options, thirtySeconds: false });
    if (more?.den === 32 && den === 2)
      found.push({
        value: (whole.value + 0.5) / 32,
        form: 'fraction',
        end: more.end,
        homophone,
        fraction: { whole: null, num: whole.value + 0.5, den: 32 },
      });
    found.push({
      value: whole.value + num / den,
      form: 'fraction',
      end: after,
      homophone,
      fraction: { whole: whole.value, num, den },
    });
  }
  return found;
}
