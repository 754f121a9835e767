/**
 * The order walked: least walking and kneeling over the stations of this unit, with every check after those it must
 * follow. Exact: dynamic programming over (what has been done, where one stands), explored best first.
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
  readonly tasks: number;
}

/** A place in the search: what is done, where one stands, and how one came here. */
interface Node {
  readonly done: Mask;
  readonly at: number;
  readonly cost: number;
  /** Cost so far plus a bound on the rest that is never too high. */
  readonly promise: number;
  readonly tasksDone: number;
  readonly from: Node | null;
  readonly kneels: boolean;
}

/**
 * Best-first search over (what is done, where one stands). The bound on what is still to come: the shortest tree that
 * joins the stations left, the way to the nearest of them, and one kneeling at each that has kneeling work left. No walk
 * is shorter than that, so the first finished walk taken from the queue is the least.
 */
class Search {
  private readonly groups: readonly Group[];
  private readonly distance: readonly (readonly number[])[];
  private readonly kneel: number;
  private readonly everything: Mask;
  private readonly urgentTotal: number;
  private readonly stations: readonly number[];
  private readonly byStation: ReadonlyMap<number, readonly number[]>;
  private readonly trees = new Map<number, number>();
  private readonly queue = new Queue();
  /** Least cost found so far, by station stood at, then by what is done. */
  private readonly reached = new Map<number, Map<number, number>>();

  constructor(groups: readonly Group[], distance: readonly (readonly number[])[], kneel: number) {
    this.groups = groups;
    this.distance = distance;
    this.kneel = kneel;
    this.everything = groups.reduce((mask, _, index) => join(mask, bit(index)), NOTHING);
    this.urgentTotal = groups.reduce((sum, { urgent }) => sum + urgent, 0);
    const byStation = new Map<number, number[]>();
    for (const [index, { station }] of groups.entries()) byStation.set(station, [...(byStation.get(station) ?? []), index]);
    this.byStation = byStation;
    this.stations = [...byStation.keys()];
  }

  /** @param sequence task indexes in an order that keeps precedence within a station */
  walk(sequence: readonly number[]): Walk {
    this.queue.push({ done: NOTHING, at: -1, cost: 0, promise: 0, tasksDone: 0, from: null, kneels: false });
    for (let node = this.queue.pop(); node; node = this.queue.pop()) {
      if (isSame(node.done, this.everything)) return this.trace(node, sequence);
      if (node.cost > this.costAt(node.at, node.done)) continue;
      this.expand(node);
    }
    throw new RangeError('leastWalk requires precedence without a circle');
  }

  private expand(node: Node): void {
    for (const station of this.stations) {
      if (station === node.at) continue;
      for (const { done, kneels, urgent, tasks } of this.candidates(station, node.done)) {
        const main = this.way(node.at, station) + (kneels ? this.kneel : 0);
        const cost = node.cost + main * MAIN + urgent * node.tasksDone;
        if (cost >= this.costAt(station, done)) continue;
        this.keepCost(station, done, cost);
        const tasksDone = node.tasksDone + tasks;
        const promise = cost + this.boundOn(station, done, tasksDone);
        this.queue.push({ done, at: station, cost, promise, tasksDone, from: node, kneels });
      }
    }
  }

  private trace(last: Node, sequence: readonly number[]): Walk {
    const nodes: Node[] = [];
    for (let node: Node | null = last; node?.from; node = node.from) nodes.unshift(node);
    let walked = 0;
    let kneels = 0;
    const visits = nodes.map((node): Visit => {
      const before = node.from ?? node;
      walked += this.way(before.at, node.at);
      kneels += Number(node.kneels);
      const fresh = new Set(
        this.groups.flatMap(({ tasks }, index) => (holds(node.done, bit(index)) && !holds(before.done, bit(index)) ? tasks : [])),
      );
      return { station: node.at, tasks: sequence.filter((task) => fresh.has(task)) };
    });
    return { visits, walked, kneels };
  }

  private costAt(at: number, done: Mask): number {
    return this.reached.get(at)?.get(keyOf(done)) ?? Number.POSITIVE_INFINITY;
  }

  private keepCost(at: number, done: Mask, cost: number): void {
    const here = this.reached.get(at);
    if (here) here.set(keyOf(done), cost);
    else this.reached.set(at, new Map([[keyOf(done), cost]]));
  }

  private boundOn(at: number, done: Mask, tasksDone: number): number {
    let left = 0;
    let kneelings = 0;
    let urgentLeft = this.urgentTotal;
    let nearest = Number.POSITIVE_INFINITY;
    for (const [order, station] of this.stations.entries()) {
      let isLeft = false;
      let kneeling = false;
      for (const index of this.byStation.get(station) ?? []) {
        const group = this.groups[index];
        if (!group) continue;
        if (holds(done, bit(index))) {
          urgentLeft -= group.urgent;
          continue;
        }
        isLeft = true;
        kneeling ||= group.kneeling;
      }
      if (!isLeft) continue;
      left += 2 ** order;
      kneelings += Number(kneeling);
      nearest = Math.min(nearest, this.way(at, station));
    }
    if (left === 0) return 0;
    return (nearest + this.treeOver(left) + kneelings * this.kneel) * MAIN + urgentLeft * tasksDone;
  }

