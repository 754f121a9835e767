/**
 * The order walked: least walking and kneeling over the stations of this unit, with every check after those it must
 * follow. Exact, by dynamic programming over what has been done and where one stands.
 *
 * Checks of one station that become possible together form a group. A visit to a station does whatever is possible
 * there; it may leave kneeling work undone only where more kneeling work at this station must wait anyway. Nothing
 * better exists: doing more at a place one stands at never makes the rest longer. A station is visited again where
 * precedence leaves no other way.
 *
 * Among ways of equal length the one wins that comes earlier to checks whose failure stops the tow.
 */

/** One check to be placed. */
export interface Task {
  /** Index of its station in the distance table. */
  readonly station: number;
  readonly kneeling: boolean;
  /** Its failure stops the tow. */
  readonly urgent: boolean;
  /** Indexes of tasks that must be done before, at any station. */
  readonly after: readonly number[];
}

export interface Visit {
  readonly station: number;
  /** Indexes of tasks in the order asked. */
  readonly tasks: readonly number[];
}

export interface Walk {
  readonly visits: readonly Visit[];
  /** Sum of the ways between visits, in the table's unit. */
  readonly walked: number;
  /** How often one kneels down. */
  readonly kneels: number;
}

interface Group {
  readonly station: number;
  readonly kneeling: boolean;
  readonly tasks: readonly number[];
  /** Groups that must be done before. */
  readonly needs: Mask;
  readonly urgent: number;
}

/** A set of groups as two bit fields; together they make one exact number to look up by. */
interface Mask {
  readonly low: number;
  readonly high: number;
}

const LOW_BITS = 30;
const HIGH_BITS = 22;
const NOTHING: Mask = { low: 0, high: 0 };

const bit = (index: number): Mask =>
  index < LOW_BITS ? { low: 2 ** index, high: 0 } : { low: 0, high: 2 ** (index - LOW_BITS) };
const join = (a: Mask, b: Mask): Mask => ({ low: a.low | b.low, high: a.high | b.high });
const holds = (a: Mask, b: Mask): boolean => (a.low & b.low) === b.low && (a.high & b.high) === b.high;
const isSame = (a: Mask, b: Mask): boolean => a.low === b.low && a.high === b.high;
const keyOf = ({ low, high }: Mask): number => high * 2 ** LOW_BITS + low;

/** Walking and kneeling weigh so much that no sum of lateness can outweigh the least of them. */
const MAIN = 2 ** 22;

/**
 * The least walk over the stations.
 * @param distance square table of non-negative whole numbers (millimetres); `distance[i][i]` is 0
 * @param kneel what kneeling down once counts for, in the same unit
 * @throws RangeError when the precedence goes in a circle, an index is out of range, or there are more than 52 groups
 */
export function leastWalk(tasks: readonly Task[], distance: readonly (readonly number[])[], kneel: number): Walk {
  if (tasks.length === 0) return { visits: [], walked: 0, kneels: 0 };
  const ancestors = ancestorsOf(tasks);
  const groups = groupTasks(tasks, ancestors);
  if (groups.length > LOW_BITS + HIGH_BITS) throw new RangeError('leastWalk holds at most 52 groups of checks');
  return new Search(groups, distance, kneel).walk(inOrder(tasks));
}

/**
 * Every task that must come before each one, transitively.
 * @throws RangeError when a task comes before itself or an index is out of range
 */
function ancestorsOf(tasks: readonly Task[]): readonly ReadonlySet<number>[] {
  const found: (ReadonlySet<number> | undefined)[] = tasks.map(() => undefined);
  const underWay = new Set<number>();
  const visit = (index: number): ReadonlySet<number> => {
    const known = found[index];
    if (known) return known;
    const task = tasks[index];
    if (!task) throw new RangeError(`leastWalk knows no task ${index}`);
    if (underWay.has(index)) throw new RangeError('leastWalk requires precedence without a circle');
    underWay.add(index);
    const all = new Set<number>();
    for (const before of task.after) {
      all.add(before);
      for (const further of visit(before)) all.add(further);
    }
    underWay.delete(index);
    found[index] = all;
    return all;
  };
  return tasks.map((_, index) => visit(index));
}

/** Task indexes such that each follows what it must follow, and otherwise as given. */
function inOrder(tasks: readonly Task[]): readonly number[] {
  const placed = new Set<number>();
  const order: number[] = [];
  const place = (index: number): void => {
    if (placed.has(index)) return;
    placed.add(index);
    for (const before of tasks[index]?.after ?? []) place(before);
    order.push(index);
  };
  for (let index = 0; index < tasks.length; index++) place(index);
  return order;
}

/**
 * Tasks of one station with the same work to wait for elsewhere, the same kneeling work to wait for here, and alike in
 * kneeling. Groups made so never wait for each other in a circle.
 */
