import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, expect, onTestFinished, test, vi } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

async function begun(bay: string) {
  const technician = await Face.paired(shop.base, await shop.pair('technician', bay));
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  return technician;
}

/** A server that has a rejection which nobody takes ends, with all bays: counted here in its place. */
function untaken() {
  const found: unknown[] = [];
  const take = (error: unknown) => found.push(error);
  process.on('unhandledRejection', take);
  onTestFinished(() => void process.off('unhandledRejection', take));
  return found;
}

test('A record that cannot be closed is told in the terminal, and every bay goes on', async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  const rejected = untaken();
  const [one, two] = [await begun('bay 1'), await begun('bay 2')];
  const lock = join(shop.folder, `${one.state?.session}.jsonl.lock`);
  expect(existsSync(lock)).toBe(true);
  // As where the file system lets go of nothing: read-only by now, a stale handle.
  rmSync(lock);
  mkdirSync(lock);
  await one.do({ do: 'stop' });
  await one.say('all is off');
  await one.until(() => one.state?.mayBeLeft === true);
  await one.say('end the session');
  await one.say('correct');
  await vi.waitFor(() => expect(shop.told.join(' ')).toMatch(/could not be closed/));
  expect(rejected).toEqual([]);
  expect(await two.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
  expect(await one.do({ do: 'begin' })).toMatchObject({ type: 'ack' });
});

test('What breaks in a session stops it, with the cause told and recorded; the other bay goes on', async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  const rejected = untaken();
  const [one, two] = [await begun('bay 1'), await begun('bay 2')];
  const spy = vi.spyOn(Session.prototype, 'level').mockImplementationOnce(() => {
    throw new Error('a fault');
  });
  onTestFinished(() => spy.mockRestore());
  one.send({ type: 'level', levelDbfs: -40, clipping: false, speech: false });
  await one.until(() => one.state?.view?.state === 'stopped');
  await one.settled();
  const text = await readFile(join(shop.folder, `${one.state?.session}.jsonl`), 'utf8');
  expect(text).toMatch(/The tool failed \(Error: a fault\): the session was stopped\. Key off\./);
  expect(two.key).toBe('job.card.asking');
  expect(rejected).toEqual([]);
});
