import type { Browser, CDPSession, Page } from 'playwright-core';
import { linesOfGoodStart } from '../../audio-fixtures/good-start.ts';
import { openBrowser } from '../../tests/tablet/helpers/browser.ts';
import { answerAtOnce, openPage, touchOnly } from '../../tests/tablet/helpers/page.ts';
import { servePage } from '../../tests/tablet/helpers/serve.ts';
import { passUntil } from '../../tests/tablet/helpers/time.ts';

/** Session time that a tablet is held through, in jobs one after the other in one page that is never reloaded. */
const SESSION_TIME_S = 2 * 3600;
const LISTEN_S = 30;
const MEGABYTE = 1e6;

/** What the page holds once everything that nobody refers to is thrown away, in bytes. */
async function heapOf(session: CDPSession): Promise<number> {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? 0;
}

/** One whole start by touch, from the form to the form again; session time that it took, in seconds. */
async function wholeJob(page: Page, lines: Awaited<ReturnType<typeof linesOfGoodStart>>): Promise<number> {
  const startedMs = await page.evaluate(() => Date.now());
  await page.getByRole('radio', { name: 'Demo four' }).check();
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.locator('[data-key]').first().waitFor();
  for (const { when, says } of lines) {
    await passUntil(page, when);
    await answerAtOnce(page, says);
    if (!when.startsWith('firstFire.oilPressure')) await page.clock.fastForward(1500);
  }
  await page.getByRole('status').filter({ hasText: 'Signed off' }).waitFor();
  const tookMs = (await page.evaluate(() => Date.now())) - startedMs;
  await page.getByRole('button', { name: 'To the beginning' }).click();
  return tookMs / 1000;
}

async function benchMemory(browser: Browser, origin: string): Promise<void> {
  const lines = await linesOfGoodStart('demo-four', undefined, 'keys');
  const { page, context } = await openPage(browser, origin, { settings: touchOnly, ownClock: true });
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  const figures = [await heapOf(session)];
  for (let passedS = 0; passedS < SESSION_TIME_S; ) {
    passedS += await wholeJob(page, lines);
    figures.push(await heapOf(session));
    console.log(`after ${Math.round(passedS / 60)} min of session time: ${megabytes(figures.at(-1))} MB`);
  }
  console.log(`heap before the first job and after each: ${figures.map(megabytes).join(', ')} MB`);
  await context.close();
}

const megabytes = (bytes = 0) => (bytes / MEGABYTE).toFixed(1);

/** Processor time of all pages of this browser so far, in seconds. */
async function pageSeconds(session: CDPSession): Promise<number> {
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo.filter(({ type }) => type === 'renderer').reduce((sum, { cpuTime }) => sum + cpuTime, 0);
}

async function benchListening(browser: Browser, origin: string, ear: 'embedded' | 'keys'): Promise<void> {
  const { page, context } = await openPage(browser, origin, { settings: { ear, voice: 'silent' } });
  await page.getByRole('button', { name: 'Begin here' }).click();
  const listens = page.locator('.source', { hasText: 'Listening: ' });
  await (ear === 'keys' ? listens : listens.filter({ hasNotText: 'by touch only' })).waitFor();
  const session = await browser.newBrowserCDPSession();
  const [before, fromMs] = [await pageSeconds(session), performance.now()];
  await page.waitForTimeout(LISTEN_S * 1000);
  const share = (await pageSeconds(session)) - before;
  const tookS = (performance.now() - fromMs) / 1000;
  console.log(
    `${ear === 'keys' ? 'by touch' : 'listening'}: ${((100 * share) / tookS).toFixed(1)} % of a processor`,
  );
  await context.close();
}

/** What the page costs a tablet: memory over two hours of session time driven fast, and processor share. */
export async function benchTablet(): Promise<void> {
  const served = await servePage();
  const browser = await openBrowser();
  try {
    for (const ear of ['keys', 'embedded'] as const) await benchListening(browser, served.origin, ear);
    await benchMemory(browser, served.origin);
  } finally {
    await browser.close();
    await served.close();
  }
}