  /** Length of the shortest tree over a set of stations (Prim), remembered by set. */
  private treeOver(set: number): number {
    const known = this.trees.get(set);
    if (known !== undefined) return known;
    const outside = new Map<number, number>();
    for (const [order, station] of this.stations.entries()) {
      if (Math.floor(set / 2 ** order) % 2 === 1) outside.set(station, Number.POSITIVE_INFINITY);
    }
    let length = 0;
    let [at] = outside.keys();
    while (at !== undefined) {
      outside.delete(at);
      let next: number | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const [station, reach] of outside) {
        const shorter = Math.min(reach, this.way(at, station));
        outside.set(station, shorter);
        if (shorter < least) {
          least = shorter;
          next = station;
        }
      }
      if (next !== undefined) length += least;
      at = next;
    }
    this.trees.set(set, length);
    return length;
  }

  /** What a visit to a station can do: all that is possible, or all but the kneeling where kneeling must wait in part. */
  private candidates(station: number, done: Mask): readonly Candidate[] {
    const all = this.visit(station, done, true);
    if (all === null) return [];
    const found = this.isWorthwhile(station, done, all.done) ? [all] : [];
    if (!all.kneels || !this.hasKneelingLeft(station, all.done)) return found;
    const standing = this.visit(station, done, false);
    return standing !== null && this.isWorthwhile(station, done, standing.done) ? [...found, standing] : found;
  }

  /**
   * A visit that leaves work at its station, and does nothing that work elsewhere waits for, can be left out: the same
   * is done on the next visit here, and no way grows longer by it.
   */
  private isWorthwhile(station: number, before: Mask, after: Mask): boolean {
    const groups = this.byStation.get(station) ?? [];
    if (groups.every((index) => holds(after, bit(index)))) return true;
    const gained: Mask = { low: after.low & ~before.low, high: after.high & ~before.high };
    return this.groups.some(
      ({ station: other, needs }, index) =>
        other !== station && !holds(after, bit(index)) && ((needs.low & gained.low) !== 0 || (needs.high & gained.high) !== 0),
    );
  }

  private visit(station: number, done: Mask, mayKneel: boolean): Candidate | null {
    let now = done;
    let kneels = false;
    let urgent = 0;
    let tasks = 0;
    for (let grew = true; grew; ) {
      grew = false;
      for (const index of this.byStation.get(station) ?? []) {
        const group = this.groups[index];
        if (!group || holds(now, bit(index)) || (group.kneeling && !mayKneel) || !holds(now, group.needs)) continue;
        now = join(now, bit(index));
        kneels ||= group.kneeling;
        urgent += group.urgent;
        tasks += group.tasks.length;
        grew = true;
      }
    }
    return isSame(now, done) ? null : { done: now, kneels, urgent, tasks };
  }

  private hasKneelingLeft(station: number, done: Mask): boolean {
    return (this.byStation.get(station) ?? []).some((index) => this.groups[index]?.kneeling === true && !holds(done, bit(index)));
  }

  /** From nowhere the first station costs nothing: the round begins where it says. */
  private way(from: number, to: number): number {
    if (from < 0) return 0;
    const metres = this.distance[from]?.[to];
    if (metres === undefined || !(metres >= 0)) throw new RangeError('leastWalk requires a distance for every pair');
    return metres;
  }
}

/** Nodes by promise, least first: a binary heap. */
class Queue {
  private readonly heap: Node[] = [];

  push(node: Node): void {
    const { heap } = this;
    let index = heap.length;
    heap.push(node);
    while (index > 0) {
      const parent = (index - 1) >> 1;
      const above = heap[parent];
      if (!above || above.promise <= node.promise) break;
      heap[index] = above;
      index = parent;
    }
    heap[index] = node;
  }

  pop(): Node | undefined {
    const { heap } = this;
    const [first] = heap;
    const last = heap.pop();
    if (!last || heap.length === 0) return first;
    let index = 0;
    for (;;) {
      const left = 2 * index + 1;
      const leftNode = heap[left];
      if (!leftNode) break;
      const rightNode = heap[left + 1];
      const isRight = rightNode !== undefined && rightNode.promise < leftNode.promise;
      const child = isRight ? rightNode : leftNode;
      if (child.promise >= last.promise) break;
      heap[index] = child;
      index = isRight ? left + 1 : left;
    }
    heap[index] = last;
    return first;
  }
}
