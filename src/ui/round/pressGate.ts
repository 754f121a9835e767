/**
 * Keeps wet glass, thick mittens and bouncing clickers from answering twice. Wired into the capture phase of the round's
 * root, so that it stands before every button:
 *
 * - after a press, and after the screen has changed, nothing counts for {@link REST_MS}
 * - a touch that began on another check, or with a second finger down, does not count
 */
import { type RefObject, useEffect, useRef } from 'react';

export const REST_MS = 300;

export interface PressGate {
  /** Whether a press may count now; when it may, the rest begins. */
  readonly pass: () => boolean;
  readonly pointerDown: (pointerId: number, isPrimary: boolean) => void;
  readonly pointerUp: (pointerId: number) => void;
  /** How the last press was made. */
  readonly via: RefObject<'button' | 'key'>;
}

/** @param screen changes whenever another check, phase or panel is shown */
export function usePressGate(screen: string): PressGate {
  const resting = useRef<ReturnType<typeof setTimeout> | null>(null);
  const down = useRef({ pointers: new Set<number>(), several: false, screen: null as string | null });
  const shown = useRef(screen);
  const via = useRef<'button' | 'key'>('button');

  const rest = () => {
    if (resting.current !== null) clearTimeout(resting.current);
    resting.current = setTimeout(() => {
      resting.current = null;
    }, REST_MS);
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: the rest begins anew with each screen, whatever it holds
  useEffect(() => {
    shown.current = screen;
    rest();
    return () => {
      if (resting.current !== null) clearTimeout(resting.current);
      resting.current = null;
    };
  }, [screen]);

  return {
    via,
    pointerDown(pointerId, isPrimary) {
      const touch = down.current;
      // A first finger: whatever was thought to be down has gone without telling us.
      if (isPrimary) touch.pointers.clear();
      if (touch.pointers.size === 0) {
        touch.several = false;
        touch.screen = shown.current;
      }
      touch.pointers.add(pointerId);
      if (touch.pointers.size > 1) touch.several = true;
      via.current = 'button';
    },
    pointerUp(pointerId) {
      down.current.pointers.delete(pointerId);
    },
    pass() {
      const touch = down.current;
      const byTouch = via.current === 'button' && touch.screen !== null;
      if (byTouch && (touch.several || touch.screen !== shown.current)) return false;
      if (resting.current !== null) return false;
      rest();
      return true;
    },
  };
}
