import type { Clock } from '../session/clock.ts';
import type { SpokenLanguage } from '../voice/ports.ts';
import { openAudio, watchAsleep } from './device/audio.ts';
import { startHearing } from './hearing/choose.ts';
import type { Hearing, Listener } from './hearing/start-hearing.ts';
import type { Settings } from './settings.ts';
import { chooseVoice, type Speaking } from './speaking/choose.ts';

/** How this device hears and speaks; opened once the clock of the session is there. */
export interface Devices {
  /** What this device is set to, where a session has not said otherwise yet. */
  readonly language: SpokenLanguage;
  speaking(clock: Clock, language: SpokenLanguage): Promise<Speaking>;
  /** Null where only touch is wanted; it begins with this language, and follows the grammars that it is given. */
  hearing(language: SpokenLanguage, listener: Listener): Hearing | null;
  /** Tells whether the browser lets it neither hear nor speak until it is touched; gives back what ends that. */
  watchAsleep(told: (isAsleep: boolean) => void): () => void;
}

/** This device, as it is set up. Where it is not called from a touch it is asleep until there is one. */
export function devicesFor({ ear, voice, language: own }: Settings): Devices {
  const context = ear === 'keys' && voice === 'silent' ? null : openAudio();
  return {
    language: own,
    speaking: (clock, language) => chooseVoice(voice, language, context, clock),
    hearing: (language, listener) => (context ? startHearing(ear, context, language, listener) : null),
    watchAsleep: told => (context ? watchAsleep(context, told) : () => {}),
  };
}
