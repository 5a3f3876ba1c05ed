import { useState } from 'react';
import { fitForFirstFire, ProfileError } from '../../profile/parse.ts';
import { demoJob, inventedOn } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { type Choice, engineAccepted, loadChoice, loadedProfiles } from '../local/choice.ts';
import { demoEngines } from '../local/demo-engines.ts';
import type { KeptRecord } from '../record/data-base.ts';
import type { Settings } from '../settings.ts';
import { inOwnWords, words } from '../words/index.ts';
import { JobForm, useChoice } from './job-form.tsx';
import { Accept } from './parts/accept.tsx';
import { Records } from './records.tsx';
import { SettingsForm } from './settings-form.tsx';

export interface StartDeeds {
  begin(choice: Omit<Choice, 'units'>): void;
  resume(id: string): void;
  save(id: string): void;
  pair(): void;
  describeEngine(): void;
  set(settings: Settings): void;
}

/** Before a session: which engine, who, and how this device is set up. */
export function Start({
  settings,
  records,
  sentence,
  busy,
  offline,
  deeds,
}: {
  readonly settings: Settings;
  readonly records: readonly KeptRecord[];
  /** What went wrong, if anything did. */
  readonly sentence: string | null;
  readonly busy: boolean;
  readonly offline: string;
  readonly deeds: StartDeeds;
}) {
  const [wrong, setWrong] = useState<string | null>(null);
  const profiles = [...demoEngines, ...loadedProfiles()];
  const engines = profiles.map(({ name }) => name);
  const [choice, setChoice] = useChoice(
    loadChoice() ?? { job: demoJob, language: settings.language, profile: '' },
    engines,
  );
  // Drawn anew when something of the engine was accepted: the list is read from what the device keeps.
  const [, setAccepted] = useState(0);
  const chosen = profiles.find(({ name }) => name === choice.profile);
  const told = wrong ?? sentence;
  const begin = () => {
    try {
      const job = parseJobCard(choice.job, words.start.card);
      if (!chosen) return;
      const profile = fitForFirstFire(chosen, chosen.name);
      const invented = inventedOn(job, profile);
      if (invented === null) deeds.begin({ profile, job, language: choice.language });
      else setWrong(invented);
    } catch (cause) {
      if (cause instanceof ProfileError) return setWrong(cause.message);
      if (!(cause instanceof JobCardError)) throw cause;
      setWrong(words.start.empty);
    }
  };

  return (
    <main className="start">
      <h1>{words.name}</h1>
      <p>{words.job}</p>
      <p className="first-of-all">{words.makerFirst}</p>
      <div role="alert">{told && <p className="wrong">{inOwnWords(told)}</p>}</div>
      <Records records={records} onResume={deeds.resume} onSave={deeds.save} />
      <JobForm
        engines={engines}
        choice={choice}
        onChange={setChoice}
        onWrong={setWrong}
        describe={
          <button type="button" disabled={busy} onClick={deeds.describeEngine}>
            {words.newEngine.begin}
          </button>
        }
      />
      {chosen?.invented && <p className="quiet">{words.invented}</p>}
      {chosen && (
        <Accept
          profile={chosen}
          onAccept={profile => {
            engineAccepted(profile);
            setAccepted(count => count + 1);
            setWrong(null);
          }}
        />
      )}
      <SettingsForm settings={settings} onChange={deeds.set} />
      <p className="quiet" role="status">
        {offline}
      </p>
      <div className="begin">
        <button type="button" className="choice first" disabled={busy} onClick={begin}>
          {words.start.begin}
        </button>
        <button type="button" className="choice" disabled={busy} onClick={deeds.pair}>
          {words.start.pair}
        </button>
      </div>
    </main>
  );
}
