import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoProfiles, loadProfile, ProfileError, parseProfile } from '../../src/profile/load.ts';

const texts = await Promise.all(
  demoProfiles.map(name => readFile(new URL(`../../src/profile/demo/${name}.json`, import.meta.url), 'utf8')),
);
const [six = '', four = ''] = texts;

type Path = readonly (string | number)[];

/** Puts a value, or with `undefined` nothing, at a path of the demo profile, and reads it as a profile. */
function withAt(path: Path, value: unknown, text = six): string {
  const data: unknown = JSON.parse(text);
  const inner = path.slice(0, -1).reduce<unknown>((at, part) => Reflect.get(Object(at), part), data);
  const last = path.at(-1) ?? '';
  if (value === undefined) Reflect.deleteProperty(Object(inner), last);
  else Reflect.set(Object(inner), last, value);
  return JSON.stringify(data);
}

function faultsOf(text: string): readonly string[] {
  try {
    parseProfile(text, 'test.json');
  } catch (error) {
    if (error instanceof ProfileError) return error.faults;
    throw error;
  }
  return [];
}

/** What is wrong, the path that has to be named, and what the sentence has to say of it. */
const wrong: readonly (readonly [title: string, path: Path, value: unknown, where: string, says: RegExp])[] =
  [
    ['a missing key', ['coolant', 'kind'], undefined, 'coolant.kind', /is missing.*"ethylene".*"propylene"/],
    ['a missing part', ['starter'], undefined, 'starter', /is missing.*object/],
    ['an unknown key', ['oil', 'capasityL'], 15, 'oil', /"capasityL" is not a known key; remove it/],
    ['an unknown key at the top', ['colour'], 'red', 'the profile', /"colour" is not a known key/],
    ['a wrong type', ['oil', 'capacityL'], '15', 'oil.capacityL', /"15" is not allowed.*number/],
    ['a number that is null', ['oil', 'capacityL'], null, 'oil.capacityL', /null is not allowed.*number/],
    ['a list that is none', ['sensors'], {}, 'sensors', /\{\} is not allowed.*array/],
    ['too small a number', ['starter', 'maxBursts'], 0, 'starter.maxBursts', /0 is not allowed.*1/],
    ['too large a number', ['fuel', 'tankL'], 3001, 'fuel.tankL', /3001 is not allowed.*3000/],
    ['a broken number', ['engine', 'cylinders'], 5.5, 'engine.cylinders', /5.5 is not allowed.*int/],
    ['a voltage that no battery has', ['systemVoltage'], 13, 'systemVoltage', /13 is not allowed.*12.*24/],
    ['another schema', ['schema'], 'v2', 'schema', /"v2" is not allowed.*first-fire-profile\/1/],
    ['an empty name', ['name'], ' ', 'name', /" " is not allowed.*1 character/],
    [
      'a name that is no id',
      ['sensors', 0, 'id'],
      'Oil P',
      'sensors[0].id',
      /"Oil P" is not allowed.*camelCase/,
    ],
    ['a grade that is none', ['oil', 'grades', 1, 'grade'], '30', 'oil.grades[1].grade', /"30".*15W-40/],
    ['an empty list', ['sensors'], [], 'sensors', /is not allowed.*1/],
    ['too few sweeps', ['sweeps'], [{ rpm: 1400 }], 'sweeps', /is not allowed.*5/],
    ['a state that no lamp has', ['lamps', 2, 'running'], 'dim', 'lamps[2].running', /"dim".*"on".*"off"/],
    ['sweeps that fall', ['sweeps', 2, 'rpm'], 1100, 'sweeps', /rise from one sweep to the next/],
    [
      'heat-soak looks out of order',
      ['shutdown', 'heatSoakLooksAfterS'],
      [420, 120],
      'shutdown.heatSoakLooksAfterS',
      /\[420,120\] is not allowed.*rise from one look to the next/,
    ],
    [
      'speeds out of order in the pressure floor',
      ['oilPressure', 'floor', 0, 'points', 1, 'rpm'],
      400,
      'oilPressure.floor[0].points',
      /rising order of rpm/,
    ],
    [
      'temperatures out of order in the pressure floor',
      ['oilPressure', 'floor', 1, 'oilC'],
      20,
      'oilPressure.floor',
      /rising order of oilC/,
    ],
    ['heater waits out of order', ['heater', 'waits', 1, 'atC'], -50, 'heater.waits', /rising order of atC/],
    ['a lamp that is not there', ['heater', 'lampId'], 'glow', 'heater.lampId', /names no lamp.*waitToStart/],
    ['an id used twice', ['sensors', 3, 'id'], 'oilPressure', 'sensors[3].id', /"oilPressure" is used twice/],
    ['a lamp used twice', ['lamps', 1, 'id'], 'redStop', 'lamps[1].id', /"redStop" is used twice/],
    [
      'a retorque item used twice',
      ['retorque', 1, 'id'],
      'exhaustManifold',
      'retorque[1].id',
      /"exhaustManifold" is used twice/,
    ],
    ['an idle upside down', ['idle', 'cold', 'minRpm'], 1000, 'idle.cold', /minRpm has to be below maxRpm/],
    ['a thermostat upside down', ['thermostat', 'opensC'], 95, 'thermostat.opensC', /below fullyOpenC/],
    ['a thermostat too hot', ['thermostat', 'fullyOpenC'], 107, 'thermostat.fullyOpenC', /below coolantMaxC/],
    ['a warm-up upside down', ['warmUp', 'minS'], 2700, 'warmUp.minS', /below maxS/],
    ['an idle shorter than the warm-up', ['warmUp', 'idleMaxS'], 239, 'warmUp.idleMaxS', /from minS to maxS/],
    ['an idle longer than the warm-up', ['warmUp', 'idleMaxS'], 2701, 'warmUp.idleMaxS', /from minS to maxS/],
    [
      'a watched fault without a time',
      ['faults', 0, 'watchS'],
      undefined,
      'faults[0].watchS',
      /watchS is needed/,
    ],
    ['a time for a fault that blocks', ['faults', 1, 'watchS'], 60, 'faults[1].watchS', /watchS is needed/],
    ['an impossible failure mode', ['faults', 1, 'fmi'], 32, 'faults[1].fmi', /32 is not allowed.*31/],
    [
      'a fault judged twice',
      ['faults', 1],
      { spn: 157, fmi: 18, judgement: 'goOn', because: 'x' },
      'faults[1]',
      /judged twice/,
    ],
    [
      'a second filter alone',
      ['fuel', 'filters', 0, 'id'],
      'second',
      'fuel.filters',
      /list the filter "first"/,
    ],
    [
      'a skip that opens a gate',
      ['allowedSkips'],
      ['prime.firm'],
      'allowedSkips[0]',
      /"prime.firm".*prime.strokes/,
    ],
    ['shares of glycol upside down', ['coolant', 'minShare'], 0.7, 'coolant.minShare', /maxShare/],
    [
      'pump efficiencies upside down',
      ['priming', 'leastEfficiency'],
      0.9,
      'priming.leastEfficiency',
      /greatestEfficiency/,
    ],
    [
      'a spoken reading that the bus does not give',
      ['bus', 'readings'],
      ['engineSpeed'],
      'bus.spoken[0]',
      /"ambientTemperature".*not in readings/,
    ],
    [
      'a reading that no bus gives',
      ['bus', 'readings', 0],
      'altitude',
      'bus.readings[0]',
      /"altitude".*"engineSpeed"/,
    ],
    ['a bit rate that no bus has', ['bus', 'bitRate'], 125000, 'bus.bitRate', /125000.*250000.*500000/],
    [
      'an overspeed that a sweep comes to',
      ['bus', 'overspeedRpm'],
      1800,
      'bus.overspeedRpm',
      /above every idle and sweep, 1800/,
    ],
    ['fuels upside down', ['fuel', 'no1CloudC'], 0, 'fuel.no1CloudC', /below no2CloudC/],
  ];

