import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { languageCodes } from '../../../prompts/index.ts';
import { loadProfile } from '../../../src/profile/load.ts';
import type { View } from '../../../src/session/view.ts';
import { pageWords } from '../../../src/tablet/words/index.ts';
import { openBrowser } from '../helpers/browser.ts';
import { everyView } from '../helpers/every-view.ts';
import { type Served, servePage } from '../helpers/serve.ts';
import { openWalk } from '../helpers/walk.ts';

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

/** Far more than there are would mean that states are told apart that are one; fewer, that some are not come to. */
const LEAST_STATES = 225;
const HOUR_MS = 3_600_000;
/** All states take minutes: `npm run in-sight` walks through each, the tests through every so many. */
const EVERY = process.env.FIRST_FIRE_EVERY_STATE === '1' ? 1 : 16;
/** Some states only, by their keys with commas between; with FIRST_FIRE_PICTURES=folder, pictures of them. */
const { FIRST_FIRE_STATE: ONLY, FIRST_FIRE_PICTURES: PICTURES } = process.env;
const isLookedAt = ({ key }: View, index: number) =>
  ONLY ? ONLY.split(',').includes(key) : index % EVERY === 0;

for (const code of languageCodes) {
  it(
    `keeps the question, the engine, the time and the stop control in sight, for all roles and sizes (${code})`,
    async () => {
      const views = everyView(await loadProfile('demo-six'), code);
      expect(views.length).toBeGreaterThan(LEAST_STATES);
      for (const engine of ['off', 'cranking', 'running', 'unsure'])
        expect(views.some(view => view.engine === engine)).toBe(true);
      const walk = await openWalk(browser, served.origin, code, pageWords[code].start.pair);
      const faults: string[] = [];
      for (const view of views.filter(isLookedAt)) {
        faults.push(...(await walk.show(view)));
        if (ONLY && PICTURES)
          for (const theme of ['light', 'dark'] as const)
            await walk.keepPictures(PICTURES, `${view.key}-${code}`, theme);
      }
      expect(faults).toEqual([]);
      await walk.close();
    },
    HOUR_MS,
  );
}
