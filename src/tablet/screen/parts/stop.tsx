import { useEffect, useRef } from 'react';
import { words } from '../../words.ts';

/** A second touch of the same stroke is the same stop. */
const SAME_STROKE_MS = 400;

/** The one control that is always in the same place. It acts when it is touched, not when it is let go. */
export function Stop({ onStop }: { readonly onStop: () => void }) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.repeat) onStop();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [onStop]);
  const lastMs = useRef(Number.NEGATIVE_INFINITY);
  const act = () => {
    if (performance.now() - lastMs.current < SAME_STROKE_MS) return;
    lastMs.current = performance.now();
    onStop();
  };
  return (
    <button type="button" className="stop" onPointerDown={act} onClick={act} aria-describedby="stop-hint">
      {words.stop}
      <span id="stop-hint" className="unseen">
        {words.stopHint}
      </span>
    </button>
  );
}
