import { describe, expect, it } from 'vitest';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { createUnit, duplicateUnit, setArchived, touchUnit } from '../../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { profileSections } from '../../../src/domain/unit/fields.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';
import { validateUnit } from '../../../src/domain/unit/validate.ts';

const AT = Date.UTC(2026, 10, 25);
const [heron, lantern] = DEMO_UNITS as readonly [Unit, Unit, ...Unit[]];
const fields = (unit: Unit, level?: 'error' | 'warning') =>
  validateUnit(unit, AT)
    .filter((problem) => level === undefined || problem.level === level)
    .map(({ field }) => field);

describe('validateUnit', () => {
  it('finds nothing wrong with the demo units and with fresh templates', () => {
    for (const unit of DEMO_UNITS) expect(validateUnit(unit, AT), unit.name).toEqual([]);
    for (const template of TEMPLATES) {
      expect(validateUnit(createUnit(template, { id: 'u', name: 'New', at: AT }), AT), template.id).toEqual([]);
    }
  });

  const tires = (change: Partial<Unit['tires']>): Unit => ({ ...heron, tires: { ...heron.tires, ...change } });
  const wheels = (change: Partial<Unit['wheels']>): Unit => ({ ...heron, wheels: { ...heron.wheels, ...change } });

  it.each<readonly [string, Unit, string, 'error' | 'warning']>([
    ['a placard above the sidewall', tires({ placardColdPa: toSI(95, 'psi') }), 'tires.placardColdPa', 'error'],
    ['a placard far below the sidewall', tires({ placardColdPa: toSI(32, 'psi') }), 'tires.placardColdPa', 'warning'],
    ['tires too weak for the axle', tires({ maxLoadKg: toSI(1700, 'lb') }), 'tires.maxLoadKg', 'warning'],
    ['a torque in inch-pounds', wheels({ torqueNm: toSI(1200, 'lb-ft') }), 'wheels.torqueNm', 'error'],
    ['a torque of nothing', wheels({ torqueNm: 0 }), 'wheels.torqueNm', 'error'],
    ['a torque that is no number', wheels({ torqueNm: Number.NaN }), 'wheels.torqueNm', 'error'],
    ['a torque unusual for its stud', wheels({ torqueNm: toSI(160, 'lb-ft') }), 'wheels.torqueNm', 'warning'],
    ['a torque from nowhere', wheels({ torqueSource: null }), 'wheels.torqueSource', 'warning'],
    ['a date code with no such week', wheels({ dotCodes: { left: '5423' } }), 'wheels.dotCodes.left', 'error'],
    ['a date code still to come', wheels({ dotCodes: { right: '5026' } }), 'wheels.dotCodes.right', 'error'],
    ['a VIN with a wrong digit', { ...heron, vin: '1M8GDM9A0KP042788' }, 'vin', 'warning'],
    ['a year that the VIN denies', { ...heron, vin: '1M8GDM9AXKP042788', year: 2018 }, 'year', 'warning'],
    ['a year to come', { ...heron, year: 2031 }, 'year', 'error'],
    ['no name', { ...heron, name: '  ' }, 'name', 'error'],
    ['a cable winch without a cable', { ...heron, lift: { ...heron.lift, cables: 0 } }, 'lift.cables', 'error'],
    ['a lift without pins', { ...heron, lift: { ...heron.lift, pinsPerSide: 0 } }, 'lift.pinsPerSide', 'warning'],
    [
      'empty heavier than allowed',
      { ...heron, weights: { ...heron.weights, emptyKg: toSI(4000, 'lb') } },
      'weights.emptyKg',
      'error',
    ],
    ['axles too weak', { ...lantern, weights: { ...lantern.weights, gawrKg: toSI(3500, 'lb') } }, 'weights.gawrKg', 'warning'],
    [
      'a cylinder from the future',
      { ...heron, cylinders: [{ ...heron.cylinders[0]!, date: '2027-01' }] },
      'cylinders.0.date',
      'error',
    ],
    [
      'water capacity taken for tare',
      { ...heron, cylinders: [{ ...heron.cylinders[0]!, tareKg: toSI(95, 'lb') }] },
      'cylinders.0.tareKg',
      'warning',
    ],
    [
      'an alarm made in the future',
      { ...heron, alarms: { ...heron.alarms, co: { fitted: true, date: '2029-01', dateMeans: 'made' } } },
      'alarms.co.date',
      'error',
    ],
    [
      'a date that may mean two things',
      { ...heron, alarms: { ...heron.alarms, gas: { fitted: true, date: '2025-01', dateMeans: null } } },
      'alarms.gas.dateMeans',
      'warning',
    ],
    [
      'a heater and no carbon monoxide alarm',
      { ...heron, alarms: { ...heron.alarms, co: { fitted: false, date: null, dateMeans: null } } },
      'alarms.co.fitted',
      'warning',
    ],
    ['a heater and no gas', { ...heron, cylinders: [] }, 'cylinders.length', 'warning'],
  ])('says so of %s', (_, unit, field, level) => {
    expect(fields(unit, level)).toContain(field);
    for (const { sentence } of validateUnit(unit, AT)) expect(sentence).toMatch(/^[A-Z0-9].*[.?]$/);
  });

  it('names fields that the form has, errors first', () => {
    const broken: Unit = {
      ...heron,
      name: '',
      tires: { ...heron.tires, placardColdPa: toSI(99, 'psi') },
      wheels: { ...heron.wheels, torqueSource: null, dotCodes: { left: '9999' } },
    };
    const problems = validateUnit(broken, AT);
    const paths = profileSections(broken).flatMap((section) => section.fields.map(({ path }) => path));
    for (const { field } of problems) expect(paths).toContain(field);
    const levels = problems.map(({ level }) => level);
    expect(levels).toEqual([...levels].sort());
    expect(levels).toContain('error');
    expect(levels).toContain('warning');
  });

  it('accepts a placard and sidewall that differ only by how labels are rounded', () => {
    // 65 psi printed as 450 kPa: 448.2 kPa against 450 kPa.
    expect(fields(tires({ placardColdPa: 450_000, sidewallMaxPa: toSI(65, 'psi'), loadRange: 'D' }))).toEqual([]);
  });
});

