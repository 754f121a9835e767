/**
 * The words of one check: its own phrases, then what every check understands. Built once per declaration and kept, since
 * the same declaration comes with every utterance.
 */
import type { ChoiceExpects, StateExpects } from '../checks/expects.ts';
import {
  FAMILIES,
  FAMILY_DEFAULTS,
  FIXED,
  HARM_NOUNS,
  JUDGING_WORDS,
  OK_WORDS,
  PART_WORDS,
  type Polarity,
  PROBLEM_WORDS,
  stem,
} from './conditionWords.ts';
import { numbersAt } from './numbers.ts';
import { PhraseTable } from './phraseMatch.ts';
import { plainWords, tokenize, type Word } from './tokens.ts';

/** One word that counts, with the row of words it came from. */
export interface Term {
  /** Stemmed word, "not", "or", ",", or "#2.3125" for a number. */
  readonly stem: string;
  readonly word: string;
  /** Words from `from` up to but not with `next`. */
  readonly from: number;
  readonly next: number;
}

export interface Sense {
  readonly polarity: Polarity;
  /** Id of the option, for a choice. */
  readonly option: string | null;
  /** From the check's own phrases; else from what every check understands. */
  readonly own: boolean;
  /** The phrase itself denies ("not latched", "no cracks"). */
  readonly denies: boolean;
  readonly phrase: string;
  /** A little word that counts only where nothing else does. */
  readonly weak?: true;
}

interface Entry {
  readonly stems: readonly string[];
  readonly sense: Sense;
}

export interface ConditionLexicon {
  /** The longest phrase at this term. */
  at(terms: readonly Term[], at: number): { readonly sense: Sense; readonly next: number } | null;
  /** The sense of a phrase of the declaration that is all that was said. */
  exactly(words: readonly Word[]): Sense | null;
  /** A phrase all of small words ("all there", "just got here") at this word. */
  silentAt(words: readonly Word[], at: number): { readonly value: Sense; readonly next: number } | null;
  /** Which option, if there is just one of that verdict. */
  readonly optionCount: number;
  readonly verdictOnly: { readonly ok: string | null; readonly problem: string | null };
}

/** Words that carry no condition; significant little words (in, out, on, off, up, down) are not among them. */
const SILENT = new Set(
  'a an the it its is are was were be been being am they them their there this that these those he she i we you me my our your us has have had having got get gets do does did will would shall can could may must to of for at with by as so uh um er ah well yeah just like looks look looking appears feels feel seems say says said see saw also both all each every everything everyone one ones and then here now still please hey thanks sir oh hm right-now than very really quite pretty fully completely totally nice nicely perfectly real super entirely firmly tightly way thing things let too been even whole-way going gone-on'.split(
    ' ',
  ),
);

const NEGATORS = new Set(['not', 'no', 'never', 'without', 'nothing', 'none', 'neither', 'nor', 'nobody', 'nope', 'zero']);

/** Rows of words as terms: numbers by their value, negations alike, silent words gone. */
export function termsOf(words: readonly Word[], keepSilent = false): readonly Term[] {
  const terms: Term[] = [];
  let at = 0;
  while (at < words.length) {
    const word = words[at];
    if (!word) break;
    const isBareOne =
      word.word === 'one' || word.word === 'ones' || word.word === 'oh' || word.word === 'o' || word.word === 'zero';
    const number =
      word.kind !== 'mark' && !isBareOne
        ? numbersAt(words, at, { shortDecimal: false, thirtySeconds: false, homophones: 'inside' }).find((one) => !one.homophone)
        : undefined;
    if (number) {
      terms.push({ stem: `#${Number(number.value.toPrecision(9))}`, word: word.word, from: at, next: number.end });
      at = number.end;
      continue;
    }
    const from = at;
    at += 1;
    if (word.kind === 'mark') terms.push({ stem: ',', word: ',', from, next: at });
    else if ((word.word === 'free' || word.word === 'clear') && words[at]?.word === 'of') {
      // "free of cracks" denies them.
      at += 1;
      terms.push({ stem: 'not', word: 'no', from, next: at });
    } else if (/^(barely|hardly|scarcely)$/.test(word.word) && words[at]?.word === 'any') {
      at += 1;
      terms.push({ stem: 'not', word: 'no', from, next: at });
    } else if (word.word === 'right' && /^(up|down|in|on|off|out|there|where|back)$/.test(words[at]?.word ?? '')) {
      // "came right up"
    } else if (word.word === 'nothing') {
      terms.push({ stem: 'not', word: 'nothing', from, next: at });
    } else if (NEGATORS.has(word.word)) terms.push({ stem: 'not', word: word.word, from, next: at });
    else if (keepSilent || !SILENT.has(word.word)) terms.push({ stem: stem(word.word), word: word.word, from, next: at });
  }
  return terms;
}

