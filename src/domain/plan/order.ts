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
  /** Groups that must be done before, and those that they need in turn. */
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
const keyOf = ({ low, high }: Mask): number => high * 2 ** LOW_BITS + low;

/** Walking and kneeling weigh so much that no sum of lateness can outweigh the least of them. */
const MAIN = 2 ** 22;

/**
 * The least walk over the stations.
 * @param distance square table of non-negative whole numbers (millimetres); `distance[i][i]` is 0
 * @param kneel what kneeling down once counts for, in the same unit
 * @throws RangeError when the precedence goes in a circle, an index is out of range, or there are more than 52 groups or 30 stations
 */
export function leastWalk(tasks: readonly Task[], distance: readonly (readonly number[])[], kneel: number): Walk {
  if (tasks.length === 0) return { visits: [], walked: 0, kneels: 0 };
  const ancestors = ancestorsOf(tasks);
  const groups = groupTasks(tasks, ancestors);
  if (groups.length > LOW_BITS + HIGH_BITS) throw new RangeError('leastWalk holds at most 52 groups of checks');
  if (new Set(groups.map(({ station }) => station)).size > LOW_BITS) throw new RangeError('leastWalk holds at most 30 stations');
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
  const needs = [...members].map(([key, list]) => {
    const before = list.flatMap((member) => [...(ancestors[member] ?? [])]).map((index) => keys[index] ?? key);
    return [...new Set(before)]
      .filter((other) => other !== key)
      .reduce((mask, other) => join(mask, bit(indexOfKey.get(other) ?? 0)), NOTHING);
  });
  // What is needed may itself, through another of its members, need more.
  for (let grew = true; grew; ) {
    grew = false;
    for (const [index, own] of needs.entries()) {
      const more = needs.reduce((mask, other, place) => (holds(own, bit(place)) ? join(mask, other) : mask), own);
      if (more.low !== own.low || more.high !== own.high) {
        needs[index] = more;
        grew = true;
      }
    }
  }
  return [...members.values()].map((list, index): Group => {
    const first = tasks[list[0] ?? -1];
    if (!first) throw new RangeError('leastWalk requires every group to have a task');
    return {
      station: first.station,
      kneeling: first.kneeling,
      tasks: list,
      needs: needs[index] ?? NOTHING,
      urgent: list.filter((member) => tasks[member]?.urgent === true).length,
    };
  });
}

/** A place in the search: what is done, where one stands, and how one came here. */
interface Node {
  readonly low: number;
  readonly high: number;
  /** Row of the station stood at; -1 before the first. */
  readonly at: number;
  readonly cost: number;
  /** Cost so far plus a bound on the rest that is never too high. */
  readonly promise: number;
  readonly tasksDone: number;
  readonly urgentDone: number;
  readonly from: Node | null;
  readonly kneels: boolean;
}

/** A group as the inner loop wants it: bit fields only. */
interface Chunk {
  readonly low: number;
  readonly high: number;
  readonly needsLow: number;
  readonly needsHigh: number;
  /** Groups at other stations that wait for this one. */
  readonly awaitedLow: number;
  readonly awaitedHigh: number;
  readonly kneeling: boolean;
  readonly urgent: number;
  readonly tasks: number;
}

interface Stop {
  readonly station: number;
  /** Those that wait for others of the same stop come later. */
  readonly chunks: readonly Chunk[];
  readonly allLow: number;
  readonly allHigh: number;
  readonly kneelLow: number;
  readonly kneelHigh: number;
}

/**
 * Best-first search over (what is done, where one stands). The bound on what is still to come: the shortest tree that
 * joins the stations left, the way to the nearest of them, and one kneeling at each that has kneeling work left. No walk
 * is shorter than that, so the first finished walk taken from the queue is the least.
 *
 * Where a group must follow, or be followed by, everything at other stations (a heater lit first, read last), the walk
 * falls into phases that meet at its station, and each phase has a tree of its own.
 */
class Search {
  private readonly groups: readonly Group[];
  private readonly stops: readonly Stop[];
  private readonly ways: readonly number[];
  private readonly kneel: number;
  private readonly all: Mask;
  private readonly urgentTotal: number;
  private readonly phases: readonly Phase[];
  /** Lengths of the trees of all phases after each one. */
  private readonly treesAfter: readonly number[];
  /** Lengths of shortest trees by the set of stops they join. */
  private readonly trees = new Map<number, number>();
  private readonly queue = new Queue();
  /** Least cost found so far, by stop stood at, then by what is done. */
  private readonly reached: readonly Map<number, number>[];

