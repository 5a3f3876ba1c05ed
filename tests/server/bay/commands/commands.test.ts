import { describe, expect, test, vi } from 'vitest';
import { readLog } from '../../../../src/record/index.ts';
import { allElse, atOnce, partsOfABay, slowDisk } from '../parts-of-a-bay.ts';

/** A session whose disk is slow, and which is carrying out something that nobody said: the next answer waits for that. */
async function busy() {
  const bay = await partsOfABay();
  await bay.begin();
  const disk = slowDisk(bay.run().record);
  bay.run().session.receive({ type: 'status' }, 'technician', 'tool');
  return { ...bay, disk };
}

describe('Two answers to one question', () => {
  test('are one: before the first has had its effect the next would be to whatever is asked then', async () => {
    const { say, disk, key, run, commandsOn, current } = await busy();
    const asked = current.turn;
    const first = say('card is right');
    expect(key()).toBe('job.card.asking');
    expect(current.turn).toBe(asked);
    expect(await atOnce(say('card is right'))).toBe('tooLate');
    expect(await atOnce(say('understood'))).toBe('tooLate');
    disk.release();
    expect(await first).toBe('done');
    expect(key()).toBe('job.makerFirst.asking');
    expect(await commandsOn(run())).toEqual(['begin', 'say']);
  });

  test('are two when the first is on the disk and the question is put again', async () => {
    const { say, disk, key } = await busy();
    const first = say('banana');
    expect(await atOnce(say('card is right'))).toBe('tooLate');
    disk.release();
    expect(await first).toBe('done');
    expect(key()).toBe('job.card.asking');
    expect(await say('card is right')).toBe('done');
    expect(key()).toBe('job.makerFirst.asking');
  });

  test('are each for their own question, once the first has had its effect', async () => {
    const { say, begin, key } = await partsOfABay().then(async bay => {
      await bay.begin();
      return bay;
    });
    expect(await begin()).toBe('notNow');
    expect(await say('card is right')).toBe('done');
    expect(await say('understood')).toBe('done');
    expect(key()).not.toMatch(/^job\.(card|makerFirst)\./);
  });
});

describe('A double touch', () => {
  test('is one command: both are acknowledged when it is on the disk, and it is done once', async () => {
    const { say, disk, key, run, commandsOn } = await busy();
    const told: string[] = [];
    const touches = ['one', 'one'].map(id => say('card is right', { id }).then(each => told.push(each)));
    await allElse();
    expect(told).toEqual([]);
    disk.release();
    await Promise.all(touches);
    expect(told.toSorted()).toEqual(['again', 'done']);
    expect(key()).toBe('job.makerFirst.asking');
    expect(await commandsOn(run())).toEqual(['begin', 'say']);
  });
});

describe('While an answer is being carried out', () => {
  test('what means the same whatever is asked counts, behind it', async () => {
    const { say, perform, technician, second, disk, run, key, current } = await busy();
    const { turn } = current;
    const answer = say('card is right');
    const hold = perform(second, { do: 'control', turn, id: 'hold' });
    const back = perform(technician, { do: 'control', turn, id: 'goBack' });
    expect(await atOnce(back)).toBe('tooLate');
    disk.release();
    expect(await Promise.all([answer, hold])).toEqual(['done', 'done']);
    expect(run().session.moment.matches('held')).toBe(true);
    expect(key()).toMatch(/^held/);
  });

  test('that too keeps the question from being answered: it may change what is asked', async () => {
    const { say, perform, second, disk, current, key } = await busy();
    const { turn } = current;
    const hold = perform(second, { do: 'control', turn, id: 'hold' });
    expect(key()).toBe('job.card.asking');
    expect(await atOnce(say('card is right', { turn }))).toBe('tooLate');
    disk.release();
    expect(await hold).toBe('done');
  });

  test('what is no answer is done beside it: a device takes over, the supervisor asks for a hold', async () => {
    const { say, perform, supervisor, paired, crew, current, disk } = await busy();
    const other = await paired('technician');
    crew.came(other);
    const answer = say('card is right');
    const others = [perform(supervisor, { do: 'askHold' }), perform(other, { do: 'takeOver' })];
    expect(current.holdAsked).toMatchObject({ by: 'the supervisor' });
    expect(crew.isOwner(other)).toBe(true);
    disk.release();
    expect(await Promise.all([answer, ...others])).toEqual(['done', 'done', 'done']);
  });

  test('a stop waits for none of it: it has stopped before the disk has anything, and the answer counts no more', async () => {
    const { say, stopping, second, disk, key, shown } = await busy();
    const answer = say('card is right');
    expect(stopping.stop(second, 'stop')).toEqual({ stop: 'stopped', again: false });
    expect(key()).toBe('stopped.makingSafe');
    expect(shown).toEqual(['stopped.makingSafe']);
    disk.release();
    expect(await answer).toBe('done');
    expect(key()).toBe('stopped.makingSafe');
  });
});

