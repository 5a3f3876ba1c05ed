import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../machines/context.ts';
import type { Code } from '../../../src/record/vocabulary/event.ts';
import { type Around, OneStep, stepOf } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;

/** By demo-six: 100/1 blocks, 157/18 is watched for a minute, 97/15 may go on, 5000/7 is not in the profile. */
const BLOCKS: Code = { spn: 100, fmi: 1 };
const WATCHED: Code = { spn: 157, fmi: 18 };
const MAY_GO_ON: Code = { spn: 97, fmi: 15 };
const UNKNOWN: Code = { spn: 5000, fmi: 7 };

const asked = (context: Around['context'] = {}) => new OneStep(stepOf('faults', 'keyOn.faults'), { context });

/** One code, number by number, up to its read-back. */
const spelled = (step: OneStep, { spn, fmi }: Code) =>
  step.reply('readACode').value('suspectParameter', spn).value('failureMode', fmi);

const shown = (step: OneStep, codes: readonly Code[], via: 'bus' | 'keys' = 'bus') =>
  step.fork().send({ type: 'codes', codes }, { via });

const seen = (code: Code, seenMs = 0): Fault => ({ ...code, seenMs });

describe('fault codes', () => {
  it('are asked for, none or one, of whoever reads them; the bus may give them all', () => {
    const step = asked();
    expect(step.offer).toEqual({
      by: 'technician',
      replies: ['noCodes', 'readACode', 'notYet'],
      measures: 'codes',
      awaits: 'codes',
    });
    expect(step.isCritical).toBe(false);
  });

  it('none, are read back by voice, and count by keys', () => {
    const spoken = asked().reply('noCodes');
    expect(spoken.name).toBe('readingBack');
    expect(spoken.isCritical).toBe(false);
    expect(spoken.offer.by).toBe('technician');
    expect(spoken.fork().reply('no').name).toBe('asking');
    expect(spoken.reply('yes').name).toBe('next');
    expect(asked().reply('noCodes', KEYS).name).toBe('next');
  });

  it('are read in two numbers, each by its question', () => {
    const spn = asked().reply('readACode');
    expect(spn.said.at(-1)).toMatchObject({ line: 'codeSpn', values: {} });
    expect(spn.offer).toEqual({
      by: 'technician',
      replies: ['notYet'],
      quantity: 'suspectParameter',
      awaits: 'spn',
    });
    const fmi = spn.fork().value('suspectParameter', 157);
    expect(fmi.context.spokenSpn).toBe(157);
    expect(fmi.said.at(-1)).toMatchObject({ line: 'codeFmi', values: {} });
    expect(fmi.offer).toEqual({
      by: 'technician',
      replies: ['notYet'],
      quantity: 'failureMode',
      awaits: 'fmi',
    });
    const back = fmi.value('failureMode', 18);
    expect(back.said).toMatchObject([{ line: 'readBackCode', values: { spn: { digits: 157 }, fmi: 18 } }]);
    expect(back.offer).toMatchObject({ by: 'technician', corrects: 'failureMode' });
    expect(back.fork().reply('no').name).toBe('spn');
    expect(back.fork().value('failureMode', 3).name).toBe('spn');
    back.unclear(2).reply('yes');
    expect(back.name).toBe('another');
    expect(back.context).toMatchObject({ misheard: 0, spokenSpn: null, faults: [{ spn: 157, fmi: 18 }] });
  });

  it.each([
    [WATCHED, 'codeWatch', 'watch', 60],
    [MAY_GO_ON, 'codeGoOn', 'mayGoOn', 0],
    [UNKNOWN, 'codeUnknown', 'blocks', 0],
    [BLOCKS, 'codeBlocks', 'blocks', 0],
  ] as const)('%o are told as %s, and go on the record', (code, line, decision, si) => {
    const step = spelled(asked(), code).reply('yes');
    expect(step.said[0]).toMatchObject({
      line,
      values: { ...code, meaning: { failureMode: code.fmi }, time: { unit: 's', si } },
    });
    expect(step.notes).toMatchObject([
      { kind: 'faults', data: { step: 'keyOn.faults', faults: [{ ...code, decision }] } },
    ]);
  });

  it('may be more than one: the last is confirmed as there being no more', () => {
    const step = spelled(asked(), WATCHED).reply('yes');
    expect(step.offer).toMatchObject({
      by: 'technician',
      replies: ['readACode', 'noMoreCodes', 'notYet'],
      awaits: 'anotherCode',
    });
    const last = step.fork().reply('noMoreCodes');
    expect(last.name).toBe('lastReadBack');
    expect(last.fork().reply('no').name).toBe('another');
    expect(last.reply('yes').name).toBe('next');
    expect(step.fork().reply('noMoreCodes', KEYS).name).toBe('next');
    expect(spelled(step.fork(), MAY_GO_ON).reply('yes').context.faults).toMatchObject([WATCHED, MAY_GO_ON]);
    const twice = spelled(step.fork(), WATCHED).reply('yes');
    expect(twice.context.faults).toHaveLength(1);
  });
});

