import { z } from 'zod';
import { provenanceSchema } from './provenance.ts';

/** Steps that a profile may allow to be skipped: none of them opens a gate. */
export const skippableSteps = [
  'fill.coolantFreezePoint',
  'fill.steeringFull',
  'prime.strokes',
  'warmUp.steeringLocks',
] as const;

/** What a vehicle bus can tell of what the procedure reads. */
export const busQuantities = [
  'engineSpeed',
  'oilPressure',
  'coolantTemperature',
  'batteryVoltage',
  'chargingVoltage',
  'ambientTemperature',
] as const;

const name = z.string().trim().min(1).max(60);
const id = z
  .string()
  .regex(/^[a-z][A-Za-z0-9]*$/, 'a name in camelCase letters and digits, such as oilPressure');
const celsius = z.number().min(-60).max(150);
const rpm = z.number().int().min(50).max(5000);
const kpa = z.number().min(0).max(2000);
const seconds = z.number().min(1).max(7200);
/** 3 to 5 minutes at idle before load or speed: common practice, no published source. */
const warmUpSeconds = z.number().min(180).max(3600);

const rpmRange = z
  .strictObject({ minRpm: rpm, maxRpm: rpm })
  .refine(range => range.minRpm < range.maxRpm, 'minRpm has to be below maxRpm');

const namedThing = z.strictObject({ id, name });

/** What the engine drives, and so what has to be safe before it turns. */
const use = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('vehicle') }),
  z.strictObject({
    kind: z.literal('generator'),
    /** Where its automatic start is locked out, and its breaker opened. */
    autoStart: name,
    breaker: name,
    /** Manual, off, automatic; null where it has none. */
    modeSwitch: name.nullable().default('mode switch'),
  }),
  z.strictObject({ kind: z.literal('marine'), gearLever: name }),
  /** A pump, a compressor, a saw: what it drives is uncoupled. */
  z.strictObject({ kind: z.literal('stationary'), coupling: name }),
]);

const exhaust = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('dry') }),
  /** Raw water is let into it: it fills while the engine is cranked and does not fire. */
  z.strictObject({ kind: z.literal('wet'), rawWaterCock: name }),
]);

const lamp = z.strictObject({
  id,
  name,
  /** Expected within the lamp test, key on and engine stopped. */
  keyOn: z.enum(['on', 'off']),
  /** Expected once the engine runs. */
  running: z.enum(['on', 'off']),
});

const faultRule = z
  .strictObject({
    spn: z.number().int().min(0).max(524_287),
    fmi: z.number().int().min(0).max(31),
    judgement: z.enum(['blocks', 'goOn', 'watch']),
    /** How long a watched fault may stay before it blocks. */
    watchS: seconds.optional(),
    /** Why it is judged so, for the record. */
    because: z.string().trim().min(1).max(160),
  })
  .refine(rule => (rule.judgement === 'watch') === (rule.watchS !== undefined), {
    message: 'watchS is needed with judgement "watch" and allowed only there',
    path: ['watchS'],
  });

const busQuantity = z.enum(busQuantities);

const vehicleBus = z.strictObject({
  bitRate: z.literal([250_000, 500_000]),
  /** Address of the engine's controller; only its lamps, codes, speed and pressures are acted on. */
  engineAddress: z.number().int().min(0).max(253),
  /** What this engine sends. */
  readings: z.array(busQuantity).min(1),
  /** Of these, what must be spoken all the same; the bus is then only held against it. */
  spoken: z.array(busQuantity),
  /** From this speed on the session stops by itself. */
  overspeedRpm: rpm,
});

/**
 * One engine in one vehicle, as its maker's documents describe it: what the start-up procedure needs.
 * SI units, except where the key names another.
 */
