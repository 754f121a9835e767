/**
 * Typed units: every number the app keeps is SI with its unit known; what people say and read is the
 * trade's unit. Factors are exact definitions, never rounded (NIST SP 811 (2008), Appendix B.8).
 */

export type Dimension =
  | 'pressure'
  | 'torque'
  | 'length'
  | 'temperature'
  | 'temperature-difference'
  | 'voltage'
  | 'mass'
  | 'force'
  | 'concentration'
  | 'count'
  | 'ratio'
  | 'time'
  | 'speed'
  | 'volume'
  | 'current'
  | 'charge'
  | 'energy'
  | 'power';

export type UnitId =
  | 'psi'
  | 'kPa'
  | 'bar'
  | 'Pa'
  | 'lb-ft'
  | 'lb-in'
  | 'N-m'
  | '32nds'
  | 'mm'
  | 'cm'
  | 'in'
  | 'ft'
  | 'm'
  | 'mi'
  | 'km'
  | 'F'
  | 'C'
  | 'K'
  | 'F-diff'
  | 'C-diff'
  | 'V'
  | 'lb'
  | 'kg'
  | 'lbf'
  | 'N'
  | 'ppm'
  | 'count'
  | 'percent'
  | 's'
  | 'min'
  | 'h'
  | 'day'
  | 'month'
  | 'year'
  | 'mph'
  | 'km/h'
  | 'm/s'
  | 'gal'
  | 'L'
  | 'A'
  | 'Ah'
  | 'BTU'
  | 'J'
  | 'BTU/h'
  | 'W';

export interface UnitDefinition {
  readonly id: UnitId;
  readonly dimension: Dimension;
  /** SI = value * factor + offset. */
  readonly factor: number;
  readonly offset: number;
  /** As written beside a number ("65 psi"). */
  readonly symbol: string;
  /** As spoken, singular and plural. */
  readonly spoken: readonly [singular: string, plural: string];
}

const POUND_KG = 0.45359237;
const STANDARD_GRAVITY = 9.80665;
const POUND_FORCE_N = POUND_KG * STANDARD_GRAVITY;
const INCH_M = 0.0254;
const FOOT_M = 0.3048;
const MILE_M = 1609.344;
const PSI_PA = POUND_FORCE_N / (INCH_M * INCH_M);
/** International Table BTU, exact by definition (NIST SP 811 B.8). */
const BTU_IT_J = 1055.05585262;

const unit = (
  id: UnitId,
  dimension: Dimension,
  factor: number,
  symbol: string,
  singular: string,
  plural: string,
  offset = 0,
): UnitDefinition => ({ id, dimension, factor, offset, symbol, spoken: [singular, plural] });

