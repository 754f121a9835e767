/**
 * States and choices: "pinned", "isn't latched", "nothing wrong there", "nope, it's loose", "not loose", "I think it's fine".
 * What was seen wins over a bare yes or no; a hedged verdict is unsure; two verdicts that cannot both be true are asked about.
 */
import type { ChoiceExpects, Position, StateExpects } from '../checks/expects.ts';
import { type ConditionLexicon, lexiconFor, ownWords, type Sense, type Term, termsOf } from './conditionLexicon.ts';
import { DEGREE_WORDS, doneWith, HARM_NOUNS, PART_WORDS, type Polarity, stem } from './conditionWords.ts';
import type { InterpretContext, UnclearWhy } from './meaning.ts';
import { PhraseTable, phraseAt } from './phraseMatch.ts';
import { placeAt, resolvePlace } from './positions.ts';
import type { Word } from './tokens.ts';
import type { Uses } from './uses.ts';
import { ASIDE_WORDS, FILLERS, YES_WORDS } from './vocabulary.ts';

export type ConditionResult =
  | {
      readonly kind: 'verdict';
      readonly verdict: 'ok' | 'problem' | 'unsure';
      readonly option: string | null;
      readonly positions: readonly Position[];
      /** Words of the detail, from and up to. */
      readonly detail: { readonly from: number; readonly to: number } | null;
      readonly certainty: number;
      /** Said with words of the check's own, or plain yes and no. */
      readonly own: boolean;
    }
  | { readonly kind: 'unclear'; readonly why: UnclearWhy; readonly strangers: number };

export interface ConditionInput {
  readonly words: readonly Word[];
  readonly expects: StateExpects | ChoiceExpects;
  readonly context: Pick<InterpretContext, 'position' | 'positions'>;
  readonly names: readonly (readonly string[])[];
  readonly uses: Uses;
}

const UNSURE = new PhraseTable(
  [
    'not sure',
    'not certain',
    'not positive',
    'not too sure',
    'not really sure',
    'not entirely sure',
    'not one hundred percent',
    'unsure',
    'do not know',
    'no idea',
    'no clue',
    'can not tell',
    'could not tell',
    'can not see',
    'can not really see',
    'can not really tell',
    'could not see',
    'hard to say',
    'hard to tell',
    'hard to see',
    'who knows',
    'beats me',
    'you tell me',
    'can not say',
    'could not say',
    'cannot make it out',
    'too dark',
    'can not find it',
    'can not get to it',
    'your guess is as good as mine',
    'yes and no',
    'kind of',
    'sort of',
    'more or less',
    'i think',
    'not think',
    'not believe',
    'i believe',
    'i guess',
    'i suppose',
    'i reckon',
    'i hope',
    'i would say',
    'i want to say',
    'i would think',
    'i assume',
    'i imagine',
    'probably',
    'maybe',
    'perhaps',
    'possibly',
    'hopefully',
    'presumably',
    'might be',
    'could be',
    'may be',
    'should be',
    'ought to be',
    'supposed to be',
    'must be',
    'seems',
    'seem',
    'seems like',
    'appears to be',
    'as far as i can tell',
    'as far as i know',
    'far as i can tell',
    'pretty sure',
    'fairly sure',
    'almost sure',
    'good enough',
    'mostly',
    'for the most part',
    'more or less',
    'looks like it might',
    'might',
    'should',
    'guessing',
    'supposedly',
    'semi',
    'so so',
    'iffy',
    'questionable',
    'borderline',
    'almost',
    'nearly',
    'about',
  ].map((phrase) => [phrase.split(' '), 'unsure'] as const),
);
/** Beginnings and turns of talk that is about a condition without stating it. */
const NOT_A_STATEMENT = new PhraseTable(
  [
    'if',
    'when',
    'until',
    'unless',
    'whether',
    'make sure',
    'let me know',
    'tell me',
    'need to',
    'needs to be checked',
    'have to',
    'got to',
    'going to',
    'about to',
    'want to',
    'trying to',
    'try to',
    'let me',
    'i will',
    'we will',
    'you will',
    'remember to',
    'do not forget',
    'used to',
    'last time',
    'last year',
    'last week',
    'yesterday',
    'tomorrow',
    'good morning',
    'good night',
    'good afternoon',
    'good evening',
    'good grief',
    'good lord',
    'good god',
    'good point',
    'good question',
    'good job',
    'good work',
    'good one',
    'good luck',
    'good boy',
    'good girl',
    'good dog',
    'good fish',
    'good thing',
    'no way',
    'no kidding',
    'no worries',
    'no thanks',
    'no thank you',
    'no doubt about it',
    'fine by me',
    'fine with me',
    'okay with me',
    'i am good',
    'i am fine',
    'i am okay',
    'you good',
    'you okay',
    'are you',
    'we good',
    'feel good',
    'feel better',
    'sounds good',
    'sounds great',
    'never mind',
    'not now',
    'not yet',
    'in a minute',
    'my bad',
    'too bad',
    'dead tired',
    'cut it out',
    'knock it off',
    'come on',
    'okay then',
    'okay so',
    'all right then',
    'whatever',
    'hand me',
    'give me',
    'pass me',
    'grab',
    'bring',
    'hold the',
    'hold this',
    'put it',
    'pull it',
    'push it',
    'check the',
    'check that',
    'check if',
    'did you',
    'do you',
    'can you',
    'could you',
    'would you',
    'would be',
    'will you',
    'have you',
    'is it',
    'is that',
    'is this',
    'is the',
    'is there',
    'are they',
    'are the',
    'are those',
    'was it',
    'does it',
    'does that',
    'does the',
    'did it',
    'did that',
    'do they',
    'has it',
    'what',
    'who',
    'where',
    'how',
    'why',
  ].map((phrase) => [phrase.split(' '), 'aside'] as const),
);
const CORRECTIONS = new PhraseTable(
  [
    'no wait',
    'wait no',
    'no sorry',
    'sorry no',
    'i mean',
    'i meant',
    'make that',
    'scratch that',
    'strike that',
    'my mistake',
    'correction',
    'actually',
    'wait',
    'sorry',
    'oops',
    'whoops',
    'or rather',
    'hold on',
    'hang on',
    'no actually',
  ].map((phrase) => [phrase.split(' '), 'correction'] as const),
);
const BUT = new Set(['but', 'except', 'though', 'although', 'however', 'only', 'besides', 'apart', 'other']);
const NOT_ANSWERS = new Set(['checked', 'check', 'done', 'finished', 'complete', 'completed', 'inspected', 'looked', 'verified']);
/** "it is", "they do": says yes to the question as it was asked. */
const ELLIPTIC = new Set(['is', 'are', 'do', 'does', 'did', 'has', 'have', 'was', 'were', 'will', 'can']);
const SUBJECTS = new Set([
  'it',
  'they',
  'that',
  'this',
  'she',
  'he',
  'there',
  'the',
  'these',
  'those',
  'one',
  'i',
  'we',
  'its',
  'both',
  'all',
  'left',
  'right',
  'front',
  'rear',
  'sir',
  'maam',
  'not',
]);

