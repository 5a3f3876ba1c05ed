import type { Profile } from './shape.ts';
import { fastestRpm } from './speeds.ts';

/** What does not go together in a profile: where, and what has to be so. */
export interface Contradiction {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

type Rule = (profile: Profile) => readonly Contradiction[];

const when = (isSo: boolean, path: Contradiction['path'], message: string): readonly Contradiction[] =>
  isSo ? [{ path, message }] : [];

const rises = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? Number.NaN));

const oilPressureFloor: Rule = ({ oilPressure: { floor } }) => [
  ...when(
    !rises(floor.map(row => row.oilC)),
    ['oilPressure', 'floor'],
    'rows have to be in rising order of oilC',
  ),
  ...floor.flatMap((row, index) =>
    when(
      !rises(row.points.map(point => point.rpm)),
      ['oilPressure', 'floor', index, 'points'],
      'points have to be in rising order of rpm',
    ),
  ),
];

const fixedSpeed: Rule = ({ fixedSpeedRpm: fixed, sweeps, warmUp, idle }) =>
  fixed === undefined
    ? when(sweeps.length < 5, ['sweeps'], 'has to be 5 or 6 speeds, or none with fixedSpeedRpm')
    : [
        ...when(sweeps.length > 0, ['sweeps'], 'has to be empty with fixedSpeedRpm'),
        ...when(
          warmUp.fastIdleRpm !== undefined,
          ['warmUp', 'fastIdleRpm'],
          'has to be left out with fixedSpeedRpm',
        ),
        ...(['cold', 'warm'] as const).flatMap(key =>
          when(
            fixed < idle[key].minRpm || fixed > idle[key].maxRpm,
            ['idle', key],
            `has to hold the fixed speed, ${fixed}`,
          ),
        ),
      ];

const sweeps: Rule = profile =>
  when(
    !rises(profile.sweeps.map(row => row.rpm)),
    ['sweeps'],
    'speeds have to rise from one sweep to the next',
  );

const heatSoakLooks: Rule = ({ shutdown }) =>
  when(
    !rises(shutdown.heatSoakLooksAfterS),
    ['shutdown', 'heatSoakLooksAfterS'],
    'times have to rise from one look to the next',
  );

const oilGrades: Rule = ({ oil }) =>
  oil.grades.flatMap(({ nightsFromC, nightsToC }, index) =>
    when(
      nightsFromC !== undefined && nightsToC !== undefined && nightsFromC > nightsToC,
      ['oil', 'grades', index, 'nightsFromC'],
      'has to be at most nightsToC',
    ),
  );

const lowBeforeHigh: Rule = ({ thermostat, coolant, priming, fuel }) => [
  ...when(thermostat.opensC >= thermostat.fullyOpenC, ['thermostat', 'opensC'], 'has to be below fullyOpenC'),
  ...when(
    thermostat.fullyOpenC >= thermostat.coolantMaxC,
    ['thermostat', 'fullyOpenC'],
    'has to be below coolantMaxC',
  ),
  ...when(coolant.minShare > coolant.maxShare, ['coolant', 'minShare'], 'has to be at most maxShare'),
  ...when(
    priming.leastEfficiency > priming.greatestEfficiency,
    ['priming', 'leastEfficiency'],
    'has to be at most greatestEfficiency',
  ),
  ...when(fuel.no1CloudC >= fuel.no2CloudC, ['fuel', 'no1CloudC'], 'has to be below no2CloudC'),
];

const faultsOnce: Rule = ({ faults }) =>
  faults.flatMap(({ spn, fmi }, index) =>
    when(
      faults.findIndex(rule => rule.spn === spn && rule.fmi === fmi) !== index,
      ['faults', index],
      `SPN ${spn} FMI ${fmi} is judged twice`,
    ),
  );

