/** A whole round on one sheet of paper; shown only in print, in place of the playback. */
import { type Sheet, type SheetLine, sourceText } from '../../domain/history/sheet.ts';
import { formatQuantity } from '../../domain/quantity/format.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';

const RELATIONS = { 'at-least': 'at least', 'at-most': 'at most', target: 'target' } as const;

export function RoundSheet({ sheet, display }: { readonly sheet: Sheet; readonly display: Display }) {
  return (
    <section className="look-sheet print-only" aria-label="The round on one sheet">
      {sheet.notes.length > 0 && <p>Notes: {sheet.notes.join(' · ')}</p>}
      <div className="look-sheet-columns">
        {sheet.stations.map(({ name, lines }) => (
          <div key={name}>
            <h2>{capitalized(name)}</h2>
            <ul>
              {lines.map((line) => (
                <Line key={line.check.key} line={line} sources={sheet.sources} display={display} />
              ))}
            </ul>
          </div>
        ))}
      </div>
      {sheet.sources.length > 0 && (
        <>
          <h2>Where the limits come from</h2>
          <ol className="look-sources">
            {sheet.sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

interface LineProps {
  readonly line: SheetLine;
  readonly sources: readonly string[];
  readonly display: Display;
}

function Line({ line, sources, display }: LineProps) {
  const { check, outcome, value, by, heard, before, because, limits, limitsAsAbove, notes } = line;
  return (
    <li className={outcome === 'ok' ? undefined : 'look-sheet-not-good'}>
      <OutcomeMark outcome={outcome} bare={outcome === 'ok'} /> {capitalized(check.lines.name)}
      {value !== null && (
        <>
          : <strong>{value}</strong>
        </>
      )}
      {before.length > 0 && <>, corrected from {before.join(', ')}</>}
      {by !== null && <span className="look-sheet-by"> {heard === null ? by : `${by}: “${heard}”`}</span>}
      {because !== null && because !== '' && <>. {because}</>}
      {limitsAsAbove && <> [limits as above]</>}
      {limits.length > 0 && (
        <>
          {' ['}
          {limits.map((limit, index) => (
            <span key={limit.id}>
              {index > 0 && '; '}
              {limit.label} {RELATIONS[limit.relation]} {formatQuantity(limit.si, limit.unit, display)}
              <sup>{sources.indexOf(sourceText(limit.source)) + 1}</sup>
            </span>
          ))}
          ]
        </>
      )}
      {notes.map((note) => (
        <em key={note}> Note: {/[.!?]$/.test(note) ? note : `${note}.`}</em>
      ))}
    </li>
  );
}
