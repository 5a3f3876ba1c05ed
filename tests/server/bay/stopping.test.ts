import { describe, expect, test, vi } from 'vitest';
import { KEY_TURNED_MS } from '../../../machines/progress.ts';
import { readLog } from '../../../src/record/index.ts';
import { readRecorded } from '../../../src/record/vocabulary/index.ts';
import { goUntil, rigAround } from '../../helpers/session-rig.ts';
import { allElse, latch, partsOfABay, slowDisk } from './parts-of-a-bay.ts';

async function begun() {
  const bay = await partsOfABay();
  await bay.begin();
  return bay;
}

const NEW = { stop: 'stopped', again: false };
const AGAIN = { stop: 'stopped', again: true };

describe('A stop', () => {
  test('has stopped the session, and all faces are told, when it returns; the disk follows', async () => {
    const { stopping, run, second, key, shown, commandsOn } = await begun();
    const disk = slowDisk(run().record);
    expect(stopping.stop(second, '1')).toEqual(NEW);
    expect(key()).toBe('stopped.makingSafe');
    expect(shown).toEqual(['stopped.makingSafe']);
    expect(run().session.moment.context.stop).toMatchObject({ by: 'second' });
    disk.release();
    await run().session.settled();
    expect(await commandsOn(run())).toEqual(['begin', 'stop']);
  });

  test('stops nothing where no session has begun, or the last one is over', async () => {
    const { stopping, second, begin, run, answerUntil } = await partsOfABay();
    expect(stopping.stop(second, '1')).toEqual({ stop: 'nothingRuns', again: false });
    expect(await begin()).toBe('done');
    expect(stopping.stop(second, '1')).toEqual(NEW);
    await answerUntil(() => run().isOver, ['end the session', 'all is off', 'correct', 'false alarm']);
    expect(run().isOver).toBe(true);
    expect(stopping.stop(second, '2')).toEqual({ stop: 'nothingRuns', again: false });
  });

  test('that one device sends again is the same; that of another is its own', async () => {
    const { stopping, technician, second, supervisor, run, commandsOn, shown } = await begun();
    expect(stopping.stop(second, '1')).toEqual(NEW);
    expect(stopping.stop(second, '1')).toEqual(AGAIN);
    expect(stopping.stop(second, '2')).toEqual(AGAIN);
    expect(shown).toHaveLength(1);
    expect(stopping.stop(technician, '1')).toEqual(NEW);
    expect(stopping.stop(supervisor, '1')).toEqual(NEW);
    await run().session.settled();
    expect(await commandsOn(run())).toEqual(['begin', 'stop', 'stop', 'stop']);
  });

  test('pressed again by then on the same device, before all is off, says that it goes on: once in so long', async () => {
    const { stopping, second, run, clock, say, commandsOn } = await begun();
    expect(stopping.stop(second, '1')).toEqual(NEW);
    clock().advance(KEY_TURNED_MS - 1);
    expect(stopping.stop(second, '2')).toEqual(AGAIN);
    expect(run().session.moment.context.stop?.insisted).toBe(false);
    clock().advance(1);
    // The same press, sent once more because no answer came.
    expect(stopping.stop(second, '1')).toEqual(AGAIN);
    expect(stopping.stop(second, '3')).toEqual(NEW);
    expect(run().session.moment.context.stop?.insisted).toBe(true);
    clock().advance(KEY_TURNED_MS - 1);
    expect(stopping.stop(second, '4')).toEqual(AGAIN);
    clock().advance(1);
    await say('all is off');
    expect(stopping.stop(second, '5')).toEqual(AGAIN);
    await run().session.settled();
    expect(await commandsOn(run())).toEqual(['begin', 'stop', 'stop', 'say']);
  });

  test('that calls for help is called out in a stopped session too, once for each thing that it is for', async () => {
    const { stopping, second, run } = await begun();
    const { session } = run();
    expect(stopping.stop(second, '1')).toEqual(NEW);
    expect(stopping.stop(second, '2', { cause: 'smokeOrFire' })).toEqual(NEW);
    expect(stopping.stop(second, '2', { cause: 'smokeOrFire' })).toEqual(AGAIN);
    expect(stopping.stop(second, '3', { cause: 'smokeOrFire' })).toEqual(AGAIN);
    expect(stopping.stop(second, '4', { cause: 'someoneHurt' })).toEqual(NEW);
    const { stop } = session.moment.context;
    expect([stop?.cause, ...(stop?.also ?? [])]).toEqual(
      expect.arrayContaining(['smokeOrFire', 'someoneHurt']),
    );
  });

  test('once all is off, the same device calls for the same help anew', async () => {
    const { stopping, second, run, say, key } = await begun();
    expect(stopping.stop(second, '1', { cause: 'smokeOrFire' })).toEqual(NEW);
    await say('all is off');
    expect(key()).toBe('stopped.causeReadBack');
    expect(stopping.stop(second, '2', { cause: 'smokeOrFire' })).toEqual(NEW);
    expect(key()).toBe('stopped.makingSafe');
    expect(run().session.moment.context.stop?.cause).toBe('smokeOrFire');
    expect(stopping.stop(second, '3', { cause: 'smokeOrFire' })).toEqual(AGAIN);
  });

  test('of somebody who is not at the engine stops, and is not believed to call for help', async () => {
    const { stopping, supervisor, run, notBelievedOn } = await begun();
    expect(stopping.stop(supervisor, '1', { cause: 'smokeOrFire' })).toEqual(NEW);
    expect(run().session.moment.matches('stopped')).toBe(true);
    expect(run().session.moment.context.stop?.cause).not.toBe('smokeOrFire');
    for (const id of ['2', '3'])
      expect(stopping.stop(supervisor, id, { cause: 'someoneHurt' })).toEqual(AGAIN);
    await run().session.settled();
    expect(await notBelievedOn(run())).toEqual(['smokeOrFire', 'someoneHurt']);
  });
});

