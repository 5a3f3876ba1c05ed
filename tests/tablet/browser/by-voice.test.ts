import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { openBrowser } from '../helpers/browser.ts';
import { beginHere, openPage, waitForKey } from '../helpers/page.ts';
import { ROOM_RATE_HZ, recordingOf, reply } from '../helpers/room.ts';
import { servePage } from '../helpers/serve.ts';

/** Chromium plays the file from the start of the capture on; the recognizer has to be loaded by then. */
const LEAD_S = 20;
/** Longer than the longest of these questions takes: while it is being said only a stop counts. */
const BETWEEN_S = 10;

it('hears the first replies and a stop through the microphone of a real browser', async () => {
  const wav = join(mkdtempSync(join(tmpdir(), 'by-voice-')), 'replies.wav');
  const replies = ['technician-card-is-right', 'technician-understood', 'second-stop'].map(reply);
  const samples = recordingOf(LEAD_S, replies, BETWEEN_S);
  writeFileSync(wav, encodeWav({ samples, sampleRateHz: ROOM_RATE_HZ }));
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