describe('a profile that is wrong', () => {
  it.each(wrong)(
    'with %s gets one sentence: where, what, and what is allowed',
    (_, path, value, where, says) => {
      const faults = faultsOf(withAt(path, value));
      expect(faults).toHaveLength(1);
      expect(faults[0]?.startsWith(`${where}: `)).toBe(true);
      expect(faults[0]).toMatch(says);
      expect(faults[0]).toMatch(/[^.]\.$/);
      expect(faults[0]).not.toMatch(/undefined|\[object|Invalid input\b/);
    },
  );

  it('in several places gets a sentence for each', () => {
    const text = withAt(
      ['oil', 'capacityL'],
      -1,
      withAt(['fuel', 'tankL'], 'full', withAt(['warmUp'], undefined)),
    );
    const faults = faultsOf(text);
    expect(faults.map(fault => fault.split(':')[0]).sort()).toEqual([
      'fuel.tankL',
      'oil.capacityL',
      'warmUp',
    ]);
  });

  it('is named in the error', () => {
    expect(() => parseProfile('{}', 'mine.json')).toThrow(/^Profile mine\.json: /);
  });

  it.each(['', '{', 'null', '[]', '5', '"text"', '{"schema":'])('that reads %j is refused', text => {
    expect(faultsOf(text).length).toBeGreaterThan(0);
  });
});

describe('a profile that is right', () => {
  it.each(demoProfiles)('like %s loads by its name, and says that it is invented', async name => {
    const profile = await loadProfile(name);
    expect(profile.invented).toBe(true);
  });

  it('loads from a file', async () => {
    const path = new URL('../../src/profile/demo/demo-four.json', import.meta.url).pathname;
    expect(await loadProfile(path)).toEqual(parseProfile(four, 'demo-four'));
  });

  it('that is not there is told so in a sentence, with what could be given', async () => {
    await expect(loadProfile('/nowhere/engine.json')).rejects.toThrow(
      'Profile /nowhere/engine.json: cannot be read: there is no such file or folder; give the path of a profile or one of demo-six, demo-four, demo-genset, demo-boat.',
    );
    await expect(loadProfile('/')).rejects.toThrow(
      /^Profile \/: cannot be read: it is a folder; give the path/,
    );
    await expect(loadProfile('README.md')).rejects.toThrow(
      'Profile README.md: is not JSON: it does not begin with "{"; correct it, or make a profile: npm start -- engine new.',
    );
  });

  it('may do without a bus, as demo-four does', () => {
    expect(parseProfile(withAt(['bus'], undefined), 'x').bus).toBeUndefined();
    expect(parseProfile(four, 'demo-four').bus).toBeUndefined();
  });

  it('may do without a heater', () => {
    expect(parseProfile(withAt(['heater'], null), 'x').heater).toBe(null);
  });
});

/** Every path in a value, its inner nodes included. */
function pathsIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, at]) =>
    pathsIn(at, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length === 0 ? inner : [path, ...inner];
}

