/**
 * States and choices: "pinned", "isn't latched", "nothing wrong there", "nope, it's loose", "not loose", "I think it's fine".
 * What was seen wins over a bare yes or no; a hedged verdict is unsure; two verdicts that cannot both be true are asked about.
 */
import type { ChoiceExpects, Position, StateExpects } from '../checks/expects.ts';
import { type ConditionLexicon, lexiconFor, type Term, termsOf } from './conditionLexicon.ts';
import { BUT, CORRECTIONS, ELLIPTIC, NOT_ANSWERS, SUBJECTS } from './conditionPhrases.ts';
import { contradicts, look, type Seen, silentlySeen } from './conditionSeen.ts';
import { exceptionIn, failureIn, isAside, strangersAmong, unsureIn, wasMended } from './conditionTalk.ts';
import { DEGREE_WORDS, HARM_NOUNS, PART_WORDS, type Polarity } from './conditionWords.ts';
import type { InterpretContext, UnclearWhy } from './meaning.ts';
import { phraseAt } from './phraseMatch.ts';
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
  const failing = seen.length === 0 && expects.kind === 'state' ? failureIn(rest, strangers.length) : null;
  if (failing)
    return {
      kind: 'verdict',
      verdict: 'problem',
      option: null,
      positions: places.positions,
      detail: { from, to: words.length },
      certainty: 0.7,
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
  } else if (isDenied && answer === null && rest.some(({ word }) => /^(really|quite|exactly|yet|entirely|fully)$/.test(word)))
    said = 'no';
  else if (isDenied) return unclear(answer === null ? 'no-value' : answer === 'yes' ? 'contradiction' : 'no-value');
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
