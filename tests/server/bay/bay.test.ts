import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { EngineHeard } from '../../../src/engineering/engine-sound/ear.ts';
import { readLog } from '../../../src/record/index.ts';
import { Bay } from '../../../src/server/bay/bay.ts';
import type { Starter } from '../../../src/server/bay/starter.ts';
import { type Pairing, Pairings } from '../../../src/server/pairing/pairings.ts';
import type { Deed, Role } from '../../../src/server/protocol/index.ts';
import { changed, demoSix } from '../../machines/helpers/profiles.ts';
import { inShop } from './in-shop.ts';
import { allElse, latch, outcomeOf } from './parts-of-a-bay.ts';

afterEach(() => void vi.useRealTimers());

/** A bay of a shop, with a device of each role that has come; what its faces are told. */
async function inBay({ awayMs = 10_000 } = {}) {
  const shop = await inShop();
  const { starter } = await shop.open();
  const pairings = await Pairings.open(join(shop.folder, 'pairings.json'), () => 0);
  const bay = new Bay('bay', pairings, starter, awayMs);
  onTestFinished(() => bay.close());
  const paired = async (role: Role, name = `the ${role}`): Promise<Pairing> =>
    (await pairings.add('bay', role, name))?.pairing ?? expect.fail('The bay is full.');
  const [technician, second, supervisor] = [
    await paired('technician'),
    await paired('second'),
    await paired('supervisor'),
  ];
  for (const device of [technician, second, supervisor]) bay.came(device);
  await setImmediate();
  const frames: { readonly type: string; readonly seq: number; readonly text?: string }[] = [];
  bay.stream.listen(text => frames.push(JSON.parse(text)));
  const state = () => bay.stream.snapshot().state;
  let commands = 0;
  const perform = (by: Pairing, deed: Deed, id = `command ${++commands}`) =>
    outcomeOf(bay.perform(by, { type: 'command', id, deed }));
  const begin = async () => {
    expect(await perform(technician, { do: 'begin' })).toBe('done');
    await allElse();
  };
  /** What the faces see of a device once they have been told of it: what they are not told of, they never see. */
  const shownOf = async ({ device }: Pairing) => {
    await setImmediate();
    return state().devices.find(({ id }) => id === device);
  };
  const say = (text: string, by = technician) =>
    perform(by, { do: 'say', turn: state().turn, text, via: 'touch' });
  const key = () => state().view?.key;
  /** Whoever is asked answers, by one of these words where it may be said, and else by what comes first, until it is so. */
  const answerUntil = async (isSo: () => boolean, words: readonly string[] = []) => {
    for (let turn = 0; turn < 24 && !isSo(); turn += 1) {
      const { view, grammar } = state();
      const sayable = grammar?.replies.flatMap(({ wordings }) => wordings) ?? [];
      const word = [...words, 'correct'].find(each => sayable.includes(each));
      const answer = word ?? (view?.number ? '70' : view?.choices[0]) ?? '';
      await say(answer, view?.addressed === 'second' ? second : technician);
      await allElse();
    }
    expect([key(), isSo()]).toEqual([key(), true]);
  };
  /** A while, in which everything that was to be said is. */
  const silence = async () => {
    for (let second = 0; second < 40; second += 1) {
      shop.clock().advance(1000);
      await allElse();
    }
  };
  /** The record of the session, as the disk has it. */
  const recordPath = () => join(shop.folder, `${state().session}.jsonl`);
  return {
    ...shop,
    starter,
    bay,
    pairings,
    paired,
    technician,
    second,
    supervisor,
    frames,
    state,
    perform,
    begin,
    say,
    shownOf,
    key,
    answerUntil,
    silence,
    recordPath,
  };
}

/** Sessions are begun when what comes back is opened. */
function slowly(starter: Starter) {
  const disk = latch();
  const start = starter.start.bind(starter);
  vi.spyOn(starter, 'start').mockImplementation(async (...of) => {
    await disk.opened;
    return start(...of);
  });
  return disk;
}

