import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  MOST_DEVICES_IN_A_BAY,
  MOST_RUN_OUT_IN_A_BAY,
  type Pairing,
  Pairings,
} from '../../../src/server/pairing/pairings.ts';

const HOUR_MS = 3_600_000;
const TWELVE_HOURS_MS = 12 * HOUR_MS;

/** Pairings in a file of their own, at a time that can be set. */
async function onClock() {
  const file = join(await mkdtemp(join(tmpdir(), 'pairings-')), 'pairings.json');
  const clock = { nowMs: 1_000_000 };
  const open = () => Pairings.open(file, () => clock.nowMs);
  return { file, clock, open, pairings: await open() };
}

async function paired(pairings: Pairings, bay = 'bay'): Promise<{ token: string; pairing: Pairing }> {
  const added = await pairings.add(bay, 'second', 'phone');
  if (!added) throw new Error('The bay is full.');
  return added;
}

describe('A pairing', () => {
  test('outlives the server, and ends by itself after twelve hours, or when it is let go of', async () => {
    const { clock, open, pairings } = await onClock();
    const kept = await paired(pairings);
    const dropped = await paired(pairings);
    await pairings.forget(dropped.pairing.device);
    const next = await open();
    expect(next.find(kept.token)).toEqual(kept.pairing);
    expect(next.find(dropped.token)).toBeNull();
    clock.nowMs += TWELVE_HOURS_MS - 1;
    expect(next.find(kept.token)).not.toBeNull();
    clock.nowMs += 1;
    expect(next.find(kept.token)).toBeNull();
  });

  test('is known by its token, of which only a hash is kept', async () => {
    const { file, pairings } = await onClock();
    const { token } = await paired(pairings);
    expect(pairings.find(`${token}x`)).toBeNull();
    expect(await readFile(file, 'utf8')).not.toContain(token);
  });

  test('that has run out is recalled still, and one that was let go of never', async () => {
    const { clock, pairings } = await onClock();
    const { token, pairing } = await paired(pairings);
    clock.nowMs += TWELVE_HOURS_MS;
    expect(pairings.isGood(pairing)).toBe(false);
    expect(pairings.recall(token)).toEqual(pairing);
    expect(pairings.current(pairing)).toEqual(pairing);
    await pairings.forget(pairing.device);
    expect(pairings.recall(token)).toBeNull();
    expect(pairings.current(pairing)).toBeNull();
  });

  test('says how long it is good for, which is never less than nothing', async () => {
    const { clock, pairings } = await onClock();
    const { pairing } = await paired(pairings);
    expect(pairings.leftMs(pairing)).toBe(TWELVE_HOURS_MS);
    clock.nowMs += TWELVE_HOURS_MS + 5;
    expect(pairings.leftMs(pairing)).toBe(0);
    clock.nowMs -= TWELVE_HOURS_MS;
    await pairings.forget(pairing.device);
    expect(pairings.leftMs(pairing)).toBe(0);
  });

  test('is not given to more devices than a bay can have; what has run out, and other bays, do not count', async () => {
    const { clock, pairings } = await onClock();
    for (let count = 0; count < MOST_DEVICES_IN_A_BAY; count += 1) await paired(pairings);
    expect(await pairings.add('bay', 'second', 'phone')).toBeNull();
    expect(await pairings.add('other', 'second', 'phone')).not.toBeNull();
    expect(pairings.ofBay('bay')).toHaveLength(MOST_DEVICES_IN_A_BAY);
    expect(pairings.ofBay('other')).toHaveLength(1);
    expect(pairings.all()).toHaveLength(MOST_DEVICES_IN_A_BAY + 1);
    clock.nowMs += TWELVE_HOURS_MS;
    expect(pairings.all()).toEqual([]);
    expect(await pairings.add('bay', 'second', 'phone')).not.toBeNull();
  });
});

