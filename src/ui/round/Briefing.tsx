/** Before the first check: which unit, what is not known, what to beware of, who is along. */
import type { RoundView } from '../../domain/round/view.ts';
import { Tile } from './Tile.tsx';

export interface BriefingProps {
  readonly view: RoundView;
  readonly onBegin: (people: 1 | 2) => void;
}

export function BriefingFacts({ view }: { readonly view: RoundView }) {
  const { plan } = view.round;
  const cautions = [...new Set(plan.checks.flatMap((check) => (check.lines.caution === null ? [] : [check.lines.caution])))];
  return (
    <div className="briefing-facts">
      <p className="lead">
        {plan.checks.length} checks at {plan.stations.length} stops.
      </p>
      {plan.demo && <p className="demo-note">This is a rehearsal on a made-up unit. All of it is demo data.</p>}
      {plan.due !== undefined && plan.due.length > 0 && (
        <section aria-labelledby="due">
          <h2 className="h3" id="due">
            Due this time
          </h2>
          <ul className="dashes">
            {plan.due.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      {plan.unknowns.length > 0 && (
        <section aria-labelledby="unknowns">
          <h2 className="h3" id="unknowns">
            Not known about this unit
          </h2>
          <ul className="dashes">
            {plan.unknowns.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      {cautions.length > 0 && (
        <section aria-labelledby="cautions">
          <h2 className="h3" id="cautions">
            Take care
          </h2>
          <ul className="dashes">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      <p className="quiet">
        This advises and certifies nothing. The maker's figures, the local law and licensed work come first.
      </p>
    </div>
  );
}

export function Briefing({ view, onBegin }: BriefingProps) {
  return (
    <div className="board state-board">
      <Tile ring={0} main onPress={() => onBegin(1)} name={`Begin alone, ${view.total} checks`}>
        Begin, alone
      </Tile>
      <Tile ring={1} onPress={() => onBegin(2)} name="Begin, two of us: the second one reads and answers">
        Begin, two of us
      </Tile>
    </div>
  );
}
