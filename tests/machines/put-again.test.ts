import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';

const oil = new Driver(demoSix).goodUntil('fill.oilQuantity.asking');
const hoses = new Driver(demoSix).goodUntil('walkRound.hoses.asking');
const skippable = new Driver(demoSix).goodUntil('prime.strokes.asking');
const prefixOf = (driver: Driver) => driver.last.said.at(-1)?.prefix;

const unclear = (driver: Driver, times: number) => {
  for (let time = 0; time < times; time += 1) driver.send({ type: 'unclear' });
  return driver;
};

describe('a question that was not understood', () => {
  it('for a number is put again, then digit by digit, then through another mouth', () => {
    expect([1, 2, 3, 4].map(times => prefixOf(unclear(oil.fork(), times)))).toEqual([
      'unclear',
      'unclearDigits',
      'unclearThrice',
      'unclearThrice',
    ]);
  });

  it('for a reply knows of no digits', () => {
    expect([1, 2, 3].map(times => prefixOf(unclear(hoses.fork(), times)))).toEqual([
      'unclear',
      'unclear',
      'unclearThrice',
    ]);
  });

  it('at the keys asks for neither: what was typed was not misheard', () => {
    const typed = unclear(oil.fork(), 3).send({ type: 'unclear' }, { via: 'keys' });
    expect(prefixOf(typed)).toBe('unclear');
  });

  it('says nothing of a misunderstanding where there was none', () => {
    expect(oil.context.lastSaid).not.toHaveProperty('prefix');
    expect(hoses.context.lastSaid).not.toHaveProperty('prefix');
  });

  it('after "wrong" at the read-back begins with it; at the keys it says that the number is taken back', () => {
    const readBack = oil.fork().value('oilQuantity', 15);
    expect(prefixOf(readBack.fork().reply('no'))).toBe('unclear');
    expect(prefixOf(readBack.fork().reply('no', { via: 'keys' }))).toBe('takenBack');
    expect(readBack.fork().reply('no').context).toMatchObject({ misheard: 1, pending: null });
  });

  it('at a read-back says it, and reads back again', () => {
    const readBack = oil.fork().value('oilQuantity', 15).send({ type: 'unclear' });
    expect(readBack.last.said).toMatchObject([{ line: 'readBackValue', prefix: 'unclear' }]);
    expect(readBack.context.misheard).toBe(1);
    expect(prefixOf(readBack.send({ type: 'unclear' }))).toBe('unclear');
    expect(prefixOf(readBack.send({ type: 'unclear' }))).toBe('unclearThrice');
    // From here on a voice is not enough.
    expect(readBack.fork().reply('yes', { by: 'technician' }).name).toBe(readBack.name);
    expect(readBack.fork().reply('yes', { by: 'technician', via: 'keys' }).name).not.toBe(readBack.name);
  });

  it('does not go on to the next question: that one is put as if nothing had been', () => {
    const next = unclear(hoses.fork(), 2).good().good();
    expect(next.context.misheard).toBe(0);
    expect(next.last.said.every(({ prefix }) => prefix === undefined)).toBe(true);
  });
});

describe('a place that waits for something to be put right', () => {
  const blocked = new Driver(demoSix).goodUntil('keyOn.faults.asking').reply('readACode');
  blocked
    .value('suspectParameter', 100)
    .value('failureMode', 1)
    .reply('yes')
    .reply('noMoreCodes')
    .reply('yes');

  it('says what it waits for again where it did not understand, and then believes no voice alone', () => {
    const driver = blocked.fork().send({ type: 'unclear' });
    expect(driver.last.said).toMatchObject([{ line: 'blockingFault', prefix: 'unclear' }]);
    expect(driver.last.notes).toEqual([]);
    unclear(driver, 2);
    expect(driver.fork().reply('ready', { by: 'technician' }).name).toBe(blocked.name);
    const ready = driver.fork().reply('ready', { by: 'technician', via: 'keys' });
    expect(ready.name).toBe('keyOn.faults.asking');
    expect(ready.context.misheard).toBe(0);
  });
});

