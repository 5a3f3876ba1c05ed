import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { offerOf } from '../../machines/moment.ts';
import { gateMet } from '../../machines/progress.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import { english } from '../../prompts/en/index.ts';
import type { StepId } from '../../prompts/types.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

/** What a practitioner asks of a start that is gone on with: nobody is led back to a starter that would break something. */

/** Stopped, all off, and the cause confirmed. */
const stoppedFor = (driver: Driver, cause: Cause) =>
  driver
    .send({ type: 'stop', cause })
    .reply('allOff')
    .reply('yes')
    .goodUntil('stopped.causeReadBack')
    .reply('yes');
const goOn = (driver: Driver) => driver.reply('ready').reply('yes');
const running = () => sessionAt(demoSix, 'warmUp.watch.between');
const reopened = (driver: Driver): readonly StepId[] =>
  driver.notes.findLast(ofKind('reopened'))?.data.steps ?? [];
const hazards = (driver: Driver) =>
  driver.last.said.filter(({ priority }) => priority === 'hazard').map(({ line }) => line);

describe('white smoke that stays', () => {
  const smoke = () => {
    const driver = sessionAt(demoSix, 'checks.leaks.item6');
    const firedMs = driver.context.runsSinceMs ?? Number.NaN;
    driver.nowMs = Math.max(driver.nowMs, firedMs + 301_000);
    return driver.reply('whiteSmoke');
  };

  it('stops for coolant in a cylinder, and says that the starter is not to turn it', () => {
    const stopped = smoke();
    expect(stopped.context.stop).toMatchObject({ cause: 'coolantInCylinder', found: 'coolantInCylinder' });
    stopped.reply('allOff').reply('yes').reply('yes');
    expect(hazards(stopped)).toEqual(['hydraulicLock']);
  });

  it.each(['coolantInCylinder', 'falseAlarm'] as const)(
    'leads by the dipstick and the bar before any starter, even where it is then called %s',
    cause => {
      const stopped = smoke().reply('allOff').reply('yes');
      if (cause === 'falseAlarm') stopped.reply('no').reply('causeFalseAlarm', { by: 'second' });
      stopped.reply('yes');
      const list = reopened(stopped);
      expect(list).toEqual(
        expect.arrayContaining([
          ...(['fill.coolantFilled', 'fill.oilLevel', 'walkRound.tools'] as const),
          ...(['barOver.isolated', 'barOver.turned', 'barOver.toolOut'] as const),
          ...(['noFuelCrank.disabled', 'noFuelCrank.untilPressure', 'noFuelCrank.oilLevel'] as const),
        ]),
      );
      goOn(stopped).goodUntil('firstFire.crank.cranking');
      const passed = stopped.notes.flatMap(({ kind, data }) => (kind === 'passed' ? [data.step] : []));
      const after = passed.slice(passed.lastIndexOf('fill.coolantCool'));
      const order = [
        'fill.coolantCool',
        'fill.coolantFilled',
        'fill.oilLevel',
        'barOver.turned',
        'noFuelCrank.holds',
      ];
      expect(after.filter(id => order.includes(id))).toEqual(order);
    },
  );

  it('with oil that has risen ends the start at the dipstick', () => {
    const stopped = goOn(smoke().reply('allOff').reply('yes').reply('yes')).goodUntil(
      'fill.oilLevel.dipstick',
    );
    expect(stopped.reply('levelRisen').reply('yes').name).toBe('ended');
  });
});

