import { useState } from 'react';
import type { Series } from '../../domain/history/series.ts';
import { displayUnit } from '../../domain/quantity/format.ts';
import { convert, fromSI } from '../../domain/quantity/units.ts';
import { plainNumber } from '../../domain/trend/wording.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { withUnit } from '../parts/shownUnit.ts';
import { Time } from './Time.tsx';

export interface ReadingTableProps {
  readonly series: Series;
  readonly display: Display;
  readonly title: string;
  readonly roundHref: (round: string) => string;
}

/** Every reading of a series as it was read, newest first. Built when it is opened: a unit has thousands of rows. */
export function ReadingTable({ series, display, title, roundHref }: ReadingTableProps) {
  const [open, setOpen] = useState(false);
  const unit = displayUnit(series.unit, display);
  const step = unit === series.unit ? series.step : 0.1;
  const outsideUnit = display === 'metric' ? 'C' : 'F';
  const readings = [...series.earlier.flatMap((segment) => segment.readings), ...series.readings].reverse();
  const withCold = readings.some((reading) => reading.outsideK !== null);
  return (
    <details className="look-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Table<span className="unseen"> of {title}</span>: {readings.length} {readings.length === 1 ? 'reading' : 'readings'}
      </summary>
      {open && (
        <>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
          <section className="look-scroll" tabIndex={0} aria-label={`Table of ${title}`}>
            <table>
              <caption className="unseen">{title}, newest first, as read</caption>
              <thead>
                <tr>
                  <th scope="col">Round</th>
                  <th scope="col">Read</th>
                  {withCold && <th scope="col">Outside</th>}
                  <th scope="col">Judged then</th>
                </tr>
              </thead>
              <tbody>
                {readings.map((reading) => (
                  <tr key={reading.entry}>
                    <th scope="row">
                      <a href={roundHref(reading.round)}>
                        <Time at={reading.at} />
                      </a>
                    </th>
                    <td>{withUnit(plainNumber(convert(reading.read, series.unit, unit), step), unit)}</td>
                    {withCold && (
                      <td>
                        {reading.outsideK === null
                          ? 'not known'
                          : withUnit(plainNumber(fromSI(reading.outsideK, outsideUnit), 1), outsideUnit)}
                      </td>
                    )}
                    <td>
                      <OutcomeMark outcome={reading.outcome} />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </>
      )}
    </details>
  );
}
