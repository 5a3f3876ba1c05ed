import { mkdtempSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { sizes } from './walk.ts';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
/** Set it to look at the pictures. */
export const pictures = process.env.FIRST_FIRE_PICTURES ?? mkdtempSync(join(tmpdir(), 'tablet-'));

/** What axe finds wrong by WCAG 2.2 A and AA, one line each. */
export async function faultsByAxe(page: Page): Promise<string[]> {
  // Not as a script of the page: its own policy lets none in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(await readFile(axePath, 'utf8'));
  return page.evaluate(async () => {
    const axe: { run(context: unknown, options: unknown): Promise<{ violations: unknown[] }> } = Reflect.get(
      globalThis,
      'axe',
    );
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    });
    return violations.map(violation => JSON.stringify(violation).slice(0, 400));
  });
}

/** Controls smaller than 20 mm at 96 pixels an inch, which a glove misses; on a phone, held in the other hand, than 64 px. */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, summary, .choose label, input:not([type=radio])')]
      .filter(each => each.checkVisibility())
      .map(each => ({ text: each.textContent, box: each.getBoundingClientRect() }))
      .filter(({ box }) => {
        const least = Math.min(innerWidth, innerHeight) <= 480 ? 63.5 : 75.5;
        return box.width < least || box.height < least;
      })
      .map(({ text, box }) => `${text}: ${box.width} x ${box.height}`),
  );

/** Keeps a picture of what is shown. */
export const picture = (page: Page, screen: string): Promise<unknown> =>
  page.screenshot({ path: join(pictures, `${screen}.png`) });

/** Expects that anybody can use what is shown, gloves on; keeps a picture of it. */
export async function lookAt(page: Page, screen: string): Promise<void> {
  await picture(page, screen);
  expect(await faultsByAxe(page), screen).toEqual([]);
  expect(await tooSmall(page), screen).toEqual([]);
  const { inner, scroll } = await page.evaluate(() => ({
    inner: innerWidth,
    scroll: document.documentElement.scrollWidth,
  }));
  expect(scroll, screen).toBeLessThanOrEqual(inner);
}

const looks = [
  { name: 'tablet-landscape', width: 1280, height: 800, theme: 'light' },
  { name: 'tablet-portrait', width: 800, height: 1280, theme: 'dark' },
  { name: 'small-phone', width: 360, height: 740, theme: 'dark' },
  { name: 'phone', width: 412, height: 915, theme: 'light' },
] as const;

/** The same on a tablet held either way and on two phones, for the sun and for the dark. */
export async function lookAtAllSizes(page: Page, screen: string): Promise<void> {
  for (const { name, width, height, theme } of looks) {
    await page.setViewportSize({ width, height });
    await page.evaluate(shown => {
      document.documentElement.dataset.theme = shown;
    }, theme);
    await lookAt(page, `${screen}-${name}`);
  }
}

/** Pictures of one part of a screen at the four sizes, for the sun and for the dark, where somebody asked for pictures. */
export async function picturePart(page: Page, selector: string, name: string): Promise<void> {
  if (process.env.FIRST_FIRE_PICTURES === undefined) return;
  for (const [width, height] of sizes)
    for (const theme of ['light', 'dark']) {
      await page.setViewportSize({ width, height });
      await page.evaluate(
        ([shown, part]) => {
          document.documentElement.dataset.theme = shown;
          document.querySelector(part)?.scrollIntoView({ block: 'start' });
        },
        [theme, selector] as const,
      );
      await page.screenshot({ path: join(pictures, `${name}-${width}x${height}-${theme}.png`) });
    }
}
