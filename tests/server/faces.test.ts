import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { Face } from './support/face.ts';
import { answerUntil, interruptedShop } from './support/interrupted.ts';
import { openShop, type TestShop } from './support/shop.ts';

const CLEAR = 'noFuelCrank.untilPressure.askingClear';

let shop: TestShop;
let technician: Face;
let second: Face;
let supervisor: Face;

beforeAll(async () => {
  shop = await openShop({ folder: await interruptedShop(CLEAR) });
  technician = await Face.paired(shop.base, await shop.pair('technician'));
  second = await Face.paired(shop.base, await shop.pair('second'));
  supervisor = await Face.paired(shop.base, await shop.pair('supervisor'));
}, 120_000);

afterAll(() => shop.server.close());

const all = () => [technician, second, supervisor];
const settle = () => Promise.all(all().map(face => face.settled()));
const codeOf = (answer: { type: string; code?: string }) => (answer.type === 'error' ? answer.code : 'done');
/** What is on its way arrives some time, on a busy machine too. */
const soon = (check: () => void) => vi.waitFor(check, { timeout: 60_000, interval: 20 });
const turn = () => technician.state?.turn ?? '';

describe('A session that broke off with its server', () => {
  test('goes on with what its record says, stopped, before anybody is asked', () => {
    expect(technician.state?.session).toBe('interrupted');
    expect(technician.state?.view?.state).toBe('stopped');
  });

  test("is led by the first of the technician's devices, and by no second one until it takes over", async () => {
    const other = await Face.paired(shop.base, await shop.pair('technician'));
    const { key } = technician;
    expect(codeOf(await other.say('all is off'))).toBe('notTheOwner');
    expect(codeOf(await other.do({ do: 'takeOver' }))).toBe('done');
    expect(codeOf(await technician.say('all is off'))).toBe('notTheOwner');
    expect(codeOf(await technician.do({ do: 'takeOver' }))).toBe('done');
    await settle();
    expect(technician.key).toBe(key);
    other.close();
  });
});

describe("The second person's own clear", () => {
  beforeAll(() => answerUntil(CLEAR, technician, second, shop.clock()));

  test("is taken from their own device, and from nobody else's", async () => {
    expect(technician.state?.clear).toEqual({ state: 'needed', untilSessionMs: null, ownDeviceOnly: true });
    const heard = { kind: 'reply', id: 'clearToCrank', text: 'clear to crank', confidence: 0.99 } as const;
    for (const face of [technician, supervisor]) {
      expect(codeOf(await face.do({ do: 'clear', turn: turn() }))).toBe('notYourRole');
      expect(codeOf(await face.say('clear to crank'))).toBe('notYourRole');
      expect(codeOf(await face.do({ do: 'heard', turn: turn(), heard }))).toBe('notYourRole');
    }
    await settle();
    expect(technician.key).toBe(CLEAR);
    expect(codeOf(await second.do({ do: 'clear', turn: turn() }))).toBe('done');
    await settle();
    expect(codeOf(await technician.say('correct'))).toBe('notYourRole');
    expect(codeOf(await second.say('correct'))).toBe('done');
    await soon(() => {
      expect(technician.key).toBe('noFuelCrank.untilPressure.ready');
      expect(technician.state?.clear.state).toBe('given');
    });
  });

  test('is worth nothing once it is older than the profile allows', async () => {
    const untilMs = technician.state?.clear.untilSessionMs ?? Number.NaN;
    shop.clock().advance(untilMs - shop.clock().nowMs() - 1);
    await settle();
    expect(technician.key).toBe('noFuelCrank.untilPressure.ready');
    shop.clock().advance(1);
    await Promise.all(all().map(face => face.until(() => face.key === CLEAR)));
    expect(codeOf(await technician.say('ready'))).toBe('notYourRole');
    await settle();
    expect(technician.key).toBe(CLEAR);
  });

  test('may be waited for while the supervisor asks for a hold: it is heard by the technician, who decides', async () => {
    expect(codeOf(await second.do({ do: 'askHold' }))).toBe('notYourRole');
    expect(codeOf(await supervisor.do({ do: 'askHold' }))).toBe('done');
    await technician.until(() => technician.state?.holdAsked !== null);
    await technician.until(() => technician.says().some(({ text }) => text.includes('asks for a hold')));
    expect(codeOf(await supervisor.do({ do: 'declineHold' }))).toBe('notYourRole');
    expect(codeOf(await technician.do({ do: 'declineHold' }))).toBe('done');
    await supervisor.until(() => supervisor.state?.holdAsked === null);
  });

  test('lets the starter turn while it is fresh', async () => {
    await second.do({ do: 'clear', turn: turn() });
    await settle();
    await second.say('correct');
    await settle();
    await technician.say('ready');
    await technician.until(() => technician.state?.view?.engine === 'cranking');
    expect(technician.key).toMatch(/\.cranking$/);
  });
});

