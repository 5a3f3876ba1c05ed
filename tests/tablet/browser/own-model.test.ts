import { cp, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../../prompts/en/index.ts';
import { keepModel } from '../../../src/server/models/model-folder.ts';
import { engineFile } from '../../../src/tablet/hearing/own-model/engine-address.ts';
import { readModel } from '../../../src/voice/decoders/vosk/model/read-model.ts';
import { wordsOf } from '../../../src/voice/wording.ts';
import { openShop } from '../../server/support/shop.ts';
import { hollowModel, tarGzOf, zippedModel } from '../../voice/decoders/vosk/model-files.ts';
import { openFromLaptop, pairAs } from '../helpers/bay.ts';
import { browser, served } from '../helpers/opened.ts';
import { beginHere, openPage, PATIENCE_MS } from '../helpers/page.ts';
import { pageFolder, servePage } from '../helpers/serve.ts';

const byVosk = { ear: 'vosk', voice: 'silent' };
const takesNone = /Vosk cannot use the model \(.*The embedded recognizer listens instead\./;
const stopWords = wordsOf(english.stopWordings);
/** Whole and well formed, with nothing in it that could recognize anything. */
const hollow = {
  ...hollowModel(),
  'graph/words.txt': new TextEncoder().encode(`<eps> 0\n${stopWords.join(' 1\n')} 1\n`),
};
const bytesOf = async (archive: Blob) => Buffer.from(await archive.arrayBuffer());

const alertOf = (page: Page) => page.locator('.own-model [role=alert]');
async function bring(page: Page, name: string, buffer: Buffer): Promise<void> {
  if (!(await page.getByLabel('Bring a model archive').isVisible())) await page.getByText('Settings').click();
  await page
    .getByLabel('Bring a model archive')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}
const isKept = (page: Page) =>
  page
    .locator('.own-model')
    .getByText(/^small-en, 0 MB$/)
    .waitFor();
const shows = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();
describe('The page with Vosk chosen', () => {
  it('says that there is no model, and listens with the embedded recognizer', async () => {
    const { page, faults } = await openPage(browser, served.origin, { settings: byVosk });
    await page.getByText('Settings').click();
    await shows(page, 'None on this device yet');
    await beginHere(page);
    await shows(page, /There is no Vosk model on this device.* The embedded recognizer listens instead\./);
    await expect
      .poll(() => [...served.sent.keys()].some(path => /english-[^/]*\.bin$/.test(path)), {
        timeout: PATIENCE_MS,
      })
      .toBe(true);
    expect(served.sent.has(`/${engineFile}`)).toBe(false);
    expect(faults).toEqual([]);
  });

  it('refuses archives that are cut short, damaged or none, each in one sentence, and keeps what was there', async () => {
    const { page, faults } = await openPage(browser, served.origin, { settings: byVosk });
    const [zip, tar] = [await bytesOf(zippedModel(hollow)), await bytesOf(await tarGzOf(hollow))];
    const damaged = Buffer.from(zip);
    const at = damaged.indexOf('am/final.mdl') + 40;
    damaged.writeUInt8(damaged.readUInt8(at) ^ 0xff, at);
    await bring(page, 'small-en.zip', zip);
    await isKept(page);
    const bad: readonly [string, Buffer, RegExp][] = [
      ['page.zip', Buffer.from('<!doctype html>'), /page\.zip is neither a zip nor a tar\.gz/],
      ['half.zip', zip.subarray(0, zip.length / 2), /half\.zip is cut short or damaged/],
      ['half.tar.gz', tar.subarray(0, tar.length / 2), /half\.tar\.gz is cut short or damaged/],
      ['damaged.zip', damaged, /damaged\.zip is (cut short or )?damaged/],
      ['empty.zip', Buffer.alloc(0), /empty\.zip is empty/],
    ];
    for (const [name, buffer, sentence] of bad) {
      await bring(page, name, buffer);
      await alertOf(page).getByText(sentence).waitFor();
      await isKept(page);
    }
    await page.reload();
    await page.getByText('Settings').click();
    await isKept(page);
    expect(faults).toEqual([]);
  });

  it('tells when the real engine cannot use a model that looked right, and listens with the embedded recognizer', async () => {
    const { page, faults } = await openPage(browser, served.origin, { settings: byVosk });
    await bring(page, 'small-en.tar.gz', await bytesOf(await tarGzOf(hollow)));
    await isKept(page);
    await beginHere(page);
    await shows(page, takesNone);
    expect(served.sent.has(`/${engineFile}`)).toBe(true);
    expect(faults).toEqual([]);
  });

  it('does not load a kept model that was damaged since', async () => {
    const { page } = await openPage(browser, served.origin, { settings: byVosk });
    await bring(page, 'small-en.zip', await bytesOf(zippedModel(hollow)));
    await isKept(page);
    await page.evaluate(async () => {
      const cache = await caches.open('first-fire-own-model');
      const kept = await cache.match('/own-model');
      const bytes = new Uint8Array((await kept?.arrayBuffer()) ?? new ArrayBuffer(0));
      await cache.put('/own-model', new Response(bytes.slice(0, 99), { headers: kept?.headers ?? {} }));
    });
    await beginHere(page);
    await shows(page, /The Vosk model on this device is damaged.*embedded recognizer listens instead/);
  });

  it('waits two minutes for an engine that never answers, no longer', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'silent-engine-'));
    await cp(pageFolder, folder, { recursive: true });
    await writeFile(join(folder, engineFile), '// never answers');
    const silent = await servePage(folder);
    const { page } = await openPage(browser, silent.origin, { settings: byVosk, ownClock: true });
    await bring(page, 'small-en.zip', await bytesOf(zippedModel(hollow)));
    await isKept(page);
    await beginHere(page);
    // Its time runs from the moment at which it was loaded.
    await expect.poll(() => silent.sent.has(`/${engineFile}`), { timeout: PATIENCE_MS }).toBe(true);
    await page.clock.fastForward(119_000);
    expect(await page.getByText('did not take its model').count()).toBe(0);
    await page.clock.fastForward(2_000);
    await shows(page, /did not take its model in two minutes.*The embedded recognizer listens instead\./);
    await silent.close();
  });
});

it("takes the paired laptop's model, and the laptop's policy lets the engine start", async () => {
  const models = await mkdtemp(join(tmpdir(), 'models-'));
  const model = await readModel(zippedModel(hollow), { archiveName: 'small-en.zip', stopWords });
  await keepModel(models, model, new Date('2026-01-02T03:04:05Z'));
  const shop = await openShop({ page: pageFolder, models });
  const faults: string[] = [];
  const page = await openFromLaptop(browser, shop, faults, byVosk);
  await pairAs(page, shop, 'technician');
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByText('Settings').click();
  await page.getByRole('button', { name: "Take the laptop's model" }).click();
  await isKept(page);
  await beginHere(page);
  // Its code was let run: it is the hollow model that it does not take.
  await shows(page, takesNone);
  expect(faults).toEqual([]);
  await page.context().close();
  await shop.server.close();
});
