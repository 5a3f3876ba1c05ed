import { useEffect, useRef, useState } from 'react';
import type { Face } from '../face/face.ts';

/** One stroke of a hand, however often it hits: after another question has come nothing is answered for so long. */
const STROKE_MS = 350;

export interface Touch {
  /** False for a moment after another question has come: nobody can have read it. */
  readonly ready: boolean;
  /** Answers the question that is shown; what belongs to the stroke before is not an answer. */
  say(text: string): void;
  /** Does something else with one stroke. */
  once(deed: () => void): void;
}

/** Touches of a screen that shows the question of this turn. */
export function useTouch(face: Face, turn: string): Touch {
  const [read, setRead] = useState<string | null>(null);
  const lastMs = useRef(Number.NEGATIVE_INFINITY);
  useEffect(() => {
    const timer = setTimeout(() => setRead(turn), STROKE_MS);
    return () => clearTimeout(timer);
  }, [turn]);
  const ready = read === turn;
  const once = (deed: () => void) => {
    const nowMs = performance.now();
    if (!ready || nowMs - lastMs.current < STROKE_MS) return;
    lastMs.current = nowMs;
    deed();
  };
  return { ready, once, say: text => once(() => face.say(text, 'touch', turn)) };
}
