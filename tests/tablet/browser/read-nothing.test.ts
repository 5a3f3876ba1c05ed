import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { languages } from '../../../prompts/index.ts';
import { pageWords } from '../../../src/tablet/words/index.ts';
import { voiceLanguage } from '../../../src/voice/languages/index.ts';
import { joinBay, openFromLaptop } from '../helpers/bay.ts';
import { lookAt, picture } from '../helpers/looks.ts';
import { browser, newShop, served } from '../helpers/opened.ts';
import { answer, keyOf, openPage, waitForKey } from '../helpers/page.ts';

/** A record is checked in threads that go behind everything else on a busy machine. */
const CHECKED_WITHIN_MS = 150_000;
const phone = { width: 390, height: 844 };
const tablet = { width: 1024, height: 768 };

/** Good in degrees, and as metres or feet. */
const FIGURE = '21';

/** Touches the first answer, as soon as it may be touched, or gives a figure, until this is asked. */
async function answerUntil(page: Page, key: string): Promise<void> {
  for (let now = await keyOf(page); now !== key; now = await keyOf(page)) {
    await page.locator('.choice:not([aria-disabled="true"])').first().waitFor();
    const isFigure = (await page.locator('.pad').count()) > 0 && now?.endsWith('.asking');
    if (isFigure) await answer(page, FIGURE);
    else await page.locator('.choice').first().click();
    await page.locator(`[data-key]:not([data-key="${now}"])`).first().waitFor();
    // Whatever has the focus, the next question begins at its top.
    if (isFigure) {
      await page.waitForTimeout(300);
      expect(await page.evaluate(() => document.querySelector('.work')?.scrollTop)).toBe(0);
    }
  }
}

/** Whether STOP was in the very first picture of the page. */
const noteFirstPicture = (page: Page) =>
  page.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (!document.querySelector('#page > *')) return;
      observer.disconnect();
      Reflect.set(globalThis, 'stopWasThere', document.querySelector('.stop') !== null);
    }).observe(document, { subtree: true, childList: true });
  });
const stopWasThere = (page: Page) => page.evaluate(() => Reflect.get(globalThis, 'stopWasThere') === true);

it('a device that is loaded anew is in its bay again, with STOP from its first picture on, until somebody leaves', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const second = await openFromLaptop(browser, shop, []);
  await second.getByRole('button', { name: "Join the bay's laptop" }).click();
  // As the laptop shows it.
  await second.getByLabel('Six digits').fill(shop.code('second').replace(/^(\d{3})/, '$1 '));
  await second.getByLabel('Name of this device').fill('phone');
  await second.getByRole('button', { name: 'Join', exact: true }).click();
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(second, 'job.card.asking');

  await noteFirstPicture(second);
  await second.reload();
  await second.locator('.stop').click();
  expect(await stopWasThere(second)).toBe(true);
  await waitForKey(technician, 'stopped.makingSafe');
  await waitForKey(second, 'stopped.makingSafe');

  await technician.reload();
  await waitForKey(technician, 'stopped.makingSafe');
  await second.getByRole('button', { name: 'Leave' }).click();
  await second.reload();
  await second.getByRole('button', { name: 'Begin here' }).waitFor();

  // What is set aside can be gone on with at once, in the list that was open before.
  await technician.locator('.stop').click();
  await answerUntil(technician, 'stopped.askingCause');
  await technician.getByRole('button', { name: 'Set aside for another day' }).click();
  await technician.getByText(pageWords.en.waitingFor.technician).waitFor();
  expect(await technician.getByText(pageWords.en.stopped(pageWords.en.keyOff)).count()).toBe(0);
  await technician.getByText('Sessions of this bay that are not over').click();
  await technician
    .locator('.records')
    .getByRole('button', { name: /^Go on/ })
    .waitFor({ timeout: CHECKED_WITHIN_MS });
  for (const page of [technician, second]) await page.context().close();
});

