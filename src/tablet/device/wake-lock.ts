/** Keeps the screen on while a session runs; asked for again whenever the page comes back into sight. */
export function keepAwake(): () => void {
  if (!('wakeLock' in navigator)) return () => {};
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const ask = async () => {
    if (document.visibilityState !== 'visible' || over) return;
    // A device that saves its battery may refuse.
    lock = await navigator.wakeLock.request('screen').catch(() => null);
    if (over) await lock?.release();
  };
  const onSight = () => void ask();
  document.addEventListener('visibilitychange', onSight);
  onSight();
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', onSight);
    void lock?.release();
  };
}
