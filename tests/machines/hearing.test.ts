import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import { Driver } from './helpers/driver.ts';
import { goodValue } from './helpers/good.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const six = new Driver(demoSix);
const startOf = (name: string) => six.goodUntil(name).fork();
const ambient = startOf('job.ambient.asking');
const filled = startOf('fill.coolantFilled.asking');
const oil = startOf('fill.oilQuantity.asking');
const weeps = startOf('prime.noWeeps.asking');
const sensors = startOf('walkRound.sensors.item1');
const ready = startOf('noFuelCrank.untilPressure.ready');
const released = startOf('noFuelCrank.untilPressure.released');
const idle = startOf('checks.idle.item1');
const charging = startOf('checks.charging.asking');

const unclear = (driver: Driver, times: number): Driver => {
  for (let time = 0; time < times; time += 1) driver.send({ type: 'unclear' });
  return driver;
};

describe('a reply that opens a gate', () => {
  it('counts only when its read-back is confirmed', () => {
    const said = filled.fork().reply('coolantFull');
    expect(said.name).toBe('fill.coolantFilled.readingBack');
    expect(said.context.done).not.toContain('fill.coolantFilled');
    expect(said.last.said[0]).toMatchObject({
      line: 'readBackReply',
      values: { reply: { reply: 'coolantFull' } },
    });
    expect(said.reply('yes').context.done).toContain('fill.coolantFilled');
  });

  it('whose read-back is wrong is asked for again, and what was heard is forgotten', () => {
    const wrong = filled.fork().reply('coolantFull').reply('no');
    expect(wrong.name).toBe('fill.coolantFilled.asking');
    expect(wrong.context).toMatchObject({ pending: null, misheard: 1 });
    expect(wrong.last.said[0]).toMatchObject({ line: 'ask', prefix: 'unclear' });
    expect(wrong.reply('yes').name).toBe('fill.coolantFilled.asking');
  });

  it('is not confirmed by the same reply once more, nor by any other word', () => {
    const said = filled.fork().reply('coolantFull');
    for (const id of ['coolantFull', 'ready', 'understood', 'levelGood', 'notYet'] as const)
      expect(said.reply(id).name).toBe('fill.coolantFilled.readingBack');
  });

  it('is not what another step waits for', () => {
    expect(filled.fork().reply('levelGood').reply('yes').name).toBe('fill.coolantFilled.asking');
  });

  it('is waited for after "not yet", without counting it as misunderstood', () => {
    const later = filled.fork().reply('notYet');
    expect(later.name).toBe('fill.coolantFilled.asking');
    expect(later.lines).toEqual(['notYet']);
    expect(later.context.misheard).toBe(0);
  });
});

describe('a list', () => {
  it('is gone through by name and confirmed as a whole', () => {
    const driver = sensors.fork();
    for (const _ of demoSix.sensors) driver.reply('pluggedIn');
    expect(driver.name).toBe('walkRound.sensors.readingBack');
    expect(driver.context.done).not.toContain('walkRound.sensors');
    expect(driver.fork().reply('no').name).toBe('walkRound.sensors.item1');
    expect(driver.fork().reply('yes', { via: 'keys' }).context.done).toContain('walkRound.sensors');
    expect(driver.reply('yes').context.done).toContain('walkRound.sensors');
  });

  it('stays at the thing that is not good', () => {
    expect(sensors.fork().reply('pluggedIn').reply('notYet').name).toBe('walkRound.sensors.item2');
  });
});

const impossible = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** Every moment of an all-good start at which a number is awaited. */
const numberMoments = (() => {
  const moments: Driver[] = [];
  const driver = new Driver(demoSix);
  while (!driver.over) {
    if (offerOf(driver.moment).quantity) moments.push(driver.fork());
    driver.good();
  }
  return moments;
})();

const quantityAt = (driver: Driver): Quantity => {
  const { quantity } = offerOf(driver.moment);
  if (!quantity) throw new Error(`No number is awaited in ${driver.name}.`);
  return quantity;
};