interface Seen {
  readonly polarity: Polarity;
  readonly option: string | null;
  readonly own: boolean;
  readonly from: number;
  readonly next: number;
  readonly stem: string;
  readonly negated: boolean;
  readonly phrase: string;
  readonly isWeak: boolean;
}

/** Understand a state or a choice. Linear in the words, never throws. */
export function parseCondition(input: ConditionInput): ConditionResult {
  const exact = lexiconFor(input.expects).exactly(input.words);
  if (exact) {
    input.uses.mark(0, input.words.length, 'state');
    const isLabel = input.expects.kind === 'choice' || exact.polarity === 'ok' || exact.phrase === input.expects.problem[0];
    const detail = isLabel ? null : { from: 0, to: input.words.length };
    return { kind: 'verdict', verdict: exact.polarity, option: exact.option, positions: [], detail, certainty: 1, own: true };
  }
  const tail = afterCorrection(input);
  if (tail !== null) {
    const rest = input.words.slice(tail);
    const result = parseStatement({ ...input, words: rest, uses: input.uses.over(rest) });
    if (result.kind === 'verdict') {
      input.uses.mark(Math.max(0, tail - 1), tail, 'correction');
      return { ...result, detail: result.detail && { from: result.detail.from + tail, to: result.detail.to + tail } };
    }
  }
  return parseStatement(input);
}

/** Where the last thing said begins, if something before it was taken back. */
function afterCorrection({ words, expects }: ConditionInput): number | null {
  let cut: number | null = null;
  const lexicon = lexiconFor(expects);
  for (let at = 1; at < words.length; at += 1) {
    const found = CORRECTIONS.at(words, at);
    if (found && found.next < words.length) {
      cut = found.next;
      at = found.next - 1;
      continue;
    }
    // "loose, no, tight"; but "latched, no pin" and "no loose bolts" deny what follows.
    const word = words[at]?.word;
    if ((word === 'no' || word === 'nope') && at + 1 < words.length) {
      const afterMark = words[at + 1]?.kind === 'mark';
      const next = words[at + 1];
      const before = lastSeen(lexicon, words.slice(0, at));
      if (!before) continue;
      const terms = termsOf(words.slice(at + 1));
      const following = lexicon.at(terms, 0);
      const isNoun = HARM_NOUNS.has(next?.word ?? '') || PART_WORDS.has(next?.word ?? '');
      const partBehind = following ? PART_WORDS.has(words[at + 1 + (terms[following.next - 1]?.next ?? 0)]?.word ?? '') : false;
      if (
        afterMark ||
        SUBJECTS.has(next?.word ?? '') ||
        (following && !isNoun && !partBehind && following.sense.polarity !== before)
      )
        cut = at + 1;
    }
  }
  return cut;
}

