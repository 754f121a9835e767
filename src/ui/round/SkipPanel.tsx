/** Why a check cannot be made now. A reason keeps the skip honest; without one the button has to be held. */
import { SKIP_REASONS } from '../../domain/round/skipReasons.ts';
import { HoldButton } from '../parts/HoldButton.tsx';
import { label } from './StateBoard.tsx';
import { Tile } from './Tile.tsx';

export interface SkipPanelProps {
  readonly onSkip: (reason: string) => void;
  readonly onClose: () => void;
}

export const NO_REASON = 'no reason given';

export function SkipPanel({ onSkip, onClose }: SkipPanelProps) {
  return (
    <div className="board skip-board two-wide">
      {SKIP_REASONS.options.map((option, index) => (
        <Tile key={option.id} ring={index} mark="unseen" name={`Skip: ${option.label}`} onPress={() => onSkip(option.label)}>
          {label(option.label)}
        </Tile>
      ))}
      <HoldButton label="Skip without a reason" ring={11} className="tile" onHeld={() => onSkip(NO_REASON)}>
        No reason
      </HoldButton>
      <Tile ring={10} onPress={onClose}>
        Don't skip
      </Tile>
    </div>
  );
}
