/** The other commands, each one also a spoken word and a key. */
import type { RoundRequest, RoundView } from '../../domain/round/view.ts';
import { HoldButton } from '../parts/HoldButton.tsx';
import type { Panel } from './keys.ts';
import { Tile } from './Tile.tsx';

type CommandName = Extract<RoundRequest, { type: 'command' }>['command'];

export interface MorePanelProps {
  readonly ears: RoundView['ears'];
  readonly onCommand: (command: CommandName) => void;
  readonly onListen: (on: boolean) => void;
  readonly onOpen: (panel: Panel) => void;
  /** Null where no picture can be kept. */
  readonly onPicture: (() => void) | null;
  /** Back and say again too, where the board left no room for them. */
  readonly isWhole: boolean;
}

export function MorePanel({ ears, onCommand, onListen, onOpen, onPicture, isWhole }: MorePanelProps) {
  const off = ears.state === 'off' || ears.state === 'denied' || ears.state === 'unavailable';
  return (
    <div className="board more-board">
      <Tile ring={0} onPress={() => onCommand('wait')}>
        Hold on
      </Tile>
      <Tile ring={1} onPress={() => onCommand('undo')}>
        Undo last
      </Tile>
      {isWhole && (
        <>
          <Tile ring={13} onPress={() => onCommand('back')}>
            Back one
          </Tile>
          <Tile ring={14} onPress={() => onCommand('repeat')}>
            Say again
          </Tile>
        </>
      )}
      <Tile ring={2} onPress={() => onOpen('list')}>
        All checks
      </Tile>
      <Tile ring={3} onPress={() => onCommand('why')}>
        Why?
      </Tile>
      <Tile ring={4} onPress={() => onCommand('help')}>
        Help
      </Tile>
      <Tile ring={5} onPress={() => onOpen('note')}>
        Make a note
      </Tile>
      {onPicture && (
        <Tile ring={15} onPress={onPicture}>
          Take a picture
        </Tile>
      )}
      <Tile ring={6} onPress={() => onOpen('skip')}>
        Skip it
      </Tile>
      <Tile ring={7} onPress={() => onCommand('where')}>
        Where am I?
      </Tile>
      <Tile ring={8} onPress={() => onListen(off)}>
        {off ? 'Mic on' : 'Mic off'}
      </Tile>
      <Tile ring={9} quick onPress={() => onCommand('quieter')}>
        Quieter
      </Tile>
      <Tile ring={10} quick onPress={() => onCommand('louder')}>
        Louder
      </Tile>
      <HoldButton label="Stop the round" ring={12} className="tile" onHeld={() => onCommand('stop')}>
        Stop round
      </HoldButton>
      <Tile ring={11} onPress={() => onOpen(null)} main>
        Close
      </Tile>
    </div>
  );
}
