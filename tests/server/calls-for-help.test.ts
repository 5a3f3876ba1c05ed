import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { Deed, Role } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

const pairedAs = async (role: Role, bay = 'bay 1') => Face.paired(shop.base, await shop.pair(role, bay));

/** A session that has begun, and the devices of its people. */
async function begun() {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  const technician = await pairedAs('technician');
  const second = await pairedAs('second');
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  return { technician, second };
}

/** What is called out on the device, by its words. */
const calledOut = (face: Face) =>
  face
    .says()
    .filter(({ priority }) => priority === 'hazard')
    .map(({ text }) => text);

const onRecord = async (face: Face): Promise<{ kind: string; data: Record<string, unknown> }[]> => {
  await face.settled();
  const text = await readFile(join(shop.folder, `${face.state?.session}.jsonl`), 'utf8');
  return text
    .trimEnd()
    .split('\n')
    .map(line => JSON.parse(line));
};
const stopsOnRecord = async (face: Face) =>
  (await onRecord(face)).filter(({ kind, data }) => kind === 'event' && data.type === 'stop');

const fire = { do: 'stop', cause: 'smokeOrFire' } as const;
const hurt = { do: 'stop', cause: 'someoneHurt' } as const;

describe("A touch of the second person's for fire or injury", () => {
  test.each([
    [fire, 'Stop: smoke or fire! Key off.', 'call the fire service'],
    [hurt, 'Stop: someone is hurt! Key off.', 'Call the emergency number now.'],
  ])('stops everything and calls for help on every device: %o', async (deed, stop, help) => {
    const { technician, second } = await begun();
    expect(await second.do(deed)).toMatchObject({ type: 'ack', stop: 'stopped', again: false });
    for (const face of [technician, second]) {
      await face.until(() => face.key === 'stopped.makingSafe');
      await face.until(() => calledOut(face).some(text => text.includes(help)));
      expect(calledOut(face)[0]).toBe(stop);
    }
    await expect
      .poll(() => stopsOnRecord(second))
      .toMatchObject([{ data: { by: 'second', via: 'touch', cause: deed.cause } }]);
    expect((await onRecord(second)).filter(({ kind }) => kind === 'command').at(-1)?.data).toMatchObject({
      role: 'second',
      do: 'stop',
    });
  });

  test('counts after a stop, wherever that has got to; touched again it is the same', async () => {
    const { technician, second } = await begun();
    await second.do({ do: 'stop' });
    await technician.until(() => technician.key === 'stopped.makingSafe');
    await technician.say('all is off');
    await technician.until(() => technician.key === 'stopped.askingCause');
    expect(await second.do(fire)).toMatchObject({ stop: 'stopped', again: false });
    await technician.until(() => technician.key === 'stopped.makingSafe');
    expect(await second.do(fire)).toMatchObject({ stop: 'stopped', again: true });
    expect(await second.do(hurt)).toMatchObject({ stop: 'stopped', again: false });
    // Both are known now, whichever is the later.
    for (const deed of [fire, hurt, fire]) expect(await second.do(deed)).toMatchObject({ again: true });
    await expect.poll(() => stopsOnRecord(second)).toHaveLength(3);
    await technician.until(() => technician.key === 'stopped.makingSafe');
    await technician.say('all is off');
    await technician.until(() => technician.key === 'stopped.causeReadBack');
    expect(technician.state?.view?.prompt).toContain('someone is hurt');
  });

  test('sent again with the same id calls nothing out anew, on another line either', async () => {
    const { technician, second } = await begun();
    const id = randomUUID();
    await second.do(fire, id);
    expect(await second.do(fire, id)).toMatchObject({ again: true });
    await expect.poll(() => stopsOnRecord(technician)).toHaveLength(1);
  });

  test('while a session is being begun counts in it, beside a stop before it', async () => {
    shop = await openShop();
    const technician = await pairedAs('technician');
    const second = await pairedAs('second');
    technician.send({ type: 'command', id: randomUUID(), deed: { do: 'begin' } });
    await technician.settled();
    for (const deed of [{ do: 'stop' }, hurt, hurt] as const)
      second.send({ type: 'command', id: randomUUID(), deed });
    await second.until(() => second.key === 'stopped.makingSafe');
    // A stop tells all faces of a session that has begun ahead of its answer: here there was none yet.
    const firstTold = second.messages.findIndex(
      one => one.type === 'patch' && typeof one.patch.bay.session === 'string',
    );
    const lastAnswered = second.messages.findLastIndex(one => one.type === 'ack');
    expect(second.messages.filter(one => one.type === 'ack')).toHaveLength(3);
    expect(firstTold).toBeGreaterThan(lastAnswered);
    await second.until(() => calledOut(second).some(text => text.includes('emergency number')));
    await expect
      .poll(async () => (await stopsOnRecord(second)).map(({ data }) => data.cause))
      .toContain('someoneHurt');
  });

  test('where nothing runs is told so', async () => {
    shop = await openShop();
    const second = await pairedAs('second');
    expect(await second.do(fire)).toMatchObject({ type: 'ack', stop: 'nothingRuns' });
  });

  test('comes ahead of every limit, as a stop does, and takes no other cause', async () => {
    const { technician, second } = await begun();
    shop.freezeRates();
    for (let sent = 0; sent < 300; sent += 1)
      second.send({ type: 'command', id: randomUUID(), deed: { do: 'control', turn: 'x', id: 'help' } });
    expect(await second.do(fire)).toMatchObject({ type: 'ack', stop: 'stopped', again: false });
    technician.send({ type: 'command', id: randomUUID(), deed: { do: 'stop', cause: 'falseAlarm' } });
    await technician.until(() => technician.errors().some(({ code }) => code === 'malformed'));
    await expect.poll(() => stopsOnRecord(technician)).toHaveLength(1);
  });
});

