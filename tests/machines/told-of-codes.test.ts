import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';

const asked = new Driver(demoSix).goodUntil('keyOn.faults.asking');
const BUS = { via: 'bus' } as const;

const readOne = (driver: Driver, spn: number, fmi: number) =>
  driver.reply('readACode').value('suspectParameter', spn).value('failureMode', fmi);
const codes = (...all: (readonly [spn: number, fmi: number])[]): EventBody => ({
  type: 'codes',
  codes: all.map(([spn, fmi]) => ({ spn, fmi })),
});
const faultsOf = (driver: Driver) => driver.last.notes.find(({ kind }) => kind === 'faults')?.data;

describe('a fault code that was read', () => {
  it('is read back by both of its numbers, the first digit by digit', () => {
    expect(readOne(asked.fork(), 157, 18).last.said).toMatchObject([
      { line: 'readBackCode', values: { spn: { digits: 157 }, fmi: 18 } },
    ]);
  });

  it.each([
    [157, 18, 'codeWatch', 'watch', 60],
    [97, 15, 'codeGoOn', 'mayGoOn', 0],
    [100, 1, 'codeBlocks', 'blocks', 0],
    [5000, 7, 'codeUnknown', 'blocks', 0],
  ] as const)(
    '%i/%i is told as %s, with what it means, and is on the record as %s',
    (spn, fmi, line, decision, leftS) => {
      const driver = readOne(asked.fork(), spn, fmi).reply('yes');
      const because = demoSix.faults.find(rule => rule.spn === spn && rule.fmi === fmi)?.because ?? '';
      expect(driver.last.said[0]).toMatchObject({
        line,
        priority: 'notice',
        values: { spn, fmi, meaning: { failureMode: fmi }, because, time: { unit: 's', si: leftS } },
      });
      expect(faultsOf(driver)).toEqual({
        step: 'keyOn.faults',
        faults: [{ spn, fmi, meaning: expect.any(String), decision }],
      });
      expect(driver.context).toMatchObject({ spokenSpn: null, misheard: 0 });
    },
  );

  it('and that no control unit can send is told as blocking, without a meaning', () => {
    const driver = readOne(asked.fork(), 157.5, 3).reply('yes');
    expect(driver.last.said[0]).toMatchObject({
      line: 'codeBlocks',
      values: { meaning: '', time: { si: 0 } },
    });
    expect(faultsOf(driver)).toMatchObject({ faults: [{ meaning: null, decision: 'blocks' }] });
  });

  it('twice is one code', () => {
    const driver = readOne(asked.fork(), 157, 18).reply('yes');
    expect(readOne(driver, 157, 18).reply('yes').context.faults).toHaveLength(1);
  });

  it('is another one with another of its two numbers', () => {
    const driver = readOne(asked.fork(), 157, 18).reply('yes');
    readOne(driver, 157, 3).reply('yes');
    readOne(driver, 100, 18).reply('yes');
    expect(driver.context.faults.map(({ spn, fmi }) => [spn, fmi])).toEqual([
      [157, 18],
      [157, 3],
      [100, 18],
    ]);
  });

  it('denied is asked for again from its first number', () => {
    const driver = readOne(asked.fork(), 157, 18).reply('no');
    expect(driver.name).toBe('keyOn.faults.spn');
    expect(driver.last.said[0]).toMatchObject({ line: 'codeSpn', prefix: 'unclear' });
  });

  it('after another one is asked for by the question for more', () => {
    const driver = readOne(asked.fork(), 97, 15).reply('yes');
    expect(driver.name).toBe('keyOn.faults.another');
    expect(driver.lines).toEqual(['codeGoOn', 'anotherCode']);
    expect(offerOf(driver.moment)).toMatchObject({ awaits: 'anotherCode' });
    expect(driver.fork().reply('noMoreCodes').lines).toEqual(['readBackReply']);
    expect(driver.fork().reply('noMoreCodes').reply('no').name).toBe('keyOn.faults.another');
    expect(driver.fork().reply('noMoreCodes', { via: 'keys' }).context.step).not.toBe('keyOn.faults');
  });
});

