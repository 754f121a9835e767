/** What tires carry, by index, size and pressure, and what an axle asks of them. */
import { LOAD_INDEX_ROWS, LOAD_RANGE_ROWS, ST_LOAD_PSI, ST_LOAD_ROWS, TIRES } from '../judge/numbers/tires.ts';
import { speakQuantity } from '../quantity/format.ts';
import { fromSI, toSI } from '../quantity/units.ts';

const byIndex: ReadonlyMap<number, number> = new Map(LOAD_INDEX_ROWS);

/** Load of one tire by its load index, kg; null for an index that is not in the table (60 to 130). Source: ISO 4000-1. */
export function loadOfIndex(index: number): number | null {
  return byIndex.get(index) ?? null;
}

/**
 * Load of an ST tire at a cold pressure, kg.
 *
 * Straight lines between the chart's columns; below the first column a line through it and zero, which is on the safe
 * side, since load grows more slowly than pressure. Never beyond the last column of its size.
 * @param size as molded, such as "ST205/75R15"
 * @param gaugePa cold pressure, Pa, >= 0
 * @returns null for a size that is not in the chart, or a pressure that is not one
 */
export function stLoadAt(size: string, gaugePa: number): number | null {
  if (!(gaugePa >= 0) || !Number.isFinite(gaugePa)) return null;
  const wanted = plainSize(size);
  const row = ST_LOAD_ROWS.find(([name]) => plainSize(name) === wanted);
  if (!row) return null;
  const [, ...loads] = row;
  const points: (readonly [psi: number, lb: number])[] = [[0, 0]];
  for (const [column, psi] of ST_LOAD_PSI.entries()) {
    const lb = loads[column] ?? 0;
    if (lb > 0) points.push([psi, lb]);
  }
  const psi = fromSI(gaugePa, 'psi');
  const last = points.at(-1) ?? [0, 0];
  if (psi >= last[0]) return toSI(last[1], 'lb');
  const above = points.findIndex(([at]) => at > psi);
  const [p0, l0] = points[above - 1] ?? [0, 0];
  const [p1, l1] = points[above] ?? last;
  return toSI(l0 + ((l1 - l0) * (psi - p0)) / (p1 - p0), 'lb');
}

/** "ST205/75R15" and "ST 205/75-15" are one size. */
function plainSize(size: string): string {
  return size
    .toUpperCase()
    .replace(/[\s-]/g, '')
    .replace(/R(?=\d+$)/, '')
    .replace(/^(ST\d+\/\d+)(\d{2})$/, '$1-$2');
}

export interface AxleTires {
  readonly tires: number;
  /** Of one tire, kg. */
  readonly loadKg: number;
  /** A passenger-car tire carries less on a trailer. */
  readonly isPassenger: boolean;
}

/** What the tires of one axle carry together, kg. Source: 49 CFR 571.110 S4.2 (from memory). */
export function axleCapacity({ tires, loadKg, isPassenger }: AxleTires): number {
  return (tires * loadKg) / (isPassenger ? TIRES.passengerDerate.value : 1);
}

/**
 * A word on load and warm weather; null where there is none to say. ST tires without a speed symbol are made for 65 mph.
 * @param loadShare load over capacity, >= 0
 */
export function heatWarning(outsideK: number | null, loadShare: number | null, display: 'us' | 'metric' = 'us'): string | null {
  if (outsideK === null || outsideK < TIRES.hot.si) return null;
  const speed = speakQuantity(TIRES.noSymbolSpeed.si, 'mph', display);
  return loadShare !== null && loadShare > 0.85
    ? `It is hot and the tires carry nearly all they can. Stay under ${speed} and stop to feel the hubs.`
    : `It is hot. Stay under ${speed}; heat is what ends trailer tires.`;
}

/**
 * A word where load range and sidewall pressure do not go together, as they usually do on ST metric tires; null otherwise.
 * Small bias tires break the rule: a question, never a refusal.
 */
export function rangeDoubt(loadRange: string | null, sidewallMaxPa: number | null): string | null {
  const usual = LOAD_RANGE_ROWS.find(([letter]) => letter === loadRange?.trim().toUpperCase())?.[1];
  if (usual === undefined || sidewallMaxPa === null || !(sidewallMaxPa > 0)) return null;
  // Labels round: 50 psi is printed as 340 or 350 kPa.
  if (Math.abs(sidewallMaxPa - toSI(usual, 'psi')) <= LABEL_ROUNDING_PA) return null;
  return `Load range ${loadRange?.trim().toUpperCase()} usually goes with ${usual} pounds on the sidewall. Read both again.`;
}

const LABEL_ROUNDING_PA = 10_000;
