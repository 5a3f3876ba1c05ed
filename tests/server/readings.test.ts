import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Face } from './support/face.ts';
import { interruptedShop } from './support/interrupted.ts';
import { openShop } from './support/shop.ts';

test('Readings that were judged before the server ended are on every face when it goes on', async () => {
  const folder = await interruptedShop('barOver.turned.asking');
  const verdicts = readFileSync(join(folder, 'interrupted.jsonl'), 'utf8')
    .trim()
    .split('\n')
    .map(line => JSON.parse(line))
    .filter(({ kind, data }) => kind === 'verdict' && data.quantity != null && data.value != null);
  const quantities = new Set(verdicts.map(({ data }) => data.quantity));
  expect(quantities.size).toBeGreaterThan(0);
  const shop = await openShop({ folder });
  const face = await Face.paired(shop.base, await shop.pair('technician'));
  expect(face.state?.view?.readings).toHaveLength(quantities.size);
  await shop.server.close();
});
