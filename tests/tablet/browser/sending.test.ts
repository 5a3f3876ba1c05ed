import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { verifyLog } from '../../../src/record/index.ts';
import { interruptedShop } from '../../server/support/interrupted.ts';
import { openShop, type TestShop } from '../../server/support/shop.ts';
import { openFromLaptop, pairAs } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { answer, beginHere, waitForKey } from '../helpers/page.ts';
import { pageFolder } from '../helpers/serve.ts';

let browser: Browser;
const faults: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});

async function newShop(folder?: string): Promise<TestShop> {
  const shop = await openShop({ page: pageFolder, ...(folder === undefined ? {} : { folder }) });
  onTestFinished(() => shop.server.close());
  return shop;
}

const uploads = (shop: TestShop) => readdirSync(shop.folder).filter(name => name.startsWith('upload-'));

/** A session that is begun on the device alone and left again. */
async function makeRecord(page: Page): Promise<void> {
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await page.getByRole('button', { name: 'Leave' }).click();
  await page
    .getByRole('button', { name: /^Save as a file/ })
    .first()
    .waitFor();
}

/** Changes one line of every record in the device's own data base, as nobody should. */
const alter = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const wait = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const dataBase = await wait(indexedDB.open('first-fire'));
    const store = dataBase.transaction('lines', 'readwrite').objectStore('lines');
    for (const kept of await wait(store.getAll()))
      if (kept.seq === 1) await wait(store.put({ ...kept, line: kept.line.replace('"seq":1', '"seq": 1') }));
    dataBase.close();
  });

it('sends what was recorded without the laptop as soon as it is paired, once, and says so', async () => {
  const shop = await newShop();
  const page = await openFromLaptop(browser, shop, faults);
  await makeRecord(page);
  expect(uploads(shop)).toEqual([]);
  await pairAs(page, shop, 'technician');
  await page.getByText('A record of this device was sent to the laptop, verified and kept.').waitFor();
  const [name = '', ...others] = uploads(shop);
  expect(others).toEqual([]);
  expect(await verifyLog(join(shop.folder, name))).toMatchObject({ ok: true });
  expect(readFileSync(join(shop.folder, name), 'utf8')).toContain('"cardRight"');

  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByText('the laptop has it').waitFor();
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await page.getByRole('button', { name: 'Leave' }).waitFor();
  expect(await page.getByText('was sent to the laptop').count()).toBe(0);
  expect(uploads(shop)).toEqual([name]);
  expect(faults).toEqual([]);
  await page.context().close();
});

it('sends a record that does not verify too, and says that it is marked', async () => {
  const shop = await newShop();
  const page = await openFromLaptop(browser, shop, faults);
  await makeRecord(page);
  await alter(page);
  await pairAs(page, shop, 'technician');
  await page.getByText('marked as damaged, because it does not verify').waitFor();
  expect(uploads(shop).filter(name => name.endsWith('.damaged.jsonl'))).toHaveLength(1);
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByText('the laptop has it, marked as damaged').waitFor();
  await page.context().close();
});

it('shows the supervisor the sessions of the shop, to be found and read', async () => {
  const shop = await newShop(await interruptedShop('job.hazards.asking'));
  const page = await openFromLaptop(browser, shop, faults);
  await pairAs(page, shop, 'supervisor');
  await page.getByText('1 session.').waitFor();
  await page.getByText(/, running/).waitFor();
  await page.getByLabel(/sessions in which this stands/).fill('nobody');
  await page.getByRole('button', { name: 'Find' }).click();
  await page.getByText('None.').waitFor();
  await page.getByLabel(/sessions in which this stands/).fill('');
  await page.getByRole('button', { name: 'Find' }).click();
  await page.getByText('1 session.').waitFor();
  const opening = page.context().waitForEvent('page');
  await page
    .getByRole('button', { name: /^Report/ })
    .first()
    .click();
  const report = await opening;
  await report.getByRole('heading').first().waitFor();
  await page.context().close();
});
