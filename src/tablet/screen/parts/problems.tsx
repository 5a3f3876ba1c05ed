import { inOwnWords, words } from '../../words/index.ts';

/** What does not work, newest first. */
export function Problems({ problems }: { readonly problems: readonly string[] }) {
  return (
    <div role="alert" className="problems">
      {[...problems].reverse().map(problem => (
        <p key={problem}>
          <strong>{words.problem}:</strong> {inOwnWords(problem)}
        </p>
      ))}
    </div>
  );
}