describe('Everybody', () => {
  test.each(['technician', 'second', 'supervisor'] as const)('may stop: the %s', async role => {
    const face = { technician, second, supervisor }[role];
    shop.clock().advance(2000);
    const stops = technician.says().filter(({ priority }) => priority === 'hazard').length;
    expect(codeOf(await face.do({ do: 'stop' }))).toBe('done');
    await Promise.all(all().map(each => each.until(() => each.state?.view?.state === 'stopped')));
    await settle();
    await soon(() => {
      for (const each of all()) expect(each.says().at(-1)).toEqual(technician.says().at(-1));
    });
    expect(technician.says().filter(({ priority }) => priority === 'hazard').length).toBeGreaterThan(stops);
  });

  test('sees the same, number by number', async () => {
    await soon(() => {
      expect(second.state).toEqual(technician.state);
      expect(supervisor.state).toEqual(technician.state);
    });
    for (const face of all())
      expect(face.seqs).toEqual(face.seqs.map((_, index) => (face.seqs[0] ?? 0) + index));
  });

  test('is told that nothing listens, until the device that leads says that it does', async () => {
    expect(supervisor.state?.view?.hearing.source).toBe('keys');
    second.send({ type: 'ear', listens: true });
    await second.settled();
    technician.send({ type: 'ear', listens: true });
    await supervisor.until(() => supervisor.state?.view?.hearing.source === 'a technician');
    technician.send({ type: 'ear', listens: false });
    await supervisor.until(() => supervisor.state?.view?.hearing.source === 'keys');
  });

  test('knows how far each clock is off', async () => {
    second.send({ type: 'ping', sentMs: 5, found: { offsetMs: -1234, roundTripMs: 8 } });
    await supervisor.until(() =>
      Boolean(supervisor.state?.devices.some(({ clockOffsetMs }) => clockOffsetMs === -1234)),
    );
    const off = supervisor.state?.devices.filter(({ clockOffsetMs }) => clockOffsetMs === -1234);
    expect(off).toMatchObject([{ role: 'second' }]);
  });
});

describe('An answer', () => {
  test('to a question that is no longer asked changes nothing', async () => {
    await technician.say('stop');
    await settle();
    const old = turn();
    await technician.say('all is off');
    await settle();
    await soon(() => expect(turn()).not.toBe(old));
    const { key } = technician;
    expect(codeOf(await technician.do({ do: 'say', turn: old, text: 'correct', via: 'touch' }))).toBe(
      'tooLate',
    );
    await settle();
    expect(technician.key).toBe(key);
    expect(codeOf(await technician.do({ do: 'say', turn: old, text: 'please stop now', via: 'keys' }))).toBe(
      'done',
    );
  });

  test('and the next one to the same question, before the disk has the first: only the first counts', async () => {
    await technician.say('stop');
    await settle();
    await technician.say('all is off');
    await settle();
    const { key } = technician;
    // The second would be an answer to whatever is asked next.
    const deed = { do: 'say', turn: turn(), text: 'oil leak', via: 'touch' } as const;
    const answers = await Promise.all([technician.do(deed), technician.do(deed), technician.do(deed)]);
    expect(answers.map(codeOf)).toEqual(['done', 'tooLate', 'tooLate']);
    await settle();
    expect(technician.key).not.toBe(key);
  });

  test('that was not offered is refused, however sure the device is', async () => {
    await settle();
    const { key } = technician;
    for (const heard of [
      { kind: 'reply', id: 'fired', text: 'fired', confidence: 1 },
      { kind: 'number', id: 'oilPressure', value: 40, text: 'forty', confidence: 1 },
    ] as const)
      expect(codeOf(await technician.do({ do: 'heard', turn: turn(), heard }))).toBe('notNow');
    expect(technician.key).toBe(key);
  });

  test('by voice counts only once the tool is silent; a stop always does', async () => {
    technician.speaks = false;
    await technician.do({ do: 'control', turn: turn(), id: 'sayAgain' });
    await technician.until(() => technician.state?.view?.hearing.speaking === true);
    const heard = { kind: 'reply', id: 'allOff', text: 'all is off', confidence: 0.9 } as const;
    expect(codeOf(await technician.do({ do: 'heard', turn: turn(), heard }))).toBe('notNow');
    const stop = { kind: 'stop', text: 'stop' } as const;
    expect(codeOf(await technician.do({ do: 'heard', turn: 'whatever', heard: stop }))).toBe('done');
    technician.speaks = true;
    technician.send({ type: 'spoken', seq: technician.says().at(-1)?.seq });
    await settle();
  });

  test('by voice does not count in a bay that is too noisy for it', async () => {
    let nth = 0;
    const level = { type: 'level', levelDbfs: -30, clipping: false, speech: false, noiseDbfs: -35 };
    const speak = (aboveNoiseDb: number) => {
      nth += 1;
      technician.send({ ...level, utterance: { nth, speechDbfs: -32, aboveNoiseDb } });
    };
    const heard = { kind: 'reply', id: 'allOff', text: 'all is off', confidence: 0.99 } as const;
    for (let i = 0; i < 3; i++) speak(2);
    await settle();
    await soon(() => expect(technician.state?.view?.hearing.speaking).toBe(false));
    expect(codeOf(await technician.do({ do: 'heard', turn: turn(), heard }))).toBe('notNow');
    expect(technician.errors().filter(({ code }) => code === 'malformed')).toEqual([]);
    for (let i = 0; i < 3; i++) speak(20);
    await settle();
  });

  test('sent again is not done again, by no device and in no connection', async () => {
    await settle();
    const id = randomUUID();
    const deed = { do: 'say', turn: turn(), text: 'all is off', via: 'keys' } as const;
    const first = await technician.do(deed, id);
    expect(first).toMatchObject({ type: 'ack', again: false });
    await settle();
    const after = technician.state;
    expect(await technician.do(deed, id)).toMatchObject({ type: 'ack', again: true });
    await settle();
    expect(technician.state?.turn).toBe(after?.turn);
    // Another device cannot use the id as its own: it is judged for itself.
    expect(codeOf(await supervisor.do(deed, id))).toBe('notYourRole');
  });
});