/** A phrase of the declaration as terms; one that is all silent words keeps them ("it is there"). */
function stemsOf(phrase: string): readonly string[] {
  const { words } = tokenize(phrase);
  const terms = termsOf(words).filter((term) => term.stem !== ',');
  return (terms.length > 0 ? terms : termsOf(words, true)).map((term) => term.stem);
}

const lexicons = new WeakMap<object, ConditionLexicon>();

/** The words of a declaration. The same object gives the same lexicon. */
export function lexiconFor(expects: StateExpects | ChoiceExpects): ConditionLexicon {
  const known = lexicons.get(expects);
  if (known) return known;
  const made = build(expects);
  lexicons.set(expects, made);
  return made;
}

interface OwnPhrase {
  readonly phrase: string;
  readonly polarity: Polarity;
  readonly option: string | null;
}

function ownPhrases(expects: StateExpects | ChoiceExpects): readonly OwnPhrase[] {
  if (expects.kind === 'state')
    return [
      ...expects.ok.map((phrase) => ({ phrase, polarity: 'ok' as const, option: null })),
      ...expects.problem.map((phrase) => ({ phrase, polarity: 'problem' as const, option: null })),
    ];
  return expects.options.flatMap((option) =>
    [option.label, option.id.replaceAll('-', ' '), ...option.phrases].map((phrase) => ({
      phrase,
      polarity: option.verdict,
      option: option.id,
    })),
  );
}

/** Harm only where it is denied: "no ice", "no play". */
const NEUTRAL_HARM = new Set(
  'sound ice snow water slack tension movement alarm alarms sign signs play break breaks flames noise noises frost moisture'.split(
    ' ',
  ),
);

const HARM_STEMS = new Set([...HARM_NOUNS].map(stem));
const LITTLE = new Set(['in', 'out', 'on', 'off', 'up', 'down']);
const isChoiceOf = (expects: StateExpects | ChoiceExpects): boolean => expects.kind === 'choice';

