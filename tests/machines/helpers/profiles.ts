import { loadProfile, parseProfile } from '../../../src/profile/load.ts';
import type { Profile } from '../../../src/profile/schema.ts';

export const demoSix = await loadProfile('demo-six');
export const demoFour = await loadProfile('demo-four');
export const demoGenset = await loadProfile('demo-genset');
export const demoBoat = await loadProfile('demo-boat');

/** A profile with some of its parts changed, valid by the same parser as any other. */
export const changed = (profile: Profile, parts: Partial<Profile>): Profile =>
  parseProfile(JSON.stringify({ ...profile, ...parts }), 'a changed demo profile');

/** A generating set with lists of the shortest length. */
export const shortestSet: Profile = changed(demoGenset, {
  sensors: demoGenset.sensors.slice(0, 1),
  lamps: demoGenset.lamps.slice(0, 1),
  retorque: demoGenset.retorque.slice(0, 1),
  shutdown: { ...demoGenset.shutdown, heatSoakLooksAfterS: [120] },
  starter: { ...demoGenset.starter, maxBursts: 2 },
});

/**
 * Every kind of step that demo-six has, with lists of the shortest length: what a path can do is the same,
 * and there are few enough states to go through all of them.
 */
export const shortest: Profile = changed(demoSix, {
  sensors: demoSix.sensors.slice(0, 1),
  lamps: demoSix.lamps.filter(lamp => lamp.id === 'waitToStart'),
  retorque: demoSix.retorque.slice(0, 1),
  shutdown: { ...demoSix.shutdown, heatSoakLooksAfterS: [120] },
  starter: { ...demoSix.starter, maxBursts: 2 },
});