describe('What is refused', () => {
  test('changes nothing, stands on no record, and may be sent again when it is allowed', async () => {
    const { say, perform, technician, second, supervisor, begin, run, key, commandsOn } = await partsOfABay();
    expect(await say('card is right')).toBe('notNow');
    expect(await perform(second, { do: 'begin' })).toBe('notYourRole');
    expect(await begin()).toBe('done');
    for (const by of [second, supervisor]) expect(await say('card is right', { by })).toBe('notYourRole');
    expect(await say('card is right', { turn: 'of another time', id: 'mine' })).toBe('tooLate');
    expect(await perform(technician, { do: 'askHold' })).toBe('notYourRole');
    expect(key()).toBe('job.card.asking');
    expect(await commandsOn(run())).toEqual(['begin']);
    expect(await say('card is right', { id: 'mine' })).toBe('done');
    expect(await commandsOn(run())).toEqual(['begin', 'say']);
  });
});

describe('A hold that the supervisor asks for', () => {
  test('is asked for until it is declined, or the session stands still', async () => {
    const { perform, commands, technician, supervisor, current, begin } = await partsOfABay();
    expect(await perform(supervisor, { do: 'askHold' })).toBe('notNow');
    await begin();
    expect(await perform(supervisor, { do: 'askHold' })).toBe('done');
    expect(current.holdAsked).toEqual({ by: 'the supervisor', atSessionMs: 0 });
    expect(await perform(technician, { do: 'declineHold' })).toBe('done');
    expect(current.holdAsked).toBeNull();
    expect(await perform(supervisor, { do: 'askHold' })).toBe('done');
    expect(await perform(technician, { do: 'control', turn: '', id: 'hold' })).toBe('done');
    expect(current.holdAsked).toBeNull();
    await expect(
      commands.perform(supervisor, { type: 'command', id: 'held', deed: { do: 'askHold' } }),
    ).rejects.toMatchObject({
      code: 'notNow',
      message: 'The session stands still already; nothing is left to be held.',
    });
  });
});

describe('The devices of a bay', () => {
  test('are let go of and renewed by others, on the record', async () => {
    const { perform, technician, second, supervisor, pairings, begin, run, commandsOn } = await partsOfABay();
    await begin();
    expect(await perform(second, { do: 'renew', device: second.device })).toBe('notYourRole');
    expect(await perform(technician, { do: 'renew', device: second.device })).toBe('done');
    expect(await perform(technician, { do: 'forget', device: second.device })).toBe('notNow');
    expect(await perform(supervisor, { do: 'forget', device: second.device })).toBe('done');
    expect(pairings.current(second)).toBeNull();
    expect(await perform(supervisor, { do: 'forget', device: second.device })).toBe('notFound');
    expect(await commandsOn(run())).toEqual(['begin', 'renew', 'forget']);
  });

  test('that were let go of are shown so, also where that could not be kept', async () => {
    const { commands, second, technician, pairings, toldSoon } = await partsOfABay();
    await commands.letGo(second.device);
    expect(toldSoon()).toBe(1);
    vi.spyOn(pairings, 'forget').mockRejectedValueOnce(new Error('no space'));
    await expect(commands.letGo(technician.device)).rejects.toThrow('no space');
    expect(toldSoon()).toBe(2);
  });

  test('of another bay are not there for anybody here', async () => {
    const { perform, technician, supervisor, paired, pairings } = await partsOfABay();
    const elsewhere = await paired('second', 'another bay');
    for (const deed of ['forget', 'renew'] as const)
      for (const by of [technician, supervisor])
        expect(await perform(by, { do: deed, device: elsewhere.device })).toBe('notFound');
    expect(pairings.current(elsewhere)).not.toBeNull();
  });
});

describe('A stop that comes as a command', () => {
  test('stops, and is done once; what calls for help names it', async () => {
    const { perform, second, begin, run, key, commandsOn } = await partsOfABay();
    await begin();
    const deed = { do: 'stop', cause: 'smokeOrFire' } as const;
    expect(await perform(second, deed, 'one')).toBe('done');
    expect(key()).toBe('stopped.makingSafe');
    expect(run().session.moment.context.stop).toMatchObject({ cause: 'smokeOrFire' });
    expect(await perform(second, deed, 'one')).toBe('again');
    expect(await commandsOn(run())).toEqual(['begin', 'stop']);
  });
});