describe('What a stop leaves on the record', () => {
  test('is who stopped, by what way and at which device; by touch where nothing else is said', async () => {
    const { stopping, technician, second, supervisor, run } = await begun();
    stopping.stop(second, '1');
    stopping.stop(technician, '2', { via: 'voice' });
    stopping.stop(supervisor, '3');
    await run().session.settled();
    const { entries } = readRecorded((await readLog(run().record.path)).entries);
    const events = entries.flatMap(entry => (entry.kind === 'event' ? [entry.data] : []));
    expect(events).toMatchObject([
      { type: 'stop', by: 'second', via: 'touch', device: second.device },
      { type: 'stop', by: 'technician', via: 'voice', device: technician.device },
      { type: 'stop', by: 'supervisor', via: 'touch', device: supervisor.device },
    ]);
    // Nobody called for help.
    const { entries: written } = await readLog(run().record.path);
    expect(written.filter(({ kind }) => kind === 'notCarriedOut')).toEqual([]);
  });

  test('is a call for help that was not believed, with whose it was and why; of one that was, nothing besides', async () => {
    const { stopping, second, supervisor, run } = await begun();
    stopping.stop(second, '1', { cause: 'smokeOrFire' });
    stopping.stop(supervisor, '2', { cause: 'someoneHurt' });
    stopping.notCarriedOut(supervisor, '3', { cause: 'smokeOrFire' }, 'notAtEngine', 'say');
    await run().session.settled();
    const { entries } = readRecorded((await readLog(run().record.path)).entries);
    const unheeded = entries.flatMap(entry => (entry.kind === 'notCarriedOut' ? [entry.data] : []));
    const whose = {
      device: supervisor.device,
      name: supervisor.name,
      role: 'supervisor',
      why: 'notAtEngine',
    };
    expect(unheeded).toEqual([
      { ...whose, id: '2', do: 'stop', cause: 'someoneHurt' },
      { ...whose, id: '3', do: 'say', cause: 'smokeOrFire' },
    ]);
  });

  test('is nothing where no session goes on', async () => {
    const { stopping, supervisor } = await partsOfABay();
    expect(() =>
      stopping.notCarriedOut(supervisor, '1', { cause: 'smokeOrFire' }, 'notAtEngine'),
    ).not.toThrow();
  });
});

