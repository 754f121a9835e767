/** The round is complete: what it comes to, what must be done, worst first. */
import type { CheckLineView, RoundView } from '../../domain/round/view.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { label } from './StateBoard.tsx';
import { Tile } from './Tile.tsx';

const ORDER = ['hold', 'fix', 'watch', 'skipped', 'open'] as const;

/** What is not simply good, worst first, then in the order walked. */
export function findingsOf(lines: readonly CheckLineView[]): readonly CheckLineView[] {
  return ORDER.flatMap((outcome) => lines.filter((line) => line.status === outcome));
}

export function CompleteFacts({ view }: { readonly view: RoundView }) {
  const findings = findingsOf(view.lines);
  const notes = view.entries.filter((entry) => entry.kind === 'noted');
  return (
    <div className="complete-facts">
      {view.verdict && (
        <div className="verdict">
          <OutcomeMark outcome={view.verdict.outcome} size="large" />
          {view.verdict.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {findings.length > 0 && (
        <section aria-labelledby="findings">
          <h2 className="h3" id="findings">
            What to do
          </h2>
          <ol className="findings">
            {findings.map((line) => (
              <li key={line.check.key}>
                <OutcomeMark outcome={line.status} />
                <div>
                  <p className="finding-name">
                    {label(line.check.lines.name)}
                    {line.value === null ? '' : `: ${line.value}`}
                  </p>
                  {line.because && <p>{line.because}</p>}
                  <p>
                    {line.status === 'open' || line.status === 'skipped' ? 'See to it before you tow.' : line.check.lines.mend}
                  </p>
                </div>
              </li>
            ))}
          </ol>
        </section>
      )}
      {notes.length > 0 && (
        <p>
          {notes.length} {notes.length === 1 ? 'note' : 'notes'} kept; they are on the round's page.
        </p>
      )}
      <p className="quiet">This advises and certifies nothing. Look for yourself, and keep to the maker's figures and the law.</p>
    </div>
  );
}

export interface CompleteProps {
  readonly onOpenRound: () => void;
  readonly onLeave: () => void;
  readonly onRepeat: () => void;
}

export function Complete({ onOpenRound, onLeave, onRepeat }: CompleteProps) {
  return (
    <div className="board state-board">
      <Tile ring={0} main onPress={onOpenRound}>
        Read the round
      </Tile>
      <div className="pair">
        <Tile ring={1} onPress={onRepeat}>
          Say it again
        </Tile>
        <Tile ring={2} onPress={onLeave}>
          Home
        </Tile>
      </div>
    </div>
  );
}
