import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { verifyLog } from '../../../src/record/index.ts';
import { openShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { answer, waitForKey } from '../helpers/page.ts';
import { pageFolder } from '../helpers/serve.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

it('makes safe without the laptop, goes on alone from its copy, and hands over what came of it as a fork', async () => {
  const faults: string[] = [];
  const shop = await openShop({ page: pageFolder });
  const { port } = shop.server;
  const page = await joinBay(browser, shop, 'technician', faults);
  await page.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(page, 'job.card.asking');
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await shop.server.close();

  await page.getByText('The laptop is away: no answer counts').waitFor();
  await page.getByRole('button', { name: 'Go on without the laptop' }).click();
  // As after any restart: stopped, everything off, and the stop words are to be heard anew.
  await page.locator('[data-key^="stopped."]').first().waitFor();
  await answer(page, 'all is off');
  await waitForKey(page, 'stopped.causeReadBack');
  await answer(page, 'correct');
  await page.locator('[data-key="stopped.reopened"]').first().waitFor();
  await answer(page, 'ready');
  // By the laptop's clock, months behind, nobody was there for long: the job is gone through from its card.
  await waitForKey(page, 'job.card.asking');
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await answer(page, 'understood');
  await waitForKey(page, 'job.protection.asking');
  await page.getByRole('button', { name: 'Leave' }).click();

  const again = await openShop({ folder: shop.folder, page: pageFolder, port });
  // Still paired: the laptop knows its devices from before.
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await page.getByText('was sent to the laptop').waitFor();
  const [fork = ''] = readdirSync(shop.folder).filter(name => name.endsWith('.fork.jsonl'));
  expect(await verifyLog(join(shop.folder, fork))).toMatchObject({ ok: true });
  expect(readFileSync(join(shop.folder, fork), 'utf8')).toContain('"toolRestarted"');
  expect(faults).toEqual([]);
  await again.server.close();
});
