/**
 * Loaded weight: what is put where decides what the axles and the tongue bear.
 *
 * Statics: moments about the axle center. A load at `aheadM` in front of it puts load * aheadM / L on the ball, L being the
 * distance from axle center to ball; behind the axle it takes that off.
 */

export interface LoadedItem {
  readonly name: string;
  /** kg, >= 0. */
  readonly massKg: number;
  /** Metres ahead of the axle center, negative behind it. */
  readonly aheadM: number;
}

export interface EmptyUnit {
  readonly massKg: number;
  /** Tongue weight of the empty unit, as weighed. */
  readonly tongueKg: number;
  /** Axle center (middle of a tandem) to ball, m, > 0. */
  readonly ballAheadM: number;
}

export interface LoadedUnit {
  readonly grossKg: number;
  readonly tongueKg: number;
  /** On all axles together. */
  readonly axlesKg: number;
  /** Tongue over gross. */
  readonly tongueShare: number;
}

export type LoadResult = { readonly ok: true; readonly loaded: LoadedUnit } | { readonly ok: false; readonly sentence: string };

/** Gross, axle and tongue weight of a loaded unit. */
export function loadedUnit(empty: EmptyUnit, items: readonly LoadedItem[]): LoadResult {
  const { massKg, tongueKg, ballAheadM } = empty;
  if (!(massKg > 0) || !Number.isFinite(massKg))
    return refuse('The empty weight is missing. It is on a scale ticket or the label.');
  if (!(tongueKg >= 0) || !(tongueKg < massKg)) {
    return refuse('The empty tongue weight is missing. Weigh the tongue once, empty and level.');
  }
  if (!(ballAheadM > 0) || !Number.isFinite(ballAheadM)) return refuse('Measure from the middle of the axles to the ball.');
  let gross = massKg;
  let tongue = tongueKg;
  for (const item of items) {
    const { name, massKg: mass, aheadM } = item;
    if (!(mass >= 0) || !Number.isFinite(mass)) return refuse(`Give ${name || 'each item'} a weight.`);
    if (!Number.isFinite(aheadM) || aheadM > ballAheadM + 1 || aheadM < -15) {
      return refuse(`Say where ${name || 'each item'} is: ahead of the axle or behind it.`);
    }
    gross += mass;
    tongue += (mass * aheadM) / ballAheadM;
  }
  return {
    ok: true,
    loaded: { grossKg: gross, tongueKg: tongue, axlesKg: gross - tongue, tongueShare: tongue / gross },
  };
}

const refuse = (sentence: string): LoadResult => ({ ok: false, sentence });

/** Mass of a filled volume, kg. @param densityKgPerM3 from the numbers; @param volumeM3 >= 0 */
export function liquidMass(volumeM3: number, densityKgPerM3: number): number {
  return volumeM3 * densityKgPerM3;
}