function lastSeen(lexicon: ConditionLexicon, words: readonly Word[]): Polarity | null {
  const seen = look(lexicon, termsOf(words)).seen.at(-1);
  return seen?.polarity ?? null;
}

function parseStatement(input: ConditionInput): ConditionResult {
  const { words, expects, uses } = input;
  const lexicon = lexiconFor(expects);
  const unclear = (why: UnclearWhy, strangers = 0): ConditionResult => ({ kind: 'unclear', why, strangers });
  if (isAside(words, [], 'no')) return unclear('chatter');
  const plain = plainAnswer(words);
  if (plain && expects.kind === 'state') {
    uses.mark(0, words.length, 'state');
    return {
      kind: 'verdict',
      verdict: verdictOf(plain, expects),
      option: null,
      positions: [],
      detail: null,
      certainty: 0.95,
      own: true,
    };
  }
  const { answer, from } = leadingAnswer(words, lexicon, uses);
  const rest = words.slice(from);
  const restUses = uses.over(rest);
  const terms = termsOf(rest);
  const looked = look(lexicon, terms);
  // "up" by itself may say it all; beside "locked" it says nothing.
  const strong = looked.seen.filter(({ isWeak }) => !isWeak);
  const spoken = strong.length > 0 ? strong : looked.seen;
  const seen = spoken.length > 0 ? spoken : silentlySeen(lexicon, rest);
  const strays =
    looked.seen.length > 0 || seen.length === 0
      ? looked.strays
      : looked.strays.filter(({ from: start }) => !seen.some((one) => start >= one.from && start < one.next));
  for (const one of seen) restUses.mark(one.from, one.next, 'state');
  for (const term of terms) if (term.stem === 'not') restUses.mark(term.from, term.next, 'negation');
  const places = placesIn(rest, input, seen);
  if (places.kind === 'unclear') return unclear(places.why);
  for (const { from: at, next } of places.spans) restUses.mark(at, next, 'position');
  for (const [index, word] of rest.entries()) {
    if (FILLERS.has(word.word) || DEGREE_WORDS.has(word.word)) restUses.mark(index, index + 1, 'filler');
  }
  const unsure = unsureIn(rest, seen, restUses);
  const strangers = strangersAmong(strays, rest, input, places.spans, unsure.spans);
  if (isAside(rest, seen)) return unclear('chatter', strangers.length);
  if (strangers.some((word) => ASIDE_WORDS.has(word))) return unclear('chatter', strangers.length);
  if (unsure.found) {
    if (strangers.length > 2) return unclear('chatter', strangers.length);
    return {
      kind: 'verdict',
      verdict: 'unsure',
      option: null,
      positions: places.positions,
      detail: null,
      certainty: 0.9,
      own: false,
    };
  }
  if (seen.length === 0 && expects.kind === 'state' && strangers.length === 0 && exceptionIn(rest, seen) === 'problem')
    return {
      kind: 'verdict',
      verdict: 'problem',
      option: null,
      positions: places.positions,
      detail: detailOf(words, from, [], 1, expects),
      certainty: 0.8,
      own: false,
    };
  if (seen.length === 0) return bare(input, answer, rest, terms, strangers, places);
  if (rest.some((_, at) => phraseAt(rest, at, ['or', 'not']) !== null)) return unclear('alternatives', strangers.length);
  const exception = exceptionIn(rest, seen);
  if (exception === 'unclear') return unclear('ambiguous', strangers.length);
  if (exception === 'problem' && expects.kind === 'state')
    return {
      kind: 'verdict',
      verdict: 'problem',
      option: null,
      positions: places.positions,
      detail: detailOf(words, from, [], 1, expects),
      certainty: 0.85,
      own: false,
    };
  const polarities = new Set(seen.map(({ polarity }) => polarity));
  const hasBut = rest.some(({ word }) => BUT.has(word));
  let verdict: Polarity = polarities.has('problem') ? 'problem' : 'ok';
  if (polarities.size === 2) {
    if (contradicts(seen) && !hasBut) return unclear('contradiction', strangers.length);
    if (places.positions.length > 1) return unclear('ambiguous', strangers.length);
  }
  const mended = verdict === 'problem' && expects.kind === 'state' && wasMended(rest);
  if (mended) verdict = 'ok';
  const options = new Set(seen.filter(({ polarity }) => polarity === verdict).map(({ option }) => option));
  if (expects.kind === 'choice') {
    if (options.size > 1 || (polarities.size === 2 && !hasBut)) {
      const allOptions = new Set(seen.map(({ option }) => option));
      if (allOptions.size > 1)
        return unclear(rest.some(({ word }) => word === 'or') ? 'alternatives' : 'contradiction', strangers.length);
    }
  }
  if (verdict === 'ok' && strangers.length > 0) return unclear(strangers.length > 1 ? 'chatter' : 'ambiguous', strangers.length);
  if (verdict === 'problem' && strangers.length > 4) return unclear('chatter', strangers.length);
  if (rest.some(({ word }) => word === 'or') && polarities.size === 2) return unclear('alternatives', strangers.length);
  const [option] = options;
  const isOwn = seen.some((one) => one.own && one.polarity === verdict);
  const conflict = answer !== null && expects.kind === 'state' && verdictOf(answer, expects) !== verdict;
  const certainty =
    (mended ? 0.7 : isOwn ? 1 : 0.92) *
    (conflict ? 0.9 : 1) *
    (strangers.length > 0 ? Math.max(0.6, 0.85 - 0.08 * strangers.length) : 1) *
    (polarities.size === 2 ? 0.85 : 1);
  const detail = verdict === 'problem' ? detailOf(words, from, seen, strangers.length, expects) : null;
  return { kind: 'verdict', verdict, option: option ?? null, positions: places.positions, detail, certainty, own: isOwn };
}