describe('A bay in which no session has begun', () => {
  test('is free, and tells what may be begun and who is there', async () => {
    const { bay, state, technician } = await inBay();
    expect([bay.name, bay.goingOn, bay.isOpen, bay.sessionMs]).toEqual(['bay', null, false, null]);
    expect(bay.lines('any', 0)).toBeNull();
    expect(bay.brief()).toMatchObject({ bay: 'bay', state: 'free', sessionMs: 0 });
    expect(state()).toMatchObject({ bay: 'bay', session: null, profiles: ['demo-six', 'four'] });
    expect(state().devices.map(({ connected }) => connected)).toEqual([true, true, true]);
    expect(bay.crew.isOwner(technician)).toBe(true);
  });

  test('takes what devices tell of a session for nothing', async () => {
    const { bay, technician, frames } = await inBay();
    bay.spoken(technician, 1);
    bay.level({ levelDbfs: -20, clipping: false, speech: true });
    bay.hearsEngine(technician, 'one', heard(700));
    bay.voiceOfStop(technician, [1]);
    bay.fails(new Error('a fault'));
    await setImmediate();
    expect(frames).toEqual([]);
    await bay.close();
  });

  test('knows a stop in every language', async () => {
    const { bay, begin } = await inBay();
    const isStop = (text: string) => bay.isStop({ do: 'say', turn: '', text, via: 'keys' });
    expect(['stop', 'arrête', 'alto', 'understood'].map(isStop)).toEqual([true, true, true, false]);
    await begin();
    // In a session what people speak there.
    expect(['stop', 'arrête', 'alto'].map(isStop)).toEqual([true, false, false]);
  });
});

describe('The faces of a bay are told at once', () => {
  test('which devices come, leave, fall silent, and how they are', async () => {
    const { bay, second, shownOf, technician } = await inBay();
    expect(await shownOf(second)).toMatchObject({ connected: true, quiet: false, battery: null });
    bay.setQuiet(second, true);
    expect(await shownOf(second)).toMatchObject({ quiet: true });
    bay.setQuiet(second, false);
    expect(await shownOf(second)).toMatchObject({ quiet: false });
    bay.noteBattery(second, { share: 0.5, charging: true });
    expect(await shownOf(second)).toMatchObject({ battery: { share: 0.5 } });
    bay.noteOffset(second, { offsetMs: 12, roundTripMs: 3 });
    expect(await shownOf(second)).toMatchObject({ clockOffsetMs: 12, roundTripMs: 3 });
    bay.setListening(second, true);
    expect(await shownOf(second)).toMatchObject({ listens: true });
    bay.left(second);
    expect(await shownOf(second)).toMatchObject({ connected: false, listens: false });
    bay.came(second);
    expect(await shownOf(second)).toMatchObject({ connected: true });
    expect(await shownOf(technician)).toMatchObject({ owner: true });
  });

  test('which device was let go of, and what it had done is forgotten when the next one comes', async () => {
    const { bay, second, technician, supervisor, shownOf, perform } = await inBay();
    const takeOver = () => perform(technician, { do: 'takeOver' }, 'one');
    expect([await takeOver(), await takeOver()]).toEqual(['done', 'again']);
    bay.came(second);
    expect(await takeOver()).toBe('again');
    await bay.letGo(second.device);
    expect(await shownOf(second)).toBeUndefined();
    await expect(bay.letGo(second.device)).rejects.toMatchObject({ code: 'notFound' });
    expect(await perform(supervisor, { do: 'forget', device: technician.device })).toBe('done');
    bay.came(supervisor);
    expect(await takeOver()).toBe('done');
  });

  test('of an engine that was brought', async () => {
    const { bay, state, starter } = await inBay();
    expect(bay.bring(changed(demoSix, { name: 'mine' }))).toBe('mine');
    await setImmediate();
    expect(state().profiles).toEqual(['demo-six', 'four', 'mine']);
    const kept = vi.spyOn(starter, 'enginesKept');
    await bay.enginesKept();
    expect(kept).toHaveBeenCalledOnce();
  });
});

