/** Where we are, in words first; the bar repeats it for a glance. */
import type { RoundView } from '../../domain/round/view.ts';
import { timeLeft } from '../parts/countdown.ts';
import { EarsMark } from '../parts/EarsMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';

export function RoundHeader({ view, now }: { readonly view: RoundView; readonly now: number }) {
  const { station, done, total, ears, timers, round } = view;
  return (
    <header className="round-head">
      <div className="round-where">
        <p className="station">
          {station ? station.name : `${round.plan.unit.name}, ${ROUND_NAMES[round.plan.round].toLowerCase()}`}
        </p>
        <EarsMark ears={ears} />
      </div>
      <div className="trail">
        <svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
          <rect className="trail-ground" width="100" height="4" />
          <rect className="trail-done" width={total === 0 ? 0 : (100 * done) / total} height="4" />
        </svg>
      </div>
      <p className="progress">
        {done} of {total} done
        {station ? `, ${station.done} of ${station.total} here` : ''}
        {round.demo ? ', demo data' : ''}
      </p>
      {timers.length > 0 && (
        <ul className="timers">
          {timers.map((timer) => {
            const left = timer.due ? 'due now' : timeLeft(timer.dueAt, now);
            return (
              <li key={timer.key} className={left === 'due now' ? 'due' : ''}>
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
                {timer.name}: {left}
              </li>
            );
          })}
        </ul>
      )}
    </header>
  );
}
