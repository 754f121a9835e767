/**
 * The profile of a unit, rendered from the fields of the domain: the three-minute path first, the rest when there is time.
 * Whatever is not known stays not known; a round then asks for it or says so.
 */
import { useId, useRef, useState } from 'react';
import { essentialSections, type FieldSection, type ProfileField, profileSections } from '../../domain/unit/fields.ts';
import { type Display, type FieldValue, getField, setField } from '../../domain/unit/fieldValue.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import { validateUnit } from '../../domain/unit/validate.ts';
import { FieldRow } from './FieldRow.tsx';
import { fieldId } from './fieldText.ts';

export interface UnitFormProps {
  /** As kept, or fresh from a template. */
  readonly unit: Unit;
  readonly isNew: boolean;
  readonly display: Display;
  /** Epoch milliseconds, for dates that cannot lie ahead. */
  readonly now: number;
  /** The changed profile; the caller stamps revision and time. */
  readonly onSave: (unit: Unit) => void;
  readonly onCancel: () => void;
}

/** Text as it stands in a box while it is being typed: "1.0" on the way to "1.05" must not jump back to "1". */
interface Typing {
  readonly text: string;
  /** Why it is not taken; null when it is. */
  readonly refusal: string | null;
  /** The box was left: only then is it time to complain. */
  readonly left: boolean;
}

export function UnitForm({ unit, isNew, display, now, onSave, onCancel }: UnitFormProps) {
  const [draft, setDraft] = useState(unit);
  const [typing, setTyping] = useState<Readonly<Record<string, Typing>>>({});
  const [tried, setTried] = useState(false);
  const summary = useRef<HTMLDivElement>(null);
  const titleId = useId();

  const essential = essentialSections(draft);
  const first = new Set(essential.flatMap((section) => section.fields.map((field) => field.path)));
  const more = profileSections(draft)
    .map((section) => ({ ...section, fields: section.fields.filter((field) => !first.has(field.path)) }))
    .filter((section) => section.fields.length > 0);
  const fields = [...essential, ...more].flatMap((section) => section.fields);
  const problems = validateUnit(draft, now);
  const errors = [
    ...fields.flatMap((field) => {
      const sentence = typing[field.path]?.refusal ?? null;
      return sentence === null ? [] : [{ field: field.path, sentence }];
    }),
    ...problems.filter((problem) => problem.level === 'error'),
  ];
  const essentialFields = essential.flatMap((section) => section.fields);
  const known = essentialFields.filter((field) => getField(draft, field, display) !== null).length;

  const input = (field: ProfileField, given: FieldValue) => {
    const result = setField(draft, field, given, display);
    if (result.ok) setDraft(result.unit);
    const { [field.path]: _, ...others } = typing;
    const text = typeof given === 'string' && field.kind.kind !== 'choice' ? given : null;
    setTyping(
      text === null && result.ok
        ? others
        : { ...others, [field.path]: { text: text ?? '', refusal: result.ok ? null : result.sentence, left: text === null } },
    );
  };

  const leave = (field: ProfileField) => {
    const { [field.path]: left, ...others } = typing;
    if (left) setTyping(left.refusal === null ? others : { ...others, [field.path]: { ...left, left: true } });
  };

  const save = () => {
    setTried(true);
    if (errors.length > 0) {
      // After the summary has been rendered, so that it can take the focus.
      requestAnimationFrame(() => summary.current?.focus());
      return;
    }
    onSave(draft);
  };

  const rows = (section: FieldSection) =>
    section.fields.map((field) => (
      <FieldRow
        key={field.path}
        field={field}
        display={display}
        value={getField(draft, field, display)}
        typed={typing[field.path]?.text ?? null}
        refusal={tried || typing[field.path]?.left ? (typing[field.path]?.refusal ?? null) : null}
        problems={problems.filter((problem) => problem.field === field.path)}
        onInput={(given) => input(field, given)}
        onLeave={() => leave(field)}
      />
    ));

  return (
    <main>
      <form
        className="page unit-form"
        aria-labelledby={titleId}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <header>
          <h1 id={titleId}>{isNew ? 'A new unit' : draft.name === '' ? 'Unit' : draft.name}</h1>
          <p>
            Take the figures off the unit's own labels where you can. What you do not know, leave as “I don't know”: the round
            asks for it, or falls back to common practice and says so.
          </p>
          <p className="quiet">
            {known} of {essentialFields.length} known of what a round needs first.
          </p>
        </header>
        {tried && errors.length > 0 && (
          <div className="error-summary" ref={summary} tabIndex={-1} role="alert">
            <h2 className="h3">Not saved yet</h2>
            <ul>
              {errors.map((error) => (
                <li key={`${error.field} ${error.sentence}`}>
                  <button type="button" className="slab" onClick={() => document.getElementById(fieldId(error.field))?.focus()}>
                    {error.sentence}
                  </button>
                </li>
              ))}
            </ul>
          </div>
        )}
        {essential.map((section) => (
          <section key={section.id} className="form-section" aria-labelledby={`${titleId}-${section.id}`}>
            <div className="section-head">
              <h2 id={`${titleId}-${section.id}`}>{section.title}</h2>
              <p className="quiet">{section.intro}</p>
            </div>
            {rows(section)}
          </section>
        ))}
        <details className="more-fields" open={!isNew || undefined}>
          <summary className="slab">More about this unit</summary>
          {more.map((section) => (
            <div key={section.id} className="form-section">
              <div className="section-head">
                <h2>{section.title}</h2>
                {!essential.some((other) => other.id === section.id) && <p className="quiet">{section.intro}</p>}
              </div>
              {rows(section)}
            </div>
          ))}
        </details>
        <div className="form-foot">
          <button type="submit" className="slab main">
            Save {draft.name.trim() === '' ? 'the unit' : draft.name.trim()}
          </button>
          <button type="button" className="slab" onClick={onCancel}>
            Leave without saving
          </button>
        </div>
      </form>
    </main>
  );
}