describe('codes that block', () => {
  const blocked = readOne(asked.fork(), 100, 1).reply('yes').reply('noMoreCodes').reply('yes');

  it('are named, and only they', () => {
    const driver = readOne(readOne(asked.fork(), 97, 15).reply('yes'), 100, 1);
    driver.reply('yes').reply('noMoreCodes').reply('yes');
    expect(driver.last.said[0]).toMatchObject({
      line: 'blockingFault',
      values: { fault: { list: [{ code: { spn: 100, fmi: 1 } }] } },
    });
    expect(offerOf(driver.moment)).toMatchObject({ replies: ['ready', 'acceptFault'], awaits: 'repair' });
  });

  const UNCLEAR = { type: 'unclear' } as const;

  it('are looked at again, and accepted, only by a voice that was understood, or by hand', () => {
    const unknown = readOne(asked.fork(), 5000, 7).reply('yes').reply('noMoreCodes').reply('yes');
    expect(unknown.name).toBe('keyOn.faults.blocked');
    for (const id of ['noCodes', 'noMoreCodes', 'yes', 'reasonSupervisor'] as const)
      expect(unknown.fork().reply(id).name).toBe(unknown.name);
    for (const driver of [blocked, unknown]) {
      const unheard = driver.fork().send(UNCLEAR).send(UNCLEAR).send(UNCLEAR);
      expect(unheard.context.misheard).toBe(3);
      for (const id of ['ready', 'acceptFault'] as const)
        expect(unheard.fork().reply(id, { by: 'technician' }).name).toBe('keyOn.faults.blocked');
      expect(unheard.reply('ready', { by: 'technician', via: 'keys' }).name).toBe('keyOn.faults.asking');
    }
  });

  it('and that nobody knows are accepted on the record, with the reason', () => {
    const unknown = readOne(asked.fork(), 5000, 7)
      .reply('yes')
      .reply('noMoreCodes')
      .reply('yes')
      .reply('acceptFault');
    expect(unknown.last.said[0]).toMatchObject({ line: 'acceptWhy' });
    expect(offerOf(unknown.moment)).toMatchObject({ by: 'supervisor', freeText: true });
    const accepted = unknown.fork().reply('reasonNotFitted').reply('yes');
    expect(accepted.notes.findLast(({ kind }) => kind === 'faults')?.data).toMatchObject({
      faults: [{ spn: 5000, fmi: 7, accepted: 'reasonNotFitted' }],
    });
    expect(unknown.fork().send({ type: 'reason', text: 'no' }, { via: 'keys' }).lines).toEqual(['noReason']);
  });

  it('of a known kind stay unaccepted beside an unknown one that is accepted', () => {
    const both = readOne(readOne(asked.fork(), 5000, 7).reply('yes'), 100, 1).reply('yes');
    both.reply('noMoreCodes').reply('yes').reply('acceptFault').reply('reasonSupervisor').reply('yes');
    expect(both.context.faults).toEqual([
      expect.objectContaining({ spn: 5000, accepted: 'reasonSupervisor' }),
      expect.not.objectContaining({ accepted: expect.anything() }),
    ]);
  });
});

describe('a round of codes that is broken off', () => {
  const watchedAndBlocking = () =>
    readOne(readOne(asked.fork(), 157, 18).reply('yes'), 100, 1)
      .reply('yes')
      .reply('noMoreCodes')
      .reply('yes');

  it('tells nothing of the codes that it did not come to: they keep the time when they were first seen', () => {
    const driver = watchedAndBlocking();
    const seen = driver.context.faults;
    expect(seen).toHaveLength(2);
    readOne(driver.reply('ready'), 157, 18).reply('yes');
    driver.send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('keyOn.faults.asking');
    expect(driver.context).toMatchObject({ faults: [], earlierFaults: seen });
    expect(readOne(driver, 100, 1).reply('yes').context.faults).toEqual(seen.slice(1));
  });

  it('and has found a new one adds that to them, by both of its numbers', () => {
    const driver = watchedAndBlocking();
    const seen = driver.context.faults;
    readOne(driver.reply('ready'), 157, 1).reply('yes');
    const [found] = driver.context.faults;
    driver.send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('keyOn.faults.asking');
    expect(driver.context.earlierFaults).toEqual([found, ...seen]);
  });

  it('that was gone through leaves nothing for the next', () => {
    const driver = asked
      .fork()
      .send(codes([157, 18]), BUS)
      .reply('yes');
    expect(driver.context.earlierFaults).toEqual([]);
    const typed = readOne(asked.fork(), 157, 18).reply('yes').reply('noMoreCodes', { via: 'keys' });
    expect(typed.context.earlierFaults).toEqual([]);
  });
});

