/** Readings as a table for a spreadsheet. */
import type { Series } from '../history/series.ts';
import { type Display, displayUnit } from '../quantity/format.ts';
import { convert, UNITS, type UnitId } from '../quantity/units.ts';

export interface CsvInput {
  readonly series: readonly Series[];
  /** Name by unit id; the id stands where it is missing. */
  readonly unitNames: ReadonlyMap<string, string>;
  readonly display: Display;
}

interface Row {
  readonly unitId: string;
  readonly round: string;
  readonly demo: boolean;
  at: number;
  readonly cells: Map<string, number>;
}

/**
 * One row for each round, one column for each check and position, its unit of measure in the header; as read, never brought
 * to another temperature.
 *
 * Source: RFC 4180: comma, CRLF, quotes doubled. Text that a spreadsheet would take for a formula is led by an apostrophe.
 */
export function readingsCsv({ series, unitNames, display }: CsvInput): string {
  const columns = new Map<string, { header: string; unit: UnitId }>();
  const rows = new Map<string, Row>();
  for (const one of series) {
    const unit = displayUnit(one.unit, display);
    const { symbol } = UNITS[unit];
    const label =
      one.position !== null && !one.name.includes(one.position.replace('-', ' '))
        ? `${one.position.replace('-', ' ')} ${one.name}`
        : one.name;
    const column = `${one.key} ${UNITS[unit].dimension}`;
    if (!columns.has(column)) columns.set(column, { header: symbol === '' ? label : `${label} [${symbol}]`, unit });
    for (const reading of [...one.earlier.flatMap((segment) => segment.readings), ...one.readings]) {
      const id = `${one.unitId} ${reading.round}`;
      const row = rows.get(id) ?? { unitId: one.unitId, round: reading.round, demo: one.demo, at: reading.at, cells: new Map() };
      row.at = Math.min(row.at, reading.at);
      row.cells.set(column, convert(reading.read, one.unit, unit));
      rows.set(id, row);
    }
  }
  const keys = [...columns.keys()].sort();
  const header = ['unit', 'first reading (UTC)', 'round', 'data', ...keys.map((key) => columns.get(key)?.header ?? key)];
  const body = [...rows.values()]
    .sort((a, b) => a.at - b.at || (a.round < b.round ? -1 : 1))
    .map((row) => [
      unitNames.get(row.unitId) ?? row.unitId,
      new Date(row.at).toISOString(),
      row.round,
      row.demo ? 'demo' : 'real',
      ...keys.map((key) => numberCell(row.cells.get(key))),
    ]);
  return [header, ...body].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

function numberCell(value: number | undefined): string {
  return value === undefined ? '' : String(Number(value.toPrecision(9)));
}

const PLAIN_NUMBER = /^-?\d+(\.\d+)?(e[-+]?\d+)?$/i;

/** One field as RFC 4180 wants it, harmless in a spreadsheet. */
export function cell(text: string): string {
  const risky = /^[=+\-@\t\r\n|%]/.test(text) && !PLAIN_NUMBER.test(text);
  const safe = risky ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
