/** Says that a finding was mended: what, by whom, at what cost. */
import { type FormEvent, useId, useState } from 'react';

export interface Mending {
  readonly finding: string;
  readonly what: string;
  readonly who: string | null;
  readonly cost: number | null;
}

export interface MendedFormProps {
  readonly finding: string;
  readonly title: string;
  readonly onMended: (mending: Mending) => void;
  readonly onCancel: () => void;
}

export function MendedForm({ finding, title, onMended, onCancel }: MendedFormProps) {
  const id = useId();
  const [trouble, setTrouble] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '').trim();
    const what = text('what');
    const cost = text('cost') === '' ? null : Number(text('cost').replace(',', '.'));
    if (what === '') return setTrouble('Say in a few words what was done.');
    if (cost !== null && (!Number.isFinite(cost) || cost < 0)) return setTrouble('Give the cost as a number, or leave it empty.');
    onMended({ finding, what, who: text('who') === '' ? null : text('who'), cost });
  };
  return (
    <form className="look-mended screen-only" onSubmit={submit} aria-label={`Mended: ${title}`} noValidate>
      <label htmlFor={`${id}-what`}>What was done</label>
      <input
        id={`${id}-what`}
        name="what"
        autoComplete="off"
        maxLength={500}
        aria-describedby={trouble ? `${id}-trouble` : undefined}
      />
      <label htmlFor={`${id}-who`}>By whom (may stay empty)</label>
      <input id={`${id}-who`} name="who" autoComplete="off" maxLength={200} />
      <label htmlFor={`${id}-cost`}>Cost (may stay empty)</label>
      <input id={`${id}-cost`} name="cost" inputMode="decimal" autoComplete="off" maxLength={12} />
      {trouble && (
        <p id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
      <p className="look-actions">
        <button type="submit" className="slab main">
          Keep as mended
        </button>
        <button type="button" className="slab" onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}
