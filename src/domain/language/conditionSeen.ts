/** What an utterance says of a condition, each statement with its negation worked in. */
import type { ConditionLexicon, Sense, Term } from './conditionLexicon.ts';
import { DEGREE_WORDS, doneWith, PART_WORDS, type Polarity, stem } from './conditionWords.ts';
import type { Word } from './tokens.ts';

export interface Seen {
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

/** "all there", "just got here": phrases that only small words make up. */
export function silentlySeen(lexicon: ConditionLexicon, words: readonly Word[]): readonly Seen[] {
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
  'much enough lot any some stay keep see find notice spot hear feel look appear seem get be more sign of evidence kind longer visible obvious major real in on any new other particularly exactly entirely quite real big'
    .split(' ')
    .map(stem),
);

export interface Looked {
  readonly seen: readonly Seen[];
  /** Terms that belong to no phrase. */
  readonly strays: readonly Term[];
}

/** Every condition stated, with its negation worked in. */
export function look(lexicon: ConditionLexicon, terms: readonly Term[]): Looked {
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
export function contradicts(seen: readonly Seen[]): boolean {
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
