import { useEffect, useRef, useState } from 'react';
import { saysStop } from '../../face/says-stop.ts';
import { words } from '../../words/index.ts';
import type { Touch } from '../use-touch.ts';

/**
 * For a keyboard, and for reasons that are no fixed answer. What was begun for one question is sent for no other: it stays
 * in sight until somebody says that it is for the one that is shown, or clears it. A stop is sent whatever is asked.
 */
export function Write({
  turn,
  touch,
  onSay,
}: {
  /** Of the question that is shown. */
  readonly turn: string;
  readonly touch: Touch;
  readonly onSay: (text: string, turn: string) => void;
}) {
  const field = useRef<HTMLInputElement>(null);
  /** The question that was shown at the first stroke, empty where nobody can have read it yet; null with nothing written. */
  const [writtenFor, showWrittenFor] = useState<string | null>(null);
  /** The same, without waiting for the screen: what is written and sent in one stroke is both. */
  const bound = useRef<string | null>(null);
  const setWrittenFor = (question: string | null) => {
    bound.current = question;
    showWrittenFor(question);
  };
  const isLate = writtenFor !== null && writtenFor !== turn;
  const clear = () => {
    if (field.current) field.current.value = '';
    setWrittenFor(null);
    field.current?.focus();
  };
  useEffect(() => {
    // What a browser puts back into the field by itself was written for nothing that is shown now.
    if (!field.current?.value) return;
    bound.current = '';
    showWrittenFor('');
  }, []);
  return (
    <form
      className="write"
      onSubmit={event => {
        event.preventDefault();
        const text = field.current?.value ?? '';
        if (text.trim() === '') return;
        if (!saysStop(text) && (bound.current !== turn || !touch.ready)) return;
        onSay(text, turn);
        clear();
      }}
    >
      <label className="unseen" htmlFor="write">
        {words.writeLabel}
      </label>
      <input
        ref={field}
        id="write"
        name="text"
        placeholder={words.write}
        autoComplete="off"
        autoCapitalize="off"
        enterKeyHint="send"
        aria-describedby={isLate ? 'written-before' : undefined}
        onInput={({ currentTarget: { value } }) =>
          setWrittenFor(value === '' ? null : (bound.current ?? (touch.ready ? turn : '')))
        }
      />
      <button type="submit" aria-disabled={!touch.ready}>
        {words.send}
      </button>
      {isLate && (
        <p id="written-before" className="written-before" role="alert">
          <span>{words.writtenBefore.sentence}</span>{' '}
          <button
            type="button"
            aria-disabled={!touch.ready}
            onClick={() => touch.once(() => setWrittenFor(turn))}
          >
            {words.writtenBefore.forThis}
          </button>{' '}
          <button type="button" onClick={clear}>
            {words.writtenBefore.clear}
          </button>
        </p>
      )}
    </form>
  );
}
