import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished, vi } from 'vitest';
import type { Run } from '../../../src/server/bay/run.ts';
import { Starter, type Usual } from '../../../src/server/bay/starter.ts';
import { FolderShop } from '../../../src/server/shop/folder-shop.ts';
import { Shop } from '../../../src/server/shop/shop.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { demoFour, demoSix } from '../../machines/helpers/profiles.ts';

/** Faces of a bay at which nobody is. */
export const mouths = { say: () => 0, hush: () => 0, attended: () => false };

export const clockFrom = (beginMs: number) => new VirtualClock(new Date('2026-01-02T03:04:05Z'), beginMs);
/** What sessions of the shop begin with. */
export const usual: Usual = {
  profiles: new Map([
    ['demo-six', demoSix],
    ['four', demoFour],
  ]),
  job: demoJob,
  units: 'us',
  language: 'en',
};

/** What begins the sessions of a shop, in a folder of its own; opened again as after a restart. */
export async function inShop(usually = usual) {
  const folder = await mkdtemp(join(tmpdir(), 'starter-'));
  const told: string[] = [];
  const tell = (sentence: string) => void told.push(sentence);
  const places = join(folder, 'bays.json');
  const runs: Run[] = [];
  let clock = clockFrom(0);
  const makeClock = (beginMs: number) => {
    clock = clockFrom(beginMs);
    return clock;
  };
  const open = async () => {
    const shop = await Shop.open(
      await FolderShop.open(folder),
      { folder, archive: join(folder, 'archive.sqlite'), unpacked: join(folder, 'unpacked') },
      { owners: join(folder, 'owners.txt'), checks: join(folder, 'checks.json') },
      tell,
    );
    // Heavy work in threads, for what is only shown.
    vi.spyOn(shop, 'pastStarts').mockResolvedValue({});
    vi.spyOn(shop, 'takeIn').mockReturnValue();
    onTestFinished(() => shop.close());
    const starter = await Starter.open(
      shop,
      usually,
      { places, engines: join(folder, 'engines.json') },
      ['one', 'two', 'three'],
      makeClock,
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
  return {
    folder,
    told,
    places,
    open,
    /** Has a session ended with the test. */
    kept,
    /** The clock of the session that was made last. */
    clock: () => clock,
  };
}
