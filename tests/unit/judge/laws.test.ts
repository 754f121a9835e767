/** What holds for every check of every plan and any answer whatever. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTCOMES } from '../../../src/domain/checks/outcome.ts';
import { judge } from '../../../src/domain/judge/judge.ts';
import type { Judgement } from '../../../src/domain/judge/judgement.ts';
import { recordOnlySpec, tirePressureSpec, treadSpec } from '../../../src/domain/judge/specs.ts';
import { planRound } from '../../../src/domain/plan/planRound.ts';
import { fromSI, UNITS, type UnitId } from '../../../src/domain/quantity/units.ts';
import type { Answer } from '../../../src/domain/round/entry.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { givenUnit } from '../history/givenRounds.ts';
import { EXPECTS_COUNT, expectsReading, givenCheck, givenContext, NOW, reading } from './given.ts';

const PLANS = [givenUnit({ tires: { ...givenUnit().tires, placardColdPa: null } }), ...DEMO_UNITS].flatMap((unit) =>
  (['before-towing', 'before-leaving-the-lake'] as const).map((round) => planRound(unit, round, NOW)),
);
const CHECKS = PLANS.flatMap((plan) => plan.checks);
const RANK = new Map(OUTCOMES.map((outcome, index) => [outcome, index]));

const anyNumber = fc.oneof(fc.double(), fc.double({ min: -50, max: 200, noNaN: true }), fc.integer({ min: -3, max: 40 }));
const anyUnit = fc.constantFrom(...(Object.keys(UNITS) as UnitId[]));
const anyAnswer: fc.Arbitrary<Answer> = fc.oneof(
  fc.record({
    kind: fc.constant('reading' as const),
    si: fc.oneof(anyNumber, fc.double({ min: 0, max: 600_000, noNaN: true })),
    said: fc.record({ value: anyNumber, unit: anyUnit }),
    hedged: fc.boolean(),
  }),
  fc.record({ kind: fc.constant('count' as const), count: anyNumber }),
  fc.record({
    kind: fc.constant('state' as const),
    verdict: fc.constantFrom('ok' as const, 'problem' as const),
    detail: fc.constant(null),
  }),
  fc.record({ kind: fc.constant('choice' as const), option: fc.string(), detail: fc.constant(null) }),
  fc.record({
    kind: fc.constant('date' as const),
    form: fc.constantFrom('dot-week' as const, 'month-year' as const),
    value: fc.oneof(fc.string(), fc.constantFrom('3623', '2020-06', '2031-01', '9999-99')),
  }),
);
const anyContext = fc.record({
  at: fc.constant(NOW),
  outsideK: fc.option(fc.oneof(anyNumber, fc.double({ min: 220, max: 320, noNaN: true }))),
  elevationM: fc.option(anyNumber),
  hoursParked: fc.option(anyNumber),
  display: fc.constantFrom('us' as const, 'metric' as const),
  answers: fc
    .array(fc.tuple(fc.constantFrom(...CHECKS.map((check) => check.key)), anyAnswer), { maxLength: 12 })
    .map((pairs) => new Map(pairs.map(([key, answer], index) => [key, { answer, at: NOW - index * 120_000 }]))),
});

const textsOf = ({ say, todo, question, facts }: Judgement) =>
  [say, todo ?? '', question ?? '', ...facts.flatMap(({ label, text }) => [label, text])].join(' ');

describe('whatever is answered', () => {
  it('the judge never throws, never says NaN, and says what to do when it is not good', () => {
    fc.assert(
      fc.property(fc.constantFrom(...CHECKS), anyAnswer, anyContext, (check, answer, context) => {
        const judged = judge(check, answer, context);
        expect(OUTCOMES).toContain(judged.outcome);
        expect(textsOf(judged)).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
        if (judged.outcome !== 'ok') expect((judged.say + (judged.todo ?? '')).length).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });

  it('what is spoken is written for the ear: no symbols, no abbreviations', () => {
    const sensible = fc.constantFrom(...CHECKS.filter(({ expects }) => expects.kind === 'reading')).chain((check) => {
      const expects = check.expects as Extract<typeof check.expects, { kind: 'reading' }>;
      return fc.record({
        check: fc.constant(check),
        answer: fc.double({ min: expects.min, max: expects.max, noNaN: true }).map((value) => reading(value, expects.unit)),
      });
    });
    fc.assert(
      fc.property(sensible, anyContext, ({ check, answer }, context) => {
        const { say, todo, question } = judge(check, answer, context);
        const spoken = [say, todo ?? '', question ?? ''].join(' ');
        expect(spoken).not.toMatch(/[°%/×·]|\b(psi|kPa|lb|lbf|lb-ft|N·m|kg|mm|cm|ppm|BTU)\b/);
      }),
      { numRuns: 3000 },
    );
  });

  it('an answer of the wrong kind is never green', () => {
    fc.assert(
      fc.property(fc.constantFrom(...CHECKS), anyAnswer, anyContext, (check, answer, context) => {
        fc.pre(answer.kind !== check.expects.kind);
        expect(judge(check, answer, context).outcome).not.toBe('ok');
      }),
      { numRuns: 1500 },
    );
  });

  it('a reading of another quantity or outside of what can be is never green', () => {
    const readings = CHECKS.filter((check) => check.expects.kind === 'reading');
    fc.assert(
      fc.property(fc.constantFrom(...readings), anyUnit, anyNumber, anyContext, (check, unit, value, context) => {
        const expects = check.expects as Extract<typeof check.expects, { kind: 'reading' }>;
        fc.pre(Math.abs(value) < 1e9);
        const answer = reading(value, unit);
        const other = UNITS[unit].dimension !== UNITS[expects.unit].dimension;
        const absurd = answer.kind === 'reading' && Math.abs(fromSI(answer.si, expects.unit)) > expects.max + 1;
        fc.pre(other || absurd);
        expect(judge(check, answer, context).outcome).not.toBe('ok');
      }),
      { numRuns: 1500 },
    );
  });

  it('what is kept and not judged must still be an answer to the question', () => {
    const check = givenCheck(recordOnlySpec(), expectsReading('psi', 10, 130));
    expect(judge(check, { kind: 'count', count: 65 }, givenContext()).outcome).toBe('watch');
    expect(judge(check, reading(900, 'psi'), givenContext()).outcome).toBe('watch');
    expect(judge(check, reading(65, 'psi'), givenContext()).outcome).toBe('ok');
    expect(judge(givenCheck(recordOnlySpec(), EXPECTS_COUNT), { kind: 'count', count: 2.5 }, givenContext()).outcome).toBe(
      'watch',
    );
  });
});

describe('laws of the rules', () => {
  const worseOf = (check: ReturnType<typeof givenCheck>, value: number, unit: UnitId) =>
    RANK.get(judge(check, reading(value, unit), givenContext()).outcome) ?? -1;

  it('below the placard, less air is never better', () => {
    const check = givenCheck(tirePressureSpec(givenUnit()), expectsReading('psi', 0, 150));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 65, noNaN: true }), fc.double({ min: 0, max: 65, noNaN: true }), (a, b) => {
        expect(worseOf(check, Math.min(a, b), 'psi')).toBeGreaterThanOrEqual(worseOf(check, Math.max(a, b), 'psi'));
      }),
    );
  });

  it('less tread is never better, in thirty-seconds as in millimeters', () => {
    const check = givenCheck(treadSpec(), expectsReading('32nds', 0, 24));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), (a, b) => {
        expect(worseOf(check, Math.min(a, b), '32nds')).toBeGreaterThanOrEqual(worseOf(check, Math.max(a, b), '32nds'));
        expect(worseOf(check, a * 0.79375, 'mm')).toBe(worseOf(check, a, '32nds'));
      }),
    );
  });

  it('what is shown does not depend on the verdict, nor the verdict on what is shown', () => {
    fc.assert(
      fc.property(fc.constantFrom(...CHECKS), anyAnswer, anyContext, (check, answer, context) => {
        const us = judge(check, answer, { ...context, display: 'us' });
        const metric = judge(check, answer, { ...context, display: 'metric' });
        expect(metric.outcome).toBe(us.outcome);
        expect(metric.facts.length).toBe(us.facts.length);
      }),
      { numRuns: 1500 },
    );
  });
});