/** "that's a no": an answer by itself. */
function plainAnswer(words: readonly Word[]): 'yes' | 'no' | null {
  const said = words
    .filter(({ kind }) => kind !== 'mark')
    .map(({ word }) => word)
    .join(' ');
  const found = /^(?:that|it) (?:is|would be) (?:a |an )?(?:big |hard |definite )?(yes|no|nope|negative)$/.exec(said);
  return found ? (found[1] === 'yes' ? 'yes' : 'no') : null;
}

/** The yes or no in front, if it is one of its own and does not deny what follows. */
function leadingAnswer(
  words: readonly Word[],
  lexicon: ConditionLexicon,
  uses: Uses,
): { readonly answer: 'yes' | 'no' | null; readonly from: number } {
  let at = 0;
  while (
    at < words.length &&
    (words[at]?.kind === 'mark' || /^(uh|um|er|well|oh|so|ah|hm|hey|and|okay)$/.test(words[at]?.word ?? ''))
  ) {
    // "okay" by itself is an answer.
    if (words[at]?.word === 'okay' && at === words.length - 1) break;
    at += 1;
  }
  const skipped = at;
  const word = words[at]?.word ?? '';
  if (YES_WORDS.has(word) && word !== 'correct' && word !== 'exactly') {
    uses.mark(at, at + 1, 'state');
    let next = at + 1;
    while (words[next]?.word === 'yes' || words[next]?.kind === 'mark') next += 1;
    // "yeah, no, it's loose" is a no.
    if ((words[next]?.word === 'no' || words[next]?.word === 'nope') && SUBJECTS.has(words[next + 1]?.word ?? '')) {
      uses.mark(next, next + 1, 'negation');
      return { answer: 'no', from: next + 1 };
    }
    return { answer: 'yes', from: next };
  }
  if (word === 'nope' || word === 'negative') {
    uses.mark(at, at + 1, 'negation');
    return { answer: 'no', from: at + 1 };
  }
  if (word !== 'no') return { answer: null, from: skipped };
  const own = lexicon.at(termsOf(words.slice(at)), 0);
  const isSubject = words[at + 1]?.kind === 'mark' || SUBJECTS.has(words[at + 1]?.word ?? '');
  if (!isSubject && own?.sense.own && own.sense.denies) return { answer: null, from: skipped };
  const next = words[at + 1];
  const isOwn =
    next === undefined ||
    next.kind === 'mark' ||
    SUBJECTS.has(next.word) ||
    next.word === 'no' ||
    next.word === 'sir' ||
    !deniesNext(words, at + 1);
  if (!isOwn) return { answer: null, from: skipped };
  uses.mark(at, at + 1, 'negation');
  return { answer: 'no', from: at + 1 };
}

/** "no cracks" and "no loose bolts" deny; "no frozen" is a no and a finding; "no good" is a finding. */
function deniesNext(words: readonly Word[], at: number): boolean {
  let index = at;
  while (
    DEGREE_WORDS.has(words[index]?.word ?? '') ||
    /^(more|other|big|visible|obvious|major|sign|signs|of|any|real)$/.test(words[index]?.word ?? '')
  )
    index += 1;
  const word = words[index]?.word ?? '';
  if (HARM_NOUNS.has(word) || PART_WORDS.has(word) || word === 'good' || word === 'longer') return true;
  const behind = words[index + 1]?.word ?? '';
  return HARM_NOUNS.has(behind) || PART_WORDS.has(behind);
}

