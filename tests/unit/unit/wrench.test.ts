import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/domain/judge/judge.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { validateUnit } from '../../../src/domain/unit/validate.ts';

const AT = Date.UTC(2026, 10, 25, 12);
const [unit] = DEMO_UNITS;

/** A click wrench is accurate from a fifth of its range up: ISO 6789-1 (from memory). */
describe('the wrench in the profile', () => {
  const warningFor = (torque: number, wrench: number | null) =>
    validateUnit(
      {
        ...unit!,
        wheels: { ...unit!.wheels, torqueNm: toSI(torque, 'lb-ft'), wrenchMaxNm: wrench === null ? null : toSI(wrench, 'lb-ft') },
      },
      AT,
    ).find(({ field }) => field === 'wheels.wrenchMaxNm')?.sentence;

  it.each([
    [100, 80, /cannot give 100 lb-ft/],
    [100, 600, /lowest fifth/],
  ])('%d lb-ft with a wrench to %d is warned of', (torque, wrench, words) => {
    expect(warningFor(torque, wrench)).toMatch(words);
  });

  it.each([
    [100, 150],
    [100, 500],
    [100, null],
  ])('%d lb-ft with a wrench to %s is not', (torque, wrench) => {
    expect(warningFor(torque, wrench)).toBeUndefined();
  });
});

/** Star orders and stages: trailer owner's manuals, as in tests/published/judge/lugsAndLift.test.ts. */
describe('several lugs that moved', () => {
  it('are answered with the star and the stages of this very wheel', () => {
    const plan = planRound(unit!, 'before-towing', AT);
    const check = plan.checks.find(({ check: id }) => id === 'lugs-moved')!;
    const { outcome, todo } = judge(
      check,
      { kind: 'count', count: 3 },
      {
        answers: new Map(),
        at: AT,
        outsideK: null,
        elevationM: null,
        hoursParked: null,
        display: 'us',
      },
    );
    expect(outcome).toBe('hold');
    expect(todo).toContain('Clockwise from the valve: one, three, five, two, four.');
    expect(todo).toContain('then one hundred foot-pounds. Never finish with an air gun.');
  });
});