describe('a number', () => {
  it('that is none is not heard, at whatever gauge', () => {
    expect(numberMoments.length).toBeGreaterThan(20);
    for (const moment of numberMoments)
      for (const si of impossible) {
        const driver = moment.fork().value(quantityAt(moment), si);
        expect(driver.name).toBe(moment.name);
        expect(driver.context.readings).toBe(moment.context.readings);
      }
  });

  it('of another gauge is not heard', () => {
    for (const moment of numberMoments) {
      const foreign = quantityAt(moment) === 'altitude' ? 'oilPressure' : 'altitude';
      expect(moment.fork().value(foreign, goodValue(quantityAt(moment), moment.moment)).name).toBe(
        moment.name,
      );
    }
  });

  it('far outside what can be passes no step, even when confirmed', () => {
    for (const moment of numberMoments.filter(({ name }) => !name.startsWith('checks.idle.')))
      for (const si of [-1e9, 1e9]) {
        const driver = moment.fork().value(quantityAt(moment), si).reply('yes');
        expect(driver.context.done).toEqual(moment.context.done);
        expect(driver.context.step).toBe(moment.context.step);
      }
  });

  it('outside its limits, confirmed, is told its limits and asked for again', () => {
    const low = oil.fork().value('oilQuantity', 12).reply('yes');
    expect(low.name).toBe('fill.oilQuantity.asking');
    expect(low.last.said[0]).toMatchObject({
      line: 'outside',
      values: { limits: { limits: { unit: 'litre', min: 14, max: 16 } } },
    });
    expect(low.last.notes[0]).toMatchObject({
      kind: 'verdict',
      data: { met: false, value: 12, margin: -2, min: 14, max: 16 },
    });
  });

  it('at its very limit passes, and beyond it does not', () => {
    expect(oil.fork().value('oilQuantity', 14).reply('yes').context.done).toContain('fill.oilQuantity');
    expect(oil.fork().value('oilQuantity', 13.999).reply('yes').context.done).not.toContain(
      'fill.oilQuantity',
    );
  });

  it('goes on the record with its verdict, its rule and its source', () => {
    const good = oil.fork().value('oilQuantity', 15).reply('yes');
    const verdict = good.last.notes.find(ofKind('verdict'));
    expect(verdict?.data).toMatchObject({ step: 'fill.oilQuantity', value: 15, unit: 'litre', met: true });
    expect(verdict?.data.rule).toBeTruthy();
    expect(verdict?.data.source).toBeTruthy();
  });

  it('is not a reply, and a reply is not a number', () => {
    expect(filled.fork().value('oilQuantity', 15).name).toBe('fill.coolantFilled.asking');
    expect(oil.fork().reply('levelGood').name).toBe('fill.oilQuantity.asking');
  });
});

describe('a series of numbers', () => {
  const speeds = (values: readonly number[]) => {
    const driver = idle.fork();
    for (const si of values) driver.value('engineSpeed', si, { afterMs: 3000 });
    return driver;
  };

  it('is read back as a whole and passes when its ends are in range and not far apart', () => {
    const steady = speeds([845, 852]);
    expect(steady.name).toBe('checks.idle.readingBack');
    expect(steady.reply('yes').context.done).toContain('checks.idle');
  });

  it('that is out of range is read again, and that hunts stops the engine', () => {
    expect(speeds([1010, 1010]).reply('yes').name).toBe('checks.idle.item1');
    expect(speeds([760, 940]).reply('yes').context.stop).toMatchObject({
      cause: 'other',
      step: 'checks.idle',
    });
  });

  it('denied is read again from its beginning', () => {
    const denied = speeds([845, 852]).reply('no');
    expect(denied.name).toBe('checks.idle.item1');
    expect(denied.context.series).toEqual([]);
  });
});