describe('knocking', () => {
  it('that was misheard, and denied at its read-back, does not end the engine with the session', () => {
    const denied = sessionAt(demoSix, 'checks.leaks.item5')
      .stop()
      .reply('allOff')
      .reply('yes')
      .reply('causeKnocking')
      .reply('no');
    expect(denied.context.stop?.cause).toBeNull();
    const ended = denied.reply('endSession').reply('yes');
    expect(ended.name).toBe('ended');
    expect(ended.lines).not.toContain('endedBarred');
    expect(ended.notes.some(({ kind }) => kind === 'barred')).toBe(false);
  });

  const knocks = () => sessionAt(demoSix, 'checks.leaks.item5').reply('knocking');

  it('stops with a cause of its own', () => {
    expect(knocks().context.stop).toMatchObject({ cause: 'knocking', found: 'knocking' });
  });

  it.each(['voice', 'keys'] as const)('confirmed by %s ends the start, and the record says why', via => {
    const ending = knocks().reply('allOff', { via: 'keys' });
    expect(ending.name).toBe('stopped.causeReadBack');
    ending.reply('yes', { via });
    expect(ending.name).toBe('ended');
    expect(hazards(ending)).toContain('knockingEnds');
    // What was repaired and released is another start.
    expect(ending.lines.at(-1)).toBe('endedBarred');
    expect(ending.last.notes).toContainEqual({
      kind: 'barred',
      data: { step: 'checks.leaks', why: 'knockingEnds' },
    });
  });

  it('named as the cause of a stop by keys is still confirmed before it ends anything', () => {
    const asked = running().stop().reply('allOff').reply('yes').reply('causeKnocking', { via: 'keys' });
    expect(asked.name).toBe('stopped.causeReadBack');
    expect(asked.fork().reply('no').name).toBe('stopped.askingCause');
    expect(asked.reply('yes').name).toBe('ended');
  });

  it('denied as misheard is looked for all the same', () => {
    const denied = knocks()
      .reply('allOff')
      .reply('yes')
      .reply('no')
      .reply('causeFalseAlarm', { by: 'second' })
      .reply('yes');
    expect(reopened(denied)).toEqual(
      expect.arrayContaining(['walkRound.hoses', 'barOver.turned', 'noFuelCrank.holds']),
    );
  });

  it('heard before a fire is named ends the start as well', () => {
    const both = knocks().reply('causeSmokeOrFire').reply('allOff').reply('yes').reply('yes');
    expect(both.name).toBe('ended');
    expect(both.lines.at(-1)).toBe('endedBarred');
  });

  it('is all that a release is asked for', () => {
    const given = running().stop().reply('allOff').reply('yes').reply('endSession').reply('yes');
    expect(given.lines.at(-1)).toBe('ended');
  });
});

