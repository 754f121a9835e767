/**
 * Values from words: how many, of what, and where. One utterance may hold several values with their places, a value taken
 * back and replaced, or two values where only one can be true; what cannot be settled is said to be unclear, never chosen.
 */
import type { Position } from '../checks/expects.ts';
import { isNounWord, MOVED_WORDS } from './countWords.ts';
import type { SpokenReading, UnclearWhy } from './meaning.ts';
import type { NumberOptions } from './numbers.ts';
import { homophoneAtom } from './numberWords.ts';
import { resolvePlace, type SaidPlace } from './positions.ts';
import { type Findings, type Item, type ReadingsInput, scan } from './readingItems.ts';
import { type Draft, pairAfterCorrections, pairCounts } from './readingPairs.ts';
import { checked, dimensionOf } from './saidValue.ts';
import { unitAt } from './unitWords.ts';

export type ReadingsResult =
  | {
      readonly kind: 'readings';
      readonly readings: readonly SpokenReading[];
      readonly hedged: boolean;
      readonly certainty: number;
      /** "change left rear to fifty-five": a place was named to be corrected. */
      readonly changes: boolean;
      readonly fromLast: boolean;
    }
  | {
      readonly kind: 'unclear';
      readonly why: UnclearWhy;
      readonly candidates: readonly SpokenReading[];
      /** Words that belong to nothing known; many of them are talk beside the work. */
      readonly strangers: number;
      readonly hasValue: boolean;
    };

/**
 * Parse readings or a count.
 * Shape: linear in the number of words. Never throws.
 */
export function parseReadings(input: ReadingsInput): ReadingsResult {
  const first = parseOnce(input, 'inside');
  if (first.kind === 'readings' || first.hasValue || !isBareSound(input)) return first;
  // "for", "ate lugs": the only words there are, where only a number makes sense.
  const again = parseOnce(input, 'anywhere');
  return again.kind === 'readings' && again.readings.length === 1
    ? { ...again, certainty: Math.min(again.certainty, 0.7) }
    : first;
}

/** Around a word that only sounds like a number nothing may stand but what goes with a number. */
function isBareSound({ words, expects, names }: ReadingsInput): boolean {
  const nameWords = new Set(names.flat());
  return (
    words.length <= 6 &&
    words.every(
      ({ kind, word }, at) =>
        kind === 'mark' ||
        homophoneAtom(word) !== undefined ||
        BESIDE_A_SOUND.has(word) ||
        nameWords.has(word) ||
        MOVED_WORDS.has(word) ||
        (expects.kind === 'count' && isNounWord(word, expects)) ||
        unitAt(words, at, dimensionOf(expects)) !== null,
    )
  );
}

const BESIDE_A_SOUND = new Set(
  'uh um it is that reads says left right front rear thirty seconds second foot pounds of'.split(' '),
);

function parseOnce(input: ReadingsInput, homophones: NumberOptions['homophones']): ReadingsResult {
  const found = scan(input, homophones);
  return settle(input, found);
}

/** From what was found to readings, or to the reason why not. */
function settle(input: ReadingsInput, found: Findings): ReadingsResult {
  const { context, expects } = input;
  const hasValue =
    found.items.some((item) => item.kind === 'value') ||
    found.outOfRange.length > 0 ||
    found.ambiguous.length > 0 ||
    found.wrongUnit;
  const unclear = (why: UnclearWhy, candidates: readonly SpokenReading[] = []): ReadingsResult => ({
    kind: 'unclear',
    why,
    candidates,
    strangers: found.strangers,
    hasValue,
  });
  const listed = found.items.flatMap((item) =>
    item.kind === 'value'
      ? [{ position: null, value: item.value.value, unit: item.value.unit, unitSaid: item.value.unitSaid }]
      : [],
  );
  if (found.strangers > 0) return unclear(found.strangers > 1 || !hasValue ? 'chatter' : 'ambiguous', listed);
  if (found.wrongUnit) return unclear('wrong-unit');
  if (found.unknownPlace) return unclear('unknown-position', listed);
  if (found.identity) return unclear('ambiguous', listed);
  if (found.notAStep) return unclear('not-a-step');
  if (found.outOfRange.length > 0)
    return unclear(found.items.some((item) => item.kind === 'value') ? 'contradiction' : 'out-of-range', found.outOfRange);
  if (found.ambiguous.length > 0) return unclear('ambiguous', [...found.ambiguous, ...listed]);
  if (found.range) return unclear('range', listed);
  const items = withoutNegated(found.items);
  if (found.same && !items.some((item) => item.kind === 'value')) return sameAsLast(input, items, found);
  const lastItem = items.at(-1);
  if (lastItem?.kind === 'correction' && items.length > 1) return unclear('incomplete');
  if (!items.some((item) => item.kind === 'value')) {
    const hasPlace = items.some((item) => item.kind === 'place');
    return unclear(hasPlace ? 'incomplete' : 'no-value');
  }
  const paired = expects.kind === 'count' ? pairCounts(items, found) : pairAfterCorrections(items);
  if (paired === null) return unclear('ambiguous', listed);
  if (paired === 'alternatives') return unclear('alternatives', listed);
  if (paired === 'repeated') return unclear('repeated-position', listed);
  return place(paired, context, found, unclear);
}