/** "all there", "just got here": phrases that only small words make up. */
function silentlySeen(lexicon: ConditionLexicon, words: readonly Word[]): readonly Seen[] {
  for (let at = 0; at < words.length; at += 1) {
    const found = lexicon.silentAt(words, at);
    if (!found) continue;
    const { polarity, option, own, phrase } = found.value;
    return [{ polarity, option, own, phrase, from: at, next: found.next, stem: phrase, negated: false, isWeak: false }];
  }
  return [];
}

/** Words that may stand between a negation and what it denies. */
const BETWEEN = new Set(
  'any some stay keep see find notice spot hear feel look appear seem get be more sign of evidence kind longer visible obvious major real in on any new other particularly exactly entirely quite real big'
    .split(' ')
    .map(stem),
);

interface Looked {
  readonly seen: readonly Seen[];
  /** Terms that belong to no phrase. */
  readonly strays: readonly Term[];
}

/** Every condition stated, with its negation worked in. */
function look(lexicon: ConditionLexicon, terms: readonly Term[]): Looked {
  const seen: Seen[] = [];
  const strays: Term[] = [];
  let negations = 0;
  let negatedPart: Term | null = null;
  let carried = false;
  const reset = () => {
    if (negations % 2 === 1 && negatedPart) {
      seen.push({
        polarity: 'problem',
        option: null,
        own: false,
        from: negatedPart.from,
        next: negatedPart.next,
        stem: negatedPart.stem,
        negated: true,
        phrase: `no ${negatedPart.word}`,
        isWeak: false,
      });
    }
    negations = 0;
    negatedPart = null;
  };
  let at = 0;
  while (at < terms.length) {
    const term = terms[at];
    if (!term) break;
    const found = lexicon.at(terms, at);
    if (found) {
      const first = terms[at];
      const last = terms[found.next - 1];
      const isOdd: boolean = negations % 2 === 1 || (carried && found.sense.polarity === 'problem');
      const denies = found.sense.denies;
      // A phrase that denies is only turned by a negation of its own: "isn't not latched".
      const turned: boolean = denies ? negations % 2 === 1 : isOdd;
      const isLost = turned && found.sense.option !== null && lexicon.optionCount > 2;
      if (!isLost) seen.push(seenOf(found.sense, turned, first, last, lexicon));
      carried = denies
        ? found.sense.polarity === 'ok' && followedByOr(terms, found.next)
        : isOdd && followedByOr(terms, found.next);
      negations = 0;
      negatedPart = null;
      at = found.next;
      continue;
    }
    const inside = deniedInside(lexicon, terms, at);
    if (inside && negations === 0) {
      seen.push(seenOf(inside.sense, true, term, terms[inside.next - 1], lexicon));
      at = inside.next;
      continue;
    }
    // "won't latch": what is not done with a part is a state that is not reached.
    const done =
      negations > 0 && PART_WORDS.has(term.word) && terms[at - 1]?.word === 'not'
        ? lexicon.at([{ ...term, stem: doneWith(term.stem) }], 0)
        : null;
    if (done) {
      seen.push(seenOf(done.sense, negations % 2 === 1, term, term, lexicon));
      negations = 0;
      negatedPart = null;
      at += 1;
      continue;
    }
    at += 1;
    if (term.stem === 'not') {
      negations += 1;
      continue;
    }
    if (term.stem === ',') {
      reset();
      continue;
    }
    if (term.stem === 'or' || term.stem === 'nor') continue;
    if (negations > 0 && (BETWEEN.has(term.stem) || DEGREE_WORDS.has(term.word))) continue;
    if (negations > 0 && PART_WORDS.has(term.word)) {
      negatedPart = term;
      continue;
    }
    if (negations > 0) {
      // What is denied is not a condition that is known.
      strays.push(term);
      negations = 0;
      continue;
    }
    strays.push(term);
  }
  reset();
  return { seen, strays };
}

/** "the cap isn't on" where "cap is on" is known. */
function deniedInside(
  lexicon: ConditionLexicon,
  terms: readonly Term[],
  at: number,
): { readonly sense: Sense; readonly next: number } | null {
  const place = terms.findIndex((term, index) => index > at && index < at + 4 && term.stem === 'not');
  if (place < 0) return null;
  const without = [...terms.slice(at, place), ...terms.slice(place + 1, place + 5)];
  const found = lexicon.at(without, 0);
  return found && found.next > place - at && !found.sense.denies ? { sense: found.sense, next: at + found.next + 1 } : null;
}

