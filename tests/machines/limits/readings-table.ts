import type { Cause, Quantity } from '../../../machines/vocabulary.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { changed, demoFour, demoSix } from '../helpers/profiles.ts';
import type { Shown } from './sessions.ts';

/** One limit on what is read off a gauge, worked out here by hand and from tables, not by the program. */
export interface ReadingLimit {
  readonly limit: string;
  readonly step: StepId;
  readonly quantity: Quantity;
  readonly profile?: Profile;
  readonly shown?: Shown;
  /** Just inside, in SI. */
  readonly met: readonly number[];
  /** Just outside. */
  readonly missed: readonly number[];
  /** What a value outside leads to; asked for again where nothing is said. */
  readonly stops?: Cause;
  /** Where it is asked for only after another answer: in which state, and what was answered. */
  readonly after?: { readonly state: string; readonly reply: ReplyId };
  /** A value outside may stay so, as an open item. */
  readonly staysOpen?: boolean;
}

const of24V = changed(demoSix, { systemVoltage: 24 });

/** Water alone, in a system with such a cap: its boiling points are in every steam table. */
const water = (capPressureKpa: number): Profile =>
  changed(demoSix, { coolant: { ...demoSix.coolant, minShare: 0, capPressureKpa } });
const mildNight = { coldestNight: 10 };

/** Half glycol, cap off, an engine that may get very hot: what is left is the boiling point of the mix. */
const halfGlycol = changed(demoSix, {
  coolant: { ...demoSix.coolant, minShare: 0.5, maxShare: 0.5, capPressureKpa: 0 },
  thermostat: { ...demoSix.thermostat, coolantMaxC: 120 },
});

const job: readonly ReadingLimit[] = [
  {
    limit: 'weather in which the calculations hold',
    step: 'job.ambient',
    quantity: 'ambientTemperature',
    met: [-40, 50],
    missed: [-40.1, 50.1],
  },
  {
    limit: 'nights for which the calculations hold',
    step: 'job.coldestNight',
    quantity: 'coldestNight',
    met: [-40, 35],
    missed: [-40.1, 35.1],
  },
  {
    limit: 'heights for which the calculations hold',
    step: 'job.altitude',
    quantity: 'altitude',
    met: [-430, 0, 5100, 6000],
    missed: [-501, 6001],
  },
];

const fill: readonly ReadingLimit[] = [
  {
    limit: 'freezing point 5 K below the coldest night',
    step: 'fill.coolantFreezePoint',
    quantity: 'coolantFreezePoint',
    shown: { coldestNight: -5 },
    met: [-10, -48],
    missed: [-9.9, 0],
  },
  {
    limit: 'freezing point 5 K below a night of hard frost',
    step: 'fill.coolantFreezePoint',
    quantity: 'coolantFreezePoint',
    shown: { coldestNight: -25 },
    met: [-30],
    missed: [-29.9],
  },
  {
    limit: 'freezing point not above that of water, however mild the night',
    step: 'fill.coolantFreezePoint',
    quantity: 'coolantFreezePoint',
    shown: mildNight,
    met: [0],
    missed: [0.1],
  },
  {
    limit: 'oil within 1 L of 15 L',
    step: 'fill.oilQuantity',
    quantity: 'oilQuantity',
    met: [14, 16],
    missed: [13.9, 16.1],
  },
  {
    limit: 'oil within 0.5 L of 9.5 L',
    step: 'fill.oilQuantity',
    quantity: 'oilQuantity',
    profile: demoFour,
    met: [9, 10],
    missed: [8.9, 10.1],
  },
  {
    limit: 'no more fuel than the tank holds',
    step: 'fill.fuelInTank',
    quantity: 'fuelInTank',
    met: [0, 180],
    missed: [-0.1, 180.1],
  },
  {
    limit: 'biodiesel up to 20 %',
    step: 'fill.biodieselShare',
    quantity: 'biodieselShare',
    met: [0, 20],
    missed: [20.1, 100],
  },
  {
    limit: 'biodiesel up to 7 %',
    step: 'fill.biodieselShare',
    quantity: 'biodieselShare',
    profile: demoFour,
    met: [7],
    missed: [7.1],
  },
  {
    limit: 'biodiesel, told of an empty tank too',
    step: 'fill.biodieselShare',
    quantity: 'biodieselShare',
    shown: { fuelInTank: 0 },
    met: [20],
    missed: [20.1],
  },
  {
    limit: 'strokes of the primer',
    step: 'prime.strokes',
    quantity: 'primerStrokes',
    met: [1, 150],
    missed: [0, 151],
  },
];