function groupTasks(tasks: readonly Task[], ancestors: readonly ReadonlySet<number>[]): readonly Group[] {
  const members = new Map<string, number[]>();
  const keys = tasks.map((task, index) => {
    const waitsFor = [...(ancestors[index] ?? [])]
      .filter((before) => tasks[before]?.station !== task.station || tasks[before]?.kneeling === true)
      .sort((a, b) => a - b);
    return `${task.station}/${Number(task.kneeling)}/${waitsFor.join(',')}`;
  });
  for (const [index, key] of keys.entries()) {
    const list = members.get(key);
    if (list) list.push(index);
    else members.set(key, [index]);
  }
  const indexOfKey = new Map([...members.keys()].map((key, index) => [key, index]));
  return [...members].map(([key, list]): Group => {
    const first = tasks[list[0] ?? -1];
    if (!first) throw new RangeError('leastWalk requires every group to have a task');
    let needs = NOTHING;
    for (const member of list) {
      for (const before of ancestors[member] ?? []) {
        const other = keys[before];
        if (other !== undefined && other !== key) needs = join(needs, bit(indexOfKey.get(other) ?? 0));
      }
    }
    return {
      station: first.station,
      kneeling: first.kneeling,
      tasks: list,
      needs,
      urgent: list.filter((member) => tasks[member]?.urgent === true).length,
    };
  });
}

interface Candidate {
  readonly done: Mask;
  readonly kneels: boolean;
  readonly urgent: number;
}

interface Step {
  readonly cost: number;
  readonly station: number;
  readonly done: Mask;
  readonly kneels: boolean;
}

class Search {
  private readonly groups: readonly Group[];
  private readonly distance: readonly (readonly number[])[];
  private readonly kneel: number;
  private readonly everything: Mask;
  private readonly byStation: ReadonlyMap<number, readonly number[]>;
  /** By station stood at (-1: none yet), then by what is done. */
  private readonly best = new Map<number, Map<number, Step>>();

  constructor(groups: readonly Group[], distance: readonly (readonly number[])[], kneel: number) {
    this.groups = groups;
    this.distance = distance;
    this.kneel = kneel;
    this.everything = groups.reduce((mask, _, index) => join(mask, bit(index)), NOTHING);
    const byStation = new Map<number, number[]>();
    for (const [index, { station }] of groups.entries()) byStation.set(station, [...(byStation.get(station) ?? []), index]);
    this.byStation = byStation;
  }

  walk(sequence: readonly number[]): Walk {
    const visits: Visit[] = [];
    let done = NOTHING;
    let at = -1;
    let walked = 0;
    let kneels = 0;
    while (!isSame(done, this.everything)) {
      const before = done;
      const step = this.next(done, at);
      const fresh = new Set(
        this.groups.flatMap(({ tasks }, index) => (holds(step.done, bit(index)) && !holds(before, bit(index)) ? tasks : [])),
      );
      visits.push({ station: step.station, tasks: sequence.filter((task) => fresh.has(task)) });
      walked += this.way(at, step.station);
      kneels += Number(step.kneels);
      done = step.done;
      at = step.station;
    }
    return { visits, walked, kneels };
  }

  /** The best next visit, and the cost from here to the end. */
  private next(done: Mask, at: number): Step {
    const here = this.best.get(at) ?? new Map<number, Step>();
    this.best.set(at, here);
    const key = keyOf(done);
    const known = here.get(key);
    if (known) return known;
    const tasksDone = this.countTasks(done);
    let best: Step | null = null;
    for (const station of this.byStation.keys()) {
      if (station === at) continue;
      for (const { done: after, kneels, urgent } of this.candidates(station, done)) {
        const main = this.way(at, station) + (kneels ? this.kneel : 0);
        const rest = isSame(after, this.everything) ? 0 : this.next(after, station).cost;
        const cost = main * MAIN + urgent * tasksDone + rest;
        if (best === null || cost < best.cost) best = { cost, station, done: after, kneels };
      }
    }
    // Standing at the only station left, with work that waits on nothing elsewhere, cannot happen: it was done on arrival.
    best ??= { cost: Number.POSITIVE_INFINITY, station: at, done: this.everything, kneels: false };
    here.set(key, best);
    return best;
  }

  /** What a visit to a station can do: all that is possible, or all but the kneeling where kneeling must wait in part. */
  private candidates(station: number, done: Mask): readonly Candidate[] {
    const all = this.visit(station, done, true);
    if (all === null) return [];
    if (!all.kneels || !this.hasKneelingLeft(station, all.done)) return [all];
    const standing = this.visit(station, done, false);
    return standing === null ? [all] : [all, standing];
  }

  private visit(station: number, done: Mask, mayKneel: boolean): Candidate | null {
    let now = done;
    let kneels = false;
    let urgent = 0;
    for (let grew = true; grew; ) {
      grew = false;
      for (const index of this.byStation.get(station) ?? []) {
        const group = this.groups[index];
        if (!group || holds(now, bit(index)) || (group.kneeling && !mayKneel) || !holds(now, group.needs)) continue;
        now = join(now, bit(index));
        kneels ||= group.kneeling;
        urgent += group.urgent;
        grew = true;
      }
    }
    return isSame(now, done) ? null : { done: now, kneels, urgent };
  }

  private hasKneelingLeft(station: number, done: Mask): boolean {
    return (this.byStation.get(station) ?? []).some((index) => this.groups[index]?.kneeling === true && !holds(done, bit(index)));
  }

  private countTasks(done: Mask): number {
    return this.groups.reduce((sum, { tasks }, index) => sum + (holds(done, bit(index)) ? tasks.length : 0), 0);
  }

  /** From nowhere the first station costs nothing: the round begins where it says. */
  private way(from: number, to: number): number {
    if (from < 0) return 0;
    const metres = this.distance[from]?.[to];
    if (metres === undefined || !(metres >= 0)) throw new RangeError('leastWalk requires a distance for every pair');
    return metres;
  }
}
