import type { Position } from '../checks/expects.ts';
import { inForce } from '../history/inForce.ts';
import type { RoundRecord } from '../history/series.ts';
import type { UnitEvent } from '../round/entry.ts';

export interface LugRound {
  readonly at: number;
  readonly round: string;
  /** Lugs of this wheel that moved under the wrench. */
  readonly moved: number;
  /** Numbers of the lugs, where a note or detail named them. */
  readonly named: readonly number[];
}

export interface LugPattern {
  /** Rounds looked at, and those in which a lug moved. */
  readonly rounds: number;
  readonly movedIn: number;
  /** Chance of so many with an ordinary wheel. */
  readonly p: number;
  /** A lug named in at least two rounds, and in how many. */
  readonly lug: { readonly number: number; readonly times: number } | null;
}

/**
 * Whether a wheel's lugs keep moving: not the settling after a wheel was put on, but round after round.
 *
 * Shape: rounds of one wheel, oldest first; the newest six are looked at. Pure.
 * Method: binomial upper tail with a background of one round in ten, a design choice; no published rate is known to us.
 * @returns null with fewer than four rounds
 */
export function lugPattern(rounds: readonly LugRound[], newest: number, background: number): LugPattern | null {
  const seen = rounds.slice(-newest);
  if (seen.length < 4) return null;
  const movedIn = seen.filter((round) => round.moved > 0).length;
  const times = new Map<number, number>();
  for (const round of seen) for (const number of new Set(round.named)) times.set(number, (times.get(number) ?? 0) + 1);
  const [most] = [...times].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  const lug = most && most[1] >= 2 && most[1] * 2 >= movedIn ? { number: most[0], times: most[1] } : null;
  return { rounds: seen.length, movedIn, p: binomialTail(seen.length, movedIn, background), lug };
}

/**
 * Chance of at least `hits` in `n` tries.
 * @param n 0 .. 100
 * @param chance 0 < chance < 1
 */
export function binomialTail(n: number, hits: number, chance: number): number {
  let probability = (1 - chance) ** n;
  let tail = 0;
  for (let k = 0; k <= n; k++) {
    if (k >= hits) tail += probability;
    probability *= ((n - k) / (k + 1)) * (chance / (1 - chance));
  }
  return Math.min(1, tail);
}

/** A wheel put on or a tire changed settles: the next rounds say nothing about the studs. */
const SETTLING_ROUNDS = 2;

/** The rounds of one wheel, without those in which it was settling after it was mounted. */
export function lugRounds(
  records: readonly RoundRecord[],
  events: readonly UnitEvent[],
  key: string,
  position: Position | null,
): LugRound[] {
  const mounted = events
    .filter((event) => (event.kind === 'wheel-mounted' || event.kind === 'tire-changed') && event.position === position)
    .map((event) => event.at);
  const rounds: LugRound[] = [];
  let settling = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (const { round, entries } of [...records].sort((a, b) => a.round.startedAt - b.round.startedAt)) {
    const entry = inForce(entries).get(key);
    if (entry?.kind !== 'answered' || entry.answer.kind !== 'count') continue;
    if (mounted.some((at) => at > last && at <= entry.at)) settling = SETTLING_ROUNDS;
    last = entry.at;
    if (settling > 0) settling--;
    else {
      const texts = entries.flatMap((other) => (other.kind === 'noted' && other.key === key && other.text ? [other.text] : []));
      rounds.push({
        at: entry.at,
        round: round.id,
        moved: entry.answer.count,
        named: [entry.how.transcript ?? '', ...texts].flatMap(lugsNamed),
      });
    }
  }
  return rounds;
}

const NUMBERS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8 };

/** Lug numbers named in a text: "lug three moved", "studs 2 and 5", "number four". */
export function lugsNamed(text: string): number[] {
  const found: number[] = [];
  const list =
    /\b(?:lugs?|studs?|nuts?|number|numbers)\s+((?:(?:one|two|three|four|five|six|seven|eight|[1-8])(?:\s*(?:,|and)\s*|\b\s*))+)/gi;
  for (const [, numbers] of text.matchAll(list)) {
    for (const word of (numbers ?? '').toLowerCase().split(/[^a-z0-9]+/)) {
      const number = NUMBERS[word] ?? (/^[1-8]$/.test(word) ? Number(word) : null);
      if (number !== null) found.push(number);
    }
  }
  return found;
}
