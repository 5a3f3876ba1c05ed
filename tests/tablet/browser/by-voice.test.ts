import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { decodeWav } from '../../../src/voice/audio/wav.ts';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { openBrowser } from '../helpers/browser.ts';
import { beginHere, openPage, waitForKey } from '../helpers/page.ts';
import { servePage } from '../helpers/serve.ts';

const RATE_HZ = 16_000;
/** Chromium plays the file from the start of the capture on; the recognizer has to be loaded by then. */
const LEAD_S = 20;
/** Longer than the longest of these questions takes: while it is being said only a stop counts. */
const BETWEEN_S = 10;

const reply = (name: string) => {
  const file = fileURLToPath(
    new URL(`../../../audio-fixtures/sessions/replies/${name}.wav`, import.meta.url),
  );
  return decodeWav(readFileSync(file), file).samples;
};

/** A room, then each reply with time for the next question between. */
function recording(replies: readonly Float32Array[]): Float32Array {
  let state = 1;
  const room = (seconds: number) =>
    Float32Array.from({ length: seconds * RATE_HZ }, () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state / 2 ** 31 - 1) / 32_768;
    });
  const parts = [room(LEAD_S), ...replies.flatMap(samples => [samples, room(BETWEEN_S)])];
  const all = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

it('hears the first replies and a stop through the microphone of a real browser', async () => {
  const wav = join(mkdtempSync(join(tmpdir(), 'by-voice-')), 'replies.wav');
  const samples = recording(['technician-card-is-right', 'technician-understood', 'second-stop'].map(reply));
  writeFileSync(wav, encodeWav({ samples, sampleRateHz: RATE_HZ }));
  const served = await servePage();
  const browser = await openBrowser(wav);
  try {
    const { page, faults } = await openPage(browser, served.origin, { settings: { voice: 'silent' } });
    await beginHere(page);
    await waitForKey(page, 'job.makerFirst.asking');
    await page.getByText('Heard: “card is right”').waitFor();
    await waitForKey(page, 'job.protection.asking');
    await page.getByRole('status').filter({ hasText: 'Stopped. Key off.' }).waitFor();
    expect(faults).toEqual([]);
  } finally {
    await browser.close();
    await served.close();
  }
});