/** "not sixty" says what it is not. */
function withoutNegated(items: readonly Item[]): readonly Item[] {
  const kept: Item[] = [];
  for (let index = 0; index < items.length; index += 1) {
    const item = items[index];
    if (item?.kind === 'not') {
      if (items[index + 1]?.kind === 'value') index += 1;
      continue;
    }
    if (item) kept.push(item);
  }
  return kept;
}

function sameAsLast(input: ReadingsInput, items: readonly Item[], found: Findings): ReadingsResult {
  const { last } = input.context;
  const fail = (why: UnclearWhy): ReadingsResult => ({ kind: 'unclear', why, candidates: [], strangers: 0, hasValue: false });
  if (!last || items.some((item) => item.kind === 'place' || item.kind === 'everywhere')) return fail('no-last');
  const unit = input.expects.kind === 'count' ? 'count' : last.unit;
  const result = checked({ value: last.value, unit, unitSaid: false, certainty: 1 }, input.expects);
  if (result.kind !== 'value') return fail(result.kind === 'outside' ? 'out-of-range' : 'no-last');
  const { value } = result;
  return {
    kind: 'readings',
    readings: [{ position: null, value: value.value, unit: value.unit, unitSaid: false }],
    hedged: found.hedged,
    certainty: 0.8,
    changes: false,
    fromLast: true,
  };
}

function place(
  drafts: readonly Draft[],
  context: ReadingsInput['context'],
  found: Findings,
  unclear: (why: UnclearWhy, candidates?: readonly SpokenReading[]) => ReadingsResult,
): ReadingsResult {
  const placed = context.position !== null || context.positions.length > 0;
  const readings: SpokenReading[] = [];
  let certainty = found.certainty;
  let before = null as SaidPlace | null;
  for (const { place: said, value } of drafts) {
    if (value === null) return unclear('incomplete');
    certainty = Math.min(certainty, value.certainty);
    const reading = (position: Position | null): SpokenReading => ({
      position,
      value: value.value,
      unit: value.unit,
      unitSaid: value.unitSaid,
    });
    if (said === null) {
      if (drafts.length > 1 && readings.length > 0) return unclear('ambiguous');
      readings.push(reading(null));
      continue;
    }
    if (!placed) return unclear('unknown-position');
    if (said === 'both' || said === 'all') {
      const all = everywhere(said, context.positions);
      if (all.length === 0) return unclear('unknown-position');
      for (const position of all) readings.push(reading(position));
      continue;
    }
    const resolved = resolvePlace(said, context.positions, context.position, before);
    if (resolved.kind === 'unknown') return unclear('unknown-position');
    if (resolved.kind === 'ambiguous') return unclear('ambiguous');
    readings.push(reading(resolved.position));
    before = { ...said, side: said.side ?? before?.side ?? null };
  }
  const kept: SpokenReading[] = [];
  for (const reading of readings) {
    const key = reading.position ?? context.position;
    const same = kept.find((one) => (one.position ?? context.position) === key);
    if (!same) kept.push(reading);
    else if (same.value !== reading.value || same.unit !== reading.unit) return unclear('repeated-position', readings);
  }
  return { kind: 'readings', readings: kept, hedged: found.hedged, certainty, changes: found.changes, fromLast: false };
}

function everywhere(which: 'both' | 'all', positions: readonly Position[]): readonly Position[] {
  if (which === 'all') return positions.length <= 6 ? positions : [];
  if (positions.length === 2) return positions;
  const sides = positions.filter((position) => position === 'left' || position === 'right');
  return sides.length === 2 ? sides : [];
}