  constructor(groups: readonly Group[], distance: readonly (readonly number[])[], kneel: number) {
    this.groups = groups;
    this.kneel = kneel;
    this.all = groups.reduce((mask, _, index) => join(mask, bit(index)), NOTHING);
    this.urgentTotal = groups.reduce((sum, { urgent }) => sum + urgent, 0);
    const stations = [...new Set(groups.map(({ station }) => station))];
    this.stops = stations.map((station) => stopAt(station, groups));
    this.ways = stations.flatMap((from) =>
      stations.map((to) => {
        const way = distance[from]?.[to];
        if (way === undefined || !(way >= 0)) throw new RangeError('leastWalk requires a distance for every pair');
        return way;
      }),
    );
    this.reached = stations.map(() => new Map());
    this.phases = phasesOf(groups, stations);
    this.treesAfter = this.phases.map((_, index) =>
      this.phases.slice(index + 1).reduce((sum, { entry, exit, stops }) => {
        const all = stops.reduce((set, mask, stop) => (isEmpty(mask) ? set : set | stopBit(stop)), 0);
        return sum + this.treeOver(all | stopBit(entry) | stopBit(exit));
      }, 0),
    );
  }

  /** @param sequence task indexes in an order that keeps precedence within a station */
  walk(sequence: readonly number[]): Walk {
    const { queue, all } = this;
    queue.push({ ...NOTHING, at: -1, cost: 0, promise: 0, tasksDone: 0, urgentDone: 0, from: null, kneels: false });
    for (let node = queue.pop(); node; node = queue.pop()) {
      if (node.low === all.low && node.high === all.high) return this.trace(node, sequence);
      if (node.cost <= this.costAt(node.at, keyOf(node))) this.expand(node);
    }
    throw new RangeError('leastWalk requires precedence without a circle');
  }

  private expand(node: Node): void {
    for (let at = 0; at < this.stops.length; at++) {
      if (at === node.at) continue;
      const mustKneelAgain = this.visit(node, at, true);
      if (mustKneelAgain) this.visit(node, at, false);
    }
  }

  /**
   * Does at a stop whatever is possible and queues the outcome.
   *
   * A visit that leaves work at its station, and does nothing that work elsewhere waits for, is left out: the same is
   * done on the next visit here, and no way grows longer by it.
   * @returns whether it knelt and kneeling work remains here, so that a visit without kneeling may be better
   */
  private visit(node: Node, at: number, mayKneel: boolean): boolean {
    const stop = this.stops[at];
    if (!stop) return false;
    let { low, high } = node;
    let kneels = false;
    let urgent = 0;
    let tasks = 0;
    let awaitedLow = 0;
    let awaitedHigh = 0;
    for (const chunk of stop.chunks) {
      if ((low & chunk.low) === chunk.low && (high & chunk.high) === chunk.high) continue;
      if (chunk.kneeling && !mayKneel) continue;
      if ((low & chunk.needsLow) !== chunk.needsLow || (high & chunk.needsHigh) !== chunk.needsHigh) continue;
      low |= chunk.low;
      high |= chunk.high;
      kneels ||= chunk.kneeling;
      urgent += chunk.urgent;
      tasks += chunk.tasks;
      awaitedLow |= chunk.awaitedLow;
      awaitedHigh |= chunk.awaitedHigh;
    }
    if (tasks === 0) return false;
    const mustKneelAgain = kneels && ((stop.kneelLow & ~low) !== 0 || (stop.kneelHigh & ~high) !== 0);
    const completes = (stop.allLow & ~low) === 0 && (stop.allHigh & ~high) === 0;
    if (!completes && (awaitedLow & ~low) === 0 && (awaitedHigh & ~high) === 0) return mustKneelAgain;

    const main = this.way(node.at, at) + (kneels ? this.kneel : 0);
    const cost = node.cost + main * MAIN + urgent * node.tasksDone;
    const key = keyOf({ low, high });
    if (cost >= this.costAt(at, key)) return mustKneelAgain;
    this.reached[at]?.set(key, cost);
    const tasksDone = node.tasksDone + tasks;
    const urgentDone = node.urgentDone + urgent;
    const promise = cost + this.boundOn(at, low, high) * MAIN + (this.urgentTotal - urgentDone) * tasksDone;
    this.queue.push({ low, high, at, cost, promise, tasksDone, urgentDone, from: node, kneels });
    return mustKneelAgain;
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
        this.groups.flatMap(({ tasks }, index) => (holds(node, bit(index)) && !holds(before, bit(index)) ? tasks : [])),
      );
      return { station: this.stops[node.at]?.station ?? -1, tasks: sequence.filter((task) => fresh.has(task)) };
    });
    return { visits, walked, kneels };
  }

  private costAt(at: number, key: number): number {
    return at < 0 ? 0 : (this.reached[at]?.get(key) ?? Number.POSITIVE_INFINITY);
  }

  /** In the table's unit. */
  private boundOn(at: number, low: number, high: number): number {
    let kneelings = 0;
    for (const { kneelLow, kneelHigh } of this.stops) {
      if ((kneelLow & ~low) !== 0 || (kneelHigh & ~high) !== 0) kneelings += 1;
    }
    let current = 0;
    while (current + 1 < this.phases.length) {
      const opens = this.phases[current + 1]?.opens ?? NOTHING;
      if ((low & opens.low) !== opens.low || (high & opens.high) !== opens.high) break;
      current += 1;
    }
    const phase = this.phases[current];
    if (!phase) return 0;
    let left = 0;
    let nearest = Number.POSITIVE_INFINITY;
    for (let stop = 0; stop < phase.stops.length; stop++) {
      const mask = phase.stops[stop];
      if (!mask || ((mask.low & ~low) === 0 && (mask.high & ~high) === 0)) continue;
      left |= 1 << stop;
      nearest = Math.min(nearest, this.way(at, stop));
    }
    if (left === 0) {
      if (phase.exit < 0) return 0;
      nearest = this.way(at, phase.exit);
    }
    return nearest + this.treeOver(left | stopBit(phase.exit)) + (this.treesAfter[current] ?? 0) + kneelings * this.kneel;
  }

  /** Length of the shortest tree over a set of stops (Prim), remembered by set. */
  private treeOver(set: number): number {
    const known = this.trees.get(set);
    if (known !== undefined) return known;
    const reach = new Map<number, number>();
    for (let index = 0; index < this.stops.length; index++) {
      if ((set & (1 << index)) !== 0) reach.set(index, Number.POSITIVE_INFINITY);
    }
    let length = 0;
    let [at] = reach.keys();
    while (at !== undefined) {
      reach.delete(at);
      let next: number | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const [index, sofar] of reach) {
        const shorter = Math.min(sofar, this.way(at, index));
        reach.set(index, shorter);
        if (shorter < least) {
          least = shorter;
          next = index;
        }
      }
      if (next !== undefined) length += least;
      at = next;
    }
    this.trees.set(set, length);
    return length;
  }

  /** To the first station it costs nothing: the round begins where it says. */
  private way(from: number, to: number): number {
    return from < 0 ? 0 : (this.ways[from * this.stops.length + to] ?? 0);
  }
}

