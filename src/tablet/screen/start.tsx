import { useState } from 'react';
import { usualLanguage } from '../../../prompts/index.ts';
import { demoJob } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { type Choice, demoProfiles, loadChoice, loadedProfiles } from '../local/choice.ts';
import type { KeptRecord } from '../record/data-base.ts';
import type { Settings } from '../settings.ts';
import { words } from '../words/index.ts';
import { JobForm, useChoice } from './job-form.tsx';
import { Records } from './records.tsx';
import { SettingsForm } from './settings-form.tsx';

export interface StartDeeds {
  begin(choice: Omit<Choice, 'units'>): void;
  resume(id: string): void;
  save(id: string): void;
  pair(): void;
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
  const profiles = [...demoProfiles, ...loadedProfiles()];
  const engines = profiles.map(({ name }) => name);
  const [choice, setChoice] = useChoice(
    loadChoice() ?? { job: demoJob, language: usualLanguage, profile: '' },
    engines,
  );
  const begin = () => {
    try {
      const job = parseJobCard(choice.job, words.start.card);
      const profile = profiles.find(({ name }) => name === choice.profile);
      if (profile) deeds.begin({ profile, job, language: choice.language });
    } catch (cause) {
      if (!(cause instanceof JobCardError)) throw cause;
      setWrong(words.start.empty);
    }
  };

  return (
    <main className="start">
      <h1>{words.name}</h1>
      <p>{words.job}</p>
      <p className="first-of-all">{words.makerFirst}</p>
      <div role="alert">{(wrong ?? sentence) && <p className="wrong">{wrong ?? sentence}</p>}</div>
      <Records records={records} onResume={deeds.resume} onSave={deeds.save} />
      <JobForm engines={engines} choice={choice} onChange={setChoice} onWrong={setWrong} />
      <div className="big">
        <button type="button" className="choice first" disabled={busy} onClick={begin}>
          {words.start.begin}
        </button>
        <button type="button" className="choice" disabled={busy} onClick={deeds.pair}>
          {words.start.pair}
        </button>
      </div>
      <SettingsForm settings={settings} onChange={deeds.set} />
      <p className="quiet" role="status">
        {offline}
      </p>
    </main>
  );
}
