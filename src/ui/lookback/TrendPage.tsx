/** Every series of a unit, the wheels laid out as the unit stands: front above rear, left on the left. */
import type { RuleId } from '../../domain/checks/outcome.ts';
import type { Series } from '../../domain/history/series.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import { capitalized, positionWords } from '../../domain/trend/wording.ts';
import { type Unit, wheelPositions } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { DemoMark } from './DemoMark.tsx';
import { TrendChart } from './TrendChart.tsx';

export interface TrendPageProps {
  readonly unit: Unit;
  /** `pending`: only the last round is shown yet. Else a sentence about what is missing in the past, or null. */
  readonly past: 'pending' | string | null;
  /** How many rounds there are of this unit. */
  readonly rounds: number;
  /** Of this unit only, as `trendsFor` gives them. */
  readonly series: readonly Series[];
  readonly statements: readonly TrendStatement[];
  readonly display: Display;
  readonly unitHref: string;
  readonly roundHref: (round: string) => string;
  readonly onPrint: () => void;
}

export function TrendPage({ unit, past, rounds, series, statements, display, unitHref, roundHref, onPrint }: TrendPageProps) {
  const groups = groupByCheck(series).sort((a, b) => rankOf(a) - rankOf(b));
  const standing = groups.filter((ofCheck) => isStanding(ofCheck, unit));
  const single = groups.filter((ofCheck) => !isStanding(ofCheck, unit)).flat();
  const chart = (one: Series, title: string) => (
    <TrendChart
      key={one.key}
      series={one}
      statement={statements.find((statement) => statement.key === one.key) ?? null}
      display={display}
      title={title}
      roundHref={roundHref}
    />
  );
  return (
    <main className="page look-page">
      <header>
        <p className="screen-only">
          <a href={unitHref}>{unit.name}</a>
        </p>
        <h1>Trends of {unit.name}</h1>
        <DemoMark demo={unit.demo} />
        {past !== null && past !== 'pending' && <p role="alert">{past}</p>}
        <div className="look-beside screen-only">
          <button type="button" className="slab" onClick={onPrint}>
            Print
          </button>
          <p role="status" data-pending={past === 'pending'}>
            {past === 'pending' && `Reading ${rounds === 1 ? 'one round' : `${rounds} rounds`} for the trends.`}
          </p>
        </div>
      </header>
      {series.length === 0 && past !== 'pending' && <p>There are no readings yet. After the first round they are here.</p>}
      {standing.map((ofCheck) => (
        <section key={ofCheck[0]?.check} aria-label={headingOf(ofCheck)}>
          <h2>{headingOf(ofCheck)}</h2>
          <div className="look-standing">
            {ordered(ofCheck, unit).map((one) => (
              <div key={one.key} className={sideOf(one)}>
                {chart(one, `${capitalized(positionWords(one.position ?? 'left'))}, ${headingOf(ofCheck).toLowerCase()}`)}
              </div>
            ))}
          </div>
        </section>
      ))}
      {single.length > 0 && (
        <section aria-label="Other readings">
          <h2>Other readings</h2>
          <div className="look-charts">{single.map((one) => chart(one, capitalized(one.name)))}</div>
        </section>
      )}
    </main>
  );
}

/** What goes wrong slowly first, the weather last. */
const ORDER: readonly RuleId[] = [
  'tire-pressure',
  'tread-depth',
  'lugs-moved',
  'cable-push',
  'broken-wires',
  'battery-rest',
  'breakaway-rest',
  'furnace-rise',
];

function rankOf(series: readonly Series[]): number {
  const rule = series[0]?.rule;
  const place = rule === undefined ? -1 : ORDER.indexOf(rule);
  return place < 0 ? ORDER.length : place;
}

function groupByCheck(series: readonly Series[]): (readonly Series[])[] {
  const groups = new Map<string, Series[]>();
  for (const one of series) {
    const group = groups.get(one.check);
    if (group) group.push(one);
    else groups.set(one.check, [one]);
  }
  return [...groups.values()];
}

/** Without the position that the names of single checks begin with. */
function headingOf(series: readonly Series[]): string {
  const [first] = series;
  if (!first) return '';
  const where = first.position === null ? '' : positionWords(first.position);
  return capitalized(first.name.replace(where, '').trim());
}

/** Measured at each wheel or on each side. */
function isStanding(series: readonly Series[], unit: Unit): boolean {
  const positions = new Set<string>([...wheelPositions(unit.axles), 'left', 'right']);
  return series.length > 1 && series.every((one) => one.position !== null && positions.has(one.position));
}

function ordered(series: readonly Series[], unit: Unit): readonly Series[] {
  const places: readonly string[] = wheelPositions(unit.axles);
  const place = (one: Series) => {
    const found = one.position === null ? -1 : places.indexOf(one.position);
    return found < 0 ? (one.position === 'right' ? 1 : 0) : found;
  };
  return [...series].sort((a, b) => place(a) - place(b));
}

function sideOf(series: Series): string {
  return series.position?.startsWith('right') ? 'look-right' : 'look-left';
}
