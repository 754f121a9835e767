/** Two rounds of a unit, or two units with their latest rounds, side by side. */
import { useId, useState } from 'react';
import type { ComparedCheck, ComparedSide } from '../../domain/history/compareRounds.ts';
import type { ComparedFigure } from '../../domain/history/compareUnits.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { DemoMark } from './DemoMark.tsx';

export interface CompareChoice {
  readonly id: string;
  /** "Before towing, Jan 4, 2026", or a unit's name. */
  readonly label: string;
}

export interface ComparePageProps {
  readonly heading: string;
  readonly demo: boolean;
  readonly choices: readonly CompareChoice[];
  readonly left: string | null;
  readonly right: string | null;
  readonly onChoose: (side: 'left' | 'right', id: string) => void;
  readonly checks: readonly ComparedCheck[];
  /** The profiles, where two units are compared. */
  readonly figures: readonly ComparedFigure[] | null;
  readonly onPrint: () => void;
}

export function ComparePage(props: ComparePageProps) {
  const { heading, demo, choices, left, right, onChoose, checks, figures, onPrint } = props;
  const [all, setAll] = useState(false);
  const labelOf = (id: string | null) => choices.find((choice) => choice.id === id)?.label ?? 'nothing chosen';
  const shown = all ? checks : checks.filter((check) => check.change !== null);
  const shownFigures = figures?.filter((figure) => all || !figure.same) ?? [];
  return (
    <main className="page look-page">
      <header>
        <h1>{heading}</h1>
        <DemoMark demo={demo} />
        <div className="look-choose screen-only">
          <Choose name="Left" choices={choices} chosen={left} onChoose={(id) => onChoose('left', id)} />
          <Choose name="Right" choices={choices} chosen={right} onChoose={(id) => onChoose('right', id)} />
        </div>
        <p className="look-actions screen-only">
          <button type="button" className="slab" aria-pressed={all} onClick={() => setAll(!all)}>
            Also what is the same
          </button>
          <button type="button" className="slab" onClick={onPrint}>
            Print
          </button>
        </p>
      </header>
      {figures && (
        <section aria-label="Profiles">
          <h2>Profiles</h2>
          {shownFigures.length === 0 ? (
            <p>The profiles do not differ.</p>
          ) : (
            <table className="look-compare">
              <caption className="unseen">
                Profiles of {labelOf(left)} and {labelOf(right)}
              </caption>
              <thead>
                <tr>
                  <th scope="col">Figure</th>
                  <th scope="col">{labelOf(left)}</th>
                  <th scope="col">{labelOf(right)}</th>
                </tr>
              </thead>
              <tbody>
                {shownFigures.map((figure) => (
                  <tr key={`${figure.section} ${figure.label}`}>
                    <th scope="row">
                      {figure.label} <span className="quiet">{figure.section}</span>
                    </th>
                    <td>{figure.left}</td>
                    <td>{figure.right}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </section>
      )}
      <section aria-label="Checks">
        <h2>Checks</h2>
        {left === null || right === null ? (
          <p>Choose two to compare.</p>
        ) : shown.length === 0 ? (
          <p>Nothing differs.</p>
        ) : (
          <table className="look-compare">
            <caption className="unseen">
              Checks of {labelOf(left)} and {labelOf(right)}
            </caption>
            <thead>
              <tr>
                <th scope="col">Check</th>
                <th scope="col">{labelOf(left)}</th>
                <th scope="col">{labelOf(right)}</th>
                <th scope="col">Change</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((check) => (
                <tr key={check.key}>
                  <th scope="row">{capitalized(check.name)}</th>
                  <Side side={check.left} />
                  <Side side={check.right} />
                  <td>{check.change ?? 'same'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </section>
    </main>
  );
}

function Side({ side }: { readonly side: ComparedSide }) {
  return (
    <td>
      {side.text} {side.status === 'not-asked' ? <span className="quiet">not asked</span> : <OutcomeMark outcome={side.status} />}
    </td>
  );
}

interface ChooseProps {
  readonly name: string;
  readonly choices: readonly CompareChoice[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}

function Choose({ name, choices, chosen, onChoose }: ChooseProps) {
  const id = useId();
  return (
    <p>
      <label htmlFor={id}>{name}</label>
      <select id={id} value={chosen ?? ''} onChange={(event) => onChoose(event.currentTarget.value)}>
        {chosen === null && <option value="">Choose one</option>}
        {choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.label}
          </option>
        ))}
      </select>
    </p>
  );
}
