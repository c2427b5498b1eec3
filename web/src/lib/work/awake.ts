/** Keeps the screen lit while a page stands at the panel, where the browser can; gives the way to let it sleep again. */
export function keepAwake(cannot: () => void): () => void {
  if (!('wakeLock' in navigator)) {
    cannot();
    return () => {};
  }
  let held: WakeLockSentinel | null = null;
  let gone = false;
  const hold = async () => {
    if (document.visibilityState !== 'visible') return;
    held = await navigator.wakeLock.request('screen').catch(() => null);
    if (gone) void held?.release();
  };
  // The system lets it go whenever the page is out of sight.
  document.addEventListener('visibilitychange', hold);
  void hold();
  return () => {
    gone = true;
    document.removeEventListener('visibilitychange', hold);
    void held?.release();
  };
}
