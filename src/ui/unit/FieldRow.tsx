/** One figure of the profile: what it is, where it is found, the answer, and "I don't know" where that is honest. */

import type { ProfileField } from '../../domain/unit/fields.ts';
import type { Display, FieldValue } from '../../domain/unit/fieldValue.ts';
import type { Problem } from '../../domain/unit/validate.ts';
import { exampleOf, fieldId, rangeOf, suffixOf } from './fieldText.ts';

/** More options than this are a list to open, not a row of buttons. */
const MOST_BUTTONS = 6;

export interface FieldRowProps {
  readonly field: ProfileField;
  readonly display: Display;
  readonly value: FieldValue;
  /** What stands in the box while it is being typed and does not fit yet; null: the value itself. */
  readonly typed: string | null;
  /** Why what was typed is not taken. */
  readonly refusal: string | null;
  readonly problems: readonly Problem[];
  readonly onInput: (input: FieldValue) => void;
  /** The box was left. */
  readonly onLeave: () => void;
}

export function FieldRow(props: FieldRowProps) {
  const { field, refusal, problems } = props;
  const id = fieldId(field.path);
  const said = [refusal, ...problems.map((problem) => problem.sentence)].filter((sentence) => sentence !== null);
  const wrong = refusal !== null || problems.some((problem) => problem.level === 'error');
  const describedBy = [field.help === '' ? '' : `${id}-help`, said.length > 0 ? `${id}-said` : ''].filter(Boolean).join(' ');
  const buttons = field.kind.kind === 'yes-no' || (field.kind.kind === 'choice' && field.kind.options.length <= MOST_BUTTONS);
  const help = field.help !== '' && (
    <p id={`${id}-help`} className="field-help">
      {field.help}
    </p>
  );
  const sentences = said.length > 0 && (
    <p id={`${id}-said`} className={`field-said ${wrong ? 'wrong' : ''}`} aria-live="polite">
      <span className="field-said-word">{wrong ? 'Please mend: ' : 'Please check: '}</span>
      {said.join(' ')}
    </p>
  );
  if (buttons) {
    return (
      <fieldset className="field" id={id} aria-describedby={describedBy || undefined} tabIndex={-1}>
        <legend>{field.label}</legend>
        {help}
        <RadioRow {...props} name={id} />
        {sentences}
      </fieldset>
    );
  }
  return (
    <div className="field">
      <label htmlFor={id}>{field.label}</label>
      {help}
      <div className="field-entry">
        <Entry {...props} id={id} describedBy={describedBy} wrong={wrong} />
      </div>
      {sentences}
    </div>
  );
}

interface Choice {
  readonly value: FieldValue;
  readonly label: string;
}

function choicesOf({ kind, unknown }: ProfileField): readonly Choice[] {
  const known: readonly Choice[] =
    kind.kind === 'choice'
      ? kind.options
      : [
          { value: true, label: 'Yes' },
          { value: false, label: 'No' },
        ];
  return unknown ? [...known, { value: null, label: "I don't know" }] : known;
}

function RadioRow({ field, value, onInput, name }: FieldRowProps & { readonly name: string }) {
  return (
    <div className="radio-row">
      {choicesOf(field).map((choice) => (
        <label key={String(choice.value)} className={`slab radio ${choice.value === null ? 'unknown' : ''}`}>
          <input
            type="radio"
            name={name}
            checked={String(choice.value) === String(value)}
            onChange={() => onInput(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </div>
  );
}

interface EntryProps extends FieldRowProps {
  readonly id: string;
  readonly describedBy: string;
  readonly wrong: boolean;
}

function Entry({ field, display, value, typed, onInput, onLeave, id, describedBy, wrong }: EntryProps) {
  const { kind } = field;
  const unit = suffixOf(kind, display);
  if (kind.kind === 'choice') {
    return (
      <select
        id={id}
        value={value === null ? '' : String(value)}
        aria-describedby={describedBy || undefined}
        onChange={(event) => onInput(event.target.value === '' ? null : event.target.value)}
      >
        {choicesOf(field).map((choice) => (
          <option key={String(choice.value)} value={choice.value === null ? '' : String(choice.value)}>
            {choice.label}
          </option>
        ))}
      </select>
    );
  }
  return (
    <>
      <input
        id={id}
        type="text"
        inputMode={kind.kind === 'number' ? 'decimal' : kind.kind === 'date' && kind.form === 'dot-week' ? 'numeric' : 'text'}
        autoComplete="off"
        autoCapitalize={field.path === 'vin' ? 'characters' : undefined}
        spellCheck={false}
        value={typed ?? (value === null ? '' : String(value))}
        placeholder={exampleOf(field) || rangeOf(kind, display)}
        maxLength={kind.kind === 'text' ? kind.maxLength : undefined}
        aria-describedby={describedBy || undefined}
        aria-invalid={wrong || undefined}
        required={!field.unknown}
        onChange={(event) => onInput(event.target.value)}
        onBlur={onLeave}
      />
      {unit !== '' && <span className="field-unit">{unit}</span>}
      {field.unknown && (
        <button
          type="button"
          className="slab unknown"
          aria-pressed={value === null && typed === null}
          onClick={() => onInput(null)}
        >
          I don't know
        </button>
      )}
    </>
  );
}
