/** The start of a new profile: a name, and what it is most like. No maker's figure comes with a template. */
import { useId, useState } from 'react';
import type { UnitTemplate } from '../../domain/unit/templates.ts';

export interface TemplatePickerProps {
  readonly templates: readonly UnitTemplate[];
  readonly onPick: (template: UnitTemplate, name: string) => void;
  readonly onCancel: () => void;
}

const LONGEST_NAME = 40;

export function TemplatePicker({ templates, onPick, onCancel }: TemplatePickerProps) {
  const [name, setName] = useState('');
  const [missing, setMissing] = useState(false);
  const id = useId();
  const pick = (template: UnitTemplate) => {
    if (name.trim() === '') {
      setMissing(true);
      document.getElementById(`${id}-name`)?.focus();
      return;
    }
    onPick(template, name.trim());
  };
  return (
    <main className="page">
      <header>
        <h1>A new unit</h1>
        <p>Three minutes: a name, what it is most like, then the figures off its labels. The rest can wait.</p>
      </header>
      <div className="field">
        <label htmlFor={`${id}-name`}>Name</label>
        <p id={`${id}-help`} className="field-help">
          What your household calls it. It is spoken aloud.
        </p>
        <div className="field-entry">
          <input
            id={`${id}-name`}
            type="text"
            maxLength={LONGEST_NAME}
            autoComplete="off"
            placeholder="Heron"
            value={name}
            required
            aria-invalid={missing || undefined}
            aria-describedby={missing ? `${id}-help ${id}-said` : `${id}-help`}
            onChange={(event) => {
              setName(event.target.value);
              setMissing(false);
            }}
          />
        </div>
        {missing && (
          <p id={`${id}-said`} className="field-said wrong" role="alert">
            Give it a name first. It is how the round speaks of it.
          </p>
        )}
      </div>
      <section className="form-section" aria-labelledby={`${id}-like`}>
        <h2 id={`${id}-like`}>What is it most like?</h2>
        <ul className="template-list">
          {templates.map((template) => (
            <li key={template.id}>
              <button type="button" className="slab template" onClick={() => pick(template)}>
                <span>{template.name}</span>
                <span className="template-sentence">{template.sentence}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <div className="form-foot">
        <button type="button" className="slab" onClick={onCancel}>
          Not now
        </button>
      </div>
    </main>
  );
}
