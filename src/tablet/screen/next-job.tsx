import { useEffect, useState } from 'react';
import { usualLanguage } from '../../../prompts/index.ts';
import type { SessionRow } from '../../server/protocol/index.ts';
import { demoJob } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import type { BayDeeds, BayPart } from '../face/face.ts';
import { loadChoice, loadedProfiles } from '../local/choice.ts';
import { laptopNameOf } from '../local/demo-engines.ts';
import { inOwnWords, words } from '../words/index.ts';
import { JobForm, useChoice } from './job-form.tsx';

/** The engine that was chosen on this device, by the name that the laptop has for it. */
function knownAs(chosen: string, engines: readonly string[]): string {
  const name = laptopNameOf(chosen);
  return engines.includes(name) ? name : chosen;
}

const LOOK_AGAIN_MS = 2_000;

/** Sessions of this bay that can be gone on with. */
function BrokenOff({ deeds }: { readonly deeds: BayDeeds }) {
  const [open, setOpen] = useState(false);
  const [rows, setRows] = useState<readonly SessionRow[] | 'looking' | 'failed'>('looking');
  // The laptop's list has a session that was just set aside a moment later: asked for as long as somebody looks.
  useEffect(() => {
    if (!open) return;
    let gone = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const show = (found: typeof rows) => {
      if (gone) return;
      setRows(found);
      timer = setTimeout(look, LOOK_AGAIN_MS);
    };
    const look = () =>
      void deeds.sessions('').then(
        found => {
          const brokenOff = found.filter(({ state }) => state === 'brokenOff');
          // One that is still being checked may be one of them.
          const isSure = brokenOff.length > 0 || found.every(({ state }) => state !== 'unchecked');
          show(isSure ? brokenOff : 'looking');
        },
        () => show('failed'),
      );
    look();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [deeds, open]);
  const told = rows === 'looking' ? words.past.looking : rows === 'failed' ? words.sending.noAnswer : '';
  return (
    <details className="settings" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>{words.nextJob.brokenOff}</summary>
      <p className="quiet" role="status">
        {told || (rows.length === 0 ? words.nextJob.noneOpen : '')}
      </p>
      <ul className="records">
        {(typeof rows === 'string' ? [] : rows).map(({ id, vehicle, engine, startedAt, fork }) => (
          <li key={id}>
            <p>
              <strong>{vehicle ?? id}</strong> {engine}, {startedAt?.slice(0, 16).replace('T', ' ')}
              {fork && `; ${words.past.fork}`}
            </p>
            <button type="button" onClick={() => deeds.resume(id)}>
              {words.nextJob.goOn}
              <span className="unseen"> {id}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Begins the next session of this bay, or goes on with one that is not over; from the device that leads. */
export function NextJob({ bay, deeds }: { readonly bay: BayPart; readonly deeds: BayDeeds }) {
  const engines = [...bay.engines, ...loadedProfiles().map(({ name }) => name)];
  const kept = loadChoice();
  const usual = bay.usual ?? { job: demoJob, language: usualLanguage };
  const [choice, setChoice] = useChoice(
    {
      job: kept?.job ?? usual.job,
      language: kept?.language ?? usual.language,
      profile: knownAs(kept?.profile ?? '', engines),
    },
    [...new Set(engines)],
  );
  const [wrong, setWrong] = useState<string | null>(null);
  const begin = () => {
    try {
      void deeds.begin({ ...choice, job: parseJobCard(choice.job, words.start.card) });
    } catch (cause) {
      if (!(cause instanceof JobCardError)) throw cause;
      setWrong(words.start.empty);
    }
  };
  return (
    <section aria-label={words.nextJob.title}>
      <button type="button" className="choice first" onClick={begin}>
        {words.start.title}
      </button>
      <div role="alert">{wrong && <p className="wrong">{inOwnWords(wrong)}</p>}</div>
      <JobForm engines={[...new Set(engines)]} choice={choice} onChange={setChoice} onWrong={setWrong} />
      <BrokenOff deeds={deeds} />
    </section>
  );
}
