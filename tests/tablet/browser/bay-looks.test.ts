import { randomUUID } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Face } from '../../server/support/face.ts';
import { answerUntil, interruptedShop } from '../../server/support/interrupted.ts';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { joinBay, openFromLaptop } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { lookAtAllSizes } from '../helpers/looks.ts';
import { pageFolder } from '../helpers/serve.ts';

const CLEAR = 'noFuelCrank.untilPressure.askingClear';

let browser: Browser;
let shop: TestShop;
const faults: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  const folder = await interruptedShop(CLEAR);
  await writeFile(join(folder, `${randomUUID()}.jsonl`), 'no record of ours\n');
  shop = await openShop({ folder, page: pageFolder });
});
afterAll(async () => {
  await browser?.close();
  await shop?.server.close();
});

const shows = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();

it('can be joined by anybody, with what is wrong said on the same screen', async () => {
  const page = await openFromLaptop(browser, shop, faults);
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await lookAtAllSizes(page, 'pairing');
  await page.getByLabel('Six digits').fill('000000');
  await page.getByLabel('Name of this device').fill('phone');
  await page.getByRole('button', { name: 'Join', exact: true }).click();
  await shows(page, /That code is wrong/);
  await lookAtAllSizes(page, 'pairing-wrong');
  await page.context().close();
});

it('can be read and used with gloves on every face of the bay, at every size, in the sun and in the dark', async () => {
  const lead = await Face.paired(shop.base, await shop.pair('technician'));
  const own = await Face.paired(shop.base, await shop.pair('second'));
  const technician = await joinBay(browser, shop, 'technician', faults);
  const second = await joinBay(browser, shop, 'second', faults);
  const supervisor = await joinBay(browser, shop, 'supervisor', faults);
  await shows(technician, 'Another device leads.');
  await lookAtAllSizes(technician, 'technician-follows');

  await answerUntil(CLEAR, lead, own, shop.clock());
  await second.getByRole('button', { name: /^clear/i }).waitFor();
  await lookAtAllSizes(second, 'second-clear');
  await shows(supervisor, 'Sessions of the shop');
  await shows(supervisor, '2 sessions.');
  await lookAtAllSizes(supervisor, 'supervisor');

  await second.getByRole('button', { name: /^clear/i }).click();
  await second.getByRole('button', { name: /^correct/i }).click();
  await shows(second, 'Nothing for you now.');
  await lookAtAllSizes(second, 'second-nothing');

  await technician.getByRole('button', { name: 'Lead from here' }).click();
  await supervisor.getByRole('button', { name: 'Ask for hold' }).click();
  await technician.getByRole('button', { name: 'Not now' }).waitFor();
  await lookAtAllSizes(technician, 'technician-hold-asked');

  await supervisor.getByRole('button', { name: /^STOP/ }).click();
  for (const page of [technician, second, supervisor]) await shows(page, 'Stop! Key off. Stop!');
  await lookAtAllSizes(second, 'second-stopped');
  await lookAtAllSizes(supervisor, 'supervisor-stopped');

  lead.close();
  own.close();
  await shop.server.close();
  await shows(second, /This device reaches nobody/);
  await lookAtAllSizes(second, 'second-cut-off');
  expect(faults).toEqual([]);
});
