import { useCallback, useEffect, useState } from 'react';
import { MAX_FIND, type SessionRow } from '../../../server/protocol/index.ts';
import { words } from '../../words/index.ts';

/** A list is read again so often while somebody may look at it. */
const AGAIN_MS = 10_000;

const timeText = (startedAt: string | null) => startedAt?.slice(0, 16).replace('T', ' ') ?? words.past.noTime;

/** Sessions of the shop, to be searched, each with its report. */
export function PastSessions({
  load,
  onReport,
}: {
  readonly load: (find: string) => Promise<readonly SessionRow[]>;
  readonly onReport: (session: string) => void;
}) {
  const [rows, setRows] = useState<readonly SessionRow[] | null>(null);
  const [sought, setSought] = useState('');
  const [failed, setFailed] = useState(false);
  const look = useCallback(
    (find: string) =>
      void load(find).then(
        found => {
          setRows(found);
          setFailed(false);
        },
        () => setFailed(true),
      ),
    [load],
  );
  useEffect(() => look(sought), [look, sought]);
  // What is being checked, what runs and what comes in change by themselves.
  useEffect(() => {
    const again = setInterval(() => {
      if (!document.hidden) look(sought);
    }, AGAIN_MS);
    return () => clearInterval(again);
  }, [look, sought]);
  return (
    <section className="past" aria-labelledby="past">
      <h2 id="past">{words.past.title}</h2>
      <form
        className="write"
        onSubmit={event => {
          event.preventDefault();
          const find = String(new FormData(event.currentTarget).get('find') ?? '');
          if (find === sought) look(find);
          setSought(find);
        }}
      >
        <label className="unseen" htmlFor="find">
          {words.past.findLabel}
        </label>
        <input
          id="find"
          type="search"
          name="find"
          placeholder={words.past.findHint}
          maxLength={MAX_FIND}
          autoComplete="off"
        />
        <button type="submit">{words.past.find}</button>
      </form>
      <p role="status" className={failed ? 'wrong' : 'quiet'}>
        {failed ? words.past.failed : rows === null ? words.past.looking : words.past.count(rows.length)}
      </p>
      <ul className="records">
        {rows?.map(({ id, vehicle, engine, profile, startedAt, state, uploaded, fork }) => (
          <li key={id}>
            <p>
              <strong>{vehicle ?? id}</strong> {engine ?? profile}, {timeText(startedAt)},{' '}
              {words.past.states[state]}
              {uploaded && `; ${words.past.uploaded}`}
              {fork && `; ${words.past.fork}`}
            </p>
            <button type="button" onClick={() => onReport(id)}>
              {words.supervisor.report}
              <span className="unseen"> {id}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