describe('The supervisor', () => {
  test('has nothing to ask for while everything stands still', async () => {
    expect(codeOf(await supervisor.do({ do: 'askHold' }))).toBe('notNow');
  });

  test('can say nothing for others', async () => {
    const { state } = technician;
    for (const text of ['correct', 'ready', 'all is off'])
      expect(codeOf(await supervisor.say(text))).toBe('notYourRole');
    for (const id of ['hold', 'continue', 'goBack', 'skip'] as const)
      expect(codeOf(await supervisor.do({ do: 'control', turn: turn(), id }))).toBe('notYourRole');
    for (const deed of [{ do: 'begin' }, { do: 'takeOver' }] as const)
      expect(codeOf(await supervisor.do(deed))).toBe('notYourRole');
    await settle();
    expect(technician.state?.turn).toBe(state?.turn);
  });
});

describe('A face that was cut off', () => {
  test('gets exactly the frames it missed, and ends with what the others see', async () => {
    const token = await shop.pair('second');
    const away = await Face.paired(shop.base, token);
    await away.settled();
    const { place, state } = away;
    away.cut();
    await away.until(() => away.closeCode !== null);
    await technician.do({ do: 'control', turn: turn(), id: 'status' });
    await settle();
    const back = await Face.paired(shop.base, token, place, state);
    await back.until(() => back.seq >= technician.seq);
    expect(back.messages.some(({ type }) => type === 'snapshot')).toBe(false);
    expect(back.seqs).toEqual(back.seqs.map((_, index) => place.seq + 1 + index));
    await back.settled();
    await settle();
    expect(back.state).toEqual(technician.state);
    back.close();
  });

  test('from another run of the server, or with a number that was never given, gets the whole state', async () => {
    const token = await shop.pair('second');
    for (const place of [
      { epoch: randomUUID(), seq: 1 },
      { epoch: technician.epoch, seq: 1_000_000 },
    ]) {
      const face = await Face.paired(shop.base, token, place);
      expect(face.messages.some(({ type }) => type === 'snapshot')).toBe(true);
      face.close();
      await face.until(() => face.closeCode !== null);
    }
  });

  test('is replaced by its next connection', async () => {
    const token = await shop.pair('second');
    const old = await Face.paired(shop.base, token);
    const next = await Face.paired(shop.base, token);
    await old.until(() => old.closeCode !== null);
    expect(old.errors().at(-1)).toMatchObject({ code: 'replaced', final: true });
    next.close();
  });
});

test('The record of all this is sound and names who asked for what', async () => {
  await settle();
  const path = join(shop.folder, 'interrupted.jsonl');
  expect(await verifyLog(path)).toMatchObject({ ok: true });
  const commands = (await readFile(path, 'utf8'))
    .split('\n')
    .filter(line => line.includes('"kind":"command"'));
  expect(commands.some(line => line.includes('"do":"clear"') && line.includes('"role":"second"'))).toBe(true);
});
