/** Where our numbers come from: every figure and table that a judgement rests on, from the entries the code computes with. */
import type { ReactNode } from 'react';
import type { Source } from '../../domain/checks/outcome.ts';
import type { Figure, Table } from '../../domain/judge/numbers/entry.ts';
import { NUMBER_TOPICS, type TopicNumbers } from '../../domain/judge/numbers.ts';
import { displayUnit, formatQuantity, roundedText } from '../../domain/quantity/format.ts';
import type { Display } from '../../domain/voice/settings.ts';

export interface NumbersPageProps {
  readonly display: Display;
  readonly onBack?: () => void;
}

export function NumbersPage({ display, onBack }: NumbersPageProps) {
  return (
    <main className="page numbers-page">
      <header>
        {onBack && (
          <button type="button" className="slab" onClick={onBack}>
            Back
          </button>
        )}
        <h1>Where our numbers come from</h1>
        <p>
          The maker's figure comes first, always: the placard, the label, the handbook. Where there is none, these are used. They
          advise; they certify nothing, and local law comes before them.
        </p>
        <p className="quiet">
          "From memory" means that the text was not read again for this app. "Common practice" means that nobody has written it
          down in a place that can be cited. Rules for commercial vehicles, cranes or slings are guidance here, not law.
        </p>
      </header>
      <nav aria-label="Topics" className="numbers-topics">
        <ul>
          {NUMBER_TOPICS.map(({ topic }) => (
            <li key={topic}>
              <a href={`#${idOf(topic)}`} onClick={(event) => jump(event, topic)}>
                {heading(topic)}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {NUMBER_TOPICS.map((numbers) => (
        <TopicSection key={numbers.topic} numbers={numbers} display={display} />
      ))}
    </main>
  );
}

const idOf = (topic: string) => `numbers-${topic.replaceAll(' ', '-')}`;
const heading = (topic: string) => topic.charAt(0).toUpperCase() + topic.slice(1);

/** The address after `#` is the app's own: the page scrolls without changing it. */
function jump(event: { preventDefault: () => void }, topic: string): void {
  event.preventDefault();
  const section = document.getElementById(idOf(topic));
  section?.scrollIntoView();
  section?.focus();
}

function TopicSection({ numbers: { topic, entries }, display }: { readonly numbers: TopicNumbers; readonly display: Display }) {
  const figures = entries.filter((entry) => entry.kind === 'figure');
  const tables = entries.filter((entry) => entry.kind === 'table');
  return (
    <section id={idOf(topic)} tabIndex={-1} aria-labelledby={`${idOf(topic)}-name`} className="numbers-topic">
      <h2 id={`${idOf(topic)}-name`}>{heading(topic)}</h2>
      <Scrolling name={`Figures: ${topic}`}>
        <table>
          <caption>{heading(topic)}: figures</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Figure</th>
              <th scope="col">Used for</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {figures.map((figure) => (
              <tr key={figure.id}>
                <th scope="row">{figure.label}</th>
                <td className="numbers-figure">{figureText(figure, display)}</td>
                <td>{figure.usedFor}</td>
                <td>
                  <SourceText source={figure.source} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolling>
      {tables.map((table) => (
        <NumbersTable key={table.id} table={table} />
      ))}
    </section>
  );
}

function NumbersTable({ table }: { readonly table: Table }) {
  const { label, columns, rows, source, usedFor } = table;
  return (
    <details className="numbers-table">
      <summary>{heading(label)}</summary>
      <p>
        Used for {usedFor}. Source: <SourceText source={source} />.
      </p>
      <Scrolling name={label}>
        <table>
          <caption>{heading(label)}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([first, ...rest]) => (
              <tr key={`${first} ${rest.join(' ')}`}>
                <th scope="row">{first}</th>
                {columns.slice(1).map((column, index) => (
                  <td key={column}>{rest[index]}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolling>
    </details>
  );
}

function Scrolling({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section className="numbers-scroll" tabIndex={0} aria-label={name}>
      {children}
    </section>
  );
}

/** As printed in its source; in metric, the converted figure too. */
function figureText({ value, unit, unitText, si }: Figure, display: Display): string {
  const printed = unit === '32nds' ? `${value}/32 in` : `${roundedText(value, 5)} ${unitText}`.trim();
  if (unit === null || displayUnit(unit, display) === unit) return printed;
  return `${printed} (${formatQuantity(si, unit, display)})`;
}

function SourceText({ source }: { readonly source: Source }) {
  return (
    <>
      {source.text}
      {source.fromMemory && <span className="numbers-memory"> (from memory)</span>}
    </>
  );
}
