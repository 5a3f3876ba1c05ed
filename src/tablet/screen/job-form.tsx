import { type ChangeEvent, type ReactNode, useState } from 'react';
import type { JobCard } from '../../../machines/context.ts';
import { languageCodes } from '../../../prompts/index.ts';
import { fitForFirstFire, parseProfile } from '../../profile/parse.ts';
import { jobDetails } from '../../record/vocabulary/index.ts';
import { addProfile, type KeptChoice, keepChoice } from '../local/choice.ts';
import { words } from '../words/index.ts';
import { Choose } from './parts/choose.tsx';

const fields = [
  'vehicle',
  'engine',
  'technician',
  'second',
  'supervisor',
] as const satisfies (keyof JobCard)[];

/** Each language by its own name. */
const languageNames: Readonly<Record<string, string>> = Object.fromEntries(
  languageCodes.map(code => [code, new Intl.DisplayNames([code], { type: 'language' }).of(code) ?? code]),
);

/** Which engine, in which language, and who: what a session begins with, here or in the bay. */
export function JobForm({
  engines,
  choice,
  onChange,
  onWrong,
  describe,
}: {
  /** Names of the profiles that may be chosen. */
  readonly engines: readonly string[];
  readonly choice: KeptChoice;
  readonly onChange: (choice: KeptChoice) => void;
  /** What is wrong with a profile that was loaded; null when nothing is. */
  readonly onWrong: (sentence: string | null) => void;
  /** The control that describes an engine, where that can be done from here. */
  readonly describe?: ReactNode;
}) {
  const change = (changed: Partial<KeptChoice>) => {
    const next = { ...choice, ...changed };
    keepChoice(next);
    onChange(next);
  };
  const load = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    try {
      const profile = fitForFirstFire(parseProfile(await file.text(), file.name), file.name);
      addProfile(profile);
      change({ profile: profile.name });
      onWrong(null);
    } catch (cause) {
      onWrong(cause instanceof Error ? cause.message : String(cause));
    }
  };
  const setLanguage = (code: string) => {
    const language = languageCodes.find(each => each === code);
    if (language) change({ language });
  };
  return (
    <>
      <Choose
        legend={words.start.engine}
        options={Object.fromEntries(engines.map(name => [name, name]))}
        value={choice.profile}
        onChange={profile => change({ profile })}
      />
      <div className="own">
        {describe}
        <label className="file">
          {words.start.load}
          <input type="file" className="unseen" accept=".json,application/json" onChange={load} />
        </label>
      </div>
      <fieldset className="card">
        <legend>{words.start.card}</legend>
        {fields.map(field => (
          <label key={field}>
            {words.start.fields[field]}
            <input
              value={choice.job[field]}
              maxLength={80}
              autoComplete="off"
              onChange={event => change({ job: { ...choice.job, [field]: event.target.value } })}
            />
          </label>
        ))}
      </fieldset>
      <details className="settings" open={jobDetails.some(detail => choice.job[detail])}>
        <summary>{words.start.more}</summary>
        <div className="card">
          {jobDetails.map(detail => (
            <label key={detail}>
              {words.start.details[detail]}
              <input
                value={choice.job[detail] ?? ''}
                maxLength={160}
                autoComplete="off"
                onChange={event => change({ job: { ...choice.job, [detail]: event.target.value } })}
              />
            </label>
          ))}
        </div>
      </details>
      <Choose
        legend={words.start.language}
        options={languageNames}
        value={String(choice.language)}
        onChange={setLanguage}
      />
    </>
  );
}

/** A choice whose engine is one of these: the one that was chosen, or else the first. */
export function useChoice(first: KeptChoice, engines: readonly string[]) {
  const [choice, setChoice] = useState(first);
  const profile = engines.includes(choice.profile) ? choice.profile : (engines[0] ?? '');
  return [{ ...choice, profile }, setChoice] as const;
}
