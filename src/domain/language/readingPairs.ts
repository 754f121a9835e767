/** Which value belongs to which place, and what a correction replaces. */
import { convert, UNITS } from '../quantity/units.ts';
import type { SaidPlace } from './positions.ts';
import type { Findings, Item } from './readingItems.ts';
import { distinctValues, type Value } from './saidValue.ts';

export interface Draft {
  readonly place: SaidPlace | 'both' | 'all' | null;
  readonly value: Value | null;
}

export type Paired = readonly Draft[] | 'alternatives' | 'repeated' | null;

/** Segments between corrections; each later one replaces the last thing that was said. */
export function pairAfterCorrections(items: readonly Item[]): Paired {
  const segments: Item[][] = [[]];
  for (const item of items) {
    if (item.kind === 'correction') segments.push([]);
    else segments.at(-1)?.push(item);
  }
  const filled = segments.filter((segment) => segment.length > 0);
  let drafts: Draft[] = [];
  let isDangling = false;
  for (const [index, whole] of filled.entries()) {
    const { segment, dangles } = withoutDangling(whole, index < filled.length - 1);
    const next = pair(segment) ?? headAndRest(segment, index > 0);
    if (next === null || typeof next === 'string') return next;
    if (index === 0 || isDangling) drafts = [...drafts, ...next];
    else drafts = corrected(drafts, next);
    isDangling = dangles;
  }
  // A place without a value, or a value without its place among several.
  return drafts.some(({ value }) => value === null) ? null : drafts;
}

/** "five, left front, no, left rear six": the place before the correction is taken back with it. */
function withoutDangling(
  segment: readonly Item[],
  isCorrected: boolean,
): { readonly segment: readonly Item[]; readonly dangles: boolean } {
  const last = segment.at(-1);
  const dangles = isCorrected && segment.length > 2 && last?.kind === 'place' && segment[0]?.kind === 'place';
  return { segment: dangles ? segment.slice(0, -1) : segment, dangles };
}

/** "no, sixty, right front sixty-one": the first value corrects, the others are new. */
function headAndRest(segment: readonly Item[], isCorrection: boolean): Paired {
  const [head, ...rest] = segment;
  if (!isCorrection || head?.kind !== 'value' || rest.length === 0) return null;
  const others = pair(rest);
  return others === null || typeof others === 'string' ? others : [{ place: null, value: head.value }, ...others];
}

/** What was said before, with the first of `next` in place of what it corrects and the others added. */
function corrected(drafts: readonly Draft[], next: readonly Draft[]): Draft[] {
  const [first, ...more] = next;
  const last = drafts.at(-1);
  if (!first || !last) return [...next];
  const merged: Draft = { place: first.place ?? last.place, value: first.value ?? last.value };
  const same = drafts.findIndex((draft) => samePlace(draft.place, first.place) && first.place !== null && first.value !== null);
  const fixed = same >= 0 ? drafts.map((draft, at) => (at === same ? merged : draft)) : [...drafts.slice(0, -1), merged];
  return [...fixed, ...more];
}

const samePlace = (a: Draft['place'], b: Draft['place']): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && a !== null && b !== null && a.side === b.side && a.end === b.end);

/** "left sixty, same on the right" in the order of "left sixty, right the same". */
function dittosBehindPlaces(segment: readonly Item[]): readonly Item[] {
  const ordered = [...segment];
  for (let at = 0; at + 1 < ordered.length; at += 1) {
    const [item, next] = [ordered[at], ordered[at + 1]];
    if (item?.kind === 'value' && item.isDitto && next?.kind === 'place') {
      ordered[at] = next;
      ordered[at + 1] = item;
      at += 1;
    }
  }
  return ordered;
}

/** One stretch without corrections: places and values that alternate. */
function pair(segment: readonly Item[]): Paired {
  if (segment.some((item) => item.kind === 'or')) {
    return distinctOf(segment) > 1 ? 'alternatives' : null;
  }
  const row: { readonly kind: 'P' | 'V'; readonly place?: Draft['place']; readonly value?: Value; readonly pause: boolean }[] =
    [];
  for (const item of dittosBehindPlaces(segment)) {
    if (item.kind === 'value') {
      const before = row.at(-1);
      if (before?.kind === 'V' && !item.isDitto) {
        if (!sameValue(before.value, item.value)) return 'alternatives';
        continue;
      }
      row.push({ kind: 'V', value: item.value, pause: item.pauseBefore });
    } else if (item.kind === 'place' || item.kind === 'everywhere') {
      const placeOf = item.kind === 'place' ? item.place : item.both ? 'both' : 'all';
      const before = row.at(-1);
      if (before?.kind === 'P' && typeof before.place === 'object' && before.place && typeof placeOf === 'object') {
        const merged = mergePlaces(before.place, placeOf);
        if (!merged) return 'repeated';
        row[row.length - 1] = { ...before, place: merged };
        continue;
      }
      if (before?.kind === 'P') return null;
      row.push({ kind: 'P', place: placeOf, pause: item.pauseBefore });
    }
  }
  const kinds = row.map(({ kind }) => kind).join('');
  const draft = (place: Draft['place'], value: Value | null): Draft => ({ place, value });
  if (/^(PV)+$/.test(kinds) || /^(VP)+$/.test(kinds)) {
    const drafts: Draft[] = [];
    for (let index = 0; index < row.length; index += 2) {
      const [a, b] = [row[index], row[index + 1]];
      const place = a?.kind === 'P' ? a.place : b?.place;
      drafts.push(draft(place ?? null, (a?.kind === 'V' ? a.value : b?.value) ?? null));
    }
    return drafts;
  }
  if (kinds === 'V') return [draft(null, row[0]?.value ?? null)];
  if (kinds === 'P') return [draft(row[0]?.place ?? null, null)];
  // "sixty-two, right front sixty": the first is for the one asked about, if a pause says so.
  if (/^V(PV)+$/.test(kinds) && row[1]?.pause) {
    const rest = pair(segment.slice(segment.findIndex((item) => item.kind === 'value') + 1));
    return rest === null || typeof rest === 'string' ? rest : [draft(null, row[0]?.value ?? null), ...rest];
  }
  return null;
}

function mergePlaces(a: SaidPlace, b: SaidPlace): SaidPlace | null {
  if (a.side !== null && b.side !== null && a.side !== b.side) return null;
  if (a.end !== null && b.end !== null && a.end !== b.end) return null;
  return { side: a.side ?? b.side, end: a.end ?? b.end, from: a.from, next: b.next };
}

const sameValue = (a: Value | undefined, b: Value): boolean =>
  a !== undefined &&
  (a.unit === b.unit ? Math.abs(a.value - b.value) < 1e-9 : a.unit === 'count' || b.unit === 'count' ? false : sameInUnits(a, b));

function sameInUnits(a: Value, b: Value): boolean {
  if (UNITS[a.unit].dimension !== UNITS[b.unit].dimension) return false;
  return Math.abs(convert(a.value, a.unit, b.unit) - b.value) < 1e-6;
}

function distinctOf(items: readonly Item[]): number {
  return distinctValues(items.flatMap((item) => (item.kind === 'value' ? [item.value] : []))).length;
}

/** "five clicked, one moved": only what moved is counted; "all six clicked" is none. */
export function pairCounts(items: readonly Item[], found: Findings): Paired {
  if (found.negativePredicates > 0) {
    const values = distinctValues(items.flatMap((item) => (item.kind === 'value' ? [item.value] : [])));
    const onlyNone = values.length === 1 && values[0]?.value === 0;
    if (!onlyNone) return null;
  }
  return pairAfterCorrections(items);
}
