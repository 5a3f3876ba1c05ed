import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { readLog, verifyLog } from '../../src/record/index.ts';
import { loadCueSheet } from '../../src/session/cue-sheet.ts';
import { launchPulse } from '../../tests/helpers/sound-server.ts';
import { openBrowserThatHears } from '../../tests/tablet/helpers/browser.ts';
import { beginHere, openPage } from '../../tests/tablet/helpers/page.ts';
import { servePage } from '../../tests/tablet/helpers/serve.ts';
import { quantile } from '../voice-measure.ts';
import { answer, type Reply } from './dialogue.ts';
import { installTap } from './ear-tap.ts';
import { plugIn, speak } from './people.ts';

const SIZE = { width: 1280, height: 800 };

/** How many entries of the record came by which way. */
async function ways(path: string): Promise<Readonly<Record<string, number>>> {
  const counts: Record<string, number> = {};
  for (const { kind, data } of (await readLog(path)).entries) {
    if (kind !== 'heard' || typeof data.via !== 'string') continue;
    counts[data.via] = (counts[data.via] ?? 0) + 1;
  }
  return counts;
}

function show(replies: readonly Reply[]): void {
  const latencies = replies.flatMap(({ replyMs }) => replyMs ?? []);
  const half = quantile(latencies, 0.5).toFixed(0);
  const most = quantile(latencies, 0.95).toFixed(0);
  const longest = Math.max(...latencies).toFixed(0);
  const atOnce = replies.filter(({ misheard }) => misheard.length === 0).length;
  console.log(`Replies: ${replies.length}, understood at once: ${atOnce}`);
  console.log(
    `End of speech to the next question on the screen: median ${half}, p95 ${most}, longest ${longest} ms (${latencies.length})`,
  );
}

/**
 * A whole first start by voice alone through the built page in Chromium: recorded people speak into the microphone
 * of a sound server when they are asked, the embedded recognizer listens in its worker, and nothing is touched but
 * "Begin". What is spoken takes its real time; while nobody speaks, the clock of the page is moved on.
 */
export async function pageByVoice(name: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'page-by-voice-'));
  const sheet = fileURLToPath(new URL(`../../audio-fixtures/sessions/${name}.cues.json`, import.meta.url));
  const cues = await loadCueSheet(sheet);
  const server = await launchPulse(folder);
  plugIn(server);
  const served = await servePage();
  const browser = await openBrowserThatHears(server.env);
  const beganMs = performance.now();
  try {
    const { page, faults } = await openPage(browser, served.origin, {
      settings: { voice: 'silent' },
      size: SIZE,
      ownClock: true,
      before: installTap,
    });
    await beginHere(page, name.replace('demo-', 'Demo '));
    await page.getByText('Listening: ').filter({ hasNotText: 'by touch only' }).waitFor();
    const dialogue = {
      page,
      speak: (sound: Parameters<typeof speak>[2]) => speak(server, folder, sound),
      denial: synthesize('flite-rms', 'wrong'),
    };
    const replies: Reply[] = [];
    for (const cue of cues) {
      const reply = await answer(dialogue, cue);
      replies.push(reply);
      const otherwise =
        reply.misheard.length > 0 ? ` (first taken for ${JSON.stringify(reply.misheard)})` : '';
      console.log(
        `${replies.length} of ${cues.length}, ${cue.when}: "${cue.says}"${otherwise}, ${reply.replyMs?.toFixed(0) ?? '-'} ms`,
      );
    }
    await page.getByRole('status').filter({ hasText: 'Signed off' }).waitFor();
    await page.getByRole('button', { name: 'To the beginning' }).click();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: /^Save as a file/ }).click();
    const path = join(folder, 'record.jsonl');
    await (await saving).saveAs(path);
    const verification = await verifyLog(path);
    const { length } = await readFile(path);
    console.log(`${name}: signed off after ${((performance.now() - beganMs) / 60_000).toFixed(1)} minutes`);
    console.log(`Record: ${verification.ok ? 'verifies' : verification.problem}, ${length} bytes`);
    console.log(`Heard by: ${JSON.stringify(await ways(path))}; faults of the page: ${faults.length}`);
    show(replies);
    if (!verification.ok || faults.length > 0) process.exitCode = 1;
  } finally {
    await browser.close();
    await served.close();
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}