describe('coolant that is touched again', () => {
  it.each(['coolantLeak', 'overheating', 'coolantInCylinder'] as const)(
    'after a stop of a running engine for %s waits for a temperature first',
    cause => {
      const driver = goOn(stoppedFor(running(), cause));
      expect(driver.name).toBe('fill.coolantCool.asking');
    },
  );

  it.each([
    [50, false],
    [50.1, true],
  ])('is touched at %d degrees: %s that it waits', (si, waits) => {
    const profile = { ...demoSix, shutdown: { ...demoSix.shutdown, safeToOpenC: 50 } };
    const driver = goOn(stoppedFor(sessionAt(profile, 'checks.charging.asking'), 'coolantLeak'));
    driver.value('coolantTemperature', si, { afterMs: 4 * 3_600_000 }).reply('yes');
    if (!waits) driver.ring().value('coolantTemperature', si).reply('yes');
    expect(driver.context.done.includes('fill.coolantCool')).toBe(!waits);
    expect(driver.name).toBe(waits ? 'fill.coolantCool.asking' : 'fill.coolantFilled.checking');
    if (waits) expect(driver.lines).toContain('notCoolYet');
  });

  it.each([
    [1800, 'sweeps.third.asking', true],
    [1799, 'sweeps.third.asking', false],
    // It has never run.
    [1800, 'noFuelCrank.disabled.asking', false],
  ] as const)(
    'by whoever measures its freeze point, %d s away at %s, waits for a temperature: %s',
    (awayS, place, waits) => {
      const driver = sessionAt(demoSix, place);
      driver.send({ type: 'stop', cause: 'toolRestarted', awayS }, { via: 'tool' });
      driver.reply('allOff').reply('yes').goodUntil('stopped.reopened');
      const from = driver.history.length;
      goOn(driver).goodUntil(({ context: { step } }) => /^(walkRound|noFuelCrank)/.test(step));
      const asked = new Set(driver.history.slice(from).map(({ after }) => after.context.step));
      expect(asked.has('fill.coolantCool')).toBe(waits);
      expect(asked.has('fill.coolantFreezePoint')).toBe(awayS >= 1800);
      if (waits)
        expect([...asked].indexOf('fill.coolantCool')).toBeLessThan(
          [...asked].indexOf('fill.coolantFreezePoint'),
        );
    },
  );

  it('is found cool once more where it was, and has been left alone for long since', () => {
    const driver = goOn(stoppedFor(sessionAt(demoSix, 'sweeps.third.asking'), 'coolantLeak'));
    driver.goodUntil(({ context }) => context.step === 'walkRound.hoses');
    expect(driver.context.done).toContain('fill.coolantCool');
    driver.send({ type: 'stop', cause: 'toolRestarted', awayS: 7200 }, { via: 'tool' });
    driver.reply('allOff').reply('yes').goodUntil('stopped.reopened');
    expect(driver.context.reopened).toContain('fill.coolantCool');
  });

  it('is not said to be cold minutes after it was hot', () => {
    const driver = running();
    const lastC =
      driver.context.readings.findLast(({ quantity }) => quantity === 'coolantTemperature')?.si ?? 0;
    const asked = goOn(stoppedFor(driver, 'coolantLeak'));
    expect(lastC).toBeLessThan(30);
    const hot = sessionAt(demoSix, 'sweeps.third.asking');
    goOn(stoppedFor(hot, 'coolantLeak')).value('coolantTemperature', 20, { afterMs: 120_000 });
    expect(hot.lines).toContain('doubted');
    expect(asked.value('coolantTemperature', lastC, { afterMs: 120_000 }).lines).not.toContain('doubted');
  });

  it.each(['fill.fuelInTank.asking', 'keyOn.lamps.item3'])(
    'before the engine ever fired, at %s, waits for nothing',
    place => {
      expect(goOn(stoppedFor(sessionAt(demoSix, place), 'coolantLeak')).name).toBe(
        'fill.coolantFilled.checking',
      );
    },
  );

  it('waits for nothing where the cause leaves it shut', () => {
    const driver = goOn(stoppedFor(running(), 'faultCode')).goodUntil('keyOn.lamps.item1');
    expect(driver.context.done).not.toContain('fill.coolantCool');
    expect(gateMet(procedureFor(demoSix), driver.context, 'coolantReady')).toBe(true);
  });

  it('does not let a starter turn until it has been found cool', () => {
    const driver = goOn(stoppedFor(running(), 'coolantLeak'));
    expect(gateMet(procedureFor(demoSix), driver.context, 'coolantReady')).toBe(false);
    driver.goodUntil('keyOn.lamps.item1');
    expect(gateMet(procedureFor(demoSix), driver.context, 'coolantReady')).toBe(true);
  });

  it.each(['overheating', 'coolantLeak'] as const)(
    'on a boat has strainer, impeller and cock looked at, after %s',
    cause => {
      const boat = sessionAt(demoBoat, 'checks.charging.asking');
      expect(reopened(stoppedFor(boat, cause))).toContain('walkRound.strainer');
    },
  );
});

