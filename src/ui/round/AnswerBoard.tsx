/** The answer targets that a check's own declaration asks for. */
import type { Expects } from '../../domain/checks/expects.ts';
import type { PlannedCheck } from '../../domain/plan/plan.ts';
import type { Answer } from '../../domain/round/entry.ts';
import type { Board, BoardAction, Scale } from './board.ts';
import { ChoiceBoard } from './ChoiceBoard.tsx';
import { CountBoard, hasTiles } from './CountBoard.tsx';
import { DateBoard } from './DateBoard.tsx';
import { NumberBoard } from './NumberBoard.tsx';
import { StateBoard } from './StateBoard.tsx';

export interface AnswerBoardProps {
  readonly check: PlannedCheck;
  readonly scale: Scale | null;
  readonly board: Board;
  readonly digits: boolean;
  readonly onDigits: (open: boolean) => void;
  readonly onBoard: (action: BoardAction) => void;
  readonly onAnswer: (answer: Answer) => void;
  readonly onSkip: () => void;
  readonly onMore: () => void;
}

/** Whether a check is answered by typing alone, on a board that leaves no room for anything else. */
export function needsDigits(expects: Expects): boolean {
  return expects.kind === 'date' || (expects.kind === 'count' && !hasTiles(expects));
}

export function AnswerBoard({ check, scale, digits, onDigits, ...common }: AnswerBoardProps) {
  const { expects, position } = check;
  switch (expects.kind) {
    case 'reading':
      return scale === null ? null : (
        <NumberBoard {...common} expects={expects} position={position} scale={scale} digits={digits} onDigits={onDigits} />
      );
    case 'count':
      return <CountBoard {...common} expects={expects} position={position} />;
    case 'state':
      return <StateBoard {...common} expects={expects} position={position} />;
    case 'choice':
      return <ChoiceBoard {...common} expects={expects} position={position} />;
    case 'date':
      return <DateBoard {...common} expects={expects} position={position} />;
  }
}
