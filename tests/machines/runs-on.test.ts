import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { ReplyId } from '../../prompts/types.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import type { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const running = () => sessionAt(demoSix, 'warmUp.watch.between');
const cranking = () => sessionAt(demoSix, 'firstFire.crank.cranking');

/** The hazards of the last event, by their lines. */
const hazards = ({ last }: Driver) =>
  last.said.filter(({ priority }) => priority === 'hazard').map(({ line }) => line);
/** What a line of the last event says of the cut-off. */
const cut = ({ last }: Driver, line: string) => last.said.find(said => said.line === line)?.values.cut;

const reopened = (driver: Driver): readonly string[] =>
  driver.notes.flatMap(({ kind, data }) => (kind === 'reopened' ? data.steps : []));

describe('an engine that the key does not stop', () => {
  it('is answered, as a hazard, with what cuts it and its air, and "all is off" is asked again', () => {
    const driver = running().stop().reply('stillRunning');
    expect(driver.name).toBe('stopped.makingSafe');
    expect(hazards(driver)).toEqual(['stillRunning']);
    expect(driver.lines.at(-1)).toBe('areAllOff');
    expect(cut(driver, 'stillRunning')).toEqual({ line: 'cutKnown', values: {} });
  });

  it('names the cut-off of its profile, where it has one', () => {
    const driver = sessionAt(demoBoat, 'firstFire.eyes.item1').stop().reply('stillRunning');
    const at = demoBoat.cutOff?.at ?? '';
    expect(at).not.toBe('');
    expect(cut(driver, 'stillRunning')).toEqual({ line: 'cutAt', values: { at } });
  });

  it('may be said by anybody, however much was misheard before, and while "all is off" is read back', () => {
    const deaf = running().stop();
    for (let nth = 0; nth < 4; nth += 1) deaf.send({ type: 'unclear' });
    expect(hazards(deaf.reply('stillRunning', { by: 'technician', via: 'voice' }))).toEqual(['stillRunning']);
    const readBack = running().stop().reply('allOff');
    expect(readBack.name).toBe('stopped.makingSafeReadBack');
    expect(hazards(readBack.reply('stillRunning', { by: 'second' }))).toEqual(['stillRunning']);
    expect(readBack.name).toBe('stopped.makingSafe');
  });

  it('while the starter turns it, is a starter that will not let go: battery first', () => {
    const driver = cranking().stop().reply('stillRunning');
    expect(hazards(driver)).toEqual(['starterHangs']);
  });

  it('is not started again on any cause that is named for it before its cut-off was looked at', () => {
    const driver = running().stop().reply('stillRunning').reply('allOff').reply('yes');
    driver.reply('causeFalseAlarm').reply('yes');
    expect(driver.name).toBe('stopped.reopened');
    for (const step of ['job.cutOff', 'walkRound.boots', 'noFuelCrank.untilPressure'])
      expect(reopened(driver)).toContain(step);
    const ranOff = running().stop().reply('allOff').reply('yes').reply('causeFalseAlarm').reply('yes');
    expect(reopened(ranOff)).not.toContain('job.cutOff');
  });

  it('said to stand while the bus or the ear has it turning, is answered with its cut-off as well', () => {
    const off: EventBody = { type: 'reply', id: 'allOff' };
    const byBus = running()
      .stop()
      .send({ ...off, bus: { speedRpm: 700 } });
    const byEar = running()
      .stop()
      .send({ ...off, ear: { speedRpm: 700 } });
    expect(hazards(byBus)).toEqual(['stillTurns']);
    expect(hazards(byEar)).toEqual(['heardTurning']);
    for (const [driver, line] of [
      [byBus, 'stillTurns'],
      [byEar, 'heardTurning'],
    ] as const) {
      expect(cut(driver, line)).toEqual({ line: 'cutKnown', values: {} });
      expect(driver.name).toBe('stopped.makingSafe');
    }
  });

  it('that ran away hears its cut-off in the first sentence', () => {
    const driver = running().send({ type: 'stop', cause: 'overspeed' }, { via: 'bus' });
    expect(driver.last.said[0]).toMatchObject({ line: 'stopCauseCut', priority: 'hazard' });
    const keyOff = sessionAt(demoSix, 'shutdown.keyOff.asking').reply('stillRunning');
    expect(keyOff.last.said[0]).toMatchObject({ line: 'stopCauseCut', priority: 'hazard' });
  });

  it.each([
    [2999, 'stopHeard'],
    [3000, 'stopHeardCut'],
  ])('called stop at once more after %d ms answers %s', (afterMs, line) => {
    const driver = running().stop().stop({ afterMs, by: 'second' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(hazards(driver)).toEqual([line]);
  });

  it('is not what the bus insists on, nor a stop beside an engine that stood', () => {
    expect(hazards(running().stop().send({ type: 'stop' }, { via: 'bus', afterMs: 9000 }))).toEqual([
      'stopHeard',
    ]);
    expect(hazards(sessionAt(demoSix, 'walkRound.tools.asking').stop().stop({ afterMs: 9000 }))).toEqual([
      'stopHeard',
    ]);
  });

  it('gets no "I wait" for "not yet": key off, as a hazard', () => {
    const driver = running().stop().reply('notYet');
    expect(hazards(driver)).toEqual(['notOffYet']);
    expect(driver.lines).not.toContain('notYet');
    expect(driver.name).toBe('stopped.makingSafe');
  });

  it('is asked for beside every stop, with stop itself ahead of everything still', () => {
    for (const step of ['warmUp.watch.between', 'walkRound.tools.asking'])
      expect(offerOf(sessionAt(demoSix, step).stop().moment).replies[0]).toBe('allOff');
    const driver = running().stop().reply('stillRunning').reply('causeSomeoneHurt').stop();
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.last.said[0]?.priority).toBe('hazard');
  });
});

describe('fire and injury', () => {
  const calls: readonly (readonly [ReplyId, string, 'smokeOrFire' | 'someoneHurt'])[] = [
    ['causeSmokeOrFire', 'fireCall', 'smokeOrFire'],
    ['causeSomeoneHurt', 'surgery', 'someoneHurt'],
  ];

  it.each(calls)('%s is taken before all is off: help first, then everything off', (reply, line, cause) => {
    const driver = running().stop().reply(reply);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(hazards(driver)).toEqual([line]);
    expect(driver.lines.at(-1)).toBe('areAllOff');
    expect(driver.context.stop?.cause).toBe(cause);
    // It opens nothing: all off, and the cause, are confirmed as ever.
    expect(driver.reply('allOff').reply('yes').name).toBe('stopped.causeReadBack');
    expect(driver.fork().reply('no').name).toBe('stopped.askingCause');
  });

  it.each(calls)('%s is taken while "all is off" is read back', (reply, line) => {
    const driver = running().stop().reply('allOff').reply(reply);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(hazards(driver)).toEqual([line]);
  });

  it.each(calls)('%s as the cause calls for help before it is read back', (reply, line) => {
    const driver = running().stop().reply('allOff').reply('yes').reply(reply);
    expect(driver.name).toBe('stopped.causeReadBack');
    expect(hazards(driver)).toEqual([line]);
  });

  it.each(calls)('%s, known as everything stops, calls for help in the same breath', (_, line, cause) => {
    expect(hazards(running().send({ type: 'stop', cause }, { via: 'bus' }))).toEqual(['stopCause', line]);
  });

  it.each(calls)(
    '%s, called out as a stop wherever the stop has got to, starts it anew',
    (_, line, cause) => {
      const places = [
        running().stop(),
        running().stop().reply('allOff'),
        running().stop().reply('allOff').reply('yes'),
        running().stop().reply('allOff').reply('yes').reply('causeOilLeak'),
        running().stop().reply('allOff').reply('yes').reply('causeOilLeak').reply('yes'),
      ];
      expect(places.map(({ name }) => name)).toEqual([
        'stopped.makingSafe',
        'stopped.makingSafeReadBack',
        'stopped.askingCause',
        'stopped.causeReadBack',
        'stopped.reopened',
      ]);
      for (const driver of places) {
        driver.send({ type: 'stop', cause }, { by: 'second', via: 'touch', afterMs: 9000 });
        expect(driver.name).toBe('stopped.makingSafe');
        // What it was for is no call for it once more: the key is not said to have failed.
        expect(hazards(driver)).toEqual(['stopCause', line]);
        expect(driver.context.stop?.cause).toBe(cause);
        expect(driver.reply('allOff').reply('yes').name).toBe('stopped.causeReadBack');
      }
      expect(places.map(({ context }) => context.stop?.also)).toEqual([[], [], [], ['oilLeak'], ['oilLeak']]);
    },
  );

  it.each(calls)('%s calls for help in a stop that began because nobody answered', (_, line, cause) => {
    const silent = sessionAt(demoSix, 'checks.leaks.item1');
    for (let minute = 1; minute <= 5; minute += 1) silent.clock(60_000);
    expect(silent.context.stop?.lateAfterS).toBe(300);
    silent.send({ type: 'stop', cause }, { by: 'second', via: 'touch', afterMs: 2000 });
    expect(hazards(silent)).toEqual(['stopCause', line]);
  });

  it.each(calls)(
    '%s beside an engine that runs away leaves its cut-off in what is called out',
    (_, line, cause) => {
      const driver = running().send({ type: 'stop', cause: 'overspeed' }, { via: 'bus' });
      driver.send({ type: 'stop', cause }, { by: 'second', via: 'touch', afterMs: 2000 });
      expect(hazards(driver)).toEqual(['stopCauseCut', line]);
      expect(cut(driver, 'stopCauseCut')).toEqual({ line: 'cutKnown', values: {} });
      driver.stop({ by: 'technician' });
      expect(hazards(driver)[0]).toBe('stopCauseCut');
    },
  );

  it.each(calls)(
    '%s, called by the second person, counts whatever cause the technician names',
    (_, __, cause) => {
      const named = running()
        .send({ type: 'stop', cause }, { by: 'second', via: 'touch' })
        .reply('allOff')
        .reply('yes')
        .reply('no')
        .reply('causeOther')
        .reply('yes');
      expect(named.name).toBe('stopped.reopened');
      expect(named.context.stop).toMatchObject({ cause: 'other', also: [cause] });
    },
  );

  it.each(calls)('%s is no stop word that is tried out', (_, line, cause) => {
    for (const place of ['job.stopTechnician.asking', 'stopped.drillGoesOn']) {
      const driver = sessionAt(demoSix, place);
      driver.send({ type: 'stop', cause }, { by: 'second', via: 'touch', afterMs: 100 });
      expect(driver.name).toBe('stopped.makingSafe');
      expect(hazards(driver)).toEqual(['stopCause', line]);
    }
  });

  it('does not undo the cause that was known before: both are put right', () => {
    const driver = running()
      .send({ type: 'stop', cause: 'oilLeak' }, { via: 'bus' })
      .reply('causeSomeoneHurt')
      .reply('allOff')
      .reply('yes')
      .reply('yes');
    for (const step of ['fill.oilLevel', 'job.protection']) expect(reopened(driver)).toContain(step);
  });
});

describe('a stop that the second person called', () => {
  const called = () =>
    sessionAt(demoFour, 'sweeps.first.asking').stop({ by: 'second' }).reply('allOff').reply('yes');

  it('is taken back as a false alarm by them alone', () => {
    const driver = called().reply('causeFalseAlarm', { by: 'technician' });
    expect(driver.name).toBe('stopped.askingCaller');
    expect(offerOf(driver.moment).by).toBe('second');
    for (const via of ['voice', 'keys', 'touch'] as const) {
      const refused = driver.fork().reply('causeFalseAlarm', { by: 'technician', via });
      expect(refused.name).toBe('stopped.askingCaller');
      expect(refused.lines).toContain('onlyCaller');
    }
    driver.reply('causeFalseAlarm', { by: 'second' });
    expect(driver.name).toBe('stopped.callerReadBack');
    expect(driver.fork().reply('yes', { by: 'technician' }).name).toBe('stopped.callerReadBack');
    expect(driver.reply('yes', { by: 'second' }).name).toBe('stopped.reopened');
  });

  it('counts by the keys of the second person at once', () => {
    const driver = called().reply('causeFalseAlarm', { by: 'second', via: 'touch' });
    expect(driver.name).toBe('stopped.reopened');
  });

  it('denied by them is no false alarm: its cause is asked', () => {
    const driver = called().reply('causeFalseAlarm').reply('no', { by: 'second' });
    expect(driver.name).toBe('stopped.askingCause');
    expect(driver.reply('causeOilLeak').reply('yes').name).toBe('stopped.reopened');
  });

  it('stays theirs where the technician calls stop after them, and becomes theirs where they call it after him', () => {
    const first = sessionAt(demoFour, 'sweeps.first.asking')
      .stop({ by: 'second' })
      .stop({ by: 'technician' });
    const then = sessionAt(demoFour, 'sweeps.first.asking').stop({ by: 'technician' }).stop({ by: 'second' });
    for (const driver of [first, then])
      expect(driver.reply('allOff').reply('yes').reply('causeFalseAlarm').name).toBe('stopped.askingCaller');
  });

  it('is another thing than one that the technician called', () => {
    const driver = sessionAt(demoFour, 'sweeps.first.asking').stop({ by: 'technician' });
    driver.reply('allOff').reply('yes').reply('causeFalseAlarm');
    expect(driver.name).toBe('stopped.causeReadBack');
  });
});
