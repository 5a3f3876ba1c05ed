import { expect, test } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { createFiller } from '../../../src/session/vehicle/filling.ts';
import type { VehicleLook } from '../../../src/session/vehicle/vehicle.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';
import { sessionAt } from '../../machines/limits/sessions.ts';

/** A bus on which the coolant is colder than this day was. */
const look: VehicleLook = {
  value: quantity => (quantity === 'coolantTemperature' ? -25 : null),
  lamps: () => ({}),
  codes: () => [],
  redStop: () => false,
};

test('a value of the bus that was questioned is not given again and again: people are asked', () => {
  const filler = createFiller(procedureFor(demoSix));
  const driver = sessionAt(demoSix, 'warmUp.watch.asking', { coolantTemperature: 5 });
  const body = filler.next(driver.moment, driver.nowMs, look);
  expect(body).toMatchObject({ type: 'value', si: -25 });
  if (body) driver.send(body, { via: 'bus' });
  expect(driver.lines).toEqual(['doubtedBus']);
  for (const afterMs of [2000, 200_000])
    expect(filler.next(driver.moment, driver.nowMs + afterMs, look)).toBe(null);
});
