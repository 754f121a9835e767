/** Units that differ in what hangs on the profile: which checks there are, and which words they are asked and answered with. */

import { profileSections } from '../../src/domain/unit/fields.ts';
import { type FieldValue, setField } from '../../src/domain/unit/fieldValue.ts';
import type { Unit } from '../../src/domain/unit/unit.ts';

/** A unit, and for each figure of its profile that is chosen from a list one more with each choice, and one where it is not known. */
export function withEachChoice(unit: Unit): readonly Unit[] {
  const others = profileSections(unit).flatMap(({ fields }) =>
    fields.flatMap((field) => {
      const choices: readonly FieldValue[] =
        field.kind.kind === 'choice'
          ? field.kind.options.map(({ value }) => value)
          : field.kind.kind === 'yes-no'
            ? [true, false]
            : [];
      return [...choices, ...(field.unknown ? [null] : [])].flatMap((choice) => {
        const set = setField(unit, field, choice, 'us');
        return set.ok ? [set.unit] : [];
      });
    }),
  );
  return [unit, ...others];
}
