/** Units as they are said and written behind a number. */
import type { Dimension, UnitId } from '../quantity/units.ts';
import { UNITS } from '../quantity/units.ts';
import type { Word } from './tokens.ts';

/** Words of one unit; the longest is tried first. `only`: what the check must measure for the words to mean this. */
interface UnitPhrase {
  readonly words: readonly string[];
  readonly unit: UnitId;
  readonly only: Dimension | null;
}

const PHRASES: readonly (readonly [unit: UnitId, only: Dimension | null, ...phrases: string[]])[] = [
  ['psi', null, 'psi', 'p s i', 'pounds per square inch', 'pounds a square inch', 'pounds of air', 'pounds of pressure'],
  ['psi', 'pressure', 'pound', 'pounds', 'lb', 'lbs'],
  ['kPa', null, 'kpa', 'k p a', 'kilopascal', 'kilopascals', 'kilo pascals'],
  ['bar', null, 'bar', 'bars'],
  [
    'lb-ft',
    null,
    'foot pounds of torque',
    'foot pound',
    'foot pounds',
    'feet pounds',
    'ft lb',
    'ft lbs',
    'foot lbs',
    'foot lb',
    'ftlb',
    'ftlbs',
    'lb ft',
    'lbs ft',
    'pound foot',
    'pound feet',
    'pounds feet',
    'footpounds',
    'footpound',
  ],
  ['lb-ft', 'torque', 'pound', 'pounds', 'lb', 'lbs', 'pounds of torque'],
  ['lb-in', null, 'inch pounds', 'inch pound', 'in lbs', 'pound inches'],
  ['N-m', null, 'newton meter', 'newton meters', 'nm', 'n m', 'newtonmeters'],
  ['N-m', 'torque', 'newton', 'newtons'],
  ['32nds', null, '32nds'],
  ['mm', null, 'millimeter', 'millimeters', 'mm', 'mil', 'mils', 'millis'],
  ['cm', null, 'centimeter', 'centimeters', 'cm', 'centis'],
  ['in', null, 'inch', 'inches'],
  ['in', 'length', 'in'],
  ['ft', null, 'foot', 'feet', 'ft'],
  ['m', null, 'meter', 'meters'],
  ['m', 'length', 'm'],
  ['mi', null, 'mile', 'miles'],
  ['km', null, 'kilometer', 'kilometers', 'km'],
  ['F', null, 'degrees fahrenheit', 'degree fahrenheit', 'fahrenheit', 'degrees f'],
  ['F', 'temperature', 'f'],
  ['C', null, 'degrees celsius', 'degree celsius', 'celsius', 'centigrade', 'degrees centigrade', 'degrees c'],
  ['C', 'temperature', 'c'],
  ['V', null, 'volt', 'volts', 'vdc', 'volts dc'],
  ['V', 'voltage', 'v'],
  ['lb', 'mass', 'pound', 'pounds', 'lb', 'lbs'],
  ['kg', null, 'kilogram', 'kilograms', 'kilo', 'kilos', 'kg', 'kgs'],
  ['lbf', 'force', 'pound', 'pounds', 'lb', 'lbs', 'pounds of force'],
  ['N', 'force', 'newton', 'newtons'],
  ['ppm', null, 'ppm', 'p p m', 'parts per million', 'part per million'],
  ['ppm', 'concentration', 'parts'],
  ['percent', null, 'percent'],
  ['s', 'time', 'second', 'seconds', 'sec', 'secs'],
  ['min', null, 'minute', 'minutes', 'mins'],
  ['h', null, 'hour', 'hours', 'hrs'],
  ['day', null, 'day', 'days'],
  ['month', null, 'month', 'months'],
  ['year', null, 'year', 'years'],
  ['mph', null, 'mph', 'miles an hour', 'miles per hour'],
  ['km/h', null, 'kilometers an hour', 'kilometers per hour', 'km h'],
  ['gal', null, 'gallon', 'gallons'],
  ['L', null, 'liter', 'liters'],
  ['A', null, 'amp', 'amps', 'ampere', 'amperes'],
  ['Ah', null, 'amp hour', 'amp hours', 'ah'],
  ['W', null, 'watt', 'watts'],
  ['BTU', null, 'btu', 'btus', 'b t u'],
];

const byFirst = new Map<string, UnitPhrase[]>();
for (const [unit, only, ...phrases] of PHRASES) {
  for (const phrase of phrases) {
    const words = phrase.split(' ');
    const [first] = words;
    if (first === undefined) continue;
    const known = byFirst.get(first) ?? [];
    known.push({ words, unit, only });
    byFirst.set(first, known);
  }
}
for (const list of byFirst.values()) list.sort((a, b) => b.words.length - a.words.length || (a.only === null ? 1 : -1));

/** Words that carry no unit of their own beside a number: "degrees" is the check's own. */
const OWN_UNIT = new Set(['degrees', 'degree']);

export interface SaidUnit {
  /** Null: "degrees", which is whatever the check measures in. */
  readonly unit: UnitId | null;
  readonly next: number;
}

/**
 * The unit said at `at`, as it is meant where `dimension` is asked for. Pounds on a torque wrench are foot-pounds, on a
 * gauge they are a pressure.
 */
export function unitAt(words: readonly Word[], at: number, dimension: Dimension | null): SaidUnit | null {
  const first = words[at];
  if (first?.kind !== 'word') return null;
  let fallback: SaidUnit | null = null;
  for (const { words: phrase, unit, only } of byFirst.get(first.word) ?? []) {
    if (phrase.some((word, index) => words[at + index]?.word !== word)) continue;
    const next = at + phrase.length;
    if (only === null || only === dimension) {
      if (UNITS[unit].dimension === dimension || only === null) return { unit, next };
    } else fallback ??= { unit, next };
  }
  // Degrees where no temperature is asked for are another quantity.
  if (OWN_UNIT.has(first.word)) return { unit: dimension === 'temperature' ? null : 'F', next: at + 1 };
  // Pounds where neither pressure nor torque nor mass is asked for: some unit, and the wrong one. A lone letter is nothing.
  return fallback !== null && first.word.length > 2 ? fallback : null;
}
