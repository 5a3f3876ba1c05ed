import { boilPoint, type MixPlan, planMix } from '../../src/engineering/coolant.ts';
import { freezePoint, type Glycol, shareForNight } from '../../src/engineering/glycol.ts';
import { judgeHeatSoak } from '../../src/engineering/heat-soak.ts';
import { quantities } from '../../src/engineering/quantities/table.ts';
import { fail, judge, ok, type Result, type Rule } from '../../src/engineering/result.ts';
import type { Context } from '../context.ts';
import type { Judge } from '../steps.ts';
import { latest, within } from './readings.ts';

/**
 * The glycol share for the coldest night, inside what the engine maker allows. No answer where the strongest mix that is
 * allowed does not stand that night: nobody is told to fill in what has to be drained again.
 */
export function glycolShare(context: Context): Result<number> {
  const { coolant } = context.profile;
  const share = shareForNight(coolant.kind, {
    nightLowC: latest(context, 'coldestNight'),
    marginK: coolant.freezeMarginK,
  });
  if (!share.ok) return share;
  if (share.value > coolant.maxShare)
    return fail('noSolution', 'nightLowC', {
      given: `${latest(context, 'coldestNight')} degC`,
      allowed: `nights that ${Math.round(coolant.maxShare * 100)} % of glycol stands, margin included`,
    });
  return ok(Math.max(coolant.minShare, share.value), share.rule);
}

export interface CoolantFill extends MixPlan {
  readonly freezeC: number;
}

/** Litres of concentrate and water for a dry system, and how cold the mix may get. */
export function coolantFill(context: Context): Result<CoolantFill> {
  const { coolant } = context.profile;
  const share = glycolShare(context);
  if (!share.ok) return share;
  const plan = planMix({
    systemLitres: coolant.systemVolumeL,
    inSystemLitres: 0,
    wantedShare: share.value,
    concentrateShare: coolant.concentrateShare,
  });
  if (!plan.ok) return plan;
  const freeze = freezePoint(coolant.kind, share.value);
  return freeze.ok ? ok({ ...plan.value, freezeC: freeze.value }, share.rule) : freeze;
}

const SHARE_STEP = 0.01;

/** Where the strongest mix that is allowed freezes; beyond the table of mixes as the table falls at its end. */
function strongestFreezesC(kind: Glycol, maxShare: number): number {
  let share = maxShare;
  let freezes = freezePoint(kind, share);
  while (!freezes.ok && share > SHARE_STEP) {
    share -= SHARE_STEP;
    freezes = freezePoint(kind, share);
  }
  const weaker = freezePoint(kind, share - SHARE_STEP);
  if (!freezes.ok || !weaker.ok) return Number.NEGATIVE_INFINITY;
  return freezes.value + ((freezes.value - weaker.value) / SHARE_STEP) * (maxShare - share);
}

/** A measured mix has to stand the coldest night with its margin, and to be no stronger than the engine's maker allows. */
export const freezeLimit: Judge = within('coolantFreezePoint', context => {
  const share = glycolShare(context);
  if (!share.ok) return share;
  const { kind, maxShare, freezeMarginK } = context.profile.coolant;
  const night = latest(context, 'coldestNight') ?? 0;
  return ok(
    {
      min: strongestFreezesC(kind, maxShare) - quantities.coolantFreezePoint.tolerance,
      max: Math.min(0, night - freezeMarginK),
    },
    share.rule,
  );
});

/** Where the coolant boils under its cap, here. */
export const boilsAtC = (context: Context): Result<number> => {
  const share = glycolShare(context);
  return share.ok
    ? boilPoint(context.profile.coolant.kind, {
        glycolShare: share.value,
        capPressureKpa: context.profile.coolant.capPressureKpa,
        altitudeM: latest(context, 'altitude'),
      })
    : share;
};

const REGULATED: Rule = {
  id: 'thermostat-regulates',
  source:
    'wide open, a thermostat that works lets out all the heat of an engine without load; tolerance from the engine ' +
    'profile; common practice, no published source',
  validity: 'warm engine without load',
};

/**
 * After the sweeps: a thermostat that works has the coolant below where it stands wide open. What is hotter has no way
 * out, and settling at idle does not cool it.
 */
export const beforeKeyOff: Judge = (context, coolantC) => {
  const { fullyOpenC, toleranceK } = context.profile.thermostat;
  const regulated = judge(coolantC, 'degC', { max: fullyOpenC + toleranceK }, REGULATED);
  return regulated.met
    ? soakLimit(context, coolantC)
    : { ok: false, line: 'hotAfterRun', verdict: regulated };
};

/** At key-off: the heat still in the metal must not bring the coolant to the boil under its cap. */
export const soakLimit: Judge = (context, coolantC) => {
  const { coolant, shutdown } = context.profile;
  const soak = judgeHeatSoak({
    coolantC,
    soakRiseK: shutdown.soakRiseK,
    capKpa: coolant.capPressureKpa,
    altitudeM: latest(context, 'altitude'),
    marginK: shutdown.boilMarginK,
  });
  if (!soak.ok) return soak;
  const { underCap } = soak.value;
  return underCap.met
    ? { ok: true, value: underCap }
    : { ok: false, line: 'boilsAfterKeyOff', verdict: underCap };
};

/** Running coolant: not above the engine's limit nor near boiling here. */
export const runningCoolant: Judge = within('coolantTemperature', context => {
  const boils = boilsAtC(context);
  if (!boils.ok) return boils;
  const { thermostat, shutdown } = context.profile;
  return ok({ max: Math.min(thermostat.coolantMaxC, boils.value - shutdown.boilMarginK) }, boils.rule);
});