/** Every field of a profile, each by itself; `consistency.ts` says what has to hold among them. */
export const profileShape = z.strictObject({
  /** Where the JSON Schema is, for an editor. */
  $schema: z.string().optional(),
  schema: z.literal('first-fire-profile/1'),
  /** True for invented engines: shown on every face and in the record. */
  invented: z.boolean(),
  name,
  /** Raised with every change. */
  version: z.number().int().min(1).max(100_000).default(1),
  engine: z.strictObject({
    name,
    cylinders: z.number().int().min(1).max(24),
    displacementL: z.number().min(0.2).max(120),
    /** Four where it is left out. */
    strokes: z.literal([2, 4]).optional(),
    /** Crank angle of each firing within a cycle, degrees from the first, where they are not evenly spread. */
    unevenFiringDeg: z.array(z.number().min(0).max(720)).min(1).max(24).optional(),
  }),
  use: use.default({ kind: 'vehicle' }),
  exhaust: exhaust.default({ kind: 'dry' }),
  afterTreatment: z.enum(['none', 'particulateFilter']).default('none'),
  /** Steering with fluid of its own. */
  steering: z.boolean().default(true),
  /** It runs at this speed alone, as a generating set does: no idle, no sweeps. */
  fixedSpeedRpm: rpm.optional(),
  systemVoltage: z.literal([12, 24]),
  coolant: z.strictObject({
    kind: z.enum(['ethylene', 'propylene']),
    systemVolumeL: z.number().min(1).max(300),
    /** Share of glycol in the can, by volume. */
    concentrateShare: z.number().min(0.3).max(1),
    minShare: z.number().min(0).max(0.7),
    maxShare: z.number().min(0.2).max(0.8),
    freezeMarginK: z.number().min(0).max(20),
    capPressureKpa: z.number().min(0).max(250),
    bleedHoldS: seconds,
  }),
  oil: z.strictObject({
    capacityL: z.number().min(1).max(300),
    toleranceL: z.number().min(0.1).max(10),
    /** The grades this engine may be filled with, with the data sheet of the oil at hand. */
    grades: z
      .array(
        z.strictObject({
          grade: z.string().regex(/^\d{1,2}W-\d{1,2}$/, 'an SAE multigrade such as 15W-40'),
          viscosity40Mm2S: z.number().min(10).max(1000),
          viscosity100Mm2S: z.number().min(3).max(50),
          /** Coldest nights for which the maker allows it; any where left out. */
          nightsFromC: celsius.optional(),
          nightsToC: celsius.optional(),
        }),
      )
      .min(1),
    runningC: z.number().min(60).max(150),
    minRunningViscosityMm2S: z.number().min(2).max(50),
    /** Thickest oil that the pump still draws in fully at cranking speed. */
    fullFlowViscosityMm2S: z.number().min(2).max(2e7),
    filter: z.enum(['preFilled', 'dry']),
  }),
  fuel: z.strictObject({
    tankL: z.number().min(1).max(3000),
    /** Cloud points of the fuels at hand, from the supplier. */
    no1CloudC: celsius,
    no2CloudC: celsius,
    cloudMarginK: z.number().min(0).max(20),
    straightNo1BelowC: z.number().min(-60).max(0),
    biodieselMaxPercent: z.number().min(0).max(100),
    sulphurMaxPpm: z.number().min(1).max(5000),
    /** In the order of the flow: dry or pre-filled as the maker says. */
    filters: z
      .array(z.strictObject({ id: z.enum(['first', 'second']), fit: z.enum(['preFilled', 'dry']) }))
      .min(1)
      .max(2),
    primer: z.strictObject({
      kind: z.enum(['hand', 'electric']).default('hand'),
      maxStrokes: z.number().int().min(10).max(500),
      /** An electric one is let run so long before it is looked at. */
      runS: seconds.default(60),
    }),
  }),
  /** How it is kept from firing while the starter turns it: electrically, or with the rack at no delivery. */
  fuelling: z.strictObject({
    disabledBy: z.enum(['electric', 'lever', 'solenoid', 'stopSolenoid']),
    /** What is unplugged or moved, as it is called at this engine. */
    at: name,
  }),
  /** What stops it when the key does not; left out in older profiles. */
  cutOff: z.strictObject({ at: name }).optional(),
  /** What stops it every day, as it is told: "key off". Left out, it follows from what the engine drives. */
  stopControl: name.optional(),
  /** From this speed on it is stopped; left out in older profiles. */
  overspeedRpm: rpm.optional(),
  /** It warms a standing engine, and burns out dry. */
  jacketHeater: z.strictObject({ at: name }).nullable().default(null),
  /** What was locked out or inhibited is given back before the signature; not where it leaves the shop locked out. */
  handsBack: z.boolean().default(true),
  /** Where oil can be pumped into the galleries before the engine turns; null where there is no such port. */
  prelube: z.strictObject({ port: name }).nullable(),
  /** It has a turbocharger, whose bearings want oil before they turn. */
  turbo: z.boolean(),
  /** A short first run, then off for dipstick and a look round; null where the maker wants none. */
  firstRun: z
    .strictObject({
      runS: seconds,
      /** Until the oil is back in the sump and the dipstick tells the truth. */
      drainS: seconds,
    })
    .nullable(),
  sensors: z.array(namedThing).min(1),
  lamps: z.array(lamp).min(1),
  heater: z
    .strictObject({
      kind: z.enum(['grid', 'glow']),
      lampId: id,
      /** Wait by intake temperature, coldest first. */
      waits: z.array(z.strictObject({ atC: celsius, waitS: z.number().min(0).max(300) })).min(2),
      /** The lamp may outlast the expected wait by this much before it is a fault. */
      toleranceS: z.number().min(0).max(120),
    })
    .nullable(),
  starter: z.strictObject({
    crankingRpm: z.number().min(60).max(500),
    /** Rest after a burst, as the maker states it. */
    minRestS: z.number().min(5).max(600),
    /** So many of the longest bursts may follow one another with that rest between; then it has to cool. */
    burstsInARow: z.number().int().min(1).max(10),
    /** From cold, at the rated ambient temperature: then the windings reach their limit. */
    longestBurstS: z.number().min(2).max(60),
    limitC: z.number().min(60).max(250),
    ratedAmbientC: z.number().min(-20).max(60),
    timeConstantS: z.number().min(10).max(3600),
    maxBursts: z.number().int().min(1).max(20),
  }),
  priming: z.strictObject({
    pumpLitrePerTurn: z.number().min(0.001).max(1),
    pumpTurnsPerCrankTurn: z.number().min(0.2).max(5),
    /** Galleries, cooler and whatever part of the filter is dry. */
    fillLitres: z.number().min(0.01).max(100),
    fillSpreadShare: z.number().min(0).max(0.9),
    leastEfficiency: z.number().min(0.1).max(1),
    greatestEfficiency: z.number().min(0.1).max(1),
    giveUpMultiple: z.number().min(1.5).max(10),
    holdS: z.number().min(2).max(30),
  }),
  oilPressure: z.strictObject({
    firstFireWithinS: z.number().min(2).max(30),
    gaugeMaxKpa: kpa,
    /** Least pressure when it first shows. */
    showsKpa: z.number().min(1).max(500),
    reliefKpa: kpa,
    /** Least pressure by speed, one row for each oil temperature. */
    floor: z
      .array(z.strictObject({ oilC: celsius, points: z.array(z.strictObject({ rpm, minKpa: kpa })).min(2) }))
      .min(1),
  }),
  idle: z.strictObject({ cold: rpmRange, warm: rpmRange, spreadMaxRpm: z.number().min(1).max(300) }),
  charging: z.strictObject({
    /** For a 12 V battery at 25 degC; doubled for 24 V. */
    setpointV: z.number().min(13).max(15.5),
    toleranceV: z.number().min(0.05).max(1),
    minStateOfCharge: z.number().min(0.3).max(1),
  }),
  thermostat: z.strictObject({
    toleranceK: z.number().min(0.5).max(20),
    opensC: celsius,
    fullyOpenC: celsius,
    coolantMaxC: celsius,
  }),
  warmUp: z.strictObject({
    minS: warmUpSeconds,
    maxS: seconds,
    readEveryS: seconds,
    /** New rings glaze at light idle: after this, fast idle or load. */
    idleMaxS: warmUpSeconds.optional(),
    /** Speed without load at which it warms on; left out where only load may do it. */
    fastIdleRpm: rpm.optional(),
  }),
  /** Five or six; none where it runs at one speed. */
  sweeps: z.array(z.strictObject({ rpm })).max(6),
  shutdown: z.strictObject({
    settleS: seconds,
    /** Heat-soak time, split by the looks at hoses and joints. */
    heatSoakLooksAfterS: z.array(seconds).min(1).max(6),
    safeToOpenC: z.number().min(20).max(60),
    soakRiseK: z.number().min(0).max(40),
    boilMarginK: z.number().min(0).max(40),
  }),
  walkRound: z.strictObject({ clearValidS: z.number().min(8).max(60) }),
  faults: z.array(faultRule),
  /** Left out where there is no J1939 bus. */
  bus: vehicleBus.optional(),
  retorque: z.array(namedThing).min(1),
  allowedSkips: z.array(z.enum(skippableSteps)),
  /** Where each value comes from; older profiles do not say. */
  provenance: provenanceSchema.default({}),
});

export type Profile = z.infer<typeof profileShape>;