describe('A session in a bay', () => {
  test('is shown from its beginning on, with its record by its id', async () => {
    const { bay, begin, state, recordPath, clock } = await inBay();
    await begin();
    const { session } = state();
    expect([bay.goingOn, bay.isOpen, bay.sessionMs]).toEqual([session, true, 0]);
    expect(state().view).toMatchObject({ key: 'job.card.asking' });
    clock().advance(1200);
    expect(bay.brief()).toMatchObject({ session, state: 'working', sessionMs: 1200 });
    const lines = (await readFile(recordPath(), 'utf8')).trimEnd().split('\n');
    expect(bay.lines(session ?? '', 1)).toEqual(lines.slice(1));
    expect(bay.lines('another', 0)).toBeNull();
  });

  test('shows each answer, with the time of the session', async () => {
    const { say, state, begin, clock, bay } = await inBay();
    await begin();
    clock().advance(700);
    expect(await say('card is right')).toBe('done');
    await setImmediate();
    expect(state().view).toMatchObject({ key: 'job.makerFirst.asking' });
    expect(bay.stream.snapshot().sessionMs).toBe(700);
  });

  test('shows what changes in it by itself, too', async () => {
    const { begin, state, silence } = await inBay();
    await begin();
    expect(state().view?.hearing.speaking).toBe(true);
    await silence();
    expect(state().view?.hearing.speaking).toBe(false);
  });

  test('is stopped by whoever asks, and shown so when that returns; a stop after it has gone on is a new one', async () => {
    const { bay, begin, state, second, technician, answerUntil } = await inBay();
    expect(bay.stop(second, '0')).toEqual({ stop: 'nothingRuns', again: false });
    await begin();
    expect(bay.stop(second, '1')).toEqual({ stop: 'stopped', again: false });
    expect(state().view).toMatchObject({ state: 'stopped' });
    expect(bay.stop(second, '2')).toEqual({ stop: 'stopped', again: true });
    await allElse();
    await answerUntil(
      () => state().view?.state === 'working',
      ['all is off', 'correct', 'false alarm', 'ready'],
    );
    expect(bay.stop(technician, '1')).toEqual({ stop: 'stopped', again: false });
    expect(bay.stop(second, '3')).toEqual({ stop: 'stopped', again: false });
  });

  test('that is only being begun keeps the bay from being free, and is stopped by what comes meanwhile', async () => {
    const { bay, perform, technician, second, starter, state } = await inBay();
    const disk = slowly(starter);
    const begun = perform(technician, { do: 'begin' });
    await setImmediate();
    expect([bay.isOpen, bay.goingOn]).toEqual([true, null]);
    expect(bay.stop(second, '1')).toEqual({ stop: 'stopped', again: false });
    disk.open();
    expect(await begun).toBe('done');
    expect(state().view).toMatchObject({ state: 'stopped' });
  });

  test('that broke off is gone on with when the server begins, and the bay is free where there was none', async () => {
    const { begin, state, bay, open, folder, pairings } = await inBay();
    await begin();
    const { session } = state();
    await bay.close();
    const { starter } = await open();
    const again = new Bay('bay', await Pairings.open(join(folder, 'pairings.json'), () => 0), starter);
    onTestFinished(() => again.close());
    await again.resume();
    expect(again.goingOn).toBe(session);
    const other = new Bay('other', pairings, starter);
    await other.resume();
    expect(other.isOpen).toBe(false);
  });

  test('of which the record cannot be written says so before whoever answered is told that it is done', async () => {
    const { begin, recordPath, state, say } = await inBay();
    await begin();
    await rm(recordPath());
    expect(await say('card is right')).toBe('done');
    expect(state().view?.problems).toEqual([expect.stringContaining('can no longer write the record')]);
  });
});

describe('What breaks that a bay hangs on', () => {
  test('stops what goes on in it, and all faces are told why when that returns', async () => {
    const { bay, begin, state } = await inBay();
    await begin();
    bay.fails(new Error('the archive broke'));
    expect(state().view).toMatchObject({
      state: 'stopped',
      problems: [expect.stringContaining('the archive broke')],
    });
  });

  test('has a session that is being begun not begin', async () => {
    const { bay, perform, technician, starter, state } = await inBay();
    const disk = slowly(starter);
    const begun = perform(technician, { do: 'begin' });
    await setImmediate();
    bay.fails(new Error('the archive broke'));
    disk.open();
    expect(await begun).toContain('the archive broke');
    expect([bay.isOpen, state().session]).toEqual([false, null]);
  });
});

describe('The voice of a bay', () => {
  test('goes on as soon as the device that leads has said a sentence, whatever others say of it', async () => {
    const { bay, begin, frames, technician, second } = await inBay();
    await begin();
    const said = () => frames.filter(({ type }) => type === 'say');
    const [first] = said();
    expect(said()).toHaveLength(1);
    bay.spoken(second, first?.seq ?? 0);
    await allElse();
    expect(said()).toHaveLength(1);
    bay.spoken(technician, first?.seq ?? 0);
    await allElse();
    expect(said()).toHaveLength(2);
  });
});

describe('What listens in a bay', () => {
  test('is the device that leads, from when it says so until it leaves', async () => {
    const { bay, begin, state, technician } = await inBay();
    const source = async () => {
      await setImmediate();
      return state().view?.hearing.source;
    };
    bay.setListening(technician, true);
    await begin();
    expect(await source()).toBe('the technician');
    bay.setListening(technician, false);
    expect(await source()).toBe('keys');
    bay.setListening(technician, true);
    expect(await source()).toBe('the technician');
    bay.left(technician);
    expect(await source()).toBe('keys');
  });

  test('is the next one as soon as that comes to lead', async () => {
    const { bay, begin, state, technician, paired, pairings } = await inBay();
    await begin();
    const other = await paired('technician', 'another tablet');
    bay.came(other);
    bay.setListening(other, true);
    await pairings.forget(technician.device);
    expect(state().view?.hearing.source).toBe('keys');
    bay.came(other);
    await setImmediate();
    expect(state().view?.hearing.source).toBe('another tablet');
  });

  test('tells how loud the bay is', async () => {
    const { bay, begin, state, silence } = await inBay();
    await begin();
    await silence();
    for (const nth of [1, 2, 3])
      bay.level({
        levelDbfs: -20,
        clipping: false,
        speech: false,
        noiseDbfs: -30,
        utterance: { nth, speechDbfs: -20, aboveNoiseDb: 2 },
      });
    await setImmediate();
    const { session } = state();
    const kept = (bay.lines(session ?? '', 0) ?? []).map(line => JSON.parse(line));
    expect(kept.filter(({ kind }) => kind === 'hearing').map(({ data }) => data.finding)).toContain(
      'bayTooNoisy',
    );
  });
});