/** Least volts under load by the load-test table of service manuals: 9.6 at 21 degC, 9.3 at 4, 8.5 at -18. */
const cranking = (
  limit: string,
  ambientTemperature: number,
  floorV: number,
  profile = demoSix,
): ReadingLimit => ({
  limit: `cranking voltage ${limit}`,
  step: 'noFuelCrank.voltage',
  quantity: 'crankingVoltage',
  profile,
  shown: { ambientTemperature, crankingVoltage: floorV },
  met: [floorV],
  missed: [floorV - 0.01],
});

/**
 * Rest voltage of a battery charged to 70 %: 12.24 V at half, 12.45 at three quarters, 26.7 degC, so 12.408 V;
 * 1.2 mV/K more of it where it is colder.
 */
const atRest = (
  limit: string,
  ambientTemperature: number,
  leastV: number,
  /** Where it cranked well, it is not asked for. */
  crankingVoltage: number,
  profile = demoSix,
): ReadingLimit => ({
  limit: `battery at rest ${limit}`,
  step: 'keyOn.battery',
  quantity: 'batteryVoltage',
  profile,
  shown: { ambientTemperature, crankingVoltage },
  met: [leastV + 0.01, (13 * profile.systemVoltage) / 12],
  missed: [leastV - 0.01, (13 * profile.systemVoltage) / 12 + 0.01],
});

/** 14.1 V at 25 degC with 0.5 V to each side, and 18 mV/K more where it is colder. */
const charging = (
  limit: string,
  ambientTemperature: number,
  lowV: number,
  highV: number,
  profile = demoSix,
) =>
  ({
    limit: `charging voltage ${limit}`,
    step: 'checks.charging',
    quantity: 'chargingVoltage',
    profile,
    staysOpen: true,
    shown: { ambientTemperature },
    met: [lowV + 0.001, highV - 0.001],
    missed: [lowV - 0.01, highV + 0.01],
  }) satisfies ReadingLimit;

const electrics: readonly ReadingLimit[] = [
  {
    ...cranking('under load, before the starter turns, at 21 degC', 21, 9.6),
    step: 'noFuelCrank.batteryLoad',
  },
  // Without a tester the battery at rest stands in, at its own limit: 12.24 V at half, 12.45 at three quarters.
  ...([5, 26.7] as const).map(
    (ambientTemperature): ReadingLimit => ({
      ...atRest(
        `before the starter turns, without a load tester, at ${ambientTemperature} degC`,
        ambientTemperature,
        ambientTemperature === 5 ? 12.382 : 12.408,
        0,
      ),
      step: 'noFuelCrank.batteryRest',
      shown: { ambientTemperature },
      after: { state: 'noFuelCrank.batteryLoad.asking', reply: 'noTester' },
    }),
  ),
  cranking('at 21 degC', 21, 9.6),
  cranking('at 4 degC', 4, 9.3),
  cranking('at -18 degC', -18, 8.5),
  cranking('of two batteries in series', 4, 18.6, of24V),
  atRest('at 26.7 degC', 26.7, 12.408, 9.7),
  atRest('at 5 degC', 5, 12.382, 9.4),
  atRest('at -20 degC', -20, 12.352, 8.6),
  atRest('of two batteries in series', 26.7, 24.816, 19.4, of24V),
  charging('at 25 degC', 25, 13.6, 14.6),
  charging('at 5 degC', 5, 13.96, 14.96),
  charging('at -15 degC', -15, 14.32, 15.32),
  charging('of two batteries in series', 25, 27.2, 29.2, of24V),
];

/** The floor of demo-six: 150 kPa at 700 rpm and 220 at 1200 with oil up to 20 degC; 90 and 180 at 130 degC. */
const pressure: readonly ReadingLimit[] = [
  {
    limit: 'oil pressure at 850 rpm with oil as cold as the air, the coolant not read yet',
    step: 'checks.oilPressure',
    quantity: 'oilPressure',
    met: [171],
    missed: [170.9],
    stops: 'noOilPressure',
  },
  {
    limit: 'oil pressure at the idle that was read',
    step: 'checks.oilPressure',
    quantity: 'oilPressure',
    shown: { engineSpeed: 700 },
    met: [150],
    missed: [149.9],
    stops: 'noOilPressure',
  },
  // Warmed up, the coolant was last read at 92 degC, and the oil is taken to be as hot: 72/110 of the way.
  ...(
    [
      ['sweeps.first', 1000, 192 - (48 * 72) / 110],
      ['sweeps.second', 1200, 220 - (40 * 72) / 110],
      ['sweeps.third', 1400, 220 + 100 / 9 - (40 * 72) / 110],
      ['sweeps.fourth', 1600, 220 + 200 / 9 - (40 * 72) / 110],
    ] as const
  ).map(
    ([step, rpm, floorKpa]): ReadingLimit => ({
      limit: `oil pressure at ${rpm} rpm with oil as hot as the coolant, not as the air`,
      step,
      quantity: 'oilPressure',
      met: [floorKpa + 0.01],
      missed: [floorKpa - 0.01],
      stops: 'noOilPressure',
    }),
  ),
  {
    limit: 'oil pressure at the last speed, 1800 rpm',
    step: 'sweeps.fifth',
    quantity: 'oilPressure',
    shown: { oilPressure: 227 },
    profile: changed(demoSix, {
      oilPressure: {
        ...demoSix.oilPressure,
        floor: [{ oilC: 130, points: [400, 3000].map((rpm, i) => ({ rpm, minKpa: 60 + 200 * i })) }],
      },
    }),
    // 60 + 200 x 1400/2600; below it nothing is said of how the pressure rises.
    met: [],
    missed: [167.6],
    stops: 'noOilPressure',
  },
];

