/** A date as it is stamped or printed, typed on the digit board. */
import type { DateExpects } from '../../domain/checks/expects.ts';
import { dateFigure, enteredDate } from './board.ts';
import type { BoardProps } from './boardProps.ts';
import { DigitPad, UnseenKey } from './DigitPad.tsx';
import { atPosition } from './placeWords.ts';
import { Tile } from './Tile.tsx';

export function DateBoard({ expects, position, board, onBoard, onAnswer, onSkip, onMore }: BoardProps<DateExpects>) {
  const entered = enteredDate(board.typed, expects);
  return (
    <div className="board digits-board">
      <p className="typed-value" aria-live="polite">
        {dateFigure(board.typed, expects)}
        <span className="board-hint">{entered.ok ? entered.figure : entered.sentence}</span>
      </p>
      <DigitPad
        onDigit={(digit) => onBoard({ type: 'digit', digit })}
        onErase={() => onBoard({ type: 'erase' })}
        corner={<UnseenKey name={`Can't see it now${atPosition(position)}`} onPress={onSkip} />}
      />
      <div className="one-and-two">
        <Tile ring={62} onPress={onMore}>
          More
        </Tile>
        <Tile
          main
          part="keep"
          ring={entered.ok ? 0 : 31}
          disabled={!entered.ok}
          name={entered.ok ? `Keep ${entered.figure}${atPosition(position)}` : `Keep${atPosition(position)}. ${entered.sentence}`}
          onPress={() => entered.ok && onAnswer(entered.answer)}
        >
          Keep
        </Tile>
      </div>
    </div>
  );
}
