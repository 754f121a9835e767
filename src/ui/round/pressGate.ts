/**
 * Keeps wet glass, thick mittens and bouncing clickers from answering twice. Wired into the capture phase of the round's
 * root, so that it stands before every button:
 *
 * - after a press that counted, and after another check has come up, nothing counts for {@link REST_MS}
 * - after a panel has opened, no touch counts for as long; a key may follow at once, it cannot have been meant for what was
 *   under the finger
 * - a touch that began on another screen, or with a second finger down, does not count
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

/**
 * @param place changes whenever another check or phase is shown
 * @param panel what lies over it
 */
export function usePressGate(place: string, panel: string): PressGate {
  const screen = `${place}/${panel}`;
  const rest = useRest();
  const touchRest = useRest();
  const down = useRef({ pointers: new Set<number>(), several: false, screen: null as string | null });
  const shown = useRef(screen);
  const via = useRef<'button' | 'key'>('button');

  // biome-ignore lint/correctness/useExhaustiveDependencies: the rest begins anew with each check, whatever it holds
  useEffect(() => rest.begin(), [place]);
  useEffect(() => {
    shown.current = screen;
    touchRest.begin();
  }, [screen, touchRest.begin]);

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
      if (via.current === 'button') {
        if (touchRest.isOn()) return false;
        if (touch.screen !== null && (touch.several || touch.screen !== shown.current)) return false;
      }
      if (rest.isOn()) return false;
      rest.begin();
      return true;
    },
  };
}

interface Rest {
  readonly begin: () => void;
  readonly isOn: () => boolean;
}

function useRest(): Rest {
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const rest = useRef<Rest>({
    begin() {
      if (timer.current !== null) clearTimeout(timer.current);
      timer.current = setTimeout(() => {
        timer.current = null;
      }, REST_MS);
    },
    isOn: () => timer.current !== null,
  });
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
      timer.current = null;
    },
    [],
  );
  return rest.current;
}
