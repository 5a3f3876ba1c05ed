import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser } from '../helpers/browser.ts';
import { beginHere, openPage, PATIENCE_MS, waitForKey } from '../helpers/page.ts';
import { type Served, servePage } from '../helpers/serve.ts';

/** The service behind the polyfill is somewhere in the world: in its place, a client that tells what the test says. */
const cloud = `
  export const ErrNoAudioConsent = new Error('no consent');
  export const ErrDeviceNotSupported = new Error('no device');
  export class BrowserMicrophone {
    async initialize() { this.mediaStream = await navigator.mediaDevices.getUserMedia({ audio: true }); }
    async close() {}
  }
  export class BrowserClient {
    onSegmentChange(tell) { globalThis.cloudHears = (text, isFinal) =>
      tell({ isFinal, words: text.split(' ').map(value => ({ value })) }); }
    async attach() { if (globalThis.cloudIsAway) throw new Error('away'); }
    async start() {}
    async stop() {}
    async detach() {}
  }`;

/** The polyfill as npm has it, which puts itself at `SpeechRecognition` as its README says. */
async function polyfill(): Promise<string> {
  const { outputFiles } = await build({
    stdin: {
      contents: `
        import { createSpeechlySpeechRecognition } from '@speechly/speech-recognition-polyfill';
        globalThis.SpeechRecognition = createSpeechlySpeechRecognition('an app of the test');`,
      resolveDir: import.meta.dirname,
    },
    bundle: true,
    write: false,
    format: 'iife',
    logLevel: 'error',
    plugins: [
      {
        name: 'cloud',
        setup({ onResolve, onLoad }) {
          onResolve({ filter: /^@speechly\/browser-client$/ }, () => ({ path: 'cloud', namespace: 'test' }));
          onLoad({ filter: /.*/, namespace: 'test' }, () => ({ contents: cloud }));
        },
      },
    ],
  });
  return outputFiles[0]?.text ?? '';
}

let browser: Browser;
let served: Served;
let script: string;
beforeAll(async () => {
  served = await servePage();
  browser = await openBrowser();
  script = await polyfill();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const withPolyfill = (cloudIsAway: boolean) =>
  openPage(browser, served.origin, {
    settings: { ear: 'webSpeech', voice: 'silent' },
    before: async page => {
      await page.addInitScript(script);
      await page.addInitScript(away => Reflect.set(globalThis, 'cloudIsAway', away), cloudIsAway);
    },
  });

it('listens through a polyfill of the Web Speech API: a reply counts at its end, a stop before it', async () => {
  const { page, faults } = await withPolyfill(false);
  await beginHere(page, 'Demo four');
  await page.locator('.source', { hasText: "the browser's service" }).waitFor();
  await waitForKey(page, 'job.card.asking');
  const hears = (text: string, final: boolean) =>
    page.evaluate(([said, isFinal]) => Reflect.get(globalThis, 'cloudHears')(said, isFinal), [
      text,
      final,
    ] as const);
  // While the tool speaks only a stop counts: it is said until it counts, as people do.
  await expect
    .poll(
      async () => {
        await hears('card is right', true);
        return page.locator('[data-key]').first().getAttribute('data-key');
      },
      { timeout: PATIENCE_MS },
    )
    .not.toBe('job.card.asking');
  await hears('stop the', false);
  await page.locator('.chip.danger', { hasText: 'Stopped' }).waitFor();
  expect(faults).toEqual([]);
});

it('says that a polyfill cannot be used, and goes on by touch', async () => {
  const { page, faults } = await withPolyfill(true);
  await beginHere(page, 'Demo four');
  await page.locator('.problems', { hasText: "The browser's recognition service cannot be used" }).waitFor();
  await page.locator('.source', { hasText: 'by touch only' }).waitFor();
  await page.locator('.choice').first().waitFor();
  expect(faults).toEqual([]);
});
