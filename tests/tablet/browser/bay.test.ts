import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Role } from '../../../src/server/protocol/index.ts';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { lookAtAllSizes } from '../helpers/looks.ts';
import { answer, waitForKey } from '../helpers/page.ts';
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

const join = (role: Role) => joinBay(browser, shop, role, faults);
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
  // Fire and injury are one touch of the second person's, with the engine long said to be off as well.
  await answer(technician, 'all is off');
  await waitForKey(technician, 'stopped.askingCause');
  expect(await technician.locator('.help').count()).toBe(1);
  await lookAtAllSizes(second, 'calls-for-help');
  await second.getByRole('button', { name: /^someone is hurt$/i }).click();
  for (const page of [technician, second, supervisor]) await shows(page, 'Call the emergency number now.');
  await waitForKey(technician, 'stopped.makingSafe');
  expect(faults).toEqual([]);
});
