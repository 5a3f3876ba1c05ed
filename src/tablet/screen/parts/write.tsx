import { words } from '../../words/index.ts';

/** For a keyboard, and for reasons that are no fixed answer. */
export function Write({ onSay }: { readonly onSay: (text: string) => void }) {
  return (
    <form
      className="write"
      onSubmit={event => {
        event.preventDefault();
        const text = String(new FormData(event.currentTarget).get('text') ?? '');
        if (text.trim() !== '') onSay(text);
        event.currentTarget.reset();
      }}
    >
      <label className="unseen" htmlFor="write">
        {words.writeLabel}
      </label>
      <input
        id="write"
        name="text"
        placeholder={words.write}
        autoComplete="off"
        autoCapitalize="off"
        enterKeyHint="send"
      />
      <button type="submit">{words.send}</button>
    </form>
  );
}
