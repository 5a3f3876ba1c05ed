import type { Browser, BrowserContext } from 'playwright-core';
import { openBrowser } from '../../tests/tablet/helpers/browser.ts';
import { PATIENCE_MS } from '../../tests/tablet/helpers/page.ts';
import { type Served, servePage } from '../../tests/tablet/helpers/serve.ts';

const TIMES = 5;

/** What belongs to hearing: the recognizer, its front end, its model and the phone network. */
const isHearing = (path: string) => /ear-worker|capture-worklet|\/english-/.test(path);
/** The embedded voice, for devices that have none of their own. */
const isVoice = (path: string) => /flite|speech-worker/.test(path);

/** From the address to a page that listens, "Begin" touched as soon as it is there. */
async function toListening(context: BrowserContext, origin: string): Promise<number> {
  const page = await context.newPage();
  const startMs = performance.now();
  await page.goto(origin, { waitUntil: 'commit' });
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.getByText('Listening: ').filter({ hasNotText: 'by touch only' }).waitFor();
  const tookMs = performance.now() - startMs;
  await page.close();
  return tookMs;
}

async function newContext(browser: Browser, voice: 'voice' | 'silent'): Promise<BrowserContext> {
  const context = await browser.newContext();
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(
    value => localStorage.setItem('first-fire-settings', value),
    JSON.stringify({ voice }),
  );
  return context;
}

const kilobytes = (served: Served, of: (path: string) => boolean) =>
  Math.round([...served.sent].reduce((sum, [path, bytes]) => sum + (of(path) ? bytes : 0), 0) / 1000);

const inSeconds = (timesMs: readonly number[]) =>
  [...timesMs]
    .sort((a, b) => a - b)
    .map(ms => (ms / 1000).toFixed(2))
    .join(', ');

/** What a first visit loads, by what it is for. */
async function benchBytes(browser: Browser): Promise<void> {
  const served = await servePage();
  const context = await newContext(browser, 'silent');
  await toListening(context, served.origin);
  console.log(
    `First load, compressed: page ${kilobytes(served, path => !isHearing(path) && !isVoice(path))} kB, hearing ${kilobytes(served, isHearing)} kB, voice ${kilobytes(served, isVoice)} kB`,
  );
  for (const [path, bytes] of [...served.sent].sort((a, b) => b[1] - a[1]).slice(0, 8))
    console.log(`  ${path}: ${Math.round(bytes / 1000)} kB`);
  await context.close();
  await served.close();
}

/** From the address to a page that listens: with nothing kept, and with everything kept by the service worker. */
async function benchTimes(browser: Browser, voice: 'voice' | 'silent'): Promise<void> {
  const served = await servePage();
  const coldMs: number[] = [];
  const warmMs: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    const context = await newContext(browser, voice);
    coldMs.push(await toListening(context, served.origin));
    const page = await context.newPage();
    await page.goto(served.origin);
    await page.getByText('Ready for use without a network.').waitFor();
    await page.close();
    warmMs.push(await toListening(context, served.origin));
    await context.close();
  }
  console.log(`Page to listening, voice ${voice === 'silent' ? 'off' : 'on'}, seconds, least to most`);
  console.log(`  cold: ${inSeconds(coldMs)}`);
  console.log(`  warm: ${inSeconds(warmMs)}`);
  await served.close();
}

/** How long the built page takes to listen, and how much it loads. */
export async function benchOpening(): Promise<void> {
  const browser = await openBrowser();
  try {
    await benchBytes(browser);
    await benchTimes(browser, 'silent');
    await benchTimes(browser, 'voice');
  } finally {
    await browser.close();
  }
}
