/** What the unit weighs as it is loaded: gross, axles, tongue, and which part is nearest its rating. */
import { useId, useState } from 'react';
import { UNITS, type UnitId } from '../../domain/quantity/units.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import {
  CONTENTS,
  type Contents,
  type ItemForm,
  type LoadField,
  type LoadForm,
  type LoadReading,
  loadUnits,
  readLoadForm,
  startLoadForm,
  sumsOf,
} from '../../domain/weight/loadForm.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';

export interface WeightsPageProps {
  readonly unit: Unit;
  readonly display: Display;
  readonly onBack?: () => void;
}

const CONTENT_WORDS: Readonly<Record<Contents, string>> = {
  weight: 'by weight',
  water: 'water, by volume',
  gasoline: 'gasoline, by volume',
  diesel: 'diesel, by volume',
  propane: 'propane, by volume',
};

const RATINGS: readonly { readonly field: LoadField; readonly label: string; readonly help: string }[] = [
  { field: 'coupler', label: 'Coupler rating', help: 'Stamped on the coupler.' },
  { field: 'ball', label: 'Ball rating', help: 'Stamped on top of the ball.' },
  { field: 'receiver', label: 'Receiver rating', help: 'On the label of the receiver.' },
  { field: 'tongueRating', label: 'Highest tongue weight', help: 'On the receiver, or in the handbook of the truck.' },
  { field: 'chain', label: 'Strength of one chain', help: 'Breaking strength of each of the two, from its tag.' },
];

export function WeightsPage({ unit, display, onBack }: WeightsPageProps) {
  const [form, setForm] = useState<LoadForm>(() => startLoadForm(unit, display));
  const [added, setAdded] = useState(0);
  const reading = readLoadForm(form, unit, display);
  const units = loadUnits(display);
  const set = (field: LoadField) => (text: string) => setForm((before) => ({ ...before, [field]: text }));
  const setItem = (id: string, changes: Partial<ItemForm>) =>
    setForm((before) => ({ ...before, items: before.items.map((item) => (item.id === id ? { ...item, ...changes } : item)) }));
  const add = () => {
    const item: ItemForm = { id: `more-${added}`, name: '', amount: '', contents: 'weight', distance: '', side: 'ahead' };
    setAdded(added + 1);
    setForm((before) => ({ ...before, items: [...before.items, item] }));
  };
  const remove = (id: string) => setForm((before) => ({ ...before, items: before.items.filter((item) => item.id !== id) }));
  return (
    <main className="page weights-page">
      <header>
        {onBack && (
          <button type="button" className="slab" onClick={onBack}>
            Back
          </button>
        )}
        <h1>Weights of {unit.name}</h1>
        <p>
          Where a load sits decides what the tongue and the axles bear. A scale is better than any sum; this shows what to look
          for.
        </p>
      </header>

      <section aria-labelledby="weights-empty" className="weights-part">
        <h2 id="weights-empty">Empty</h2>
        <NumberField
          id="emptyWeight"
          label="Empty weight"
          help="From a scale ticket or the label."
          unit={units.mass}
          text={form.emptyWeight}
          reading={reading}
          onInput={set('emptyWeight')}
        />
        <NumberField
          id="emptyTongue"
          label="Tongue weight when empty"
          help="Weighed once, standing level."
          unit={units.mass}
          text={form.emptyTongue}
          reading={reading}
          onInput={set('emptyTongue')}
        />
        <NumberField
          id="ballDistance"
          label="Ball to the middle of the axles"
          help="Along the frame."
          unit={units.distance}
          text={form.ballDistance}
          reading={reading}
          onInput={set('ballDistance')}
        />
      </section>

      <section aria-labelledby="weights-items" className="weights-part">
        <h2 id="weights-items">Loaded</h2>
        <p className="quiet">Leave out what you do not carry. Distances are from the middle of the axles.</p>
        {form.items.map((item) => (
          <Item
            key={item.id}
            item={item}
            units={units}
            reading={reading}
            onChange={(changes) => setItem(item.id, changes)}
            onRemove={() => remove(item.id)}
          />
        ))}
        <button type="button" className="slab" onClick={add}>
          Add a thing
        </button>
      </section>

      <section aria-labelledby="weights-ratings" className="weights-part">
        <h2 id="weights-ratings">What it is made for</h2>
        <p className="quiet">Gross, axle and tire ratings come from the profile.</p>
        {RATINGS.map(({ field, label, help }) => (
          <NumberField
            key={field}
            id={field}
            label={label}
            help={help}
            unit={units.mass}
            text={form[field]}
            reading={reading}
            onInput={set(field)}
          />
        ))}
      </section>

      <Result reading={reading} display={display} />
    </main>
  );
}

interface ItemProps {
  readonly item: ItemForm;
  readonly units: ReturnType<typeof loadUnits>;
  readonly reading: LoadReading;
  readonly onChange: (changes: Partial<ItemForm>) => void;
  readonly onRemove: () => void;
}

