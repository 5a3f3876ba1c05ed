import { expect, test } from 'vitest';
import { latch, partsOfABay } from './parts-of-a-bay.ts';

test('one session goes on in a bay at a time, also while it is only being begun', async () => {
  const bay = await partsOfABay();
  const disk = latch();
  bay.holdUp(disk.opened);
  const begun = bay.begin();
  expect(bay.opening.isUnderWay).toBe(true);
  expect(bay.current.goingOn).toBeNull();
  expect(await bay.begin()).toBe('notNow');
  disk.open();
  expect(await begun).toBe('done');
  expect(bay.opening.isUnderWay).toBe(false);
  const { goingOn } = bay.current;
  expect(goingOn).toBe(bay.run());
  expect(await bay.begin()).toBe('notNow');
  expect(bay.current.goingOn).toBe(goingOn);
});

test('a session is set aside when it is stopped and everything is said to be off, and another may begin', async () => {
  const bay = await partsOfABay();
  const setAside = () => bay.perform(bay.technician, { do: 'setAside' });
  expect(await setAside()).toBe('notNow');
  await bay.begin();
  expect(await setAside()).toBe('notNow');
  bay.stopping.stop(bay.technician, 'stop');
  expect(await setAside()).toBe('notNow');
  await bay.answerUntil(() => bay.run().mayBeLeft, ['all is off', 'correct', 'false alarm']);
  const left = bay.run();
  expect(await setAside()).toBe('done');
  expect(bay.current.run).toBeNull();
  expect(bay.shown.at(-1)).toBe('no session');
  expect((await bay.commandsOn(left)).at(-1)).toBe('setAside');
  expect(await bay.begin()).toBe('done');
  expect(bay.run()).not.toBe(left);
});

test('a session that is gone on with asks first what the engine does, and does nothing again that was done in it', async () => {
  const bay = await partsOfABay();
  await bay.begin();
  expect(await bay.say('card is right', { id: 'before' })).toBe('done');
  const { path } = bay.run().record;
  await bay.run().close();
  bay.current.leave();
  const later = await partsOfABay();
  expect(await later.perform(later.technician, { do: 'resume', session: path })).toBe('done');
  expect(later.key()).toMatch(/^stopped/);
  // The device is known by its name on the record.
  expect(
    await later.say('card is right', {
      by: { ...later.technician, device: bay.technician.device },
      id: 'before',
    }),
  ).toBe('again');
});
