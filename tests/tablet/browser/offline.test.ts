import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { preview } from 'vite';
import { expect, it, onTestFinished } from 'vitest';
import { VOCABULARY } from '../../../src/record/vocabulary/index.ts';
import { takeAuthority } from '../../server/support/authority.ts';
import { openShop } from '../../server/support/shop.ts';
import { openBrowser, openBrowserThatTrusts } from '../helpers/browser.ts';
import { answer, beginHere, openPage, PATIENCE_MS, touchOnly, waitForKey } from '../helpers/page.ts';
import { pageFolder, servePage } from '../helpers/serve.ts';

const RELOADS = 20;

const closing = (browser: Browser): Browser => {
  onTestFinished(() => browser.close());
  return browser;
};

const beginIsThere = (page: Page) => page.getByRole('button', { name: 'Begin here' }).waitFor();

/** As `npm run tablet` serves it. */
async function servedByVite() {
  const configFile = fileURLToPath(new URL('../../../vite.tablet.config.ts', import.meta.url));
  const server = await preview({ configFile, logLevel: 'error', preview: { port: 0, host: '127.0.0.1' } });
  const address = server.httpServer.address();
  if (typeof address !== 'object' || address === null) throw new Error('The server has no port.');
  return { origin: `http://127.0.0.1:${address.port}`, close: () => server.close() };
}

it(`is there in ${RELOADS} of ${RELOADS} reloads once the server of npm run tablet has gone`, async () => {
  const server = await servedByVite();
  const { page, faults } = await openPage(closing(await openBrowser()), server.origin, {
    settings: touchOnly,
    serviceWorkers: 'allow',
  });
  await page.getByText('Ready for use without a network.').waitFor();
  await server.close();
  await expect(fetch(server.origin)).rejects.toThrow();
  let there = 0;
  for (let nth = 0; nth < RELOADS; nth += 1) {
    await page.reload();
    await beginIsThere(page);
    there += 1;
  }
  expect(there).toBe(RELOADS);
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  expect(faults).toEqual([]);
});

it('is kept from a laptop whose authority the device trusts, without a warning, and is there when it has gone', async () => {
  const shop = await openShop({ page: pageFolder });
  const browser = closing(await openBrowserThatTrusts((await takeAuthority(shop.base)).toString()));
  const context = await browser.newContext({ serviceWorkers: 'allow' });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(
    value => localStorage.setItem('first-fire-settings', value),
    JSON.stringify(touchOnly),
  );
  const page = await context.newPage();
  await page.goto(`https://localhost:${shop.server.port}/trust`);
  await page.getByText(shop.server.authority).waitFor();
  await page.goto(`https://localhost:${shop.server.port}/`);
  await page.getByText('Ready for use without a network.').waitFor();
  // Kept, the page still lets the laptop answer for itself.
  await page.goto(`https://localhost:${shop.server.port}/trust`);
  await page.getByText(shop.server.authority).waitFor();
  await shop.server.close();
  for (let nth = 0; nth < 3; nth += 1) {
    await page.goto(`https://localhost:${shop.server.port}/`);
    await beginIsThere(page);
  }
});

it('warns of a laptop whose authority the device does not trust', async () => {
  const shop = await openShop({ page: pageFolder });
  onTestFinished(() => shop.server.close());
  const page = await closing(await openBrowser()).newPage();
  await expect(page.goto(`https://localhost:${shop.server.port}/`)).rejects.toThrow(
    /ERR_CERT_AUTHORITY_INVALID/,
  );
});

/** The page as a later build would be: another list in its service worker. */
async function laterBuild(change: (worker: string) => string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'later-page-'));
  await cp(pageFolder, folder, { recursive: true });
  const path = join(folder, 'service-worker.js');
  await writeFile(path, change(await readFile(path, 'utf8')));
  await rm(`${path}.gz`);
  return folder;
}

const otherVersion = (worker: string) => worker.replace(/(version\W+)[0-9a-f]{12}/, '$1ffffffffffff');

it('takes no update while a session is open in another tab, and loses none by one that could not go on with it', async () => {
  const served = await servePage();
  onTestFinished(() => served.close());
  const browser = closing(await openBrowser());
  const { page, context } = await openPage(browser, served.origin, {
    settings: touchOnly,
    serviceWorkers: 'allow',
  });
  await page.getByText('Ready for use without a network.').waitFor();
  await page.reload();
  const folder = await laterBuild(worker =>
    otherVersion(worker).replace(/(vocabulary\W+)\d+/, (_, before: string) => `${before}${VOCABULARY + 1}`),
  );
  const other = await context.newPage();
  await other.goto(served.origin);
  await beginHere(other);
  served.serveFrom(folder);
  await page.reload();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.getByText('It cannot go on with the session of this device that is not over').waitFor();
  const sameVocabulary = await laterBuild(worker =>
    worker.replace(/(version\W+)[0-9a-f]{12}/, '$1eeeeeeeeeeee'),
  );
  served.serveFrom(sameVocabulary);
  await page.reload();
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.ready).update();
  });
  await page.reload();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.getByText('A session is open on this device').waitFor();
  await answer(other, 'card is right');
  await waitForKey(other, 'job.makerFirst.asking');
  await other.getByRole('button', { name: 'Leave' }).click();
  await beginIsThere(other);
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.getByRole('button', { name: /^Go on/ }).click();
  await page.getByRole('status').filter({ hasText: 'Stopped. Key off.' }).waitFor();
});
