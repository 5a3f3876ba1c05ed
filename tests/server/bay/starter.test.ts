import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { Run } from '../../../src/server/bay/run.ts';
import type { Starter } from '../../../src/server/bay/starter.ts';
import { Refused } from '../../../src/server/refused.ts';
import type { Shop } from '../../../src/server/shop/shop.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { Session } from '../../../src/session/session.ts';
import { changed, demoFour, demoSix } from '../../machines/helpers/profiles.ts';
import { clockFrom, inShop, mouths, usual } from './in-shop.ts';
import { allElse } from './parts-of-a-bay.ts';

const news = { rescued: async () => {}, lost: () => {}, closed: () => {} };

describe('A session', () => {
  test('begins with what is usual, or with what the technician names: an engine by its name in the list or in its file', async () => {
    const { open, kept } = await inShop();
    const { starter } = await open();
    expect(starter.usual).toEqual({ job: demoJob, units: 'us', language: 'en' });
    expect(starter.profileNames('bay')).toEqual(['demo-six', 'four']);
    const first = kept(await starter.start('one', { do: 'begin' }, mouths));
    expect(first.session.parts).toMatchObject({ profile: { name: demoSix.name }, job: demoJob, units: 'us' });
    expect(first.language).toBe('en');
    const job = { ...demoJob, vehicle: 'Invented truck nine' };
    const deed = { do: 'begin', job, units: 'metric', language: 'fr' } as const;
    for (const profile of ['four', demoFour.name]) {
      const run = kept(await starter.start(profile, { ...deed, profile }, mouths));
      expect(run.session.parts).toMatchObject({ profile: { name: demoFour.name }, job, units: 'metric' });
      expect(run.language).toBe('fr');
    }
  });

  test('begins with no engine that is not there, on no job card that is none, and not at a real engine with people who are invented', async () => {
    const { open } = await inShop();
    const { starter } = await open();
    await expect(starter.start('bay', { do: 'begin', profile: 'five' }, mouths)).rejects.toMatchObject({
      code: 'notFound',
      message: 'There is no profile "five" here; choose demo-six or four.',
    });
    await expect(starter.start('bay', { do: 'begin', job: { vehicle: 'x' } }, mouths)).rejects.toMatchObject({
      code: 'notNow',
      message: expect.stringMatching(/^Job card sent: /),
    });
    starter.bring('bay', changed(demoSix, { name: 'a real one', invented: false }));
    await starter.enginesKept();
    await expect(starter.start('bay', { do: 'begin', profile: 'a real one' }, mouths)).rejects.toMatchObject({
      code: 'notNow',
      message: expect.stringMatching(/is invented; on the card of a real engine/),
    });
  });

  test('begins on no engine where the laptop has none and nobody brought one', async () => {
    const { open } = await inShop({ ...usual, profiles: new Map() });
    const { starter } = await open();
    await expect(starter.start('bay', { do: 'begin' }, mouths)).rejects.toMatchObject({
      code: 'notFound',
      message: 'There is no profile "" here; choose .',
    });
  });

  test('begins nowhere where its record cannot be', async () => {
    const { folder, open } = await inShop();
    const { shop, starter } = await open();
    vi.spyOn(shop, 'newRecord').mockResolvedValueOnce({
      id: 'one',
      path: join(folder, 'no folder', 'one.jsonl'),
    });
    await expect(starter.start('bay', { do: 'begin' }, mouths)).rejects.toMatchObject({
      code: 'notNow',
      message: expect.stringContaining('one.jsonl'),
    });
  });

  test('has what it measures held beside the earlier starts of its engine', async () => {
    const { open, kept } = await inShop();
    const { shop, starter } = await open();
    const past = {};
    const asked = vi.spyOn(shop, 'pastStarts').mockResolvedValueOnce(past);
    const beside = vi.spyOn(Session.prototype, 'holdBeside');
    kept(await starter.start('bay', { do: 'begin' }, mouths));
    expect(asked).toHaveBeenCalledWith(demoSix);
    await vi.waitFor(() => expect(beside).toHaveBeenCalledOnce(), { timeout: 20_000, interval: 5 });
    expect(beside.mock.calls[0]?.[0]).toBe(past);
  });

  test('whose place in the shop cannot be noted is not left open', async () => {
    const { open, kept } = await inShop();
    const { shop, starter } = await open();
    let path = '';
    vi.spyOn(shop, 'isOf').mockImplementationOnce(async (_bay, { id }) => {
      path = (await shop.fileOf(id)) ?? '';
      throw new Error('a fault');
    });
    const begun = starter.start('bay', { do: 'begin' }, mouths);
    await expect(begun).rejects.toThrow('a fault');
    // It is no refusal: something broke.
    await expect(begun).rejects.not.toBeInstanceOf(Refused);
    expect(path).not.toBe('');
    // Nobody holds its record any more: it can be gone on with.
    const resumed = await Run.resume({ id: 'found', path }, clockFrom, mouths, news);
    expect(kept(resumed.run).session.moment.status).toBe('active');
  });
});

