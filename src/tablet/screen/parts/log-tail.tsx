import type { LogLine } from '../../../session/view.ts';
import { words } from '../../words/index.ts';

/** The last lines, newest first. */
export function LogTail({ log, count }: { readonly log: readonly LogLine[]; readonly count: number }) {
  const lines = log
    .slice(-count)
    .map((line, index) => ({ ...line, place: log.length - index }))
    .reverse();
  return (
    <section aria-labelledby="log">
      <h2 id="log">{words.log}</h2>
      <ol className="log">
        {lines.map(line => (
          <li key={`${line.place} ${line.time} ${line.text}`}>
            <time>{line.time}</time> <strong>{line.who}</strong> {line.text}
          </li>
        ))}
      </ol>
    </section>
  );
}
