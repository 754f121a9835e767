/** The profiles of two units side by side. */
import { UNITS } from '../quantity/units.ts';
import { type ProfileField, profileSections } from '../unit/fields.ts';
import { type Display, fieldUnit, getField } from '../unit/fieldValue.ts';
import type { Unit } from '../unit/unit.ts';

export interface ComparedFigure {
  readonly section: string;
  readonly label: string;
  readonly left: string;
  readonly right: string;
  readonly same: boolean;
}

const UNKNOWN = 'not known';
const ABSENT = 'not fitted';

/** Every field that either profile has, in the order of the profile form. Pure. */
export function compareUnits(left: Unit, right: Unit, display: Display): readonly ComparedFigure[] {
  const figures = new Map<string, { section: string; label: string; left: string; right: string }>();
  for (const [side, unit] of [
    ['left', left],
    ['right', right],
  ] as const) {
    for (const section of profileSections(unit)) {
      for (const field of section.fields) {
        const figure = figures.get(field.path) ?? { section: section.title, label: field.label, left: ABSENT, right: ABSENT };
        figure[side] = figureText(unit, field, display);
        figures.set(field.path, figure);
      }
    }
  }
  return [...figures.values()].map((figure) => ({ ...figure, same: figure.left === figure.right }));
}

function figureText(unit: Unit, field: ProfileField, display: Display): string {
  const value = getField(unit, field, display);
  if (value === null || value === '') return UNKNOWN;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const { kind } = field;
  if (kind.kind === 'choice') return kind.options.find((option) => option.value === value)?.label ?? String(value);
  if (kind.kind !== 'number') return String(value);
  return `${value} ${UNITS[fieldUnit(kind, display)].symbol}`.trim();
}
