import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { waitForKey } from '../helpers/page.ts';
import { pageFolder } from '../helpers/serve.ts';

let browser: Browser;
let shop: TestShop;
beforeAll(async () => {
  browser = await openBrowser();
  shop = await openShop({ page: pageFolder });
});
afterAll(async () => {
  await browser?.close();
  await shop?.server.close();
});

it('the supervisor opens the report of the session as a page of its own, which can be loaded anew, and is told whether it was opened', async () => {
  const technician = await joinBay(browser, shop, 'technician');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(supervisor, 'job.card.asking');
  const [report] = await Promise.all([
    supervisor.context().waitForEvent('page'),
    supervisor.getByRole('button', { name: 'Report', exact: true }).first().click(),
  ]);
  await report.getByRole('heading', { level: 1 }).waitFor();
  const before = await report.content();
  await report.reload();
  await report.getByRole('heading', { level: 1 }).waitFor();
  expect((await report.content()).length).toBe(before.length);
  await supervisor.getByText('The report is in a tab of its own.').waitFor();
  expect(await report.evaluate(() => window.opener)).toBeNull();

  // A browser that opens no tab is told of, and so is what to do.
  await supervisor.evaluate(() => {
    window.open = () => null;
  });
  await supervisor.getByRole('button', { name: 'Report', exact: true }).first().click();
  await supervisor.getByText('This browser opened no tab').waitFor();
  for (const page of [technician, supervisor]) await page.context().close();
});
