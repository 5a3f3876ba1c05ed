import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { unitsOf } from '../../src/engineering/units.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { goUntil, type Rig, rig } from '../helpers/session-rig.ts';

async function asked(key: string, units: 'us' | 'metric' = 'us', language: 'en' | 'fr' | 'es' = 'en') {
  const run = await rig('demo-six', units, undefined, language);
  await run.session.begin();
  await goUntil(run, key);
  return run;
}

const readOff = ({ session }: Rig) => session.moment.context.readings.at(-1);

describe('a number typed in a unit that is not asked for', () => {
  it.each([
    ['5 C', 5, '41 °F'],
    ['5 celsius', 5, '41 °F'],
    ['-5 °C', -5, '23 °F'],
    ['41 F', 5, '41 °F'],
    ['41', 5, '41 °F'],
  ])('"%s" for the air is %d °C, and said back as %s', async (text, degC, shown) => {
    const run = await asked('job.ambient.asking');
    await run.type(text);
    expect(readOff(run)).toMatchObject({ quantity: 'ambientTemperature', si: expect.closeTo(degC, 3) });
    expect(run.said.join(' ')).toContain(shown);
    expect(run.key()).toBe('job.coldestNight.asking');
  });

  it('is converted where it is asked for in metric units, and with a decimal comma', async () => {
    const run = await asked('job.ambient.asking', 'metric', 'fr');
    await run.type('41,9 °F');
    expect(readOff(run)).toMatchObject({ si: expect.closeTo(5.5, 3) });
    expect(run.said.join(' ')).toContain('5,5 °C');
  });

  it('opens nothing by itself: where a number has to be read back, it is, in the unit of the session', async () => {
    const run = await asked('checks.oilPressure.asking');
    await run.type('2 bar');
    expect(run.key()).toBe('checks.oilPressure.readingBack');
    expect(run.said.at(-1)).toContain('29 psi');
  });

  it.each(['41 psi', '12.4 volts', '5 gallons'])(
    'of something else is none, and told by its unit: "%s"',
    async text => {
      const run = await asked('job.ambient.asking');
      await run.type(text);
      expect(run.key()).toBe('job.ambient.asking');
      expect(run.session.moment.context.misheard).toBe(0);
      expect(run.said.at(-1)).toBe('Air temperature: −40 °F to 122 °F.');
    },
  );

  it('is not listened for: by voice each unit has its own words, and no more', () => {
    return asked('job.ambient.asking').then(({ session }) => {
      const slot = (via: 'voice' | 'keys' | 'touch') =>
        grammarOf(session.moment, languages.en, 'us', via).number;
      expect(slot('voice')).not.toHaveProperty('otherUnits');
      expect(slot('voice')).not.toHaveProperty('wrongUnits');
      expect(slot('keys')).toEqual(slot('touch'));
      expect(slot('keys')?.otherUnits?.[0]?.wordings).not.toContain('degrees');
    });
  });
});

describe('a number that is typed and lies far out of all order', () => {
  it.each([
    ['checks.coolant.asking', '280', 'overheating'],
    ['checks.coolant.asking', '135 C', 'overheating'],
    ['checks.idle.item1', '4500', 'overspeed'],
  ])('at %s counts: "%s" stops the engine unless it is denied in time', async (key, text, cause) => {
    const run = await asked(key);
    await run.type(text);
    expect(run.session.moment.context.pending).toMatchObject({ stops: cause });
    run.clock.advance(8000);
    await run.session.settled();
    expect(run.session.moment.context.stop).toMatchObject({ cause });
  });
});

describe('a number typed more finely than a gauge is told', () => {
  it('is said back as it was typed, and kept so', async () => {
    const run = await asked('job.ambient.asking');
    await run.type('41,5');
    expect(run.said.join(' ')).toContain('41.5 °F');
    expect(readOff(run)?.si).toBeCloseTo((41.5 - 32) / 1.8, 9);
  });

  it('stands so where it is read back together with others', async () => {
    const run = await asked('job.ambient.asking');
    for (const text of ['41.5', '23', '1000']) await run.type(text);
    expect(run.said.at(-1)).toContain('41.5 °F');
  });
});

describe('what is offered for the air and the night', () => {
  it.each([
    ['job.ambient.asking', -40, 50],
    ['job.coldestNight.asking', -40, 35],
  ])('at %s is what is accepted: %d to %d °C', async (key, min, max) => {
    const run = await asked(key, 'metric');
    const slot = grammarOf(run.session.moment, languages.en, 'metric', 'touch').number;
    expect([slot?.min, slot?.max]).toEqual([min, max]);
  });
});

it('every unit of a kind leads to every other', () => {
  expect(unitsOf('degC')).toEqual(['degC', 'degF']);
  expect(unitsOf('kPa')).toEqual(['kPa', 'bar', 'psi']);
  expect(unitsOf('litre')).toEqual(['litre', 'usQuart', 'usGallon']);
});
