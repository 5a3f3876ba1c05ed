import { describe, expect, it } from 'vitest';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import { demoSix } from '../helpers/profiles.ts';
import { isDone, sessionAt } from '../limits/sessions.ts';

/** As somebody with a gauge in Fahrenheit says it. */
const fahrenheit = (value: number) => (value - 32) / 1.8;
const doubts = (driver: ReturnType<typeof sessionAt>) => driver.notes.filter(ofKind('doubted'));

describe('coolant that falls from 190 to 86 °F within eight seconds', () => {
  const hot = () =>
    sessionAt(demoSix, 'signOff.cool.asking', { coolantTemperature: 85 }).value(
      'coolantTemperature',
      fahrenheit(190),
      { afterMs: 60_000 },
    );
  const said = () =>
    hot()
      .reply('yes')
      .value('coolantTemperature', fahrenheit(150))
      .value('coolantTemperature', fahrenheit(86));

  it('opens no cap: it is questioned, with what it could be by now', () => {
    const driver = said();
    expect(driver.name).toBe('signOff.cool.asking');
    expect(driver.lines).toEqual(['doubted']);
    expect(doubts(driver).map(({ data }) => data.met)).toEqual([false, false]);
    expect(driver.last.said[0]?.values).toMatchObject({ why: { line: 'whyBefore' } });
    expect(isDone(driver, 'signOff.cool')).toBe(false);
  });

  it('is not made true by saying it again: the second person is asked to read it by other means', () => {
    const again = said().value('coolantTemperature', fahrenheit(86));
    expect(again.name).toBe('signOff.cool.vouching');
    expect(again.lines).toContain('vouchAsk');
    const bySame = again.fork().value('coolantTemperature', fahrenheit(86), { by: 'technician' });
    expect(bySame.name).toBe('signOff.cool.vouching');
    expect(isDone(bySame.reply('yes'), 'signOff.cool')).toBe(false);
  });

  it('is taken where the second person reads it too, and that is on the record', () => {
    const again = said()
      .value('coolantTemperature', fahrenheit(86))
      .value('coolantTemperature', fahrenheit(88));
    expect(again.name).toBe('signOff.cool.readingBack');
    expect(again.notes.find(ofKind('vouched'))?.data).toMatchObject({
      by: 'second',
      quantity: 'coolantTemperature',
    });
    // A cap takes two looks.
    again
      .reply('yes')
      .ring()
      .value('coolantTemperature', fahrenheit(86), { afterMs: 4 * 3_600_000 })
      .reply('yes');
    expect(isDone(again, 'signOff.cool')).toBe(true);
  });

  it('is taken by nobody where the second person reads another value', () => {
    const other = said()
      .value('coolantTemperature', fahrenheit(86))
      .value('coolantTemperature', fahrenheit(180));
    expect(other.name).toBe('signOff.cool.asking');
    expect(other.lines).toContain('readingsDiffer');
  });

  it('is not vouched for by the bus: a sensor that has lost its coolant is read by both', () => {
    const si = fahrenheit(86);
    const driver = hot().reply('yes');
    driver.send({ type: 'value', quantity: 'coolantTemperature', si, bus: { si } });
    expect(driver.lines).toEqual(['doubted']);
  });
});

describe('coolant at -20 °F in a running engine, with air at 41 °F', () => {
  it('is questioned: nothing in an engine is colder than the air it stood in', () => {
    const driver = sessionAt(demoSix, 'checks.coolant.asking').value('coolantTemperature', fahrenheit(-20));
    expect(driver.name).toBe('checks.coolant.asking');
    expect(driver.lines).toEqual(['doubted']);
    expect(driver.last.said[0]?.values).toMatchObject({ why: { line: 'whyAir' } });
    const coolant = driver.context.readings.filter(({ quantity }) => quantity === 'coolantTemperature');
    expect(coolant).toEqual([]);
  });
});

describe('"thermostat open" at 60 °F', () => {
  const warm = (value: number) => {
    const driver = sessionAt(demoSix, 'warmUp.watch.asking');
    driver.value('coolantTemperature', fahrenheit(value), { afterMs: 300_000 }).reply('yes');
    return driver.reply('thermostatOpen').reply('yes');
  };

  it('does not end the warm-up: the gauge is read first', () => {
    const driver = warm(60);
    expect(isDone(driver, 'warmUp.watch')).toBe(false);
    expect(doubts(driver).at(-1)?.data).toMatchObject({ reply: 'thermostatOpen', met: false });
  });

  it('ends it within what thermostat and gauge may miss of 180 °F, 82 °C', () => {
    expect(isDone(warm(165.3), 'warmUp.watch')).toBe(true);
    expect(isDone(warm(165.1), 'warmUp.watch')).toBe(false);
  });

  it('ends nothing where no coolant was read at all', () => {
    const driver = sessionAt(demoSix, 'warmUp.watch.asking');
    driver.reply('thermostatOpen', { afterMs: 300_000 });
    expect(driver.lines).toEqual(['readFirst']);
    expect(driver.name).toBe('warmUp.watch.asking');
  });
});

describe('a doubt never holds up a stop', () => {
  it('coolant that jumps above its limit stops the engine, however fast it came', () => {
    const driver = sessionAt(demoSix, 'warmUp.watch.asking').value('coolantTemperature', 20).reply('yes');
    driver.value('coolantTemperature', 120).reply('yes');
    expect(driver.context.stop?.cause).toBe('overheating');
  });
});
