import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { joinBay, openFromLaptop, pairAs } from '../helpers/bay.ts';
import { openBrowserAsItIs } from '../helpers/browser.ts';
import { lookAt } from '../helpers/looks.ts';
import { browser, newShop } from '../helpers/opened.ts';
import { keyOf, waitForKey } from '../helpers/page.ts';
import { ROOM_RATE_HZ, recordingOf, reply } from '../helpers/room.ts';

const DEAF = 'Nothing is heard or said on this device: touch the screen.';
const UNSAID = 'The browser let a sentence not be heard';
/** What nobody is to see or hear in this time does not come. */
const WHILE_MS = 10_000;

let asItIs: Browser;
beforeAll(async () => {
  // A room in which somebody says "stop" every few seconds.
  const wav = join(mkdtempSync(join(tmpdir(), 'before-a-touch-')), 'stop.wav');
  const samples = recordingOf(5, [reply('second-stop')], 1);
  writeFileSync(wav, encodeWav({ samples, sampleRateHz: ROOM_RATE_HZ }));
  asItIs = await openBrowserAsItIs(wav);
});
afterAll(() => asItIs?.close());

/** The second person's page as a tab comes back that the browser had put away: nobody has touched it. */
async function comesBackUntouched(page: Page) {
  const tab = await page.context().newPage();
  await page.close();
  /** What the laptop was told last: whether this device hears. */
  const told = { listens: false };
  tab.on('websocket', socket =>
    socket.on('framesent', ({ payload }) => {
      const message: unknown = JSON.parse(String(payload));
      if (Reflect.get(Object(message), 'type') === 'ear')
        told.listens = Reflect.get(Object(message), 'listens') === true;
    }),
  );
  // Its audio, to be put to sleep as by a telephone call.
  await tab.addInitScript(() => {
    const Own = AudioContext;
    const Kept = class extends Own {
      constructor(options?: AudioContextOptions) {
        super(options);
        Reflect.set(globalThis, 'pageAudio', this);
      }
    };
    Reflect.set(globalThis, 'AudioContext', Kept);
  });
  await tab.goto(page.url());
  await tab.getByRole('button', { name: /^STOP/ }).waitFor();
  return { tab, told };
}

const touch = (page: Page) => page.mouse.click(10, 10);

it('a page that comes back without a touch says that it neither hears nor speaks, to the laptop too; a touch wakes it', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const before = await openFromLaptop(asItIs, shop, [], { ear: 'embedded', voice: 'voice' });
  await pairAs(before, shop, 'second');
  const { tab, told } = await comesBackUntouched(before);
  await tab.getByText(DEAF).waitFor();
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(tab, 'job.card.asking');
  await technician.waitForTimeout(WHILE_MS);
  await tab.getByText('Listening: by touch only').waitFor();
  expect([told.listens, await keyOf(technician)]).toEqual([false, 'job.card.asking']);
  await lookAt(tab, 'before-a-touch');

  // A call-out that cannot be said is read there, and holds up nothing.
  await technician.getByRole('button', { name: /^STOP/ }).click();
  await tab.getByText(UNSAID).waitFor();
  await technician.reload();

  await touch(tab);
  await tab.getByText(DEAF).waitFor({ state: 'detached' });
  await expect.poll(() => told.listens, { timeout: WHILE_MS }).toBe(true);
  await technician.context().close();
  await tab.context().close();
});

it('a stop is heard after the first touch, and after the audio was interrupted as by a telephone call', async () => {
  const shop = await newShop();
  const technician = await joinBay(browser, shop, 'technician');
  const before = await openFromLaptop(asItIs, shop, [], { ear: 'embedded', voice: 'silent' });
  await pairAs(before, shop, 'second');
  const { tab, told } = await comesBackUntouched(before);
  await tab.getByText(DEAF).waitFor();
  await touch(tab);
  await expect.poll(() => told.listens, { timeout: 45_000 }).toBe(true);
  await tab.evaluate(async () => {
    const audio: AudioContext = Reflect.get(globalThis, 'pageAudio');
    const wakes = audio.resume.bind(audio);
    // As long as the call goes on the browser gives nothing back.
    audio.resume = () => new Promise(() => {});
    await audio.suspend();
    Reflect.set(globalThis, 'callEnds', () => {
      audio.resume = wakes;
    });
  });
  await tab.getByText(DEAF).waitFor();
  await expect.poll(() => told.listens).toBe(false);
  await tab.evaluate(() => Reflect.get(globalThis, 'callEnds')());
  await touch(tab);
  await tab.getByText(DEAF).waitFor({ state: 'detached' });
  await technician.getByRole('button', { name: 'Begin' }).click();
  await technician.locator('[data-key^="stopped"]').first().waitFor();
  await technician.context().close();
  await tab.context().close();
});
