import { inOwnWords, words } from '../../words/index.ts';

/** What does not work, newest first. */
export function Problems({
  problems,
  onRead,
}: {
  readonly problems: readonly string[];
  /** They have to be read before anything is answered; called once somebody has. */
  readonly onRead?: () => void;
}) {
  return (
    <div role="alert" className="problems">
      {[...problems].reverse().map(problem => (
        <p key={problem}>
          <strong>{words.problem}:</strong> {inOwnWords(problem)}
        </p>
      ))}
      {onRead && problems.length > 0 && (
        <button type="button" onClick={onRead}>
          {words.haveRead}
        </button>
      )}
    </div>
  );
}
