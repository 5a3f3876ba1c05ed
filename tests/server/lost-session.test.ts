import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { Role } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { interruptedShop } from './support/interrupted.ts';
import { openShop, type TestShop } from './support/shop.ts';

/** What may have become of a session while no server ran. */
const harms: Readonly<Record<string, (record: string, places: string) => Promise<void>>> = {
  'its record is gone': record => rm(record),
  'its record was altered': async record =>
    writeFile(record, (await readFile(record, 'utf8')).replace('"at":"2026', '"at":"2027')),
  'nobody can tell who has its record': record => writeFile(`${record}.lock`, ''),
  'the note of which it was cannot be read': (_record, places) => writeFile(places, '{"bay 1":"interr'),
};

const placesOf = (folder: string) => join(folder, '.server', 'bays.json');

async function openAt(folder: string, bays = ['bay 1']): Promise<TestShop> {
  const shop = await openShop({ folder, bays });
  onTestFinished(() => shop.server.close());
  return shop;
}

const faceOf = async (shop: TestShop, role: Role, bay = 'bay 1') =>
  Face.paired(shop.base, await shop.pair(role, bay));

describe('A session that broke off beside a running engine and cannot be gone on with', () => {
  test.each(Object.keys(harms))(
    'because %s, stands before all until somebody at the engine says that it is safe',
    async harm => {
      const folder = await interruptedShop('warmUp.watch.asking');
      await harms[harm]?.(join(folder, 'interrupted.jsonl'), placesOf(folder));
      const shop = await openAt(folder);
      expect(shop.told.join('\n')).toMatch(
        /^bay 1: A session broke off here and is not gone on with\. .*key off/m,
      );
      const faces = [
        await faceOf(shop, 'technician'),
        await faceOf(shop, 'second'),
        await faceOf(shop, 'supervisor'),
      ];
      const [technician, second, supervisor] = faces as [Face, Face, Face];
      const id = harm.includes('note') ? null : 'interrupted';
      for (const { state } of faces) expect(state).toMatchObject({ session: null, lost: { session: id } });
      await supervisor.until(() => supervisor.messages.some(({ type }) => type === 'board'));
      expect(supervisor.messages.find(({ type }) => type === 'board')).toMatchObject({
        bays: [{ state: 'lost', engine: 'unsure' }],
      });
      // Nobody begins over it, and it is for nobody to say who is not there.
      expect(await technician.do({ do: 'begin' })).toMatchObject({ type: 'error', code: 'notNow' });
      expect(await supervisor.do({ do: 'madeSafe' })).toMatchObject({ type: 'error', code: 'notYourRole' });
      expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'nothingRuns' });

      expect(await second.do({ do: 'madeSafe' })).toMatchObject({ type: 'ack' });
      for (const face of faces) await face.until(() => face.state?.lost === null);
      expect(shop.told.at(-1)).toMatch(
        /^bay 1: a second says that the engine of the session that was lost is off/,
      );
      expect(await technician.do({ do: 'begin' })).toMatchObject({ type: 'ack' });
    },
  );

  test('is found so again by the next server, until then', async () => {
    const folder = await interruptedShop('warmUp.watch.asking');
    await rm(join(folder, 'interrupted.jsonl'));
    for (const time of ['first', 'second']) {
      const shop = await openShop({ folder });
      const face = await faceOf(shop, 'technician');
      expect(face.state?.lost, time).toEqual({ session: 'interrupted' });
      if (time === 'second') await face.do({ do: 'madeSafe' });
      face.close();
      await shop.server.close();
    }
    const shop = await openAt(folder);
    expect((await faceOf(shop, 'technician')).state?.lost).toBeNull();
  });

  test('because its bay is not served is told in the terminal, and kept for when it is', async () => {
    const folder = await interruptedShop('warmUp.watch.asking');
    const shop = await openAt(folder, ['bay one']);
    expect(shop.told.join('\n')).toMatch(
      /^bay 1: A session broke off here .* the session was interrupted\.$/m,
    );
    expect((await faceOf(shop, 'technician', 'bay one')).state?.lost).toBeNull();
    expect(JSON.parse(await readFile(placesOf(folder), 'utf8'))).toEqual({ 'bay 1': 'interrupted' });
  });

  test('may be in any bay where the note of which it was cannot be read; the note is kept aside', async () => {
    const folder = await interruptedShop('warmUp.watch.asking');
    await writeFile(placesOf(folder), '{"bay 1":"interr');
    const shop = await openAt(folder, ['bay 1', 'bay 2']);
    for (const bay of ['bay 1', 'bay 2'])
      expect((await faceOf(shop, 'technician', bay)).state?.lost).toEqual({ session: null });
    const aside = (await readdir(join(folder, '.server'))).find(name =>
      name.startsWith('bays.json.unreadable-'),
    );
    expect(await readFile(join(folder, '.server', aside ?? ''), 'utf8')).toBe('{"bay 1":"interr');
  });
});