describe('Fire that somebody types who is not at the engine', () => {
  test('is refused, and stands on the record once; what else they type does not', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    for (const text of ['fire', 'fire', 'card is right'])
      expect(await bay.say(text, { by: bay.supervisor })).toBe('notYourRole');
    await bay.run().session.settled();
    const { entries } = await readLog(bay.run().record.path);
    const unheeded = entries.flatMap(({ kind, data }) => (kind === 'notCarriedOut' ? [data] : []));
    expect(unheeded).toMatchObject([
      { device: bay.supervisor.device, do: 'say', cause: 'smokeOrFire', why: 'notAtEngine' },
    ]);
    expect(bay.key()).toBe('job.card.asking');
    // At the engine it is a call for help, and stands there as that.
    expect(await bay.say('fire', { by: bay.second })).toBe('done');
    expect(await bay.notBelievedOn(bay.run())).toEqual(['smokeOrFire']);
    expect(bay.key()).toBe('stopped.makingSafe');
  });
});

describe('A device that takes over', () => {
  test('is the one whose microphone is named from then on', async () => {
    const { perform, paired, technician, crew, current, begin, run } = await partsOfABay();
    await begin();
    const other = await paired('technician');
    crew.came(other);
    crew.setListening(other, true);
    current.listensWith(crew.source);
    expect(run().viewer.view().hearing.source).toBe('keys');
    expect(await perform(other, { do: 'takeOver' })).toBe('done');
    expect(run().viewer.view().hearing.source).toBe(other.name);
    expect(await perform(technician, { do: 'declineHold' })).toBe('notTheOwner');
  });
});

describe('A voice', () => {
  test('is handed in beside what was heard, and what was heard is an answer', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    const { session, voices } = bay.run();
    const silent = async () => {
      for (let turn = 0; turn < 60 && session.hearsOnlyStop; turn += 1) {
        bay.clock().advance(1000);
        await allElse();
      }
    };
    await silent();
    const heard = vi.spyOn(voices, 'hears');
    const reply = { kind: 'reply', id: 'cardRight', text: 'card is right', confidence: 0.9 } as const;
    const voice = [0.25, 0.5];
    const { turn } = bay.current;
    expect(await bay.perform(bay.technician, { do: 'heard', turn, heard: reply, voice })).toBe('done');
    expect(heard.mock.calls).toEqual([
      [{ voice: Float32Array.from(voice), stopped: false }, bay.technician.device],
    ]);
    await silent();
    const unclear = { kind: 'unclear', text: '', reason: 'outOfGrammar' } as const;
    await bay.perform(bay.technician, { do: 'heard', turn: bay.current.turn, heard: unclear });
    expect(heard.mock.calls[1]).toEqual([null, bay.technician.device]);
    await bay.say('understood');
    expect(heard).toHaveBeenCalledTimes(2);
  });
});

describe('A session of the bay', () => {
  test('is set aside and gone on with as a command, and stands so on its record', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    bay.stopping.stop(bay.second, 'stop');
    await bay.answerUntil(() => bay.run().mayBeLeft, ['all is off', 'correct', 'false alarm']);
    const { path } = bay.run().record;
    expect(await bay.perform(bay.technician, { do: 'setAside' })).toBe('done');
    expect(bay.current.run).toBeNull();
    expect(await bay.perform(bay.technician, { do: 'resume', session: path })).toBe('done');
    expect(bay.run().session.moment.matches('stopped')).toBe(true);
    const commands = await bay.commandsOn(bay.run());
    expect([commands[0], ...commands.slice(-2)]).toEqual(['begin', 'setAside', 'resume']);
  });
});

describe('What is asked for where no session goes on', () => {
  test('is refused, each in its sentence, but for what is about devices', async () => {
    const bay = await partsOfABay();
    const { technician, supervisor, second } = bay;
    expect(await bay.perform(technician, { do: 'setAside' })).toBe('notNow');
    expect(await bay.perform(second, { do: 'clear', turn: 'x' })).toBe('notNow');
    expect(await bay.perform(technician, { do: 'takeOver' })).toBe('done');
    expect(await bay.perform(technician, { do: 'declineHold' })).toBe('done');
    expect(await bay.perform(supervisor, { do: 'forget', device: second.device })).toBe('done');
  });
});
