import { useEffect, useRef, useState } from 'react';
import type { Face } from '../face/face.ts';

/** One stroke of a hand, however often it hits: after another question has come nothing is answered for so long. */
const STROKE_MS = 350;
/** A question takes one answer; where it is asked again in the same words, another after so long. */
const ANSWERED_MS = 1500;

export interface Touch {
  /** False for a moment after another question has come, because nobody can have read it, and after an answer. */
  readonly ready: boolean;
  /** Answers the question that is shown; what belongs to the stroke before is not an answer. */
  say(text: string): void;
  /** Does something else with one stroke. */
  once(deed: () => void): void;
}

/**
 * Touches of a screen that shows the question of this turn. Stop does not come this way: no guard stands before it.
 * @param layout changes when the answers have moved on the screen, as another question does
 */
export function useTouch(face: Face, turn: string, layout = ''): Touch {
  const shown = `${turn}\n${layout}`;
  const [read, setRead] = useState<string | null>(null);
  const [answered, setAnswered] = useState(false);
  const lastMs = useRef(Number.NEGATIVE_INFINITY);
  // biome-ignore lint/correctness/useExhaustiveDependencies: with each question
  useEffect(() => setAnswered(false), [turn]);
  useEffect(() => {
    const timer = setTimeout(() => setRead(shown), STROKE_MS);
    return () => clearTimeout(timer);
  }, [shown]);
  useEffect(() => {
    if (!answered) return;
    const timer = setTimeout(() => setAnswered(false), ANSWERED_MS);
    return () => clearTimeout(timer);
  }, [answered]);
  const ready = read === shown && !answered;
  const once = (deed: () => void) => {
    const nowMs = performance.now();
    if (!ready || nowMs - lastMs.current < STROKE_MS) return;
    lastMs.current = nowMs;
    deed();
  };
  const say = (text: string) =>
    once(() => {
      setAnswered(true);
      face.say(text, 'touch', turn);
    });
  return { ready, once, say };
}
