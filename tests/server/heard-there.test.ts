import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { linesOfGoodStart } from '../../audio-fixtures/good-start.ts';
import type { EngineHeard } from '../../src/engineering/engine-sound/ear.ts';
import { loadProfile, parseProfile } from '../../src/profile/load.ts';
import { acceptables, acceptedByName, neverAssumed } from '../../src/profile/provenance.ts';
import { EngineSound } from '../../src/rehearsal/sound/engine-sound.ts';
import { sentVoice } from '../../src/server/protocol/index.ts';
import { createEngineListener } from '../../src/session/engine-ear/listener.ts';
import type { Heard } from '../../src/voice/ports.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { voiceLength } from '../../src/voice/who-speaks/voice-network.ts';
import { Face } from './support/face.ts';
import { interruptedShop } from './support/interrupted.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { passUntil } from './support/whole-start.ts';

const RUNNING = 'checks.leaks.item1';
const codeOf = (answer: { type: string; code?: string }) => (answer.type === 'error' ? answer.code : 'done');
const firing = { cylinders: 6, strokes: 4 as const };

/** What an ear makes of an engine at one speed. */
async function looksAt(rpm: number, seconds: number): Promise<EngineHeard[]> {
  const looks: EngineHeard[] = [];
  const listener = createEngineListener(firing, heard => looks.push(heard));
  const sound = new EngineSound(firing, 4);
  for (let block = 0; block < seconds * 10; block++)
    await listener.hear({
      samples: sound.next({ rpm, firing: true, starter: false }, 1600),
      sampleRateHz: 16_000,
    });
  listener.close();
  return looks;
}

const recordOf = (shop: TestShop, session: string) => readFile(join(shop.folder, `${session}.jsonl`), 'utf8');

describe('The engine at joined devices', () => {
  let shop: TestShop;
  let technician: Face;
  let second: Face;
  let supervisor: Face;
  let looks: readonly EngineHeard[];
  let faster: readonly EngineHeard[];

  beforeAll(async () => {
    [looks, faster] = [await looksAt(750, 4), await looksAt(1000, 4)];
    shop = await openShop({ folder: await interruptedShop(RUNNING) });
    technician = await Face.paired(shop.base, await shop.pair('technician'));
    second = await Face.paired(shop.base, await shop.pair('second'));
    supervisor = await Face.paired(shop.base, await shop.pair('supervisor'));
  }, 120_000);

  afterAll(() => shop.server.close());

  const engineEar = (face: Face) => face.state?.view?.engineEar;
  const send = (face: Face, heard: EngineHeard) =>
    face.send({ type: 'engine', session: technician.state?.session, heard });
  const settle = () => Promise.all([technician, second, supervisor].map(face => face.settled()));

  /** Each device sends what it hears, seven times a second. */
  async function hear(...heard: readonly (readonly [Face, readonly EngineHeard[]])[]): Promise<string[]> {
    const shown = new Set<string>();
    for (let look = 0; look < looks.length; look++) {
      for (const [face, all] of heard) send(face, all[look] as EngineHeard);
      await settle();
      shop.clock().advance(140);
      const ear = engineEar(supervisor);
      if (ear?.speed) shown.add(`${ear.speed.slice(0, 2)}, ${ear.microphone}`);
    }
    return [...shown];
  }

  test('is listened for as the profile has it fire', () => {
    expect(technician.state?.firing).toEqual(firing);
  });

  test("is shown to all faces with its trace, by one microphone: the leader's, whatever another one hears", async () => {
    const shown = await hear([second, faster], [technician, looks]);
    expect(shown.length).toBeGreaterThan(0);
    for (const each of shown) expect(each).toMatch(/^7[45], a technician$/);
    for (const face of [technician, second, supervisor]) {
      expect(engineEar(face)?.speed).toMatch(/^7[45]\d rpm/);
      expect(engineEar(face)?.trace.at(-1)).toBeCloseTo(750, -1);
    }
  });

  test('is believed enough to refuse that all is off, and is told', async () => {
    const { key } = technician;
    send(technician, looks.at(-1) as EngineHeard);
    expect(codeOf(await technician.say('engine and key off'))).toBe('done');
    await settle();
    expect(technician.key).toBe(key);
    expect(technician.says().at(-1)?.text).toMatch(/^Danger\. I hear it turn at about seven hundred/);
  });

  test("is heard by the second person's device once the leader's hears nothing, and by the leader's again at once", async () => {
    shop.clock().advance(2_500);
    await hear([second, faster]);
    expect(engineEar(supervisor)).toMatchObject({
      speed: expect.stringMatching(/^(10|99)/),
      microphone: 'a second',
    });
    send(technician, looks.at(-1) as EngineHeard);
    shop.clock().advance(600);
    send(technician, looks.at(-1) as EngineHeard);
    await supervisor.until(() => engineEar(supervisor)?.microphone === 'a technician');
  });

  test('is nothing that the supervisor hears, nor what comes from another session, or is no such message', async () => {
    const heard = faster.at(-1) as EngineHeard;
    const before = engineEar(technician)?.speed;
    supervisor.send({ type: 'engine', session: technician.state?.session, heard });
    technician.send({ type: 'engine', session: 'another', heard });
    for (const wrong of [
      { ...heard, levelsDb: [1, 2] },
      { ...heard, claim: { rpm: -1, confidence: 1 } },
      { ...heard, samples: [0, 0.1, 0.2] },
      { ...heard, happened: 'exploded' },
    ])
      technician.send({ type: 'engine', session: technician.state?.session, heard: wrong });
    await settle();
    expect(supervisor.errors().at(-1)?.code).toBe('notYourRole');
    expect(technician.errors().map(({ code }) => code)).toEqual(Array(4).fill('malformed'));
    expect(engineEar(technician)?.speed).toBe(before);
  });

  test('stands on the record with the microphone that heard it', async () => {
    const text = await recordOf(shop, technician.state?.session ?? '');
    const heard = text
      .split('\n')
      .filter(line => line.includes('"engineHeard"'))
      .map(line => JSON.parse(line).data);
    expect(heard).toContainEqual(
      expect.objectContaining({ happened: 'running', microphone: 'a technician' }),
    );
    expect(heard).toContainEqual(expect.objectContaining({ microphone: 'a second' }));
  });
});