describe('"not yet"', () => {
  it('is heard and changes nothing, to a question for a number as to any other', () => {
    for (const place of [oil, hoses]) {
      const driver = place.fork().reply('notYet');
      expect(driver.last.said).toMatchObject([{ line: 'notYet', priority: 'notice', values: {} }]);
      expect(driver.name).toBe(place.name);
      expect(driver.context.lastSaid).toEqual(place.context.lastSaid);
    }
  });
});

describe('two numbers one after the other', () => {
  it('are named with what they are of, when they contradict one another', () => {
    const driver = oil.fork().value('oilQuantity', 15).value('oilQuantity', 12);
    expect(driver.last.said[0]).toMatchObject({
      line: 'readingsDiffer',
      values: {
        name: { quantityName: 'oilQuantity' },
        before: { quantity: 'oilQuantity', si: 15 },
        now: { quantity: 'oilQuantity', si: 12 },
      },
    });
  });
});

describe('a reason', () => {
  const skipping = skippable.fork().send({ type: 'skip' });

  it.each([
    ['no', false],
    ['120', false],
    ['ok 12', false],
    ['x y', false],
    ['broken', false],
    ['a defect', false],
    ['removed', true],
    ['no hose', true],
    ['3 hoses 4 clamps', true],
    ['défaut', false],
    ['supprimé', true],
  ])('"%s" is one: %s', (text, isOne) => {
    const driver = skipping.fork().send({ type: 'reason', text }, { via: 'keys' });
    if (isOne) expect(driver.context.skips).toMatchObject([{ step: 'prime.strokes', reason: text }]);
    else {
      expect(driver.name).toBe(skipping.name);
      expect(driver.last.said).toMatchObject([{ line: 'noReason', values: {} }]);
    }
  });

  it('is asked for by the title of what is to be skipped, and may be typed', () => {
    expect(skipping.last.said).toMatchObject([
      { line: 'skipWhy', values: { title: { step: 'prime.strokes' } } },
    ]);
    expect(offerOf(skipping.moment)).toMatchObject({
      freeText: true,
      replies: ['reasonNotFitted', 'reasonDoneBefore', 'reasonSupervisor', 'notYet'],
    });
  });

  it('of the three that are named is said again and stands on the record with who said it', () => {
    const driver = skipping.fork().reply('reasonDoneBefore', { by: 'technician' });
    expect(driver.last.said[0]).toMatchObject({
      line: 'skipped',
      values: { reason: { reply: 'reasonDoneBefore' } },
    });
    expect(driver.last.notes).toContainEqual({
      kind: 'skipped',
      data: { step: 'prime.strokes', reason: 'reasonDoneBefore', by: 'technician' },
    });
    expect(driver.context.skips).toEqual([
      { step: 'prime.strokes', reason: 'reasonDoneBefore', by: 'technician' },
    ]);
    expect(driver.context.done).toContain('prime.strokes');
  });

  it('that was typed is said again as it was typed', () => {
    const driver = skipping.fork().send({ type: 'reason', text: 'pump is new' }, { via: 'keys' });
    expect(driver.last.said[0]).toMatchObject({ line: 'skipped', values: { reason: 'pump is new' } });
    expect(driver.last.notes[0]).toMatchObject({ kind: 'skipped', data: { reason: 'pump is new' } });
  });

  it('after three misunderstandings counts by voice only of the second person', () => {
    const unheard = unclear(skipping.fork(), 3);
    expect(unheard.fork().reply('reasonDoneBefore', { by: 'technician' }).name).toBe(unheard.name);
    expect(unheard.fork().reply('reasonDoneBefore', { by: 'second' }).context.done).toContain(
      'prime.strokes',
    );
  });

  it('is not needed after all: "not yet" leads back to the step', () => {
    expect(skipping.fork().reply('notYet').name).toBe('prime.strokes.asking');
  });
});