describe('codes of a round before', () => {
  it('keep the time at which they were first seen, and others are new', () => {
    const step = asked({ faults: [seen(WATCHED, 5)] });
    expect(step.context).toMatchObject({ faults: [], earlierFaults: [seen(WATCHED, 5)] });
    spelled(step, WATCHED).reply('yes');
    expect(step.context.faults).toEqual([seen(WATCHED, 5)]);
    spelled(step, MAY_GO_ON).reply('yes');
    expect(step.context.faults).toEqual([seen(WATCHED, 5), seen(MAY_GO_ON, step.nowMs)]);
  });

  it('that was broken off are those of the round before it, too', () => {
    const step = asked({ faults: [seen(WATCHED, 5)], earlierFaults: [seen(WATCHED, 3), seen(MAY_GO_ON, 3)] });
    expect(step.context.earlierFaults).toEqual([seen(WATCHED, 5), seen(MAY_GO_ON, 3)]);
  });

  it('are forgotten with the end of the round', () => {
    for (const step of [
      asked({ faults: [seen(WATCHED)] }).reply('noCodes', KEYS),
      asked({ faults: [seen(WATCHED)] })
        .reply('noCodes')
        .reply('yes'),
    ])
      expect(step.context.earlierFaults).toEqual([]);
  });

  const done = ['firstFire.transient', 'firstFire.warningLamp', 'firstFire.eyes'] as const;

  it('have been watched; a new one has its own watch, and its own lamp', () => {
    const again = spelled(asked({ faults: [seen(WATCHED)], done }), WATCHED).reply('yes');
    expect(again.context.done).toEqual(done);
    expect(spelled(asked({ done }), WATCHED).reply('yes').context.done).toEqual(['firstFire.eyes']);
    expect(shown(asked({ done }), [WATCHED]).context.done).toEqual(['firstFire.eyes']);
    const known = shown(asked({ faults: [seen(WATCHED, 5)], done }), [WATCHED]);
    expect(known.context.done).toEqual(done);
    expect(known.context.faults).toEqual([seen(WATCHED, 5)]);
  });
});

