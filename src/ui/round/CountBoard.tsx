/** How many of a known few: one tile for each number; a long range is stepped through or typed. */
import type { CountExpects } from '../../domain/checks/expects.ts';
import { countWords, enteredCount } from './board.ts';
import type { BoardProps } from './boardProps.ts';
import { DigitPad, UnseenKey } from './DigitPad.tsx';
import { atPosition } from './placeWords.ts';
import { Tile } from './Tile.tsx';

/** More tiles than this do not fit on a phone beside the question. */
const MOST_TILES = 9;

export function hasTiles({ min, max }: CountExpects): boolean {
  return max - min + 1 <= MOST_TILES;
}

export function CountBoard({ expects, position, board, onBoard, onAnswer, onSkip, onMore }: BoardProps<CountExpects>) {
  const numbers = Array.from({ length: expects.max - expects.min + 1 }, (_, index) => expects.min + index);
  const entered = enteredCount(board.typed, expects);
  const keep = (
    <Tile
      main
      part="keep"
      ring={board.typed === '' ? 31 : 0}
      disabled={!entered.ok}
      name={entered.ok ? `Keep ${entered.figure}${atPosition(position)}` : `Keep${atPosition(position)}. ${entered.sentence}`}
      onPress={() => entered.ok && onAnswer(entered.answer)}
    >
      Keep{board.typed === '' ? '' : ` ${board.typed}`}
    </Tile>
  );
  if (!hasTiles(expects)) {
    return (
      <div className="board digits-board">
        <p className="typed-value" aria-live="polite">
          {board.typed === '' ? '—' : board.typed} {expects.noun[1]}
          <span className="board-hint">{entered.ok ? 'not kept yet' : entered.sentence}</span>
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
          {keep}
        </div>
      </div>
    );
  }
  return (
    <div className="board count-board">
      {numbers.map((count, index) => (
        <Tile
          key={count}
          ring={index}
          className={count === 0 || (count === expects.max && expects.max > 1) ? 'number words' : 'number'}
          name={`${countWords(count, expects)}${atPosition(position)}`}
          onPress={() => onAnswer({ kind: 'count', count })}
        >
          {count === 0 ? 'None' : count === expects.max && expects.max > 1 ? `All ${count}` : count}
        </Tile>
      ))}
      <Tile
        ring={30}
        mark="unseen"
        className={`rest-${3 - (numbers.length % 3)}`}
        name={`Can't see it now${atPosition(position)}`}
        onPress={onSkip}
      >
        Can't see it
      </Tile>
      {board.typed !== '' && <div className="wide one">{keep}</div>}
    </div>
  );
}
