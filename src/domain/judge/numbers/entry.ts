/**
 * The shape of a number with its source. Computing code takes its constants from these entries and the page "where our
 * numbers come from" lists the very same entries, so that the two can not drift apart.
 */
import type { Source } from '../../checks/outcome.ts';
import { toSI, UNITS, type UnitId } from '../../quantity/units.ts';

export type Topic = 'tires' | 'lugs' | 'lift' | 'towing weight' | 'heat and gas' | 'alarms' | 'battery' | 'cold' | 'ice' | 'air';

export interface Figure {
  readonly kind: 'figure';
  /** Unique over all topics. */
  readonly id: string;
  readonly topic: Topic;
  readonly label: string;
  /** As printed in the source, in `unitText`. */
  readonly value: number;
  /** Null where no unit of ours measures it (a pure number, BTU per pound). */
  readonly unit: UnitId | null;
  readonly unitText: string;
  readonly si: number;
  readonly source: Source;
  readonly usedFor: string;
}

export interface Table {
  readonly kind: 'table';
  readonly id: string;
  readonly topic: Topic;
  readonly label: string;
  /** Headings with their unit in words, "load (kg)". */
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (number | string)[])[];
  readonly source: Source;
  readonly usedFor: string;
}

export type NumberEntry = Figure | Table;

interface FigureText {
  readonly topic: Topic;
  readonly id: string;
  readonly label: string;
  readonly source: Source;
  readonly usedFor: string;
}

/** A figure in one of our units. */
export function figure(value: number, unit: UnitId, text: FigureText): Figure {
  return { kind: 'figure', ...text, value, unit, unitText: UNITS[unit].symbol, si: toSI(value, unit) };
}

/** A figure in a unit that is not one of ours. @param siFactor SI value of one of it */
export function figureIn(value: number, unitText: string, siFactor: number, text: FigureText): Figure {
  return { kind: 'figure', ...text, value, unit: null, unitText, si: value * siFactor };
}

export function table(text: Omit<Table, 'kind'>): Table {
  return { kind: 'table', ...text };
}
