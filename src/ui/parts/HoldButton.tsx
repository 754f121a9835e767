/**
 * A button for what must not happen by accident. With a finger or a mitten it is held for {@link HOLD_MS} while a bar
 * fills; with a key, a clicker or a screen reader, which cannot hold, it is pressed twice.
 */
import { type ReactNode, useEffect, useRef, useState } from 'react';

export const HOLD_MS = 900;
/** A first press that is not followed up is forgotten. */
const ARMED_MS = 6000;

export interface HoldButtonProps {
  /** Names what it does: "Stop the round". */
  readonly label: string;
  readonly onHeld: () => void;
  readonly children?: ReactNode;
  readonly className?: string;
  /** Place in the order that a clicker steps through. */
  readonly ring?: number;
}

export function HoldButton({ label, onHeld, children, className = '', ring }: HoldButtonProps) {
  const [holding, setHolding] = useState(false);
  const [armed, setArmed] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  /** The click that a pointer sends after it lets go is not a press of a key. */
  const byPointer = useRef(false);

  useEffect(() => () => clearTimeout(timer.current), []);

  const release = () => {
    if (!holding) return;
    clearTimeout(timer.current);
    setHolding(false);
  };

  return (
    <button
      type="button"
      className={`slab hold-button ${className} ${holding ? 'holding' : ''} ${armed ? 'armed' : ''}`}
      data-ring={ring}
      onPointerDown={(event) => {
        byPointer.current = true;
        if (event.button !== 0 || !event.isPrimary) return;
        setHolding(true);
        clearTimeout(timer.current);
        timer.current = setTimeout(() => {
          setHolding(false);
          onHeld();
        }, HOLD_MS);
      }}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={() => {
        byPointer.current = false;
      }}
      onBlur={() => setArmed(false)}
      onClick={(event) => {
        if (byPointer.current && event.detail > 0) return;
        byPointer.current = false;
        clearTimeout(timer.current);
        if (armed) {
          setArmed(false);
          onHeld();
          return;
        }
        setArmed(true);
        timer.current = setTimeout(() => setArmed(false), ARMED_MS);
      }}
    >
      <span className="hold-bar" aria-hidden="true" />
      <span className="hold-text">
        {children ?? label}
        <span className="hold-hint" aria-live="polite">
          {armed ? 'Press again' : holding ? 'Keep holding' : 'Hold'}
        </span>
      </span>
    </button>
  );
}