function build(expects: StateExpects | ChoiceExpects): ConditionLexicon {
  const byFirst = new Map<string, Entry[]>();
  const single = new Map<string, Sense>();
  const add = (stems: readonly string[], sense: Sense) => {
    const [first] = stems;
    if (first === undefined) return;
    const key = stems.join(' ');
    const list = byFirst.get(first) ?? [];
    if (list.some((entry) => entry.stems.join(' ') === key)) return;
    list.push({ stems, sense });
    byFirst.set(first, list);
    if (stems.length === 1) single.set(first, sense);
  };
  const own = ownPhrases(expects);
  const derived: (readonly [string, Polarity])[] = [];
  const opposed: (readonly [string, Polarity])[] = [];
  const whole = new Map<string, Sense>();
  const silent: (readonly [readonly string[], Sense])[] = [];
  for (const { phrase, polarity, option } of own) {
    const stems = stemsOf(phrase);
    const sense: Sense = { polarity, option, own: true, denies: stems[0] === 'not', phrase };
    add(stems, sense);
    const key = plainWords(phrase).join(' ');
    if (!whole.has(key)) whole.set(key, sense);
    if (termsOf(tokenize(phrase).words).length === 0) silent.push([plainWords(phrase), sense]);
    // What the check denies is, said plainly, the opposite: "no tension" is right, so tension is not.
    const [denial, denied] = stems;
    if (stems.length === 2 && denial === 'not' && denied !== undefined && HARM_STEMS.has(denied) && !isChoiceOf(expects))
      opposed.push([denied, polarity === 'ok' ? 'problem' : 'ok']);
    // "green pins" and "pins are green" are one.
    const isPair =
      stems.length === 2 && stems.some((one) => PART_WORDS.has(one)) && stems.every((one) => !LITTLE.has(one) && one !== 'not');
    if (isPair) add([...stems].reverse(), sense);
    // "pins are in" on this check makes "in" good by itself.
    const [part, little] = stems;
    if (
      stems.length === 2 &&
      part !== undefined &&
      little !== undefined &&
      PART_WORDS.has(part) &&
      !HARM_NOUNS.has(part) &&
      LITTLE.has(little) &&
      !isChoiceOf(expects)
    )
      derived.push([little, polarity]);
  }
  for (const [word, polarity] of derived)
    if (derived.every(([other, also]) => other !== word || also === polarity))
      add([word], { polarity, option: null, own: false, denies: false, phrase: word, weak: true });
  for (const [word, polarity] of opposed)
    if (opposed.every(([other, also]) => other !== word || also === polarity))
      add([word], { polarity, option: null, own: false, denies: false, phrase: word });
  const silentTable = new PhraseTable(silent);
  const oks = own.filter(({ polarity }) => polarity === 'ok');
  const okOptions = new Set(oks.map(({ option }) => option));
  const problemOptions = new Set(own.filter(({ polarity }) => polarity === 'problem').map(({ option }) => option));
  const verdictOnly = {
    ok: okOptions.size === 1 ? ([...okOptions][0] ?? null) : null,
    problem: problemOptions.size === 1 ? ([...problemOptions][0] ?? null) : null,
  };
  const isChoice = expects.kind === 'choice';
  const generic = (phrase: string, polarity: Polarity) => {
    const option = isChoice ? verdictOnly[polarity] : null;
    // Which of several bad options a general word means is not known.
    if (isChoice && option === null) return;
    const stems = stemsOf(phrase);
    add(stems, { polarity, option, own: false, denies: false, phrase });
  };
  for (const [left, right] of FAMILIES) {
    const ownSide = (words: readonly string[]): Sense | undefined =>
      words.map((word) => single.get(stem(word))).find((sense) => sense?.own === true);
    const leftSense = ownSide(left);
    const rightSense = ownSide(right);
    const opposite = (sense: Sense | undefined): Polarity | undefined => sense && (sense.polarity === 'ok' ? 'problem' : 'ok');
    const leftPolarity = leftSense?.polarity ?? opposite(rightSense);
    const rightPolarity = rightSense?.polarity ?? opposite(leftSense);
    if (!leftPolarity || !rightPolarity || leftPolarity === rightPolarity) continue;
    for (const word of left) generic(word, leftPolarity);
    for (const word of right) generic(word, rightPolarity);
  }
  const loose = single.get(stem('loose'));
  if (loose?.own) for (const phrase of ['broken loose', 'broken free']) generic(phrase, loose.polarity);
  if (isChoice) {
    // Only words that judge say which of an option's verdicts is meant; "broken" of a valve says neither open nor closed.
    for (const word of JUDGING_WORDS) generic(word, 'ok');
  } else {
    for (const [phrase, polarity] of FIXED) generic(phrase, polarity);
    for (const [word, polarity] of Object.entries(FAMILY_DEFAULTS)) generic(word, polarity);
    for (const word of PROBLEM_WORDS) generic(word, 'problem');
    for (const word of HARM_NOUNS) if (!NEUTRAL_HARM.has(word)) generic(word, 'problem');
    for (const word of OK_WORDS) generic(word, 'ok');
  }
  for (const list of byFirst.values()) list.sort((a, b) => b.stems.length - a.stems.length);
  return {
    optionCount: isChoice ? expects.options.length : 0,
    exactly(words) {
      const said = words.flatMap(({ kind, word }) => (kind === 'mark' ? [] : [word]));
      return whole.get(said.join(' ')) ?? null;
    },
    silentAt: (words, at) => silentTable.at(words, at),
    verdictOnly,
    at(terms, at) {
      const first = terms[at];
      if (!first) return null;
      for (const { stems, sense } of byFirst.get(first.stem) ?? []) {
        if (stems.every((one, index) => terms[at + index]?.stem === one)) return { sense, next: at + stems.length };
      }
      return null;
    },
  };
}

/** Every word of a declaration's phrases: none of them is a stranger to the check. */
const ownWordSets = new WeakMap<object, ReadonlySet<string>>();

export function ownWords(expects: StateExpects | ChoiceExpects): ReadonlySet<string> {
  const known = ownWordSets.get(expects);
  if (known) return known;
  const made = new Set(ownPhrases(expects).flatMap(({ phrase }) => plainWords(phrase).map(stem)));
  ownWordSets.set(expects, made);
  return made;
}
