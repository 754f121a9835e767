/**
 * Where the stations of a unit stand on the ground and how far it is between them. Metres; x to the right, y forward,
 * the origin below the middle of the cabin. Nobody walks through the cabin, and stepping over the tongue costs extra.
 * A unit of unknown size is taken as common practice has it; only the order of the round hangs on it.
 */
import type { StationKind } from '../checks/check.ts';
import type { Position } from '../checks/expects.ts';
import type { Unit } from '../unit/unit.ts';

export interface Place {
  readonly kind: StationKind;
  readonly position: Position | null;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Common practice: an eight-foot cabin of sixteen feet with a four-foot tongue. */
const USUAL_WIDTH_M = 2.4384;
const USUAL_LENGTH_M = 6.096;
const TONGUE_M = 1.2192;
/** Between the wheels of a tandem, hub to hub. */
const AXLE_SPACING_M = 0.86;
/** Arm's length off the wall. */
const STAND_OFF_M = 0.6;
/** The line along which one walks around a corner; within the stand-off, so that stations lie outside. */
const CLEARANCE_M = 0.45;
/** Up the step and in. Climbing counts for more than its length. */
const CLIMB_M = 3;
/** Stepping over the tongue between cabin and truck. */
const TONGUE_STEP_M = 1.5;
/** From the front of the cabin, over tongue and bed, to the driver's door. */
const DRIVER_DOOR_AHEAD_M = 5.5;

/** How many metres of walking one time of kneeling down and getting up counts for, in winter clothes. Our choice. */
export const KNEEL_M = 6;

interface Frame {
  readonly halfWidth: number;
  readonly front: number;
  readonly rear: number;
  readonly axleY: number;
}

function frameOf(unit: Unit): Frame {
  const width = unit.widthM ?? USUAL_WIDTH_M;
  const cabin = Math.max((unit.lengthM ?? USUAL_LENGTH_M) - TONGUE_M, 2);
  // Axles sit a little behind the middle: that is what puts weight on the tongue.
  return { halfWidth: width / 2, front: cabin / 2, rear: -cabin / 2, axleY: -0.05 * cabin };
}

const WHEEL_ROW: Readonly<Partial<Record<Position, 1 | 0 | -1>>> = {
  'left-front': 1,
  'right-front': 1,
  'left-middle': 0,
  'right-middle': 0,
  'left-rear': -1,
  'right-rear': -1,
};

function pointOf(unit: Unit, place: Place): Point {
  const { halfWidth, front, rear, axleY } = frameOf(unit);
  const outside = halfWidth + STAND_OFF_M;
  const rowGap = unit.axles === 2 ? AXLE_SPACING_M / 2 : AXLE_SPACING_M;
  const firstWheelY = axleY + (unit.axles === 1 ? 0 : rowGap);
  switch (place.kind) {
    case 'tongue':
      return { x: -STAND_OFF_M, y: front + STAND_OFF_M };
    case 'tow-vehicle':
      return { x: -halfWidth - STAND_OFF_M, y: front + DRIVER_DOOR_AHEAD_M };
    case 'left-lift':
      return { x: -outside, y: firstWheelY + 0.6 };
    case 'right-lift':
      return { x: outside, y: firstWheelY + 0.6 };
    case 'left-side':
      return { x: -outside, y: front * 0.7 };
    case 'right-side':
      return { x: outside, y: front * 0.7 };
    case 'rear':
      return { x: 0, y: rear - STAND_OFF_M };
    // The profile does not say where the door is; most are on the curb side behind the wheels.
    case 'doorway':
    case 'inside':
      return { x: outside, y: rear * 0.75 };
    case 'wheel': {
      const side = place.position?.startsWith('right') ? 1 : -1;
      const row = place.position === null ? 0 : (WHEEL_ROW[place.position] ?? 0);
      return { x: side * outside, y: axleY + row * rowGap };
    }
  }
}

/**
 * Shortest ways between places, as a square table in whole millimetres so that equal ways are exactly equal.
 * @returns row and column in the order given
 */
export function walkingTable(unit: Unit, places: readonly Place[]): readonly (readonly number[])[] {
  const { halfWidth, front, rear } = frameOf(unit);
  const right = halfWidth + CLEARANCE_M;
  const ahead = front + CLEARANCE_M;
  const behind = rear - CLEARANCE_M;
  const corners: readonly Point[] = [
    { x: -right, y: ahead },
    { x: right, y: ahead },
    { x: right, y: behind },
    { x: -right, y: behind },
  ];
  const nodes = [...places.map((place) => pointOf(unit, place)), ...corners];
  const table = nodes.map((from) =>
    nodes.map((to) =>
      crossesCabin(from, to, { halfWidth, front, rear, axleY: 0 }) ? Number.POSITIVE_INFINITY : stride(from, to, front),
    ),
  );
  for (let via = 0; via < nodes.length; via++) {
    for (let from = 0; from < nodes.length; from++) {
      for (let to = 0; to < nodes.length; to++) {
        const detour = cell(table, from, via) + cell(table, via, to);
        const row = table[from];
        if (row && detour < cell(table, from, to)) row[to] = detour;
      }
    }
  }
  return places.map((from, i) =>
    places.map((to, j) => {
      if (i === j) return 0;
      const climbs = Number(from.kind === 'inside') + Number(to.kind === 'inside');
      const metres = cell(table, i, j) + (climbs === 1 ? CLIMB_M : 0);
      // Rounded up, so that no way is longer than one with a stop on it: ceil(a + b) ≤ ceil(a) + ceil(b).
      return Math.ceil(metres * 1000 - 1e-6);
    }),
  );
}

function cell(table: readonly (readonly number[])[], row: number, column: number): number {
  return table[row]?.[column] ?? Number.POSITIVE_INFINITY;
}

function stride(from: Point, to: Point, front: number): number {
  const metres = Math.hypot(to.x - from.x, to.y - from.y);
  if (from.x < 0 === to.x < 0) return metres;
  const crossingY = from.y + ((to.y - from.y) * -from.x) / (to.x - from.x);
  return crossingY > front ? metres + TONGUE_STEP_M : metres;
}

/** Whether the straight way goes through the cabin (Liang–Barsky clipping against its walls). */
function crossesCabin(from: Point, to: Point, { halfWidth, front, rear }: Frame): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  const edges: readonly (readonly [step: number, room: number])[] = [
    [-dx, from.x + halfWidth],
    [dx, halfWidth - from.x],
    [-dy, from.y - rear],
    [dy, front - from.y],
  ];
  for (const [step, room] of edges) {
    if (step === 0) {
      if (room <= 0) return false;
      continue;
    }
    const t = room / step;
    if (step < 0) enter = Math.max(enter, t);
    else leave = Math.min(leave, t);
  }
  return leave > enter;
}
