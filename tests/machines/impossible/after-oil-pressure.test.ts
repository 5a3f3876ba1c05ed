import { describe, expect, it } from 'vitest';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import type { Driver } from '../helpers/driver.ts';
import { demoSix } from '../helpers/profiles.ts';
import { isDone, sessionAt } from '../limits/sessions.ts';

const PSI = 6.894757;

/** Five psi at idle, confirmed; the session is at the stop, everything off. */
const stopped = () => {
  const driver = sessionAt(demoSix, 'checks.oilPressure.asking')
    .value('oilPressure', 5 * PSI)
    .reply('yes');
  expect(driver.context.stop?.cause).toBe('noOilPressure');
  return driver.reply('allOff').reply('yes');
};

/** Called a false alarm, and gone on with as far as the dipstick. */
const atDipstick = (): Driver => {
  const driver = stopped().reply('no').reply('causeFalseAlarm').reply('yes').reply('ready').reply('yes');
  return driver.goodUntil(({ name }) => name.startsWith('fill.oilLevel.') || name.endsWith('.cranking'));
};

describe('5 psi confirmed, then "false alarm"', () => {
  it('leads to no new start without a look at the oil', () => {
    const driver = stopped().reply('no').reply('causeFalseAlarm').reply('yes');
    expect(driver.context.reopened).toContain('fill.oilLevel');
    expect(driver.context.reopened).toContain('noFuelCrank.untilPressure');
    expect(isDone(driver, 'fill.oilLevel')).toBe(false);
    expect(atDipstick().name).toBe('fill.oilLevel.dipstick');
  });

  it('a stop called while 5 psi is read back is a stop for it too', () => {
    const driver = sessionAt(demoSix, 'checks.oilPressure.asking')
      .value('oilPressure', 5 * PSI)
      .stop();
    expect(driver.context.stop).toMatchObject({ cause: null, found: 'noOilPressure' });
    driver.reply('allOff').reply('yes').reply('causeFalseAlarm').reply('yes');
    expect(driver.context.reopened).toContain('fill.oilLevel');
  });

  it('a stop for nothing that was measured is let go on as ever', () => {
    const driver = sessionAt(demoSix, 'fill.fuelInTank.asking').stop();
    driver.reply('allOff').reply('yes').reply('causeFalseAlarm').reply('yes');
    expect(driver.context.reopened).toEqual([]);
  });
});

describe('the dipstick after a stop for oil pressure', () => {
  it('between the marks: on to the next step', () => {
    expect(isDone(atDipstick().reply('levelGood').reply('yes'), 'fill.oilLevel')).toBe(true);
  });

  it('low: topped up, and looked at again', () => {
    const low = atDipstick().reply('levelLow');
    expect(low.name).toBe('fill.oilLevel.toppingUp');
    expect(isDone(low.reply('levelGood').reply('yes'), 'fill.oilLevel')).toBe(true);
  });

  it('risen: fuel or coolant in the oil ends the start for good', () => {
    const risen = atDipstick().reply('levelRisen');
    expect(risen.name).toBe('fill.oilLevel.risen');
    const ended = risen.fork().reply('yes');
    expect(ended.name).toBe('ended');
    expect(ended.over).toBe(true);
    expect(ended.last.said[0]).toMatchObject({ line: 'oilRisen', priority: 'hazard' });
    expect(ended.notes.find(ofKind('barred'))?.data).toMatchObject({
      step: 'fill.oilLevel',
      why: 'oilRisen',
    });
    expect(risen.reply('no').name).toBe('fill.oilLevel.dipstick');
  });

  it('is looked at before sign-off too', () => {
    const driver = sessionAt(demoSix, 'signOff.oilLevel.dipstick');
    expect(driver.reply('levelRisen').reply('yes').name).toBe('ended');
  });
});

describe('what a stop puts back on the list', () => {
  const leaked = () => {
    const driver = sessionAt(demoSix, 'checks.leaks.item1').stop().reply('allOff').reply('yes');
    return driver
      .reply('causeCoolantLeak')
      .reply('yes')
      .reply('ready')
      .reply('yes')
      .goodUntil('fill.coolantFilled.checking');
  };

  it('is asked as a check first', () => {
    const driver = leaked();
    expect(driver.name).toBe('fill.coolantFilled.checking');
    expect(driver.last.said.at(-1)).toMatchObject({ line: 'checkFirst' });
    expect(isDone(driver.reply('coolantFull').reply('yes'), 'fill.coolantFilled')).toBe(true);
  });

  it('is done anew where it no longer holds, with what hangs on it', () => {
    const driver = leaked().reply('notYet');
    expect(driver.name).toBe('fill.coolantFilled.asking');
    driver.reply('coolantFull').reply('yes');
    expect(driver.name).toBe('fill.coolantBleed.counting');
  });

  it('keeps a number that still holds by "as before", read back like any other', () => {
    const driver = sessionAt(demoSix, 'fill.fuelInTank.asking').stop().reply('allOff').reply('yes');
    driver.reply('causeSmokeOrFire').reply('yes').reply('ready').reply('yes').reply('yes', { by: 'second' });
    driver.goodUntil(({ name }) => name.startsWith('fill.oilQuantity.'));
    expect(driver.name).toBe('fill.oilQuantity.checking');
    driver.reply('asBefore');
    expect(driver.name).toBe('fill.oilQuantity.readingBack');
    expect(isDone(driver.reply('yes'), 'fill.oilQuantity')).toBe(true);
  });
});
