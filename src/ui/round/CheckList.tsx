/** Every check of the round in the order walked, to see what is done and to jump to any of them. */
import type { CheckLineView, RoundView } from '../../domain/round/view.ts';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { label } from './StateBoard.tsx';
import { Tile } from './Tile.tsx';

export interface CheckListProps {
  readonly view: Pick<RoundView, 'round' | 'lines' | 'current'>;
  readonly onGo: (key: string) => void;
  readonly onClose: () => void;
  /** To the wrap-up, with what is open listed. */
  readonly onWrapUp: () => void;
}

export function CheckList({ view, onGo, onClose, onWrapUp }: CheckListProps) {
  const lines = new Map(view.lines.map((line) => [line.check.key, line]));
  return (
    <div className="check-list">
      <div className="pair">
        <Tile ring={0} main onPress={onClose}>
          Back to the check
        </Tile>
        <Tile ring={1} onPress={onWrapUp}>
          Wrap up
        </Tile>
      </div>
      {view.round.plan.stations.map((station) => (
        <section key={station.key} aria-labelledby={`station-${station.key}`}>
          <h2 className="h3" id={`station-${station.key}`}>
            {station.name}
          </h2>
          <ul>
            {station.checks.map((key) => {
              const line = lines.get(key);
              return line ? <CheckRow key={key} line={line} current={view.current?.key === key} onGo={() => onGo(key)} /> : null;
            })}
          </ul>
        </section>
      ))}
    </div>
  );
}

export function CheckRow({
  line,
  current = false,
  onGo,
  ring = 2,
}: {
  readonly line: CheckLineView;
  readonly current?: boolean;
  readonly onGo: () => void;
  readonly ring?: number;
}) {
  return (
    <li>
      <button
        type="button"
        className="slab check-row"
        data-ring={ring}
        aria-current={current ? 'step' : undefined}
        onClick={onGo}
      >
        <OutcomeMark outcome={line.status} />
        <span className="check-name">
          {label(line.check.lines.name)}
          {current && <span className="here"> — you are here</span>}
        </span>
        <span className="check-value">{line.value ?? ''}</span>
      </button>
    </li>
  );
}
