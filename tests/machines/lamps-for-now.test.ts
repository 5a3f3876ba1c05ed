import { describe, expect, it } from 'vitest';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { goOn, isDone, sessionAt } from './limits/sessions.ts';

/** At the lamps beside the running engine, each by itself, up to the named one; with or without a code that is watched. */
function atLamp(id: string, code: 'watched' | 'none'): Driver {
  const driver = sessionAt(demoSix, 'keyOn.faults.asking');
  if (code === 'watched')
    driver
      .reply('readACode')
      .value('suspectParameter', 157)
      .value('failureMode', 18)
      .reply('yes')
      .reply('noMoreCodes')
      .reply('yes');
  goOn(driver, 'firstFire.lamps.group1').reply('oneByOne');
  for (const lamp of demoSix.lamps) {
    if (lamp.id === id) return driver;
    driver.reply('dark');
    if (driver.name.includes('.group')) driver.reply('oneByOne');
  }
  throw new Error(`There is no lamp ${id}.`);
}

const restDark = (driver: Driver) => {
  while (driver.context.step === 'firstFire.lamps') {
    const name = driver.name;
    if (name.endsWith('readingBack')) driver.reply('yes');
    else driver.reply(name.includes('.group') ? 'oneByOne' : 'dark');
  }
  return driver;
};

describe('the amber lamp beside a running engine', () => {
  it('may be lit while a code is watched, and is asked for once that has cleared', () => {
    const driver = atLamp('amberWarning', 'watched').reply('lit');
    expect(driver.name).not.toMatch(/^stopped/);
    expect(driver.lines).toContain('litWhileWatched');
    restDark(driver);
    expect(driver.name).toBe('firstFire.transient.asking');
    driver.reply('faultCleared').reply('yes');
    expect(driver.name).toBe('firstFire.warningLamp.item1');
    expect(driver.fork().reply('lit').context.stop?.cause).toBe('faultCode');
    driver.reply('dark').reply('yes');
    expect(isDone(driver, 'firstFire.warningLamp')).toBe(true);
  });

  it('does not get round the watch: a code that outlasts its time stops, lamp or no lamp', () => {
    const driver = restDark(atLamp('amberWarning', 'watched').reply('lit'));
    const endsMs = (driver.context.timer?.startedMs ?? 0) + (driver.context.timer?.totalMs ?? 0);
    expect(driver.clock(endsMs - driver.nowMs).context.stop?.cause).toBe('faultCode');
  });

  it('stops where nothing is watched', () => {
    expect(atLamp('amberWarning', 'none').reply('lit').context.stop?.cause).toBe('faultCode');
  });

  it('is asked for by itself only where a code was watched', () => {
    const driver = sessionAt(demoSix, 'firstFire.lamps.group1');
    goOn(driver, 'signOff.sign.asking');
    expect(isDone(driver, 'firstFire.warningLamp')).toBe(false);
  });
});

describe('other lamps beside a running engine', () => {
  it.each(['redStop', 'oilPressure'])('%s stops, though a code is watched', id => {
    expect(atLamp(id, 'watched').reply('lit').context.stop?.cause).toBe('faultCode');
  });

  it('the charge lamp may want more speed: it is an open item, and the charging voltage decides', () => {
    const driver = atLamp('charging', 'none').reply('lit');
    expect(driver.name).not.toMatch(/^stopped/);
    expect(driver.context.openItems).toEqual([{ step: 'firstFire.lamps', finding: 'lit', by: 'technician' }]);
    restDark(driver);
    expect(isDone(driver, 'firstFire.lamps')).toBe(true);
    goOn(driver, 'signOff.openItems.asking');
  });
});