describe('createUnit, duplicateUnit, touchUnit', () => {
  const template = TEMPLATES[0]!;

  it('makes a unit that is nobody else', () => {
    const unit = createUnit(template, { id: 'a', name: '  Plover ', at: AT });
    expect(unit).toMatchObject({ schema: 1, id: 'a', name: 'Plover', demo: false, archived: false, revision: 1, createdAt: AT });
  });

  it('copies the build but not what belongs to one unit alone', () => {
    const copy = duplicateUnit({ ...lantern, vin: '1M8GDM9AXKP042788', archived: true }, { id: 'b', name: 'Second', at: AT });
    expect(copy).toMatchObject({ id: 'b', name: 'Second', vin: null, demo: false, archived: false, revision: 1, updatedAt: AT });
    expect(copy.wheels.dotCodes).toEqual({});
    expect(copy.cylinders.map(({ date }) => date)).toEqual([null, null]);
    expect(copy.alarms.co).toMatchObject({ fitted: true, date: null, dateMeans: null });
    expect(copy.tires).toEqual(lantern.tires);
    expect(lantern.wheels.dotCodes).not.toEqual({});
  });

  it('counts revisions', () => {
    expect(touchUnit(heron, AT)).toEqual({ ...heron, updatedAt: AT, revision: heron.revision + 1 });
  });

  it('puts a unit away and takes it out again', () => {
    const away = setArchived(heron, true, AT);
    expect(away).toEqual({ ...heron, archived: true, updatedAt: AT, revision: heron.revision + 1 });
    expect(setArchived(away, false, AT + 1)).toMatchObject({ archived: false, revision: heron.revision + 2 });
  });

  it('refuses a unit without id, name or time', () => {
    expect(() => createUnit(template, { id: '', name: 'A', at: AT })).toThrow(RangeError);
    expect(() => createUnit(template, { id: 'a', name: ' ', at: AT })).toThrow(RangeError);
    expect(() => createUnit(template, { id: 'a', name: 'A', at: Number.NaN })).toThrow(RangeError);
    expect(() => touchUnit(heron, Number.NaN)).toThrow(RangeError);
  });

  it('gives templates no figure that only the maker can give', () => {
    for (const { body } of TEMPLATES) {
      expect([body.tires.placardColdPa, body.wheels.torqueNm, body.weights.gvwrKg, body.vin, body.wheels.dotCodes]).toEqual([
        null,
        null,
        null,
        null,
        {},
      ]);
    }
  });
});