/** A stretch of the walk between two groups that everything elsewhere comes before or after. */
interface Phase {
  /** The group that opens it; nothing for the first. */
  readonly opens: Mask;
  /** Stop at which it begins and ends; -1 where that is free. */
  readonly entry: number;
  readonly exit: number;
  /** Groups of this phase by stop. */
  readonly stops: readonly Mask[];
}

const isEmpty = ({ low, high }: Mask): boolean => low === 0 && high === 0;
const stopBit = (stop: number): number => (stop < 0 ? 0 : 1 << stop);

function phasesOf(groups: readonly Group[], stations: readonly number[]): readonly Phase[] {
  const isCut = (index: number) => {
    const cut = groups[index];
    return groups.every(
      (other, place) =>
        other.station === cut?.station || holds(cut?.needs ?? NOTHING, bit(place)) || holds(other.needs, bit(index)),
    );
  };
  const cuts = groups
    .map((_, index) => index)
    .filter(isCut)
    .sort((a, b) => bitsIn(groups[a]?.needs ?? NOTHING) - bitsIn(groups[b]?.needs ?? NOTHING));
  // Groups of one station that do not wait for each other open no phases between them: keep a chain.
  const chain: number[] = [];
  for (const cut of cuts) {
    const last = chain.at(-1);
    if (last === undefined || holds(groups[cut]?.needs ?? NOTHING, bit(last))) chain.push(cut);
  }
  const stopOf = (group: number | undefined) => (group === undefined ? -1 : stations.indexOf(groups[group]?.station ?? -1));
  const phaseOf = (group: Group, index: number) => chain.filter((cut) => cut === index || holds(group.needs, bit(cut))).length;
  return [-1, ...chain].map((opener, phase) => ({
    opens: opener < 0 ? NOTHING : bit(opener),
    entry: opener < 0 ? -1 : stopOf(opener),
    exit: stopOf(chain[phase]),
    stops: stations.map((station) =>
      groups.reduce(
        (mask, group, index) => (group.station === station && phaseOf(group, index) === phase ? join(mask, bit(index)) : mask),
        NOTHING,
      ),
    ),
  }));
}

function stopAt(station: number, groups: readonly Group[]): Stop {
  const here = groups.flatMap((group, index) => (group.station === station ? [{ group, index }] : []));
  // Needs are complete, so whoever waits for another has more of them.
  here.sort((a, b) => bitsIn(a.group.needs) - bitsIn(b.group.needs));
  const chunks = here.map(({ group, index }): Chunk => {
    const own = bit(index);
    const awaited = groups.reduce(
      (mask, other, place) => (other.station !== station && holds(other.needs, own) ? join(mask, bit(place)) : mask),
      NOTHING,
    );
    return {
      low: own.low,
      high: own.high,
      needsLow: group.needs.low,
      needsHigh: group.needs.high,
      awaitedLow: awaited.low,
      awaitedHigh: awaited.high,
      kneeling: group.kneeling,
      urgent: group.urgent,
      tasks: group.tasks.length,
    };
  });
  const union = (some: readonly Chunk[]) => some.reduce((mask: Mask, chunk) => join(mask, chunk), NOTHING);
  const all = union(chunks);
  const kneel = union(chunks.filter(({ kneeling }) => kneeling));
  return { station, chunks, allLow: all.low, allHigh: all.high, kneelLow: kneel.low, kneelHigh: kneel.high };
}

function bitsIn({ low, high }: Mask): number {
  let count = 0;
  for (const part of [low, high]) for (let rest = part; rest !== 0; rest &= rest - 1) count++;
  return count;
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