describe('codes of the bus', () => {
  it('are read back all at once, and judged', () => {
    const step = shown(asked(), [WATCHED, MAY_GO_ON]);
    expect(step.name).toBe('busReadBack');
    expect(step.said).toMatchObject([
      { line: 'readBackBusCodes', values: { codes: { list: [{ code: WATCHED }, { code: MAY_GO_ON }] } } },
    ]);
    expect(step.offer).toMatchObject({ by: 'technician', replies: ['yes', 'no'] });
    expect(step.fork().reply('no').name).toBe('asking');
    step.reply('yes');
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([{ kind: 'faults' }, { kind: 'passed' }]);
    expect(step.context.earlierFaults).toEqual([]);
    const none = shown(asked(), []);
    expect(none.lines).toEqual(['readBackBusNoCodes']);
    expect(none.reply('yes').name).toBe('next');
  });

  it('count only from the bus, and where nothing was misunderstood', () => {
    expect(shown(asked(), [WATCHED], 'keys').name).toBe('asking');
    expect(shown(asked().unclear(), [WATCHED]).name).toBe('asking');
    const { bus, ...without } = demoSix;
    expect(bus).toBeDefined();
    expect(shown(new OneStep(stepOf('faults', 'keyOn.faults'), { profile: without }), [WATCHED]).name).toBe(
      'asking',
    );
  });

  it('that were not read are held against "none" and "no more", whoever says so', () => {
    for (const via of ['voice', 'keys'] as const) {
      const none = asked().reply('noCodes', { via, bus: { codes: [WATCHED] } });
      expect(none.name).toBe('busReadBack');
      expect(none.notes).toEqual([
        { kind: 'disagreement', data: { step: 'keyOn.faults', spoken: 'noCodes', bus: [WATCHED] } },
      ]);
      expect(none.context.faults).toMatchObject([WATCHED]);
      const more = spelled(asked(), WATCHED)
        .reply('yes')
        .reply('noMoreCodes', { via, bus: { codes: [WATCHED, BLOCKS] } });
      expect(more.name).toBe('busReadBack');
      expect(more.notes).toMatchObject([{ kind: 'disagreement', data: { spoken: 'noMoreCodes' } }]);
      expect(more.context.faults).toMatchObject([WATCHED, BLOCKS]);
    }
  });

  it('that were all read, or are none, hold nothing up', () => {
    for (const bus of [{ codes: [] }, {}])
      expect(asked().reply('noCodes', { ...KEYS, bus }).name).toBe('next');
    const read = spelled(asked(), WATCHED).reply('yes');
    expect(read.reply('noMoreCodes', { ...KEYS, bus: { codes: [WATCHED] } }).name).toBe('next');
  });
});

describe('a code that may not stand', () => {
  const blocked = (...codes: readonly Code[]) => shown(asked(), codes).reply('yes');

  it('holds its gate shut until it has been repaired and read again', () => {
    const step = blocked(BLOCKS, MAY_GO_ON);
    expect(step.name).toBe('blocked');
    expect(step.said).toMatchObject([
      { line: 'blockingFault', values: { fault: { list: [{ code: BLOCKS }] } } },
    ]);
    expect(step.offer).toEqual({ by: 'technician', replies: ['ready', 'acceptFault'], awaits: 'repair' });
    expect(step.context.done).toEqual([]);
    const again = step.fork().unclear(2).reply('ready');
    expect(again.name).toBe('asking');
    expect(again.context).toMatchObject({ misheard: 0, faults: [] });
    expect(step.fork().unclear(3).reply('ready').name).toBe('blocked');
    expect(step.fork().unclear().said).toMatchObject([{ line: 'blockingFault', prefix: 'unclear' }]);
  });

  it('that the profile knows is accepted by nobody', () => {
    expect(blocked(BLOCKS).reply('acceptFault').name).toBe('blocked');
  });

  const accepting = () => blocked(UNKNOWN).unclear(2).reply('acceptFault');

  it('that is unknown is accepted by the supervisor, with a reason that is read back', () => {
    const step = accepting();
    expect(step.name).toBe('accepting');
    expect(step.context.misheard).toBe(0);
    expect(step.offer).toMatchObject({ by: 'supervisor', freeText: true });
    expect(step.isCritical).toBe(false);
    for (const by of ['technician', 'second'] as const) {
      expect(step.fork().reply('reasonNotFitted', { by }).lines).toEqual(['onlySupervisor']);
      const back = step.fork().reply('reasonNotFitted').reply('yes', { by });
      expect(back.name).toBe('acceptReadBack');
    }
    const back = step.reply('reasonNotFitted');
    expect(back.name).toBe('acceptReadBack');
    expect(back.isCritical).toBe(false);
    expect(back.fork().reply('no').name).toBe('accepting');
    back.reply('yes');
    expect(back.name).toBe('next');
    expect(back.context.faults).toMatchObject([{ ...UNKNOWN, accepted: 'reasonNotFitted' }]);
    expect(back.notes).toMatchObject([
      { kind: 'faults', data: { faults: [{ accepted: 'reasonNotFitted' }] } },
      { kind: 'passed' },
    ]);
  });

  it('is accepted in words as well: two at least, or a long one, and only the supervisor’s', () => {
    const says = (text: string, by: 'technician' | 'supervisor' = 'supervisor') =>
      accepting().send({ type: 'reason', text }, { by, via: 'keys' });
    for (const text of ['not fitted', 'plugged', 'of us']) {
      expect(says(text).name).toBe('next');
      expect(says(text).context.faults).toMatchObject([{ accepted: text }]);
    }
    for (const text of ['', 'no', '120', '12 34', 'a b', 'plugin']) {
      expect(says(text).name).toBe('accepting');
      expect(says(text).lines).toEqual(['noReason']);
    }
    expect(says('not fitted', 'technician').lines).toEqual(['onlySupervisor']);
  });

  it('beside an unknown one still blocks when that has been accepted', () => {
    const step = shown(asked(), [UNKNOWN, BLOCKS]).reply('yes').reply('acceptFault').reply('reasonNotFitted');
    step.reply('yes');
    expect(step.name).toBe('blocked');
    expect(step.context.faults).toMatchObject([{ accepted: 'reasonNotFitted' }, BLOCKS]);
    expect(step.context.faults[1]).not.toHaveProperty('accepted');
  });
});

