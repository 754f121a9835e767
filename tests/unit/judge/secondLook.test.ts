/** What a good mechanic sees beside the number itself: the other side, the cold, what was said before. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/domain/judge/judge.ts';
import type { JudgeContext } from '../../../src/domain/judge/judgement.ts';
import {
  batteryRestSpec,
  cablePushSpec,
  coReadingSpec,
  cylinderDateSpec,
  cylinderWeightSpec,
  iceThicknessSpec,
  limitsSpec,
  lugsMovedSpec,
  stateSpec,
  tirePressureSpec,
} from '../../../src/domain/judge/specs.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import type { Answer } from '../../../src/domain/round/entry.ts';
import { givenUnit } from '../history/givenRounds.ts';
import { expectsReading, givenCheck, givenContext, judgeCount, judgeMonth, judgeReading, NOW, reading } from './given.ts';

const UNIT = givenUnit();
const said = (answers: Readonly<Record<string, Answer>>): Partial<JudgeContext> => ({
  answers: new Map(Object.entries(answers).map(([key, answer]) => [key, { answer, at: NOW }])),
});
const fact = (facts: readonly { label: string; text: string }[], label: string) =>
  facts.find((one) => one.label.startsWith(label))?.text;
const F = (value: number) => toSI(value, 'F');

describe('tire pressure', () => {
  const spec = tirePressureSpec(UNIT);

  it('is told in numbers a person can check', () => {
    const judged = judgeReading(spec, 58, 'psi');
    expect(judged.say).toBe("58 is 7 pounds under the placard's 65 pounds.");
    expect(judged.todo).toBe('Add air before you tow, cold.');
    expect(judged.limit?.source.text).toBe('common practice, no source');
  });

  it.each([
    [65, 65, 'ok', false],
    [65, 69, 'ok', true],
    [65, 72.3, 'watch', true],
    [72, 65, 'watch', false],
  ])('%d beside a mate of %d is %s', (psi, mate, outcome, noted) => {
    const judged = judgeReading(spec, psi, 'psi', said({ 'tire-pressure@right': reading(mate, 'psi') }), 'left', 'tire-pressure');
    expect(judged.outcome).toBe(outcome);
    expect(fact(judged.facts, 'lower than right by') !== undefined).toBe(noted);
  });

  it('a hold stays a hold beside its mate', () => {
    const judged = judgeReading(spec, 40, 'psi', said({ 'tire-pressure@right': reading(65, 'psi') }), 'left', 'tire-pressure');
    expect(judged).toMatchObject({ outcome: 'hold', say: expect.stringContaining('look for a leak') });
  });

  it('takes the placard that was read in this round', () => {
    const bare = tirePressureSpec(givenUnit({ tires: { ...UNIT.tires, placardColdPa: null } }));
    const context = said({ 'placard-pressure': reading(65, 'psi') });
    expect(judgeReading(bare, 65, 'psi', context).outcome).toBe('ok');
    expect(judgeReading(bare, 48, 'psi', context)).toMatchObject({ outcome: 'hold' });
    expect(judgeReading(bare, 58, 'psi').missing).toEqual(['the placard pressure']);
    // A length heard for the placard is none.
    expect(judgeReading(bare, 65, 'psi', said({ 'placard-pressure': reading(65, 'in') })).outcome).toBe('watch');
  });

  it('with neither placard nor sidewall figure, next to no air is still a hold', () => {
    const bare = tirePressureSpec(givenUnit({ tires: { ...UNIT.tires, placardColdPa: null } }));
    expect(judgeReading(bare, 18, 'psi').outcome).toBe('hold');
    expect(judgeReading(bare, 25, 'psi').outcome).toBe('watch');
  });

  it('half of the sidewall figure is flat (CVSA criterion, from memory)', () => {
    const capped = tirePressureSpec(givenUnit({ tires: { ...UNIT.tires, placardColdPa: null, sidewallMaxPa: toSI(80, 'psi') } }));
    expect(judgeReading(capped, 40, 'psi').outcome).toBe('hold');
    expect(judgeReading(capped, 41, 'psi').outcome).toBe('watch');
  });

  it('says what a warm reading may be when cold (393.75(i) Table 1, from memory)', () => {
    const light = tirePressureSpec(givenUnit({ tires: { ...UNIT.tires, maxLoadKg: toSI(2150, 'lb') } }));
    expect(judgeReading(light, 67, 'psi', { hoursParked: 1 }).say).toContain('62 pounds');
    expect(judgeReading(light, 60, 'psi', { hoursParked: 1 }).todo).toContain('low although warm');
  });

  it('shows the same air at the comparing temperature: 54.47 psi at 0 °F is about 65 at 70 °F', () => {
    const { facts } = judgeReading(spec, 54.47, 'psi', { outsideK: F(0), elevationM: 0 });
    const text = fact(facts, 'the same air at') ?? '';
    expect(Number.parseFloat(text)).toBeGreaterThan(64.6);
    expect(Number.parseFloat(text)).toBeLessThan(65);
  });

  it('about is good only where a little more or less would be good too', () => {
    const check = givenCheck(spec, expectsReading('psi', 0, 150));
    const about = (psi: number): Answer => ({ ...reading(psi, 'psi'), hedged: true }) as Answer;
    expect(judge(check, about(65), givenContext()).outcome).toBe('watch');
    expect(judge(check, about(68), givenContext()).outcome).toBe('ok');
  });
});

describe('lugs', () => {
  it('names what is missing, with what is usual as a hint only', () => {
    const judged = judgeCount(lugsMovedSpec(UNIT), 0);
    expect(judged.missing).toEqual(['the lug torque']);
    expect(judged.todo).toContain('90 to 120 foot-pounds, by common practice only');
  });

  it('a wheel just mounted may settle: two are a watch, three a hold', () => {
    const mounted = lugsMovedSpec(UNIT, { mounted: true });
    expect([2, 3].map((moved) => judgeCount(mounted, moved).outcome)).toEqual(['watch', 'hold']);
    expect(judgeCount(mounted, 2).say).toBe('2 lugs were below their torque.');
  });

  it('estimates the clamp load with its range: 100 lb-ft on a half inch is about 12,000 lbf', () => {
    const known = lugsMovedSpec(givenUnit({ wheels: { ...UNIT.wheels, torqueNm: toSI(100, 'lb-ft'), torqueSource: 'maker' } }));
    const { facts, limit } = judgeCount(known, 0);
    expect(fact(facts, 'each stud')).toContain('12000 lbf');
    expect(limit?.source.kind).toBe('maker');
  });
});

describe('lift cable', () => {
  it('half the give of the other side is worth a look', () => {
    const context = said({ 'cable-push@right': reading(5, 'in') });
    expect(judgeReading(cablePushSpec(UNIT), 2.5, 'in', context, 'left', 'cable-push').outcome).toBe('watch');
    expect(judgeReading(cablePushSpec(UNIT), 3, 'in', context, 'left', 'cable-push').outcome).toBe('ok');
  });

  it('with its span it becomes a tension, roughly', () => {
    const { facts } = judgeReading(cablePushSpec(UNIT, toSI(60, 'in')), 1, 'in');
    expect(fact(facts, 'cable tension')).toMatch(/^300 lbf \(120 lbf to 600 lbf\)$/);
  });

  it('no give at all is the house on its cable', () => {
    expect(judgeReading(cablePushSpec(UNIT, 1.5), 0, 'in')).toMatchObject({ outcome: 'hold' });
  });
});

describe('battery in the cold', () => {
  const kind = (battery: 'flooded' | 'agm' | 'lifepo4', capacityAh: number | null = null) =>
    batteryRestSpec(givenUnit({ battery: { kind: battery, capacityAh } }));

  it('a half empty lead battery freezes: fix, and never charged frozen', () => {
    const judged = judgeReading(kind('flooded'), 12.3, 'V', { outsideK: F(-20) });
    expect(judged).toMatchObject({ outcome: 'fix', todo: expect.stringContaining('Never charge a frozen battery') });
    expect(judgeReading(kind('flooded'), 12.3, 'V', { outsideK: F(10) }).outcome).toBe('watch');
    expect(judgeReading(kind('flooded'), 12.65, 'V', { outsideK: F(-40) }).outcome).toBe('ok');
  });

  it('lithium is not charged below freezing', () => {
    expect(judgeReading(kind('lifepo4'), 12.8, 'V', { outsideK: F(10) }).todo).toContain('Warm it above freezing first');
    expect(judgeReading(kind('lifepo4'), 12.8, 'V', { outsideK: F(50) }).todo).toBe('Charge it, above freezing only.');
  });

  it('says about how full it is and how long it lasts', () => {
    const { facts } = judgeReading(kind('agm', 100), 12.85, 'V', { outsideK: F(0) });
    expect(fact(facts, 'charge')).toBe('100 %');
    // 100 Ah × 0.62 in the cold × one half, over 3.4 A × 0.6 + 0.3 A: 13.2 h.
    expect(fact(facts, 'runs a furnace fan')).toBe('13 h, a night');
  });

  it('13.2 V is a lead battery off its charger, and a lithium one at rest', () => {
    expect(judgeReading(kind('agm'), 13.2, 'V')).toMatchObject({ outcome: 'watch', settled: false });
    expect(judgeReading(kind('lifepo4'), 13.2, 'V').outcome).toBe('ok');
  });
});

describe('gas', () => {
  const unit = givenUnit({
    heat: { ...UNIT.heat, inputW: toSI(20_000, 'BTU/h') },
    cylinders: [{ tareKg: toSI(17, 'lb'), capacityKg: toSI(20, 'lb'), date: '2020-06', dateSuffix: 'E' }],
  });

  it('12.3 lb burn 13.3 h flat out (LP tables)', () => {
    const { facts } = judgeReading(cylinderWeightSpec(unit, 0), 29.3, 'lb');
    expect(fact(facts, 'gas left')).toBe('12.3 lb');
    expect(fact(facts, 'as a liquid')).toBe('2.9 gal');
    expect(fact(facts, 'at full flame')).toBe('13 hours');
  });

  it('a full tank gives hardly any gas at 30 below', () => {
    const cold = judgeReading(cylinderWeightSpec(unit, 0), 37, 'lb', { outsideK: F(-30), elevationM: 0 });
    expect(cold).toMatchObject({ outcome: 'watch', say: expect.stringContaining('hardly any gas') });
    expect(judgeReading(cylinderWeightSpec(unit, 0), 37, 'lb', { outsideK: F(-10), elevationM: 0 }).outcome).toBe('ok');
  });

  it('a letter counts for the date that it stands behind, and for no other', () => {
    expect(judgeMonth(cylinderDateSpec(unit, 0), '2020-06').outcome).toBe('fix');
    expect(judgeMonth(cylinderDateSpec(unit, 0), '2022-06').outcome).toBe('ok');
  });
});

describe('what can kill at once comes first', () => {
  it.each([
    [20, 'fix', 'find the cause'],
    [40, 'hold', 'fresh air'],
    [90, 'hold', 'Call for help from outside'],
  ])('%d parts per million', (ppm, outcome, todo) => {
    expect(judgeReading(coReadingSpec(), ppm, 'ppm')).toMatchObject({ outcome, todo: expect.stringContaining(todo) });
  });

  it('ice is never called safe', () => {
    expect(judgeReading(iceThicknessSpec(), 30, 'in').say).toContain('No ice is ever certain');
    expect(judgeReading(iceThicknessSpec(), 12, 'in').say).toContain('truck alone');
  });
});

describe('never green without a figure', () => {
  it('a rule without limits, or with limits of another kind', () => {
    expect(judgeReading(limitsSpec('hold', []), 5, 'psi').outcome).toBe('watch');
    const length = { id: 'a', label: 'a', relation: 'at-least', si: 1, unit: 'in', outcome: 'hold' } as const;
    const spec = limitsSpec('hold', [{ ...length, source: { kind: 'maker', text: 'x' } }]);
    expect(judgeReading(spec, 500, 'psi').outcome).toBe('watch');
  });

  it('a problem is never green, even where a check thinks it can come to nothing', () => {
    const check = givenCheck(stateSpec('ok'), { kind: 'state', ok: ['in'], problem: ['out'], yesMeans: 'ok' });
    expect(judge(check, { kind: 'state', verdict: 'problem', detail: null }, givenContext())).toMatchObject({
      outcome: 'watch',
      seen: 'out',
    });
  });
});
