import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, watch } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SLCAN_BELL } from '../../src/bus/formats/slcan.ts';
import type { CanFrame } from '../../src/bus/frame.ts';
import type { BusNotice } from '../../src/bus/ports.ts';
import { openSerialLine } from '../../src/bus/sources/serial-line.ts';
import { type SerialLine, slcanAdapter } from '../../src/bus/sources/slcan.ts';
import { anyFrame } from './arbitraries.ts';
import { slcanText } from './slcan-text.ts';

const FRAMES = fc.sample(anyFrame, { numRuns: 300, seed: 5 }).map(frame => ({ ...frame, timeS: 7 }));
const TEXT = FRAMES.map(slcanText).join('');

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bus-serial-'));
});
afterAll(async () => rm(folder, { recursive: true }));

/** An adapter at this place; `ask` has it asked for its status. */
function adapterAt(place: string, open: () => Promise<SerialLine>) {
  const frames: CanFrame[] = [];
  const notices: BusNotice[] = [];
  let ask = (): void => {};
  let asking = true;
  const source = slcanAdapter({
    place,
    open,
    bitRate: 250_000,
    nowS: () => 7,
    repeat: (_, action) => {
      ask = action;
      return () => {
        asking = false;
      };
    },
  });
  const ended = (onFrame = (_: CanFrame) => {}) =>
    source.run(
      frame => {
        frames.push(frame);
        onFrame(frame);
      },
      notice => {
        notices.push(notice);
      },
    );
  return { source, frames, notices, ended, ask: () => ask(), stillAsking: () => asking };
}

/** A line in the program itself: what the adapter says, and what was written to it. */
function lineOf(...said: string[]) {
  const written: string[] = [];
  async function* chunks(): AsyncGenerator<Uint8Array> {
    for (const text of said) yield Buffer.from(text, 'latin1');
  }
  const line: SerialLine = {
    chunks: chunks(),
    async write(text) {
      written.push(text);
    },
    async close() {
      written.push('closed');
    },
  };
  return { written, open: async () => line };
}

describe('A serial adapter', () => {
  it('is set to the bit rate and opened to listen only, and is closed behind', async () => {
    const { written, open } = lineOf('\r\r\r');
    const { ended, stillAsking } = adapterAt('COM3', open);
    expect(await ended()).toEqual({
      kind: 'lost',
      reason: 'The bus adapter at COM3 is gone; plug it in again.',
    });
    expect(written).toEqual(['C\r', 'S5\r', 'L\r', 'closed']);
    expect(stillAsking()).toBe(false);
  });

  it('gives its frames however they are cut', async () => {
    const cuts = [TEXT.slice(0, 3), TEXT.slice(3, 700), TEXT.slice(700)];
    const { frames, notices, ended } = adapterAt('COM3', lineOf(...cuts).open);
    await ended();
    expect(frames).toEqual(FRAMES);
    expect(notices).toEqual([]);
  });

  it('may refuse to be closed before it was open, but not to listen only', async () => {
    const fine = adapterAt('COM3', lineOf(`${SLCAN_BELL}\r\r`, TEXT).open);
    await fine.ended();
    expect(fine.frames).toEqual(FRAMES);
    const old = adapterAt('COM3', lineOf(`\r\r${SLCAN_BELL}`, TEXT).open);
    expect(await old.ended()).toMatchObject({ reason: expect.stringContaining('refused to listen only') });
    const odd = adapterAt('COM3', lineOf(`\r${SLCAN_BELL}`, TEXT).open);
    expect(await odd.ended()).toMatchObject({
      reason: expect.stringContaining('refused to set the bit rate'),
    });
  });

  it('tells each condition of the bus when it changes, and when it is over', async () => {
    const { notices, ended } = adapterAt('COM3', lineOf('F00\rFA0\rFA0\rF04\rF00\rF00\r').open);
    await ended();
    expect(notices.map(one => one.kind === 'condition' && one.condition)).toEqual([
      'errorPassive',
      'otherError',
      'errorWarning',
      'errorActive',
    ]);
  });

  it('that says rubbish is told so and survived', async () => {
    const { frames, notices, ended } = adapterAt(
      'COM3',
      lineOf('\u00ff\u00fe@@\r', 'T0CF00400'.repeat(90), '\r', TEXT).open,
    );
    await ended();
    expect(frames).toEqual(FRAMES);
    expect(notices).toMatchObject([
      { kind: 'rubbish', sentence: expect.stringMatching(/^A message from the bus/) },
    ]);
  });

  it('that is not there is lost in one sentence', async () => {
    const { ended } = adapterAt('/dev/none', () => openSerialLine('/dev/none'));
    expect(await ended()).toEqual({
      kind: 'lost',
      reason: expect.stringMatching(
        /^The bus adapter at \/dev\/none could not be opened \(ENOENT.*\); check that/,
      ),
    });
  });

  it('that is another kind of device is lost in one sentence', async () => {
    const { ended } = adapterAt('/dev/null', () => openSerialLine('/dev/null'));
    expect(await ended()).toMatchObject({ reason: expect.stringContaining('could not be opened') });
  });

  it('that is closed while it is being opened is left alone', async () => {
    const { written, open } = lineOf(TEXT);
    const { source, frames, ended } = adapterAt('COM3', open);
    const end = ended();
    source.close();
    expect([await end, frames, written]).toEqual([{ kind: 'finished' }, [], ['closed']]);
  });

  it('recorded in a file is read without a command to it', async () => {
    const path = join(folder, 'recorded');
    await writeFile(path, TEXT);
    const { frames, ended } = adapterAt(path, () => openSerialLine(path));
    await ended();
    expect(frames).toEqual(FRAMES);
    expect(execFileSync('cat', [path], { encoding: 'utf8' })).toBe(TEXT);
  });
});

