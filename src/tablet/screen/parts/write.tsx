import { useState } from 'react';
import { words } from '../../words.ts';

/** For a keyboard, and for reasons that are no fixed answer. */
export function Write({ onSay }: { readonly onSay: (text: string) => void }) {
  const [text, setText] = useState('');
  return (
    <form
      className="write"
      onSubmit={event => {
        event.preventDefault();
        if (text.trim() !== '') onSay(text);
        setText('');
      }}
    >
      <label className="unseen" htmlFor="write">
        {words.writeLabel}
      </label>
      <input
        id="write"
        value={text}
        placeholder={words.write}
        autoComplete="off"
        autoCapitalize="off"
        enterKeyHint="send"
        onChange={event => setText(event.target.value)}
      />
      <button type="submit">{words.send}</button>
    </form>
  );
}