describe('A stop of a session that has gone on since', () => {
  test('is a new one, also of the device that stopped it before', async () => {
    const bay = await begun();
    expect(bay.stopping.stop(bay.second, '1')).toEqual(NEW);
    const on = ['ready', 'all is off', 'correct', 'false alarm'];
    const asSecond = async () => {
      if (bay.key() === 'stopped.askingCaller') await bay.say('false alarm', { by: bay.second });
    };
    for (let turn = 0; turn < 8 && bay.run().session.moment.matches('stopped'); turn += 1) {
      await asSecond();
      const offered = bay
        .run()
        .session.grammar('keys')
        .replies.flatMap(({ wordings }) => wordings);
      const by = bay.key().startsWith('stopped.caller') ? bay.second : bay.technician;
      await bay.say(on.find(each => offered.includes(each)) ?? 'ready', { by });
    }
    expect(bay.key()).toBe('job.card.asking');
    expect(bay.stopping.stop(bay.technician, '1')).toEqual(NEW);
    // What they called before it went on is no word of this one.
    expect(bay.stopping.stop(bay.second, '1b')).toEqual(NEW);
    expect(bay.stopping.stop(bay.second, '1c')).toEqual(AGAIN);
  });

  test('is a new one too where it was set aside and is gone on with, which asks what the engine does', async () => {
    const bay = await begun();
    bay.stopping.stop(bay.second, '1');
    await bay.answerUntil(() => bay.run().mayBeLeft, ['all is off', 'correct', 'false alarm']);
    const { path } = bay.run().record;
    expect(await bay.perform(bay.technician, { do: 'setAside' })).toBe('done');
    expect(await bay.perform(bay.technician, { do: 'resume', session: path })).toBe('done');
    expect(bay.run().session.moment.matches('stopped')).toBe(true);
    expect(bay.stopping.stop(bay.second, '2')).toEqual(NEW);
  });
});

describe('While a stop word is tried out', () => {
  test('each stop is a new one, also at the device at which the first was; and none once both are heard', async () => {
    const { stopping, technician, second, run, clock, key } = await begun();
    const { session, record } = run();
    await goUntil(rigAround(session, clock(), record, record.path), 'job.stopTechnician.asking');
    expect(stopping.stop(technician, '1')).toEqual(NEW);
    expect(key()).toBe('stopped.drillGoesOn');
    clock().advance(2000);
    expect(stopping.stop(technician, '2')).toEqual(NEW);
    expect(key()).toBe('stopped.drillGoesOn');
    clock().advance(2000);
    expect(stopping.stop(second, '3')).toEqual(NEW);
    expect(key()).toBe('stopped.drill');
    expect(stopping.stop(second, '4')).toEqual(AGAIN);
  });

  test('two hands at two devices prove both words at once; the same hand twice does not', async () => {
    const { stopping, technician, second, run, clock, key } = await begun();
    const { session, record } = run();
    await goUntil(rigAround(session, clock(), record, record.path), 'job.stopTechnician.asking');
    stopping.stop(technician, '1');
    stopping.stop(technician, '2');
    expect(key()).toBe('stopped.drillGoesOn');
    stopping.stop(second, '3');
    expect(key()).toBe('stopped.drill');
  });
});

describe('A call for help that a microphone heard', () => {
  const heard = { via: 'voice', cause: 'someoneHurt' } as const;

  test('while the tool says that very word is no stop: it is answered at once as none, and stands on the record once', async () => {
    const bay = await begun();
    const { stopping, technician, second, run } = bay;
    expect(stopping.stop(second, '1', { cause: 'someoneHurt' })).toEqual(NEW);
    await allElse();
    expect(run().session.saysItself('someoneHurt')).toBe(true);
    const disk = slowDisk(run().record);
    for (const id of ['2', '3']) expect(stopping.stop(technician, id, heard)).toEqual({ again: false });
    // Of another thing it says nothing, and by touch nobody hears it.
    expect(stopping.stop(technician, '4', { via: 'voice', cause: 'smokeOrFire' })).toEqual(NEW);
    disk.release();
    await run().session.settled();
    const { entries } = await readLog(run().record.path);
    expect(entries.flatMap(({ kind, data }) => (kind === 'notCarriedOut' ? [data] : []))).toMatchObject([
      { device: technician.device, id: '2', do: 'stop', cause: 'someoneHurt', why: 'toolSpoke' },
    ]);
    expect(await bay.commandsOn(run())).toEqual(['begin', 'stop', 'stop']);
  });

  test('is one as soon as the tool has fallen silent, and by touch at any time', async () => {
    const { stopping, technician, second, run } = await begun();
    expect(run().session.saysItself('someoneHurt')).toBe(false);
    expect(stopping.stop(technician, '1', heard)).toEqual(NEW);
    await allElse();
    expect(run().session.saysItself('someoneHurt')).toBe(true);
    expect(stopping.stop(second, '2', { cause: 'someoneHurt' })).toMatchObject({ stop: 'stopped' });
  });
});

