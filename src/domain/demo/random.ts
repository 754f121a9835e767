/** Seeded random numbers: the same seed gives the same demo history on every device. */
export interface Random {
  /** 0 <= value < 1. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  readonly chance: (probability: number) => boolean;
  readonly pick: <T>(items: readonly [T, ...T[]]) => T;
}

/**
 * Mulberry32, and Box and Muller's transform for normal values.
 * Source: both in the public domain, from memory. Good enough for made-up readings, for nothing else.
 * @param seed any whole number
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    chance: (probability) => uniform() < probability,
    pick: (items) => items[Math.floor(uniform() * items.length)] ?? items[0],
  };
}