function Item({ item, units, reading, onChange, onRemove }: ItemProps) {
  const id = useId();
  const name = item.name.trim() || 'a thing';
  const known = item.id.startsWith('more-') ? null : item.name;
  return (
    <fieldset className="weights-item">
      <legend>{known ?? 'Something else'}</legend>
      {known === null && (
        <div className="field">
          <label htmlFor={`${id}-name`}>What it is</label>
          <div className="field-entry">
            <input id={`${id}-name`} value={item.name} onChange={(event) => onChange({ name: event.target.value })} />
          </div>
        </div>
      )}
      <div className="field">
        <label htmlFor={`${id}-contents`}>Given</label>
        <div className="field-entry">
          <select
            id={`${id}-contents`}
            value={item.contents}
            onChange={(event) => onChange({ contents: CONTENTS.find((one) => one === event.target.value) ?? 'weight' })}
          >
            {CONTENTS.map((contents) => (
              <option key={contents} value={contents}>
                {CONTENT_WORDS[contents]}
              </option>
            ))}
          </select>
        </div>
      </div>
      <NumberField
        id={`items/${item.id}/amount`}
        label="How much"
        unit={item.contents === 'weight' ? units.mass : units.volume}
        text={item.amount}
        reading={reading}
        onInput={(amount) => onChange({ amount })}
      />
      <NumberField
        id={`items/${item.id}/distance`}
        label="How far from the middle of the axles"
        unit={units.distance}
        text={item.distance}
        reading={reading}
        onInput={(distance) => onChange({ distance })}
      />
      <div className="field">
        <label htmlFor={`${id}-side`}>Where</label>
        <div className="field-entry">
          <select
            id={`${id}-side`}
            value={item.side}
            onChange={(event) => onChange({ side: event.target.value === 'behind' ? 'behind' : 'ahead' })}
          >
            <option value="ahead">ahead of the axles</option>
            <option value="behind">behind the axles</option>
          </select>
        </div>
      </div>
      {known === null && (
        <button type="button" className="slab" onClick={onRemove}>
          Take {name} out
        </button>
      )}
    </fieldset>
  );
}

interface NumberFieldProps {
  /** As in {@link LoadReading.refusals}. */
  readonly id: string;
  readonly label: string;
  readonly help?: string;
  readonly unit: UnitId;
  readonly text: string;
  readonly reading: LoadReading;
  readonly onInput: (text: string) => void;
}

function NumberField({ id, label, help, unit, text, reading, onInput }: NumberFieldProps) {
  const own = useId();
  const refusal = reading.refusals[id];
  const describedBy = [help ? `${own}-help` : '', refusal ? `${own}-said` : ''].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={own}>
        {label} <span className="unseen">in {UNITS[unit].spoken[1]}</span>
      </label>
      {help && (
        <p id={`${own}-help`} className="field-help">
          {help}
        </p>
      )}
      <div className="field-entry">
        <input
          id={own}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={refusal ? true : undefined}
          aria-describedby={describedBy || undefined}
          onChange={(event) => onInput(event.target.value)}
        />
        <span className="field-unit" aria-hidden="true">
          {UNITS[unit].symbol}
        </span>
      </div>
      {refusal && (
        <p id={`${own}-said`} className="field-said wrong">
          <span className="field-said-word">Please mend: </span>
          {refusal}
        </p>
      )}
    </div>
  );
}

function Result({ reading, display }: { readonly reading: LoadReading; readonly display: Display }) {
  const { loaded, verdict, wanting } = reading;
  return (
    <section aria-labelledby="weights-result" className="weights-part weights-result">
      <h2 id="weights-result">What it comes to</h2>
      <div aria-live="polite">
        {wanting !== null && <p>{wanting}</p>}
        {loaded && verdict && (
          <p className="weights-verdict">
            <OutcomeMark outcome={verdict.outcome} size="large" />{' '}
            {verdict.weakest && `Nearest its rating: ${verdict.weakest.label}, ${verdict.weakest.text}.`}
          </p>
        )}
      </div>
      {loaded && verdict && (
        <>
          <dl className="weights-sums">
            {sumsOf(loaded, display).map(({ label, text }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
          <section className="weights-scroll" tabIndex={0} aria-label="Against its ratings">
            <table>
              <caption>Against its ratings</caption>
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">Weight</th>
                  <th scope="col">Comes to</th>
                  <th scope="col">What to do</th>
                  <th scope="col">Source</th>
                </tr>
              </thead>
              <tbody>
                {verdict.lines.map((line) => (
                  <tr key={line.id}>
                    <th scope="row">{line.label}</th>
                    <td>{line.text}</td>
                    <td>
                      <OutcomeMark outcome={line.outcome} />
                    </td>
                    <td>{line.sentence}</td>
                    <td>
                      {line.limit ? `${line.limit.source.text}${line.limit.source.fromMemory ? ' (from memory)' : ''}` : ''}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          {verdict.missing.length > 0 && (
            <>
              <h3>Not known</h3>
              <ul className="weights-missing">
                {verdict.missing.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </>
          )}
        </>
      )}
    </section>
  );
}
