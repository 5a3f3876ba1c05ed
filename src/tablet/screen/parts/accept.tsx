import { useState } from 'react';
import { valueName } from '../../../interview/words.ts';
import { acceptableNames, accepting } from '../../../profile/accepting.ts';
import { unfitFor } from '../../../profile/provenance.ts';
import type { Profile } from '../../../profile/schema.ts';
import { inOwnWords, ownLanguage, words } from '../../words/index.ts';

/**
 * What keeps an engine from a real first fire: what has to be read or measured, and what the supervisor may accept as
 * assumed, by name; nothing where nothing does.
 */
export function Accept({
  profile,
  onAccept,
}: {
  readonly profile: Profile;
  readonly onAccept: (accepted: Profile) => void;
}) {
  const [supervisor, setSupervisor] = useState('');
  const open = unfitFor(profile);
  const nameOf = (field: string) => valueName(field, ownLanguage());
  const name = supervisor.trim();
  const toRead = open.flatMap(unfit => (unfit.kind === 'neverAssumed' ? [nameOf(unfit.field)] : []));
  const toAccept = open.flatMap(unfit => (unfit.kind === 'notAccepted' ? [unfit] : []));
  return (
    <>
      {toRead.length > 0 && (
        <p className="wrong">
          {words.newEngine.toRead} {toRead.join(', ')}
        </p>
      )}
      {toAccept.length > 0 && (
        <div className="card">
          <label>
            {words.newEngine.supervisor}
            <input
              value={supervisor}
              maxLength={80}
              autoComplete="off"
              onChange={event => setSupervisor(event.target.value)}
            />
          </label>
          {toAccept.map(({ what, fields }) => (
            <button
              key={what}
              type="button"
              disabled={name === ''}
              onClick={() => onAccept(accepting(profile, what, name))}
            >
              {words.newEngine.accept} {inOwnWords(acceptableNames[what])}: {fields.map(nameOf).join(', ')}
            </button>
          ))}
        </div>
      )}
    </>
  );
}
