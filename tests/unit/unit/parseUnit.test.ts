import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { parseUnit } from '../../../src/domain/unit/parseUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';

const units: readonly Unit[] = [
  ...DEMO_UNITS,
  ...TEMPLATES.map((template) => createUnit(template, { id: template.id, name: template.name, at: 1 })),
];
const heron = DEMO_UNITS[0]!;

describe('parseUnit', () => {
  it('gives back every unit of ours, written and read again', () => {
    for (const unit of units) {
      expect(parseUnit(JSON.parse(JSON.stringify(unit)))).toEqual({ ok: true, unit });
    }
  });

  it('leaves unknown keys behind, at any depth', () => {
    const json = JSON.parse(JSON.stringify(heron));
    json.extra = 1;
    json.tires.extra = { deep: true };
    json.wheels.dotCodes.roof = '3623';
    expect(parseUnit(json)).toEqual({ ok: true, unit: heron });
  });

  it('is not led astray by a prototype in the file', () => {
    const json: unknown = JSON.parse(`{"__proto__":{"polluted":true},${JSON.stringify(heron).slice(1)}`);
    const parsed = parseUnit(json);
    expect(parsed).toEqual({ ok: true, unit: heron });
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
    expect(parsed.ok && 'polluted' in parsed.unit).toBe(false);
  });

  it.each<readonly [string, unknown, RegExp]>([
    ['nothing', null, /not a unit profile/],
    ['a text', 'unit', /not a unit profile/],
    ['a list', [], /something wrong at|not a unit profile/],
    ['another version', { ...heron, schema: 2 }, /newer version/],
    ['an older unknown version', { ...heron, schema: 0 }, /"schema"/],
    ['a missing part', { ...heron, lift: undefined }, /"lift"/],
    ['a negative pressure', { ...heron, tires: { ...heron.tires, placardColdPa: -5 } }, /placardColdPa/],
    ['an endless pressure', { ...heron, tires: { ...heron.tires, placardColdPa: Number.POSITIVE_INFINITY } }, /placardColdPa/],
    ['no number', { ...heron, wheels: { ...heron.wheels, torqueNm: Number.NaN } }, /torqueNm/],
    ['seven lugs', { ...heron, wheels: { ...heron.wheels, lugs: 7 } }, /lugs/],
    ['a number as text', { ...heron, wheels: { ...heron.wheels, lugs: '6' } }, /lugs/],
    [
      'a date with a thirteenth month',
      { ...heron, cylinders: [{ ...heron.cylinders[0], date: '2024-13' }] },
      /cylinders\.0\.date/,
    ],
    ['a thousand cylinders', { ...heron, cylinders: Array.from({ length: 1000 }, () => heron.cylinders[0]) }, /cylinders/],
    ['a name as long as a book', { ...heron, name: 'x'.repeat(1_000_000) }, /"name"/],
    ['an empty name', { ...heron, name: ' ' }, /"name"/],
    ['an unknown lift', { ...heron, lift: { ...heron.lift, kind: 'balloon' } }, /lift\.kind/],
  ])('refuses %s with a sentence', (_, json, sentence) => {
    const parsed = parseUnit(json);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) {
      expect(parsed.sentence).toMatch(sentence);
      expect(parsed.sentence.length).toBeLessThan(200);
    }
  });

  it('never throws, and takes nothing for a unit that it cannot write again unchanged', () => {
    const values = fc.anything({ withBigInt: true, withDate: true, withNullPrototype: true });
    const paths = ['schema', 'axles', 'tires', 'wheels', 'lift', 'cabin', 'cylinders', 'alarms', 'weights', 'revision', 'name'];
    fc.assert(
      fc.property(fc.constantFrom(...paths), values, (path, value) => {
        const parsed = parseUnit({ ...heron, [path]: value });
        if (parsed.ok) expect(parseUnit(JSON.parse(JSON.stringify(parsed.unit)))).toEqual(parsed);
        else expect(parsed.sentence).toMatch(/\.$/);
      }),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(values, (value) => {
        expect(parseUnit(value).ok).toBe(false);
      }),
    );
  });
});
