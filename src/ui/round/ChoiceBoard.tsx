/** One of a few named conditions. */
import type { ChoiceExpects } from '../../domain/checks/expects.ts';
import type { BoardProps } from './boardProps.ts';
import { atPosition } from './placeWords.ts';
import { label } from './StateBoard.tsx';
import { Tile } from './Tile.tsx';

export function ChoiceBoard({ expects, position, onAnswer, onSkip }: BoardProps<ChoiceExpects>) {
  return (
    <div className={`board choice-board ${expects.options.length > 3 ? 'two-wide' : ''}`}>
      {expects.options.map((option, index) => (
        <Tile
          key={option.id}
          ring={index}
          mark={option.verdict === 'ok' ? 'right' : 'wrong'}
          name={`${label(option.label)}${atPosition(position)}`}
          onPress={() => onAnswer({ kind: 'choice', option: option.id, detail: null })}
        >
          {label(option.label)}
        </Tile>
      ))}
      <Tile
        ring={expects.options.length}
        mark="unseen"
        name={`Can't see it now${atPosition(position)}`}
        onPress={onSkip}
        className="wide"
      >
        Can't see it now
      </Tile>
    </div>
  );
}
