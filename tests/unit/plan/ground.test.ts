import { describe, expect, it } from 'vitest';
import { type Place, walkingTable } from '../../../src/domain/plan/ground.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';

const unit = createUnit(TEMPLATES[0]!, { id: 'u', name: 'Test', at: 0 });
const PLACES: readonly Place[] = [
  { kind: 'inside', position: null },
  { kind: 'doorway', position: null },
  { kind: 'tongue', position: null },
  { kind: 'left-lift', position: 'left' },
  { kind: 'right-lift', position: 'right' },
  { kind: 'wheel', position: 'left' },
  { kind: 'wheel', position: 'right' },
  { kind: 'left-side', position: 'left' },
  { kind: 'right-side', position: 'right' },
  { kind: 'rear', position: null },
  { kind: 'tow-vehicle', position: null },
];
const sizes = [
  { widthM: null, lengthM: null },
  { widthM: 2.6, lengthM: 9.5 },
  { widthM: 1.4, lengthM: 2.6 },
];

describe('walkingTable', () => {
  it.each(sizes)('is a metric: symmetric, zero only to itself, no detour shorter than the way (%o)', (size) => {
    for (const axles of [1, 2, 3] as const) {
      const table = walkingTable({ ...unit, ...size, axles }, PLACES);
      for (let a = 0; a < PLACES.length; a++) {
        for (let b = 0; b < PLACES.length; b++) {
          expect(table[a]![b]).toBe(table[b]![a]);
          expect(Number.isInteger(table[a]![b])).toBe(true);
          if (a === b) expect(table[a]![b]).toBe(0);
          else expect(table[a]![b]).toBeGreaterThan(0);
          for (let c = 0; c < PLACES.length; c++) {
            expect(table[a]![b]).toBeLessThanOrEqual(table[a]![c]! + table[c]![b]!);
          }
        }
      }
    }
  });

  it('leads around the cabin, never through it', () => {
    const table = walkingTable(unit, PLACES);
    const between = table[5]![6]!;
    // Wheel to wheel straight through would be the width and two arm's lengths: 2.44 m + 2 × 0.6 m.
    expect(between).toBeGreaterThan(3640 + 2000);
  });

  it('goes inside by the door only', () => {
    const table = walkingTable(unit, PLACES);
    for (let b = 2; b < PLACES.length; b++) {
      expect(Math.abs(table[0]![b]! - (table[0]![1]! + table[1]![b]!))).toBeLessThanOrEqual(2);
    }
  });
});
