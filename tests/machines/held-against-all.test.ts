import { describe, expect, it } from 'vitest';
import type { BusSight } from '../../machines/events.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;
const stopped = () => sessionAt(demoSix, 'warmUp.watch.between').stop();
const allOff = (bus: BusSight) => ({ type: 'reply', id: 'allOff', bus }) as const;
const hazards = (driver: ReturnType<typeof stopped>) =>
  driver.last.said.filter(({ priority }) => priority === 'hazard');

/** Of a truck with 24 V whose oil pressure shows from 70 kPa on. */
const { showsKpa } = demoSix.oilPressure;
const CHARGED_V = (demoSix.systemVoltage / 12) * 14.2;
const RESTING_V = (demoSix.systemVoltage / 12) * 12.7;

describe('"all is off", held against all that the bus shows at that moment', () => {
  it.each([
    ['oil pressure', { oilPressureKpa: 300 }, { quantity: 'oilPressure', si: 300 }],
    ['a charging voltage', { chargingV: CHARGED_V }, { quantity: 'chargingVoltage', si: CHARGED_V }],
  ] as const)(
    'is not taken beside %s of a running engine: what cuts it off is told, and the question stays',
    (_, bus, shown) => {
      for (const how of [KEYS, { via: 'voice' } as const]) {
        const driver = stopped().send(allOff(bus), how);
        expect(driver.name).toBe('stopped.makingSafe');
        expect(hazards(driver)).toMatchObject([
          {
            line: 'stillShowsRunning',
            values: { name: { quantityName: shown.quantity }, shown, cut: { line: 'cutKnown' } },
          },
        ]);
        expect(driver.context.lastSaid).toMatchObject({ line: 'areAllOff' });
      }
    },
  );

  it('is taken when it is said again: a charger shows a voltage, and a sender that sticks a pressure, for ever', () => {
    for (const bus of [{ chargingV: CHARGED_V }, { oilPressureKpa: 300 }]) {
      const driver = stopped().send(allOff(bus), KEYS).send(allOff(bus), KEYS);
      expect(driver.name).toBe('stopped.askingCause');
      const turning = stopped()
        .send(allOff({ speedRpm: 700 }), KEYS)
        .send(allOff({ speedRpm: 700 }), KEYS);
      expect(turning.name).toBe('stopped.makingSafe');
    }
    const spoken = stopped();
    for (let turn = 0; turn < 4 && spoken.name.startsWith('stopped.makingSafe'); turn += 1)
      spoken
        .send(allOff({ oilPressureKpa: 300 }))
        .send({ type: 'reply', id: 'yes', bus: { oilPressureKpa: 300 } });
    expect(spoken.name).toBe('stopped.askingCause');
  });

  it('is taken where the bus is silent, shows a speed that stands, or what an engine at rest has', () => {
    for (const bus of [
      {},
      { speedRpm: 0, oilPressureKpa: 300, chargingV: CHARGED_V },
      { oilPressureKpa: showsKpa - 1 },
      { chargingV: RESTING_V },
    ])
      expect(stopped().send(allOff(bus), KEYS).name, JSON.stringify(bus)).toBe('stopped.askingCause');
    expect(stopped().reply('allOff', KEYS).name).toBe('stopped.askingCause');
  });

  it.each([
    ['turns', { bus: { speedRpm: 700 } }, 'stillTurns'],
    ['has oil pressure', { bus: { oilPressureKpa: showsKpa } }, 'stillShowsRunning'],
    ['is heard turning', { ear: { speedRpm: 700 } }, 'heardTurning'],
  ] as const)('is not confirmed either by "correct" while it %s: it is asked anew', (_, seen, line) => {
    const driver = stopped().reply('allOff');
    expect(driver.name).toBe('stopped.makingSafeReadBack');
    driver.send({ type: 'reply', id: 'yes', ...seen });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(hazards(driver)).toMatchObject([{ line }]);
    expect(driver.context.lastSaid).toMatchObject({ line: 'areAllOff' });
    expect(driver.reply('allOff').reply('yes').name).toBe('stopped.askingCause');
  });

  it('goes for the key that was turned off at the end as well', () => {
    const driver = sessionAt(demoSix, 'shutdown.keyOff.asking');
    const off = { type: 'reply', id: 'engineOff', bus: { oilPressureKpa: 200 } } as const;
    expect(driver.send(off, KEYS).name).toBe('shutdown.keyOff.asking');
    expect(hazards(driver)).toMatchObject([{ line: 'stillShowsRunning' }]);
  });
});
