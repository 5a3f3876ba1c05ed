import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Face, FaceState } from '../face/face.ts';

export const useFace = (face: Face): FaceState =>
  useSyncExternalStore(
    watcher => face.watch(watcher),
    () => face.state(),
  );

const TICK_MS = 250;

/** `performance.now()`, a few times a second while it is needed. */
export function useNow(running: boolean): number {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => setNow(performance.now()), TICK_MS);
    return () => clearInterval(timer);
  }, [running]);
  return now;
}
