import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { KEY_TURNED_MS } from '../../machines/progress.ts';
import type { Role } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { get } from './support/https.ts';
import { largeRecord } from './support/large.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { leadUntil, linesOf } from './support/whole-start.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

const pairedAs = async (role: Role) => Face.paired(shop.base, await shop.pair(role));

async function running() {
  shop = await openShop();
  const technician = await pairedAs('technician');
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  return technician;
}

const stopsOnRecord = async (technician: Face) => {
  await technician.settled();
  const text = await readFile(join(shop.folder, `${technician.state?.session}.jsonl`), 'utf8');
  return text.split('\n').filter(line => line.includes('"kind":"command"') && line.includes('"do":"stop"'))
    .length;
};

const stopped = (face: Face) => face.until(() => face.state?.view?.state === 'stopped');

describe('Stop is answered', () => {
  test.each(['technician', 'second', 'supervisor'] as const)(
    'where no session has begun: the %s is told that nothing runs',
    async role => {
      shop = await openShop();
      const face = await pairedAs(role);
      expect(await face.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'nothingRuns' });
    },
  );

  test('while a session is being begun, and that session is stopped as soon as it is there', async () => {
    shop = await openShop();
    const [technician, supervisor] = [await pairedAs('technician'), await pairedAs('supervisor')];
    technician.send({ type: 'command', id: randomUUID(), deed: { do: 'begin' } });
    technician.send({ type: 'command', id: randomUUID(), deed: { do: 'stop' } });
    await stopped(supervisor);
    expect(await stopsOnRecord(technician)).toBe(1);
  });

  test('by each way of saying it: touched, heard, typed among other words', async () => {
    const technician = await running();
    const turn = technician.state?.turn ?? '';
    for (const deed of [
      { do: 'stop' },
      { do: 'heard', turn, heard: { kind: 'stop', text: 'stop' } },
      { do: 'say', turn, text: 'Stop!', via: 'keys' },
      { do: 'say', turn, text: 'please stop now', via: 'touch' },
    ] as const)
      expect(await technician.do(deed)).toMatchObject({ type: 'ack', stop: 'stopped' });
  });
});

describe('Stops of one device', () => {
  test('are each acknowledged, and joined while the session is stopped already', async () => {
    const technician = await running();
    const ids = Array.from({ length: 2000 }, () => randomUUID());
    for (const id of ids) technician.send({ type: 'command', id, deed: { do: 'stop' } });
    await technician.reply(ids.at(-1) ?? '');
    const acks = technician.messages.filter(one => one.type === 'ack').map(({ id }) => id);
    expect(ids.filter(id => !acks.includes(id))).toEqual([]);
    expect(await stopsOnRecord(technician)).toBe(1);
  });

  test('do not keep that of another waiting, which is on the record for itself', async () => {
    const technician = await running();
    const second = await pairedAs('second');
    const ids = Array.from({ length: 6000 }, () => randomUUID());
    for (const id of ids) technician.send({ type: 'command', id, deed: { do: 'stop' } });
    await second.do({ do: 'stop' });
    expect(technician.messages.some(one => one.type === 'ack' && one.id === ids.at(-1))).toBe(false);
    await technician.reply(ids.at(-1) ?? '');
    expect(await stopsOnRecord(technician)).toBe(2);
  });

  test('pressed again while the engine goes on are called out anew, with how to cut it off', async () => {
    shop = await openShop();
    const technician = await pairedAs('technician');
    await technician.do({ do: 'begin' });
    await leadUntil('checks.idle.item1', technician, shop.clock(), await linesOf('demo-six'));
    await technician.do({ do: 'stop' });
    await stopped(technician);
    await technician.settled();
    const heard = technician.says().length;
    shop.clock().advance(KEY_TURNED_MS);
    expect(await technician.do({ do: 'stop' })).toMatchObject({ type: 'ack', again: false });
    const called = () =>
      technician
        .says()
        .slice(heard)
        .find(({ priority }) => priority === 'hazard');
    await technician.until(() => called() !== undefined);
    expect(called()?.text).toMatch(/cut its fuel/);
  });

  test('after a return stop anew', async () => {
    const technician = await running();
    for (const text of ['card is right', 'understood', 'correct', 'protection on', 'correct'])
      await technician.say(text).then(() => technician.settled());
    await technician.do({ do: 'stop' });
    await stopped(technician);
    const replies = ['all is off', 'correct', 'false alarm', 'correct', 'ready to go on', 'correct'];
    for (let turn = 0; turn < 12 && technician.state?.view?.state === 'stopped'; turn += 1) {
      const choices = technician.state?.view?.choices ?? [];
      await technician.say(choices.find(choice => replies.includes(choice)) ?? choices[0] ?? '');
      await technician.settled();
    }
    expect(technician.state?.view?.state).toBe('working');
    expect(await technician.do({ do: 'stop' })).toMatchObject({ type: 'ack', again: false });
    await stopped(technician);
    expect(await stopsOnRecord(technician)).toBe(2);
  });
});

describe('Stop comes ahead of', () => {
  test('every limit: of messages, of requests, of connections that say nothing, of faults', async () => {
    const technician = await running();
    const token = await shop.pair('second');
    shop.freezeRates();
    for (let sent = 0; sent < 300; sent += 1)
      technician.send({
        type: 'command',
        id: randomUUID(),
        deed: { do: 'control', turn: 'x', id: 'goBack' },
      });
    for (let sent = 0; sent < 250; sent += 1) await get(shop.base, '/').catch(() => undefined);
    expect((await get(shop.base, '/')).status).toBe(429);
    expect(await technician.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    // And for a device that has to come anew.
    const second = await Face.paired(shop.base, token);
    expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
  });

  test('reports that are being written, however large', async () => {
    const technician = await running();
    const supervisor = await shop.pair('supervisor');
    await largeRecord(join(shop.folder, 'large.jsonl'), 6000);
    const order: string[] = [];
    const report = get(shop.base, '/api/sessions/large/report', supervisor).then(({ status }) =>
      order.push(`report ${status}`),
    );
    const list = get(shop.base, '/api/sessions', supervisor).then(({ status }) =>
      order.push(`list ${status}`),
    );
    // The server has the requests before it has the stop.
    await technician.settled();
    await technician.do({ do: 'stop' }).then(() => order.push('stop'));
    await Promise.all([report, list]);
    expect(order[0]).toBe('stop');
    expect(order).toContain('report 200');
  });
});
