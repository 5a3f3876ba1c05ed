import type { Page } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { languages } from '../../../prompts/index.ts';
import { openShop } from '../../server/support/shop.ts';
import { joinBay } from '../helpers/bay.ts';
import { picture } from '../helpers/looks.ts';
import { browser, served } from '../helpers/opened.ts';
import { beginHere, openPage, touchOnly, waitForKey } from '../helpers/page.ts';
import { pageFolder } from '../helpers/serve.ts';

const { fireCall, surgery } = languages.en.lines;

/** Longer than the disk takes for what is asked after a call-out. */
const DISK_MS = 1500;

/** What stands above what is asked, as far as it is in sight. */
const calledOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const asked = document.querySelector('.asked')?.getBoundingClientRect().top ?? 0;
    return [...document.querySelectorAll('.loud .danger')]
      .filter(each => {
        const { top, bottom } = each.getBoundingClientRect();
        return top >= 0 && bottom <= asked + 1;
      })
      .map(each => each.textContent ?? '');
  });

it('what to do about a fire and somebody hurt stands on every face until all is off', async () => {
  const shop = await openShop({ page: pageFolder });
  onTestFinished(() => shop.server.close());
  const technician = await joinBay(browser, shop, 'technician');
  const second = await joinBay(browser, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await technician.setViewportSize({ width: 1024, height: 768 });
  await second.setViewportSize({ width: 390, height: 844 });
  const all = [technician, second, supervisor];
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(second, 'job.card.asking');

  await second.getByRole('button', { name: 'smoke or fire' }).click();
  for (const page of all) await waitForKey(page, 'stopped.makingSafe');
  await technician.waitForTimeout(DISK_MS);
  for (const page of all) expect(await calledOut(page)).toEqual([fireCall]);

  await second.getByRole('button', { name: 'someone is hurt' }).click();
  for (const page of all) await page.getByText(surgery).first().waitFor();
  await technician.locator('.choice', { hasText: 'still running' }).click();
  for (const page of all) await page.locator('.danger', { hasText: 'Still running:' }).waitFor();
  await technician.waitForTimeout(DISK_MS);
  for (const page of all) {
    expect(await calledOut(page)).toEqual([expect.stringContaining('Still running:'), surgery, fireCall]);
    await picture(page, `help-stays-${all.indexOf(page)}`);
  }

  await technician.locator('.choice:not([aria-disabled="true"])', { hasText: 'all is off' }).click();
  for (const page of all) await page.locator('.loud .danger').first().waitFor({ state: 'detached' });
  for (const page of all) await page.context().close();
});

it('it stands on a page alone too', async () => {
  const { page, context } = await openPage(browser, served.origin, {
    settings: touchOnly,
    size: { width: 390, height: 844 },
  });
  await beginHere(page);
  await page.getByRole('button', { name: /^STOP/ }).click();
  await waitForKey(page, 'stopped.makingSafe');
  await page.locator('.choice:not([aria-disabled="true"])', { hasText: 'smoke or fire' }).click();
  await page.locator('.danger', { hasText: fireCall }).waitFor();
  await page.waitForTimeout(DISK_MS);
  expect(await calledOut(page)).toEqual([fireCall]);
  await picture(page, 'help-stays-alone');
  await context.close();
});
