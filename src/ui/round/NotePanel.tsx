/** A note in one's own words; by voice when a note is being dictated, by keyboard here. */
import { useState } from 'react';
import { Tile } from './Tile.tsx';

export interface NotePanelProps {
  readonly onNote: (text: string, finding: boolean) => void;
  readonly onClose: () => void;
  /** Words heard so far, while it is dictated. */
  readonly partial: string | null;
  /** Null where no picture can be kept. */
  readonly onPicture: (() => void) | null;
}

export function NotePanel({ onNote, onClose, partial, onPicture }: NotePanelProps) {
  const [text, setText] = useState('');
  const done = (finding: boolean) => {
    const words = text.trim();
    if (words !== '') onNote(words, finding);
  };
  return (
    <div className="board note-board">
      <label className="note-field wide">
        <span>What should be remembered?</span>
        <textarea rows={3} value={text} onChange={(event) => setText(event.target.value)} placeholder={partial ?? undefined} />
      </label>
      <Tile ring={0} mark="wrong" disabled={text.trim() === ''} onPress={() => done(true)}>
        To be mended
      </Tile>
      <Tile ring={1} disabled={text.trim() === ''} onPress={() => done(false)}>
        Just a note
      </Tile>
      {onPicture && (
        <Tile ring={3} onPress={onPicture}>
          Take a picture
        </Tile>
      )}
      <Tile ring={2} onPress={onClose} className={onPicture ? '' : 'wide'}>
        No note
      </Tile>
    </div>
  );
}
