import { useEffect, useRef } from 'react';
import { words } from '../../words/index.ts';

/** A second touch of the same stroke is the same stop. */
const SAME_STROKE_MS = 400;

const isTextField = (target: EventTarget | null) =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;

/** The one control that is always in the same place. It acts when it is touched, not when it is let go. */
export function Stop({
  onStop,
  standing,
  off,
}: {
  readonly onStop: () => void;
  /** How the engine is switched off, which this does not do. */
  readonly off: string;
  /** The engine is confirmed to stand: Escape in a text field only leaves that. */
  readonly standing: boolean;
}) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.repeat && !(standing && isTextField(event.target))) onStop();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [onStop, standing]);
  const lastMs = useRef(Number.NEGATIVE_INFINITY);
  const act = () => {
    if (performance.now() - lastMs.current < SAME_STROKE_MS) return;
    lastMs.current = performance.now();
    onStop();
  };
  return (
    <button type="button" className="stop" onPointerDown={act} onClick={act} aria-describedby="stop-hint">
      {words.stop}
      <small aria-hidden="true">{words.stopShort(off)}</small>
      <span id="stop-hint" className="unseen">
        {words.stopHint(off)}
      </span>
    </button>
  );
}
