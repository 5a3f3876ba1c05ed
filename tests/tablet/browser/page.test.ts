import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser } from '../helpers/browser.ts';
import { faultsByAxe, lookAt, pictures } from '../helpers/looks.ts';
import { answer, beginHere, keyOf, openPage, touchOnly, waitForKey } from '../helpers/page.ts';
import { type Served, servePage } from '../helpers/serve.ts';

let browser: Browser;
let served: Served;
beforeAll(async () => {
  served = await servePage();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const sizes = [
  { name: 'tablet-landscape', width: 1280, height: 800, theme: 'light', hand: 'right' },
  { name: 'tablet-portrait', width: 800, height: 1280, theme: 'dark', hand: 'right' },
  { name: 'phone-portrait', width: 360, height: 740, theme: 'light', hand: 'left' },
  { name: 'phone-landscape', width: 915, height: 412, theme: 'dark', hand: 'left' },
] as const;

const untilTheFirstReading = [
  ['job.card.asking', 'card is right'],
  ['job.makerFirst.asking', 'understood'],
  ['job.protection.asking', 'protection on'],
  ['job.hazards.asking', 'understood'],
  ['job.ventilation.asking', 'air is good'],
  ['job.extinguisher.asking', 'extinguisher ready'],
  ['job.parked.asking', 'vehicle secured'],
  ['job.cutOff.asking', 'cut off ready'],
] as const;

for (const { name, width, height, theme, hand } of sizes) {
  it(`can be used with gloves, by anybody, on a ${name.replace('-', ' in ')}`, async () => {
    const settings = { ...touchOnly, theme, hand };
    const { page, context, faults } = await openPage(browser, served.origin, {
      settings,
      size: { width, height },
    });
    const look = (screen: string) => lookAt(page, `${name}-${screen}`);
    await look('start');
    await beginHere(page);
    const stop = page.getByRole('button', { name: 'STOP' });
    const place = await stop.boundingBox();
    await look('prompt');
    for (const [key, text] of untilTheFirstReading) {
      await waitForKey(page, key);
      await answer(page, text);
    }
    await waitForKey(page, 'job.ambient.asking');
    await look('number');
    // Held upright, the whole pad is in sight: nobody scrolls with a glove to send what was typed.
    const pad = await page.locator('.pad').boundingBox();
    if (height > width) expect((pad?.y ?? height) + (pad?.height ?? 0)).toBeLessThanOrEqual(place?.y ?? 0);
    expect(await stop.boundingBox()).toEqual(place);
    await stop.click();
    await page.getByRole('status').filter({ hasText: 'Stopped. Key off.' }).waitFor();
    await look('stopped');
    expect(await stop.boundingBox()).toEqual(place);
    expect(faults).toEqual([]);
    await context.close();
  });
}

it('goes on with a session after a reload without a network', async () => {
  const { page, context } = await openPage(browser, served.origin, {
    settings: touchOnly,
    serviceWorkers: 'allow',
  });
  await page.getByText('Ready for use without a network.').waitFor();
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await context.setOffline(true);
  await page.reload();
  await page.getByRole('button', { name: /^Go on/ }).click();
  await page.getByRole('status').filter({ hasText: 'Stopped. Key off.' }).waitFor();
  expect(await keyOf(page)).toBe('stopped.makingSafe');
  await context.close();
});

it('joins no laptop where there is none, and says so', async () => {
  const { page, context } = await openPage(browser, served.origin, { settings: touchOnly });
  await page.getByRole('button', { name: "Join the bay's laptop" }).click();
  await page.getByLabel('Six digits').fill('123456');
  await page.getByLabel('Name of this device').fill('phone');
  expect(await faultsByAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
  await page.getByText('There is no laptop at this address').waitFor();
  await context.close();
});

it('says in one sentence when the browser has no recognition service', async () => {
  const { page, context } = await openPage(browser, served.origin, {
    settings: { ...touchOnly, ear: 'webSpeech' },
  });
  await page.evaluate(() => {
    for (const name of ['SpeechRecognition', 'webkitSpeechRecognition'])
      Reflect.set(globalThis, name, undefined);
  });
  await beginHere(page);
  await page.getByText('This browser has no recognition service of its own').waitFor();
  await context.close();
});

it('refuses an engine profile that is wrong, with what is wrong in it', async () => {
  const { page, context } = await openPage(browser, served.origin, { settings: touchOnly });
  const file = join(pictures, 'wrong.json');
  writeFileSync(file, '{"name": 7}');
  await page.getByLabel('Load an engine profile').setInputFiles(file);
  await page.getByRole('alert').filter({ hasText: 'Profile wrong.json: ' }).waitFor();
  await context.close();
});
