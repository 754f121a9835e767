/** Keeps the screen awake during a round, where the browser can; a refusal never stops anything. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;
  const acquire = async () => {
    if (!wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (!wanted) await lock.release();
    } catch {
      // Low battery, or not allowed here: the round goes on and resumes where it was.
      lock = null;
    }
  };
  // The browser lets go of the lock whenever the page is hidden.
  const onVisible = () => void acquire();
  document.addEventListener('visibilitychange', onVisible);
  void acquire();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', onVisible);
    void lock?.release().catch(() => {});
  };
}
