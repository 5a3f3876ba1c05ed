import type { LineId, StepId } from '../../prompts/types.ts';
import { coldestAfter, heatBounds } from '../../src/engineering/heat-bounds.ts';
import { quantities } from '../../src/engineering/quantities/table.ts';
import { judge, type Rule, type Verdict } from '../../src/engineering/result.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Context, Reading } from '../context.ts';
import type { EngineState } from '../steps.ts';
import type { PromptValues, Quantity } from '../vocabulary.ts';
import { quantityUnits } from '../vocabulary.ts';
import { latest } from './readings.ts';

/** Why a value can hardly be true: what it would have to be, and the sentence that says why. */
export interface Doubt {
  readonly verdict: Verdict;
  readonly why: LineId;
  readonly values: PromptValues;
}

/** One value, said or shown now. */
export interface Claim {
  readonly quantity: Quantity;
  readonly si: number;
  readonly atMs: number;
  /** What the engine does where it is asked for. */
  readonly engine: EngineState;
}

const PRACTICE = 'common practice, no published source';
const rule = (id: string, source: string, validity: string): Rule => ({ id, source, validity });

const BELOW_AIR = rule(
  'not-below-air',
  'heat flows from warm to cold: nothing in an engine gets colder than the coldest air it stood in',
  'no cold water or fluid let in',
);
const HEAT = rule(
  'change-within-heat-bounds',
  'heat balance of the engine with the figures of its profile; see heat-bounds',
  'idling or standing engine',
);
const NIGHT = rule(
  'night-not-above-day',
  `the coldest of the time to come is not above now; ${PRACTICE}`,
  'any',
);
const DRAWN = rule(
  'starter-draws-battery-down',
  `a starter takes hundreds of amperes through a resistance of milliohms: half a volt of twelve at least; ${PRACTICE}`,
  'lead batteries, engine turned by its starter',
);
const RELIEF = rule(
  'not-above-relief',
  `a relief valve that works holds cold oil to a third above its setting; ${PRACTICE}`,
  'engine with a relief valve',
);
const STANDS = rule('vehicle-stands', 'a vehicle that stands keeps its height', 'one session');

/** A rebuilt engine may come out of a heated shop, or have a heater in its block. Common practice. */
const PREHEATED_K = 30;
/** Coolant is not of one temperature before it moves, and the gauge shows one place of it. Common practice. */
const LOCAL_K = 10;
/** Cold, thick oil stands so far above the relief valve's rating. Common practice, no published source. */
const COLD_OVER_RELIEF = 4 / 3;
const LEAST_DROP_V = 0.5;
/** No lead battery, full and rested, shows more; battery industry tables (from memory). */
const FULL_V = 12.75;

const toleranceOf = (quantity: Quantity) => quantities[quantity].tolerance;

/** The value against what it can be; null while it can. */
function doubtOf(
  { quantity, si }: Claim,
  limits: { readonly min?: number; readonly max?: number },
  by: Rule,
  why: LineId,
  values: PromptValues,
): Doubt | null {
  const verdict = judge(si, quantityUnits[quantity], limits, by);
  return verdict.met ? null : { verdict, why, values };
}

const shown = (quantity: Quantity, si: number) => ({ quantity, si }) as const;
const seconds = (si: number) => ({ unit: 's', si }) as const;

/** The coldest air that the engine can have stood in. */
function coldestAirC(context: Context): number | undefined {
  const known = [latest(context, 'ambientTemperature'), latest(context, 'coldestNight')].filter(
    value => value !== undefined,
  );
  return known.length > 0 ? Math.min(...known) : undefined;
}

/** Since when the engine has run, or had run when it was stopped; null before it was cranked with fuel. */
export const firedMs = ({ bursts }: Context): number | null =>
  bursts.findLast(({ step }) => !step.startsWith('noFuelCrank.'))?.endMs ?? null;

/** Where the coolant is read from the last look before key-off on, while it cools. */
export const coolingSteps: readonly string[] = [
  'shutdown.coolant',
  'fill.coolantCool',
  'signOff.cool',
] satisfies StepId[];

/** Of the readings since it fired: those of a standing engine, or the last of one that was stopped as it ran. */
const standing = (run: readonly Reading[]) =>
  run.filter(({ step }, index) => coolingSteps.includes(step) || index === run.length - 1);

/** The first of these that is not null. */
const firstOf = <T>(items: readonly Reading[], doubt: (reading: Reading) => T | null): T | null => {
  for (const item of items) {
    const found = doubt(item);
    if (found !== null) return found;
  }
  return null;
};

/** How fast this engine may warm and cool at the most. */
export const heatBoundsOf = ({ engine, coolant, oil }: Profile) =>
  heatBounds({
    displacementL: engine.displacementL,
    coolantL: coolant.systemVolumeL,
    oilL: oil.capacityL,
  });

/** As fast as the coolant of this engine can warm, K/s; as fast as can be where its figures have no answer. */
export function fastestWarmingKPerS(profile: Profile): number {
  const bounds = heatBoundsOf(profile);
  return bounds.ok ? bounds.value.warmingKPerS : Number.POSITIVE_INFINITY;
}

