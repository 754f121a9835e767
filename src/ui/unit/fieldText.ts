/** A figure of the profile between its field and the screen. */
import { UNITS } from '../../domain/quantity/units.ts';
import type { FieldKind, ProfileField } from '../../domain/unit/fields.ts';
import { type Display, type FieldValue, fieldRange, fieldUnit } from '../../domain/unit/fieldValue.ts';

/** Unique in the page, and a valid id. */
export function fieldId(path: string): string {
  return `field-${path.replaceAll('.', '-')}`;
}

export function textOf(value: FieldValue): string {
  return value === null ? '' : String(value);
}

/** The unit beside the box, "10 to 130 psi" as its range; empty where there is none. */
export function suffixOf(kind: FieldKind, display: Display): string {
  return kind.kind === 'number' ? UNITS[fieldUnit(kind, display)].symbol : '';
}

export function rangeOf(kind: FieldKind, display: Display): string {
  if (kind.kind !== 'number') return '';
  const { min, max } = fieldRange(kind, display);
  const unit = suffixOf(kind, display);
  return `${readable(min, Math.ceil)} to ${readable(max, Math.floor)}${unit === '' ? '' : ` ${unit}`}`;
}

/** Few digits, rounded inward, so that the range that is shown is never wider than the one that holds. */
function readable(value: number, round: (value: number) => number): number {
  const size = Math.abs(value);
  const grain = size >= 100 ? 1 : size >= 10 ? 0.1 : 0.01;
  return Number((round(value / grain) * grain).toFixed(2));
}

export function exampleOf({ kind }: ProfileField): string {
  if (kind.kind === 'text') return kind.example;
  if (kind.kind === 'date') return kind.form === 'dot-week' ? '3623' : '2027-03';
  return '';
}
