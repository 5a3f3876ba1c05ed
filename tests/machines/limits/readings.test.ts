import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { demoFour, demoSix } from '../helpers/profiles.ts';
import { type ReadingLimit, readingLimits } from './readings-table.ts';
import { isDone, lastVerdict, sessionAt } from './sessions.ts';

/** The value is read off, by the second person too where it can hardly be true, read back and confirmed. */
function readOff({ profile = demoSix, step, shown = {}, quantity }: ReadingLimit, si: number) {
  const driver = sessionAt(profile, `${step}.asking`, shown).value(quantity, si);
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

it('coolant that would boil after key-off is told as that, and asked for again', () => {
  const driver = sessionAt(demoSix, 'shutdown.coolant.asking').value('coolantTemperature', 110).reply('yes');
  expect(driver.lines).toContain('boilsAfterKeyOff');
});

it('every gauge of the procedure is in this table, except the idle, which is judged by how it runs', () => {
  const readings = [demoSix, demoFour]
    .flatMap(procedureFor)
    .flatMap(step => (step.kind === 'reading' && !step.series ? [step.id] : []));
  expect(new Set(readingLimits.map(({ step }) => step))).toEqual(new Set(readings));
});
