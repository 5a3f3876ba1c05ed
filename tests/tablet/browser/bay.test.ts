import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { openBrowser } from '../helpers/browser.ts';
import { answer, PATIENCE_MS, touchOnly, waitForKey } from '../helpers/page.ts';
import { pageFolder } from '../helpers/serve.ts';

let browser: Browser;
let shop: TestShop;
const faults: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  shop = await openShop({ page: pageFolder });
});
afterAll(async () => {
  await browser?.close();
  await shop?.server.close();
});

/** A device that joins the bay with the code of its role. */
async function join(role: 'technician' | 'second' | 'supervisor'): Promise<Page> {
  const context = await browser.newContext({ ignoreHTTPSErrors: true, serviceWorkers: 'block' });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(
    value => localStorage.setItem('first-fire-settings', value),
    JSON.stringify(touchOnly),
  );
  const page = await context.newPage();
  page.on('pageerror', fault => faults.push(`${role}: ${fault}`));
  await page.goto(`https://localhost:${shop.server.port}/`);
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await page.getByLabel('Six digits').fill(shop.code(role));
  await page.getByLabel('Name of this device').fill(`${role}'s device`);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
  await page.getByRole('button', { name: 'Leave' }).waitFor();
  return page;
}

const shows = (page: Page, text: string) => page.getByText(text).first().waitFor();

it('three devices have each their face of one session, and any of them stops it', async () => {
  const technician = await join('technician');
  const second = await join('second');
  const supervisor = await join('supervisor');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(technician, 'job.card.asking');
  await shows(second, 'Nothing for you now.');
  await shows(supervisor, 'Ask for hold');
  expect(await supervisor.locator('.choice', { hasText: /card is right/i }).count()).toBe(0);

  await answer(technician, 'card is right');
  await waitForKey(technician, 'job.makerFirst.asking');
  await second.getByRole('button', { name: /^STOP/ }).click();
  for (const page of [technician, second, supervisor]) await shows(page, 'Stop! Key off. Stop!');
  await waitForKey(technician, 'stopped.makingSafe');
  expect(faults).toEqual([]);
});