describe('what may not be done', () => {
  it('is said: no skipping, no going back, nothing to take back', () => {
    expect(hoses.fork().send({ type: 'skip' }).last.said).toMatchObject([
      { line: 'cannotSkip', priority: 'notice', values: {} },
    ]);
    const first = new Driver(demoFour);
    expect(first.fork().send({ type: 'goBack' }).last.said).toMatchObject([
      { line: 'cannotGoBack', values: {} },
    ]);
    expect(first.fork().send({ type: 'takeBack' }).last.said).toMatchObject([
      { line: 'cannotTakeBack', values: {} },
    ]);
  });

  it('while the limits are tight is refused as that, taking back too', () => {
    const cranking = new Driver(demoSix).goodUntil('firstFire.crank.cranking');
    for (const type of ['hold', 'goBack', 'skip', 'takeBack'] as const) {
      const driver = cranking.fork().send({ type });
      expect(driver.last.said).toMatchObject([{ line: 'notWhileCritical', values: {} }]);
      expect(driver.name).toBe(cranking.name);
    }
  });
});

describe('a number that was only said again', () => {
  const air = new Driver(demoSix).goodUntil('job.ambient.asking');

  it('is shown only where it was typed, and spoken where it was said', () => {
    const values = { spoken: { brief: 'ambientTemperature', si: 12 } };
    expect(air.fork().value('ambientTemperature', 12).last.said[0]).toMatchObject({
      line: 'echo',
      priority: 'notice',
      values,
    });
    expect(air.fork().value('ambientTemperature', 12, { via: 'touch' }).last.said[0]).toMatchObject({
      line: 'echoShown',
      values,
    });
  });

  it('is remembered with its step and what the engine did, until the numbers are read back together', () => {
    const driver = air.fork().value('ambientTemperature', 12);
    expect(driver.context.echoed).toEqual([
      { step: 'job.ambient', quantity: 'ambientTemperature', si: 12, engine: 'off' },
    ]);
    driver.goodUntil('job.figures.asking');
    expect(driver.context.echoed.map(({ step }) => step)).toEqual([
      'job.ambient',
      'job.coldestNight',
      'job.altitude',
    ]);
    expect(driver.fork().reply('yes').context.echoed).toEqual([]);
  });

  it('is taken back by "wrong" within the next question, alone', () => {
    const driver = air
      .fork()
      .value('ambientTemperature', 12)
      .value('coldestNight', -3)
      .send({ type: 'takeBack' });
    expect(driver.name).toBe('job.coldestNight.asking');
    expect(driver.last.said[0]).toMatchObject({ line: 'takenBack', values: {} });
    expect(driver.last.notes[0]).toEqual({
      kind: 'takenBack',
      data: { step: 'job.coldestNight', quantity: 'coldestNight', value: -3 },
    });
    expect(driver.context.readings.map(({ step }) => step)).toEqual(['job.ambient']);
    expect(driver.context.echoed.map(({ step }) => step)).toEqual(['job.ambient']);
    expect(driver.context.done).toContain('job.ambient');
    expect(driver.context.done).not.toContain('job.coldestNight');
  });

  it('of several that are read back together and of which one is wrong: all are asked for again, and no other', () => {
    const driver = air.fork().goodUntil('job.figures.asking').reply('no');
    expect(driver.name).toBe('job.ambient.asking');
    expect(driver.context.readings).toEqual([]);
    expect(driver.context.echoed).toEqual([]);
    expect(driver.context.done).toEqual(air.context.done);
    expect(driver.context.misheard).toBe(0);
  });

  it('that takes nothing back once it has been read back', () => {
    const driver = air.fork().goodUntil('job.figures.asking').reply('yes').send({ type: 'takeBack' });
    expect(driver.lines).toEqual(['cannotTakeBack']);
    expect(driver.context.done).toContain('job.figures');
  });
});

describe('what a step asks', () => {
  it('is asked together with its like under the name of the group, except alone', () => {
    const together = new Driver(demoBoat).goodUntil(driver => driver.name.endsWith('.together'));
    const { group, items = [], affirmed } = offerOf(together.moment);
    expect(group).toEqual(expect.any(String));
    expect(items.length).toBeGreaterThan(1);
    expect(affirmed).toEqual({ reply: offerOf(together.moment).replies[0], always: false });
    expect(offerOf(together.reply('oneByOne').moment)).not.toHaveProperty('group');
  });
});
