/** The first screen: carry on with what is unfinished, start a round, see what is due, or watch a rehearsal. */
import type { RoundKind } from '../../domain/checks/check.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import { type MarkOutcome, OutcomeMark } from '../parts/OutcomeMark.tsx';
import { ROUND_NAMES } from '../parts/roundNames.ts';
import { unitInShort } from '../unit/UnitList.tsx';
import { Readiness, type ReadinessProps } from './Readiness.tsx';

export interface HomeUnit {
  readonly unit: Unit;
  /** The latest complete round; null when there is none. */
  readonly last: {
    readonly round: string;
    readonly kind: RoundKind;
    /** Formatted: "January 3" or "3 days ago". */
    readonly when: string;
    readonly outcome: MarkOutcome;
    /** The first sentence of its verdict. */
    readonly sentence: string;
  } | null;
  /** What is due or still to be mended, the most pressing first, each a sentence. */
  readonly due: readonly { readonly id: string; readonly sentence: string; readonly outcome: MarkOutcome }[];
}

export interface UnfinishedRound {
  readonly round: string;
  readonly unitName: string;
  readonly kind: RoundKind;
  /** Formatted. */
  readonly when: string;
  readonly done: number;
  readonly total: number;
}

export type HomePlace = 'units' | 'unit-new' | 'files' | 'settings' | 'numbers';

export interface HomeScreenProps {
  /** In use, not put away. */
  readonly units: readonly HomeUnit[];
  /** The latest first. */
  readonly unfinished: readonly UnfinishedRound[];
  readonly readiness: ReadinessProps;
  /** Rounds that would be lost with this device, when it is time to say so; null else. */
  readonly atRisk?: number | null;
  /** A trouble that concerns the whole app, as a sentence. */
  readonly trouble: string | null;
  readonly onStart: (unit: string, kind: RoundKind) => void;
  readonly onResume: (round: string) => void;
  readonly onRehearse: () => void;
  readonly onOpenUnit: (unit: string) => void;
  readonly onOpenRound: (round: string) => void;
  readonly onGo: (place: HomePlace) => void;
}

const KINDS: readonly RoundKind[] = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'];
const MOST_DUE = 4;

export function HomeScreen(props: HomeScreenProps) {
  const { units, unfinished, readiness, atRisk = null, trouble, onResume, onRehearse, onGo } = props;
  const newcomer = units.length === 0;
  return (
    <div className="page home">
      <header>
        <p className="home-name">
          <HomeMark />
          Gloveside
        </p>
        <h1>{newcomer ? 'A walkaround you can do without your hands' : 'Ready for the road?'}</h1>
        {newcomer && (
          <p className="lead">
            It asks each check aloud, hears what you see, says it back and keeps it, with no coverage and with your gloves on.
          </p>
        )}
      </header>
      <main>
        {trouble !== null && (
          <p className="trouble" role="alert">
            {trouble}
          </p>
        )}
        {unfinished.map((round) => (
          <div key={round.round} className="resume">
            <button type="button" className="slab main resume-button" onClick={() => onResume(round.round)}>
              <span className="resume-word">Carry on: {round.unitName}</span>
              <span>
                {ROUND_NAMES[round.kind]}, {round.done} of {round.total} done, begun {round.when}
              </span>
            </button>
          </div>
        ))}
        {newcomer && (
          <section className="start-here" aria-labelledby="start-here">
            <h2 id="start-here">Start here</h2>
            <div className="row-buttons">
              <button type="button" className="slab main" onClick={onRehearse}>
                Watch a rehearsal
              </button>
              <button type="button" className="slab" onClick={() => onGo('unit-new')}>
                Set up your unit
              </button>
            </div>
            <p className="quiet">
              The rehearsal needs no unit and no microphone: a made-up unit, and a made-up person who answers.
            </p>
          </section>
        )}
        {units.map((entry) => (
          <UnitCard key={entry.unit.id} entry={entry} {...props} />
        ))}
        {atRisk !== null && (
          <section className="backup-due" aria-label="Backup">
            <p>{atRisk === 1 ? 'One round is' : `${atRisk} rounds are`} on this device alone. Save a copy somewhere else.</p>
            <button type="button" className="slab" onClick={() => onGo('files')}>
              Save a backup
            </button>
          </section>
        )}
        <nav className="home-nav" aria-label="More">
          <button type="button" className="slab" onClick={() => onGo('units')}>
            Units
          </button>
          {!newcomer && (
            <button type="button" className="slab" onClick={onRehearse}>
              Watch a rehearsal
            </button>
          )}
          <button type="button" className="slab" onClick={() => onGo('files')}>
            Files
          </button>
          <button type="button" className="slab" onClick={() => onGo('numbers')}>
            Numbers
          </button>
          <button type="button" className="slab" onClick={() => onGo('settings')}>
            Settings
          </button>
        </nav>
        <Readiness {...readiness} />
      </main>
      <footer className="plainly">
        <p>
          Gloveside advises. It certifies nothing and replaces no inspection. The maker's figures, the local law and licensed work
          come first, and you look for yourself.
        </p>
      </footer>
    </div>
  );
}

function UnitCard({ entry, onStart, onOpenUnit, onOpenRound }: HomeScreenProps & { readonly entry: HomeUnit }) {
  const { unit, last, due } = entry;
  const id = `unit-${unit.id}`;
  return (
    <section className="unit-card" aria-labelledby={id}>
      <div className="unit-card-head">
        <div>
          <h2 id={id}>{unit.name}</h2>
          <p className="quiet">{unitInShort(unit)}</p>
        </div>
        <button type="button" className="slab" onClick={() => onOpenUnit(unit.id)}>
          Look back<span className="unseen"> at {unit.name}</span>
        </button>
      </div>
      {last === null ? (
        <p>No round yet.</p>
      ) : (
        <div className="last">
          <OutcomeMark outcome={last.outcome} />
          <p>
            {ROUND_NAMES[last.kind]}, {last.when}. {last.sentence}{' '}
            <button type="button" className="plain-link" onClick={() => onOpenRound(last.round)}>
              Read it
              <span className="unseen">
                : {ROUND_NAMES[last.kind]}, {unit.name}
              </span>
            </button>
          </p>
        </div>
      )}
      {due.length > 0 && (
        <ul className="due-list" aria-label={`Due on ${unit.name}`}>
          {due.slice(0, MOST_DUE).map((item) => (
            <li key={item.id}>
              <OutcomeMark outcome={item.outcome} />
              <span>{item.sentence}</span>
            </li>
          ))}
          {due.length > MOST_DUE && <li className="quiet">And {due.length - MOST_DUE} more when you look back.</li>}
        </ul>
      )}
      <div className="starts">
        {KINDS.map((kind, index) => (
          <button
            key={kind}
            type="button"
            className={`slab start ${index === 0 ? 'main' : ''}`}
            onClick={() => onStart(unit.id, kind)}
            aria-label={`${ROUND_NAMES[kind]}: start with ${unit.name}`}
          >
            {ROUND_NAMES[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

/** The app's own mark: a slanted body, the frame under it, one wheel. */
function HomeMark() {
  return (
    <svg viewBox="100 120 312 316" width="40" height="40" aria-hidden="true">
      <path d="M148 296V186L356 128v168Z" fill="var(--lake)" />
      <rect x="104" y="316" width="304" height="42" rx="12" fill="currentColor" />
      <circle cx="232" cy="384" r="44" fill="var(--watch)" stroke="var(--paper)" strokeWidth="16" />
    </svg>
  );
}