describe('An engine that a tablet brings', () => {
  test('is there for its bay, and takes no other one’s name', async () => {
    const { open } = await inShop();
    const { starter } = await open();
    expect(starter.bring('bay', demoSix)).toBe('demo-six');
    const own = changed(demoSix, { name: 'mine' });
    expect(starter.bring('bay', own)).toBe('mine');
    expect([starter.profileNames('bay'), starter.profileNames('other')]).toEqual([
      ['demo-six', 'four', 'mine'],
      ['demo-six', 'four'],
    ]);
    for (const name of ['four', demoFour.name])
      expect(() => starter.bring('bay', changed(demoSix, { name }))).toThrow(
        expect.objectContaining({
          code: 'notNow',
          message: `The laptop has another profile "${name}"; give yours another name inside its file.`,
        }),
      );
    await starter.enginesKept();
    const again = await open();
    expect(again.starter.profileNames('bay')).toEqual(['demo-six', 'four', 'mine']);
  });
});

describe('After a restart a bay', () => {
  test('goes on with its own session, is free where it had none or left it, and says where it is gone', async () => {
    const { folder, told, open, kept } = await inShop();
    const { starter } = await open();
    for (const bay of ['one', 'two', 'three']) {
      const run = await starter.start(bay, { do: 'begin' }, mouths);
      await run.session.begin();
      await run.close();
      if (bay === 'two') await starter.leave(bay);
      if (bay === 'three') await rm(join(folder, `${run.id}.jsonl`));
    }
    const again = await open();
    const resumed = await again.starter.resume('one', mouths);
    expect(resumed && kept(resumed.run).id).toContain('one');
    expect(resumed?.entries.length).toBeGreaterThan(1);
    for (const bay of ['two', 'toString', 'none']) expect(await again.starter.resume(bay, mouths)).toBeNull();
    await expect(again.starter.resume('three', mouths)).rejects.toThrow(
      /^The record of .*three.* is not in the shop's folder\.$/,
    );
    expect(told).toEqual([]);
  });

  test('says why the record cannot be gone on with, and keeps in mind whose it was', async () => {
    const { folder, open } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.close();
    await writeFile(join(folder, `${run.id}.jsonl`), 'no record\n');
    const again = await open();
    await expect(again.starter.resume('one', mouths)).rejects.toThrow(run.id);
    expect((await open()).starter.brokeOff('one')).toBe(run.id);
    const goneOn = again.starter.goOn('one', run.id, mouths);
    await expect(goneOn).rejects.toMatchObject({
      code: 'notNow',
      message: expect.stringContaining(run.id),
    });
    // Where it lies is told to nobody but the terminal.
    await expect(goneOn).rejects.toMatchObject({ message: expect.not.stringContaining(folder) });
  });

  test('is free where the session was over, and nobody goes on with that', async () => {
    const { told, open } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.session.begin();
    run.session.keep('closed', { outcome: 'ended' });
    await run.close();
    expect(await starter.resume('one', mouths)).toBeNull();
    expect(told.at(-1)).toMatch(/is closed: its session was ended/);
    expect(starter.brokeOff('one')).toBeNull();
    await expect(starter.goOn('one', run.id, mouths)).rejects.toMatchObject({
      code: 'notNow',
      message: `${run.id} is closed: its session was ended. Begin a new one.`,
    });
  });

  test('is not called free where something broke that says nothing of its record', async () => {
    const { open } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.close();
    for (const goOn of [() => starter.resume('one', mouths), () => starter.goOn('one', run.id, mouths)]) {
      vi.spyOn(Run, 'resume').mockRejectedValueOnce(new Error('a fault'));
      const goneOn = goOn();
      await expect(goneOn).rejects.toThrow('a fault');
      await expect(goneOn).rejects.not.toBeInstanceOf(Refused);
    }
  });

  test('that nobody could note is told of, and the session goes on', async () => {
    const { told, places, open, kept } = await inShop();
    const { starter } = await open();
    await rm(places, { force: true });
    await mkdir(places);
    kept(await starter.start('one', { do: 'begin' }, mouths));
    expect(told.at(-1)).toMatch(
      /^Which session is in which bay could not be kept \(.*\); resume it by hand\.$/,
    );
  });
});

