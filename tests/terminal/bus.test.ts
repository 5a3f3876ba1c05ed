import { mkdtempSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatCandumpLine } from '../../src/bus/formats/candump.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { openBus } from '../../src/terminal/run/bus.ts';
import { parameterFrame } from '../helpers/bus-rig.ts';

const six = await loadProfile('demo-six');
const four = await loadProfile('demo-four');
const clock = () => new VirtualClock(new Date('2026-01-02T03:04:05Z'));
const folder = mkdtempSync(join(tmpdir(), 'bus-'));

describe('--bus', () => {
  it('plays a log of candump at the pace at which it was written', async () => {
    const path = join(folder, 'good.log');
    const frame = parameterFrame(190, 850);
    const lines = [100, 100.5, 103].map(timeS => formatCandumpLine({ ...frame, timeS }, 'can0'));
    await writeFile(path, `${lines.join('\n')}\n`);
    const time = clock();
    const source = await openBus(path, six, time);
    expect(source.description).toBe(`candump log ${path}`);
    const atMs: number[] = [];
    let over = false;
    const run = source.run(
      () => void atMs.push(time.nowMs()),
      () => {},
    );
    void run.then(() => {
      over = true;
    });
    while (!over) {
      const next = time.nextMs();
      if (next === null) await new Promise(setImmediate);
      else time.advance(next - time.nowMs());
    }
    expect(atMs).toEqual([0, 500, 3000]);
    await expect(run).resolves.toEqual({ kind: 'finished' });
  });

  it.each([
    [
      'what is not there',
      '/nowhere/bus.log',
      /--bus \/nowhere\/bus\.log is not there; give a candump log file, /,
    ],
    [
      'an interface that is not there',
      'can77',
      /--bus can77: there is no CAN interface and no file of this name; /,
    ],
    ['a folder', folder, /is neither a log nor a device; give a candump log file/],
  ])('refuses %s in one sentence that says what to give', async (_, name, says) => {
    await expect(openBus(name, six, clock())).rejects.toThrow(says);
  });

  it('refuses a file that is no log of candump', async () => {
    const path = join(folder, 'rubbish.txt');
    await writeFile(path, 'speed 850\n'.repeat(1000));
    await expect(openBus(path, six, clock())).rejects.toThrow(`--bus ${path} is no log of candump; `);
    await mkdir(join(folder, 'sub'));
    const empty = join(folder, 'empty.log');
    await writeFile(empty, '');
    await expect(openBus(empty, six, clock())).rejects.toThrow(/is no log of candump/);
  });

  it('is refused for an engine whose profile has no bus', async () => {
    await expect(openBus('can0', four, clock())).rejects.toThrow(/has no "bus" section; leave --bus out/);
  });
});
