/** What every answer board gets and gives. */
import type { Position } from '../../domain/checks/expects.ts';
import type { Answer } from '../../domain/round/entry.ts';
import type { Board, BoardAction } from './board.ts';

export interface BoardProps<E> {
  readonly expects: E;
  readonly position: Position | null;
  readonly board: Board;
  readonly onBoard: (action: BoardAction) => void;
  readonly onAnswer: (answer: Answer) => void;
  /** "Can't see it now": asks for the reason. */
  readonly onSkip: () => void;
  /** The other commands, on boards that leave no room for the tools. */
  readonly onMore: () => void;
}