const warmUpTimes: Rule = ({ warmUp: { minS, maxS, idleMaxS } }) =>
  minS >= maxS
    ? when(true, ['warmUp', 'minS'], 'has to be below maxS')
    : when(
        idleMaxS !== undefined && (idleMaxS < minS || idleMaxS > maxS),
        ['warmUp', 'idleMaxS'],
        'has to be from minS to maxS',
      );

const fastIdle: Rule = ({ warmUp: { fastIdleRpm }, idle, sweeps, fixedSpeedRpm }) =>
  fastIdleRpm === undefined
    ? []
    : [
        ...when(
          fastIdleRpm <= idle.warm.maxRpm,
          ['warmUp', 'fastIdleRpm'],
          `has to be above the warm idle, ${idle.warm.maxRpm}`,
        ),
        ...when(
          fixedSpeedRpm === undefined && fastIdleRpm > (sweeps.at(-1)?.rpm ?? 0),
          ['warmUp', 'fastIdleRpm'],
          'has to be among the speeds of the sweeps, not above them',
        ),
      ];

const heater: Rule = ({ heater, lamps }) =>
  heater
    ? [
        ...when(
          !rises(heater.waits.map(row => row.atC)),
          ['heater', 'waits'],
          'rows have to be in rising order of atC',
        ),
        ...when(
          !lamps.some(row => row.id === heater.lampId),
          ['heater', 'lampId'],
          `names no lamp; lamps are ${lamps.map(row => row.id).join(', ')}`,
        ),
      ]
    : [];

const idsOnce: Rule = profile =>
  (['sensors', 'lamps', 'retorque'] as const).flatMap(key => {
    const ids = profile[key].map(row => row.id);
    return ids.flatMap((id, index) =>
      when(ids.indexOf(id) !== index, [key, index, 'id'], `"${id}" is used twice`),
    );
  });

const spokenBesideTheBus: Rule = ({ bus }) =>
  bus
    ? bus.spoken.flatMap((quantity, index) =>
        when(
          !bus.readings.includes(quantity),
          ['bus', 'spoken', index],
          'is not in readings; list there what the bus gives',
        ),
      )
    : [];

const firingAngles: Rule = ({ engine: { cylinders, strokes = 4, unevenFiringDeg: angles } }) => {
  if (!angles) return [];
  const path = ['engine', 'unevenFiringDeg'];
  if (angles.length !== cylinders || angles[0] !== 0)
    return when(true, path, `has to list ${cylinders} angles, the first of them 0`);
  const cycleDeg = strokes * 180;
  return when(
    !rises(angles) || (angles.at(-1) ?? 0) >= cycleDeg,
    path,
    `angles have to rise, all below ${cycleDeg}`,
  );
};

const overspeed: Rule = profile => {
  const fastest = fastestRpm(profile);
  const message = `has to be above every idle and sweep, ${fastest}`;
  const isTooSlow = (rpm: number | undefined) => rpm !== undefined && rpm <= fastest;
  return [
    ...when(isTooSlow(profile.bus?.overspeedRpm), ['bus', 'overspeedRpm'], message),
    ...when(isTooSlow(profile.overspeedRpm), ['overspeedRpm'], message),
  ];
};

const filtersInOrder: Rule = ({ fuel: { filters } }) =>
  when(
    filters[0]?.id !== 'first' || (filters.length === 2 && filters[1]?.id !== 'second'),
    ['fuel', 'filters'],
    'list the filter "first", then, if there is one, "second"',
  );

const rules: readonly Rule[] = [
  oilPressureFloor,
  fixedSpeed,
  sweeps,
  heatSoakLooks,
  oilGrades,
  lowBeforeHigh,
  faultsOnce,
  warmUpTimes,
  fastIdle,
  heater,
  idsOnce,
  spokenBesideTheBus,
  firingAngles,
  overspeed,
  filtersInOrder,
];

/** Everything in a profile that does not go together, of fields that are each allowed by themselves. */
export const contradictionsIn: Rule = profile => rules.flatMap(rule => rule(profile));