function coolantDoubt(context: Context, claim: Claim): Doubt | null {
  const { quantity, atMs, engine } = claim;
  const airC = coldestAirC(context);
  const bounds = heatBoundsOf(context.profile);
  const sinceMs = firedMs(context);
  if (airC === undefined || !bounds.ok || sinceMs === null) return null;
  const tolerance = toleranceOf(quantity);
  const { warmingKPerS, coolingS } = bounds.value;
  const belowAir = doubtOf(
    claim,
    { min: airC - toleranceOf('ambientTemperature') - tolerance },
    BELOW_AIR,
    'whyAir',
    { air: shown('ambientTemperature', airC) },
  );
  if (belowAir) return belowAir;

  const all = context.readings.filter(reading => reading.quantity === quantity);
  const before = (reading: Reading) => ({
    before: shown(quantity, reading.si),
    time: seconds((atMs - reading.atMs) / 1000),
  });
  if (engine === 'off')
    // What was read last says most.
    return firstOf(standing(all.filter(reading => reading.atMs >= sinceMs)).toReversed(), reading =>
      doubtOf(
        claim,
        { min: coldestAfter(reading.si, airC, (atMs - reading.atMs) / 1000, coolingS) - 2 * tolerance },
        HEAT,
        'whyBefore',
        before(reading),
      ),
    );

  const run = all.filter(reading => reading.atMs >= sinceMs);
  const ranS = (atMs - sinceMs) / 1000;
  const startC = Math.max(
    (latest(context, 'ambientTemperature') ?? airC) + PREHEATED_K,
    ...all.filter(reading => reading.atMs < sinceMs).map(reading => reading.si),
  );
  return (
    doubtOf(claim, { max: startC + warmingKPerS * ranS + 2 * tolerance }, HEAT, 'whyRunning', {
      time: seconds(ranS),
    }) ??
    firstOf(run, reading =>
      doubtOf(
        claim,
        {
          // A thermostat that opens lets in what stood cold in the radiator: half of it all at most.
          min: (reading.si + airC) / 2 - 2 * tolerance,
          max: reading.si + LOCAL_K + (warmingKPerS * (atMs - reading.atMs)) / 1000 + 2 * tolerance,
        },
        HEAT,
        'whyBefore',
        before(reading),
      ),
    )
  );
}

const series = (context: Context) => context.profile.systemVoltage / 12;

/** What each quantity cannot be, held against the others and against what it was; null for what may well be true. */
const doubts: Partial<Record<Quantity, (context: Context, claim: Claim) => Doubt | null>> = {
  coldestNight: (context, claim) => {
    const air = latest(context, 'ambientTemperature');
    const apart = toleranceOf('ambientTemperature') + toleranceOf('coldestNight');
    return air === undefined
      ? null
      : doubtOf(claim, { max: air + apart }, NIGHT, 'whyAir', { air: shown('ambientTemperature', air) });
  },
  altitude: (context, claim) => {
    const before = context.readings.findLast(({ quantity }) => quantity === 'altitude');
    const apart = 2 * toleranceOf('altitude');
    return before === undefined
      ? null
      : doubtOf(claim, { min: before.si - apart, max: before.si + apart }, STANDS, 'whyBefore', {
          before: shown('altitude', before.si),
          time: seconds((claim.atMs - before.atMs) / 1000),
        });
  },
  // Half the cold-cranking current, as a load tester draws it, is what a starter takes.
  crankingVoltage: (context, claim) =>
    doubtOf(
      claim,
      {
        max: (latest(context, 'batteryVoltage') ?? FULL_V * series(context)) - LEAST_DROP_V * series(context),
      },
      DRAWN,
      context.step === 'noFuelCrank.batteryLoad' ? 'whyTesterDraws' : 'whyStarterDraws',
      {},
    ),
  batteryVoltage: (context, claim) => {
    const cranking = latest(context, 'crankingVoltage');
    return cranking === undefined
      ? null
      : doubtOf(claim, { min: cranking - 2 * toleranceOf('batteryVoltage') }, DRAWN, 'whyCranked', {
          before: shown('crankingVoltage', cranking),
        });
  },
  oilPressure: (context, claim) => {
    const { reliefKpa } = context.profile.oilPressure;
    return doubtOf(
      claim,
      { max: reliefKpa * COLD_OVER_RELIEF + toleranceOf('oilPressure') },
      RELIEF,
      'whyRelief',
      {
        relief: shown('oilPressure', reliefKpa),
      },
    );
  },
  coolantTemperature: coolantDoubt,
};

/**
 * Why a value can hardly be true, from what was read before, when, and what else is known; null where nothing speaks
 * against it. It says nothing of limits: what can be true may still be wrong with the engine.
 */
export const whyDoubted = (context: Context, claim: Claim): Doubt | null =>
  doubts[claim.quantity]?.(context, claim) ?? null;
