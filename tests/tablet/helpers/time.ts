import type { Page } from 'playwright-core';
import { keyOf } from './page.ts';

const LONGEST_STEP_S = 60;
const STEPS = 500;

/**
 * Lets time pass in a page with a clock of its own until the session is in this state; by longer steps the longer
 * it takes.
 * @throws Error naming the state it came to instead
 */
export async function passUntil(page: Page, key: string): Promise<void> {
  let stepS = 1;
  let before = await keyOf(page);
  for (let step = 0; step < STEPS; step += 1) {
    const now = await keyOf(page);
    if (now === key) return;
    if (now !== before) stepS = 1;
    before = now;
    await page.clock.fastForward(stepS * 1000);
    stepS = Math.min(LONGEST_STEP_S, stepS * 2);
  }
  throw new Error(`never came to ${key}; the session is at ${await keyOf(page)}`);
}