it('in the drill who is asked is told to touch STOP, and offered nothing else', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const second = await joinBay(browser, shop, 'second');
  await technician.setViewportSize(tablet);
  await second.setViewportSize(phone);
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(second, 'job.card.asking');
  await answerUntil(technician, 'job.stopTechnician.asking');
  await technician.getByText(pageWords.en.touchStop).waitFor();
  await picture(technician, 'drill-technician');
  await technician.getByRole('button', { name: /^STOP/ }).click();

  await second.getByText(pageWords.en.touchStop).waitFor();
  await waitForKey(second, 'stopped.drillGoesOn');
  expect(await second.locator('.choice').count()).toBe(0);
  expect(await second.getByText('After a stop').count()).toBe(0);
  await lookAt(second, 'drill-second');
  // Two touches within a moment are one hand.
  shop.clock().advance(1000);
  await second.getByRole('button', { name: /^STOP/ }).click();
  await waitForKey(technician, 'stopped.drill');
  for (const page of [technician, second]) await page.context().close();
});

/** How many pixels lie between a call for help and STOP, at the least. */
const apart = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const stop = document.querySelector('.stop')?.getBoundingClientRect();
    const calls = [...document.querySelectorAll('.help button')].map(each => each.getBoundingClientRect());
    if (!stop || calls.length < 2) return -1;
    const gap = (box: DOMRect) =>
      Math.max(stop.left - box.right, box.left - stop.right, stop.top - box.bottom, box.top - stop.bottom);
    return Math.min(...calls.map(gap));
  });

it("fire and injury are called from the technician's device too, in one touch that is not beside STOP", async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const second = await joinBay(browser, shop, 'second');
  await technician.getByRole('button', { name: 'Begin' }).click();
  for (const page of [technician, second]) {
    await waitForKey(page, 'job.card.asking');
    for (const size of [phone, tablet, { width: 320, height: 568 }, { width: 844, height: 390 }]) {
      await page.setViewportSize(size);
      expect(await apart(page), JSON.stringify(size)).toBeGreaterThanOrEqual(40);
      await lookAt(page, `help-${page === second ? 'second' : 'technician'}-${size.width}`);
    }
  }
  await technician.locator('.help').getByRole('button', { name: 'someone is hurt' }).click();
  for (const page of [technician, second])
    await page.locator('.loud .danger', { hasText: languages.en.lines.surgery }).waitFor();
  for (const page of [technician, second]) await page.context().close();
});

it.each(['es', 'fr'] as const)(
  'that nothing, or less, is heard in %s is read before anything is answered',
  async code => {
    const { page, context } = await openPage(browser, served.origin, {
      settings: { ear: 'embedded', voice: 'silent', language: code },
      size: phone,
    });
    await page.getByRole('button', { name: pageWords[code].start.begin }).click();
    const caution = page.locator('.problems p', { hasText: voiceLanguage(code).caution ?? 'none' });
    await caution.waitFor();
    const boxes = async () => ({
      caution: await caution.boundingBox(),
      answer: await page.locator('.choice').first().boundingBox(),
    });
    const before = await boxes();
    expect((before.caution?.y ?? 0) + (before.caution?.height ?? 0)).toBeLessThan(before.answer?.y ?? 0);
    expect((before.caution?.y ?? 0) + (before.caution?.height ?? 0)).toBeLessThan(phone.height - 200);
    await picture(page, `caution-${code}`);
    for (const line of await page.locator('.heard, .source').all())
      expect(await line.evaluate(each => each.scrollWidth - each.clientWidth)).toBeLessThanOrEqual(0);
    await page.getByRole('button', { name: pageWords[code].haveRead }).first().click();
    await expect.poll(async () => (await boxes()).caution?.y).toBeGreaterThan((await boxes()).answer?.y ?? 0);
    await picture(page, `caution-${code}-read`);
    await context.close();
  },
);
