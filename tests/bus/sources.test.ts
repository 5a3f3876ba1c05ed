import { execFileSync } from 'node:child_process';
import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatCandumpLine } from '../../src/bus/formats/candump.ts';
import type { CanFrame } from '../../src/bus/frame.ts';
import type { BusEnd, BusNotice, BusSource } from '../../src/bus/ports.ts';
import { candumpOn } from '../../src/bus/sources/candump-child.ts';
import { candumpFile } from '../../src/bus/sources/candump-file.ts';
import { reconnecting } from '../../src/bus/sources/reconnecting.ts';
import { anyFrame } from './arbitraries.ts';

const FRAMES = fc.sample(anyFrame, { numRuns: 500, seed: 3 });
const LOG = FRAMES.map(frame => `${formatCandumpLine(frame, 'can0')}\n`).join('');

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bus-sources-'));
});
afterAll(async () => rm(folder, { recursive: true }));

const file = async (name: string, text: string): Promise<string> => {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
};

/** Runs a source to its end; keeps what it gave. */
async function hear(source: BusSource, onFrame: (frame: CanFrame) => void = () => {}) {
  const frames: CanFrame[] = [];
  const notices: BusNotice[] = [];
  const end = await source.run(
    frame => {
      frames.push(frame);
      onFrame(frame);
    },
    notice => {
      notices.push(notice);
    },
  );
  return { frames, notices, end };
}

describe('A candump log file', () => {
  it('gives its frames in order and ends', async () => {
    const { frames, notices, end } = await hear(candumpFile(await file('good.log', LOG)));
    expect(frames).toEqual(FRAMES);
    expect([notices, end]).toEqual([[], { kind: 'finished' }]);
  });

  it('with rubbish in it gives all its frames, and tells of the rubbish a few times only', async () => {
    const rubbish = `${'#'.repeat(20_000)}\n${'\u0000\u0001~\n'.repeat(60)}`;
    const { frames, notices } = await hear(candumpFile(await file('bad.log', `${rubbish}${LOG}half a li`)));
    expect(frames).toEqual(FRAMES);
    expect(notices.map(({ kind }) => kind)).toEqual(['rubbish', 'rubbish']);
    expect(notices[0]?.sentence).toMatch(
      /^A line from the bus could not be read, last "#+": it does not begin with/,
    );
    expect(notices[1]?.sentence).toMatch(/^10 lines so far/);
  });

  it('tells of the bus going off and coming back', async () => {
    const text =
      '(1.000000) can0 20000040#0000000000000000\n\r\n(1.500000) can0 20000100#0000000000000000\r\n';
    const { notices } = await hear(candumpFile(await file('off.log', text)));
    expect(notices).toMatchObject([
      { kind: 'condition', condition: 'busOff', sentence: expect.stringContaining('check bit rate') },
      { kind: 'condition', condition: 'restarted' },
    ]);
  });

  it('that is not there is lost in one sentence', async () => {
    const { end } = await hear(candumpFile(join(folder, 'none.log')));
    expect(end).toEqual({
      kind: 'lost',
      reason: expect.stringMatching(
        /^The bus log .*none\.log could not be read \(ENOENT.*\); check the path\.$/,
      ),
    });
  });

  it('waits for its reader, and stops when it is closed', async () => {
    const source = candumpFile(await file('long.log', LOG));
    let taken = 0;
    let busy = false;
    const end = await source.run(
      async () => {
        expect(busy).toBe(false);
        busy = true;
        await Promise.resolve();
        busy = false;
        taken += 1;
        if (taken === 10) source.close();
      },
      () => {},
    );
    expect([taken, end]).toEqual([10, { kind: 'finished' }]);
  });
});

describe('candump on an interface', () => {
  /** Stands in for candump where the kernel has no CAN; prints what candump prints and takes its arguments. */
  const standIn = async (name: string, body: string): Promise<string> => {
    const path = await file(name, `#!/bin/sh\n[ "$*" = "-L can0,0:0,#FFFFFFFF" ] || exit 9\n${body}\n`);
    await chmod(path, 0o755);
    return path;
  };

  it('that does not exist is lost with the real candump’s own words', async () => {
    expect(execFileSync('sh', ['-c', 'command -v candump'], { encoding: 'utf8' })).toContain('candump');
    const { frames, end } = await hear(candumpOn('can99'));
    expect(frames).toEqual([]);
    expect(end).toMatchObject({
      kind: 'lost',
      reason: expect.stringMatching(
        /^candump on can99 gives no more \(.+\); check that the adapter is plugged in/,
      ),
    });
  });

  it('without candump is lost and says what to install', async () => {
    const { end } = await hear(candumpOn('can0', join(folder, 'no-candump')));
    expect(end).toMatchObject({ kind: 'lost', reason: expect.stringContaining('install can-utils') });
  });

  it('gives its frames until the adapter is unplugged, and then says so', async () => {
    const log = await file('child.log', LOG);
    const command = await standIn('unplugged', `cat '${log}'; echo 'read: Network is down' >&2; exit 1`);
    const { frames, end } = await hear(candumpOn('can0', command));
    expect(frames).toEqual(FRAMES);
    expect(end).toEqual({
      kind: 'lost',
      reason:
        'candump on can0 gives no more (read: Network is down); check that the adapter is plugged in and can0 is up.',
    });
  });

  it('that ends by itself without a word is lost too', async () => {
    const { end } = await hear(candumpOn('can0', await standIn('silent', 'exit 0')));
    expect(end).toMatchObject({ kind: 'lost', reason: expect.stringContaining('it ended with code 0') });
  });

  it('ends candump when it is closed', async () => {
    const log = await file('endless.log', LOG);
    const source = candumpOn('can0', await standIn('endless', `cat '${log}'; exec sleep 3600`));
    let taken = 0;
    const { end } = await hear(source, () => {
      taken += 1;
      if (taken === FRAMES.length) source.close();
    });
    expect(end).toEqual({ kind: 'finished' });
    expect(await hear(source)).toMatchObject({ frames: [], end: { kind: 'finished' } });
  });
});

describe('A source that is tried again', () => {
  const [frame] = FRAMES;
  if (!frame) throw new Error('no frames');
  /** Gives a frame, or none, and ends as it is told. */
  const once = (end: BusEnd, heard: boolean): BusSource => ({
    description: 'adapter',
    async run(onFrame) {
      if (heard) await onFrame(frame);
      return end;
    },
    close() {},
  });
  const lost = { kind: 'lost', reason: 'It is gone; plug it in.' } as const;

  it('tells each loss once, waits, and goes on when it is back', async () => {
    const ends = [
      once(lost, true),
      once(lost, false),
      once(lost, false),
      once(lost, true),
      once({ kind: 'finished' }, true),
    ];
    const waits: number[] = [];
    const source = reconnecting(
      () => ends.shift() ?? expect.fail('opened too often'),
      async ms => {
        waits.push(ms);
      },
    );
    const { frames, notices, end } = await hear(source);
    expect(frames).toHaveLength(3);
    expect(notices).toEqual([
      { kind: 'lost', sentence: 'It is gone; plug it in. Trying again.' },
      { kind: 'lost', sentence: 'It is gone; plug it in. Trying again.' },
    ]);
    expect(waits).toEqual([2000, 2000, 2000, 2000]);
    expect(end).toEqual({ kind: 'finished' });
  });

  it('is not tried again when it is closed', async () => {
    const source = reconnecting(
      () => once(lost, false),
      async () => source.close(),
    );
    expect((await hear(source)).end).toEqual({ kind: 'finished' });
  });
});