describe('Voices at a joined device that two people share', () => {
  let shop: TestShop;
  let technician: Face;
  const CLEAR = 'noFuelCrank.untilPressure.askingClear';

  beforeAll(async () => {
    const six = await loadProfile('demo-six');
    const known = [...neverAssumed, ...acceptables.flatMap(what => acceptedByName[what])];
    const provenance = Object.fromEntries(known.map(path => [path, { from: 'manual', page: '12' }]));
    // At an engine to practise on nobody is refused for their voice.
    const profile = parseProfile(JSON.stringify({ ...six, invented: false, provenance }), 'a real one');
    shop = await openShop({ profile });
    technician = await Face.paired(shop.base, await shop.pair('technician'));
  }, 120_000);

  afterAll(() => shop.server.close());

  const direction = (at: number) => Float32Array.from({ length: voiceLength }, (_, i) => (i === at ? 1 : 0));
  const voices = { technician: direction(0), second: direction(1), supervisor: direction(2) };

  /** What this device's recognizer makes of a line, in somebody's voice. */
  async function aloud(text: string, whose: keyof typeof voices) {
    const { grammar = null, turn = '' } = technician.state ?? {};
    if (!grammar) throw new Error('nothing may be said');
    const ear = createTypedRecognizer();
    let heard: Heard | null = null;
    ear.onHeard(each => {
      heard = each;
    });
    ear.listen(grammar);
    ear.type(text);
    const said = heard as Heard | null;
    const voice = sentVoice(voices[whose]);
    if (said?.kind !== 'stop')
      return technician.do({ do: 'heard', turn, heard: said as Exclude<Heard, { kind: 'stop' }>, voice });
    const answer = await technician.do({ do: 'stop', via: 'voice' });
    technician.send({ type: 'voiceOfStop', voice });
    return answer;
  }

  /** Says it once the tool is silent: its next sentence may have begun meanwhile. */
  async function answered(text: string, whose: keyof typeof voices): Promise<void> {
    for (let again = 0; again < 50; again++) {
      const answer = await aloud(text, whose);
      await technician.settled();
      if (answer.type === 'ack') return;
      if (answer.code !== 'notNow') throw new Error(`"${text}": ${answer.sentence}`);
      shop.clock().advance(200);
      await passUntil(technician, shop.clock(), quiet);
    }
    throw new Error(`"${text}" was never taken`);
  }

  const quiet = () => technician.state?.view?.hearing.speaking === false;

  test('are learned on the way, and the record says that nothing is kept', async () => {
    await technician.do({ do: 'begin' });
    for (const { when, says } of await linesOfGoodStart('demo-six', undefined, 'voice')) {
      if (when === CLEAR) break;
      await passUntil(technician, shop.clock(), () => technician.key === when && quiet());
      // Two words so close to one another are one.
      if (/^stop/.test(says)) shop.clock().advance(1000);
      await answered(says, technician.state?.view?.addressed ?? 'technician');
    }
    await passUntil(technician, shop.clock(), () => technician.key === CLEAR && quiet());
    const text = await recordOf(shop, technician.state?.session ?? '');
    const learned = text.split('\n').filter(line => line.includes('"voiceLearned"'));
    expect(learned.map(line => JSON.parse(line).data)).toEqual([
      { by: 'technician', utterances: 3, kept: false },
      { by: 'second', utterances: 3, kept: false },
    ]);
    // No direction of a voice is on the disk: none has as many numbers in a row.
    expect(text).not.toMatch(/(?:-?[\d.]+,){20}/);
  }, 120_000);

  test('do not answer for one another: "clear" in the technician\'s is refused, and asked of the second person by name', async () => {
    await answered('clear to crank', 'technician');
    expect(technician.key).toBe(CLEAR);
    expect(technician.says().at(-1)?.text).toMatch(/Second person: say it yourself/);
  });

  test('are asked as ever where they are unknown, and a stop counts in any', async () => {
    await answered('clear to crank', 'supervisor');
    expect(technician.key).not.toBe(CLEAR);
    await aloud('stop', 'technician');
    await technician.until(() => technician.state?.view?.state === 'stopped');
  });

  test('are refused as messages that are none: too few numbers, none in range, or sound beside them', async () => {
    const before = technician.errors().length;
    for (const voice of [[1, 2, 3], Array(voiceLength).fill(2), Array(voiceLength).fill('a')])
      technician.send({ type: 'voiceOfStop', voice });
    technician.send({ type: 'voiceOfStop', voice: sentVoice(voices.second), samples: [0.1] });
    await technician.settled();
    expect(
      technician
        .errors()
        .slice(before)
        .map(({ code }) => code),
    ).toEqual(Array(4).fill('malformed'));
  });
});
