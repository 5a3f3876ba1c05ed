import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, expect, onTestFinished, test, vi } from 'vitest';
import { Run } from '../../src/server/bay/run.ts';
import { checkRecord } from '../../src/server/work/check-record.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

/** As long as a slow disk takes to close a record. */
const CLOSED_AFTER_MS = 300;

let shop: TestShop;
afterEach(() => shop.server.close());

/** A bay whose first session is over, and whose disk takes its time to close the record of it. */
async function over() {
  shop = await openShop();
  const technician = await Face.paired(shop.base, await shop.pair('technician'));
  const second = await Face.paired(shop.base, await shop.pair('second'));
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  await technician.do({ do: 'stop' });
  await technician.say('all is off');
  await technician.until(() => technician.state?.mayBeLeft === true);
  await technician.say('end the session');
  await technician.say('correct');
  await technician.until(() => technician.state?.view?.outcome !== null);
  const close = Run.prototype.close;
  const spy = vi.spyOn(Run.prototype, 'close').mockImplementation(async function (this: Run) {
    await setTimeout(CLOSED_AFTER_MS);
    return close.call(this);
  });
  onTestFinished(() => spy.mockRestore());
  return { technician, second };
}

test('A stop while the record of the session before is being closed stops the next one, and stays', async () => {
  const { technician, second } = await over();
  const before = technician.state?.session;
  const begun = technician.do({ do: 'begin' });
  // As far along as it can be while the disk is still at the record before.
  await Promise.race([setTimeout(CLOSED_AFTER_MS / 2), second.until(() => second.state?.session !== before)]);
  expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped', again: false });
  expect(await begun).toMatchObject({ type: 'ack' });
  await second.until(() => second.state?.session !== before);
  await second.settled();
  expect(second.key).toBe('stopped.makingSafe');
  const path = join(shop.folder, `${second.state?.session}.jsonl`);
  expect(await checkRecord({ path })).toMatchObject({ verdict: 'confirmed' });
});
