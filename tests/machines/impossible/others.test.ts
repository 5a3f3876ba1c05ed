import { describe, expect, it } from 'vitest';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import { changed, demoSix } from '../helpers/profiles.ts';
import { isDone, sessionAt } from '../limits/sessions.ts';

const fahrenheit = (value: number) => (value - 32) / 1.8;

describe('a freezing point of -80 °F', () => {
  const said = (si: number, profile = demoSix) => {
    const driver = sessionAt(profile, 'fill.coolantFreezePoint.asking').value('coolantFreezePoint', si);
    return isDone(
      driver.name.endsWith('readingBack') ? driver.reply('yes') : driver,
      'fill.coolantFreezePoint',
    );
  };

  it('is of a mix far stronger than this engine may have, or of none: it is not taken', () => {
    expect(said(fahrenheit(-80))).toBe(false);
  });

  it('may be that of the strongest mix allowed, 55 % (-44.6 degC, ASHRAE), and 2 K that a tester may miss', () => {
    const weaker = changed(demoSix, { coolant: { ...demoSix.coolant, maxShare: 0.55 } });
    expect(said(-46.5, weaker)).toBe(true);
    expect(said(-46.7, weaker)).toBe(false);
  });
});

describe('a coldest night of 60 °F with air at 41 °F', () => {
  it('is questioned, and said again it is for the second person', () => {
    const driver = sessionAt(demoSix, 'job.coldestNight.asking').value('coldestNight', fahrenheit(60));
    expect(driver.lines).toEqual(['doubted']);
    expect(driver.value('coldestNight', fahrenheit(60)).name).toBe('job.coldestNight.vouching');
  });

  it('is questioned from 6 K above the air on: 3 K for each of the two', () => {
    const at = (si: number) => sessionAt(demoSix, 'job.coldestNight.asking').value('coldestNight', si).lines;
    expect(at(11)).not.toContain('doubted');
    expect(at(11.1)).toEqual(['doubted']);
  });
});

describe('"pressure shows" after a second of cranking', () => {
  const at = (seconds: number) =>
    sessionAt(demoSix, 'noFuelCrank.untilPressure.cranking').reply('oilPressureShows', {
      afterMs: seconds * 1000,
    });

  it('is not believed: the starter is released, and the second person looks at the gauge too', () => {
    const driver = at(1);
    expect(driver.name).toBe('noFuelCrank.untilPressure.early');
    expect(driver.last.said.map(({ line }) => line)).toEqual(['release', 'early']);
    expect(driver.last.said[0]?.priority).toBe('hazard');
    expect(driver.notes.findLast(ofKind('doubted'))?.data).toMatchObject({
      met: false,
      reply: 'oilPressureShows',
    });
    expect(isDone(driver.reply('oilPressureShows', { by: 'technician' }), 'noFuelCrank.untilPressure')).toBe(
      false,
    );
  });

  it('is taken where the second person sees it too', () => {
    const driver = at(1).reply('oilPressureShows', { by: 'second' });
    expect(driver.name).toBe('noFuelCrank.untilPressure.released');
    expect(isDone(driver.reply('yes'), 'noFuelCrank.untilPressure')).toBe(true);
  });

  it('is no pressure yet where they see none: a rest, and another burst', () => {
    expect(at(1).reply('nothingYet').name).toBe('noFuelCrank.untilPressure.resting');
  });

  it('can be from 9.8 s on: 1.2 L, the least to fill, by 0.144 L a second at an efficiency of 0.85', () => {
    const earliestS = (1.6 * 0.75) / (0.048 * 1.2 * 2.5 * 0.85);
    expect(at(earliestS - 0.01).name).toBe('noFuelCrank.untilPressure.early');
    expect(at(earliestS + 0.01).name).toBe('noFuelCrank.untilPressure.released');
  });

  it('counts what was cranked before: oil stays where it was moved', () => {
    const rested = at(1).reply('nothingYet');
    while (rested.name.endsWith('.resting')) rested.ring();
    rested.reply('clearToCrank').reply('yes').reply('ready');
    expect(rested.reply('oilPressureShows', { afterMs: 9_000 }).name).toBe(
      'noFuelCrank.untilPressure.released',
    );
  });
});

describe('an idle of 3500', () => {
  const said = (rpm: number) => sessionAt(demoSix, 'checks.idle.item1').value('engineSpeed', rpm);

  it('stops the engine at the first of the five, read back and not waited with', () => {
    const driver = said(3500);
    expect(driver.name).toBe('checks.idle.stopping');
    expect(driver.fork().reply('yes').context.stop?.cause).toBe('overspeed');
  });

  it('stops it unless it is denied within eight seconds', () => {
    expect(said(3500).clock(7_999).name).toBe('checks.idle.stopping');
    expect(said(3500).clock(8_000).context.stop?.cause).toBe('overspeed');
    expect(said(3500).reply('no', { afterMs: 7_999 }).name).toBe('checks.idle.item1');
  });

  it('is an overspeed from half as much again as the fastest idle, 1500 rpm', () => {
    expect(said(1500).name).toBe('checks.idle.item2');
    expect(said(1500.1).name).toBe('checks.idle.stopping');
  });

  it('stops it at any of the five', () => {
    const driver = sessionAt(demoSix, 'checks.idle.item1').value('engineSpeed', 850);
    expect(driver.value('engineSpeed', 3500).name).toBe('checks.idle.stopping');
  });
});

describe('volts', () => {
  it('of a battery that no starter draws on are questioned: 12.25 V and more while cranking', () => {
    const at = (si: number) =>
      sessionAt(demoSix, 'noFuelCrank.voltage.asking').value('crankingVoltage', si).lines;
    expect(at(12.25)).not.toContain('doubted');
    expect(at(12.26)).toEqual(['doubted']);
  });

  it('at rest below those while cranking, 10.2 V, are questioned', () => {
    const at = (si: number) =>
      sessionAt(demoSix, 'keyOn.battery.asking', { crankingVoltage: 10.2 }).value('batteryVoltage', si).lines;
    expect(at(9.8)).not.toContain('doubted');
    expect(at(9.79)).toEqual(['doubted']);
  });
});

describe('an oil pressure a third above the relief valve, 480 kPa, and more than the gauge may miss', () => {
  it('is questioned', () => {
    const at = (si: number) => sessionAt(demoSix, 'checks.oilPressure.asking').value('oilPressure', si).lines;
    expect(at(675)).not.toContain('doubted');
    expect(at(675.1)).toEqual(['doubted']);
  });
});
