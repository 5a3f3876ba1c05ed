import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { PAIRED_FOR_MS } from '../../../src/server/pairing/pairings.ts';
import { WARN_MS } from '../../../src/server/pairing/standing.ts';
import { joinBay, openFromLaptop, pairAs } from '../helpers/bay.ts';
import { browser, newShop, served } from '../helpers/opened.ts';
import { beginHere, keyOf, openPage, touchOnly, waitForKey } from '../helpers/page.ts';

const mayTouch = (page: Page) => page.locator('.choice:not([aria-disabled="true"])').first().waitFor();

it("shows what is left in a phone's battery, as a warning where that is little, and renews a device for a day", async () => {
  const shop = await newShop();
  const phone = await openFromLaptop(browser, shop, []);
  await phone.context().addInitScript(() => {
    const battery = Object.assign(new EventTarget(), { level: 0.12, charging: false });
    Object.defineProperty(navigator, 'getBattery', { value: async () => battery });
  });
  await phone.reload();
  await pairAs(phone, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await supervisor.locator('.worse', { hasText: 'battery 12 %' }).waitFor();

  const ending = phone.getByText('The pairing of this device ends within the hour');
  expect(await ending.count()).toBe(0);
  shop.passWall(PAIRED_FOR_MS - WARN_MS + 60_000);
  await ending.waitFor();
  await supervisor.getByRole('button', { name: /^Renew for a day/ }).click();
  await ending.waitFor({ state: 'detached' });
  for (const page of [phone, supervisor]) await page.context().close();
});

it('a device without a battery that can be asked is shown without one', async () => {
  const shop = await newShop();
  const phone = await openFromLaptop(browser, shop, []);
  await phone
    .context()
    .addInitScript(() => Object.defineProperty(navigator, 'getBattery', { value: undefined }));
  await phone.reload();
  await pairAs(phone, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  const device = supervisor.locator('li', { hasText: "second's device" });
  await device.getByText('connected').waitFor();
  expect(await device.textContent()).not.toContain('battery');
  for (const page of [phone, supervisor]) await page.context().close();
});

it('Escape in a search field stops nothing while the engine is confirmed off; anywhere else it does', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(supervisor, 'job.card.asking');
  await supervisor.getByPlaceholder('Vehicle, person, fault…').focus();
  await supervisor.keyboard.press('Escape');
  await technician.locator('.choice', { hasText: 'card is right' }).click();
  await waitForKey(technician, 'job.makerFirst.asking');
  await waitForKey(supervisor, 'job.makerFirst.asking');

  await supervisor.locator('.asked').focus();
  await supervisor.keyboard.press('Escape');
  await waitForKey(technician, 'stopped.makingSafe');
  for (const page of [technician, supervisor]) await page.context().close();
});

it('a key that is held down on an answer is one answer', async () => {
  const { page, context } = await openPage(browser, served.origin, { settings: touchOnly });
  await beginHere(page);
  await mayTouch(page);
  await page.locator('.choice').first().focus();
  // Each further `down` of a key that is down is a repeat, as a keyboard sends them.
  for (let i = 0; i < 12; i += 1) await page.keyboard.down('Enter');
  await waitForKey(page, 'job.makerFirst.asking');
  await mayTouch(page);
  await page.locator('.choice').first().focus();
  for (let i = 0; i < 12; i += 1) await page.keyboard.down('Enter');
  await page.keyboard.up('Enter');
  await mayTouch(page);
  expect(await keyOf(page)).toBe('job.makerFirst.asking');
  await context.close();
});
