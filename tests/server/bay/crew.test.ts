import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Crew } from '../../../src/server/bay/crew.ts';
import { PAIRED_FOR_MS, type Pairing, Pairings } from '../../../src/server/pairing/pairings.ts';
import type { Role } from '../../../src/server/protocol/index.ts';
import { deviceIn } from './bare-bay.ts';

async function inBay(wallMs?: () => number) {
  const file = join(await mkdtemp(join(tmpdir(), 'crew-')), 'pairings.json');
  const pairings = await Pairings.open(file, () => 0);
  const pair = async (role: Role, bay = 'bay'): Promise<Pairing> => {
    const added = await pairings.add(bay, role, `a ${role}`);
    if (!added) throw new Error('The bay is full.');
    return added.pairing;
  };
  return { crew: new Crew('bay', pairings, wallMs), pairings, pair };
}

describe('The device that leads', () => {
  test("is the first of the technician's that comes, and stays so while it is away", async () => {
    const { crew, pair } = await inBay();
    const [phone, office, first, other] = [
      await pair('second'),
      await pair('supervisor'),
      await pair('technician'),
      await pair('technician'),
    ];
    for (const device of [phone, office, first, other]) crew.came(device);
    expect([phone, office, first, other].map(each => crew.isOwner(each))).toEqual([
      false,
      false,
      true,
      false,
    ]);
    crew.left(first);
    crew.came(other);
    expect(crew.isOwner(first)).toBe(true);
  });

  test('is another when that takes over, or comes after the first was let go of', async () => {
    const { crew, pair, pairings } = await inBay();
    const [first, other] = [await pair('technician'), await pair('technician')];
    crew.came(first);
    crew.takeOver(other);
    expect([crew.isOwner(first), crew.isOwner(other)]).toEqual([false, true]);
    await pairings.forget(other.device);
    crew.came(first);
    expect(crew.isOwner(first)).toBe(true);
  });

  test('is there to speak while it is connected', async () => {
    const { crew, pair } = await inBay();
    const [first, phone] = [await pair('technician'), await pair('second')];
    expect(crew.attended()).toBe(false);
    crew.came(phone);
    expect(crew.attended()).toBe(false);
    crew.came(first);
    expect(crew.attended()).toBe(true);
    crew.left(first);
    expect(crew.attended()).toBe(false);
  });
});

describe('A device', () => {
  test('that comes by a second line before its first one ends is there until both have ended', async () => {
    const { crew, pair } = await inBay();
    const phone = await pair('second');
    crew.came(phone);
    crew.came(phone);
    crew.left(phone);
    expect(crew.isConnected(phone.device)).toBe(true);
    crew.left(phone);
    expect(crew.isConnected(phone.device)).toBe(false);
    crew.left(phone);
    crew.came(phone);
    expect(crew.isConnected(phone.device)).toBe(true);
  });

  test('hears only when it says so, and no more when it has left', async () => {
    const { crew, pair } = await inBay();
    const phone = await pair('second');
    crew.came(phone);
    const hears = () => crew.list()[0]?.listens;
    expect(hears()).toBe(false);
    crew.setListening(phone, true);
    expect(hears()).toBe(true);
    crew.setListening(phone, false);
    expect(hears()).toBe(false);
    crew.setListening(phone, true);
    crew.left(phone);
    expect(hears()).toBe(false);
  });

  test('hears on while one of its lines is left', async () => {
    const { crew, pair } = await inBay();
    const phone = await pair('second');
    crew.came(phone);
    crew.came(phone);
    crew.setListening(phone, true);
    crew.left(phone);
    expect(crew.list()[0]?.listens).toBe(true);
  });
});

describe('Somebody of a role', () => {
  test('is away where each of their devices is gone or answers nothing, and not where they have none', async () => {
    const { crew, pair } = await inBay();
    expect(crew.isAway('second')).toBe(false);
    const [phone, tablet] = [await pair('second'), await pair('second')];
    crew.came(await pair('technician'));
    expect(crew.isAway('second')).toBe(true);
    crew.came(phone);
    expect(crew.isAway('second')).toBe(false);
    crew.setQuiet(phone, true);
    expect([crew.isAway('second'), crew.isAway('technician')]).toEqual([true, false]);
    crew.came(tablet);
    expect(crew.isAway('second')).toBe(false);
    crew.left(tablet);
    crew.setQuiet(phone, false);
    expect(crew.isAway('second')).toBe(false);
  });

  test('is there again as soon as a device of theirs that was quiet comes anew', async () => {
    const { crew, pair } = await inBay();
    const phone = await pair('second');
    crew.came(phone);
    crew.setQuiet(phone, true);
    expect(crew.list()[0]?.quiet).toBe(true);
    crew.came(phone);
    expect([crew.isAway('second'), crew.list()[0]?.quiet]).toEqual([false, false]);
    crew.setQuiet(phone, true);
    crew.left(phone);
    expect(crew.list()[0]?.quiet).toBe(true);
    crew.left(phone);
    expect(crew.list()[0]?.quiet).toBe(false);
  });
});