describe('Fire that is told in words', () => {
  const heard = (turn: string, id: string, text: string): Deed => ({
    do: 'heard',
    turn,
    heard: { kind: 'reply', id, text, confidence: 0.9 },
  });
  const stoppedTurn = async (face: Face) => {
    await face.do({ do: 'stop' });
    // A voice counts only once it has been asked.
    await face.until(() => face.says().at(-1)?.text.includes('all is off') ?? false);
    return face.state?.turn ?? '';
  };
  /** A voice counts only once the tool has fallen silent. */
  const inSilence = async (face: Face, deed: Deed) => {
    let answer = await face.do(deed);
    await expect
      .poll(async () => {
        if (answer.type === 'error' && answer.code === 'notNow') answer = await face.do(deed);
        return answer;
      })
      .not.toMatchObject({ code: 'notNow' });
    return answer;
  };

  test.each(['second', 'technician'] as const)(
    "at a joined %s's device calls for help, though the technician has just said that all is off",
    async role => {
      const { technician } = await begun();
      const joined = await pairedAs(role);
      const turn = await stoppedTurn(technician);
      await inSilence(technician, heard(turn, 'allOff', 'all is off'));
      await technician.until(() => technician.key === 'stopped.makingSafeReadBack');
      expect(technician.state?.turn).not.toBe(turn);
      expect(await inSilence(joined, heard(turn, 'causeSmokeOrFire', 'fire'))).toMatchObject({ type: 'ack' });
      for (const face of [technician, joined])
        await face.until(() => calledOut(face).some(text => text.includes('call the fire service')));
      expect(technician.key).toBe('stopped.makingSafe');
    },
  );

  test.each(['second', 'technician'] as const)(
    "at a joined %s's device is a stop where it answers nothing of theirs: at the question for a cause, while the tool speaks",
    async role => {
      const { technician } = await begun();
      const joined = await pairedAs(role);
      const turn = await stoppedTurn(technician);
      await technician.say('all is off');
      await technician.until(() => technician.key === 'stopped.askingCause');
      expect(await joined.do(heard(turn, 'causeSmokeOrFire', 'fire'))).toMatchObject({ type: 'ack' });
      await technician.until(() => technician.key === 'stopped.makingSafe');
      expect((await stopsOnRecord(technician)).at(-1)?.data).toMatchObject({
        cause: 'smokeOrFire',
        via: 'voice',
        by: role,
      });
    },
  );

  test('that nobody had stopped for is typed at any turn', async () => {
    const { technician, second } = await begun();
    const id = randomUUID();
    second.send({ type: 'command', id, deed: { do: 'say', turn: 'gone', text: 'fire', via: 'touch' } });
    expect(await second.reply(id)).toMatchObject({ type: 'ack' });
    await technician.until(() => calledOut(technician).some(text => text.includes('call the fire service')));
    expect((await stopsOnRecord(technician)).at(-1)?.data).toMatchObject({ by: 'second' });
  });

  test('by the voice of the tool itself is none, and stands on the record as that', async () => {
    const { technician, second } = await begun();
    const calledFor = { do: 'stop', via: 'voice', cause: 'someoneHurt' } as const;
    await second.do(hurt);
    await technician.until(() => calledOut(technician).some(text => text.includes('hurt')));
    expect(await technician.do(calledFor)).not.toHaveProperty('stop');
    await expect
      .poll(async () => (await onRecord(technician)).filter(({ kind }) => kind === 'notCarriedOut'))
      .toMatchObject([{ data: { role: 'technician', cause: 'someoneHurt', why: 'toolSpoke' } }]);
    expect(await stopsOnRecord(technician)).toHaveLength(1);
  });

  test('calls for help while an answer is being written', async () => {
    const { technician } = await begun();
    const turn = await stoppedTurn(technician);
    const ids = ['not yet', 'fire'].map(text => {
      const id = randomUUID();
      technician.send({ type: 'command', id, deed: { do: 'say', turn, text, via: 'touch' } });
      return id;
    });
    for (const id of ids) expect(await technician.reply(id)).toMatchObject({ type: 'ack' });
    await technician.until(() => calledOut(technician).some(text => text.includes('call the fire service')));
    expect(technician.key).toBe('stopped.makingSafe');
  });
});

