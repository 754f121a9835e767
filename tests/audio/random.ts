/** A seeded stream of numbers in [0, 1): mulberry32 (public domain, T. Ettinger). The same seed gives the same clips everywhere. */
export type Random = () => number;

export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export function pick<T>(random: Random, items: readonly T[]): T {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new RangeError('pick requires at least one item');
  return item;
}

/** Roughly normal, mean 0, deviation 1 (sum of twelve uniforms). */
export function normal(random: Random): number {
  let sum = -6;
  for (let index = 0; index < 12; index += 1) sum += random();
  return sum;
}

/** A number from a text, for seeds. FNV-1a. */
export function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) value = Math.imul(value ^ text.charCodeAt(index), 0x01000193);
  return value >>> 0;
}
