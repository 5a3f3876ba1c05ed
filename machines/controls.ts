import type { Profile } from '../src/profile/schema.ts';
import type { PromptValue } from './vocabulary.ts';

/** What is looked at of an engine: what it drives and what it is started and stopped by. */
type Controlled = Pick<Profile, 'use' | 'stopControl'>;

const named = (line: 'switchToZero' | 'switchToManual', at: string): PromptValue => ({
  line,
  values: { at },
});
const plain = (
  line:
    | 'keyOff'
    | 'keyOn'
    | 'keyOut'
    | 'keyInPocket'
    | 'offAtControl'
    | 'switchedOn'
    | 'controlTagged'
    | 'firstDrive'
    | 'firstLoad'
    | 'underWay',
): PromptValue => ({ line, values: {} });

/** The switch of a generating set between manual, off and automatic; null where it has none. */
export const modeSwitchOf = ({ use }: Pick<Profile, 'use'>): string | null =>
  use.kind === 'generator' ? use.modeSwitch : null;

/** It is switched off by the key of a vehicle, and by nothing that has another name. */
export const isByKey = ({ use, stopControl }: Controlled): boolean =>
  use.kind === 'vehicle' && stopControl === undefined;

/** How it is switched off every day: as its profile names it; a vehicle by its key, a generating set by its mode switch. */
export function switchedOff(profile: Controlled): PromptValue {
  const modeSwitch = modeSwitchOf(profile);
  if (profile.stopControl !== undefined) return profile.stopControl;
  if (isByKey(profile)) return plain('keyOff');
  return modeSwitch === null ? plain('offAtControl') : named('switchToZero', modeSwitch);
}

/** How current comes on to it before it is started by hand. */
export function switchedOn(profile: Controlled): PromptValue {
  const modeSwitch = modeSwitchOf(profile);
  if (profile.use.kind === 'vehicle') return plain('keyOn');
  return modeSwitch === null ? plain('switchedOn') : named('switchToManual', modeSwitch);
}

/** What keeps anybody from starting it while hands are in it, besides its battery; `while` they are, or at the bar. */
export const keptOff = ({ use }: Controlled, whileAt: 'hands' | 'bar'): PromptValue =>
  use.kind === 'vehicle' ? plain(whileAt === 'hands' ? 'keyOut' : 'keyInPocket') : plain('controlTagged');

/** When it is first asked for load. */
export function firstLoaded({ use }: Controlled): PromptValue {
  if (use.kind === 'vehicle') return plain('firstDrive');
  return plain(use.kind === 'marine' ? 'underWay' : 'firstLoad');
}