describe('A session of the shop', () => {
  test('is gone on with by its id in its own bay, and is that bay’s from then on', async () => {
    const { open, kept } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.session.begin();
    await run.close();
    await starter.leave('one');
    await expect(starter.goOn('two', run.id, mouths)).rejects.toMatchObject({ code: 'notFound' });
    const resumed = await starter.goOn('one', run.id, mouths);
    expect(resumed.run.id).toBe(run.id);
    await resumed.run.close();
    const again = await open();
    const after = await again.starter.resume('one', mouths);
    expect(after && kept(after.run).id).toBe(run.id);
  });

  test('that a tablet held is gone on with in a copy, which is taken away where nobody can go on with it; a record of the laptop’s own stays', async () => {
    const { folder, open } = await inShop();
    const { shop, starter } = await open();
    const copy = { id: 'copy', path: join(folder, 'copy.jsonl'), copiedFrom: 'of a tablet' };
    await writeFile(copy.path, 'no record\n');
    vi.spyOn(shop, 'toGoOnWith').mockResolvedValueOnce(copy);
    await expect(starter.goOn('one', 'of a tablet', mouths)).rejects.toMatchObject({ code: 'notNow' });
    expect(await shop.fileOf('copy')).toBeNull();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.close();
    const own = join(folder, `${run.id}.jsonl`);
    await writeFile(own, 'no record any more\n');
    await expect(starter.goOn('one', run.id, mouths)).rejects.toMatchObject({ code: 'notNow' });
    expect(await readFile(own, 'utf8')).toBe('no record any more\n');
  });
});

describe('A record that could not be kept where it was begun', () => {
  /** A session whose disk has failed, and which is closed after this. */
  async function rescued({ inTheShop = true, before = async (_starter: Starter, _shop: Shop) => {} } = {}) {
    const here = await inShop();
    const { shop, starter } = await here.open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.session.begin();
    if (!inTheShop) vi.spyOn(shop, 'idOf').mockResolvedValue(null);
    await rm(join(here.folder, `${run.id}.jsonl`));
    run.session.receive({ type: 'hold' }, 'technician', 'touch');
    await before(starter, shop);
    const isOf = vi.spyOn(shop, 'isOf');
    await run.close();
    return { ...here, shop, run, isOf };
  }

  test('is that bay’s where it was saved in the shop, and is gone on with there', async () => {
    const { run, told, isOf, shop, open, kept } = await rescued();
    const { path } = run.record;
    expect(told).toEqual([expect.stringContaining(`the whole record is in ${path}`)]);
    const id = await shop.idOf(path);
    expect(id).toContain('rescued');
    expect(isOf.mock.calls).toEqual([['one', { id }, run.chain]]);
    expect(shop.takeIn).toHaveBeenCalledOnce();
    const again = await open();
    const resumed = await again.starter.resume('one', mouths);
    expect(resumed && kept(resumed.run).id).toBe(id);
  });

  test('is nobody’s in the shop where it was saved elsewhere: never is the torn one gone on with', async () => {
    const { told, isOf, open } = await rescued({ inTheShop: false });
    expect(told).toHaveLength(1);
    expect(isOf).not.toHaveBeenCalled();
    const again = await open();
    expect(await again.starter.resume('one', mouths)).toBeNull();
    expect(told).toHaveLength(1);
  });

  test('is not forgotten where the one before it comes to its end while this one is being noted', async () => {
    const { open, kept } = await inShop();
    const { shop, starter } = await open();
    let end = () => {};
    const over = new Promise<void>(resolve => {
      end = resolve;
    });
    const start = Run.start.bind(Run);
    vi.spyOn(Run, 'start').mockImplementationOnce(async (...parts) =>
      Object.assign(await start(...parts), { over }),
    );
    kept(await starter.start('one', { do: 'begin' }, mouths));
    const isOf = shop.isOf.bind(shop);
    vi.spyOn(shop, 'isOf').mockImplementationOnce(async (...place) => {
      await isOf(...place);
      // While the bay's place is being written.
      setImmediate(end);
    });
    const next = kept(await starter.start('one', { do: 'begin' }, mouths));
    await allElse();
    expect(starter.brokeOff('one')).toBe(next.id);
  });

  test('of a session that was left for another day is not gone on with by itself; asked for by its id it is', async () => {
    const { shop, run, open, kept } = await rescued({ before: starter => starter.leave('one') });
    const again = await open();
    expect(await again.starter.resume('one', mouths)).toBeNull();
    const id = (await shop.idOf(run.record.path)) ?? '';
    expect(kept((await again.starter.goOn('one', id, mouths)).run).id).toBe(id);
  });

  test('does not take the place of the session that has begun in its bay since', async () => {
    const { open, kept } = await rescued({
      before: async (starter, shop) => {
        // Of another second than the first.
        const newRecord = shop.newRecord.bind(shop);
        vi.spyOn(shop, 'newRecord').mockImplementationOnce(bay =>
          newRecord(bay, new Date('2026-01-02T03:04:05Z')),
        );
        const run = await starter.start('one', { do: 'begin' }, mouths);
        await run.session.begin();
        await run.close();
      },
    });
    const again = await open();
    const resumed = await again.starter.resume('one', mouths);
    expect(resumed && kept(resumed.run).id).toBe('first-fire-2026-01-02T03-04-05-one');
  });

  test('nor anywhere else is told in the terminal', async () => {
    const { open, told } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    vi.spyOn(run.record, 'close').mockRejectedValueOnce(new Error('the lock stays'));
    await run.close();
    expect(told).toEqual([expect.stringContaining('could not be closed (the lock stays)')]);
    await run.record.close();
  });
});
