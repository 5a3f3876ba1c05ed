import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { Face } from './support/face.ts';
import { openShop } from './support/shop.ts';

const soon = (check: () => void) => vi.waitFor(check, { timeout: 60_000, interval: 20 });

test('A record that could not be written to its end is saved elsewhere: the terminal says where, and it is gone on with', async () => {
  const shop = await openShop();
  const technician = await Face.paired(shop.base, await shop.pair('technician'));
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  const first = technician.state?.session ?? '';
  rmSync(join(shop.folder, `${first}.jsonl`));
  await technician.say('card is right');
  await soon(() => {
    expect(technician.state?.view?.problems.join()).toContain('can no longer write the record');
    expect(technician.state?.view?.problems.join()).toContain('keeps it in memory only');
  });
  await shop.server.close();

  const [rescued = ''] = readdirSync(shop.folder).filter(name => name.includes('.rescued-'));
  const path = join(shop.folder, rescued);
  expect(shop.told.some(sentence => sentence.includes(`the whole record is in ${path}`))).toBe(true);
  expect(await verifyLog(path)).toMatchObject({ ok: true });

  const again = await openShop({ folder: shop.folder });
  const back = await Face.paired(again.base, await again.pair('technician'));
  expect(back.state?.session).toBe(rescued.replace('.jsonl', ''));
  expect(back.state?.view?.state).toBe('stopped');
  await again.server.close();
});