const paths = pathsIn(JSON.parse(six));
const nonsense = fc.oneof(
  fc.constant(undefined),
  fc.jsonValue(),
  fc.double(),
  fc.constantFrom(null, true, -1, 0, 1e9, '', '__proto__', [], {}, [null], [{}]),
);

describe('whatever a profile holds', () => {
  it('it loads, or is refused with sentences: nothing else comes of it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...paths), nonsense), { minLength: 1, maxLength: 4 }),
        changes => {
          let text = six;
          for (const [path, value] of changes) {
            try {
              text = withAt(path, value, text);
            } catch {
              // An earlier change has taken away where this one would go.
            }
          }
          for (const fault of faultsOf(text)) expect(fault).toMatch(/^\S.*\.$/s);
        },
      ),
      { seed: 2026, numRuns: 1500 },
    );
  });

  it('text that is no profile at all is refused with a ProfileError', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), text => {
        expect(() => parseProfile(text, 'x')).toThrow(ProfileError);
      }),
      { seed: 2027, numRuns: 500 },
    );
  });

  it('every key is needed: without it, the sentence names it', () => {
    const optional = [/^heater$/, /^bus$/, /watchS$/, /^idleMaxS$/, /^fastIdleRpm$/, /^\d+$/];
    for (const path of paths) {
      const last = path.at(-1);
      if (typeof last !== 'string' || optional.some(each => each.test(last))) continue;
      const where = path.reduce<string>(
        (text, part) =>
          typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`,
        '',
      );
      const faults = faultsOf(withAt(path, undefined));
      expect([where, faults.some(fault => fault.startsWith(`${where}: is missing; `))]).toEqual([
        where,
        true,
      ]);
    }
  });
});