const followedByOr = (terms: readonly Term[], at: number): boolean => {
  for (let index = at; index < Math.min(terms.length, at + 3); index += 1) {
    if (terms[index]?.stem === 'or' || terms[index]?.stem === 'nor') return true;
    if (terms[index]?.stem !== ',' && !PART_WORDS.has(terms[index]?.word ?? '')) {
      // "no cracks, leaks or bulges"
      const later = terms.slice(index, index + 3).some((term) => term.stem === 'or' || term.stem === 'nor');
      return terms[at]?.stem === ',' && later;
    }
  }
  return false;
};

function seenOf(
  sense: Sense,
  negated: boolean,
  first: Term | undefined,
  last: Term | undefined,
  lexicon: ConditionLexicon,
): Seen {
  const polarity: Polarity = negated ? (sense.polarity === 'ok' ? 'problem' : 'ok') : sense.polarity;
  return {
    polarity,
    option: negated && sense.option !== null ? lexicon.verdictOnly[polarity] : sense.option,
    own: sense.own,
    from: first?.from ?? 0,
    next: last?.next ?? 0,
    stem: first?.stem === 'not' ? (last?.stem ?? '') : (first?.stem ?? ''),
    negated,
    phrase: sense.phrase,
    isWeak: sense.weak === true,
  };
}

/** The same thing called both, or good and bad in one breath. */
function contradicts(seen: readonly Seen[]): boolean {
  const general = new Set([
    'good',
    'bad',
    'fine',
    'okay',
    'tight',
    'loos',
    'open',
    'clos',
    'shut',
    'lock',
    'unlock',
    'latch',
    'unlatch',
    'wet',
    'dry',
    'up',
    'down',
    'in',
    'out',
    'on',
    'off',
    'broken',
    'slack',
    'pass',
    'fail',
    'yes',
    'hot',
    'cool',
    'cold',
  ]);
  for (const one of seen)
    for (const other of seen) {
      if (one.polarity === other.polarity) continue;
      if (one.stem === other.stem) return true;
      if (general.has(one.stem) && general.has(other.stem)) return true;
    }
  return false;
}

/** "everything but the clip", "all but one", "only the left one works": not all of it is right. */
function exceptionIn(words: readonly Word[], seen: readonly Seen[]): 'problem' | 'unclear' | null {
  if (seen.some(({ polarity }) => polarity === 'problem')) return null;
  const but = words.findIndex(({ word }, at) => BUT.has(word) && word !== 'only' && word !== 'other' && at > 0);
  if (but > 0 && !seen.some(({ from }) => from > but)) {
    const behind = words.slice(but + 1).filter(({ kind, word }) => kind !== 'mark' && !FILLERS.has(word));
    const isPart = words.slice(but + 1).some(({ word }) => PART_WORDS.has(word) || word === 'one');
    if (isPart) return 'problem';
    if (behind.length > 0) return 'unclear';
  }
  if (words.some((_, at) => phraseAt(words, at, ['not', 'all', 'the', 'way']) !== null)) return 'problem';
  const only = words.findIndex(({ word }) => word === 'only');
  const next = words[words[only + 1]?.word === 'the' ? only + 2 : only + 1]?.word ?? '';
  if (only >= 0 && seen.length > 0 && /^(one|left|right|front|rear|half|two|some)$/.test(next)) return 'problem';
  return null;
}

/** "it was loose but I tightened it", "loose, fixed it": what holds is what is there now. */
const wasMended = (words: readonly Word[]): boolean => {
  const text = ` ${words.map(({ word }) => word).join(' ')} `;
  return (
    / (was|were) .*(tightened|fixed|now|snugged|replaced|closed|latched|pinned|locked) /.test(text) &&
    !/ still | again | keeps /.test(text)
  );
};

interface Places {
  readonly kind: 'places';
  readonly positions: readonly Position[];
  readonly spans: readonly { readonly from: number; readonly next: number }[];
}

/** Places named beside the condition; those within a phrase belong to the phrase. */
function placesIn(
  words: readonly Word[],
  { context }: ConditionInput,
  seen: readonly Seen[],
): Places | { readonly kind: 'unclear'; readonly why: UnclearWhy } {
  const placed = context.position !== null || context.positions.length > 0;
  const positions: Position[] = [];
  const spans: { from: number; next: number }[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const inside = seen.find((one) => at >= one.from && at < one.next);
    if (inside) continue;
    const both = phraseAt(words, at, ['both', 'sides']) ?? (words[at]?.word === 'both' ? at + 1 : null);
    if (both !== null && context.positions.length === 2) {
      positions.push(...context.positions);
      spans.push({ from: at, next: both });
      at = both - 1;
      continue;
    }
    const place = placeAt(words, at);
    if (!place) continue;
    spans.push({ from: place.from, next: place.next });
    at = place.next - 1;
    if (!placed) continue;
    const resolved = resolvePlace(place, context.positions, context.position, null);
    if (resolved.kind === 'position') positions.push(resolved.position);
    // "the front pin is missing": on a check of one side the front is a detail.
    else if (resolved.kind === 'unknown' && place.side !== null && place.end !== null)
      return { kind: 'unclear', why: 'unknown-position' };
  }
  return { kind: 'places', positions: [...new Set(positions)], spans };
}

