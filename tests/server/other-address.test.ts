import { expect, test } from 'vitest';
import { Face } from './support/face.ts';
import { fetchRaw } from './support/https.ts';
import { openShop } from './support/shop.ts';

test('A laptop that gets another address while a session goes on answers there, tells the terminal, and is stopped from there', async () => {
  let addresses: readonly string[] = ['127.0.0.1'];
  const shop = await openShop({ host: '0.0.0.0', addresses: () => addresses });
  const { port } = shop.server;
  const before = await Face.paired(shop.base, await shop.pair('technician'));
  const second = await shop.pair('second');
  await before.do({ do: 'begin' });
  await before.until(() => before.key === 'job.card.asking');
  const elsewhere = `https://127.0.0.2:${port}`;
  expect((await fetchRaw(elsewhere, '/')).body).toContain('wrongOrigin');

  addresses = ['127.0.0.1', '127.0.0.2'];
  shop.passSteady(2000);
  const there = await Face.paired(elsewhere, second);
  expect(await there.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
  await before.until(() => before.state?.view?.state === 'stopped');
  expect(before.closeCode).toBeNull();
  await expect
    .poll(() => shop.told)
    .toContain(`This machine has another address now: devices open https://127.0.0.2:${port}/.`);
  for (const face of [before, there]) face.close();
  await shop.server.close();
});
