import { expect, it, onTestFinished } from 'vitest';
import { joinBay } from '../helpers/bay.ts';
import { openBehindNetwork } from '../helpers/network.ts';
import { newShop } from '../helpers/opened.ts';
import { answer, keyOf, waitForKey } from '../helpers/page.ts';

/** A bay whose devices are behind a network that can swallow everything. */
async function behindNetwork() {
  const shop = await newShop();
  const network = await openBehindNetwork(shop.server.port);
  onTestFinished(() => network.close());
  return { shop, network };
}

const CUT_OFF = 'this device reaches nobody';
const UNANSWERED = 'No answer from the laptop. Shout STOP.';

it('a line that is dead without an end is shown as broken, what was answered on it is told, and a new one is tried', async () => {
  const { shop, network } = await behindNetwork();
  const page = await joinBay(network.browser, shop, 'technician');
  await page.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(page, 'job.card.asking');
  await page.locator('.choice:not([aria-disabled="true"])').first().waitFor();
  network.swallow();
  await answer(page, 'card is right');
  await page.getByText('has not acknowledged what was given last').waitFor();
  // A browser itself takes a minute to find that out.
  await page.getByText(CUT_OFF).waitFor({ timeout: 20_000 });
  expect(await keyOf(page)).toBe('job.card.asking');
  network.comesBack();
  await page.getByText(CUT_OFF).waitFor({ state: 'detached', timeout: 30_000 });
  await answer(page, 'card is right');
  await waitForKey(page, 'job.makerFirst.asking');
});

it('a stop given on a broken line outlives a page that is loaded anew: shown as unanswered, and sent', async () => {
  const { shop, network } = await behindNetwork();
  const technician = await joinBay(network.browser, shop, 'technician');
  const second = await joinBay(network.browser, shop, 'second');
  await technician.getByRole('button', { name: 'Begin' }).click();
  await waitForKey(second, 'job.card.asking');
  network.swallow();
  await second.getByRole('button', { name: /^STOP/ }).dispatchEvent('pointerdown');
  await second.getByText(UNANSWERED).waitFor();
  network.comesBack();
  network.breakAll();
  // Until the test lets it, the new page hears nothing from the laptop.
  let isHeld = true;
  const held: (() => void)[] = [];
  await second.routeWebSocket(/\/ws$/, socket => {
    const server = socket.connectToServer();
    server.onMessage(text => {
      if (isHeld) held.push(() => socket.send(text));
      else socket.send(text);
    });
  });
  await second.reload();
  await second.getByText(UNANSWERED).waitFor();
  expect(await keyOf(technician)).toBe('job.card.asking');
  isHeld = false;
  for (const go of held.splice(0)) go();
  await waitForKey(technician, 'stopped.makingSafe');
  await second.getByText(UNANSWERED).waitFor({ state: 'detached' });
});
