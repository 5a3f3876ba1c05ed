import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

test('Bays that begin at once are all gone on with: none makes the place of another forgotten', async () => {
  const bays = Array.from({ length: 30 }, (_, nth) => `bay ${nth + 1}`);
  shop = await openShop({ bays });
  const faces: Face[] = [];
  for (const bay of bays) faces.push(await Face.paired(shop.base, await shop.pair('technician', bay)));
  await Promise.all(faces.map(face => face.do({ do: 'begin' })));
  for (const face of faces) await face.settled();
  const places = JSON.parse(await readFile(join(shop.folder, '.server', 'bays.json'), 'utf8'));
  expect(places).toEqual(Object.fromEntries(faces.map(face => [face.state?.bay, face.state?.session])));
});
