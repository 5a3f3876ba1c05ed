import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser } from '../helpers/browser.ts';
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

const FIRST = 'job.makerFirst.asking';
const NEXT = 'job.protection.asking';
const BEFORE = 'Written before this question was here';

/** The question has stood there for long enough to be read. */
const mayAnswer = (page: Page) =>
  page.locator('.write button[type="submit"][aria-disabled="false"]').waitFor();

/** "Protection on" is written for a question that another hand answers meanwhile: it would answer the next one. */
async function writtenForTheOneBefore(): Promise<Page> {
  const { page } = await openPage(browser, served.origin, { settings: touchOnly });
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, FIRST);
  await mayAnswer(page);
  await page.locator('#write').fill('protection on');
  await answer(page, 'understood');
  await waitForKey(page, NEXT);
  return page;
}

/** As the Enter key does; the screen has had its time to take in what comes of it. */
const send = async (page: Page) => {
  await page.locator('#write').press('Enter');
  await page.waitForTimeout(600);
};

it('sends what was written for a question to no other, until somebody says that it is for that one', async () => {
  const page = await writtenForTheOneBefore();
  await send(page);
  await page.getByText(BEFORE).waitFor();
  await send(page);
  await page.locator('#write').pressSequentially('!');
  await page.locator('#write').press('Backspace');
  await send(page);
  expect(await keyOf(page)).toBe(NEXT);
  expect(await page.locator('#write').inputValue()).toBe('protection on');
  await page.getByRole('button', { name: 'It is for this question' }).click();
  await page.getByText(BEFORE).waitFor({ state: 'detached' });
  await send(page);
  await page.locator(`[data-key="${NEXT}"]`).waitFor({ state: 'detached' });
  expect(await page.locator('#write').inputValue()).toBe('');
  await page.context().close();
});

it('clears it, and takes what is written then', async () => {
  const page = await writtenForTheOneBefore();
  await page.getByRole('button', { name: 'Clear', exact: true }).click();
  await page.getByText(BEFORE).waitFor({ state: 'detached' });
  expect(await page.locator('#write').inputValue()).toBe('');
  await mayAnswer(page);
  await page.locator('#write').pressSequentially('protection on');
  await send(page);
  await page.locator(`[data-key="${NEXT}"]`).waitFor({ state: 'detached' });
  await page.context().close();
});

it('sends a stop that was written for another question at once', async () => {
  const page = await writtenForTheOneBefore();
  await page.locator('#write').fill('please stop');
  await page.getByText(BEFORE).waitFor();
  await page.locator('#write').press('Enter');
  await page.locator('.chip.danger', { hasText: 'Stopped' }).waitFor();
  expect(await page.locator('#write').inputValue()).toBe('');
  await page.context().close();
});
