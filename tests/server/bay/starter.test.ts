import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { Run } from '../../../src/server/bay/run.ts';
import { Starter } from '../../../src/server/bay/starter.ts';
import { FolderShop } from '../../../src/server/shop/folder-shop.ts';
import { Shop } from '../../../src/server/shop/shop.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { changed, demoFour, demoSix } from '../../machines/helpers/profiles.ts';

const mouths = { say: () => 0, hush: () => 0, attended: () => false };
const news = { rescued: async () => {}, lost: () => {}, closed: () => {} };
const clockFrom = (beginMs: number) => new VirtualClock(new Date('2026-01-02T03:04:05Z'), beginMs);
const usual = {
  profiles: new Map([
    ['demo-six', demoSix],
    ['four', demoFour],
  ]),
  job: demoJob,
  units: 'us',
  language: 'en',
} as const;

/** What begins the sessions of a shop, in a folder of its own; opened again as after a restart. */
async function inShop() {
  const folder = await mkdtemp(join(tmpdir(), 'starter-'));
  const told: string[] = [];
  const tell = (sentence: string) => void told.push(sentence);
  const places = join(folder, 'bays.json');
  const runs: Run[] = [];
  const open = async () => {
    const shop = await Shop.open(
      await FolderShop.open(folder),
      { folder, archive: join(folder, 'archive.sqlite'), unpacked: join(folder, 'unpacked') },
      { owners: join(folder, 'owners.txt'), checks: join(folder, 'checks.json') },
      tell,
    );
    // Heavy work in a thread, for what is only shown.
    vi.spyOn(shop, 'pastStarts').mockResolvedValue({});
    onTestFinished(() => shop.close());
    const starter = await Starter.open(
      shop,
      usual,
      { places, engines: join(folder, 'engines.json') },
      ['one', 'two', 'three'],
      clockFrom,
      tell,
    );
    return { shop, starter };
  };
  onTestFinished(async () => {
    for (const run of runs) await run.close();
  });
  const kept = <T extends Run>(run: T): T => {
    runs.push(run);
    return run;
  };
  return { folder, told, places, open, kept };
}

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
      message: expect.stringContaining('sent'),
    });
    starter.bring('bay', changed(demoSix, { name: 'a real one', invented: false }));
    await starter.enginesKept();
    await expect(starter.start('bay', { do: 'begin', profile: 'a real one' }, mouths)).rejects.toMatchObject({
      code: 'notNow',
    });
  });

  test('whose place in the shop cannot be noted is not left open', async () => {
    const { open, kept } = await inShop();
    const { shop, starter } = await open();
    let path = '';
    vi.spyOn(shop, 'isOf').mockImplementationOnce(async (_bay, { id }) => {
      path = (await shop.fileOf(id)) ?? '';
      throw new Error('a fault');
    });
    await expect(starter.start('bay', { do: 'begin' }, mouths)).rejects.toThrow('a fault');
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
        `The laptop has another profile "${name}"; give yours another name inside its file.`,
      );
    await starter.enginesKept();
    const again = await open();
    expect(again.starter.profileNames('bay')).toEqual(['demo-six', 'four', 'mine']);
  });
});

describe('After a restart a bay', () => {
  test('goes on with its own session, is free where it had none or left it, and says where it is gone', async () => {
    const { folder, open, kept } = await inShop();
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
  });

  test('says why the record cannot be gone on with, and keeps it in mind', async () => {
    const { folder, open } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.close();
    await writeFile(join(folder, `${run.id}.jsonl`), 'no record\n');
    const again = await open();
    await expect(again.starter.resume('one', mouths)).rejects.toThrow(run.id);
    expect((await open()).starter.brokeOff('one')).toBe(run.id);
    await expect(again.starter.goOn('one', run.id, mouths)).rejects.toMatchObject({
      code: 'notNow',
      message: expect.not.stringContaining(folder),
    });
  });

  test('is free where its session was over, whatever else is wrong with the record', async () => {
    const { folder, told, open } = await inShop();
    const { starter } = await open();
    const run = await starter.start('one', { do: 'begin' }, mouths);
    await run.record.append('closed', { outcome: 'ended' });
    await run.close();
    const again = await open();
    expect(again.starter.brokeOff('one')).toBe(run.id);
    expect(await again.starter.resume('one', mouths)).toBeNull();
    expect(told.at(-1)).toContain('is closed: its session was ended');
    expect(again.starter.brokeOff('one')).toBeNull();
    expect(await readFile(join(folder, 'bays.json'), 'utf8')).toBe('{}');
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
});
