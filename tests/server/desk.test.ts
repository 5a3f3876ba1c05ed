import { mkdir, mkdtemp, stat } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { registerDevices } from '../../src/terminal/devices-command.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let second: Face;
beforeAll(async () => {
  shop = await openShop();
  await shop.pair('technician');
  second = await Face.paired(shop.base, await shop.pair('second'));
});
afterAll(() => shop.server.close());

/** Runs `devices` as the command line does; gives what it printed. */
async function devices(...words: readonly string[]): Promise<string> {
  const lines: string[] = [];
  const spy = vi.spyOn(console, 'log').mockImplementation((line: unknown) => void lines.push(String(line)));
  const program = new Command('first-fire').exitOverride();
  registerDevices(program);
  try {
    await program.parseAsync(['devices', ...words], { from: 'user' });
    return lines.join('\n');
  } finally {
    spy.mockRestore();
  }
}

test('The terminal lists the paired devices, and ends the pairing of the one that is named', async () => {
  const listed = await devices('--shop', shop.folder);
  expect(listed).toMatch(/bay 1 +technician +not connected +"a technician"/);
  const [id = ''] = /^\S+(?= +bay 1 +second)/m.exec(listed) ?? [];
  expect(await devices('--shop', shop.folder, '--end', id)).toBe(
    'The pairing of "a second" in bay 1 is ended.',
  );
  await second.until(() => second.closeCode !== null);
  expect(second.errors().at(-1)).toMatchObject({ code: 'notPaired', final: true });
  expect(await devices('--shop', shop.folder)).not.toContain('a second');
});

test('What names no device, or more than one, ends nothing and says so', async () => {
  await shop.pair('supervisor');
  for (const id of ['x', 'nobody'])
    await expect(devices('--shop', shop.folder, '--end', id)).rejects.toThrow('No paired device has an id');
  expect(shop.server.devices()).toHaveLength(2);
});

test('The desk is open to the owner of the shop only, and where no server runs that is said', async () => {
  expect((await stat(join(shop.folder, '.server', 'desk'))).mode & 0o077).toBe(0);
  const empty = await mkdtemp(join(tmpdir(), 'empty-'));
  await expect(devices('--shop', empty)).rejects.toThrow('No server answers for the shop');
});

test('What answers in the place of the server, and is none, is told as that', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'desk-'));
  await mkdir(join(folder, '.server'));
  const other = createServer(socket => socket.end('no answer\n'));
  await new Promise<void>(resolve => other.listen(join(folder, '.server', 'desk'), resolve));
  await expect(devices('--shop', folder)).rejects.toThrow('No server answers for the shop');
  other.close();
});
