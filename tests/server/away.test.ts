import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { entrySchema, NO_PREVIOUS } from '../../src/record/entry.ts';
import { canonicalLine } from '../../src/record/seal.ts';
import { Face } from './support/face.ts';
import { get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { leadUntil, linesOf } from './support/whole-start.ts';

let shop: TestShop;
let technician: Face;
let supervisor: Face;
let token: string;
beforeAll(async () => {
  shop = await openShop({ awayMs: 0 });
  token = await shop.pair('technician');
  technician = await Face.paired(shop.base, token);
  supervisor = await Face.paired(shop.base, await shop.pair('supervisor'));
  await technician.do({ do: 'begin' });
});
afterAll(() => shop.server.close());

const leader = () => supervisor.state?.devices.find(({ role }) => role === 'technician');

describe('When the device that leads is away', () => {
  test('a session at an engine that stands waits for it', async () => {
    await technician.until(() => technician.key === 'job.card.asking');
    technician.cut();
    await supervisor.until(() => leader()?.connected === false);
    await supervisor.settled();
    expect(supervisor.state?.view?.state).toBe('working');
    technician = await Face.paired(shop.base, token);
  });

  test('one at an engine that turns is stopped, and the record says that nobody said so', async () => {
    const lines = await linesOf('demo-six');
    const running = lines.find(({ when }) => when.startsWith('warmUp.'))?.when ?? '';
    await leadUntil(running, technician, shop.clock(), lines);
    expect(technician.state?.view?.engine).toBe('running');
    technician.cut();
    await supervisor.until(() => supervisor.state?.view?.state === 'stopped');
    expect(supervisor.state?.view?.problems.join()).toContain('The device that leads is away');
  });

  test('its copy is the record of the laptop to the letter, made of what the log says', async () => {
    const session = supervisor.state?.session ?? '';
    let prev = NO_PREVIOUS;
    let lines = '';
    for (let from = 0; ; ) {
      const { body } = await get(shop.base, `/api/sessions/${session}/log?from=${from}`, token);
      const { entries, next } = JSON.parse(body);
      if (entries.length === 0) break;
      for (const each of entries) {
        const entry = entrySchema.parse({ v: 1, prev, ...each });
        lines += `${canonicalLine(entry)}\n`;
        prev = entry.hash;
      }
      from = next;
    }
    const record = readFileSync(join(shop.folder, `${session}.jsonl`), 'utf8');
    expect(lines.startsWith(record) || record.startsWith(lines)).toBe(true);
    expect(lines.length).toBeGreaterThan(10_000);
    // Handed on as they were written: the thread that takes stops reads none of them.
    const { body } = await get(shop.base, `/api/sessions/${session}/log?from=1`, token);
    expect(body.startsWith(`{"entries":[${lines.split('\n')[1]},`)).toBe(true);
  });
});
