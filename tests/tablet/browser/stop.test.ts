import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { openShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { lookAt } from '../helpers/looks.ts';
import { answer, beginHere, keyOf, openPage, touchOnly, waitForKey } from '../helpers/page.ts';
import { pageFolder, type Served, servePage } from '../helpers/serve.ts';

let browser: Browser;
let served: Served;

beforeAll(async () => {
  browser = await openBrowser();
  served = await servePage();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

async function newShop() {
  const shop = await openShop({ page: pageFolder });
  onTestFinished(() => shop.server.close());
  return shop;
}

it('a stop typed among other words stops a session of this page', async () => {
  for (const words of ['Stop!', 'please stop']) {
    const { page, context, faults } = await openPage(browser, served.origin, { settings: touchOnly });
    await beginHere(page);
    await answer(page, words);
    await waitForKey(page, 'stopped.makingSafe');
    expect(faults).toEqual([]);
    await context.close();
  }
});

it('a hand that hits twice within a moment answers one question', async () => {
  const { page, context } = await openPage(browser, served.origin, { settings: touchOnly });
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await page.locator('.choice:not([aria-disabled="true"])').first().waitFor();
  const keys = await page.evaluate(async () => {
    const seen: (string | null | undefined)[] = [];
    const key = () => document.querySelector('[data-key]')?.getAttribute('data-key');
    const touch = () => document.querySelector<HTMLElement>('.choice')?.click();
    const pass = (ms: number) => new Promise(resolve => setTimeout(resolve, ms));
    touch();
    await pass(60);
    touch();
    for (let look = 0; look < 20; look += 1) {
      seen.push(key());
      await pass(20);
    }
    return seen;
  });
  // One answer, and what it leads to: the read-back or the next question, not the one after that.
  expect(new Set(keys).size).toBeLessThanOrEqual(2);
  await context.close();
});

it('a stop before any session has begun is answered to the one who gave it', async () => {
  const shop = await newShop();
  const page = await joinBay(browser, shop, 'second');
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByText('Key off. No session runs here').waitFor();
  await lookAt(page, 'stop-nothing-runs');
  await page.context().close();
});

it('a stop that nobody answers tells what to do', async () => {
  const shop = await newShop();
  const page = await joinBay(browser, shop, 'technician');
  await page.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(page, 'job.card.asking');
  await page.context().setOffline(true);
  await shop.server.close();
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByText('Shout STOP. Turn the key off.').waitFor();
  await lookAt(page, 'stop-unanswered');
  expect(await keyOf(page)).toBe('job.card.asking');
  await page.context().close();
});

it('a device is let go of by the supervisor, and by itself', async () => {
  const shop = await newShop();
  const second = await joinBay(browser, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await supervisor.getByRole('button', { name: /^Let go/ }).click();
  await second.getByText('this device reaches nobody').waitFor();
  await lookAt(supervisor, 'supervisor-devices');
  await supervisor.getByRole('button', { name: 'Unpair this device' }).click();
  await supervisor.getByRole('button', { name: "Join the bay's laptop" }).click();
  await supervisor.getByLabel('Six digits').waitFor();
  expect(shop.server.devices()).toEqual([]);
});
