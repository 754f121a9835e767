/** One unit at the kitchen table: what is due, what drifts, what is to be mended, what was measured. */
import { useState } from 'react';
import type { RoundKind } from '../../domain/checks/check.ts';
import type { Reminder } from '../../domain/files/icalendar.ts';
import type { Findings } from '../../domain/history/findings.ts';
import type { Display } from '../../domain/quantity/format.ts';
import type { TrendStatement } from '../../domain/trend/statement.ts';
import { capitalized } from '../../domain/trend/wording.ts';
import type { HappenedForm as Happened, ReadHappening } from '../../domain/unit/happened.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import { type MarkOutcome, OutcomeMark } from '../parts/OutcomeMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';
import { DemoMark } from './DemoMark.tsx';
import { FindingList, sortedFindings } from './FindingList.tsx';
import { HappenedForm } from './HappenedForm.tsx';
import type { Mending } from './MendedForm.tsx';
import type { PictureUrl } from './Picture.tsx';
import { Time } from './Time.tsx';

export interface ListedRound {
  readonly id: string;
  readonly kind: RoundKind;
  readonly startedAt: number;
  readonly complete: boolean;
  /** Null where it is not worked out. */
  readonly verdict: MarkOutcome | null;
}

export interface UnitPageProps {
  readonly unit: Unit;
  readonly now: number;
  /** `pending`: what needs the whole past is not worked out yet. Else a sentence about what is missing in it, or null. */
  readonly past?: 'pending' | string | null;
  readonly due: readonly Reminder[];
  readonly trends: readonly TrendStatement[];
  /** Newest first. */
  readonly rounds: readonly ListedRound[];
  /** Of the newest complete round; null where there is none. */
  readonly verdictSentences: readonly string[] | null;
  readonly findings: Findings;
  readonly hrefs: {
    readonly round: (round: string) => string;
    readonly start: (kind: RoundKind) => string;
    readonly resume: (round: string) => string;
    readonly trends: string;
    readonly compare: string;
    readonly edit: string;
    readonly weights?: string;
    readonly report: ((round: string) => string) | null;
  };
  readonly onMended: (mending: Mending) => void;
  readonly display: Display;
  readonly onHappened: (form: Happened) => ReadHappening;
  readonly photoUrl: PictureUrl;
}

const SOON_MS = 60 * 86_400_000;
const SHOWN_ROUNDS = 12;
const KINDS: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];

