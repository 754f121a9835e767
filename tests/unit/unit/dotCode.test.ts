import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDotCode } from '../../../src/domain/unit/dotCode.ts';

const NOW = Date.UTC(2026, 10, 25);
const startOf = (code: string): string | null => {
  const read = readDotCode(code, NOW);
  return read.ok ? new Date(read.startsAt).toISOString().slice(0, 10) : null;
};

describe('readDotCode', () => {
  it("agrees with the regulation's example: 0109 is 4 to 10 January 2009 (49 CFR 574.5(b)(3))", () => {
    expect(startOf('0109')).toBe('2009-01-04');
  });

  // Worked out by hand from the same rule: week 01 is the first full week, Sunday to Saturday.
  it.each([
    ['5208', '2008-12-28'],
    ['0117', '2017-01-01'],
    ['2220', '2020-05-31'],
    ['3623', '2023-09-03'],
    ['0126', '2026-01-04'],
    ['5323', '2023-12-31'],
  ])('%s begins on %s', (code, day) => {
    expect(startOf(code)).toBe(day);
  });

  it.each(['5309', '0023', '5423', '9901', 'abcd', '36', '36233', '4899', '5226', ' 3623'])(
    'refuses %s with a sentence',
    (code) => {
      const read = readDotCode(code, NOW);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.sentence).toMatch(/\.$/);
    },
  );

  it('takes a week 53 only in years that have one: 2000, 2006, 2012, 2017, 2023', () => {
    const years = Array.from({ length: 26 }, (_, index) => 2000 + index);
    expect(years.filter((year) => readDotCode(`53${String(year).slice(2)}`, NOW).ok)).toEqual([2000, 2006, 2012, 2017, 2023]);
  });

  it('knows three digits for a tire from before 2000', () => {
    const read = readDotCode('318', NOW);
    expect(!read.ok && read.sentence).toMatch(/before the year 2000/);
  });

  it('always begins on a Sunday, a week after the week before', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 52 }), fc.integer({ min: 0, max: 25 }), (week, year) => {
        const two = (value: number) => String(value).padStart(2, '0');
        const read = readDotCode(two(week) + two(year), NOW);
        const before = readDotCode(two(week - 1) + two(year), NOW);
        if (!read.ok || !before.ok) throw new Error('weeks 1 to 52 exist in every year');
        expect(new Date(read.startsAt).getUTCDay()).toBe(0);
        expect(read.startsAt - before.startsAt).toBe(7 * 86_400_000);
      }),
    );
  });
});
