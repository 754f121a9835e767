/** One answer target: at least 22 mm high, its word in large type, its full name for a screen reader. */
import type { ReactNode } from 'react';

/** The shape beside the word: an answer that is right, one that is not, one that was not seen. */
export type TileMark = 'right' | 'wrong' | 'unseen';

export interface TileProps {
  readonly onPress: () => void;
  readonly children: ReactNode;
  /** Full name, when the visible words need their context: "62 psi, left front". Starts with the visible words. */
  readonly name?: string;
  readonly mark?: TileMark;
  readonly main?: boolean;
  readonly disabled?: boolean;
  /** Place in the order that a clicker steps through. */
  readonly ring?: number;
  /** What it is to the clicker: from a value or a step that was pressed, the mark goes on to "keep". */
  readonly part?: 'value' | 'step' | 'keep';
  /** May be pressed again at once; everything else rests after a press. */
  readonly quick?: boolean;
  readonly className?: string;
}

export function Tile({
  onPress,
  children,
  name,
  mark,
  main = false,
  disabled = false,
  ring,
  part,
  quick = false,
  className = '',
}: TileProps) {
  return (
    <button
      type="button"
      className={`slab tile ${main ? 'main' : ''} ${className}`}
      aria-label={name}
      // Kept in the tab order, so that the reason why it does nothing yet can be read.
      aria-disabled={disabled || undefined}
      data-ring={disabled ? undefined : ring}
      data-part={part}
      data-quick={quick || undefined}
      onClick={() => {
        if (!disabled) onPress();
      }}
    >
      {mark && <TileShape mark={mark} />}
      <span className="tile-words">{children}</span>
    </button>
  );
}

function TileShape({ mark }: { readonly mark: TileMark }) {
  return (
    <svg viewBox="0 0 32 32" width="34" height="34" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="4.5">
      {mark === 'right' && <circle cx="16" cy="16" r="12" />}
      {mark === 'wrong' && <path d="M16 2 30 16 16 30 2 16ZM9 16h14" />}
      {mark === 'unseen' && <path d="M3 22V10h6M23 10h6v12M13 27h6" />}
    </svg>
  );
}