const running: readonly ReadingLimit[] = [
  {
    limit: 'coolant up to what the engine allows',
    step: 'checks.coolant',
    quantity: 'coolantTemperature',
    met: [107],
    missed: [107.1],
    stops: 'overheating',
  },
  {
    // 99.97 degC at 101.3 kPa (steam tables), 3 K below.
    limit: 'coolant 3 K below the boiling point of water',
    step: 'checks.coolant',
    quantity: 'coolantTemperature',
    profile: water(0),
    shown: { ...mildNight, altitude: 0 },
    met: [96.9],
    missed: [97.1],
    stops: 'overheating',
  },
  {
    // 70.1 kPa in the standard atmosphere (ISO 2533): 90.0 degC.
    limit: 'coolant 3 K below boiling 3000 m up',
    step: 'checks.coolant',
    quantity: 'coolantTemperature',
    profile: water(0),
    shown: { ...mildNight, altitude: 3000 },
    met: [86.9],
    missed: [87.1],
    stops: 'overheating',
  },
  {
    // 120.4 degC at 201.3 kPa: here the engine's own limit comes first.
    limit: 'coolant under a cap of 100 kPa',
    step: 'checks.coolant',
    quantity: 'coolantTemperature',
    profile: water(100),
    shown: { ...mildNight, altitude: 0 },
    met: [107],
    missed: [107.1],
    stops: 'overheating',
  },
  {
    // 107.8 degC at least (ASTM D3306), with which the rule agrees to 1 K.
    limit: 'coolant of half glycol 3 K below its boiling point',
    step: 'checks.coolant',
    quantity: 'coolantTemperature',
    profile: halfGlycol,
    shown: { altitude: 0 },
    met: [103.7],
    missed: [105.9],
    stops: 'overheating',
  },
];

/** No thermostat stands in the way of what would boil. */
const openedLate = { ...demoSix.thermostat, fullyOpenC: 115, coolantMaxC: 125 };
const hotThermostat = changed(demoSix, { thermostat: openedLate });

const shutdown: readonly ReadingLimit[] = [
  {
    // Fully open at 95 degC, and the 4 K that thermostat and gauge may miss.
    limit: 'coolant no hotter than a thermostat that works lets it be',
    step: 'shutdown.coolant',
    quantity: 'coolantTemperature',
    met: [99],
    missed: [99.1, 107],
  },
  {
    limit: 'coolant above the limit of the engine, before key-off',
    step: 'shutdown.coolant',
    quantity: 'coolantTemperature',
    met: [],
    missed: [107.1],
    stops: 'overheating',
  },
  {
    // 120.4 degC at 201.3 kPa, 3 K below, and 12 K yet to come out of the metal.
    limit: 'heat soak under a cap of 100 kPa',
    step: 'shutdown.coolant',
    quantity: 'coolantTemperature',
    profile: hotThermostat,
    shown: { altitude: 0 },
    met: [105.3],
    missed: [105.6],
  },
  {
    // 115.2 degC at 170.1 kPa.
    limit: 'heat soak 3000 m up',
    step: 'shutdown.coolant',
    quantity: 'coolantTemperature',
    profile: hotThermostat,
    shown: { altitude: 3000 },
    met: [100.1],
    missed: [100.3],
  },
  {
    limit: 'heat soak with a rise of 20 K and a margin of 10',
    step: 'shutdown.coolant',
    quantity: 'coolantTemperature',
    profile: changed(demoSix, { shutdown: { ...demoSix.shutdown, soakRiseK: 20, boilMarginK: 10 } }),
    shown: { altitude: 0 },
    met: [90.3],
    missed: [90.6],
  },
];

export const readingLimits: readonly ReadingLimit[] = [
  ...job,
  ...fill,
  ...electrics,
  ...pressure,
  ...running,
  ...shutdown,
];