describe('what is misunderstood', () => {
  it('is asked for again, then digit by digit, then from another mouth', () => {
    const driver = ambient.fork();
    expect(unclear(driver, 1).last.said[0]).toMatchObject({ line: 'ask', prefix: 'unclear' });
    expect(unclear(driver, 1).last.said[0]).toMatchObject({ line: 'ask', prefix: 'unclearDigits' });
    expect(unclear(driver, 1).last.said[0]).toMatchObject({ line: 'ask', prefix: 'unclearThrice' });
  });

  it('three times leaves the technician unheard by voice', () => {
    const driver = unclear(filled.fork(), 3);
    expect(driver.reply('coolantFull', { by: 'technician', via: 'voice' }).name).toBe(
      'fill.coolantFilled.asking',
    );
    expect(
      unclear(ambient.fork(), 3).value('ambientTemperature', 5, { by: 'technician', via: 'voice' }).name,
    ).toBe('job.ambient.asking');
  });

  it('twice does not yet', () => {
    expect(unclear(filled.fork(), 2).reply('coolantFull').name).toBe('fill.coolantFilled.readingBack');
  });

  it.each([
    ['the second person by voice', { by: 'second', via: 'voice' }],
    ['keys', { by: 'technician', via: 'keys' }],
    ['touch', { by: 'technician', via: 'touch' }],
  ] as const)('three times leaves %s believed', (_, how) => {
    const driver = unclear(filled.fork(), 3).reply('coolantFull', how);
    if (how.via !== 'voice') return expect(driver.context.done).toContain('fill.coolantFilled');
    expect(driver.name).toBe('fill.coolantFilled.readingBack');
    expect(driver.fork().reply('yes', { by: 'technician', via: 'voice' }).name).toBe(
      'fill.coolantFilled.readingBack',
    );
    expect(driver.reply('yes', how).context.done).toContain('fill.coolantFilled');
  });

  it('three times, a denial at the read-back included, is three times', () => {
    const driver = filled.fork();
    for (const _ of [1, 2, 3]) driver.reply('coolantFull').reply('no');
    expect(driver.last.said[0]?.prefix).toBe('unclearThrice');
    expect(driver.reply('coolantFull').name).toBe('fill.coolantFilled.asking');
  });

  it('at the read-back counts too, and may always be denied', () => {
    const driver = unclear(filled.fork().reply('coolantFull'), 3);
    expect(driver.last.said[0]).toMatchObject({ line: 'readBackReply', prefix: 'unclearThrice' });
    expect(driver.fork().reply('yes').name).toBe('fill.coolantFilled.readingBack');
    expect(driver.reply('no').name).toBe('fill.coolantFilled.asking');
  });

  it('at the keys is told as that and no more: neither figures nor another mouth mend what was typed', () => {
    const driver = oil.fork();
    for (const _ of [1, 2, 3, 4]) {
      driver.send({ type: 'unclear' }, { via: 'keys' });
      expect(driver.last.said[0]?.prefix).toBe('unclear');
    }
  });

  it('is none where what was typed is denied: that is taken back', () => {
    const driver = filled.fork().reply('coolantFull').reply('no', { via: 'keys' });
    expect(driver.last.said[0]).toMatchObject({ line: 'ask', prefix: 'takenBack' });
  });

  it('stands before no new question', () => {
    const driver = sessionAt(demoSix, 'prime.strokes.asking').send({ type: 'unclear' });
    expect(driver.last.said[0]?.prefix).toBe('unclear');
    expect(driver.send({ type: 'skip' }).name).toBe('prime.strokes.skipping');
    expect(driver.last.said.at(-1)).toMatchObject({ line: 'skipWhy' });
    expect(driver.last.said.at(-1)?.prefix).toBe(undefined);
  });

  it('before a burst is told, and the starter is asked for again', () => {
    expect(unclear(ready.fork(), 1).last.said[0]).toMatchObject({ line: 'crankReady', prefix: 'unclear' });
  });

  it('is forgotten when the step is passed', () => {
    const driver = unclear(filled.fork(), 2).reply('coolantFull').reply('yes');
    expect(driver.context.misheard).toBe(0);
  });

  it('three times before a burst keeps the starter still', () => {
    const driver = unclear(ready.fork(), 3);
    expect(driver.fork().reply('ready', { by: 'technician', via: 'voice' }).name).toBe(
      'noFuelCrank.untilPressure.ready',
    );
    expect(driver.reply('ready', { by: 'technician', via: 'keys' }).name).toBe(
      'noFuelCrank.untilPressure.cranking',
    );
  });

  it('three times never keeps a stop, a denial or trouble from being heard', () => {
    expect(unclear(filled.fork(), 5).stop({ by: 'technician', via: 'voice' }).name).toBe(
      'stopped.makingSafe',
    );
    const pressure = new Driver(demoSix).goodUntil('firstFire.oilPressure.asking');
    for (const _ of [1, 2, 3]) pressure.send({ type: 'unclear' }, { afterMs: 100 });
    expect(pressure.reply('noOilPressure', { afterMs: 100 }).context.stop?.cause).toBe('noOilPressure');
  });
});

describe('a plain yes', () => {
  it('stands for the reply that is asked for, but answers no "this, or that?"', () => {
    const asked = (name: string) => offerOf(sessionAt(demoSix, name).moment).affirmed?.reply;
    expect(asked('barOver.isolated.asking')).toBe('starterIsolated');
    expect(asked('firstFire.oilPressure.asking')).toBe('pressureGood');
    expect(asked('barOver.turned.asking')).toBe(undefined);
    expect(asked('noFuelCrank.oilLevel.dipstick')).toBe(undefined);
    expect(asked('keyOn.faults.asking')).toBe(undefined);
    expect(asked('signOff.sign.asking')).toBe(undefined);
  });
});

describe('people are asked for by what they do', () => {
  it('the second person looks for weeps and gives the clear, the supervisor signs', () => {
    expect(offerOf(weeps.moment).by).toBe('second');
    expect(offerOf(new Driver(demoSix).goodUntil('noFuelCrank.untilPressure.askingClear').moment).by).toBe(
      'second',
    );
    expect(offerOf(charging.fork().goodUntil('signOff.sign.asking').moment).by).toBe('supervisor');
  });

  it('oil pressure seen while cranking is confirmed only when the starter is released', () => {
    expect(released.name).toBe('noFuelCrank.untilPressure.released');
    expect(released.context.done).not.toContain('noFuelCrank.untilPressure');
    expect(released.last.said[0]).toMatchObject({ line: 'release', priority: 'hazard' });
    expect(released.fork().reply('no').name).toBe('noFuelCrank.untilPressure.outcome');
    expect(released.fork().reply('yes').context.done).toContain('noFuelCrank.untilPressure');
  });
});
