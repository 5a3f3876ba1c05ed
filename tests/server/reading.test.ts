import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, onTestFinished, test, vi } from 'vitest';
import { Lane } from '../../src/server/work/lane.ts';
import { get } from './support/https.ts';
import { largeRecord } from './support/large.ts';
import { openShop } from './support/shop.ts';

test('A device that asks for the entries of past sessions many times over is read to once at a time, and keeps nobody waiting', async () => {
  const shop = await openShop();
  onTestFinished(() => shop.server.close());
  await largeRecord(join(shop.folder, 'past.jsonl'), 50);
  const [own, another] = [await shop.pair('supervisor'), await shop.pair('supervisor')];
  const work = Lane.prototype.do;
  const spy = vi.spyOn(Lane.prototype, 'do').mockImplementation(async function (
    this: Lane,
    ...job: Parameters<typeof work>
  ) {
    await setTimeout(1000);
    return work.apply(this, job);
  } as typeof work);
  onTestFinished(() => spy.mockRestore());
  const ask = (token: string) => get(shop.base, '/api/sessions/past/log', token);
  const answers = await Promise.all([ask(own), ask(own), ask(own), ask(another)]);
  const statuses = answers.map(({ status }) => status);
  expect(statuses.slice(0, 3).sort()).toEqual([200, 503, 503]);
  expect(statuses[3]).toBe(200);
});
