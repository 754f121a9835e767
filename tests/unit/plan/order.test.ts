import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastWalk, type Task, type Walk } from '../../../src/domain/plan/order.ts';

const KNEEL = 7;

interface Instance {
  readonly tasks: readonly Task[];
  readonly distance: readonly (readonly number[])[];
}

/** Cost of a sequence of tasks, worked out from the tasks alone: a visit is a run at one station, kneeling counts once in it. */
function costOf(sequence: readonly number[], { tasks, distance }: Instance): number {
  let cost = 0;
  let at = -1;
  let knelt = false;
  for (const index of sequence) {
    const task = tasks[index]!;
    if (task.station !== at) {
      if (at >= 0) cost += distance[at]![task.station]!;
      at = task.station;
      knelt = false;
    }
    if (task.kneeling && !knelt) {
      cost += KNEEL;
      knelt = true;
    }
  }
  return cost;
}

/** Every order of the tasks that precedence allows, tried one by one. */
function bruteForce(instance: Instance): number {
  const { tasks } = instance;
  let least = Number.POSITIVE_INFINITY;
  const place = (sequence: readonly number[]): void => {
    if (sequence.length === tasks.length) {
      least = Math.min(least, costOf(sequence, instance));
      return;
    }
    for (let index = 0; index < tasks.length; index++) {
      if (sequence.includes(index)) continue;
      if (tasks[index]!.after.every((before) => sequence.includes(before))) place([...sequence, index]);
    }
  };
  place([]);
  return least;
}

const sequenceOf = (walk: Walk): readonly number[] => walk.visits.flatMap(({ tasks }) => tasks);

/** Up to seven tasks at up to four points of a street grid (so the triangle inequality holds), with random precedence. */
const instances: fc.Arbitrary<Instance> = fc
  .record({
    points: fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), { minLength: 1, maxLength: 4 }),
    tasks: fc.array(
      fc.record({
        station: fc.nat(3),
        kneeling: fc.boolean(),
        urgent: fc.boolean(),
        after: fc.array(fc.nat(6), { maxLength: 3 }),
      }),
      { minLength: 1, maxLength: 7 },
    ),
    shuffle: fc.array(fc.nat(), { minLength: 7, maxLength: 7 }),
  })
  .map(({ points, tasks, shuffle }) => {
    // A hidden rank for each task makes any "after" that respects it free of circles, without favoring low indexes.
    const rank = tasks.map((_, index) => (shuffle[index] ?? 0) * 10 + index);
    return {
      distance: points.map(([x1, y1]) => points.map(([x2, y2]) => Math.abs(x1 - x2) + Math.abs(y1 - y2))),
      tasks: tasks.map((task, index) => ({
        ...task,
        station: task.station % points.length,
        after: [...new Set(task.after)].filter((before) => before < tasks.length && rank[before]! < rank[index]!),
      })),
    };
  });

describe('leastWalk', () => {
  it('is as short as the best of all orders, tried one by one', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const walk = leastWalk(instance.tasks, instance.distance, KNEEL);
        expect(walk.walked + walk.kneels * KNEEL).toBe(bruteForce(instance));
      }),
      { numRuns: 1500 },
    );
  });

  it('does every task once, after those it must follow, and counts its cost right', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const walk = leastWalk(instance.tasks, instance.distance, KNEEL);
        const sequence = sequenceOf(walk);
        expect([...sequence].sort((a, b) => a - b)).toEqual(instance.tasks.map((_, index) => index));
        for (const [place, index] of sequence.entries()) {
          for (const before of instance.tasks[index]!.after) expect(sequence.indexOf(before)).toBeLessThan(place);
        }
        for (const visit of walk.visits) {
          expect(visit.tasks.length).toBeGreaterThan(0);
          for (const index of visit.tasks) expect(instance.tasks[index]!.station).toBe(visit.station);
        }
        expect(costOf(sequence, instance)).toBe(walk.walked + walk.kneels * KNEEL);
      }),
      { numRuns: 500 },
    );
  });

  it('goes back to a station where precedence leaves no other way', () => {
    const light: Task = { station: 0, kneeling: false, urgent: false, after: [] };
    const outside: Task = { station: 1, kneeling: false, urgent: false, after: [0] };
    const read: Task = { station: 0, kneeling: false, urgent: false, after: [1] };
    const distance = [
      [0, 5],
      [5, 0],
    ];
    expect(leastWalk([light, outside, read], distance, KNEEL).visits).toEqual([
      { station: 0, tasks: [0] },
      { station: 1, tasks: [1] },
      { station: 0, tasks: [2] },
    ]);
  });

  it('kneels once where kneeling work can wait for more of it', () => {
    const look: Task = { station: 0, kneeling: false, urgent: false, after: [] };
    const pressure: Task = { station: 0, kneeling: true, urgent: false, after: [] };
    const raise: Task = { station: 1, kneeling: false, urgent: false, after: [0] };
    const lugs: Task = { station: 0, kneeling: true, urgent: false, after: [2] };
    const distance = [
      [0, 3],
      [3, 0],
    ];
    const walk = leastWalk([look, pressure, raise, lugs], distance, KNEEL);
    expect(walk.kneels).toBe(1);
    expect(sequenceOf(walk)).toEqual([0, 2, 1, 3]);
  });

  it('comes to what stops a tow first, where ways are equally long', () => {
    const calm: Task = { station: 0, kneeling: false, urgent: false, after: [] };
    const urgent: Task = { station: 1, kneeling: false, urgent: true, after: [] };
    const distance = [
      [0, 4],
      [4, 0],
    ];
    expect(leastWalk([calm, urgent], distance, KNEEL).visits[0]?.station).toBe(1);
    expect(
      leastWalk(
        [
          { ...calm, urgent: true },
          { ...urgent, urgent: false },
        ],
        distance,
        KNEEL,
      ).visits[0]?.station,
    ).toBe(0);
  });

  it('refuses precedence in a circle, unknown tasks and missing distances', () => {
    const first: Task = { station: 0, kneeling: false, urgent: false, after: [1] };
    const second: Task = { station: 0, kneeling: false, urgent: false, after: [0] };
    expect(() => leastWalk([first, second], [[0]], KNEEL)).toThrow(/circle/);
    expect(() => leastWalk([first], [[0]], KNEEL)).toThrow(/no task 1/);
    expect(() => leastWalk([{ ...first, station: 3, after: [] }], [[0]], KNEEL)).toThrow(/distance/);
    expect(leastWalk([], [], KNEEL)).toEqual({ visits: [], walked: 0, kneels: 0 });
  });
});