const heard = (rpm: number): EngineHeard => ({
  toldS: 0,
  atS: 0,
  claim: { rpm, confidence: 0.9 },
  happened: null,
  hunting: null,
  levelsDb: [],
});

describe('What the microphones of a bay hear of the engine', () => {
  test('is shown of one at a time, with its name: the leader’s first, and of this session only', async () => {
    const { bay, begin, state, technician, second, supervisor, clock } = await inBay();
    await begin();
    const session = state().session ?? '';
    const ear = async () => {
      clock().advance(600);
      await setImmediate();
      return state().view?.engineEar;
    };
    bay.hearsEngine(technician, 'another', heard(650));
    expect(await ear()).toBeUndefined();
    bay.hearsEngine(supervisor, session, heard(700));
    expect(await ear()).toMatchObject({ microphone: 'the supervisor' });
    bay.hearsEngine(second, session, heard(710));
    expect(await ear()).toMatchObject({ microphone: 'the second' });
    bay.hearsEngine(technician, session, heard(720));
    expect(await ear()).toMatchObject({ microphone: 'the technician' });
    bay.hearsEngine(second, session, heard(730));
    expect(await ear()).toMatchObject({ microphone: 'the technician' });
    // The last of it has fallen silent.
    clock().advance(2001);
    bay.hearsEngine(second, session, heard(740));
    expect(await ear()).toMatchObject({ microphone: 'the second' });
  });
});

describe('In whose voice a stop was said', () => {
  test('is learned at the device at which stop words are tried out', async () => {
    const { bay, begin, technician, recordPath, answerUntil, key } = await inBay();
    await begin();
    await answerUntil(() => key() === 'job.stopTechnician.asking');
    for (const nth of [1, 2, 3]) {
      bay.stop(technician, `stop ${nth}`, { via: 'voice' });
      bay.voiceOfStop(technician, [1, 0, 0]);
    }
    await bay.close();
    const { entries } = await readLog(recordPath());
    expect(entries.filter(({ kind }) => kind === 'voiceLearned').map(({ data }) => data)).toMatchObject([
      { by: 'technician', utterances: 3 },
    ]);
  });
});

describe('Who leaves a bay', () => {
  test('is missed where the second person’s device has gone quiet', async () => {
    const { bay, begin, second, frames, technician, silence } = await inBay();
    await begin();
    const missed = () => frames.filter(({ text }) => text?.includes('econd person')).length;
    bay.setQuiet(second, false);
    bay.setQuiet(technician, true);
    await silence();
    expect(missed()).toBe(0);
    const { seq } = bay.stream;
    bay.setQuiet(second, true);
    // All that changes in one turn of the program is told at once, behind it.
    expect(bay.stream.seq).toBe(seq);
    await allElse();
    expect(missed()).toBe(1);
    // The last sign of life of a line that has ended is no new loss.
    await silence();
    bay.left(second);
    bay.setQuiet(second, false);
    await silence();
    expect(missed()).toBe(1);
  });

  test('with the second person’s device is missed as soon as a page could have been loaded anew', async () => {
    const { bay, begin, second, frames, silence } = await inBay();
    await begin();
    await silence();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    bay.left(second);
    vi.advanceTimersByTime(4000);
    vi.useRealTimers();
    await allElse();
    expect(frames.filter(({ text }) => text?.includes('econd person'))).toHaveLength(1);
  });
});

describe('A bay that is closed', () => {
  test('has its record closed, and waits for nobody', async () => {
    const { bay, begin, recordPath, technician } = await inBay({ awayMs: 1 });
    await begin();
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    bay.left(technician);
    const closed = bay.close();
    vi.advanceTimersByTime(10);
    await closed;
    const { entries } = await readLog(recordPath());
    expect(entries.some(({ kind }) => kind === 'problem')).toBe(false);
    await expect(readFile(`${recordPath()}.lock`)).rejects.toThrow();
    // What leaves it then is told to nobody.
    bay.left(technician);
    vi.advanceTimersByTime(20_000);
  });
});