describe('whoever puts hands into the engine', () => {
  const causes = [
    ...([
      'coolantLeak',
      'oilLeak',
      'fuelLeak',
      'noOilPressure',
      'noStart',
      'overheating',
      'faultCode',
    ] as const),
    ...(['coolantInCylinder', 'overspeed', 'looseOrNoise', 'other', 'binds'] as const),
  ];

  it.each(causes)(
    'after %s is told to have key and battery off, and is asked for tools and starter again',
    cause => {
      const stopped = stoppedFor(running(), cause);
      const spoken = hazards(stopped);
      expect(
        spoken.some(line =>
          ['handsIn', 'hotCap', 'railHolds', 'hydraulicLock', 'noStartingFluid'].includes(line),
        ),
      ).toBe(true);
      expect(reopened(stopped)).toEqual(expect.arrayContaining(['walkRound.tools', 'barOver.toolOut']));
    },
  );

  it('is told nothing of the kind where nobody has to', () => {
    const stopped = stoppedFor(running(), 'falseAlarm');
    expect(hazards(stopped)).toEqual([]);
    expect(reopened(stopped)).not.toContain('walkRound.tools');
  });

  it.each([demoSix, demoFour])('after a lost oil pressure fills both oil feeds again', profile => {
    const stopped = stoppedFor(sessionAt(profile, 'checks.charging.asking'), 'noOilPressure');
    const feeds = (['barOver.prelube', 'barOver.turboFeed'] as const).filter(id =>
      procedureFor(profile).some(step => step.id === id),
    );
    expect(feeds.length).toBeGreaterThan(0);
    expect(reopened(stopped)).toEqual(expect.arrayContaining(['barOver.isolated', ...feeds]));
  });
});

describe('a program that was restarted', () => {
  const back = (driver: Driver, awayS?: number) =>
    driver
      .send(
        { type: 'stop', cause: 'toolRestarted', ...(awayS === undefined ? {} : { awayS }) },
        { via: 'tool' },
      )
      .reply('allOff')
      .reply('yes');
  const safety = [
    'job.protection',
    'job.ventilation',
    'job.extinguisher',
    'job.parked',
    'job.cutOff',
    'job.ambient',
  ];

  it.each([
    [0, false],
    [1799, false],
    [1800, true],
    [3 * 24 * 3600, true],
    [undefined, true],
  ])('after %d s away asks for people, chocks, weather and tools anew: %s', (awayS, anew) => {
    const list = reopened(back(running(), awayS).reply('yes'));
    expect(list).toEqual(
      expect.arrayContaining(['job.stopTechnician', 'job.stopSecond', 'noFuelCrank.holds']),
    );
    for (const id of [...safety, 'walkRound.tools', 'fill.oilGrade', 'fill.coolantFreezePoint'])
      expect(list.some(each => each === id)).toBe(anew);
  });

  it.each(['falseAlarm', 'oilLeak'] as const)(
    'within a stop counts beside its cause, though that is then called %s',
    cause => {
      const reply = cause === 'falseAlarm' ? 'causeFalseAlarm' : 'causeOilLeak';
      const stopped = back(running().stop().reply('allOff'), 60).reply(reply).reply('yes');
      expect(stopped.name).toBe('stopped.reopened');
      expect(reopened(stopped)).toEqual(
        expect.arrayContaining(['job.stopTechnician', 'job.stopSecond', 'noFuelCrank.untilPressure']),
      );
      if (cause === 'oilLeak') expect(reopened(stopped)).toContain('fill.oilLevel');
    },
  );

  it('stays long away, however short the next absence is', () => {
    const stopped = back(back(running(), 7200), 5).reply('yes');
    expect(reopened(stopped)).toEqual(expect.arrayContaining(safety));
  });

  it.each([
    [60, ['job.stopTechnician', 'job.stopSecond']],
    [4 * 3600, ['job.card', 'job.parked', 'job.ambient', 'job.figures', 'job.stopSecond']],
  ] as const)(
    '%d s after key-off asks for what keeps people safe, and for no second first fire',
    (awayS, some) => {
      const cooling = sessionAt(demoSix, 'signOff.cool.asking');
      const done = cooling.context.done;
      const stopped = back(cooling, awayS).reply('yes');
      expect(reopened(stopped)).toEqual(expect.arrayContaining([...some]));
      expect(reopened(stopped).filter(id => !id.startsWith('job.'))).toEqual([]);
      expect(stopped.context.done).toEqual(done.filter(id => !reopened(stopped).includes(id)));
      const end = goOn(stopped).goodToTheEnd();
      expect(end.name).toBe('signedOff');
      expect(end.context.bursts).toEqual(cooling.context.bursts);
    },
  );

  it('after key-off with a leak that was found meanwhile loses the run all the same', () => {
    const stopped = back(sessionAt(demoSix, 'signOff.cool.asking').stop().reply('allOff'), 60)
      .reply('causeCoolantLeak')
      .reply('yes');
    expect(reopened(stopped)).toEqual(expect.arrayContaining(['fill.coolantFilled', 'firstFire.crank']));
  });
});

