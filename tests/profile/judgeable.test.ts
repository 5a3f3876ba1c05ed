import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgePressure } from '../../machines/limits/oil.ts';
import { profileData } from '../../src/interview/build.ts';
import { parseProfile } from '../../src/profile/load.ts';
import { ProfileError } from '../../src/profile/parse.ts';
import { fastestRpm, type Profile } from '../../src/profile/schema.ts';
import { randomInterview } from '../interview/random-interview.ts';
import { knowing } from '../machines/limits/known.ts';

const text = readFileSync('src/profile/demo/demo-six.json', 'utf8');
type Writable<T> = T extends object ? { -readonly [Key in keyof T]: Writable<T[Key]> } : T;

/** What is said of the invented six with something changed; null where it is accepted. */
function refusal(change: (profile: Writable<Profile>) => void): string | null {
  const profile: Writable<Profile> = JSON.parse(text);
  change(profile);
  try {
    parseProfile(JSON.stringify(profile), 'x');
    return null;
  } catch (error) {
    if (!(error instanceof ProfileError)) throw error;
    expect(error.faults).toHaveLength(1);
    return error.faults[0] ?? '';
  }
}

/** Reads as: where, what, and what it has to be. */
const refused: readonly (readonly [what: string, where: string, (profile: Writable<Profile>) => void])[] = [
  [
    'floors that end below the last sweep',
    'oilPressure.floor',
    ({ oilPressure }) => {
      for (const row of oilPressure.floor) row.points = row.points.slice(0, 3);
    },
  ],
  [
    'floors that begin above the idle',
    'oilPressure.floor',
    ({ oilPressure }) => {
      for (const row of oilPressure.floor) row.points = row.points.slice(2);
    },
  ],
  [
    'a hottest row that is colder than the coolant may be',
    'oilPressure.floor',
    ({ oilPressure }) => {
      const [, hot] = oilPressure.floor;
      if (hot) hot.oilC = 85;
    },
  ],
  [
    'floors that fall with the speed',
    'oilPressure.floor',
    ({ oilPressure }) => {
      const point = oilPressure.floor[0]?.points[1];
      if (point) point.minKpa = 50;
    },
  ],
  [
    'a relief valve below a floor',
    'oilPressure.reliefKpa',
    ({ oilPressure }) => {
      oilPressure.reliefKpa = 120;
    },
  ],
  [
    'a gauge that ends below a floor',
    'oilPressure.gaugeMaxKpa',
    ({ oilPressure }) => {
      oilPressure.gaugeMaxKpa = 150;
    },
  ],
  [
    'sweeps too close together',
    'sweeps',
    profile => {
      profile.sweeps = [1000, 1050, 1100, 1150, 1200].map(rpm => ({ rpm }));
    },
  ],
  [
    'an idle upside down',
    'idle.cold',
    ({ idle }) => {
      idle.cold = { minRpm: 900, maxRpm: 700 };
    },
  ],
  [
    'a heater that works longer as it gets warmer',
    'heater.waits',
    ({ heater }) => {
      if (heater) heater.waits = [-20, 0, 20].map((atC, index) => ({ atC, waitS: [5, 30, 0][index] ?? 0 }));
    },
  ],
  [
    'a charging voltage that a resting battery has',
    'charging',
    ({ charging }) => {
      charging.setpointV = 13.2;
      charging.toleranceV = 1;
    },
  ],
  [
    'a starter that may never turn',
    'starter.limitC',
    ({ starter }) => {
      starter.limitC = 60;
      starter.ratedAmbientC = 60;
    },
  ],
];

describe('a profile under which a sound engine would be stopped', () => {
  it.each(refused)('is refused as it is loaded, with where and what to do: %s', (_, where, change) => {
    const sentence = refusal(change);
    expect(sentence).toMatch(new RegExp(`^${where}: .{30,}\\.$`));
  });

  it('is none of the invented ones', () => {
    expect(refusal(() => {})).toBeNull();
  });
});

describe('a profile that the interview makes', () => {
  it('is never one of these, whatever is answered', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const made = JSON.stringify(profileData(randomInterview(seed, seed % 3 === 0)));
      expect(() => parseProfile(made, `seed ${seed}`)).not.toThrow();
    }
  });
});

describe('a profile that is accepted', () => {
  it('has a floor for every speed it is run at and every heat of its oil, which its gauge shows', () => {
    const change = fc.record({
      first: fc.integer({ min: 300, max: 900 }),
      last: fc.integer({ min: 1500, max: 3000 }),
      kpa: fc.array(fc.integer({ min: 60, max: 500 }), { minLength: 3, maxLength: 3 }),
      oilC: fc.integer({ min: 80, max: 140 }),
    });
    fc.assert(
      fc.property(
        change,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: -40, max: 107 }),
        (row, share, oilC) => {
          const profile: Writable<Profile> = JSON.parse(text);
          const [low, middle, high] = row.kpa;
          profile.oilPressure.floor = [
            {
              oilC: row.oilC,
              points: [
                { rpm: row.first, minKpa: low ?? 0 },
                { rpm: 1200, minKpa: middle ?? 0 },
                { rpm: row.last, minKpa: high ?? 0 },
              ],
            },
          ];
          let accepted: Profile;
          try {
            accepted = parseProfile(JSON.stringify(profile), 'x');
          } catch {
            return;
          }
          const slowest = Math.min(accepted.idle.cold.minRpm, accepted.idle.warm.minRpm);
          const speedRpm = slowest + share * (fastestRpm(accepted) - slowest);
          const judged = judgePressure(knowing(accepted, {}), accepted.oilPressure.gaugeMaxKpa, {
            speedRpm,
            oilC,
          });
          expect(judged.ok && judged.value.met).toBe(true);
        },
      ),
      { numRuns: 400 },
    );
  });
});