/** Hedges, unless they are within what was seen ("looks good", "about" of "all about"). */
function unsureIn(
  words: readonly Word[],
  seen: readonly Seen[],
  uses: Uses,
): { readonly found: boolean; readonly spans: readonly { from: number; next: number }[] } {
  const spans: { from: number; next: number }[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const found = UNSURE.at(words, at);
    if (!found) continue;
    if (seen.some((one) => at >= one.from && at < one.next && found.next <= one.next)) continue;
    // "I'm sure" and "for sure" are the opposite of a hedge; "not sure" was found as a whole.
    const isPlain = found.next === at + 1;
    if (isPlain && words[at]?.word === 'about' && words[at + 1]?.word === 'it') continue;
    // "as it should" and "should" behind "like it" state; "good enough" doubts.
    if (
      words[at]?.word === 'should' &&
      /^(it|they)$/.test(words[at - 1]?.word ?? '') &&
      /^(like|as|way)$/.test(words[at - 2]?.word ?? '')
    )
      continue;
    uses.mark(at, found.next, 'hedge');
    spans.push({ from: at, next: found.next });
    at = found.next - 1;
  }
  return { found: spans.length > 0, spans };
}

const KNOWN_AROUND = new Set(
  'any tightened fixed snugged replaced closed but except though although however only besides apart other than stamped marked printed says labeled not no yes and or nor if near next on in at from under over behind along where between through into onto off out up down around about because since so still again also too side bit little lot some few couple lots several new old big small long short deep light heavy half quarter inch inches foot turn times maybe it starting beginning getting coming going gone looks showing through couple there is was been has bottom top inside outside middle end edge all way needs need should'.split(
    ' ',
  ),
);

/** "solid as a rock", "like a guitar string": pictures of what was said. */
function simileSpans(words: readonly Word[]): readonly { from: number; next: number }[] {
  const spans: { from: number; next: number }[] = [];
  for (let at = 1; at < words.length; at += 1) {
    const isPicture =
      (words[at]?.word === 'as' || words[at]?.word === 'like') && /^(a|an|can|all)$/.test(words[at + 1]?.word ?? '');
    if (isPicture) spans.push({ from: at, next: at + 4 });
  }
  return spans;
}

/** Words that neither the check nor the trade nor everyday speech explains. */
function strangersAmong(
  strays: readonly Term[],
  words: readonly Word[],
  { expects, names }: ConditionInput,
  places: readonly { from: number; next: number }[],
  hedges: readonly { from: number; next: number }[],
): readonly string[] {
  const similes = simileSpans(words);
  const own = ownWords(expects);
  const nameWords = new Set(names.flat());
  const within = (spans: readonly { from: number; next: number }[], at: number) =>
    spans.some(({ from, next }) => at >= from && at < next);
  return strays
    .filter((term) => !within(places, term.from) && !within(hedges, term.from) && !within(similes, term.from))
    .filter(({ stem: root, word }) => {
      if (root === ',' || root.startsWith('#')) return false;
      if (PART_WORDS.has(word) || DEGREE_WORDS.has(word) || KNOWN_AROUND.has(word)) return false;
      if (own.has(root) || nameWords.has(word) || FILLERS.has(word)) return false;
      return !NOT_ANSWERS.has(word) && !BUT.has(word);
    })
    .map(({ word }) => word)
    .filter((word) => words.length > 0 && word !== '');
}

const PEOPLE = new Set(['you', 'your', 'he', 'him', 'his', 'me', 'my']);

