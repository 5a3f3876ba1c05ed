import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { interruptedShop } from '../../server/support/interrupted.ts';
import { openShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { pageFolder } from '../helpers/serve.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

const LOST = 'The session that ran here cannot be gone on with. Key off. Make everything safe.';
const SAFE = 'Engine off, all safe';

it('stands on every page until somebody at the engine says there that it is safe', async () => {
  const folder = await interruptedShop('warmUp.watch.asking');
  await rm(join(folder, 'interrupted.jsonl'));
  const shop = await openShop({ folder, page: pageFolder });
  onTestFinished(() => shop.server.close());
  const faults: string[] = [];
  const technician = await joinBay(browser, shop, 'technician', faults);
  const second = await joinBay(browser, shop, 'second', faults);
  const supervisor = await joinBay(browser, shop, 'supervisor', faults);
  const pages = [technician, second, supervisor];
  for (const page of pages) await page.locator('.alerts .danger', { hasText: LOST }).waitFor();
  await supervisor.locator('.banner.danger', { hasText: 'LOST: make safe' }).waitFor();
  expect(await supervisor.getByRole('button', { name: SAFE }).count()).toBe(0);
  await technician.getByRole('button', { name: SAFE }).waitFor();
  await second.getByRole('button', { name: SAFE }).click();
  for (const page of pages) await page.getByText(LOST).waitFor({ state: 'detached' });
  await technician.getByRole('button', { name: SAFE }).waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
  for (const page of pages) await page.context().close();
});
