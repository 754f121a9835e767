/**
 * Vehicle identification numbers. Source: 49 CFR 565.15 (check digit: 565.15(c) and Tables III to V; model year:
 * 565.15(d), Table VII, from memory; makers of few vehicles: 565.15(a)).
 */

export type VinResult =
  | {
      readonly ok: true;
      readonly vin: string;
      /** Model years that position 10 can mean, oldest first: the letters come round every thirty years. */
      readonly years: readonly number[];
      /** What else there is to know; null where there is nothing. */
      readonly note: string | null;
    }
  | { readonly ok: false; readonly sentence: string };

const VALUES: Readonly<Record<string, number>> = {
  A: 1,
  B: 2,
  C: 3,
  D: 4,
  E: 5,
  F: 6,
  G: 7,
  H: 8,
  J: 1,
  K: 2,
  L: 3,
  M: 4,
  N: 5,
  P: 7,
  R: 9,
  S: 2,
  T: 3,
  U: 4,
  V: 5,
  W: 6,
  X: 7,
  Y: 8,
  Z: 9,
};
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;
/** Position 10 from 1980 on; I, O, Q, U, Z and 0 are not used. */
const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789';
const FIRST_YEAR = 1980;
/** Positions that a human misreads the most, each as what it should have been. */
const NEVER_USED: Readonly<Record<string, string>> = { I: 'one', O: 'zero', Q: 'zero or nine' };

/**
 * The check digit of seventeen characters: `0`–`9` or `X`; position 9 itself does not count.
 * @returns null when a character has no value
 */
export function vinCheckDigit(vin: string): string | null {
  if (vin.length !== WEIGHTS.length) return null;
  let sum = 0;
  for (const [index, weight] of WEIGHTS.entries()) {
    const character = vin[index] ?? '';
    const value = /^\d$/.test(character) ? Number(character) : VALUES[character];
    // Position 9 may hold anything: it is what is being worked out.
    if (value === undefined && weight !== 0) return null;
    sum += (value ?? 0) * weight;
  }
  const remainder = sum % 11;
  return remainder === 10 ? 'X' : String(remainder);
}

/**
 * Reads a VIN as typed; spaces and hyphens do not matter, nor does case.
 * A right check digit catches a wrong or swapped character, but not every one: letters of the same value pass for each
 * other (A and J; B, K and S; C, L and T; D, M and U; E, N and V; G, P and X; F and W; H and Y; R and Z).
 */
export function checkVin(text: string): VinResult {
  const vin = text.toUpperCase().replace(/[\s-]/g, '');
  if (vin === '') return refuse('There is no VIN. Leave it empty if the unit has none.');
  if (/[^A-Z0-9]/.test(vin)) return refuse('A VIN has letters and digits only.');
  if (vin.length !== 17) {
    return refuse(
      `A VIN has 17 characters; this has ${vin.length}. A home-built unit may carry a shorter number from the state: keep that one in a note.`,
    );
  }
  const unused = /[IOQ]/.exec(vin)?.[0];
  if (unused !== undefined) {
    return refuse(`A VIN never has the letter ${unused}. Look again: it is most likely a ${NEVER_USED[unused] ?? 'digit'}.`);
  }
  const expected = vinCheckDigit(vin);
  if (expected !== vin[8]) {
    return refuse(
      `The ninth character should be ${expected ?? 'a digit'} for this number, not ${vin[8] ?? 'missing'}. Read it again from the label: two characters may be swapped, or an 8 read as B, a 5 as S, a 2 as Z. A number assigned by a state to a home-built unit need not pass this.`,
    );
  }
  const yearIndex = YEAR_CODES.indexOf(vin[9] ?? '?');
  const years = yearIndex < 0 ? [] : [FIRST_YEAR + yearIndex, FIRST_YEAR + yearIndex + YEAR_CODES.length];
  const note =
    vin[2] === '9'
      ? 'The 9 in third place is a maker of few vehicles; characters 12 to 14 belong to its name.'
      : years.length === 0
        ? 'The tenth character names no model year. A number assigned by a state can be like that.'
        : null;
  return { ok: true, vin, years, note };
}

const refuse = (sentence: string): VinResult => ({ ok: false, sentence });
