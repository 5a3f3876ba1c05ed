import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openShop } from './support/shop.ts';

test('a shop has one server: another is refused in one sentence, until the first has ended', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shop-'));
  const first = await openShop({ folder });
  await expect(openShop({ folder })).rejects.toMatchObject({
    name: 'ServeError',
    message: expect.stringMatching(
      /^Another server serves the shop's folder .*; end that one first, or delete .*server\.lock if there is none\.$/,
    ),
  });
  // The one that was refused has taken nothing away from the other.
  await expect(openShop({ folder })).rejects.toThrow('Another server');
  await first.server.close();
  const next = await openShop({ folder });
  await next.server.close();
});

test('one that could not begin does not stand in the way of the next', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'shop-'));
  const taken = await openShop();
  await expect(openShop({ folder, port: taken.server.port })).rejects.toThrow(/cannot listen at port/);
  await (await openShop({ folder })).server.close();
  await taken.server.close();
});
