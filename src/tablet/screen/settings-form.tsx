import { lazy, Suspense } from 'react';
import type { Settings } from '../settings.ts';
import { words } from '../words/index.ts';
import { Choose } from './parts/choose.tsx';

const text = words.settings;
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
      <summary>{text.title}</summary>
      <Choose legend={text.hand} options={text.hands} value={settings.hand} onChange={set('hand')} />
      <Choose legend={text.theme} options={text.themes} value={settings.theme} onChange={set('theme')} />
      <Choose legend={text.size} options={text.sizes} value={settings.size} onChange={set('size')} />
      <Choose legend={text.units} options={text.unitsOf} value={settings.units} onChange={set('units')} />
      <Choose legend={text.ear} options={text.ears} value={settings.ear} onChange={set('ear')} />
      {settings.ear === 'vosk' && (
        <Suspense>
          <OwnModel />
        </Suspense>
      )}
      <Choose legend={text.voice} options={text.voices} value={settings.voice} onChange={set('voice')} />
    </details>
  );
}
