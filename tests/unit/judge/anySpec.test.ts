/** Plans come from files too: no limit, figure or param whatever makes the judge throw, or say what is no number. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Expects, Position } from '../../../src/domain/checks/expects.ts';
import { type JudgeSpec, type Limit, OUTCOMES, type RuleId } from '../../../src/domain/checks/outcome.ts';
import { judge } from '../../../src/domain/judge/judge.ts';
import { roundVerdict } from '../../../src/domain/judge/verdict.ts';
import { toSI, UNITS, type UnitId } from '../../../src/domain/quantity/units.ts';
import type { Answer } from '../../../src/domain/round/entry.ts';
import { EXPECTS_COUNT, EXPECTS_MONTH, EXPECTS_WEEK, expectsReading, givenCheck, givenContext, NOW } from './given.ts';

const RULES: readonly RuleId[] = [
  'state',
  'choice',
  'record-only',
  'limits',
  'tire-pressure',
  'tread-depth',
  'tire-age',
  'lugs-moved',
  'broken-wires',
  'cable-push',
  'battery-rest',
  'breakaway-rest',
  'inside-start',
  'furnace-rise',
  'cylinder-weight',
  'cylinder-date',
  'alarm-date',
  'co-reading',
  'outside-temperature',
  'ice-thickness',
];
/** Without a limit these can only ever be good. */
const NEEDS: ReadonlySet<RuleId> = new Set([
  'limits',
  'tread-depth',
  'cable-push',
  'co-reading',
  'ice-thickness',
  'broken-wires',
]);
const number = fc.oneof(fc.double(), fc.double({ min: -100, max: 1e6, noNaN: true }), fc.integer({ min: -3, max: 40 }));
const unit = fc.constantFrom(...(Object.keys(UNITS) as UnitId[]));
const outcome = fc.constantFrom(...OUTCOMES);
const limit: fc.Arbitrary<Limit> = fc.record({
  id: fc.constantFrom('target', 'fix', 'hold', 'cap', 'watch', 'torque', 'emergency', 'other'),
  label: fc.constant('a limit'),
  relation: fc.constantFrom('at-least', 'at-most', 'target'),
  si: number,
  unit,
  outcome,
  source: fc.constant({ kind: 'maker' as const, text: 'a label' }),
});
const PARAMS = [
  'placardPa',
  'sidewallMaxPa',
  'maxLoadKg',
  'elevationM',
  'size',
  'placardKey',
  'lugs',
  'torqueNm',
  'stud',
  'mounted',
  'pulledM',
  'diameterM',
  'forceN',
  'spanM',
  'kind',
  'capacityAh',
  'startKey',
  'minutes',
  'tareKg',
  'capacityKg',
  'inputW',
  'suffix',
  'stamped',
  'alarm',
  'dateMeans',
];
const param = fc.oneof(
  number,
  fc.constantFrom('1/2', 'flooded', 'agm', 'lifepo4', 'E', 'made', 'replace-by', 'ST205/75R15', 'other', '2020-06', '__proto__'),
  fc.boolean(),
  fc.constant(null),
);
const spec: fc.Arbitrary<JudgeSpec> = fc.record({
  rule: fc.constantFrom(...RULES),
  worst: outcome,
  limits: fc.array(limit, { maxLength: 5 }),
  params: fc.dictionary(fc.constantFrom(...PARAMS), param),
});
const reading = fc.tuple(number, unit).map(
  ([value, id]): Answer => ({
    kind: 'reading',
    si: Number.isFinite(value) ? toSI(value, id) : value,
    said: { value, unit: id },
    hedged: value > 50,
  }),
);
const answer: fc.Arbitrary<Answer> = fc.oneof(
  reading,
  fc.record({ kind: fc.constant('count' as const), count: number }),
  fc.record({
    kind: fc.constant('state' as const),
    verdict: fc.constantFrom('ok' as const, 'problem' as const),
    detail: fc.constant(null),
  }),
  fc.record({ kind: fc.constant('choice' as const), option: fc.constantFrom(...PARAMS, 'toString'), detail: fc.constant(null) }),
  fc.record({
    kind: fc.constant('date' as const),
    form: fc.constantFrom('dot-week' as const, 'month-year' as const),
    value: fc.constantFrom('3623', '0099', '2020-06', '2031-01', '0000-01', '9999-12', 'x'),
  }),
);
const expects: fc.Arbitrary<Expects> = fc.oneof(
  unit.map((id) => expectsReading(id, -1e9, 1e9)),
  fc.constant(EXPECTS_COUNT),
  fc.constant(EXPECTS_WEEK),
  fc.constant(EXPECTS_MONTH),
  fc.constant<Expects>({ kind: 'state', ok: ['in'], problem: ['out'], yesMeans: 'ok' }),
  fc.constant<Expects>({ kind: 'choice', options: [] }),
);

describe('any plan and any answer', () => {
  it('gives a judgement in words, and the round a verdict', () => {
    fc.assert(
      fc.property(
        spec,
        expects,
        answer,
        answer,
        fc.option(number),
        fc.option(number),
        fc.option(number),
        fc.constantFrom<Position | null>('left', 'right-rear', null),
        (judgeSpec, kind, given, other, outsideK, elevationM, hoursParked, position) => {
          const check = givenCheck(judgeSpec, kind, 'a-check', position);
          const answers = new Map(
            ['a-check@right', 'a-check@left-rear', 'other', '__proto__'].map((key) => [
              key,
              { answer: other, at: NOW - 600_000 },
            ]),
          );
          const context = givenContext({ outsideK, elevationM, hoursParked, answers });
          const judged = judge(check, given, context);
          expect(OUTCOMES).toContain(judged.outcome);
          const { say, todo, question, facts } = judged;
          const text = [say, todo, question, ...facts.map((fact) => `${fact.label} ${fact.text}`)].join(' ');
          expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/);
          if (judged.outcome !== 'ok') expect(`${say}${todo ?? ''}`.trim()).not.toBe('');
          if (judgeSpec.limits.some(({ si }) => !Number.isFinite(si))) expect(judged.outcome).not.toBe('ok');
          if (NEEDS.has(judgeSpec.rule) && judgeSpec.limits.length === 0) expect(judged.outcome).not.toBe('ok');
          if (given.kind !== kind.kind) expect(judged.outcome).not.toBe('ok');
          const verdict = roundVerdict({ lines: [{ check, judgement: judged, status: 'answered' }], display: 'us' });
          expect(verdict.sentences.join(' ')).not.toMatch(/NaN|Infinity|undefined|\[object/);
          if (judged.outcome !== 'ok') expect(verdict.outcome).not.toBe('ok');
        },
      ),
      { numRuns: 6000 },
    );
  });
});
