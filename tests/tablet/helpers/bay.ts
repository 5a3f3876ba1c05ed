import type { Browser, Page } from 'playwright-core';
import type { Role } from '../../../src/server/protocol/index.ts';
import type { TestShop } from '../../server/support/shop.ts';
import { PATIENCE_MS, touchOnly } from './page.ts';

/** The page of the bay's laptop in a browser context of its own, by touch only unless it is set up otherwise. */
export async function openFromLaptop(
  browser: Browser,
  shop: TestShop,
  faults: string[],
  settings: Readonly<Record<string, string>> = touchOnly,
): Promise<Page> {
  const context = await browser.newContext({ ignoreHTTPSErrors: true, serviceWorkers: 'block' });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(
    value => localStorage.setItem('first-fire-settings', value),
    JSON.stringify(settings),
  );
  const page = await context.newPage();
  page.on('pageerror', fault => faults.push(String(fault)));
  await page.goto(`https://localhost:${shop.server.port}/`);
  return page;
}

/** Joins the bay with the code of this role. */
export async function pairAs(page: Page, shop: TestShop, role: Role): Promise<void> {
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await page.getByLabel('Six digits').fill(shop.code(role));
  await page.getByLabel('Name of this device').fill(`${role}'s device`);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
  await page.getByRole('button', { name: 'Leave' }).waitFor();
}

/** A device that has joined the bay. */
export async function joinBay(
  browser: Browser,
  shop: TestShop,
  role: Role,
  faults: string[] = [],
): Promise<Page> {
  const page = await openFromLaptop(browser, shop, faults);
  await pairAs(page, shop, role);
  return page;
}