export function UnitPage({
  unit,
  now,
  past = null,
  due,
  trends,
  rounds,
  verdictSentences,
  findings,
  hrefs,
  onMended,
  display,
  onHappened,
  photoUrl,
}: UnitPageProps) {
  const [last] = rounds;
  // Hundreds of rounds take a while to put up, and are seldom looked at.
  const [isEarlierOpen, setEarlierOpen] = useState(false);
  const { toMend, toWatch } = sortedFindings(findings.open);
  const near = due.filter((reminder) => reminder.due - now < SOON_MS);
  const later = due.filter((reminder) => reminder.due - now >= SOON_MS);
  const concerns = trends.filter((trend) => trend.concern);
  const isPending = past === 'pending';
  return (
    <main className="page look-page">
      <header>
        <h1>{unit.name}</h1>
        <DemoMark demo={unit.demo} />
        {past !== null && !isPending && <p role="alert">{past}</p>}
      </header>

      <section aria-labelledby="look-last">
        <h2 id="look-last">Last round</h2>
        {last ? (
          <>
            <p className="look-last">
              {last.verdict && <OutcomeMark outcome={last.complete ? last.verdict : 'not-cleared'} size="large" />}
              <span>
                {ROUND_NAMES[last.kind]}, <Time at={last.startedAt} form="day-time" />
                {!last.complete && <strong> Not complete: it clears nothing.</strong>}
              </span>
            </p>
            {last.complete && verdictSentences?.map((sentence) => <p key={sentence}>{sentence}</p>)}
            <p className="look-actions">
              {!last.complete && (
                <a className="slab main" href={hrefs.resume(last.id)}>
                  Go on with it
                </a>
              )}
              <a className="slab" href={hrefs.round(last.id)}>
                Play it back
              </a>
              {hrefs.report && (
                <a className="slab" href={hrefs.report(last.id)}>
                  Report
                </a>
              )}
            </p>
          </>
        ) : (
          <p>No round yet. The first one takes about half an hour.</p>
        )}
      </section>

      <nav aria-label="Begin a round" className="look-actions">
        {KINDS.map((kind, index) => (
          <a key={kind} className={index === 0 ? 'slab main' : 'slab'} href={hrefs.start(kind)}>
            {ROUND_NAMES[kind]}
          </a>
        ))}
      </nav>

      <section aria-labelledby="look-findings">
        <h2 id="look-findings">To be mended</h2>
        {isPending ? (
          <Pending />
        ) : toMend.length === 0 ? (
          <p>Nothing is open.</p>
        ) : (
          <FindingList findings={toMend} roundHref={hrefs.round} onMended={onMended} photoUrl={photoUrl} />
        )}
        {toWatch.length > 0 && (
          <details>
            <summary>To be looked at again: {toWatch.length}</summary>
            <FindingList findings={toWatch} roundHref={hrefs.round} onMended={onMended} photoUrl={photoUrl} />
          </details>
        )}
        {findings.mended.length > 0 && <MendedList findings={findings} />}
      </section>

      <section aria-labelledby="look-due">
        <h2 id="look-due">Due</h2>
        {isPending ? (
          <Pending />
        ) : near.length === 0 ? (
          <p>Nothing in the next two months, as far as dates are known.</p>
        ) : (
          <DueList reminders={near} now={now} />
        )}
        {later.length > 0 && (
          <details>
            <summary>Later: {later.length}</summary>
            <DueList reminders={later} now={now} />
          </details>
        )}
      </section>

      <section aria-labelledby="look-happened" className="screen-only">
        <h2 id="look-happened">Between rounds</h2>
        <HappenedForm unit={unit} display={display} onHappened={onHappened} />
      </section>

      <section aria-labelledby="look-drift">
        <h2 id="look-drift">Drifting</h2>
        {isPending ? (
          <Pending />
        ) : concerns.length === 0 ? (
          <p>{trends.length === 0 ? 'Nothing drifts, or there are too few readings to tell.' : 'Nothing that nears a limit.'}</p>
        ) : (
          <ul className="look-trends">
            {concerns.map((trend) => (
              <li key={`${trend.key} ${trend.kind}`}>{trend.text}</li>
            ))}
          </ul>
        )}
        <p>
          <a className="slab" href={hrefs.trends}>
            All trends
          </a>
        </p>
      </section>

      <section aria-labelledby="look-history">
        <h2 id="look-history">Rounds</h2>
        <RoundList rounds={rounds.slice(0, SHOWN_ROUNDS)} href={hrefs.round} />
        {rounds.length > SHOWN_ROUNDS && (
          <details onToggle={(event) => setEarlierOpen(event.currentTarget.open)}>
            <summary>Earlier: {rounds.length - SHOWN_ROUNDS}</summary>
            {isEarlierOpen && <RoundList rounds={rounds.slice(SHOWN_ROUNDS)} href={hrefs.round} />}
          </details>
        )}
        <p className="look-actions">
          {rounds.length > 1 && (
            <a className="slab" href={hrefs.compare}>
              Compare
            </a>
          )}
          {hrefs.weights !== undefined && (
            <a className="slab" href={hrefs.weights}>
              Weights
            </a>
          )}
          <a className="slab" href={hrefs.edit}>
            Change the profile
          </a>
        </p>
      </section>
    </main>
  );
}

function Pending() {
  return (
    <p className="quiet" data-pending="true">
      Reading the earlier rounds…
    </p>
  );
}

function RoundList({ rounds, href }: { readonly rounds: readonly ListedRound[]; readonly href: (round: string) => string }) {
  return (
    <ul className="look-rounds">
      {rounds.map((round) => (
        <li key={round.id}>
          <a href={href(round.id)}>
            <Time at={round.startedAt} form="day-time" />
          </a>
          <span>{ROUND_NAMES[round.kind]}</span>
          {round.complete ? (
            round.verdict && <OutcomeMark outcome={round.verdict} />
          ) : (
            <OutcomeMark outcome="open" word="Not complete" />
          )}
        </li>
      ))}
    </ul>
  );
}

function DueList({ reminders, now }: { readonly reminders: readonly Reminder[]; readonly now: number }) {
  return (
    <ul className="look-due">
      {reminders.map((reminder) => (
        <li key={reminder.uid}>
          <p>
            <strong>{reminder.summary}</strong>
            {', '}
            {reminder.due < now ? 'overdue since ' : ''}
            <Time at={reminder.due} />
          </p>
          <p className="quiet">{reminder.description}</p>
        </li>
      ))}
    </ul>
  );
}

function MendedList({ findings }: { readonly findings: Findings }) {
  return (
    <details>
      <summary>Mended: {findings.mended.length}</summary>
      <ul className="look-mended-list">
        {findings.mended.map(({ finding, event }) => (
          <li key={event.id}>
            <Time at={event.at} />: {capitalized(finding.title)}. {event.what}
            {event.who !== null && <> By {event.who}.</>}
            {event.cost !== null && <> Cost {event.cost}.</>}
          </li>
        ))}
      </ul>
    </details>
  );
}
