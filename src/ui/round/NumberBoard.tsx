/**
 * A measured value with mittens on: it starts where the value is expected, steps are a small and a big one, and
 * nothing can be kept before the value was tapped, changed or typed.
 */
import type { ReadingExpects } from '../../domain/checks/expects.ts';
import { withSpokenUnit, withUnit } from '../parts/shownUnit.ts';
import { enteredReading, figureOf, type Scale } from './board.ts';
import type { BoardProps } from './boardProps.ts';
import { DigitPad } from './DigitPad.tsx';
import { atPosition } from './placeWords.ts';
import { Tile } from './Tile.tsx';

export interface NumberBoardProps extends BoardProps<ReadingExpects> {
  readonly scale: Scale;
  readonly digits: boolean;
  readonly onDigits: (open: boolean) => void;
}

export function NumberBoard(props: NumberBoardProps) {
  const { scale, board, onBoard, onAnswer, onSkip, position, digits, onDigits } = props;
  const entered = enteredReading(board, scale);
  const figure = board.typed === '' ? figureOf(board.value, scale) : board.typed;
  const shown = withUnit(figure, scale.unit);
  const spoken = withSpokenUnit(Number(figure) || 0, figure, scale.unit);
  const started = board.touched || board.typed !== '';
  const keep = (
    <Tile
      main
      part="keep"
      ring={1}
      disabled={!entered.ok}
      name={entered.ok ? `Keep ${spoken}${atPosition(position)}` : `Keep${atPosition(position)}. ${entered.sentence}`}
      onPress={() => entered.ok && onAnswer(entered.answer)}
    >
      Keep
    </Tile>
  );
  const unseen = (
    <Tile ring={8} name={`Can't see it now${atPosition(position)}`} mark="unseen" onPress={onSkip} className="unseen-tile">
      Can't see it
    </Tile>
  );
  if (digits) {
    return (
      <div className="board digits-board">
        <p className="typed-value" aria-live="polite">
          {started ? shown : withUnit('—', scale.unit)}
          <span className="board-hint">
            {entered.ok || board.typed === '' ? 'Type what you read, then keep it.' : entered.sentence}
          </span>
        </p>
        <DigitPad
          point={scale.decimals > 0}
          minus={scale.min < 0}
          onDigit={(digit) => onBoard({ type: 'digit', digit })}
          onErase={() => onBoard({ type: 'erase' })}
        />
        <div className="one-and-two">
          <Tile ring={9} onPress={() => onDigits(false)}>
            Steps
          </Tile>
          {keep}
        </div>
      </div>
    );
  }
  const stepTile = (by: 1 | -1 | 'big' | '-big', ring: number) => {
    const up = by === 1 || by === 'big';
    const size = String(by === 'big' || by === '-big' ? scale.big : scale.small);
    return (
      <Tile
        quick
        part="step"
        ring={ring}
        name={`${up ? 'Plus' : 'Minus'} ${withSpokenUnit(Number(size), size, scale.unit)}`}
        onPress={() => onBoard({ type: 'step', by })}
        className="step"
      >
        {up ? '+' : '−'}
        {size}
      </Tile>
    );
  };
  return (
    <div className="board number-board">
      {stepTile('-big', 6)}
      <Tile
        ring={started ? 9 : 0}
        part="value"
        quick
        name={`${shown} ${started ? 'not kept yet' : 'tap if it is this'}${atPosition(position)}`}
        onPress={() => onBoard({ type: 'touch' })}
        className={`value ${started ? 'started' : ''}`}
      >
        <span className={`figure ${shown.length > 6 ? 'long' : ''}`} aria-live="polite">
          {shown}
        </span>{' '}
        <span className="board-hint">{started ? 'not kept yet' : 'tap if it is this'}</span>
      </Tile>
      {stepTile('big', 5)}
      {stepTile(-1, 4)}
      {keep}
      {stepTile(1, 3)}
      <Tile ring={7} onPress={() => onDigits(true)}>
        Digits
      </Tile>
      {unseen}
      {started && !entered.ok && <p className="board-hint wide">{entered.sentence}</p>}
    </div>
  );
}
