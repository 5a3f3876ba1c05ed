import type { Page } from 'playwright-core';
import { keyOf } from './page.ts';

/** Of the time that it has taken so far: a wait of minutes is overshot by seconds. */
const STEP_SHARE = 0.1;
const STEPS = 500;

/**
 * Lets time pass in a page with a clock of its own until the session is in this state; by longer steps the longer
 * it takes.
 * @param orLater states that it may have gone on to instead
 * @returns the state that it came to
 * @throws Error naming the state it came to instead
 */
export async function passUntil(page: Page, key: string, ...orLater: readonly string[]): Promise<string> {
  let waitedS = 0;
  let before = await keyOf(page);
  for (let step = 0; step < STEPS; step += 1) {
    const now = await keyOf(page);
    if (now === key || (now !== null && orLater.includes(now))) return now;
    if (now !== before) waitedS = 0;
    before = now;
    const stepS = Math.max(1, Math.round(STEP_SHARE * waitedS));
    await page.clock.fastForward(stepS * 1000);
    waitedS += stepS;
  }
  throw new Error(`never came to ${key}; the session is at ${await keyOf(page)}`);
}
