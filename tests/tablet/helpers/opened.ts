import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, onTestFinished } from 'vitest';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { openBrowser } from './browser.ts';
import { pageFolder, type Served, servePage } from './serve.ts';

/** Open from before the first test of the file that imports it until after its last. */
export let browser: Browser;
/** The page alone, without a laptop. */
export let served: Served;

beforeAll(async () => {
  browser = await openBrowser();
  served = await servePage();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/** A laptop that serves a bay and the page, until the test is over. */
export async function newShop(): Promise<TestShop> {
  const shop = await openShop({ page: pageFolder });
  onTestFinished(() => shop.server.close());
  return shop;
}
