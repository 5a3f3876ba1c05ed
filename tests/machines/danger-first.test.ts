import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../machines/events.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { offerOf } from '../../machines/moment.ts';
import type { Judge } from '../../machines/steps.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { Driver } from './helpers/driver.ts';
import { goodValue } from './helpers/good.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';

/** The same sequences on every run. */
const SEED = 20_261_129;

/** Seconds within which a value that stops the engine has to be denied. */
const DENY_MS = 8000;

/** What a gauge can show that stops the engine. */
const dangerous: Partial<Record<Quantity, readonly number[]>> = {
  oilPressure: [0, 1],
  coolantTemperature: [118, 112],
  engineSpeed: [3400, 3900],
};

/** What stops the session in a step that reads a gauge beside a running engine, where anything does. */
function stopsAt(profile: Profile, id: string): Judge | null {
  const step = procedureFor(profile).find(each => each.id === id);
  if (step?.engine !== 'running') return null;
  if (step.kind === 'watch') return step.reading?.bounds ?? null;
  if (step.kind !== 'reading') return null;
  if (step.series) return step.series.bounds?.judge ?? null;
  return step.bounds?.judge ?? (step.outside === 'again' ? null : step.judge);
}

interface Place {
  readonly driver: Driver;
  readonly quantity: Quantity;
  /** Values that stop there, by the step's own rule. */
  readonly bad: readonly number[];
}

/** Every question of a good start that a value may be said to which stops the engine. */
function places(profile: Profile): Place[] {
  const driver = new Driver(profile);
  const found = new Map<string, Place>();
  while (!driver.over) {
    const { quantity, corrects } = offerOf(driver.moment);
    const asked = quantity ?? corrects;
    const judge = stopsAt(profile, driver.context.step);
    if (asked && judge && !found.has(driver.name)) {
      const bad = (dangerous[asked] ?? []).filter(si => {
        const judgement = judge(driver.context, si);
        return judgement.ok && !judgement.value.met;
      });
      if (bad.length > 0) found.set(driver.name, { driver: driver.fork([]), quantity: asked, bad });
    }
    driver.good();
  }
  return [...found.values()];
}

const all = [demoSix, demoFour, demoBoat].flatMap(places);

/** What may speak against a number, and what was said before it. */
const doubts = fc.record({
  before: fc.array(fc.constantFrom('unclear', 'good', 'bad', 'unlikely', 'bus'), { maxLength: 4 }),
  which: fc.nat(1),
  bus: fc.boolean(),
  ear: fc.boolean(),
  otherVoice: fc.boolean(),
  by: fc.constantFrom('technician' as const, 'second' as const),
  via: fc.constantFrom('voice' as const, 'keys' as const),
});

/** Hardly true, and not dangerous. */
const unlikely: Partial<Record<Quantity, number>> = {
  oilPressure: 800,
  coolantTemperature: -20,
  engineSpeed: 400,
};

/** It is stopped, or will be within the seconds to deny it. */
const isStopping = (driver: Driver, sinceMs: number) =>
  driver.context.stop !== null ||
  (driver.context.deadline !== null && driver.context.deadline.atMs <= sinceMs + DENY_MS);

describe('a value that stops the engine', () => {
  it('is asked for in oil pressure, coolant and speed, and in their read-backs', () => {
    expect(new Set(all.map(({ quantity }) => quantity))).toEqual(
      new Set(['oilPressure', 'coolantTemperature', 'engineSpeed']),
    );
    expect(all.length).toBeGreaterThan(20);
  });

  it('is held up by no doubt: whatever bus, ear, voice or misunderstanding speaks against it, it is denied in eight seconds, or it counts', () => {
    const reached = { stopped: 0, counting: 0 };
    fc.assert(
      fc.property(fc.nat(all.length - 1), doubts, (place, way) => {
        const at = all[place];
        if (!at) throw new Error('There is no such place.');
        const { driver: begun, quantity, bad } = at;
        const driver = begun.fork([]);
        const { step } = driver.context;
        for (const what of way.before) {
          if (driver.context.stop || driver.context.step !== step) return;
          if (what === 'unclear') driver.send({ type: 'unclear' }, { afterMs: 200 });
          if (what === 'good') driver.value(quantity, goodValue(quantity, driver.moment), { afterMs: 200 });
          if (what === 'bad') driver.value(quantity, bad[0] ?? 0, { afterMs: 200 });
          if (what === 'unlikely')
            driver.value(quantity, unlikely[quantity] ?? 0, { afterMs: 200, via: 'keys' });
          if (what === 'bus')
            driver.value(quantity, goodValue(quantity, driver.moment), { afterMs: 200, via: 'bus' });
        }
        const { quantity: asked, corrects } = offerOf(driver.moment);
        if (driver.context.stop || driver.context.step !== step || (asked ?? corrects) !== quantity) return;
        const si = bad[way.which % bad.length] ?? 0;
        const good = goodValue(quantity, driver.moment);
        const { before: _, which: __, bus, ear, otherVoice, ...how } = way;
        driver.send(
          {
            type: 'value',
            quantity,
            si,
            ...(bus ? { bus: { si: good } } : {}),
            ...(ear ? { ear: { speedRpm: 850 } } : {}),
            ...(otherVoice ? { voice: { of: 'technician', certainty: 1 } } : {}),
          } as Omit<SessionEvent, 'atMs' | 'by' | 'via'> as never,
          how,
        );
        expect(isStopping(driver, driver.nowMs), driver.name).toBe(true);
        const left = driver.fork([]).clock(DENY_MS);
        expect(left.context.stop, driver.name).not.toBeNull();
        if (driver.context.stop) reached.stopped += 1;
        else reached.counting += 1;
      }),
      { seed: SEED, numRuns: 800 },
    );
    expect(reached.counting).toBeGreaterThan(200);
  });

  it('against what the bus shows is read back beside it, and silence stops', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking');
    driver.send({ type: 'value', quantity: 'oilPressure', si: 0, bus: { si: 300 } }, { via: 'voice' });
    expect(driver.name).toBe('checks.oilPressure.readingBack');
    expect(driver.lines).toEqual(['readBackDiffers']);
    expect(driver.clock(DENY_MS).context.stop).toMatchObject({
      cause: 'noOilPressure',
      found: 'noOilPressure',
    });
  });

  it('read by the second person, who was to vouch for another one, is no difference of readings', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking');
    driver.value('oilPressure', 800, { via: 'keys' }).value('oilPressure', 800, { via: 'keys' });
    expect(driver.name).toBe('checks.oilPressure.vouching');
    driver.value('oilPressure', 0, { via: 'keys', by: 'second' });
    expect(driver.name).toBe('checks.oilPressure.readingBack');
    expect(driver.clock(DENY_MS).context.stop?.cause).toBe('noOilPressure');
  });

  it('said twice in other figures has no more seconds than the first', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking').value('oilPressure', 0);
    driver.value('oilPressure', 1, { afterMs: 5000 });
    expect(driver.name).toBe('checks.oilPressure.readingBack');
    expect(driver.context.pending).toMatchObject({ si: 1, stops: 'noOilPressure' });
    expect(driver.clock(2999).context.stop).toBeNull();
    expect(driver.clock(1).context.stop?.cause).toBe('noOilPressure');
  });

  it('is still denied by people in time', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking').value('oilPressure', 0);
    driver.reply('no', { afterMs: 7000 });
    expect(driver.name).toBe('checks.oilPressure.asking');
    expect(driver.context).toMatchObject({ stop: null, deadline: null });
  });
});
