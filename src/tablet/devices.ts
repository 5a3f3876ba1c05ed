import type { Clock } from '../session/clock.ts';
import { openAudio } from './device/audio.ts';
import { startHearing } from './hearing/choose.ts';
import type { Hearing, Listener } from './hearing/start-hearing.ts';
import type { Settings } from './settings.ts';
import { chooseVoice, type Speaking } from './speaking/choose.ts';

/** How this device hears and speaks; opened once the clock of the session is there. */
export interface Devices {
  speaking(clock: Clock): Promise<Speaking>;
  /** Null where only touch is wanted. */
  hearing(listener: Listener): Hearing | null;
}

/** This device, as it is set up; to be called from a touch, because only then may a page sound. */
export function devicesFor({ ear, voice, language }: Settings): Devices {
  const context = ear === 'keys' && voice === 'silent' ? null : openAudio();
  return {
    speaking: clock => chooseVoice(voice, language, context, clock),
    hearing: listener => (context ? startHearing(ear, language, context, listener) : null),
  };
}