describe('Whose microphone is asked first', () => {
  test("is the leader's, then the second person's, then any other", async () => {
    const { crew, pair } = await inBay();
    const [first, other, phone, office] = [
      await pair('technician'),
      await pair('technician'),
      await pair('second'),
      await pair('supervisor'),
    ];
    crew.came(first);
    const places = () => [first, phone, other, office].map(({ device }) => crew.place(device));
    expect(places()).toEqual([0, 1, 2, 2]);
    crew.takeOver(other);
    expect(places()).toEqual([2, 1, 0, 2]);
    expect(crew.place('never paired')).toBe(2);
  });
});

describe('What is known of a device', () => {
  test('is when it was last heard of: when it came, at each word, and when it left', async () => {
    let nowMs = 1000;
    const { crew, pair } = await inBay(() => nowMs);
    const phone = await pair('second');
    const lastWordMs = () => crew.list()[0]?.lastWordMs;
    expect(lastWordMs()).toBeNull();
    crew.came(phone);
    expect(lastWordMs()).toBe(1000);
    nowMs = 2000;
    crew.noteWord(phone);
    expect(lastWordMs()).toBe(2000);
    nowMs = 3000;
    crew.left(phone);
    expect(lastWordMs()).toBe(3000);
  });

  test('is its battery, as it last told', async () => {
    const { crew, pair } = await inBay();
    const phone = await pair('second');
    crew.noteBattery(phone, { share: 0.4, charging: false });
    crew.noteBattery(phone, { share: 0.3, charging: true });
    expect(crew.list()[0]?.battery).toEqual({ share: 0.3, charging: true });
  });
});

describe('The list of a bay', () => {
  test('has every paired device of it and no other, with what is known of each', async () => {
    const { crew, pair } = await inBay();
    const [tablet, phone] = [await pair('technician'), await pair('second')];
    await pair('technician', 'other bay');
    crew.came(tablet);
    crew.setListening(tablet, true);
    crew.noteOffset(tablet.device, { offsetMs: 12, roundTripMs: 3 });
    expect(crew.list()).toEqual([
      {
        id: tablet.device,
        role: 'technician',
        name: 'a technician',
        connected: true,
        quiet: false,
        battery: null,
        lastWordMs: expect.any(Number),
        owner: true,
        listens: true,
        clockOffsetMs: 12,
        roundTripMs: 3,
      },
      deviceIn({ id: phone.device, role: 'second', name: 'a second', connected: false }),
    ]);
    expect([crew.has('technician'), crew.has('second'), crew.has('supervisor')]).toEqual([true, true, false]);
  });
});

test('What listens to the people at the engine is the device that leads, where it says that it does; else only keys', async () => {
  const { crew, pair } = await inBay();
  const [tablet, phone] = [await pair('technician'), await pair('second')];
  crew.came(tablet);
  crew.came(phone);
  crew.setListening(phone, true);
  expect(crew.source).toBe('keys');
  crew.setListening(tablet, true);
  expect(crew.source).toBe('a technician');
  crew.left(tablet);
  expect(crew.source).toBe('keys');
});

describe('What is known of devices', () => {
  test('is kept of those that may come back, and of no others: a bay may pair as many as it likes', async () => {
    const { crew, pair, pairings } = await inBay();
    const phone = await pair('second');
    crew.came(phone);
    crew.noteBattery(phone, { share: 0.5, charging: false });
    for (let nth = 0; nth < 20; nth += 1) {
      const passing = await pair('technician');
      crew.came(passing);
      crew.noteOffset(passing.device, { offsetMs: nth, roundTripMs: 1 });
      await pairings.forget(passing.device);
      crew.left(passing);
      crew.came(phone);
      crew.left(phone);
    }
    expect(crew.known).toBe(1);
    expect(crew.list()).toMatchObject([
      { id: phone.device, connected: true, battery: { share: 0.5, charging: false } },
    ]);
  });

  test('stays while its line is open, though it was let go of', async () => {
    const { crew, pair, pairings } = await inBay();
    const [phone, other] = [await pair('second'), await pair('second')];
    crew.came(phone);
    await pairings.forget(phone.device);
    crew.came(other);
    expect([crew.known, crew.isConnected(phone.device)]).toEqual([2, true]);
    crew.left(phone);
    expect([crew.known, crew.isConnected(phone.device)]).toEqual([1, false]);
  });

  test('stays of one that has run out: it may come back, to stop', async () => {
    let nowMs = 0;
    const file = join(await mkdtemp(join(tmpdir(), 'crew-')), 'pairings.json');
    const pairings = await Pairings.open(file, () => nowMs);
    const added = await pairings.add('bay', 'second', 'phone');
    const phone = added?.pairing ?? expect.fail('The bay is full.');
    const crew = new Crew('bay', pairings);
    crew.came(phone);
    nowMs = PAIRED_FOR_MS;
    crew.left(phone);
    expect([crew.known, pairings.knows(phone.device), crew.list()]).toEqual([1, true, []]);
    await pairings.forget(phone.device);
    expect(pairings.knows(phone.device)).toBe(false);
  });
});
