import { describe, expect, it } from 'vitest';
import { isAlarmDateSettled, isCylinderDateSettled, isTireDateSettled, startOfMonth } from '../../../src/domain/checks/known.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import type { AlarmProfile, GasCylinder, Unit } from '../../../src/domain/unit/unit.ts';

const heron = DEMO_UNITS[0]!;
const on = (year: number, month: number, day = 1) => Date.UTC(year, month - 1, day);

describe('a tire date in the profile', () => {
  const withCode = (code: string | undefined): Unit => ({
    ...heron,
    wheels: { ...heron.wheels, dotCodes: code === undefined ? {} : { left: code } },
  });

  it('settles the matter until the tire is five years old (common practice)', () => {
    // Week 28 of 2021 begins on 11 July 2021: first Sunday 3 January, and 27 weeks.
    expect(isTireDateSettled(withCode('2821'), 'left', on(2026, 7, 9))).toBe(true);
    expect(isTireDateSettled(withCode('2821'), 'left', on(2026, 7, 13))).toBe(false);
  });

  it('does not when it is unknown, impossible, still to come, or of another wheel, or when the day is not known', () => {
    expect(isTireDateSettled(withCode(undefined), 'left', on(2026, 11))).toBe(false);
    expect(isTireDateSettled(withCode('5423'), 'left', on(2026, 11))).toBe(false);
    expect(isTireDateSettled(withCode('2027'), 'left', on(2026, 11))).toBe(false);
    expect(isTireDateSettled(withCode('3623'), 'right', on(2026, 11))).toBe(false);
    expect(isTireDateSettled(withCode('3623'), null, on(2026, 11))).toBe(false);
    expect(isTireDateSettled(withCode('3623'), 'left', undefined)).toBe(false);
  });
});

describe('an alarm date in the profile', () => {
  const withAlarm = (alarm: AlarmProfile): Unit => ({ ...heron, alarms: { ...heron.alarms, co: alarm } });

  it('settles the matter until the month it is to be replaced by', () => {
    const unit = withAlarm({ fitted: true, date: '2027-06', dateMeans: 'replace-by' });
    expect(isAlarmDateSettled(unit, 'co', on(2027, 5, 31))).toBe(true);
    expect(isAlarmDateSettled(unit, 'co', on(2027, 6, 1))).toBe(false);
  });

  it('settles the matter for the life that makers give, from the month it was made', () => {
    const unit = withAlarm({ fitted: true, date: '2022-01', dateMeans: 'made' });
    // Seven years for carbon monoxide, five for gas (alarm makers, from memory).
    expect(isAlarmDateSettled(unit, 'co', on(2028, 12, 25))).toBe(true);
    expect(isAlarmDateSettled(unit, 'co', on(2029, 1, 3))).toBe(false);
    expect(isAlarmDateSettled(unit, 'co', on(2021, 12))).toBe(false);
  });

  it('does not when nobody knows what the date means', () => {
    expect(isAlarmDateSettled(withAlarm({ fitted: true, date: '2030-01', dateMeans: null }), 'co', on(2026, 1))).toBe(false);
    expect(isAlarmDateSettled(withAlarm({ fitted: true, date: null, dateMeans: 'made' }), 'co', on(2026, 1))).toBe(false);
  });
});

describe('a cylinder date in the profile', () => {
  const withCylinder = (cylinder: Partial<GasCylinder>): Unit => ({
    ...heron,
    cylinders: [{ ...heron.cylinders[0]!, ...cylinder }],
  });

  it('settles the matter within the shortest interval for its letter', () => {
    const external = withCylinder({ date: '2020-06', dateSuffix: 'E' });
    expect(isCylinderDateSettled(external, 0, on(2025, 5, 28))).toBe(true);
    expect(isCylinderDateSettled(external, 0, on(2025, 6, 3))).toBe(false);
    const plain = withCylinder({ date: '2017-01', dateSuffix: null });
    // Twelve years from manufacture (49 CFR 180.209 as changed by 85 FR 68790, from memory).
    expect(isCylinderDateSettled(plain, 0, on(2028, 11))).toBe(true);
    expect(isCylinderDateSettled(plain, 0, on(2029, 2))).toBe(false);
    expect(isCylinderDateSettled(plain, 1, on(2026, 11))).toBe(false);
    expect(isCylinderDateSettled(withCylinder({ date: null }), 0, on(2026, 11))).toBe(false);
  });
});

describe('startOfMonth', () => {
  it('reads a month, and nothing else', () => {
    expect(startOfMonth('2024-02')).toBe(on(2024, 2));
    for (const text of [null, '', '2024', '2024-00', '2024-13', '2024-2', '24-02', '2024-02-01'])
      expect(startOfMonth(text)).toBeNull();
  });
});
