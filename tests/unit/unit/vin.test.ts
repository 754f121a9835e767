import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkVin, vinCheckDigit } from '../../../src/domain/unit/vin.ts';

/** 49 CFR 565.15: the regulation's own worked sample, the agency's sample for a trailer maker, and common test numbers. */
const VALID = ['11111111111111111', '1M8GDM9AXKP042788', '1G4AH59H45G118341', '1J9RP1A36A1644345', '5GZCZ43D13S812715'];

describe('checkVin', () => {
  it.each(VALID)('takes %s', (vin) => {
    expect(checkVin(vin)).toMatchObject({ ok: true, vin });
    expect(vinCheckDigit(vin)).toBe(vin[8]);
  });

  it("works out the digit of the regulation's sample: 411 mod 11 is 4", () => {
    expect(vinCheckDigit('1G4AH59H_5G118341')).toBe('4');
  });

  it.each([
    ['1M8GDM9A0KP042788', 'X'],
    ['1M8GDM9AXKP042789', '1'],
    ['1M8GDM9AXKP047288', '4'],
  ])('refuses %s and says which digit it expects', (vin, digit) => {
    const result = checkVin(vin);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.sentence).toContain(`should be ${digit}`);
  });

  it('cannot tell letters of equal value apart, as the regulation has it', () => {
    expect(checkVin('1M8GDM9JXKP042788').ok).toBe(true);
  });

  it('gives both model years of the thirty-year round', () => {
    const result = checkVin('1M8GDM9AXKP042788');
    expect(result.ok && result.years).toEqual([1989, 2019]);
    const repeated = checkVin('11111111111111111');
    expect(repeated.ok && repeated.years).toEqual([2001, 2031]);
  });

  it('knows a maker of few vehicles by the 9 in third place', () => {
    const result = checkVin('1J9RP1A36A1644345');
    expect(result.ok && result.note).toMatch(/few vehicles/);
  });

  it('reads spaces, hyphens and small letters', () => {
    expect(checkVin(' 1m8gdm9a-xkp0 42788 ')).toMatchObject({ ok: true, vin: '1M8GDM9AXKP042788' });
  });

  it.each([
    ['', /no VIN/],
    ['HOMEBUILT123', /17 characters; this has 12/],
    ['IM8GDM9AXKP042788', /never has the letter I.*one/],
    ['1M8GDM9AXKPO42788', /never has the letter O.*zero/],
    ['1M8GDM9AXKP04278é', /letters and digits only/],
    ['<script>', /letters and digits only/],
  ])('says what is wrong with %j', (text, sentence) => {
    const result = checkVin(text);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.sentence).toMatch(sentence);
  });

  it('catches every single wrong digit outside the ninth place', () => {
    fc.assert(
      fc.property(fc.constantFrom(...VALID), fc.nat(16), fc.integer({ min: 0, max: 9 }), (vin, place, digit) => {
        fc.pre(place !== 8 && /\d/.test(vin[place]!) && vin[place] !== String(digit));
        const wrong = vin.slice(0, place) + digit + vin.slice(place + 1);
        expect(checkVin(wrong).ok).toBe(false);
      }),
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const result = checkVin(text);
        if (!result.ok) expect(result.sentence).toMatch(/\.$/);
      }),
    );
  });
});
