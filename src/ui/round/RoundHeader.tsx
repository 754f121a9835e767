/** Where we are, in words first; the trail repeats it for a glance, one stretch for each station. */
import type { RoundView } from '../../domain/round/view.ts';
import { timeLeft } from '../parts/countdown.ts';
import { EarsMark } from '../parts/EarsMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';

export function RoundHeader({ view, now }: { readonly view: RoundView; readonly now: number }) {
  const { station, done, total, ears, timers, round, speaking, trouble } = view;
  const unit = round.plan.unit.name;
  return (
    <header className="round-head">
      <p className="station">{station ? station.name : `${unit}, ${ROUND_NAMES[round.plan.round].toLowerCase()}`}</p>
      <Trail view={view} />
      <div className="round-where">
        <p className="progress">
          {done} of {total}
          <span className="unseen">
            {' done'}
            {station ? `, ${station.done} of ${station.total} here` : ''}
          </span>
          {round.demo ? ', demo data' : ''}
        </p>
        <EarsMark ears={ears} speaking={speaking} />
      </div>
      {timers.length > 0 && (
        <ul className="timers">
          {timers.map((timer) => (
            <li key={timer.key} className={timer.due || timer.dueAt <= now ? 'due' : ''}>
              <svg
                viewBox="0 0 32 32"
                width="22"
                height="22"
                aria-hidden="true"
                fill="none"
                stroke="currentColor"
                strokeWidth="4"
              >
                <path d="M6 3h20M6 29h20M8 3c0 9 16 17 16 26M24 3c0 9-16 17-16 26" />
              </svg>
              <span className="timer-words">
                {timer.due ? 'due now' : timeLeft(timer.dueAt, now)}: {timer.name}
              </span>
            </li>
          ))}
        </ul>
      )}
      {trouble !== null && (
        <p className="trouble" role="alert">
          {trouble}
        </p>
      )}
      {ears.sentence !== null && ears.sentence !== trouble && <p className="ears-sentence">{ears.sentence}</p>}
    </header>
  );
}

const GAP = 1.2;

/** One stretch for each station, as long as it has checks, filled as far as they are done; taller where we stand. */
function Trail({ view }: { readonly view: RoundView }) {
  const { stations } = view.round.plan;
  const status = new Map(view.lines.map((line) => [line.check.key, line.status]));
  const room = 100 - GAP * Math.max(0, stations.length - 1);
  const checks = stations.reduce((sum, place) => sum + place.checks.length, 0);
  let x = 0;
  return (
    <svg className="trail" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      {stations.map((place) => {
        const width = checks === 0 ? 0 : (room * place.checks.length) / checks;
        const done = place.checks.filter((key) => (status.get(key) ?? 'open') !== 'open').length;
        const here = view.current?.station === place.key;
        const at = x;
        x += width + GAP;
        return (
          <g key={place.key} transform={`translate(${at} ${here ? 0 : 1.5})`}>
            <rect className="trail-ground" width={width} height={here ? 6 : 3} />
            <rect className="trail-done" width={(width * done) / Math.max(1, place.checks.length)} height={here ? 6 : 3} />
          </g>
        );
      })}
    </svg>
  );
}
