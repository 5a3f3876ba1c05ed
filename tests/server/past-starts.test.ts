import { readdirSync, writeFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FEWEST_OTHERS } from '../../src/engineering/normal-range.ts';
import { readLog } from '../../src/record/index.ts';
import { another, wholeSession } from '../archive/sessions.ts';
import { Face } from './support/face.ts';
import { get } from './support/https.ts';
import { openShop } from './support/shop.ts';
import { leadToTheEnd, linesOf } from './support/whole-start.ts';

/** A shop that started this engine so many times before; oil pressure came after these seconds. */
async function shopWith(seconds: readonly number[]): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'experienced-'));
  const apart = await mkdtemp(join(tmpdir(), 'model-'));
  const model = await wholeSession(join(apart, 'model.jsonl'));
  seconds.forEach((oilPressureSeconds, index) => {
    writeFileSync(
      join(folder, `start-${index}.jsonl`),
      another(model, { oilPressureSeconds, daysLater: -1 - index }),
    );
  });
  return folder;
}

/** A whole start on a server of this shop: what its faces were shown, and what its record says. */
async function startIn(folder: string) {
  const shop = await openShop({ folder });
  const token = await shop.pair('technician');
  const face = await Face.paired(shop.base, token);
  const begun = await face.do({ do: 'begin', profile: 'demo-six' });
  if (begun.type === 'error') throw new Error(begun.sentence);
  // The list is made behind it, by the same thread: what was measured before is known now.
  await get(shop.base, '/api/sessions?find=', token);
  await leadToTheEnd(face, shop.clock(), await linesOf('demo-six'));
  const said = face.messages.flatMap(message => (message.type === 'say' ? [message.text] : []));
  await shop.server.close();
  const own = readdirSync(folder).find(name => name.endsWith('.jsonl') && !name.startsWith('start-'));
  const { entries } = await readLog(join(folder, own ?? ''));
  return { said, beside: entries.filter(({ kind }) => kind === 'besideOthers') };
}

test('A start on a tablet is held beside the earlier starts of the shop, and told at once where it leaves them', async () => {
  const count = FEWEST_OTHERS + 2;
  const folder = await shopWith(Array.from({ length: count }, (_, index) => 30 + (index % 5) / 10));
  const { said, beside } = await startIn(folder);
  expect(said.join('\n')).toMatch(/faster than fourteen of fourteen starts of this engine here/);
  const [oil] = beside.filter(({ data }) => data.figure === 'oil-pressure-time');
  expect(oil?.data).toMatchObject({ within: false, others: count });
  // What was as it always is stands in the record, and nobody is told of it.
  const voltage = beside.find(({ data }) => data.figure === 'cranking-voltage');
  expect(voltage?.data).toMatchObject({ within: true, others: count });
});

test('Nothing is said beside too few starts', async () => {
  const folder = await shopWith(Array.from({ length: FEWEST_OTHERS - 1 }, () => 30));
  const { said, beside } = await startIn(folder);
  expect(said.join('\n')).not.toMatch(/starts of this engine here/);
  expect(beside).toEqual([]);
});
