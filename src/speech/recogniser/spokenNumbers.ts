/** How people say numbers: every usual form of one value, as words. American usage. */
const ONES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const TEENS = [
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

export interface SpokenForm {
  readonly words: readonly string[];
  /** Natural log; 0 for the most usual form. */
  readonly weight: number;
}

/** Log weights of the less usual ways; guesses kept small, so that the sound decides. */
const RARE = { digits: -0.4, and: -0.1, short: 0, a: -0.2, bare: -0.4, hundreds: -0.2, oh: -0.1, minus: 0 } as const;

const form = (words: readonly string[], weight = 0): SpokenForm => ({ words, weight });

const join = (before: readonly SpokenForm[], after: readonly SpokenForm[]): SpokenForm[] =>
  before.flatMap((a) => after.map((b) => form([...a.words, ...b.words], a.weight + b.weight)));

/** 0 to 99 as a plain cardinal: "sixty two". */
export function underHundred(value: number): readonly string[] {
  if (value < 10) return [ONES[value] ?? ''];
  if (value < 20) return [TEENS[value - 10] ?? ''];
  const ones = value % 10;
  const tens = TENS[Math.floor(value / 10)] ?? '';
  return ones === 0 ? [tens] : [tens, ONES[ones] ?? ''];
}

/** Digit by digit, nought as "oh" or "zero": "one oh five". */
export function digitForms(digits: string): SpokenForm[] {
  return [...digits].reduce<SpokenForm[]>(
    (forms, digit) => join(forms, digit === '0' ? [form(['zero']), form(['oh'], RARE.oh)] : [form([ONES[Number(digit)] ?? ''])]),
    [form([])],
  );
}

const withAnd = (rest: readonly SpokenForm[]): SpokenForm[] => [
  ...rest,
  ...rest.map(({ words, weight }) => form(['and', ...words], weight + RARE.and)),
];

/** Two digits after hundreds said short: "oh five", "twenty five". */
const pairForms = (value: number): SpokenForm[] =>
  value < 10 ? [form(['oh', ONES[value] ?? '']), form(['zero', ONES[value] ?? ''], RARE.digits)] : [form(underHundred(value))];

/**
 * A whole number.
 * @param value 0 to 99 999
 * @returns "one hundred and five", "a hundred five", "one oh five", "one zero five"; no form twice
 */
export function wholeForms(value: number): SpokenForm[] {
  if (!Number.isInteger(value) || value < 0 || value > 99_999)
    throw new RangeError('wholeForms requires a whole number from 0 to 99999');
  if (value < 10) return [form(underHundred(value))];
  const forms: SpokenForm[] = [];
  if (value < 100) forms.push(form(underHundred(value)));
  else if (value < 1000) {
    const hundreds = Math.floor(value / 100);
    const rest = value % 100;
    const heads = [
      form([ONES[hundreds] ?? '', 'hundred']),
      ...(hundreds === 1 ? [form(['a', 'hundred'], RARE.a), form(['hundred'], RARE.bare)] : []),
    ];
    if (rest === 0) forms.push(...heads);
    else {
      forms.push(...join(heads, withAnd([form(underHundred(rest))])));
      forms.push(...join([form([ONES[hundreds] ?? ''])], pairForms(rest)));
    }
  } else {
    const thousands = Math.floor(value / 1000);
    const rest = value % 1000;
    const heads = [form([...underHundred(thousands), 'thousand']), ...(thousands === 1 ? [form(['a', 'thousand'], RARE.a)] : [])];
    if (rest === 0) forms.push(...heads);
    else if (rest < 100) forms.push(...join(heads, withAnd([form(underHundred(rest))])));
    else {
      const afterHundreds = rest % 100 === 0 ? [form([])] : withAnd([form(underHundred(rest % 100))]);
      forms.push(...join(join(heads, [form([ONES[Math.floor(rest / 100)] ?? '', 'hundred'])]), afterHundreds));
    }
    const hundreds = Math.floor(value / 100);
    if (hundreds < 100 && hundreds % 10 !== 0) {
      const tail = value % 100;
      forms.push(
        ...join(
          [form([...underHundred(hundreds), 'hundred'], RARE.hundreds)],
          tail === 0 ? [form([])] : withAnd([form(underHundred(tail))]),
        ),
      );
      if (tail !== 0) forms.push(...join([form(underHundred(hundreds))], pairForms(tail)));
    } else if (hundreds < 100 && value % 100 >= 10) forms.push(form([...underHundred(hundreds), ...underHundred(value % 100)]));
  }
  forms.push(...digitForms(String(value)).map(({ words, weight }) => form(words, weight + RARE.digits)));
  return distinct(forms);
}

/** The best weight of each form. */
export function distinct(forms: readonly SpokenForm[]): SpokenForm[] {
  const best = new Map<string, SpokenForm>();
  for (const one of forms) {
    const key = one.words.join(' ');
    const known = best.get(key);
    if (!known || known.weight < one.weight) best.set(key, one);
  }
  return [...best.values()];
}

/**
 * A whole number and decimals.
 * @param decimals digits after the point, "6" or "05"
 * @param bare whether the point may be left out: "twelve six"
 */
export function decimalForms(whole: number, decimals: string, bare: boolean): SpokenForm[] {
  const digits = digitForms(decimals);
  const tails = decimals.length === 2 && Number(decimals) >= 10 ? [...digits, form(underHundred(Number(decimals)))] : digits;
  const heads =
    whole === 0
      ? [form(['zero']), form(['oh'], RARE.oh), form([])]
      : wholeForms(whole).filter(({ weight }) => weight > -0.3 || whole >= 10);
  const forms = join(
    heads,
    tails.map(({ words, weight }) => form(['point', ...words], weight)),
  );
  // "Twenty six" is 26 and "one hundred six" 106, never 20.6 or 100.6.
  const isPlain = whole >= 1 && whole < 100 && !(whole >= 20 && whole % 10 === 0);
  if (bare && isPlain)
    forms.push(
      ...join(
        [form(underHundred(whole))],
        tails.filter(({ words }) => words[0] !== 'zero'),
      ),
    );
  return distinct(forms);
}

/** A whole number and a simple fraction. @param quarters 1, 2 or 3 */
export function quarterForms(whole: number, quarters: 1 | 2 | 3): SpokenForm[] {
  const fractions = {
    1: [['a', 'quarter']],
    2: [
      ['a', 'half'],
      ['one', 'half'],
    ],
    3: [
      ['three', 'quarters'],
      ['three', 'quarter'],
    ],
  } as const;
  const parts = fractions[quarters].map((words) => form(words));
  // "One half" alone is taken for a one and a half gone wrong.
  if (whole === 0) {
    const alone = parts.filter(({ words }) => words[0] !== 'one');
    return [...alone, ...(quarters === 3 ? [] : [form([quarters === 2 ? 'half' : 'quarter'], RARE.bare)])];
  }
  const heads = wholeForms(whole);
  return distinct([
    ...join(
      heads,
      parts.map(({ words, weight }) => form(['and', ...words], weight)),
    ),
  ]);
}

/** A year as people say it: "twenty nineteen", "two thousand and nine", "nineteen ninety eight", "oh nine". */
export function yearForms(year: number): SpokenForm[] {
  const century = Math.floor(year / 100);
  const rest = year % 100;
  const forms: SpokenForm[] = [];
  if (rest === 0)
    forms.push(
      year % 1000 === 0 ? form([...underHundred(year / 1000), 'thousand']) : form([...underHundred(century), 'hundred']),
    );
  else {
    forms.push(...join([form(underHundred(century))], pairForms(rest)));
    if (century % 10 === 0)
      forms.push(...join([form([...underHundred(century / 10), 'thousand'])], withAnd([form(underHundred(rest))])));
  }
  forms.push(...digitForms(String(year)).map(({ words, weight }) => form(words, weight + RARE.digits)));
  forms.push(...pairForms(rest).map(({ words, weight }) => form(words, weight + RARE.bare)));
  return distinct(forms);
}
