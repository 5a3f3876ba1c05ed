import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import type { Cue } from '../../src/session/cue-sheet.ts';
import type { Pcm } from '../../src/voice/ports.ts';
import { keyOf } from '../../tests/tablet/helpers/page.ts';
import { passUntil } from '../../tests/tablet/helpers/time.ts';
import { readTap, resetTap } from './ear-tap.ts';

/** One reply, and how the page took it. */
export interface Reply {
  readonly when: string;
  readonly says: string;
  /** What it was taken for instead, once for each time. */
  readonly misheard: readonly string[];
  /** From the end of speech to the next question on the screen, where it was understood at once. */
  readonly replyMs: number | null;
}

export interface Dialogue {
  readonly page: Page;
  readonly speak: (sound: Pcm) => Promise<void>;
  /** "Wrong", in anybody's voice: what people say when a figure is read back that is not theirs. */
  readonly denial: Pcm;
}

const TIMES_SAID = 3;
const LOOK_EVERY_MS = 25;
/** Real time in which the page has either understood or asked again; only a page that hangs takes longer. */
const PATIENCE_MS = 6_000;
/** The silent voice takes longer than this for each character: a prompt is passed in one step, and never overtaken. */
const SKIP_MS_PER_CHARACTER = 45;
const SKIP_MS = 500;
const QUIET_STEP_MS = 200;

const isSpeaking = async (page: Page) =>
  (await page.locator('.ear').textContent())?.includes('Speaking.') ?? false;
const heardText = async (page: Page) =>
  /^.*: “(.*)”/.exec((await page.locator('.heard').textContent()) ?? '')?.[1] ?? '';

/** Lets the tool come to the end of its sentence, silent as it is, and people take their moment. */
async function untilQuiet(page: Page, forMs: number): Promise<void> {
  if (await isSpeaking(page)) {
    const { length } = (await page.locator('.prompt').first().textContent()) ?? '';
    await page.clock.fastForward(length * SKIP_MS_PER_CHARACTER);
  }
  for (let quietMs = 0; quietMs <= forMs; ) {
    const speaking = await isSpeaking(page);
    quietMs = speaking ? 0 : quietMs + QUIET_STEP_MS;
    await page.clock.fastForward(speaking ? SKIP_MS : QUIET_STEP_MS);
  }
}

/** Settles when the page has shown that it heard something. */
async function reaction(page: Page): Promise<void> {
  for (let waitedMs = 0; waitedMs < PATIENCE_MS; waitedMs += LOOK_EVERY_MS) {
    if ((await readTap(page)).shown.length > 0) return;
    await wait(LOOK_EVERY_MS);
  }
}

/** Until a change on the screen has become the next question, where it does. */
async function settled(page: Page, key: string): Promise<void> {
  for (let tries = 0; tries < 20 && (await keyOf(page)) === key; tries += 1) await wait(LOOK_EVERY_MS);
}

async function latencyMs(page: Page): Promise<number | null> {
  const { lastLoudS, shown } = await readTap(page);
  const asked = shown.find(({ what }) => what === 'asked');
  return lastLoudS === null || !asked ? null : 1000 * (asked.atS - lastLoudS);
}

/** Says that what was read back is wrong, until it is asked for again. */
async function deny({ page, speak, denial }: Dialogue, key: string, afterMs: number): Promise<void> {
  for (let times = 0; times < TIMES_SAID && (await keyOf(page)) === key; times += 1) {
    await untilQuiet(page, afterMs);
    await resetTap(page);
    await speak(denial);
    await reaction(page);
    await settled(page, key);
  }
}

/** Says one thing when it is asked for, and again when it was not understood, as people do. */
export async function answer({ page, speak, denial }: Dialogue, cue: Cue): Promise<Reply> {
  const { when, says } = cue;
  const misheard: string[] = [];
  for (let times = 0; times < TIMES_SAID; times += 1) {
    await passUntil(page, when);
    await untilQuiet(page, cue.afterMs);
    await resetTap(page);
    await speak(cue.sound);
    await reaction(page);
    await settled(page, when);
    const key = await keyOf(page);
    const heard = await heardText(page);
    if (key !== when && heard === says)
      return { when, says, misheard, replyMs: times === 0 ? await latencyMs(page) : null };
    misheard.push(heard);
    if (key === when) continue;
    if (!key?.includes('.readingBack')) return { when, says, misheard, replyMs: null };
    await deny({ page, speak, denial }, key, cue.afterMs);
  }
  throw new Error(`"${says}" was not understood at ${when}: ${misheard.join(', ')}.`);
}
