import { expect, it } from 'vitest';
import { joinBay, openFromLaptop, pairAs } from '../helpers/bay.ts';
import { lookAt } from '../helpers/looks.ts';
import { browser, newShop, served } from '../helpers/opened.ts';
import { answer, beginHere, keyOf, openPage, touchOnly, waitForKey } from '../helpers/page.ts';

it('a stop typed among other words stops a session of this page', async () => {
  for (const words of ['Stop!', 'please stop']) {
    const { page, context, faults } = await openPage(browser, served.origin, { settings: touchOnly });
    await beginHere(page);
    await answer(page, words);
    await waitForKey(page, 'stopped.makingSafe');
    expect(faults).toEqual([]);
    await context.close();
  }
});

it('a hand that hits twice within a moment answers one question', async () => {
  const { page, context } = await openPage(browser, served.origin, { settings: touchOnly });
  await beginHere(page);
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
  await page.locator('.choice:not([aria-disabled="true"])').first().waitFor();
  const keys = await page.evaluate(
    () =>
      new Promise<(string | null | undefined)[]>(resolve => {
        const key = () => document.querySelector('[data-key]')?.getAttribute('data-key');
        const touch = () => document.querySelector<HTMLElement>('.choice')?.click();
        const seen = [key()];
        // The second touch of the stroke hits the very moment at which the next question is there.
        const look = new MutationObserver(() => {
          if (seen.includes(key())) return;
          seen.push(key());
          touch();
        });
        look.observe(document.body, { subtree: true, childList: true, attributes: true });
        touch();
        setTimeout(() => resolve(seen), 1500);
      }),
  );
  // One answer, and the question that it leads to; not the one after that.
  expect(keys).toHaveLength(2);
  await context.close();
});

it('a stop before any session has begun is answered to the one who gave it', async () => {
  const shop = await newShop();
  const page = await joinBay(browser, shop, 'second');
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByText('Key off. No session runs here').waitFor();
  await lookAt(page, 'stop-nothing-runs');
  await page.context().close();
});

it('a stop that nobody answers tells what to do', async () => {
  const shop = await newShop();
  const page = await joinBay(browser, shop, 'technician');
  await page.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(page, 'job.card.asking');
  await page.context().setOffline(true);
  await shop.server.close();
  await page.getByRole('button', { name: /^STOP/ }).click();
  await page.getByText('Shout STOP. Key off.').waitFor();
  await lookAt(page, 'stop-unanswered');
  expect(await keyOf(page)).toBe('job.card.asking');
  await page.context().close();
});

it('a device whose microphone is denied does not say that it listens, and nobody else is told so', async () => {
  const shop = await newShop();
  const technician = await openFromLaptop(browser, shop, [], { ear: 'embedded', voice: 'silent' });
  await technician.context().addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () =>
      Promise.reject(new DOMException('denied by the test', 'NotAllowedError'));
  });
  await technician.reload();
  await pairAs(technician, shop, 'technician');
  await technician.getByText('The microphone cannot be used').first().waitFor();
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(technician, 'job.card.asking');
  await technician.getByText('Listening: by touch only').waitFor();
  const device = shop.server.devices().find(({ role }) => role === 'technician');
  expect(device?.connected).toBe(true);
  await waitForKey(supervisor, 'job.card.asking');
  for (const page of [technician, supervisor]) await page.context().close();
});

it('a device is let go of by the supervisor, and by itself', async () => {
  const shop = await newShop();
  const second = await joinBay(browser, shop, 'second');
  const supervisor = await joinBay(browser, shop, 'supervisor');
  await supervisor.getByRole('button', { name: /^Let go/ }).click();
  await second.getByText('this device reaches nobody').waitFor();
  await lookAt(supervisor, 'supervisor-devices');
  await supervisor.getByRole('button', { name: 'Unpair this device' }).click();
  await supervisor.getByRole('button', { name: "Join the bay's laptop" }).click();
  await supervisor.getByLabel('Six digits').waitFor();
  expect(shop.server.devices()).toEqual([]);
});
