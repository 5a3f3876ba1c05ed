import type { Browser, BrowserContext, Page } from 'playwright-core';

/** How long anything on a busy machine may take; nothing is ever waited for longer than it takes. */
export const PATIENCE_MS = 45_000;

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page threw and nobody caught. */
  readonly faults: string[];
}

export interface PageWishes {
  readonly settings?: Readonly<Record<string, string>>;
  readonly size?: { readonly width: number; readonly height: number };
  /** Time that the test moves on. */
  readonly ownClock?: boolean;
  readonly colorScheme?: 'light' | 'dark';
  readonly serviceWorkers?: 'allow' | 'block';
  /** What is put into the page before anything else. */
  readonly before?: (page: Page) => Promise<unknown>;
}

/** The page in a browser context of its own, set up as if somebody had chosen these settings before. */
export async function openPage(browser: Browser, origin: string, wishes: PageWishes = {}): Promise<OpenPage> {
  const { settings = {}, size = { width: 1280, height: 800 }, ownClock = false } = wishes;
  const context = await browser.newContext({
    viewport: size,
    colorScheme: wishes.colorScheme ?? 'light',
    serviceWorkers: wishes.serviceWorkers ?? 'block',
    acceptDownloads: true,
  });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(value => {
    if (!localStorage.getItem('first-fire-settings')) localStorage.setItem('first-fire-settings', value);
  }, JSON.stringify(settings));
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', fault => faults.push(String(fault)));
  await wishes.before?.(page);
  if (ownClock) await page.clock.install();
  await page.goto(origin);
  return { page, context, faults };
}

/** Touch only, and silent: what is said takes its time, and nothing has to be loaded. */
export const touchOnly = { ear: 'keys', voice: 'silent' } as const;

export const keyOf = (page: Page): Promise<string | null> =>
  page.locator('[data-key]').first().getAttribute('data-key');

export const waitForKey = (page: Page, key: string): Promise<unknown> =>
  page.locator(`[data-key="${key}"]`).first().waitFor();

export async function beginHere(page: Page, profile?: string): Promise<void> {
  if (profile) await page.getByRole('radio', { name: profile }).check();
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.locator('[data-key]').first().waitFor();
}

/** Answers by touch where there is a control for it, otherwise by typing. */
export async function answer(page: Page, text: string): Promise<void> {
  const choice = page.locator('.choice', { hasText: new RegExp(`^${text}$`, 'i') });
  if ((await choice.count()) > 0) await choice.first().click();
  else {
    // What is written before the question could be read is not sent.
    await page.locator('.write button[aria-disabled="false"]').first().waitFor();
    await page.getByLabel('An answer or a reason in words').fill(text);
    await page.getByRole('button', { name: 'Send', exact: true }).last().click();
  }
}

/** Longer than a stroke of the hand that answered the question before. */
const READ_MS = 400;

/** Answers as soon as a hand may, without waiting for the control to be in sight: the other tests touch it as people do. */
export async function answerAtOnce(page: Page, text: string): Promise<void> {
  await page.clock.fastForward(READ_MS);
  await page
    .locator('.shell:not(:has(.choice[aria-disabled="true"], .write [aria-disabled="true"]))')
    .waitFor();
  await page.evaluate(wanted => {
    const buttons = [...document.querySelectorAll<HTMLButtonElement>('.choice, .stop')];
    const button = buttons.find(each => each.firstChild?.textContent?.toLowerCase() === wanted.toLowerCase());
    if (button) return button.click();
    const input = document.querySelector<HTMLInputElement>('#write');
    if (!input) throw new Error(`no control for ${wanted}, and nothing to write it in`);
    input.value = wanted;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    input.form?.requestSubmit();
  }, text);
}
