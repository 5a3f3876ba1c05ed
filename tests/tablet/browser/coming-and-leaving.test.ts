import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { joinBay, openFromLaptop, pairAs } from '../helpers/bay.ts';
import { lookAt } from '../helpers/looks.ts';
import { browser, newShop } from '../helpers/opened.ts';
import { waitForKey } from '../helpers/page.ts';

it('a page that is loaded anew in the middle of a session is in its bay again, once, and its STOP reaches it', async () => {
  const faults: string[] = [];
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician', faults);
  const second = await joinBay(browser, shop, 'second', faults);
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(second, 'job.card.asking');
  const hellos: string[] = [];
  second.on('websocket', socket =>
    socket.on('framesent', ({ payload }) => {
      if (String(payload).includes('"hello"')) hellos.push(String(payload));
    }),
  );
  await second.reload();
  await second.getByRole('button', { name: /^STOP/ }).click();
  await waitForKey(technician, 'stopped.makingSafe');
  expect(hellos).toHaveLength(1);
  expect(faults).toEqual([]);
  await second.context().close();
  await technician.context().close();
});

it('a device whose browser keeps nothing joins all the same, and has STOP', async () => {
  const faults: string[] = [];
  const shop = await newShop();
  const page = await openFromLaptop(browser, shop, faults);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
  });
  await pairAs(page, shop, 'second');
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByText('No session runs here').waitFor();
  expect(faults).toEqual([]);
  await page.context().close();
});

it('a device that leaves with a stop that nobody has answered tells so where it is then', async () => {
  const shop = await newShop();
  const page = await joinBay(browser, shop, 'second');
  await page.context().setOffline(true);
  await shop.server.close();
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByRole('button', { name: 'Begin here' }).waitFor();
  await page.getByText('Shout STOP. Key off.').waitFor();
  await page.context().close();
});

it('the page opened in a second tab takes over; the first one says so, takes nothing away when it is left, and can take back', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const first = await joinBay(browser, shop, 'second');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(first, 'job.card.asking');
  const replaced = (page: Page) =>
    page.locator('.alerts').getByText('This device is connected in another place now.');
  const tab = await first.context().newPage();
  await tab.goto(first.url());
  await waitForKey(tab, 'job.card.asking');
  await replaced(first).waitFor();
  await lookAt(first, 'replaced');
  // Taken back, and taken over once more.
  await first.getByRole('button', { name: 'Use it here' }).click();
  await replaced(tab).waitFor();
  await replaced(first).waitFor({ state: 'detached' });
  await tab.getByRole('button', { name: 'Use it here' }).click();
  await replaced(first).waitFor();
  // To end the pairing is for the one that is connected.
  expect(await first.getByRole('button', { name: 'Unpair this device' }).count()).toBe(0);
  await first.getByRole('button', { name: 'Leave' }).click();
  await first.getByRole('button', { name: 'Begin here' }).waitFor();
  await tab.reload();
  await tab.getByRole('button', { name: /^STOP/ }).click();
  await waitForKey(technician, 'stopped.makingSafe');
  await first.context().close();
  await technician.context().close();
});

it('a device that the laptop no longer knows has to be paired again once it has been left', async () => {
  const shop = await newShop();
  const second = await joinBay(browser, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await supervisor.getByRole('button', { name: /^Let go/ }).click();
  await second.getByText('this device reaches nobody').waitFor();
  expect(await second.getByRole('button', { name: 'Use it here' }).count()).toBe(0);
  await second.getByRole('button', { name: 'Leave' }).click();
  await second.getByRole('button', { name: "Join the bay's laptop" }).click();
  await second.getByLabel('Six digits').waitFor();
  await second.context().close();
  await supervisor.context().close();
});
