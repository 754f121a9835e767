/** Everything was asked: what is still open, and the completion call, which is held so that it is never given by accident. */
import type { RoundView } from '../../domain/round/view.ts';
import { timeLeft } from '../parts/countdown.ts';
import { HoldButton } from '../parts/HoldButton.tsx';
import { OutcomeMark } from '../parts/OutcomeMark.tsx';
import { CheckRow } from './CheckList.tsx';
import { Tile } from './Tile.tsx';

export function WrapUpFacts({ view, onGo }: { readonly view: RoundView; readonly onGo: (key: string) => void }) {
  const left = view.lines.filter((line) => line.status === 'open' || line.status === 'skipped');
  return (
    <div className="wrap-up-facts">
      {view.verdict && (
        <div className="verdict">
          <OutcomeMark outcome={view.verdict.outcome} size="large" />
          {view.verdict.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {left.length > 0 && (
        <section aria-labelledby="left">
          <h2 className="h3" id="left">
            Not seen yet: {left.length}
          </h2>
          <ul>
            {left.map((line) => (
              <CheckRow key={line.check.key} line={line} onGo={() => onGo(line.check.key)} ring={3} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

export interface WrapUpProps {
  readonly view: RoundView;
  readonly now: number;
  readonly onTakeLeft: () => void;
  readonly onTakeTimed: () => void;
  readonly onFinish: () => void;
}

export function WrapUp({ view, now, onTakeLeft, onTakeTimed, onFinish }: WrapUpProps) {
  const pending = view.timers.find((timer) => !timer.due && timer.dueAt > now);
  const left = view.lines.some((line) => line.status === 'open' || line.status === 'skipped');
  return (
    <div className="board state-board">
      {pending ? (
        <Tile ring={0} onPress={onTakeTimed} name={`Take ${pending.name} now, it is due in ${timeLeft(pending.dueAt, now)}`}>
          Take {pending.name} now
        </Tile>
      ) : (
        left && (
          <Tile ring={0} onPress={onTakeLeft}>
            Take what is left
          </Tile>
        )
      )}
      <HoldButton label="Finish the round" ring={1} className="tile main" onHeld={onFinish}>
        Finish the round
      </HoldButton>
    </div>
  );
}
