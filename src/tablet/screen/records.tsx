import type { KeptRecord } from '../record/data-base.ts';
import { words } from '../words/index.ts';

/** What this device keeps: sessions that broke off can be gone on with, all can be saved as a file. */
export function Records({
  records,
  onResume,
  onSave,
}: {
  readonly records: readonly KeptRecord[];
  readonly onResume: (id: string) => void;
  readonly onSave: (id: string) => void;
}) {
  if (records.length === 0) return null;
  const newest = [...records].sort((a, b) => b.startedAt.localeCompare(a.startedAt));
  return (
    <section className="records" aria-labelledby="records">
      <h2 id="records">{words.start.records}</h2>
      <ul>
        {newest.map(({ id, vehicle, profile, startedAt, state, sent, copyOf }) => (
          <li key={id}>
            <p>
              <strong>{vehicle}</strong> {profile}, {startedAt.slice(0, 16).replace('T', ' ')},{' '}
              {words.start.states[state]}
              {sent && `; ${words.start.sent[sent]}`}
              {copyOf && `; ${words.start.copyOf(copyOf)}`}
            </p>
            {state === 'open' && (
              <button type="button" className="first" onClick={() => onResume(id)}>
                {copyOf ? words.away.goOn : words.start.resume}
                <span className="unseen"> {id}</span>
              </button>
            )}
            <button type="button" onClick={() => onSave(id)}>
              {words.start.save}
              <span className="unseen"> {id}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
