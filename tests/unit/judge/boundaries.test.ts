/** Each rule one step either side of each of its limits. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/domain/judge/judge.ts';
import {
  alarmDateSpec,
  batteryRestSpec,
  breakawayRestSpec,
  brokenWiresSpec,
  cablePushSpec,
  choiceSpec,
  coReadingSpec,
  cylinderDateSpec,
  cylinderWeightSpec,
  furnaceRiseSpec,
  iceThicknessSpec,
  lugsMovedSpec,
  stateSpec,
  tireAgeSpec,
  tirePressureSpec,
  treadSpec,
} from '../../../src/domain/judge/specs.ts';
import { toSI } from '../../../src/domain/quantity/units.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';
import { givenUnit } from '../history/givenRounds.ts';
import {
  EXPECTS_COUNT,
  givenCheck,
  givenContext,
  judgeCount,
  judgeMonth,
  judgeReading,
  judgeWeek,
  NOW,
  reading,
} from './given.ts';

const UNIT = givenUnit();
const withTires = (placard: number | null, sidewall: number | null) =>
  givenUnit({
    tires: {
      ...UNIT.tires,
      placardColdPa: placard === null ? null : toSI(placard, 'psi'),
      sidewallMaxPa: sidewall === null ? null : toSI(sidewall, 'psi'),
    },
  });

describe('tire pressure', () => {
  const spec = tirePressureSpec(withTires(65, 80));

  it.each([
    [71.5, 'ok'],
    [72, 'watch'],
    [65, 'ok'],
    [64.6, 'ok'],
    [64.5, 'watch'],
    [58.5, 'watch'],
    [58.4, 'fix'],
    [49, 'fix'],
    [48.75, 'hold'],
    [40, 'hold'],
    [0, 'hold'],
    [80.5, 'watch'],
    [81, 'fix'],
    [88, 'fix'],
    [88.5, 'hold'],
  ])('%d psi of a placard of 65 and a sidewall of 80 is %s', (psi, outcome) => {
    expect(judgeReading(spec, psi, 'psi').outcome).toBe(outcome);
  });

  it('reads in kilopascals as in psi', () => {
    expect(judgeReading(spec, 450, 'kPa').outcome).toBe('ok');
    expect(judgeReading(spec, 400, 'kPa').outcome).toBe('fix');
    expect(judgeReading(spec, 330, 'kPa').outcome).toBe('hold');
  });

  it('is not called low when it stands a quarter pound over a placard that is also the sidewall maximum', () => {
    const same = tirePressureSpec(withTires(65, 65));
    expect(judgeReading(same, 65.25, 'psi')).toMatchObject({ outcome: 'ok', todo: null });
    expect(judgeReading(same, 66, 'psi')).toMatchObject({ outcome: 'fix' });
    expect(judgeReading(same, 66, 'psi').say).toContain('sidewall maximum');
  });

  it('never asks to let air out of a warm tire', () => {
    for (const psi of [66, 72, 79, 82, 90]) {
      const { todo } = judgeReading(spec, psi, 'psi', { hoursParked: 1 });
      expect(todo ?? '').not.toMatch(/let (air out, cold|it down)/i);
    }
    expect(judgeReading(spec, 82, 'psi', { hoursParked: 1 }).todo).toContain('Never let air out of a warm tire');
  });

  it('low although warm is low', () => {
    expect(judgeReading(spec, 55, 'psi', { hoursParked: 0 })).toMatchObject({ outcome: 'fix' });
  });

  it('asks whether it is cold when that was not said, and is not green until then', () => {
    const unsaid = judgeReading(spec, 65, 'psi', { hoursParked: null });
    expect(unsaid.outcome).toBe('watch');
    expect(unsaid.question).toContain('three hours');
    expect(judgeReading(spec, 65, 'psi', { hoursParked: 2.9 }).outcome).toBe('watch');
    expect(judgeReading(spec, 65, 'psi', { hoursParked: 3 }).outcome).toBe('ok');
  });

  it('names a missing placard and is never green without one', () => {
    const bare = judgeReading(tirePressureSpec(withTires(null, 65)), 65, 'psi');
    expect(bare.outcome).toBe('watch');
    expect(bare.say).toContain('placard');
  });
});

describe('tread', () => {
  it.each([
    [4, 'ok'],
    [3.9, 'watch'],
    [3, 'watch'],
    [2.9, 'fix'],
    [2, 'fix'],
    [1.9, 'hold'],
    [0, 'hold'],
  ])('%d thirty-seconds is %s', (depth, outcome) => {
    expect(judgeReading(treadSpec(), depth, '32nds').outcome).toBe(outcome);
  });

  it('1.6 mm passes the legal minimum, 1.58 mm does not', () => {
    expect(judgeReading(treadSpec(), 1.6, 'mm').outcome).toBe('fix');
    expect(judgeReading(treadSpec(), 1.58, 'mm').outcome).toBe('hold');
  });
});

describe('tire age on 25 November 2026', () => {
  it.each([
    ['4821', 'ok'],
    ['4721', 'watch'],
    ['4820', 'watch'],
    ['4720', 'fix'],
    ['4816', 'fix'],
    ['4716', 'hold'],
  ])('date code %s is %s', (code, outcome) => {
    expect(judgeWeek(tireAgeSpec(), code).outcome).toBe(outcome);
  });

  it('a code that cannot be asks to be read again', () => {
    expect(judgeWeek(tireAgeSpec(), '5423')).toMatchObject({ outcome: 'fix', todo: expect.stringContaining('again') });
  });
});

describe('lugs that moved', () => {
  const known = lugsMovedSpec(givenUnit({ wheels: { ...UNIT.wheels, torqueNm: toSI(100, 'lb-ft'), torqueSource: 'maker' } }));

  it.each([
    [0, 'ok'],
    [1, 'watch'],
    [2, 'hold'],
    [5, 'hold'],
  ])('%d of five is %s', (moved, outcome) => {
    expect(judgeCount(known, moved).outcome).toBe(outcome);
  });

  it('more than the wheel has is refused', () => {
    expect(judgeCount(known, 6)).toMatchObject({ outcome: 'watch', say: expect.stringContaining('5 lugs') });
  });

  it('none moved proves nothing without a torque figure', () => {
    expect(judgeCount(lugsMovedSpec(UNIT), 0)).toMatchObject({ outcome: 'watch', say: expect.stringContaining('torque') });
  });
});

describe('lift cable', () => {
  it.each([
    [0, 'ok'],
    [1, 'fix'],
    [2, 'fix'],
    [3, 'hold'],
  ])('%d broken wires is %s', (wires, outcome) => {
    expect(judgeCount(brokenWiresSpec(UNIT), wires).outcome).toBe(outcome);
  });

  it.each([
    [1, 'ok'],
    [0.9, 'watch'],
    [0.5, 'watch'],
    [0.4, 'hold'],
    [0, 'hold'],
  ])('%d inches of give is %s', (inches, outcome) => {
    expect(judgeReading(cablePushSpec(UNIT), inches, 'in').outcome).toBe(outcome);
  });
});

describe('batteries', () => {
  const kind = (battery: Unit['battery']['kind']) => batteryRestSpec(givenUnit({ battery: { kind: battery, capacityAh: null } }));

  it.each([
    ['flooded', 12.45, 'ok'],
    ['flooded', 12.44, 'watch'],
    ['flooded', 12.24, 'watch'],
    ['flooded', 12.23, 'fix'],
    ['agm', 12.6, 'ok'],
    ['agm', 12.59, 'watch'],
    ['agm', 12.29, 'fix'],
    ['lifepo4', 12.9, 'ok'],
    ['lifepo4', 12.89, 'watch'],
    ['lifepo4', 12.54, 'watch'],
    ['lifepo4', 12.53, 'fix'],
  ] as const)('%s at %d V is %s', (battery, volts, outcome) => {
    expect(judgeReading(kind(battery), volts, 'V').outcome).toBe(outcome);
  });

  it.each(['flooded', 'agm', 'lifepo4'] as const)('a charger on a %s battery is no rest voltage', (battery) => {
    expect(judgeReading(kind(battery), 14.4, 'V')).toMatchObject({ outcome: 'watch', say: expect.stringContaining('charger') });
  });

  it.each([15.6, 24])('%d V is no 12 volt battery', (volts) => {
    expect(judgeReading(kind('flooded'), volts, 'V').outcome).toBe('watch');
  });

  it.each([0, 4, 8.9])('%d V is a dead one, or a meter that does not touch', (volts) => {
    expect(judgeReading(kind('agm'), volts, 'V')).toMatchObject({ outcome: 'fix', say: expect.stringContaining('meter') });
    expect(judgeReading(breakawayRestSpec(), volts, 'V').outcome).toBe('hold');
  });

  it('an unknown kind is not judged by the table of another', () => {
    expect(judgeReading(kind(null), 12.7, 'V')).toMatchObject({ outcome: 'watch', say: expect.stringContaining('kind') });
  });

  it.each([
    [12.4, 'ok'],
    [12.39, 'fix'],
    [12.2, 'fix'],
    [12.19, 'hold'],
    [11.89, 'hold'],
  ])('breakaway battery at %d V is %s', (volts, outcome) => {
    expect(judgeReading(breakawayRestSpec(), volts, 'V').outcome).toBe(outcome);
  });
});

describe('heater', () => {
  const spec = furnaceRiseSpec(UNIT, { startKey: 'start', minutes: 10 });
  const heaterRan = (minutes: number, fromF: number, toF: number) =>
    judgeReading(spec, toF, 'F', {
      answers: new Map([['start', { answer: reading(fromF, 'F'), at: NOW - minutes * 60_000 }]]),
    });

  it.each([
    [28, 'ok'],
    [27.9, 'watch'],
    [23, 'watch'],
    [22.9, 'fix'],
    [20, 'fix'],
    [10, 'fix'],
  ])('from 20 to %d in ten minutes is %s', (toF, outcome) => {
    expect(heaterRan(10, 20, toF).outcome).toBe(outcome);
  });

  it('a longer wait proves less, a short one nothing', () => {
    expect(heaterRan(40, 20, 28).outcome).toBe('fix');
    expect(heaterRan(4, 20, 60).outcome).toBe('watch');
    expect(heaterRan(-5, 20, 60).outcome).toBe('watch');
  });

  it('without the start nothing is proven', () => {
    expect(judgeReading(spec, 70, 'F').outcome).toBe('watch');
  });
});

describe('gas', () => {
  const unit = givenUnit({
    heat: { ...UNIT.heat, inputW: toSI(20_000, 'BTU/h') },
    cylinders: [{ tareKg: toSI(17, 'lb'), capacityKg: toSI(20, 'lb'), date: null, dateSuffix: null }],
  });

  it.each([
    [37, 'ok'],
    [22, 'ok'],
    [21.9, 'watch'],
    [17, 'watch'],
    [15.9, 'watch'],
    [38.1, 'watch'],
  ])('a scale that reads %d lb with a tare of 17 is %s', (pounds, outcome) => {
    expect(judgeReading(cylinderWeightSpec(unit, 0), pounds, 'lb').outcome).toBe(outcome);
  });

  it.each([
    ['2021-12', 'ok'],
    ['2021-11', 'watch'],
    ['2015-06', 'watch'],
    ['2014-12', 'watch'],
    ['2014-11', 'fix'],
    ['2027-01', 'watch'],
  ])('a cylinder of %s is %s in November 2026', (month, outcome) => {
    expect(judgeMonth(cylinderDateSpec(unit, 0), month).outcome).toBe(outcome);
  });
});

describe('alarms', () => {
  const unit = (dateMeans: 'made' | 'replace-by' | null) =>
    givenUnit({ alarms: { ...UNIT.alarms, co: { fitted: true, date: null, dateMeans } } });

  it.each([
    ['made', '2021-12', 'ok'],
    ['made', '2021-11', 'watch'],
    ['made', '2019-12', 'watch'],
    ['made', '2019-11', 'fix'],
    ['made', '2027-01', 'watch'],
    ['replace-by', '2027-03', 'ok'],
    ['replace-by', '2027-01', 'watch'],
    ['replace-by', '2026-11', 'watch'],
    ['replace-by', '2026-10', 'fix'],
    ['replace-by', '2030-01', 'ok'],
  ] as const)('%s %s is %s', (means, month, outcome) => {
    expect(judgeMonth(alarmDateSpec(unit(means), 'co'), month).outcome).toBe(outcome);
  });

  it('a past date of unknown meaning is not green: it may be the date to replace it by', () => {
    const unknown = judgeMonth(alarmDateSpec(unit(null), 'co'), '2025-01');
    expect(unknown.outcome).toBe('watch');
    expect(unknown.question).not.toBeNull();
  });

  it.each([
    [8, 'ok'],
    [9, 'fix'],
    [34, 'fix'],
    [35, 'hold'],
    [69, 'hold'],
    [70, 'hold'],
  ])('%d parts per million is %s', (ppm, outcome) => {
    expect(judgeReading(coReadingSpec(), ppm, 'ppm').outcome).toBe(outcome);
  });
});

describe('the rest', () => {
  it.each([
    [20, 'ok'],
    [19.9, 'hold'],
  ])('%d inches of ice is %s', (inches, outcome) => {
    expect(judgeReading(iceThicknessSpec(), inches, 'in').outcome).toBe(outcome);
  });

  it('a state is ok or its worst', () => {
    const check = givenCheck(stateSpec('hold'), { kind: 'state', ok: ['in'], problem: ['out'], yesMeans: 'ok' });
    expect(judge(check, { kind: 'state', verdict: 'ok', detail: null }, givenContext()).outcome).toBe('ok');
    expect(judge(check, { kind: 'state', verdict: 'problem', detail: null }, givenContext())).toMatchObject({
      outcome: 'hold',
      todo: 'Mend it.',
    });
  });

  it('a choice that is none of the choices is not green', () => {
    const option = (id: string) => ({ id, label: id, phrases: [id], verdict: 'ok' as const });
    const check = givenCheck(choiceSpec('hold', { sound: 'ok', kinked: 'hold' }), {
      kind: 'choice',
      options: [option('sound'), option('kinked')],
    });
    const chosen = (id: string) => judge(check, { kind: 'choice', option: id, detail: null }, givenContext()).outcome;
    expect([chosen('sound'), chosen('kinked'), chosen('constructor'), chosen('')]).toEqual(['ok', 'hold', 'watch', 'watch']);
  });

  it('an unknown rule of a later version is not green', () => {
    const spec = { rule: 'to-come' as never, worst: 'hold' as const, limits: [], params: {} };
    expect(judge(givenCheck(spec, EXPECTS_COUNT), { kind: 'count', count: 0 }, givenContext()).outcome).toBe('watch');
  });
});
