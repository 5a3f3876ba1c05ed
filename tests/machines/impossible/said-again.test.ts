import { describe, expect, it } from 'vitest';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import { demoSix } from '../helpers/profiles.ts';
import { isDone, sessionAt } from '../limits/sessions.ts';

/* Two thermometers of coolant are each within 4 K of the truth: they agree within 8. */

/** A cap that was read at 85 degC a minute ago, and 30 now. */
const doubted = () =>
  sessionAt(demoSix, 'signOff.cool.asking', { coolantTemperature: 85 })
    .value('coolantTemperature', 85, { afterMs: 60_000 })
    .reply('yes')
    .value('coolantTemperature', 30);
const count = (driver: ReturnType<typeof doubted>) => driver.notes.filter(ofKind('doubted')).length;

describe('a value that was doubted', () => {
  it('stands on the record with what it would have to be', () => {
    const driver = doubted();
    expect(driver.name).toBe('signOff.cool.asking');
    expect(driver.notes.findLast(ofKind('doubted'))?.data).toMatchObject({
      step: 'signOff.cool',
      quantity: 'coolantTemperature',
      value: 30,
      unit: 'degC',
      met: false,
      min: expect.any(Number),
    });
    expect(driver.notes.findLast(ofKind('doubted'))?.data).not.toHaveProperty('via');
    expect(driver.last.said[0]?.values).toMatchObject({
      name: { quantityName: 'coolantTemperature' },
      spoken: { quantity: 'coolantTemperature', si: 30 },
      limits: { limits: { unit: 'degC' } },
    });
  });

  it.each([22, 30, 38])('is for the second person where it is said again: %d', si => {
    const again = doubted().value('coolantTemperature', si);
    expect(again.name).toBe('signOff.cool.vouching');
    expect(count(again)).toBe(1);
    expect(again.context.doubted).toEqual({ quantity: 'coolantTemperature', si });
    expect(again.context.misheard).toBe(0);
  });

  it.each([21.9, 38.1])('is another where they do not agree, and doubted anew: %d', si => {
    const other = doubted().value('coolantTemperature', si);
    expect(other.name).toBe('signOff.cool.asking');
    expect(count(other)).toBe(2);
    expect(other.context.doubted).toEqual({ quantity: 'coolantTemperature', si });
  });
});

describe('the second person, asked to read it too', () => {
  const vouching = () => doubted().value('coolantTemperature', 30);

  it.each([22, 38])('vouches for it by what agrees: %d', si => {
    const driver = vouching().value('coolantTemperature', si, { by: 'second' });
    expect(driver.name).toBe('signOff.cool.readingBack');
    expect(driver.notes.findLast(ofKind('vouched'))?.data).toEqual({
      step: 'signOff.cool',
      quantity: 'coolantTemperature',
      value: si,
      before: 30,
      unit: 'degC',
      by: 'second',
    });
    // A cap takes two looks.
    driver
      .reply('yes')
      .ring()
      .value('coolantTemperature', 30, { afterMs: 4 * 3_600_000 })
      .reply('yes');
    expect(isDone(driver, 'signOff.cool')).toBe(true);
  });

  it.each([21.9, 38.1])('does not by what differs: it is asked from the beginning: %d', si => {
    const driver = vouching().value('coolantTemperature', si, { by: 'second' });
    expect(driver.name).toBe('signOff.cool.asking');
    expect(driver.last.said.find(({ line }) => line === 'readingsDiffer')?.values).toEqual({
      name: { quantityName: 'coolantTemperature' },
      before: { quantity: 'coolantTemperature', si: 30 },
      now: { quantity: 'coolantTemperature', si },
    });
    expect(driver.context.doubted).toBeNull();
    expect(driver.notes.filter(ofKind('vouched'))).toEqual([]);
  });

  it('may not have read it yet: it is asked from the beginning', () => {
    const driver = vouching().reply('notYet', { by: 'second' });
    expect(driver.name).toBe('signOff.cool.asking');
    expect(driver.context.doubted).toBeNull();
  });

  it('is nobody else: not the technician, not the bus, and not what no gauge shows', () => {
    for (const how of [{ by: 'technician' }, { by: 'second', via: 'bus' }] as const)
      expect(vouching().value('coolantTemperature', 30, how).name).toBe('signOff.cool.vouching');
    expect(vouching().value('coolantTemperature', -61, { by: 'second' }).name).toBe('signOff.cool.vouching');
  });
});

describe('a running engine', () => {
  const cold = () => sessionAt(demoSix, 'checks.coolant.asking');

  it('is vouched for by a bus that shows the same, within gauge and sensor', () => {
    const said = (bus: number) =>
      cold().send({ type: 'value', quantity: 'coolantTemperature', si: -30, bus: { si: bus } }).lines;
    expect(said(-30)).not.toContain('doubted');
    expect(said(-37)).not.toContain('doubted');
    expect(said(-37.1)).toContain('doubted');
  });

  it('of which the bus shows what can hardly be true is questioned once, and left to people from then on', () => {
    const shown = cold().value('coolantTemperature', -30, { via: 'bus' });
    expect(shown.lines).toEqual(['doubtedBus']);
    expect(shown.notes.findLast(ofKind('doubted'))?.data).toMatchObject({ value: -30, via: 'bus' });
    const again = shown.value('coolantTemperature', -30, { via: 'bus' });
    expect(again.lines).toEqual([]);
    expect(again.name).toBe('checks.coolant.asking');
    expect(again.value('coolantTemperature', -30).name).toBe('checks.coolant.vouching');
  });
});
