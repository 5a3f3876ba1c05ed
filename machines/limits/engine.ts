import type { LineId } from '../../prompts/types.ts';
import { COOL_APART_S, coolForS, estimateCoolDown } from '../../src/engineering/cool-down.ts';
import { judgeCapOpening } from '../../src/engineering/heat-soak.ts';
import { judgeIdle } from '../../src/engineering/idle.ts';
import { quantities } from '../../src/engineering/quantities/table.ts';
import type { Reading } from '../../src/engineering/readings.ts';
import { judge, ok, type Rule } from '../../src/engineering/result.ts';
import { readWarmUp } from '../../src/engineering/warm-up.ts';
import { stopsFromRpm } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import type { Judge, Judgement, Series } from '../steps.ts';
import type { Cause, PromptValues } from '../vocabulary.ts';
import { coolingSteps, fastestWarmingKPerS } from './plausible.ts';
import { latest, profileRule, within } from './readings.ts';
import { warmthOf } from './warmth.ts';

/** A cool-down that says nothing yet is looked at again after this; common practice, no published source. */
const LOOK_AGAIN_S = 600;
/** The least window that the idle is judged over. */
const SHORTEST_IDLE_S = 5;
/** From so far below the thermostat's opening on the warm idle is expected. */
const WARM_BELOW_OPENING_K = 20;
/** Below this the fast, cold idle is expected: common practice, no published source. */
const COLD_BELOW_C = 20;

const idleRange = (context: Context) => {
  const { cold, warm } = context.profile.idle;
  const warmth = warmthOf(context);
  if (warmth === undefined || warmth.warmestC < COLD_BELOW_C) return cold;
  if (warmth.coldestC >= context.profile.thermostat.opensC - WARM_BELOW_OPENING_K) return warm;
  // A fast idle comes down as it warms: it may be anywhere from the one to the other, and so where its heat is not known.
  return { minRpm: Math.min(cold.minRpm, warm.minRpm), maxRpm: Math.max(cold.maxRpm, warm.maxRpm) };
};

/** A single speed only has to be one that an idle can have; the series is what is judged. */
export const idleSpeed: Judge = within('engineSpeed', context => {
  const { minRpm, maxRpm } = idleRange(context);
  return ok({ min: minRpm, max: maxRpm }, profileRule('idle-range'));
});

/** What hunts has air or a fault in its fuel; said of what is heard, it stops as well. Common practice, no published source. */
export const HUNTING: Cause = 'other';

const idleLines = { hunting: 'idleHunting', falling: 'idleFalling', rising: 'idleRising' } as const;

/** Five speeds in a row: in range and steady, or what is wrong with them. */
export const idleRun: Series['judge'] = (context, values) => {
  const { spreadMaxRpm } = context.profile.idle;
  const readings = values.map(({ si, atMs }) => ({ timeS: atMs / 1000, value: si }));
  const spanS = (readings.at(-1)?.timeS ?? 0) - (readings[0]?.timeS ?? 0);
  const idle = judgeIdle(readings, {
    ...idleRange(context),
    maxScatterRpm: spreadMaxRpm,
    maxDriftRpm: spreadMaxRpm,
    windowS: Math.max(SHORTEST_IDLE_S, spanS),
  });
  if (!idle.ok) return idle;
  const { state, verdicts } = idle.value;
  const verdict = verdicts.find(({ met }) => !met) ?? verdicts[0];
  if (!verdict) return { ok: false, issue: { code: 'tooLittleData', input: 'engineSpeed' } };
  return state === 'inRangeSteady' || state === 'outOfRange'
    ? { ok: true, value: verdict }
    : { ok: false, line: idleLines[state], verdict, ...(state === 'hunting' ? { stops: HUNTING } : {}) };
};

/** A sine of standard deviation s swings by this many times s from its lowest to its highest. */
const SWING_OF_SINE = 2 * Math.SQRT2;

const swing: Rule = {
  id: 'idle-swing',
  source: 'a sine of standard deviation s swings 2 sqrt(2) s from peak to peak (closed form)',
  validity: 'a needle followed for half a minute',
};

/** The lowest and the highest of a needle that was followed: both in range, and not too far apart. */
export const idleExtremes: Series['judge'] = (context, values) => {
  const speeds = values.map(({ si }) => si);
  const lowest = Math.min(...speeds);
  const highest = Math.max(...speeds);
  const least = idleSpeed(context, lowest);
  const most = idleSpeed(context, highest);
  if (!least.ok || !least.value.met) return least;
  if (!most.ok || !most.value.met) return most;
  const max = SWING_OF_SINE * context.profile.idle.spreadMaxRpm;
  const apart = judge(highest - lowest, 'rpm', { max }, swing);
  return apart.met ? most : { ok: false, line: idleLines.hunting, verdict: apart, stops: HUNTING };
};

export const thermostatReached: Judge = within('coolantTemperature', ({ profile }) =>
  ok({ min: profile.thermostat.opensC }, profileRule('thermostat-opens')),
);

/** A hose that gets hot agrees with a gauge that shows the thermostat's opening, both within what they may miss. */
export const nearThermostat: Judge = within('coolantTemperature', ({ profile: { thermostat } }) =>
  ok(
    { min: thermostat.opensC - thermostat.toleranceK - quantities.coolantTemperature.tolerance },
    profileRule('thermostat-opens'),
  ),
);

/**
 * An engine without load that idles half as fast again as it ever should is not governed; at the speed at which a
 * bus would stop it, it is stopped by voice too. Common practice, no published source.
 */
export const governed: Judge = within('engineSpeed', ({ profile }) =>
  ok(
    { max: Math.min(1.5 * profile.idle.cold.maxRpm, stopsFromRpm(profile) ?? Number.POSITIVE_INFINITY) },
    {
      ...profileRule('idle-governed'),
      source: 'one and a half times the fastest idle of the engine profile',
    },
  ),
);

