/** Right, not right, or not to be seen now. */
import type { StateExpects } from '../../domain/checks/expects.ts';
import type { BoardProps } from './boardProps.ts';
import { atPosition } from './placeWords.ts';
import { Tile } from './Tile.tsx';

export function StateBoard({ expects, position, onAnswer, onSkip }: BoardProps<StateExpects>) {
  const right = label(expects.ok[0] ?? 'right');
  const wrong = label(expects.problem[0] ?? 'a problem');
  return (
    <div className="board state-board">
      <Tile
        ring={0}
        mark="right"
        name={`${right}${atPosition(position)}`}
        onPress={() => onAnswer({ kind: 'state', verdict: 'ok', detail: null })}
      >
        {right}
      </Tile>
      <Tile
        ring={1}
        mark="wrong"
        name={`${wrong}${atPosition(position)}`}
        onPress={() => onAnswer({ kind: 'state', verdict: 'problem', detail: null })}
      >
        {wrong}
      </Tile>
      <Tile ring={2} mark="unseen" name={`Can't see it now${atPosition(position)}`} onPress={onSkip}>
        Can't see it now
      </Tile>
    </div>
  );
}

/** First letter large, as a button wants it. */
export function label(phrase: string): string {
  return phrase.charAt(0).toUpperCase() + phrase.slice(1);
}
