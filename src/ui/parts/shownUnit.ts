/** The unit in which a person reads and enters a value: the trade's own, or its metric counterpart. */
import { UNITS, type UnitId } from '../../domain/quantity/units.ts';

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
  BTU: 'J',
  'BTU/h': 'W',
};

export function shownUnit(unit: UnitId, display: 'us' | 'metric'): UnitId {
  return display === 'metric' ? (METRIC[unit] ?? unit) : unit;
}

/** "62 psi", "5/32 in", "−4 °F": the figure with its unit as it is written on a gauge. */
export function withUnit(figure: string, unit: UnitId): string {
  const { symbol } = UNITS[unit];
  const shown = figure.replace('-', '−');
  if (symbol === '') return shown;
  return symbol.startsWith('/') ? `${shown}${symbol}` : `${shown} ${symbol}`;
}

/** As {@link withUnit}, for a screen reader: "62 psi", "5 thirty-seconds", "-4 degrees". */
export function withSpokenUnit(value: number, figure: string, unit: UnitId): string {
  const { symbol, spoken } = UNITS[unit];
  if (symbol === '') return figure;
  if (symbol.startsWith('/') || symbol.startsWith('°')) return `${figure} ${spoken[Math.abs(value) === 1 ? 0 : 1]}`;
  return `${figure} ${symbol}`;
}