describe('codes of the bus', () => {
  it('come all at once, are read back, and count once somebody says that they are right', () => {
    const driver = asked.fork().send(codes([97, 15], [157, 18]), BUS);
    expect(driver.name).toBe('keyOn.faults.busReadBack');
    expect(driver.last.said).toMatchObject([
      {
        line: 'readBackBusCodes',
        values: { codes: { list: [{ code: { spn: 97, fmi: 15 } }, { code: { spn: 157, fmi: 18 } }] } },
      },
    ]);
    expect(driver.context.faults.map(({ seenMs }) => seenMs)).toEqual([driver.nowMs, driver.nowMs]);
    expect(driver.fork().reply('no').name).toBe('keyOn.faults.asking');
    driver.reply('yes');
    expect(driver.context.step).toBe('keyOn.heaterHold');
    expect(faultsOf(driver)).toMatchObject({ faults: [{ spn: 97 }, { spn: 157 }] });
  });

  it('of which there are none are read back as none', () => {
    const driver = asked.fork().send(codes(), BUS);
    expect(driver.lines).toEqual(['readBackBusNoCodes']);
    expect(driver.reply('yes').context.step).toBe('keyOn.heaterHold');
  });

  it('that were there in the round before keep the time when they were first seen', () => {
    const driver = asked
      .fork()
      .send(codes([157, 18], [100, 1]), BUS)
      .reply('yes');
    const [first] = driver.context.faults;
    driver.reply('ready', { afterMs: 20_000 }).send(codes([157, 18], [157, 3], [97, 18]), BUS);
    expect(driver.context.faults).toEqual([
      first,
      { spn: 157, fmi: 3, seenMs: driver.nowMs },
      { spn: 97, fmi: 18, seenMs: driver.nowMs },
    ]);
  });

  it('contradict "no codes", which is on the record', () => {
    const driver = asked
      .fork()
      .send({ type: 'reply', id: 'noCodes', bus: { codes: [{ spn: 100, fmi: 1 }] } });
    expect(driver.name).toBe('keyOn.faults.busReadBack');
    expect(driver.last.notes).toEqual([
      {
        kind: 'disagreement',
        data: { step: 'keyOn.faults', spoken: 'noCodes', bus: [{ spn: 100, fmi: 1 }] },
      },
    ]);
    expect(driver.reply('yes').name).toBe('keyOn.faults.blocked');
    const agrees = asked.fork().send({ type: 'reply', id: 'noCodes', bus: { codes: [] } });
    expect(agrees.name).toBe('keyOn.faults.readingBack');
  });

  it.each(['voice', 'keys'] as const)(
    'contradict "no more codes" by %s: each of them has to be read',
    via => {
      const shown = [
        { spn: 97, fmi: 15 },
        { spn: 100, fmi: 1 },
      ];
      const noMore = (bus: typeof shown) =>
        readOne(asked.fork(), 97, 15)
          .reply('yes')
          .send({ type: 'reply', id: 'noMoreCodes', bus: { codes: bus } }, { via });
      const driver = noMore(shown);
      expect(driver.name).toBe('keyOn.faults.busReadBack');
      expect(driver.last.notes).toEqual([
        { kind: 'disagreement', data: { step: 'keyOn.faults', spoken: 'noMoreCodes', bus: shown } },
      ]);
      expect(driver.context.faults).toMatchObject(shown);
      expect(driver.reply('yes').name).toBe('keyOn.faults.blocked');
      expect(noMore(shown.slice(0, 1)).last.notes).not.toMatchObject([{ kind: 'disagreement' }]);
    },
  );

  it('contradict "fault cleared" while one that is watched stands', () => {
    const watching = asked
      .fork()
      .send(codes([157, 18]), BUS)
      .reply('yes')
      .goodUntil('firstFire.transient.asking');
    const cleared = (...shown: { spn: number; fmi: number }[]) =>
      watching.fork([]).send({ type: 'reply', id: 'faultCleared', bus: { codes: shown } }, { via: 'keys' });
    const stands = cleared({ spn: 157, fmi: 18 }, { spn: 97, fmi: 15 });
    expect(stands.name).toBe('firstFire.transient.asking');
    expect(stands.last.said).toMatchObject([
      { line: 'codeStillShown', values: { codes: { list: [{ code: { spn: 157, fmi: 18 } }] } } },
    ]);
    expect(stands.last.notes).toMatchObject([{ kind: 'disagreement', data: { spoken: 'faultCleared' } }]);
    expect(cleared({ spn: 97, fmi: 15 }).context.done).toContain('firstFire.transient');
    expect(cleared().context.done).toContain('firstFire.transient');
  });

  it('do not count by voice, without a bus, or where something was misunderstood', () => {
    expect(asked.fork().send(codes([97, 15])).name).toBe(asked.name);
    const four = new Driver(demoFour).goodUntil('keyOn.faults.asking');
    expect(four.send(codes([97, 15]), BUS).name).toBe('keyOn.faults.asking');
    expect(
      asked
        .fork()
        .send({ type: 'unclear' })
        .send(codes([97, 15]), BUS).name,
    ).toBe(asked.name);
  });

  it('that are new are watched anew, though an earlier watch is over', () => {
    const watched = readOne(asked.fork(), 157, 18).reply('yes').reply('noMoreCodes').reply('yes');
    watched.goodUntil('firstFire.transient.asking').reply('faultCleared').reply('yes');
    watched.goodUntil('sweeps.faults.asking');
    expect(watched.context.done).toContain('firstFire.transient');
    expect(watched.fork().send(codes([97, 15]), BUS).context.done).not.toContain('firstFire.transient');
    expect(watched.fork().send(codes([157, 18]), BUS).context.done).toContain('firstFire.transient');
    const both = watched.fork().send(codes([157, 18], [97, 15]), BUS);
    expect(both.context.done).not.toContain('firstFire.transient');
    expect(readOne(watched.fork(), 97, 15).reply('yes').context.done).not.toContain('firstFire.transient');
    expect(readOne(watched.fork(), 157, 18).reply('yes').context.done).toContain('firstFire.transient');
  });
});
