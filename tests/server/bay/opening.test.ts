import { describe, expect, test, vi } from 'vitest';
import { Run } from '../../../src/server/bay/run.ts';
import { Session } from '../../../src/session/session.ts';
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
  await expect(bay.opening.begin({ do: 'begin' })).rejects.toThrow(
    'A session goes on in this bay; stop and end it first.',
  );
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
  await expect(bay.opening.setAside(() => expect.fail('It was recorded.'))).rejects.toThrow(
    'A session is set aside when it is stopped and everything is said to be off: stop it, then answer.',
  );
  await bay.answerUntil(() => bay.run().mayBeLeft, ['all is off', 'correct', 'false alarm']);
  const left = bay.run();
  expect(await setAside()).toBe('done');
  expect(bay.current.run).toBeNull();
  expect(bay.shown.at(-1)).toBe('no session');
  expect((await bay.commandsOn(left)).at(-1)).toBe('setAside');
  expect(bay.left).toEqual(['bay']);
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

describe('What breaks while a session is being begun', () => {
  /** Nothing of it is left: nobody sees it, its record is let go of, and another may begin. */
  async function nothingIsLeft(bay: Awaited<ReturnType<typeof partsOfABay>>) {
    expect(bay.opening.isUnderWay).toBe(false);
    expect([bay.current.run, bay.shown.at(-1)]).toEqual([null, 'no session']);
    expect(bay.left).toEqual(['bay']);
    const { record } = bay.made() ?? expect.fail('No session was made.');
    await expect(record.append('problem', { sentence: 'Is it closed?' })).rejects.toMatchObject({
      code: 'closed',
    });
    expect(await bay.begin()).toBe('done');
    expect(bay.key()).toBe('job.card.asking');
  }

  test('has it not begun, and is told to whoever began it; a stop meanwhile is answered, and stops no other session', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    bay.opening.fails(new Error('the archive broke'));
    expect(bay.stopping.stop(bay.second, '1')).toEqual({ stop: 'stopped', again: false });
    disk.open();
    expect(await begun).toContain('the archive broke');
    await nothingIsLeft(bay);
  });

  test('in its first sentence has it not begun either', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    bay.stopping.stop(bay.second, '1');
    const broken = vi.spyOn(Session.prototype, 'begin').mockRejectedValueOnce(new Error('no such line'));
    disk.open();
    expect(await begun).toContain('no such line');
    expect(broken).toHaveBeenCalledOnce();
    await nothingIsLeft(bay);
  });

  test('is what is told, whatever fails behind it', async () => {
    const bay = await partsOfABay();
    vi.spyOn(Session.prototype, 'begin').mockRejectedValueOnce(new Error('no such line'));
    vi.spyOn(Run.prototype, 'close').mockRejectedValueOnce(new Error('no space'));
    expect(await bay.begin()).toContain('no such line');
    expect([bay.current.run, bay.shown.at(-1)]).toEqual([null, 'no session']);
  });

  test('is no matter of the next one, nor is what broke when none was being begun', async () => {
    const bay = await partsOfABay();
    bay.opening.fails(new Error('long before'));
    expect(await bay.begin()).toBe('done');
    expect(bay.key()).toBe('job.card.asking');
  });

  test('while stops that came are carried out keeps none of them from it', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    bay.stopping.stop(bay.second, '1');
    bay.stopping.stop(bay.technician, '2', { cause: 'someoneHurt' });
    vi.spyOn(Session.prototype, 'receive').mockImplementationOnce(() => {
      throw new Error('a fault in the procedure');
    });
    disk.open();
    expect(await begun).toBe('done');
    expect(bay.run().session.moment.context.stop).toMatchObject({ cause: 'someoneHurt' });
  });
});

describe('When the server begins, a bay', () => {
  test('is free where no session of it broke off', async () => {
    const bay = await partsOfABay();
    await bay.opening.resume();
    expect([bay.current.run, bay.left]).toEqual([null, []]);
    expect(bay.opening.isUnderWay).toBe(false);
  });

  test('goes on with the one that broke off, and does nothing of it again', async () => {
    const before = await partsOfABay();
    await before.begin();
    await before.say('card is right', { id: 'before' });
    const { path } = before.run().record;
    await before.run().close();
    const bay = await partsOfABay();
    bay.brokeOff(path);
    await bay.opening.resume();
    expect(bay.key()).toMatch(/^stopped/);
    expect(bay.run().session.moment.context.stop).toMatchObject({ cause: 'toolRestarted' });
    expect(bay.done.find(before.technician.device, 'before')).toBeDefined();
  });

  test('has lost it where that cannot be gone on with, and is free when somebody there says that it is safe', async () => {
    const bay = await partsOfABay();
    bay.brokeOff('/nowhere/at/all.jsonl');
    await expect(bay.opening.resume()).rejects.toThrow('/nowhere/at/all.jsonl');
    expect([bay.current.lost, bay.lost]).toEqual([
      { session: '/nowhere/at/all.jsonl' },
      ['/nowhere/at/all.jsonl'],
    ]);
    expect(await bay.begin()).toBe('notNow');
    expect(await bay.perform(bay.second, { do: 'madeSafe' })).toBe('done');
    expect([bay.current.lost, bay.safe]).toEqual([null, [bay.second.name]]);
    // Said twice, it is said once.
    expect(await bay.perform(bay.second, { do: 'madeSafe' })).toBe('done');
    expect(bay.safe).toHaveLength(1);
    expect(await bay.begin()).toBe('done');
  });
});