const definitions: readonly UnitDefinition[] = [
  unit('psi', 'pressure', PSI_PA, 'psi', 'pound', 'pounds'),
  unit('kPa', 'pressure', 1000, 'kPa', 'kilopascal', 'kilopascals'),
  unit('bar', 'pressure', 100_000, 'bar', 'bar', 'bar'),
  unit('Pa', 'pressure', 1, 'Pa', 'pascal', 'pascals'),
  unit('lb-ft', 'torque', POUND_FORCE_N * FOOT_M, 'lb-ft', 'foot-pound', 'foot-pounds'),
  unit('lb-in', 'torque', POUND_FORCE_N * INCH_M, 'lb-in', 'inch-pound', 'inch-pounds'),
  unit('N-m', 'torque', 1, 'N·m', 'newton-meter', 'newton-meters'),
  unit('32nds', 'length', INCH_M / 32, '/32 in', 'thirty-second', 'thirty-seconds'),
  unit('mm', 'length', 0.001, 'mm', 'millimeter', 'millimeters'),
  unit('cm', 'length', 0.01, 'cm', 'centimeter', 'centimeters'),
  unit('in', 'length', INCH_M, 'in', 'inch', 'inches'),
  unit('ft', 'length', FOOT_M, 'ft', 'foot', 'feet'),
  unit('m', 'length', 1, 'm', 'meter', 'meters'),
  unit('mi', 'length', MILE_M, 'mi', 'mile', 'miles'),
  unit('km', 'length', 1000, 'km', 'kilometer', 'kilometers'),
  unit('F', 'temperature', 1 / 1.8, '°F', 'degree', 'degrees', 459.67 / 1.8),
  unit('C', 'temperature', 1, '°C', 'degree Celsius', 'degrees Celsius', 273.15),
  unit('K', 'temperature', 1, 'K', 'kelvin', 'kelvin'),
  unit('F-diff', 'temperature-difference', 1 / 1.8, '°F', 'degree', 'degrees'),
  unit('C-diff', 'temperature-difference', 1, '°C', 'degree Celsius', 'degrees Celsius'),
  unit('V', 'voltage', 1, 'V', 'volt', 'volts'),
  unit('lb', 'mass', POUND_KG, 'lb', 'pound', 'pounds'),
  unit('kg', 'mass', 1, 'kg', 'kilogram', 'kilograms'),
  unit('lbf', 'force', POUND_FORCE_N, 'lbf', 'pound of force', 'pounds of force'),
  unit('N', 'force', 1, 'N', 'newton', 'newtons'),
  unit('ppm', 'concentration', 1e-6, 'ppm', 'part per million', 'parts per million'),
  unit('count', 'count', 1, '', '', ''),
  unit('percent', 'ratio', 0.01, '%', 'percent', 'percent'),
  unit('s', 'time', 1, 's', 'second', 'seconds'),
  unit('min', 'time', 60, 'min', 'minute', 'minutes'),
  unit('h', 'time', 3600, 'h', 'hour', 'hours'),
  unit('day', 'time', 86_400, 'd', 'day', 'days'),
  unit('month', 'time', 86_400 * 30.436875, 'mo', 'month', 'months'),
  unit('year', 'time', 86_400 * 365.2425, 'yr', 'year', 'years'),
  unit('mph', 'speed', MILE_M / 3600, 'mph', 'mile an hour', 'miles an hour'),
  unit('km/h', 'speed', 1 / 3.6, 'km/h', 'kilometer an hour', 'kilometers an hour'),
  unit('m/s', 'speed', 1, 'm/s', 'meter a second', 'meters a second'),
  unit('gal', 'volume', 0.003785411784, 'gal', 'gallon', 'gallons'),
  unit('L', 'volume', 0.001, 'L', 'liter', 'liters'),
  unit('A', 'current', 1, 'A', 'amp', 'amps'),
  unit('Ah', 'charge', 3600, 'Ah', 'amp-hour', 'amp-hours'),
  unit('BTU', 'energy', BTU_IT_J, 'BTU', 'BTU', 'BTU'),
  unit('J', 'energy', 1, 'J', 'joule', 'joules'),
  unit('BTU/h', 'power', BTU_IT_J / 3600, 'BTU/h', 'BTU an hour', 'BTU an hour'),
  unit('W', 'power', 1, 'W', 'watt', 'watts'),
];

export const UNITS: Readonly<Record<UnitId, UnitDefinition>> = Object.fromEntries(
  definitions.map((definition) => [definition.id, definition]),
) as Record<UnitId, UnitDefinition>;

/** Whether a text names one of our units. */
export function isUnitId(text: string): text is UnitId {
  return Object.hasOwn(UNITS, text);
}

/**
 * A value in a trade unit as SI.
 * @throws RangeError when the value is not a finite number (a bad input must never become NaN further on).
 */
export function toSI(value: number, unitId: UnitId): number {
  if (!Number.isFinite(value)) throw new RangeError('toSI requires a finite number');
  const { factor, offset } = UNITS[unitId];
  return value * factor + offset;
}

/**
 * An SI value in a trade unit. Inverse of {@link toSI} to 1e-12 relative.
 * @throws RangeError when the value is not a finite number.
 */
export function fromSI(si: number, unitId: UnitId): number {
  if (!Number.isFinite(si)) throw new RangeError('fromSI requires a finite number');
  const { factor, offset } = UNITS[unitId];
  return (si - offset) / factor;
}

/**
 * From one unit to another of the same dimension.
 * @throws RangeError when the units measure different things.
 */
export function convert(value: number, from: UnitId, to: UnitId): number {
  if (UNITS[from].dimension !== UNITS[to].dimension) {
    throw new RangeError(
      `convert requires units of one kind: ${from} is ${UNITS[from].dimension}, ${to} is ${UNITS[to].dimension}`,
    );
  }
  return from === to ? value : fromSI(toSI(value, from), to);
}
