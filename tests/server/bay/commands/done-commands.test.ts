import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../../src/record/index.ts';
import { DoneCommands } from '../../../../src/server/bay/commands/done-commands.ts';
import { latch } from '../parts-of-a-bay.ts';

describe('Commands that were done', () => {
  const settled = Promise.resolve();

  test('are known by device and id, until they came to nothing or the device never comes back', () => {
    const done = new DoneCommands();
    expect(done.find('d', '1')).toBeUndefined();
    done.add('d', '1', settled);
    done.add('d', '2', settled);
    done.add('e', '1', settled);
    expect(done.find('d', '1')).toBe(settled);
    expect(done.find('e', '2')).toBeUndefined();
    done.drop('d', '1');
    expect([done.find('d', '1'), done.find('d', '2')]).toEqual([undefined, settled]);
    done.keepOnly(device => device !== 'd');
    expect([done.find('d', '2'), done.find('e', '1')]).toEqual([undefined, settled]);
    done.drop('nobody', '1');
  });

  test('are a thousand of each device; the oldest is forgotten first, and of no other device', () => {
    const done = new DoneCommands();
    done.add('other', '0', settled);
    for (let id = 0; id < 1000; id += 1) done.add('d', String(id), settled);
    expect(done.find('d', '0')).toBe(settled);
    done.add('d', '1000', settled);
    expect(done.find('d', '0')).toBeUndefined();
    expect(done.find('d', '1')).toBe(settled);
    expect(done.find('other', '0')).toBe(settled);
  });

  test('are taken from the record when a session is gone on with', () => {
    const entry = (kind: string, data: object): Entry => ({ kind, data }) as unknown as Entry;
    const command = { id: 'i', device: 'd', name: 'n', role: 'second', do: 'say' };
    const done = new DoneCommands();
    done.restore([
      entry('command', command),
      entry('problem', { ...command, id: 'no command' }),
      entry('command', { id: 'not whole', device: 'd' }),
    ]);
    expect(done.find('d', 'i')).toBeInstanceOf(Promise);
    expect(done.find('d', 'no command')).toBeUndefined();
    expect(done.find('d', 'not whole')).toBeUndefined();
  });
});

describe('A command', () => {
  test('is done at once, and is over when it is on the record', async () => {
    const done = new DoneCommands();
    const disk = latch();
    const told: string[] = [];
    const first = done.once('d', '1', () => {
      told.push('begun');
      return disk.opened;
    });
    expect(told).toEqual(['begun']);
    void first.then(() => told.push('over'));
    await Promise.resolve();
    expect(told).toEqual(['begun']);
    disk.open();
    expect(await first).toBe(false);
    expect(told).toEqual(['begun', 'over']);
  });

  test('that is sent again, as of a double touch, is not done again: it waits for the first', async () => {
    const done = new DoneCommands();
    const disk = latch();
    let times = 0;
    const once = (device: string, id: string) =>
      done.once(device, id, () => {
        times += 1;
        return disk.opened;
      });
    const both = Promise.all([once('d', '1'), once('d', '1')]);
    expect(times).toBe(1);
    disk.open();
    expect(await both).toEqual([false, true]);
    expect(await once('d', '1')).toBe(true);
    expect(times).toBe(1);
  });

  test('of another id, and that of another device, is done beside it', async () => {
    const done = new DoneCommands();
    const begun: string[] = [];
    for (const [device, id] of [
      ['d', '1'],
      ['d', '2'],
      ['e', '1'],
    ] as const)
      void done.once(device, id, () => {
        begun.push(device + id);
        return new Promise(() => {});
      });
    expect(begun).toEqual(['d1', 'd2', 'e1']);
  });

  test('that came to nothing is told so to all who asked for it, and is done when it is sent again', async () => {
    const done = new DoneCommands();
    const fails = () => done.once('d', '1', () => Promise.reject(new Error('no room')));
    const [first, again] = [fails(), done.once('d', '1', async () => {})];
    await expect(again).rejects.toThrow('no room');
    await expect(first).rejects.toThrow('no room');
    const refused = done.once('d', '1', () => {
      throw new Error('not yours');
    });
    await expect(refused).rejects.toThrow('not yours');
    expect(await done.once('d', '1', async () => {})).toBe(false);
  });
});