describe('A stop while a session is being begun', () => {
  test('counts as soon as there is one, from each device once', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    expect(bay.stopping.stop(bay.second, '1')).toEqual(NEW);
    expect(bay.stopping.stop(bay.second, '2')).toEqual(AGAIN);
    expect(bay.stopping.stop(bay.second, '3', { cause: 'smokeOrFire' })).toEqual(NEW);
    expect(bay.stopping.stop(bay.second, '4', { cause: 'smokeOrFire' })).toEqual(AGAIN);
    expect(bay.stopping.stop(bay.technician, '1', { cause: 'smokeOrFire' })).toEqual(NEW);
    // What it is for has been told.
    expect(bay.stopping.stop(bay.technician, '2')).toEqual(AGAIN);
    disk.open();
    expect(await begun).toBe('done');
    expect(bay.key()).toBe('stopped.makingSafe');
    expect(bay.run().session.moment.context.stop).toMatchObject({ cause: 'smokeOrFire' });
    await bay.run().session.settled();
    expect((await bay.commandsOn(bay.run())).filter(each => each === 'stop')).toHaveLength(3);
  });

  test('is carried out once for each device and cause, however often it was given', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    for (let nth = 0; nth < 1000; nth += 1) bay.stopping.stop(bay.second, `${nth}`);
    const stops = vi.spyOn(bay.stopping, 'stop');
    disk.open();
    expect(await begun).toBe('done');
    expect(stops).toHaveBeenCalledOnce();
  });

  test('of somebody who is not at the engine has each of their calls for help on the record', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    expect(bay.stopping.stop(bay.supervisor, '1', { cause: 'smokeOrFire' })).toEqual(NEW);
    expect(bay.stopping.stop(bay.supervisor, '2', { cause: 'someoneHurt' })).toEqual(AGAIN);
    disk.open();
    expect(await begun).toBe('done');
    await bay.run().session.settled();
    expect(await bay.notBelievedOn(bay.run())).toEqual(['smokeOrFire', 'someoneHurt']);
    expect(await bay.commandsOn(bay.run())).toEqual(['stop', 'begin']);
  });

  test('is not forgotten because somebody begins another one meanwhile, which is refused', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    bay.stopping.stop(bay.second, '1');
    expect(await bay.begin()).toBe('notNow');
    disk.open();
    expect(await begun).toBe('done');
    expect(bay.key()).toBe('stopped.makingSafe');
  });

  test('has nothing to stop where no session came of it, and does not stop the next one', async () => {
    const bay = await partsOfABay();
    const disk = latch();
    bay.holdUp(disk.opened.then(() => Promise.reject(new Error('no room for a record'))));
    const begun = bay.begin();
    bay.stopping.stop(bay.second, '1');
    disk.open();
    expect(await begun).toContain('no room for a record');
    expect(bay.opening.isUnderWay).toBe(false);
    bay.holdUp(Promise.resolve());
    expect(await bay.begin()).toBe('done');
    expect(bay.key()).toBe('job.card.asking');
    expect(bay.stopping.stop(bay.second, '2')).toEqual(NEW);
  });

  test('counts though the same device had stopped the session before, or one that never came of its beginning', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    bay.stopping.stop(bay.second, '1');
    await bay.answerUntil(() => bay.run().mayBeLeft, ['all is off', 'correct', 'false alarm']);
    expect(await bay.perform(bay.technician, { do: 'setAside' })).toBe('done');
    const noRoom = latch();
    bay.holdUp(noRoom.opened.then(() => Promise.reject(new Error('no room for a record'))));
    const failing = bay.begin();
    expect(bay.stopping.stop(bay.second, '2')).toEqual(NEW);
    noRoom.open();
    expect(await failing).toContain('no room for a record');
    const disk = latch();
    bay.holdUp(disk.opened);
    const begun = bay.begin();
    expect(bay.stopping.stop(bay.second, '3')).toEqual(NEW);
    disk.open();
    expect(await begun).toBe('done');
    expect(bay.key()).toBe('stopped.makingSafe');
  });
});
