/** Places on the unit as they are said, in any order: "left front", "front left", "driver's side rear". */
import type { Position } from '../checks/expects.ts';
import type { Word } from './tokens.ts';

export type Side = 'left' | 'right';
export type End = 'front' | 'middle' | 'rear';

const SIDES: Readonly<Record<string, Side>> = {
  left: 'left',
  lefthand: 'left',
  driver: 'left',
  drivers: 'left',
  right: 'right',
  righthand: 'right',
  passenger: 'right',
  passengers: 'right',
  curb: 'right',
  curbside: 'right',
  curbs: 'right',
};
const ENDS: Readonly<Record<string, End>> = {
  front: 'front',
  fronts: 'front',
  forward: 'front',
  rear: 'rear',
  rears: 'rear',
  back: 'rear',
  aft: 'rear',
  middle: 'middle',
  center: 'middle',
};
/** Words that belong to a place and say nothing more. */
const JOINERS = new Set(['hand', 'side', 'sides', 'is']);

export interface SaidPlace {
  readonly side: Side | null;
  readonly end: End | null;
  readonly from: number;
  /** Index of the word behind it. */
  readonly next: number;
}

/** Behind these, "right" is an adverb: "right at sixty", "right on". */
const ADVERB_BEFORE = new Set(['at', 'around', 'about', 'on', 'near', 'in', 'now', 'there', 'here', 'up', 'down', 'away', 'by']);
/** After these, "right" is agreement: "all right", "that's right". */
const AGREEMENT_AFTER = new Set(['all', 'is', 'yes', 'yeah', 'about', 'looks', 'just', 'not', 'quite', 'okay']);

function sideAt(words: readonly Word[], at: number): Side | undefined {
  const word = words[at];
  if (word?.kind !== 'word' || !Object.hasOwn(SIDES, word.word)) return undefined;
  const side = SIDES[word.word];
  if (word.word === 'curb' && !['side'].includes(words[at + 1]?.word ?? '')) return undefined;
  if (word.word === 'right') {
    const before = words[at - 1];
    const next = words[at + 1];
    if (before?.word === 'all' || (before && AGREEMENT_AFTER.has(before.word) && !isPlaceWord(next))) return undefined;
    if (next && ADVERB_BEFORE.has(next.word)) return undefined;
  }
  if (word.word === 'left' && ['over', 'to', 'behind', 'alone', 'it'].includes(words[at + 1]?.word ?? '')) return undefined;
  return side;
}

function endAt(words: readonly Word[], at: number): End | undefined {
  const word = words[at];
  if (word?.kind !== 'word' || !Object.hasOwn(ENDS, word.word)) return undefined;
  if (word.word === 'back' && ['to', 'at', 'in', 'off', 'up', 'and', 'on'].includes(words[at + 1]?.word ?? '')) return undefined;
  if (word.word === 'forward' && words[at - 1]?.word === 'go') return undefined;
  return ENDS[word.word];
}

const isPlaceWord = (word: Word | undefined): boolean =>
  word?.kind === 'word' &&
  (Object.hasOwn(SIDES, word.word) || Object.hasOwn(ENDS, word.word) || word.word === 'side' || word.word === 'hand');

/** A place that begins at `at`: at most one side and one end. */
export function placeAt(words: readonly Word[], at: number): SaidPlace | null {
  let side: Side | null = null;
  let end: End | null = null;
  let next = at;
  while (next < words.length) {
    const word = words[next];
    const isSide: Side | undefined = side === null ? sideAt(words, next) : undefined;
    const isEnd: End | undefined = end === null ? endAt(words, next) : undefined;
    if (isSide) side = isSide;
    else if (isEnd) end = isEnd;
    else if ((side !== null || end !== null) && word && JOINERS.has(word.word) && joins(words, next)) {
      // "left hand rear", "driver's side front": the joiner is part of the place.
    } else break;
    next += 1;
  }
  return side === null && end === null ? null : { side, end, from: at, next };
}

function joins(words: readonly Word[], at: number): boolean {
  const { word } = words[at] ?? { word: '' };
  if (word === 'hand' || word === 'side' || word === 'sides') return true;
  // "driver's side" arrives as "driver is side".
  return word === 'is' && words[at + 1]?.word === 'side' && /^(driver|passenger|curb)$/.test(words[at - 1]?.word ?? '');
}

export function toPosition(side: Side | null, end: End | null): Position | null {
  if (side !== null && end !== null) return `${side}-${end}`;
  if (side !== null) return side;
  return end === 'front' || end === 'rear' ? end : null;
}

const sideOf = (position: Position): Side | null =>
  position.startsWith('left') ? 'left' : position.startsWith('right') ? 'right' : null;
const endOf = (position: Position): End | null =>
  position.endsWith('front') ? 'front' : position.endsWith('rear') ? 'rear' : position.endsWith('middle') ? 'middle' : null;

export type Resolved =
  | { readonly kind: 'position'; readonly position: Position }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'ambiguous'; readonly among: readonly Position[] };

/**
 * Which of the unit's positions a place means.
 * @param known positions of this check on this unit; empty where they are not known: the place is taken as said
 * @param asked the position asked about: "left" on the front axle is left front
 * @param before the place said just before: "left front fifty-eight, rear sixty"
 */
export function resolvePlace(
  place: Pick<SaidPlace, 'side' | 'end'>,
  known: readonly Position[],
  asked: Position | null,
  before: Pick<SaidPlace, 'side' | 'end'> | null,
): Resolved {
  const side = place.side ?? (place.end !== null && before?.side && before.end !== null ? before.side : null);
  const said = toPosition(side, place.end) ?? toPosition(place.side, place.end);
  if (known.length === 0) return said === null ? { kind: 'unknown' } : { kind: 'position', position: said };
  if (said !== null && known.includes(said)) return { kind: 'position', position: said };
  const fits = known.filter(
    (position) => (side === null || sideOf(position) === side) && (place.end === null || endOf(position) === place.end),
  );
  const [only] = fits;
  if (only !== undefined && fits.length === 1) return { kind: 'position', position: only };
  if (asked !== null && fits.includes(asked)) return { kind: 'position', position: asked };
  // "right sixty" while the left front is asked: the other end of the same axle.
  const sameAxle = asked === null ? [] : fits.filter((position) => place.end === null && endOf(position) === endOf(asked));
  const [onAxle] = sameAxle;
  if (onAxle !== undefined && sameAxle.length === 1) return { kind: 'position', position: onAxle };
  return fits.length === 0 ? { kind: 'unknown' } : { kind: 'ambiguous', among: fits };
}

/** "left front", as it is spoken. */
export function speakPosition(position: Position): string {
  return position.replace('-', ' ');
}
