/** One page for the shop or a buyer, to print or to save as a PDF from the browser. */
import type { Finding } from '../../domain/history/findings.ts';
import { sourceText } from '../../domain/history/sheet.ts';
import { formatQuantity } from '../../domain/quantity/format.ts';
import type { Round } from '../../domain/round/entry.ts';
import type { CheckLineView } from '../../domain/round/view.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import type { Display } from '../../domain/voice/settings.ts';
import { type MarkOutcome, OutcomeMark } from '../parts/OutcomeMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';
import { DemoMark } from './DemoMark.tsx';
import { FindingList, sortedFindings } from './FindingList.tsx';
import { NotACertificate } from './NotACertificate.tsx';
import type { PictureUrl } from './Picture.tsx';
import { Time } from './Time.tsx';

export interface ReportPageProps {
  readonly round: Round;
  readonly people: 1 | 2;
  readonly complete: boolean;
  /** What could not be read of the rounds before, as a sentence; null where nothing is missing. */
  readonly missing: string | null;
  /** Of the completion call, or of the last entry; epoch milliseconds. */
  readonly endedAt: number;
  readonly verdict: { readonly outcome: MarkOutcome; readonly sentences: readonly string[] };
  /** Every check in the order walked. */
  readonly lines: readonly CheckLineView[];
  readonly findings: readonly Finding[];
  readonly trends: readonly TrendStatement[];
  readonly display: Display;
  readonly roundHref: (round: string) => string;
  readonly onPrint: () => void;
  readonly photoUrl: PictureUrl;
}

export function ReportPage(props: ReportPageProps) {
  const { round, people, complete, missing, endedAt, verdict, lines, findings, trends, display, roundHref, onPrint, photoUrl } =
    props;
  const { unit } = round.plan;
  const readings = togetherByCheck(
    lines.filter((line) => line.check.expects.kind === 'reading' || line.check.expects.kind === 'count'),
  );
  const notGood = lines.filter(
    (line) => line.status !== 'ok' && !readings.includes(line) && line.status !== 'skipped' && line.status !== 'open',
  );
  const notSeen = lines.filter((line) => line.status === 'skipped' || line.status === 'open');
  const good = lines.filter((line) => line.status === 'ok').length;
  const { toMend, toWatch } = sortedFindings(findings);
  const sources = sourcesOf(readings);
  const concerns = trends.filter((trend) => trend.concern);
  return (
    <main className="page look-page look-report">
      <header>
        <h1>{unit.name}: report of a round</h1>
        <DemoMark demo={round.demo} />
        <p>
          {ROUND_NAMES[round.plan.round]}, <Time at={round.startedAt} form="day-time" /> to <Time at={endedAt} form="clock" />,{' '}
          {people === 2 ? 'two people' : 'one person'}.{unit.year !== null && <> Built {unit.year}.</>}
          {unit.vin !== null && <> VIN {unit.vin}.</>}
        </p>
        <OutcomeMark outcome={complete ? verdict.outcome : 'not-cleared'} size="large" />
        {!complete && (
          <p>
            <strong>The round was not completed: it clears nothing.</strong>
          </p>
        )}
        {verdict.sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {missing !== null && <p role="alert">{missing}</p>}
        <button type="button" className="slab main screen-only" onClick={onPrint}>
          Print or save as PDF
        </button>
      </header>

      <section aria-labelledby="look-readings">
        <h2 id="look-readings">Readings against limits</h2>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
        <section className="look-wide" tabIndex={0} aria-label="Table of readings">
          <table>
            <thead>
              <tr>
                <th scope="col">Check</th>
                <th scope="col">Read</th>
                <th scope="col">Judged</th>
                <th scope="col">Limits</th>
              </tr>
            </thead>
            <tbody>
              {readings.map(({ check, value, status, because }, place) => (
                <tr key={check.key}>
                  <th scope="row">{capitalized(check.lines.name)}</th>
                  <td>{value ?? 'not read'}</td>
                  <td>
                    <OutcomeMark outcome={status} />
                    {because && <p>{because}</p>}
                  </td>
                  <td>
                    {isRepeated(readings, place)
                      ? 'as above'
                      : check.judge.limits.map((limit, index) => (
                          <span key={limit.id}>
                            {index > 0 && ', '}
                            {limit.label} {formatQuantity(limit.si, limit.unit, display)}
                            <sup>{sources.indexOf(sourceText(limit.source)) + 1}</sup>
                          </span>
                        ))}
                    {check.judge.limits.length === 0 && 'none known'}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
        {sources.length > 0 && (
          <>
            <h3>Where the limits come from</h3>
            <ol className="look-sources">
              {sources.map((source) => (
                <li key={source}>{source}</li>
              ))}
            </ol>
          </>
        )}
      </section>

      <section aria-labelledby="look-other">
        <h2 id="look-other">Other checks</h2>
        <p>
          {good} of {lines.length} checks were good.
        </p>
        <CheckLines lines={notGood} />
      </section>

      <section aria-labelledby="look-not-seen">
        <h2 id="look-not-seen">Not seen</h2>
        {notSeen.length === 0 ? <p>Nothing was skipped or left open.</p> : <CheckLines lines={notSeen} />}
      </section>

      <section aria-labelledby="look-open">
        <h2 id="look-open">To be mended</h2>
        {toMend.length === 0 ? (
          <p>Nothing is open.</p>
        ) : (
          <FindingList findings={toMend} roundHref={roundHref} onMended={null} photoUrl={photoUrl} />
        )}
        {toWatch.length > 0 && (
          <p>
            <OutcomeMark outcome="watch" /> To be looked at again: {toWatch.map((finding) => finding.title).join(', ')}.
          </p>
        )}
      </section>

      {concerns.length > 0 && (
        <section aria-labelledby="look-report-trends">
          <h2 id="look-report-trends">Drifting</h2>
          <ul>
            {concerns.map((trend) => (
              <li key={`${trend.key} ${trend.kind}`}>{trend.text}</li>
            ))}
          </ul>
        </section>
      )}
      <NotACertificate />
    </main>
  );
}

/** Wheels beside each other, in the order in which their check first came up. */
function togetherByCheck(lines: readonly CheckLineView[]): readonly CheckLineView[] {
  const checks = [...new Set(lines.map((line) => line.check.check))];
  return checks.flatMap((check) => lines.filter((line) => line.check.check === check));
}

/** The same check at another wheel, with the same limits, stands above already. */
function isRepeated(lines: readonly CheckLineView[], place: number): boolean {
  const own = lines[place]?.check;
  if (!own || own.judge.limits.length === 0) return false;
  const limits = JSON.stringify(own.judge.limits);
  return lines.slice(0, place).some(({ check }) => check.check === own.check && JSON.stringify(check.judge.limits) === limits);
}

/** Each source once, in the order in which the limits name them. */
function sourcesOf(lines: readonly CheckLineView[]): readonly string[] {
  return [...new Set(lines.flatMap(({ check }) => check.judge.limits.map((limit) => sourceText(limit.source))))];
}

function CheckLines({ lines }: { readonly lines: readonly CheckLineView[] }) {
  return (
    <ul className="look-check-lines">
      {lines.map(({ check, status, value, because }) => (
        <li key={check.key}>
          <OutcomeMark outcome={status} />
          <span>
            <strong>{capitalized(check.lines.name)}</strong>
            {value !== null && <>: {value}</>}
            {because && <>. {because}</>}
          </span>
        </li>
      ))}
    </ul>
  );
}
