/** Values as they are read on the screen and spoken, in US or metric units, rounded so that a verdict never changes. */
import { fromSI, UNITS, type UnitId } from './units.ts';

export type Display = 'us' | 'metric';

/** The metric unit that stands for a trade unit. */
const METRIC: Readonly<Partial<Record<UnitId, UnitId>>> = {
  psi: 'kPa',
  'lb-ft': 'N-m',
  'lb-in': 'N-m',
  '32nds': 'mm',
  in: 'cm',
  ft: 'm',
  mi: 'km',
  F: 'C',
  'F-diff': 'C-diff',
  lb: 'kg',
  lbf: 'N',
  mph: 'km/h',
  gal: 'L',
  'BTU/h': 'W',
};

/** Decimals that people read; whole steps are shown without them. */
const DECIMALS: Readonly<Partial<Record<UnitId, number>>> = {
  psi: 1,
  bar: 2,
  '32nds': 1,
  mm: 1,
  cm: 1,
  in: 2,
  ft: 1,
  m: 1,
  V: 2,
  'F-diff': 1,
  'C-diff': 1,
  lb: 1,
  kg: 1,
  percent: 0,
  year: 1,
  mi: 1,
  km: 1,
  gal: 1,
  L: 1,
  A: 1,
  Ah: 0,
};

/** A double holds no more of what is read. */
const MOST_DECIMALS = 12;

/** Relative difference below which two values are one: far below what any gauge shows. */
const SAME = 1e-9;

/** The unit a quantity is shown in. */
export function displayUnit(unit: UnitId, display: Display): UnitId {
  return display === 'metric' ? (METRIC[unit] ?? unit) : unit;
}

/** Half away from zero, without the trailing noughts: 62.5, 62, -12. Never "-0". */
export function roundedText(value: number, decimals: number): string {
  const scale = 10 ** decimals;
  // A hair above the half makes up for binary fractions such as 1.005.
  const rounded = (Math.sign(value) * Math.round(Math.abs(value) * scale * (1 + Number.EPSILON))) / scale;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

/**
 * "62 psi", "5/32 in", "12.6 V", "427 kPa".
 * @param si value in SI of the unit's dimension
 * @throws RangeError for a value that is not finite
 */
export function formatQuantity(si: number, unit: UnitId, display: Display): string {
  const shown = displayUnit(unit, display);
  return withSymbol(roundedText(fromSI(si, shown), DECIMALS[shown] ?? 0), shown);
}

/** An estimate, to two digits: "12000 lbf". @throws RangeError for a value that is not finite */
export function formatRoughly(si: number, unit: UnitId, display: Display): string {
  const shown = displayUnit(unit, display);
  return withSymbol(String(Number(fromSI(si, shown).toPrecision(2))), shown);
}

/**
 * As {@link formatQuantity}, with as many decimals as it takes that a value on one side of a limit is never shown on the
 * limit or on its other side.
 */
export function formatAgainst(si: number, limitSi: number, unit: UnitId, display: Display): string {
  const shown = displayUnit(unit, display);
  return withSymbol(textAgainst(si, limitSi, shown), shown);
}

function textAgainst(si: number, limitSi: number, shown: UnitId): string {
  const value = fromSI(si, shown);
  const limit = fromSI(limitSi, shown);
  for (let decimals = DECIMALS[shown] ?? 0; decimals < MOST_DECIMALS; decimals += 1) {
    const text = roundedText(value, decimals);
    const side = Math.sign(value - limit);
    const onItsSide = (shownLimit: number) => Math.sign(Number(text) - shownLimit) === side;
    if (onItsSide(limit) && onItsSide(Number(roundedText(limit, decimals)))) return text;
    // The same but for binary fractions: what is exactly at the limit is shown at it.
    if (Math.abs(value - limit) <= SAME * Math.abs(limit)) return text;
  }
  return roundedText(value, MOST_DECIMALS);
}

/**
 * For the ear: "62 pounds", "5 thirty-seconds", "12 below", "120 foot-pounds".
 * Numbers stay digits, which every synthesizer reads well; units are words.
 */
export function speakQuantity(si: number, unit: UnitId, display: Display): string {
  const shown = displayUnit(unit, display);
  const text = roundedText(fromSI(si, shown), DECIMALS[shown] ?? 0);
  return spoken(text, shown);
}

/** As {@link speakQuantity}, never rounded onto or over a limit. */
export function speakAgainst(si: number, limitSi: number, unit: UnitId, display: Display): string {
  const shown = displayUnit(unit, display);
  return spoken(textAgainst(si, limitSi, shown), shown);
}

function spoken(text: string, unit: UnitId): string {
  const value = Number(text);
  const [singular, plural] = UNITS[unit].spoken;
  if (unit === 'F' || unit === 'C')
    return value < 0 ? `${-value} below${unit === 'C' ? ' Celsius' : ''}` : `${text} ${value === 1 ? singular : plural}`;
  return `${text} ${Math.abs(value) === 1 ? singular : plural}`.trim();
}

function withSymbol(text: string, unit: UnitId): string {
  const { symbol } = UNITS[unit];
  if (unit === '32nds') return `${text}${symbol}`;
  return symbol === '' ? text : `${text} ${symbol}`;
}