/** How it has cooled since the engine ran last: how it cooled after an earlier run is another curve. */
function coolingSince({ bursts, readings }: Context): readonly Reading[] {
  const firedMs = bursts.at(-1)?.endMs ?? 0;
  return readings
    .filter(
      ({ quantity, step, atMs }) =>
        quantity === 'coolantTemperature' && coolingSteps.includes(step) && atMs >= firedMs,
    )
    .map(reading => ({ timeS: reading.atMs / 1000, value: reading.si }));
}

/**
 * Cool enough to open a cap: two looks so far apart both say so. Until then, when to look again, from how it has cooled
 * so far. One look is one needle, that may hang or be misread, before a cap that scalds.
 */
export const coolEnough: Judge = (context, si, nowMs) => {
  const { safeToOpenC } = context.profile.shutdown;
  const verdict = judgeCapOpening(si, safeToOpenC);
  if (!verdict.ok) return verdict;
  const before = coolingSince(context);
  const told = (line: LineId, seconds: number) =>
    ({
      ok: false,
      line,
      verdict: verdict.value,
      values: { time: { unit: 's', si: seconds } },
    }) as const satisfies Judgement;
  if (verdict.value.met) {
    const read = nowMs === undefined ? [] : [...before, { timeS: nowMs / 1000, value: si }];
    const leftS = COOL_APART_S - (coolForS(read, safeToOpenC) ?? 0);
    return leftS > 0 ? { ...told('coolOnce', leftS), waitS: leftS } : verdict;
  }
  const cooling = estimateCoolDown(before, latest(context, 'ambientTemperature'), safeToOpenC);
  return told(
    'notCoolYet',
    cooling.ok && cooling.value.state !== 'cool' ? cooling.value.lookAgainS : LOOK_AGAIN_S,
  );
};

/** No gauge of a new engine is left alone for more looks than this; common practice, no published source. */
const MOST_LOOKS_LEFT_OUT = 4;
/** In intervals of the profile; common practice, no published source. */
const LEAST_APART = 2;

/** What a gauge misses, it misses twice alike: two looks at the same one differ by how its needle is read. Common practice. */
const REREAD_K = quantities.coolantTemperature.tolerance / 2;

/**
 * Seconds until people look at the coolant again: not before it can have come to the thermostat, at the rate of the last
 * two looks and by how a needle is read, or as fast as this engine can warm; and not much later than the profile's own
 * interval, however slow it is. Near the thermostat it is asked for after twice that interval, or sooner where the coolant
 * could come to its limit before.
 */
export function nextWarmUpLookS(context: Context): number {
  const { readEveryS } = context.profile.warmUp;
  const firedMs = context.bursts.at(-1)?.endMs ?? 0;
  const looks = context.readings.filter(
    ({ quantity, atMs }) => quantity === 'coolantTemperature' && atMs >= firedMs,
  );
  const [before, last] = [looks.at(-2), looks.at(-1)];
  const rateKPerS =
    before && last
      ? (last.si - before.si + REREAD_K) / ((last.atMs - before.atMs) / 1000)
      : fastestWarmingKPerS(context.profile);
  const { opensC, coolantMaxC } = context.profile.thermostat;
  const secondsTo = (limitC: number) =>
    rateKPerS > 0
      ? Math.max(0, limitC - (last?.si ?? Number.POSITIVE_INFINITY)) / rateKPerS
      : Number.POSITIVE_INFINITY;
  const leastS = Math.max(readEveryS, Math.min(LEAST_APART * readEveryS, secondsTo(coolantMaxC)));
  return Math.min(Math.max(leastS, secondsTo(opensC)), MOST_LOOKS_LEFT_OUT * readEveryS);
}

/** Colder than an engine is that idles as a warm one: minutes from its thermostat. */
export const isFarFromThermostat = ({ profile: { thermostat } }: Context, coolantC: number): boolean =>
  coolantC < thermostat.opensC - WARM_BELOW_OPENING_K;

/** What the warm-up readings say so far: time to the thermostat, or what is suspicious about them. */
export function warmUpOutlook(context: Context): { readonly line: LineId; readonly values: PromptValues } {
  // An earlier run of the engine is another warm-up.
  const firedMs = context.bursts.at(-1)?.endMs ?? 0;
  const readings = context.readings
    .filter(
      reading =>
        reading.quantity === 'coolantTemperature' &&
        // Another speed is another curve.
        reading.step === context.step &&
        reading.atMs >= firedMs,
    )
    .map(reading => ({ timeS: reading.atMs / 1000, value: reading.si }));
  const { opensC, fullyOpenC, toleranceK } = context.profile.thermostat;
  const warmUp = readWarmUp(readings, { opensC, fullyOpenC, toleranceK });
  if (!warmUp.ok) return { line: 'warmUpNoted', values: {} };
  switch (warmUp.value.state) {
    case 'warming': {
      const { bestS, lowS, highS } = warmUp.value.left;
      const time = { unit: 's', si: bestS } as const;
      const low = { unit: 's', si: lowS } as const;
      return highS === undefined
        ? { line: 'warmUpLeftOpen', values: { time, low } }
        : { line: 'warmUpLeft', values: { time, low, high: { unit: 's', si: highS } } };
    }
    case 'atThermostat':
    case 'opened':
      return { line: 'warmUpAtThermostat', values: {} };
    case 'stuckOpenSuspected':
      return { line: 'warmUpStuckOpen', values: {} };
    case 'stuckShutSuspected':
      return { line: 'warmUpStuckShut', values: {} };
  }
}
