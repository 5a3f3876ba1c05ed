import { readFile } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { linesOfGoodStart } from '../../../audio-fixtures/good-start.ts';
import { verifyLog } from '../../../src/record/index.ts';
import { pageWords } from '../../../src/tablet/words/index.ts';
import { openBrowser } from '../helpers/browser.ts';
import { picturePart } from '../helpers/looks.ts';
import { answerAtOnce, openPage, touchOnly } from '../helpers/page.ts';
import { type Served, servePage } from '../helpers/serve.ts';
import { passUntil } from '../helpers/time.ts';

const WATCH = 'warmUp.watch.asking';

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

it.each([
  ['demo-four', 'en', 'Demo four', 3],
  ['demo-four', 'es', 'Demo four', 3],
  ['demo-genset', 'en', 'Demo generating set', 2],
  ['demo-boat', 'en', 'Demo boat', 3],
] as const)(
  'leads through a whole first start of %s (%s) by touch and keys, and saves a record that verifies',
  async (profile, code, shown, plots) => {
    const words = pageWords[code];
    const lines = await linesOfGoodStart(profile, undefined, 'keys', code);
    const { page, faults } = await openPage(browser, served.origin, {
      settings: { ...touchOnly, language: code },
      ownClock: true,
    });
    await page.getByRole('radio', { name: shown }).check();
    await page.getByRole('button', { name: words.start.begin }).click();
    await page.locator('[data-key]').first().waitFor();
    const afterWatch = lines[lines.findLastIndex(({ when }) => when === WATCH) + 1]?.when ?? WATCH;
    for (const { when, says } of lines) {
      // Hands are slower here: the engine may have warmed up by a look less.
      if ((await passUntil(page, when, ...(when === WATCH ? [afterWatch] : []))) !== when) continue;
      await answerAtOnce(page, says);
      // People take a moment, but not where seconds count.
      if (!when.startsWith('firstFire.oilPressure')) await page.clock.fastForward(1500);
    }
    await page.getByRole('status').filter({ hasText: words.over.signedOff }).waitFor();
    expect(await page.locator('figure.plot').count()).toBeGreaterThanOrEqual(plots);
    await picturePart(page, 'figure.plot', `plots-${profile}-${code}`);
    expect(faults).toEqual([]);

    await page.getByRole('button', { name: words.theEnd }).click();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: new RegExp(`^${words.start.save}`) }).click();
    const saved = await saving;
    const path = await saved.path();
    expect(saved.suggestedFilename()).toMatch(/^first-fire-.*\.jsonl$/);
    expect(await verifyLog(path)).toMatchObject({ ok: true });
    const recorded = (await readFile(path, 'utf8')).trim().split('\n');
    expect(recorded.some(line => line.includes('"kind":"closed"') && line.includes('signedOff'))).toBe(true);
  },
);
