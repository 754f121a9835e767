/**
 * Plans as they lie in the database: what many plans share is kept once, under a name made from its content. Twelve years of
 * plans written out are a hundred megabytes to read and to write, of which two hundred checks repeat.
 */
import type { Plan, PlannedCheck, PlannedStation } from '../domain/plan/plan.ts';
import type { Unit } from '../domain/unit/unit.ts';

/** A plan with the names of its parts instead of the parts. */
export interface PackedPlan extends Omit<Plan, 'unit' | 'stations' | 'checks'> {
  readonly unit: string;
  readonly stations: string;
  readonly checks: readonly string[];
}

/** Never changed once written: another content has another name. */
export interface PartRow {
  readonly id: string;
  readonly part: Unit | readonly PlannedStation[] | PlannedCheck;
}

/** Rows with a `plan` were written before parts were kept apart. */
export interface PlanRow {
  readonly round: string;
  readonly plan?: Plan;
  readonly packed?: PackedPlan;
}

type Part = PartRow['part'];

/** The part of an object store that is needed. */
export interface PartStore {
  get(id: string): Promise<PartRow | undefined>;
  add(row: PartRow): Promise<unknown>;
}

/**
 * Sees to it that every part of the plans is kept.
 * @param store inside the transaction that the packed plans are written in
 * @param nameOf for tests
 * @returns packs any of these plans
 */
export async function planPacker(
  plans: readonly Plan[],
  store: PartStore,
  nameOf: (text: string) => string = contentName,
): Promise<(plan: Plan) => PackedPlan> {
  const textOf = new Map<Part, string>();
  const partOf = new Map<string, Part>();
  for (const part of plans.flatMap(partsOf)) {
    if (textOf.has(part)) continue;
    const text = JSON.stringify(part);
    textOf.set(part, text);
    partOf.set(text, part);
  }
  const kept = await Promise.all([...partOf.keys()].map((text) => store.get(nameOf(text))));
  const names = new Map<string, string>();
  const taken = new Map<string, string>();
  const adding: Promise<unknown>[] = [];
  for (const [index, [text, part]] of [...partOf].entries()) {
    let id = nameOf(text);
    let here = kept[index];
    // Another content under the same name: so unlikely that it never happens, and yet it must not change a plan.
    for (;;) {
      const other = taken.get(id) ?? (here === undefined ? undefined : JSON.stringify(here.part));
      if (other === undefined || other === text) break;
      id += '+';
      here = await store.get(id);
    }
    if (here === undefined && !taken.has(id)) adding.push(store.add({ id, part }));
    taken.set(id, text);
    names.set(text, id);
  }
  await Promise.all(adding);
  const named = (part: Part) => names.get(textOf.get(part) ?? '') ?? '';
  return (plan) => ({ ...plan, unit: named(plan.unit), stations: named(plan.stations), checks: plan.checks.map(named) });
}

const partsOf = ({ unit, stations, checks }: Plan): Part[] => [unit, stations, ...checks];

/** @returns undefined when one of its parts is gone */
export function unpackPlan(packed: PackedPlan, parts: ReadonlyMap<string, Part>): Plan | undefined {
  const unit = parts.get(packed.unit);
  const stations = parts.get(packed.stations);
  const checks = packed.checks.map((id) => parts.get(id));
  if (unit === undefined || stations === undefined || checks.includes(undefined)) return undefined;
  return { ...packed, unit, stations, checks } as Plan;
}

/** The names of the parts that a plan needs. */
export function partNames(row: PlanRow): readonly string[] {
  return row.packed === undefined ? [] : [row.packed.unit, row.packed.stations, ...row.packed.checks];
}

/**
 * 53 bits of a text, in ten or eleven letters and digits. Two texts of one name are told apart by whoever writes them.
 *
 * Method: two multiplicative hashes with different odd constants, mixed into each other at the end.
 */
export function contentName(text: string): string {
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (b & 0x1fffff) + (a >>> 0)).toString(36);
}
