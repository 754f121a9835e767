/** Writes down what happened between rounds: a wheel that was off, a new tire, a wet awning, anything else. */
import { type FormEvent, useId, useState } from 'react';
import type { Display } from '../../domain/quantity/format.ts';
import { type HappenedForm as Form, HAPPENINGS, type Happening, type ReadHappening } from '../../domain/unit/happened.ts';
import { type Unit, wheelPositions } from '../../domain/unit/unit.ts';

export interface HappenedFormProps {
  readonly unit: Unit;
  readonly display: Display;
  /** @returns a refusal to be shown, or what was kept */
  readonly onHappened: (form: Form) => ReadHappening;
}

const WORDS: Readonly<Record<Happening, string>> = {
  'wheel-mounted': 'A wheel was off and back on',
  'tire-changed': 'A tire is new',
  'awning-wet': 'The awning was put away wet',
  'awning-dried': 'The awning was dried',
  noted: 'Something else',
};

const KEPT: Readonly<Record<Happening, string>> = {
  'wheel-mounted': 'Kept. The next rounds ask for its lugs again.',
  'tire-changed': 'Kept. Its trends begin anew, and the next rounds ask for its lugs.',
  'awning-wet': 'Kept. It is due to be dried.',
  'awning-dried': 'Kept.',
  noted: 'Kept.',
};

export function HappenedForm({ unit, display, onHappened }: HappenedFormProps) {
  const id = useId();
  const [kind, setKind] = useState<Happening>('wheel-mounted');
  const [refused, setRefused] = useState<Extract<ReadHappening, { ok: false }> | null>(null);
  const [kept, setKept] = useState<Happening | null>(null);
  const kinds = HAPPENINGS.filter((one) => unit.cabin.awning || !one.startsWith('awning'));
  const ofWheel = kind === 'wheel-mounted' || kind === 'tire-changed';
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: keyof Form) => String(data.get(name) ?? '');
    const read = onHappened({
      kind,
      position: text('position'),
      odometer: text('odometer'),
      dotCode: text('dotCode'),
      text: text('text'),
    });
    setRefused(read.ok ? null : read);
    setKept(read.ok ? kind : null);
    if (read.ok) event.currentTarget.reset();
  };
  const field = (name: keyof Form) => ({
    id: `${id}-${name}`,
    name,
    'aria-invalid': refused?.field === name,
    'aria-describedby': refused?.field === name ? `${id}-trouble` : undefined,
  });
  return (
    <form className="look-mended screen-only" onSubmit={submit} aria-label="Write down what happened" noValidate>
      <label htmlFor={`${id}-kind`}>What happened</label>
      <select
        {...field('kind')}
        value={kind}
        onChange={(event) => {
          setRefused(null);
          setKept(null);
          setKind(HAPPENINGS.find((one) => one === event.target.value) ?? 'noted');
        }}
      >
        {kinds.map((one) => (
          <option key={one} value={one}>
            {WORDS[one]}
          </option>
        ))}
      </select>
      {ofWheel && (
        <>
          <label htmlFor={`${id}-position`}>Which wheel</label>
          <select {...field('position')}>
            {wheelPositions(unit.axles).map((position) => (
              <option key={position} value={position}>
                {position.replace('-', ' ')}
              </option>
            ))}
          </select>
        </>
      )}
      {kind === 'wheel-mounted' && (
        <>
          <label htmlFor={`${id}-odometer`}>
            Odometer of the truck, in {display === 'metric' ? 'kilometers' : 'miles'} (may stay empty)
          </label>
          <input {...field('odometer')} inputMode="decimal" autoComplete="off" maxLength={12} />
        </>
      )}
      {kind === 'tire-changed' && (
        <>
          <label htmlFor={`${id}-dotCode`}>Date code of the new tire, four digits (may stay empty)</label>
          <input {...field('dotCode')} inputMode="numeric" autoComplete="off" maxLength={4} />
        </>
      )}
      {kind === 'noted' && (
        <>
          <label htmlFor={`${id}-text`}>In your words</label>
          <input {...field('text')} autoComplete="off" maxLength={500} />
        </>
      )}
      {refused && (
        <p id={`${id}-trouble`} role="alert">
          {refused.sentence}
        </p>
      )}
      {kept && <p role="status">{KEPT[kept]}</p>}
      <p className="look-actions">
        <button type="submit" className="slab">
          Write it down
        </button>
      </p>
    </form>
  );
}
