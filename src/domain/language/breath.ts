/**
 * Several statements in one breath: "left pinned, right not", "chains crossed, breakaway hooked on". Cuts the words into clauses
 * that each speak of one place or of one check, in every way that the order of the words allows. What the clauses mean is not
 * decided here.
 */
import { placeAt } from './positions.ts';
import type { Word } from './tokens.ts';
import { FILLERS } from './vocabulary.ts';

/** A stretch of words that a clause is about: a place, or another check's name. */
export interface Anchor {
  readonly from: number;
  /** Index of the word behind it. */
  readonly next: number;
}

export interface Clause {
  readonly words: readonly Word[];
  /** Says nothing beyond its anchor: "left and right are pinned" has such a first clause. */
  readonly isBare: boolean;
  /** Says nothing beyond its anchor but that it is not so. */
  readonly isDenial: boolean;
}

const LINKS = new Set(['and', 'but', 'while', 'whereas', 'then']);
const SILENT = new Set(['the', 'on', 'one', 'side', 'is', 'are', 'it', 'that', 'for', 'to', 'in', 'at', 'of']);
const DENIALS = new Set(['not', 'no', 'nope', 'isnt', 'arent']);

/** Every place that is named with its side, in order. */
export function placesIn(words: readonly Word[]): readonly Anchor[] {
  const found: Anchor[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const place = placeAt(words, at);
    if (!place) continue;
    if (place.side !== null) found.push({ from: place.from, next: place.next });
    at = place.next - 1;
  }
  return found;
}

/**
 * The ways to cut words around their anchors: at commas and links, before each anchor, behind each anchor.
 * @param anchors two or more, in order, not overlapping
 * @param order `name-first`: what is said of an anchor never stands before it
 * @returns each way as clauses with one anchor each, in order; a way that gives another number of clauses is left out
 */
export function cuttings(
  words: readonly Word[],
  anchors: readonly Anchor[],
  order: 'any' | 'name-first' = 'any',
): readonly (readonly Clause[])[] {
  const marks = atMarks(words, anchors);
  const before = anchors.map((_, index) => [
    index === 0 ? 0 : (anchors[index]?.from ?? 0),
    anchors[index + 1]?.from ?? words.length,
  ]);
  const behind = anchors.map(({ next }, index) => [
    index === 0 ? 0 : (anchors[index - 1]?.next ?? 0),
    index === anchors.length - 1 ? words.length : next,
  ]);
  const ways = [...(marks === null ? [] : [marks]), before, ...(order === 'any' ? [behind] : [])];
  return ways.map((way) =>
    way.map(([from = 0, to = 0], index) => {
      const anchor = anchors[index];
      return clauseOf(words, from, to, anchor ?? { from, next: from });
    }),
  );
}

/** Clauses between commas and links where each has exactly one anchor; what has none belongs to the clause before it. */
function atMarks(words: readonly Word[], anchors: readonly Anchor[]): number[][] | null {
  const inAnchor = (at: number) => anchors.some(({ from, next }) => at > from && at < next);
  const stretches: number[][] = [];
  let from = 0;
  for (let at = 0; at <= words.length; at += 1) {
    const word = words[at];
    const isCut = at === words.length || (word !== undefined && (word.kind === 'mark' || LINKS.has(word.word)) && !inAnchor(at));
    if (!isCut) continue;
    if (at > from) stretches.push([from, at]);
    from = at + 1;
  }
  const clauses: number[][] = [];
  let pending: number | null = null;
  for (const [start = 0, end = 0] of stretches) {
    const count = anchors.filter((anchor) => anchor.from >= start && anchor.next <= end).length;
    if (count > 1) return null;
    const last = clauses.at(-1);
    if (count === 1) {
      clauses.push([pending ?? start, end]);
      pending = null;
    } else if (last) last[1] = end;
    else pending ??= start;
  }
  return clauses.length === anchors.length ? clauses : null;
}

function clauseOf(words: readonly Word[], from: number, to: number, anchor: Anchor): Clause {
  let [start, end] = [from, to];
  const isLink = (word: Word | undefined) => word !== undefined && (word.kind === 'mark' || LINKS.has(word.word));
  while (start < end && isLink(words[start])) start += 1;
  while (end > start && isLink(words[end - 1])) end -= 1;
  const own = words.slice(start, end);
  const besides = words
    .slice(start, end)
    .filter((_, index) => start + index < anchor.from || start + index >= anchor.next)
    .filter(({ kind, word }) => kind !== 'mark' && !SILENT.has(word) && !FILLERS.has(word));
  return {
    words: own,
    isBare: besides.length === 0,
    isDenial: besides.length > 0 && besides.every(({ word }) => DENIALS.has(word)),
  };
}