describe('raw water, once the engine fires', () => {
  const fired = () => sessionAt(demoBoat, 'firstFire.crank.cranking').reply('fired');

  it('is announced before the crank, to whoever has a hand on the cock', () => {
    const asked = new Driver(demoBoat).goodUntil('firstFire.crank.askingClear');
    expect(JSON.stringify(asked.history.flatMap(({ said }) => said))).toContain('rawWaterAtFired');
  });

  it('is asked of the second person', () => {
    const asked = goUntilRawWater(fired());
    expect(offerOf(asked.moment).by).toBe('second');
  });

  it.each([
    [29.9, false],
    [30, true],
  ])(
    '%d s after the starter was released, however long the oil pressure took: stopped %s',
    (seconds, stopped) => {
      const driver = fired();
      const firedMs = driver.context.bursts.at(-1)?.endMs ?? 0;
      driver.reply('pressureGood', { afterMs: 5000 }).reply('yes', { afterMs: 4000 });
      expect(driver.context.step).toBe('firstFire.rawWater');
      driver.clock(firedMs + seconds * 1000 - driver.nowMs);
      expect(driver.name.startsWith('stopped.')).toBe(stopped);
      if (stopped) expect(driver.context.stop?.cause).toBe('overheating');
    },
  );
});

const goUntilRawWater = (driver: Driver) =>
  driver.goodUntil(({ name }) => name.startsWith('firstFire.rawWater.'));

describe('what is asked last, and apart', () => {
  it.each([demoSix, demoBoat])('the heater is waited for behind everything else with the key on', profile => {
    const keyOn = procedureFor(profile).flatMap(({ id }) => (id.startsWith('keyOn.') ? [id] : []));
    expect(keyOn.slice(-2)).toEqual(['keyOn.heaterHold', 'keyOn.heaterDone']);
  });

  it('the coolant bottle of a hot engine is no part of the steering, whose cap is off', () => {
    const driver = sessionAt(demoSix, 'warmUp.steeringLocks.asking');
    driver.reply('noBubbles').goodUntil(({ context }) => context.done.includes('warmUp.steeringLocks'));
    expect(driver.context.step).toBe('warmUp.levels');
  });
});

describe('what a stop puts back on the list', () => {
  const said = (driver: Driver) => driver.last.said.find(({ line }) => line === 'afterStop')?.values;

  it('is told by its first step and its count, with the list for the eye', () => {
    const stopped = stoppedFor(running(), 'looseOrNoise');
    const list = reopened(stopped);
    expect(list.length).toBeGreaterThan(30);
    expect(said(stopped)?.todo).toEqual({
      line: 'toDoMany',
      values: { count: list.length, first: { step: list[0] }, steps: { list: list.map(step => ({ step })) } },
    });
    const last = stopped.last.said.find(({ line }) => line === 'afterStop');
    const ear = last ? wordSaid(last, english, 'metric').spoken : '';
    expect(ear.split(' ').length).toBeLessThan(30);
  });

  it('is none where nothing is in doubt', () => {
    const stopped = sessionAt(demoSix, 'fill.fuelInTank.asking').stop().reply('allOff').reply('yes');
    expect(said(stopped.reply('causeFalseAlarm').reply('yes'))?.todo).toEqual({ list: [] });
  });

  it('after a start that failed warns of starting fluid', () => {
    expect(hazards(stoppedFor(sessionAt(demoSix, 'firstFire.crank.cranking'), 'noStart'))).toEqual([
      'noStartingFluid',
    ]);
  });
});