/** Two serial devices joined back to back by socat; ending it is pulling the plug. */
async function serialPair(): Promise<{ adapter: string; tool: string; wire: ChildProcess }> {
  const place = await mkdtemp(join(folder, 'pair-'));
  const adapter = join(place, 'adapter');
  const tool = join(place, 'tool');
  const both = () => existsSync(adapter) && existsSync(tool);
  const appeared = new Promise<void>(resolve => {
    const watcher = watch(place, () => {
      if (!both()) return;
      watcher.close();
      resolve();
    });
  });
  const wire = spawn('socat', [`pty,raw,echo=0,link=${adapter}`, `pty,raw,echo=0,link=${tool}`], {
    stdio: 'ignore',
  });
  await appeared;
  return { adapter, tool, wire };
}

describe('A serial device', () => {
  it('is listened to, answers its status, and may be pulled out', async () => {
    const { adapter, tool, wire } = await serialPair();
    const far = await openSerialLine(adapter);
    const near = adapterAt(tool, () => openSerialLine(tool));
    const end = near.ended(frame => {
      if (near.frames.length === FRAMES.length && frame.timeS === 7) near.ask();
    });
    let written = '';
    for await (const chunk of far.chunks) {
      const before = written;
      written += Buffer.from(chunk).toString('latin1');
      if (!before.includes('L\r') && written.includes('L\r')) await far.write(`\r\r\r${TEXT}`);
      if (written.endsWith('F\r')) {
        wire.kill();
        break;
      }
    }
    await once(wire, 'exit');
    expect(written).toBe('C\rS5\rL\rF\r');
    expect(await end).toEqual({
      kind: 'lost',
      reason: expect.stringMatching(/^The bus adapter at .*tool is gone.*; plug it in again\.$/),
    });
    expect(near.frames).toEqual(FRAMES);
    await far.close();
  });

  it('is left when the source is closed', async () => {
    const { adapter, tool, wire } = await serialPair();
    const far = await openSerialLine(adapter);
    const near = adapterAt(tool, () => openSerialLine(tool));
    const end = near.ended(() => near.source.close());
    const [first] = FRAMES;
    if (!first) throw new Error('no frames');
    let written = '';
    for await (const chunk of far.chunks) {
      written += Buffer.from(chunk).toString('latin1');
      if (written === 'C\rS5\rL\r') await far.write(`\r\r\r${slcanText(first)}`);
      if (written.endsWith('L\rC\r')) break;
    }
    expect(await end).toEqual({ kind: 'finished' });
    await far.close();
    const gone = once(wire, 'exit');
    wire.kill();
    await gone;
  });
});
