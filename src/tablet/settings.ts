import { z } from 'zod';
import { languageCodes, usualLanguage } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { kept } from './kept.ts';
import { speakIn } from './words/index.ts';

/** The first language of this device that the page speaks. */
function ownLanguage(): LanguageCode {
  const wanted = navigator.languages.map(tag => tag.slice(0, 2));
  return languageCodes.find(code => wanted.includes(code)) ?? usualLanguage;
}

/** What a person may set for this device; kept in the browser. */
const settingsSchema = z.object({
  language: z.enum(languageCodes).default(() => ownLanguage()),
  hand: z.enum(['right', 'left']).default('right'),
  theme: z.enum(['device', 'light', 'dark']).default('device'),
  size: z.enum(['normal', 'large', 'largest']).default('normal'),
  units: z.enum(['us', 'metric']).default('us'),
  ear: z.enum(['embedded', 'vosk', 'webSpeech', 'keys']).default('embedded'),
  voice: z.enum(['voice', 'silent']).default('voice'),
});
export type Settings = z.infer<typeof settingsSchema>;

const KEY = 'first-fire-settings';

/** What was set before; what cannot be read any more is as it was at first. */
export function loadSettings(): Settings {
  try {
    return settingsSchema.parse(JSON.parse(kept.read(KEY) ?? '{}'));
  } catch {
    return settingsSchema.parse({});
  }
}

export const keepSettings = (settings: Settings): void => kept.write(KEY, JSON.stringify(settings));

export const deviceIsDark = () => matchMedia('(prefers-color-scheme: dark)');

/** Lets the style sheet know; the device's own colours are looked up here, so that it has each set only once. */
export function applySettings({ hand, theme, size, language }: Settings): void {
  speakIn(language);
  document.documentElement.lang = language;
  const shown = theme === 'device' ? (deviceIsDark().matches ? 'dark' : 'light') : theme;
  Object.assign(document.documentElement.dataset, { hand, theme: shown, size });
}