describe('A pairing that is renewed', () => {
  test('is good for so long from now on, in the file as well, and is the same device under the same token', async () => {
    const { clock, open, pairings } = await onClock();
    const { token, pairing } = await paired(pairings);
    clock.nowMs += TWELVE_HOURS_MS - 60_000;
    await pairings.renew(pairing, HOUR_MS);
    for (const each of [pairings, await open()]) {
      expect(each.find(token)).toEqual({ ...pairing, expiresAtMs: clock.nowMs + HOUR_MS });
      expect(each.leftMs(pairing)).toBe(HOUR_MS);
    }
  });

  test('is never good for less than it was', async () => {
    const { pairings } = await onClock();
    const { pairing } = await paired(pairings);
    await pairings.renew(pairing, TWELVE_HOURS_MS - 1);
    expect(pairings.leftMs(pairing)).toBe(TWELVE_HOURS_MS);
  });

  test('stays let go of', async () => {
    const { pairings } = await onClock();
    const { token, pairing } = await paired(pairings);
    await pairings.forget(pairing.device);
    await pairings.renew(pairing, 2 * TWELVE_HOURS_MS);
    expect(pairings.recall(token)).toBeNull();
  });
});

describe('Who is let go of', () => {
  test('is that device alone, and whoever watches learns of it', async () => {
    const { pairings } = await onClock();
    const [one, other] = [await paired(pairings), await paired(pairings)];
    let told = 0;
    const unwatch = pairings.watch(() => {
      told += 1;
    });
    await pairings.forget(one.pairing.device);
    expect(told).toBe(1);
    expect(pairings.find(one.token)).toBeNull();
    expect(pairings.find(other.token)).toEqual(other.pairing);
    unwatch();
    await pairings.forget(other.pairing.device);
    expect(told).toBe(1);
  });
});

describe('Devices whose time has run out', () => {
  test('are recalled up to a number in each bay, those that ran out last', async () => {
    const { clock, pairings } = await onClock();
    const elsewhere = await paired(pairings, 'other');
    const tokens: string[] = [];
    for (let count = 0; count < MOST_RUN_OUT_IN_A_BAY + 3; count += 1) {
      tokens.push((await paired(pairings)).token);
      clock.nowMs += TWELVE_HOURS_MS;
    }
    const newcomer = await paired(pairings);
    const known = tokens.map(token => pairings.recall(token) !== null);
    expect(known).toEqual(tokens.map((_, nth) => nth >= 3));
    expect(pairings.recall(elsewhere.token)).toEqual(elsewhere.pairing);
    expect(pairings.find(newcomer.token)).toEqual(newcomer.pairing);
  });

  test('are dropped by when they ran out, not by when they came', async () => {
    const { clock, pairings } = await onClock();
    const first = await paired(pairings);
    await pairings.renew(first.pairing, 100 * TWELVE_HOURS_MS);
    const second = await paired(pairings);
    clock.nowMs += 200 * TWELVE_HOURS_MS;
    for (let count = 0; count < MOST_RUN_OUT_IN_A_BAY - 1; count += 1) {
      await paired(pairings);
      clock.nowMs += TWELVE_HOURS_MS;
    }
    await paired(pairings);
    expect(pairings.recall(first.token)).not.toBeNull();
    expect(pairings.recall(second.token)).toBeNull();
  });
});

describe('On a disk that takes nothing', () => {
  /** Nothing can take the place of a folder that is not empty. */
  async function onFullDisk() {
    const { file, open, pairings } = await onClock();
    const before = await paired(pairings);
    const breaks = async () => {
      await rm(file);
      await mkdir(join(file, 'in the way'), { recursive: true });
    };
    const mends = () => rm(file, { recursive: true });
    return { open, pairings, before, breaks, mends };
  }

  test('no device is paired that never learns of it', async () => {
    const { pairings, before, breaks } = await onFullDisk();
    await breaks();
    await expect(pairings.add('bay', 'second', 'phone')).rejects.toThrow();
    expect(pairings.all()).toEqual([before.pairing]);
  });

  test('a device that is let go of stays so: that is told, and kept as soon as it can be', async () => {
    const { open, pairings, before, breaks, mends } = await onFullDisk();
    await breaks();
    await expect(pairings.forget(before.pairing.device)).rejects.toMatchObject({
      message: expect.stringContaining('is let go of, but'),
    });
    expect(pairings.find(before.token)).toBeNull();
    await pairings.keepAgain();
    await mends();
    await pairings.keepAgain();
    expect((await open()).find(before.token)).toBeNull();
    expect((await open()).all()).toEqual([]);
  });

  test('what is kept is not written once more', async () => {
    const { pairings, mends } = await onFullDisk();
    await mends();
    await pairings.keepAgain();
    await expect(mends()).rejects.toThrow(/ENOENT/);
  });
});