/** A question, an order, a plan: talk about a condition that does not state one. */
function isAside(words: readonly Word[], seen: readonly Seen[], only: string | null = null): boolean {
  if (
    only === null &&
    words.some(({ word }, at) => PEOPLE.has(word) && words[at - 1]?.word !== 'to' && words[at - 1]?.word !== 'for')
  )
    return true;
  let start = 0;
  while (words[start]?.kind === 'mark' || /^(uh|um|well|so|hey|okay|and|but|oh|yes|no)$/.test(words[start]?.word ?? ''))
    start += 1;
  for (let at = 0; at < words.length; at += 1) {
    const found = NOT_A_STATEMENT.at(words, at);
    if (!found) continue;
    const first = words[at]?.word ?? '';
    if (only !== null && first !== only) continue;
    if (seen.some((one) => at >= one.from && found.next <= one.next)) continue;
    const opens = [
      'is',
      'are',
      'was',
      'does',
      'did',
      'do',
      'has',
      'can',
      'could',
      'would',
      'will',
      'have',
      'what',
      'who',
      'where',
      'how',
      'why',
      'check',
      'hold',
      'put',
      'pull',
      'push',
    ].includes(first);
    // A verb in front asks; further on it belongs to a statement ("that is the one").
    if (opens && at !== start && words[at + 1]?.word !== 'be') continue;
    // "where it rubs", "when I push it" belong to a finding.
    if (
      (first === 'when' || first === 'if' || first === 'until' || first === 'unless') &&
      seen.some(({ next, polarity }) => next <= at && polarity === 'problem')
    )
      continue;
    if (
      (first === 'need' || first === 'have' || first === 'got' || first === 'going') &&
      seen.some(({ polarity }) => polarity === 'problem') &&
      !words.slice(0, at).some(({ word }) => word === 'i' || word === 'we' || word === 'you')
    )
      continue;
    return true;
  }
  return false;
}

/** Nothing was seen: a yes or no, a word that is no answer, or talk. */
function bare(
  { expects }: ConditionInput,
  answer: 'yes' | 'no' | null,
  rest: readonly Word[],
  terms: readonly Term[],
  strangers: readonly string[],
  places: Places,
): ConditionResult {
  const unclear = (why: UnclearWhy): ConditionResult => ({ kind: 'unclear', why, strangers: strangers.length });
  if (strangers.length > 0) return unclear(strangers.length === 1 && answer !== null ? 'ambiguous' : 'chatter');
  if (terms.some(({ word }) => NOT_ANSWERS.has(word))) return unclear('no-value');
  const isElliptic =
    rest.some(({ word }) => ELLIPTIC.has(word)) &&
    rest.every(
      ({ kind, word }) =>
        kind === 'mark' || ELLIPTIC.has(word) || SUBJECTS.has(word) || DEGREE_WORDS.has(word) || YES_WORDS.has(word),
    );
  const isDenied = terms.filter(({ stem: root }) => root === 'not').length % 2 === 1;
  const content = terms.filter(
    ({ stem: root, word }) => root !== 'not' && root !== ',' && !DEGREE_WORDS.has(word) && !FILLERS.has(word),
  );
  if (content.length > 0) return unclear('no-value');
  let said: 'yes' | 'no' | null = answer;
  if (isElliptic && rest.length <= 6) {
    const elliptic = isDenied ? 'no' : 'yes';
    if (answer !== null && answer !== elliptic) return unclear('contradiction');
    said = elliptic;
  } else if (isDenied) return unclear(answer === null ? 'no-value' : answer === 'yes' ? 'contradiction' : 'no-value');
  if (said === null) return unclear(rest.length === 0 ? 'empty' : 'no-value');
  if (rest.some(({ word }) => word === 'no' || word === 'nope') && said === 'yes') return unclear('contradiction');
  if (rest.some(({ word }) => word === 'yes') && said === 'no') return unclear('contradiction');
  if (expects.kind === 'choice') return unclear('no-value');
  return {
    kind: 'verdict',
    verdict: verdictOf(said, expects),
    option: null,
    positions: places.positions,
    detail: null,
    certainty: 0.95,
    own: true,
  };
}

const verdictOf = (said: 'yes' | 'no', expects: StateExpects): Polarity =>
  (said === 'yes') === (expects.yesMeans === 'ok') ? 'ok' : 'problem';

/** What is wrong, in the speaker's words; null where it is only the label itself. */
function detailOf(
  words: readonly Word[],
  from: number,
  seen: readonly Seen[],
  strangers: number,
  expects: StateExpects | ChoiceExpects,
): { from: number; to: number } | null {
  let start = from;
  while (
    words[start]?.kind === 'mark' ||
    /^(it|is|they|are|there|that|this|uh|um|well|so|but|and|oh|looks|like)$/.test(words[start]?.word ?? '')
  )
    start += 1;
  let end = words.length;
  while (end > start && words[end - 1]?.kind === 'mark') end -= 1;
  if (start >= end) return null;
  const [only] = seen;
  // The option says it all where nothing but its phrase was said.
  const covered = only ? only.next - only.from + from : 0;
  if (expects.kind === 'choice' && seen.length === 1 && strangers === 0 && (end - start <= 2 || covered >= end - start))
    return null;
  const label = expects.kind === 'state' ? expects.problem[0] : undefined;
  if (
    only &&
    seen.length === 1 &&
    strangers === 0 &&
    label !== undefined &&
    only.phrase === label &&
    end - start <= label.split(' ').length
  )
    return null;
  return { from: start, to: end };
}
