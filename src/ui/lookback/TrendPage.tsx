/** Every series of a unit, the wheels laid out as the unit stands: front above rear, left on the left. */
import type { Series } from '../../domain/history/series.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import { capitalized, positionWords } from '../../domain/trend/wording.ts';
import { type Unit, wheelPositions } from '../../domain/unit/unit.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { DemoMark } from './DemoMark.tsx';
import { TrendChart } from './TrendChart.tsx';

export interface TrendPageProps {
  readonly unit: Unit;
  /** Of this unit only, as `trendsFor` gives them. */
  readonly series: readonly Series[];
  readonly statements: readonly TrendStatement[];
  readonly display: Display;
  readonly unitHref: string;
  readonly roundHref: (round: string) => string;
  readonly onPrint: () => void;
}

export function TrendPage({ unit, series, statements, display, unitHref, roundHref, onPrint }: TrendPageProps) {
  const groups = groupByCheck(series);
  const statementOf = (one: Series) => statements.find((statement) => statement.key === one.key) ?? null;
  return (
    <main className="page look-page">
      <header>
        <p className="screen-only">
          <a href={unitHref}>{unit.name}</a>
        </p>
        <h1>Trends of {unit.name}</h1>
        <DemoMark demo={unit.demo} />
        <button type="button" className="slab screen-only" onClick={onPrint}>
          Print
        </button>
      </header>
      {series.length === 0 && <p>There are no readings yet. After the first round they are here.</p>}
      {groups.map(([check, ofCheck]) => {
        const layout = layoutOf(ofCheck, unit);
        const name = headingOf(ofCheck);
        return (
          <section key={check} aria-label={name}>
            <h2>{name}</h2>
            <div className={layout === 'unit' ? 'look-standing' : 'look-charts'}>
              {ordered(ofCheck, unit).map((one) => (
                <div key={one.key} className={layout === 'unit' ? sideOf(one) : undefined}>
                  <TrendChart
                    series={one}
                    statement={statementOf(one)}
                    display={display}
                    title={one.position === null ? name : `${capitalized(positionWords(one.position))}, ${name.toLowerCase()}`}
                    roundHref={roundHref}
                  />
                </div>
              ))}
            </div>
          </section>
        );
      })}
    </main>
  );
}

function groupByCheck(series: readonly Series[]): readonly (readonly [string, readonly Series[]])[] {
  const groups = new Map<string, Series[]>();
  for (const one of series) {
    const group = groups.get(one.check);
    if (group) group.push(one);
    else groups.set(one.check, [one]);
  }
  return [...groups];
}

/** Without the position that the names of single checks begin with. */
function headingOf(series: readonly Series[]): string {
  const [first] = series;
  if (!first) return '';
  const where = first.position === null ? '' : positionWords(first.position);
  return capitalized(first.name.replace(where, '').trim());
}

function layoutOf(series: readonly Series[], unit: Unit): 'unit' | 'plain' {
  const positions = new Set<string>([...wheelPositions(unit.axles), 'left', 'right']);
  return series.length > 1 && series.every((one) => one.position !== null && positions.has(one.position)) ? 'unit' : 'plain';
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
