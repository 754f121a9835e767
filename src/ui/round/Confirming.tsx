/** "Thirty-eight, left front. Is that right?" The answers that were possible, as buttons; the first is the one asked about. */

import type { Answer } from '../../domain/round/entry.ts';
import type { RoundView } from '../../domain/round/view.ts';
import { label } from './StateBoard.tsx';
import { Tile } from './Tile.tsx';

export interface ConfirmingProps {
  readonly offers: RoundView['offers'];
  readonly onYes: () => void;
  readonly onNo: () => void;
  readonly onAnswer: (answer: Answer) => void;
}

export function Confirming({ offers, onYes, onNo, onAnswer }: ConfirmingProps) {
  const [first, ...others] = offers;
  return (
    <div className="board state-board">
      {first && (
        <Tile ring={0} mark="right" name={`Yes, ${first.label}`} onPress={onYes}>
          Yes, {first.label}
        </Tile>
      )}
      {others.map(({ label: words, answer }, index) =>
        answer === null ? null : (
          <Tile key={words} ring={index + 1} onPress={() => onAnswer(answer)}>
            {label(words)}
          </Tile>
        ),
      )}
      <Tile ring={offers.length} mark="wrong" onPress={onNo}>
        {others.length > 0 ? 'None of these' : 'No'}
      </Tile>
    </div>
  );
}
