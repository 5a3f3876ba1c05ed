import { lazy, Suspense } from 'react';
import type { Settings } from '../settings.ts';
import { languageNames, words } from '../words/index.ts';
import { Choose } from './parts/choose.tsx';

/** Checks archives, which most devices never need. */
const OwnModel = lazy(() => import('./parts/own-model.tsx'));

export function SettingsForm({
  settings,
  onChange,
}: {
  readonly settings: Settings;
  readonly onChange: (settings: Settings) => void;
}) {
  const set =
    <Key extends keyof Settings>(key: Key) =>
    (value: Settings[Key]) =>
      onChange({ ...settings, [key]: value });
  return (
    <details className="settings">
      <summary>{words.settings.title}</summary>
      <Choose
        legend={words.settings.language}
        options={languageNames}
        value={settings.language}
        onChange={set('language')}
      />
      <Choose
        legend={words.settings.hand}
        options={words.settings.hands}
        value={settings.hand}
        onChange={set('hand')}
      />
      <Choose
        legend={words.settings.theme}
        options={words.settings.themes}
        value={settings.theme}
        onChange={set('theme')}
      />
      <Choose
        legend={words.settings.size}
        options={words.settings.sizes}
        value={settings.size}
        onChange={set('size')}
      />
      <Choose
        legend={words.settings.units}
        options={words.settings.unitsOf}
        value={settings.units}
        onChange={set('units')}
      />
      <Choose
        legend={words.settings.ear}
        options={words.settings.ears}
        value={settings.ear}
        onChange={set('ear')}
      />
      {settings.ear === 'vosk' && (
        <Suspense>
          <OwnModel />
        </Suspense>
      )}
      <Choose
        legend={words.settings.voice}
        options={words.settings.voices}
        value={settings.voice}
        onChange={set('voice')}
      />
    </details>
  );
}