test("A supervisor's stop stops, and names nothing that only people at the engine can see", async () => {
  const { technician } = await begun();
  const supervisor = await pairedAs('supervisor');
  expect(await supervisor.do(fire)).toMatchObject({ type: 'ack', stop: 'stopped', again: false });
  await technician.until(() => technician.key === 'stopped.makingSafe');
  await expect.poll(() => stopsOnRecord(technician)).toMatchObject([{ data: { by: 'supervisor' } }]);
  const [stop] = await stopsOnRecord(technician);
  expect(stop?.data).not.toHaveProperty('cause');
  expect(await supervisor.do(hurt)).toMatchObject({ again: true });
  for (const deed of [fire, hurt]) await supervisor.do(deed);
  // What they called for stands on the record all the same, each once, with why nothing followed from it.
  const common = { role: 'supervisor', do: 'stop', why: 'notAtEngine' };
  await expect
    .poll(async () =>
      (await onRecord(technician)).filter(({ kind }) => kind === 'notCarriedOut').map(({ data }) => data),
    )
    .toMatchObject([
      { ...common, cause: 'smokeOrFire' },
      { ...common, cause: 'someoneHurt' },
    ]);
});

test('Fire that a supervisor types is refused, and on the record', async () => {
  const { technician } = await begun();
  const supervisor = await pairedAs('supervisor');
  expect(await supervisor.say('fire')).toMatchObject({ type: 'error', code: 'notYourRole' });
  expect(technician.key).toBe('job.card.asking');
  await expect
    .poll(async () => (await onRecord(technician)).filter(({ kind }) => kind === 'notCarriedOut'))
    .toMatchObject([{ data: { role: 'supervisor', do: 'say', cause: 'smokeOrFire', why: 'notAtEngine' } }]);
});

test('Fire in one bay stops nothing in another', async () => {
  const { technician } = await begun();
  const stranger = await pairedAs('second', 'bay 2');
  expect(await stranger.do(fire)).toMatchObject({ stop: 'nothingRuns' });
  await technician.settled();
  expect(technician.key).toBe('job.card.asking');
});
