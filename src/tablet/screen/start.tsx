import { type ChangeEvent, useState } from 'react';
import type { JobCard } from '../../../machines/context.ts';
import { fitForFirstFire, parseProfile } from '../../profile/parse.ts';
import type { Profile } from '../../profile/schema.ts';
import { jobDetails } from '../../record/vocabulary/index.ts';
import { demoJob } from '../../session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../session/job-card.ts';
import { demoProfiles } from '../local/choice.ts';
import type { KeptRecord } from '../record/data-base.ts';
import type { Settings } from '../settings.ts';
import { words } from '../words/index.ts';
import { Choose } from './parts/choose.tsx';
import { Records } from './records.tsx';
import { SettingsForm } from './settings-form.tsx';

const fields = [
  'vehicle',
  'engine',
  'technician',
  'second',
  'supervisor',
] as const satisfies (keyof JobCard)[];

export interface StartDeeds {
  begin(profile: Profile, job: JobCard): void;
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
  const [profiles, setProfiles] = useState(demoProfiles);
  const [name, setName] = useState(profiles[0]?.name ?? '');
  const [job, setJob] = useState<JobCard>(demoJob);
  const [wrong, setWrong] = useState<string | null>(null);
  const profile = profiles.find(each => each.name === name);

  const load = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    try {
      const loaded = fitForFirstFire(parseProfile(await file.text(), file.name), file.name);
      setProfiles([...profiles.filter(each => each.name !== loaded.name), loaded]);
      setName(loaded.name);
      setWrong(null);
    } catch (cause) {
      setWrong(cause instanceof Error ? cause.message : String(cause));
    }
  };
  const begin = () => {
    try {
      const card = parseJobCard(job, words.start.card);
      if (profile) deeds.begin(profile, card);
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
      <Choose
        legend={words.start.engine}
        options={Object.fromEntries(profiles.map(each => [each.name, each.name]))}
        value={name}
        onChange={setName}
      />
      <label className="file">
        {words.start.load}
        <input type="file" accept=".json,application/json" onChange={load} />
      </label>
      <fieldset className="card">
        <legend>{words.start.card}</legend>
        {fields.map(field => (
          <label key={field}>
            {words.start.fields[field]}
            <input
              value={job[field]}
              maxLength={80}
              autoComplete="off"
              onChange={event => setJob({ ...job, [field]: event.target.value })}
            />
          </label>
        ))}
        {jobDetails.map(detail => (
          <label key={detail}>
            {words.start.details[detail]}
            <input
              value={job[detail] ?? ''}
              maxLength={160}
              autoComplete="off"
              onChange={event => setJob({ ...job, [detail]: event.target.value })}
            />
          </label>
        ))}
      </fieldset>
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
