/** One tab at a time runs a round. The lock dies with the tab, so there are no stale ones. */
import type { RoundLock } from './record.ts';

/** The part of `navigator.locks` that is needed; null where the browser has none. */
export type LocksPort = Pick<LockManager, 'request'> | null;

export type LockRound = (id: string) => Promise<RoundLock | null>;

/**
 * Web Locks (W3C), taken with `ifAvailable`. Where they are missing the lock holds within this page only; two tabs are
 * then kept apart by the record itself, which refuses the second entry for one place in a round.
 */
export function createRoundLocks(locks: LocksPort, scope: string): LockRound {
  const heldHere = new Set<string>();
  return async (id) => {
    if (heldHere.has(id)) return null;
    heldHere.add(id);
    const letGo = locks === null ? () => undefined : await requestLock(locks, `${scope}/round/${id}`);
    if (letGo === null) {
      heldHere.delete(id);
      return null;
    }
    let released = false;
    return {
      release: () => {
        if (released) return;
        released = true;
        heldHere.delete(id);
        letGo();
      },
    };
  };
}

/** @returns how to let go; null when somebody else holds it. A browser that refuses to lock counts as having none. */
function requestLock(locks: NonNullable<LocksPort>, name: string): Promise<(() => void) | null> {
  return new Promise((resolve) => {
    const held = locks.request(name, { ifAvailable: true }, (lock) => {
      if (lock === null) {
        resolve(null);
        return;
      }
      return new Promise<void>((letGo) => resolve(letGo));
    });
    held.catch(() => resolve(() => undefined));
  });
}
