import { describe, expect, it } from 'vitest';
import { toSI } from '../../../src/domain/quantity/units.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { essentialSections, type ProfileField, profileSections } from '../../../src/domain/unit/fields.ts';
import { type FieldValue, fieldRange, getField, setField } from '../../../src/domain/unit/fieldValue.ts';
import { parseUnit } from '../../../src/domain/unit/parseUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

const [heron, lantern, kestrel] = DEMO_UNITS as readonly [Unit, Unit, Unit];
const fieldsOf = (unit: Unit) => profileSections(unit).flatMap(({ fields }) => fields);
const fieldAt = (unit: Unit, path: string): ProfileField => {
  const found = fieldsOf(unit).find((field) => field.path === path);
  if (!found) throw new Error(`no field ${path}`);
  return found;
};
const set = (unit: Unit, path: string, value: FieldValue, display: 'us' | 'metric' = 'us'): Unit => {
  const result = setField(unit, fieldAt(unit, path), value, display);
  if (!result.ok) throw new Error(result.sentence);
  return result.unit;
};

/** Values to try in a field, in the system given. */
function samples(field: ProfileField, display: 'us' | 'metric'): readonly FieldValue[] {
  switch (field.kind.kind) {
    case 'text':
      return ['PLOVER'];
    case 'number': {
      const { min, max, step } = fieldRange(field.kind, display);
      return [min, max, Math.min(max, Math.round((min + step * 3) * 1000) / 1000)].map((value) =>
        field.kind.kind === 'number' && field.kind.us === 'count' ? Math.round(value) : value,
      );
    }
    case 'choice':
      return field.kind.options.map(({ value }) => value);
    case 'yes-no':
      return [true, false];
    case 'date':
      return field.kind.form === 'dot-week' ? ['3623'] : ['2024-05'];
  }
}

describe.each(['us', 'metric'] as const)('the form in %s', (display) => {
  it.each(DEMO_UNITS.map((unit) => [unit.name, unit] as const))('sets and gives back every figure of %s', (_, unit) => {
    for (const field of fieldsOf(unit)) {
      for (const value of samples(field, display)) {
        const result = setField(unit, field, value, display);
        expect(result.ok, `${field.path} = ${value}`).toBe(true);
        if (!result.ok) continue;
        const shown = getField(result.unit, field, display);
        if (typeof value === 'number' && field.kind.kind === 'number') expect(shown).toBeCloseTo(value, 2);
        else expect(shown).toBe(value);
        expect(parseUnit(result.unit).ok, `${field.path} = ${value}`).toBe(true);
      }
    }
  });

  it('takes "I don\'t know" exactly where it is offered', () => {
    for (const field of fieldsOf(lantern)) {
      for (const nothing of [null, '', '  ']) {
        const result = setField(lantern, field, nothing, display);
        expect(result.ok, field.path).toBe(field.unknown);
        if (result.ok) {
          expect(getField(result.unit, field, display)).toBeNull();
          expect(parseUnit(result.unit).ok, field.path).toBe(true);
        } else {
          expect(result.sentence).toMatch(/needed\.$/);
        }
      }
    }
  });

  it('does not change a figure that is read and set again', () => {
    for (const unit of DEMO_UNITS) {
      for (const field of fieldsOf(unit)) {
        const before = getField(unit, field, display);
        if (before === null) continue;
        const result = setField(unit, field, before, display);
        if (!result.ok) throw new Error(`${field.path}: ${result.sentence}`);
        expect(getField(result.unit, field, display)).toBe(before);
      }
    }
  });
});

