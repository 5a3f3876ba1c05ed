import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { changed, demoFour, demoSix } from '../helpers/profiles.ts';
import { type ReadingLimit, readingLimits } from './readings-table.ts';
import { isDone, lastVerdict, sessionAt } from './sessions.ts';

/** The value is read off, by the second person too where it can hardly be true, read back and confirmed. */
function readOff({ profile = demoSix, step, shown = {}, quantity, after }: ReadingLimit, si: number) {
  const asked = after
    ? sessionAt(profile, after.state, shown).reply(after.reply, { via: 'keys' })
    : sessionAt(profile, `${step}.asking`, shown);
  expect(asked.name).toBe(`${step}.asking`);
  const driver = asked.value(quantity, si);
  if (driver.lines.includes('doubted')) driver.value(quantity, si).value(quantity, si);
  return driver.reply('yes');
}

const cases = (which: 'met' | 'missed') =>
  readingLimits.flatMap(limit => limit[which].map(si => [limit.limit, si, limit] as const));

describe('just met, the step is done', () => {
  it.each(cases('met'))('%s: %d', (_, si, limit) => {
    const driver = readOff(limit, si);
    expect(lastVerdict(driver)).toBe(true);
    expect(isDone(driver, limit.step)).toBe(true);
  });
});

describe('just missed, it is not', () => {
  it.each(cases('missed'))('%s: %d', (_, si, limit) => {
    const driver = readOff(limit, si);
    expect(isDone(driver, limit.step)).toBe(false);
    if (limit.stops) {
      expect(driver.name).toBe('stopped.makingSafe');
      expect(driver.context.stop?.cause).toBe(limit.stops);
    } else expect(driver.name).toBe(`${limit.step}.${limit.staysOpen ? 'outside' : 'asking'}`);
    // What no gauge shows is not judged at all.
    expect(lastVerdict(driver) ?? false).toBe(false);
  });
});

it('the freezing point is held to that of water on a mild night, on the record too', () => {
  const mild = sessionAt(demoSix, 'fill.coolantFreezePoint.asking', { coldestNight: 10 });
  const driver = mild.value('coolantFreezePoint', -1).reply('yes');
  expect(driver.notes.find(({ kind }) => kind === 'verdict')?.data).toMatchObject({ max: 0, margin: 1 });
});

describe('coolant before key-off', () => {
  const said = (si: number, profile = demoSix) =>
    sessionAt(profile, 'shutdown.coolant.asking').value('coolantTemperature', si).reply('yes');

  it('that would boil after it is told as that, and asked for again', () => {
    const thermostat = { ...demoSix.thermostat, fullyOpenC: 115, coolantMaxC: 125 };
    expect(said(110, changed(demoSix, { thermostat })).lines).toContain('boilsAfterKeyOff');
  });

  it('that a thermostat would not let get so hot is told as that, and asked for again', () => {
    expect(said(100).lines).toContain('hotAfterRun');
  });

  it('is read before the engine is left to idle for minutes more', () => {
    const ids = procedureFor(demoSix).map(({ id }) => id);
    expect(ids.indexOf('shutdown.coolant')).toBeLessThan(ids.indexOf('shutdown.settle'));
  });

  it('above the limit of the engine stops it unless that is denied within eight seconds, by voice', () => {
    const hot = () =>
      sessionAt(demoSix, 'shutdown.coolant.asking').value('coolantTemperature', 108, { via: 'voice' });
    expect(hot().clock(7_999).name).toBe('shutdown.coolant.readingBack');
    expect(hot().clock(8_000).context.stop?.cause).toBe('overheating');
    expect(hot().reply('no').name).toBe('shutdown.coolant.asking');
  });

  it('above it by the bus stops the engine at once, and hot by the bus is told', () => {
    const byBus = (si: number) => {
      const driver = sessionAt(demoSix, 'shutdown.coolant.asking');
      return driver.send({ type: 'value', quantity: 'coolantTemperature', si }, { via: 'bus' });
    };
    expect(byBus(108).context.stop?.cause).toBe('overheating');
    expect(byBus(100).lines).toContain('hotAfterRun');
    expect(byBus(100).name).toBe('shutdown.coolant.asking');
  });
});

/** A cap is opened after two looks: tests/machines/cap.test.ts. */
const LOOKED_AT_TWICE: readonly string[] = ['fill.coolantCool', 'signOff.cool'];

// The idle is judged by how it runs.
it('every other gauge of the procedure is in this table', () => {
  const readings = [demoSix, demoFour]
    .flatMap(procedureFor)
    .flatMap(step =>
      step.kind === 'reading' && !step.series && !LOOKED_AT_TWICE.includes(step.id) ? [step.id] : [],
    );
  expect(new Set(readingLimits.map(({ step }) => step))).toEqual(new Set(readings));
});