describe('a code that may not stand beside a running engine', () => {
  const running = () => new OneStep(stepOf('faults', 'sweeps.faults'));

  it('stops it as soon as it has been read back, and nobody is sent to repair it', () => {
    const step = spelled(running(), BLOCKS).reply('yes');
    expect(step.name).toBe('stopped');
    expect(step.context.stop).toMatchObject({ cause: 'faultCode', step: 'sweeps.faults' });
    expect(step.lines).toEqual(['codeBlocks']);
    expect(step.notes).toMatchObject([
      { kind: 'faults', data: { faults: [{ ...BLOCKS, decision: 'blocks' }] } },
    ]);
    expect(spelled(running(), { spn: 157.5, fmi: 3 }).reply('yes').name).toBe('stopped');
  });

  it('stops it where the bus shows it and somebody agrees', () => {
    const step = shown(running(), [MAY_GO_ON, BLOCKS]);
    expect(step.name).toBe('busReadBack');
    expect(step.fork().reply('no').name).toBe('asking');
    expect(step.reply('yes').context.stop).toMatchObject({ cause: 'faultCode' });
  });

  it('stops it where it was watched and its time is up', () => {
    const context = { done: ['firstFire.crank'], earlierFaults: [seen(WATCHED)] } as const;
    const read = (afterS: number) => {
      const step = new OneStep(stepOf('faults', 'sweeps.faults'), {
        context: {
          ...context,
          faults: [seen(WATCHED)],
          bursts: [{ step: 'firstFire.crank', startMs: 0, endMs: 0 }],
        },
        beginsS: afterS,
      });
      return spelled(step, WATCHED).reply('yes');
    };
    expect(read(30).name).toBe('another');
    expect(read(60).context.stop).toMatchObject({ cause: 'faultCode' });
  });

  it('waits for the supervisor where the profile does not know it, and hands stay off meanwhile', () => {
    const step = spelled(running(), UNKNOWN).reply('yes').reply('noMoreCodes', KEYS);
    expect(step.name).toBe('blocked');
    expect(step.said).toMatchObject([
      { line: 'unknownRunning', values: { fault: { list: [{ code: UNKNOWN }] } } },
    ]);
    expect(step.fork().reply('ready').name).toBe('asking');
    expect(step.reply('acceptFault').reply('reasonNotFitted', KEYS).reply('yes', KEYS).name).toBe('next');
    // Beside one that blocks it is not waited for.
    expect(shown(running(), [UNKNOWN, BLOCKS]).reply('yes').name).toBe('stopped');
  });

  it('that may stand for a while, or for good, lets the codes be read on', () => {
    for (const code of [WATCHED, MAY_GO_ON, UNKNOWN])
      expect(spelled(running(), code).reply('yes').name).toBe('another');
  });
});