describe('setField', () => {
  it('keeps pressure and torque in SI, whatever is shown', () => {
    expect(set(heron, 'tires.placardColdPa', '65').tires.placardColdPa).toBeCloseTo(toSI(65, 'psi'), 6);
    expect(set(heron, 'tires.placardColdPa', 450, 'metric').tires.placardColdPa).toBe(450_000);
    expect(set(heron, 'wheels.torqueNm', '110').wheels.torqueNm).toBeCloseTo(149.139974, 5);
  });

  it.each<readonly [string, FieldValue, RegExp]>([
    ['tires.placardColdPa', 'sixty', /is a number/],
    ['tires.placardColdPa', '0x41', /is a number/],
    ['tires.placardColdPa', '1e2', /is a number/],
    ['tires.placardColdPa', Number.NaN, /is a number/],
    ['tires.placardColdPa', true, /is a number/],
    ['tires.placardColdPa', 4500, /between 10 and 130 psi/],
    ['cabin.holeCovers', 2.5, /whole number/],
    ['wheels.lugs', 7, /one of 4, 5, 6, 8/],
    ['lift.kind', 'balloon', /one of/],
    ['tongue.chains', 'maybe', /yes or no/],
    ['cylinders.0.date', '2024-13', /year and a month/],
    ['wheels.dotCodes.left', '36', /four digits/],
    ['name', 'x'.repeat(41), /at most 40/],
  ])('refuses %s = %j with a sentence', (path, value, sentence) => {
    const result = setField(heron, fieldAt(heron, path), value, 'us');
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.sentence).toMatch(sentence);
  });

  it('reads a decimal comma', () => {
    expect(set(heron, 'cylinders.0.tareKg', '7,7', 'metric').cylinders[0]?.tareKg).toBeCloseTo(7.7, 9);
  });

  it('drops date codes of wheels that are no longer there', () => {
    expect(set(lantern, 'axles', 1).wheels.dotCodes).toEqual({});
    expect(set(lantern, 'axles', 3).wheels.dotCodes).toEqual(lantern.wheels.dotCodes);
  });

  it('keeps the parts of a lift in step with its kind', () => {
    const hydraulic = set(kestrel, 'lift.kind', 'hydraulic');
    expect(hydraulic.lift).toMatchObject({
      cables: 0,
      pulleys: 'none',
      cableDiameterM: null,
      axleStubs: 'sealed',
      pinsPerSide: 1,
    });
    const none = set(kestrel, 'lift.kind', 'none');
    expect(none.lift).toMatchObject({ cables: 0, pulleys: 'none', axleStubs: 'none', pinsPerSide: 0 });
    expect(set(none, 'lift.kind', 'hand-crank-cable').lift).toMatchObject({
      cables: 2,
      pulleys: null,
      axleStubs: null,
      pinsPerSide: null,
    });
  });

  it('adds and takes away cylinders at the end', () => {
    const two = set(heron, 'cylinders.length', 2);
    expect(two.cylinders).toHaveLength(2);
    expect(two.cylinders[0]).toEqual(heron.cylinders[0]);
    expect(fieldsOf(two).map(({ path }) => path)).toContain('cylinders.1.tareKg');
    expect(set(two, 'cylinders.length', 0).cylinders).toEqual([]);
  });

  it('forgets a date code and where a torque came from', () => {
    expect(set(heron, 'wheels.dotCodes.left', null).wheels.dotCodes).toEqual({ right: '1423' });
    expect(set(heron, 'wheels.torqueNm', null).wheels.torqueSource).toBeNull();
  });

  it('leaves the unit it was given as it was', () => {
    const before = JSON.stringify(heron);
    set(heron, 'wheels.dotCodes.left', '0124');
    set(heron, 'cylinders.0.tareKg', 18);
    expect(JSON.stringify(heron)).toBe(before);
  });
});

describe('what the form asks', () => {
  it('shows only what applies', () => {
    const paths = (unit: Unit) => fieldsOf(unit).map(({ path }) => path);
    expect(paths(lantern)).not.toContain('lift.pulleys');
    expect(paths(kestrel)).toContain('lift.pulleys');
    expect(paths(lantern)).toContain('wheels.dotCodes.right-rear');
    expect(paths(kestrel)).not.toContain('wheels.dotCodes.right-rear');
    expect(new Set(paths(lantern)).size).toBe(paths(lantern).length);
  });

  it('is short enough for three minutes: at most thirty essential questions, most of them a tap', () => {
    for (const template of TEMPLATES) {
      const unit = createUnit(template, { id: 'u', name: 'New', at: 0 });
      const essential = essentialSections(unit).flatMap(({ fields }) => fields);
      expect(essential.length).toBeLessThanOrEqual(30);
      expect(essential.filter(({ kind }) => kind.kind === 'number' || kind.kind === 'text').length).toBeLessThanOrEqual(5);
    }
  });

  it('explains every essential figure', () => {
    for (const field of essentialSections(kestrel).flatMap(({ fields }) => fields)) {
      expect(field.help.length, field.path).toBeGreaterThan(10);
      expect(field.label.length, field.path).toBeLessThanOrEqual(40);
    }
  });
});
