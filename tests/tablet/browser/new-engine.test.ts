import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser } from '../helpers/browser.ts';
import { openPage, touchOnly } from '../helpers/page.ts';
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

/** What is answered to what, by a part of the question; the rest is taken as it is put forward. */
const answers: readonly (readonly [asked: RegExp, answer: string])[] = [
  [/A real engine/, 'no'],
  [/Name of the profile/, 'Tablet four'],
  [/Cylinders/, '4'],
  [/Displacement/, '3.9'],
  [/Rated speed/, '2400'],
  [/What it drives/, 'a vehicle'],
  [/A turbocharger/, 'no'],
  [/Fuelling, and so how/, 'mechanical: a lever is put to no delivery'],
  [/What stops it when the key does not/, 'air flap at the intake'],
  [/has to be stopped/, '2700'],
  [/Least oil pressure at idle/, '1'],
  [/Least oil pressure at rated speed/, '3'],
  [/Oil with a new filter/, '9.5'],
  [/Oil filter/, 'fitted dry'],
  [/Coolant in the whole system/, '11'],
  [/Fuel tank/, '70'],
  [/Fuel filters one behind/, 'one'],
  [/Heater for cold starts/, 'none'],
];

const heading = (page: Page) => page.locator('#asked').textContent();

/** Answers one question: by its control where it has one, else in words, else as it is put forward. */
async function answerOne(page: Page): Promise<void> {
  const asked = (await heading(page)) ?? '';
  const given = answers.find(([about]) => about.test(asked))?.[1];
  const control = page.getByRole('button', { name: given ?? '', exact: true });
  const write = page.getByLabel('Answer', { exact: true });
  if (given !== undefined && (await control.count()) > 0) await control.click();
  else if (given !== undefined && (await write.count()) > 0) {
    await write.fill(given);
    await page.getByRole('button', { name: 'Next', exact: true }).click();
  } else await page.getByRole('button', { name: /^Take as put forward/ }).click({ timeout: 5000 });
  await page.waitForFunction(before => document.querySelector('#asked')?.textContent !== before, asked);
}

it('describes a new engine on the device, in one go or two, and leads a start of it', async () => {
  const { page, faults } = await openPage(browser, served.origin, { settings: touchOnly });
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  for (let count = 0; count < 6; count += 1) await answerOne(page);
  // What is wrong is said in a sentence, and asked again.
  const before = await heading(page);
  expect(before).toContain('Rated speed');
  await page.getByLabel('Answer', { exact: true }).fill('fast');
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  await page.getByText('"fast" is no number').waitFor();
  await page.getByRole('button', { name: /^Leave/ }).click();
  // Left, and gone on with after the page was loaded anew.
  await page.reload();
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  expect(await heading(page)).toBe(before);
  for (let count = 0; count < 70 && (await page.locator('#made').count()) === 0; count += 1)
    await answerOne(page);
  await page.getByText(/of its values are only assumed/).waitFor();
  await page.getByRole('button', { name: 'Keep this engine on this device' }).click();
  await page.reload();
  const engine = page.getByRole('radio', { name: 'Tablet four' });
  expect(await engine.isChecked()).toBe(true);
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.locator('[data-key="job.card.asking"]').first().waitFor();
  expect(faults).toEqual([]);
});
