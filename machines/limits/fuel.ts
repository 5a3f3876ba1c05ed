import { judgeBiodiesel } from '../../src/engineering/biodiesel.ts';
import {
  type FuelPractice,
  fillTank,
  fuelByPractice,
  type GellingRisk,
  gellingRisk,
  type TankPlan,
} from '../../src/engineering/fuel.ts';
import { judge, ok, type Result } from '../../src/engineering/result.ts';
import type { Context } from '../context.ts';
import type { Judge } from '../steps.ts';
import { latest } from './readings.ts';

export interface FuelAdvice extends TankPlan {
  readonly practice: FuelPractice;
  /** Of what is in the tank as it is. */
  readonly risk: GellingRisk;
}

/** What to add to what is in the tank, taken to be No. 2, for the coldest night. */
export function fuelAdvice(context: Context): Result<FuelAdvice> {
  const { fuel } = context.profile;
  const nightLowC = latest(context, 'coldestNight');
  const plan = fillTank({
    no1CloudC: fuel.no1CloudC,
    no2CloudC: fuel.no2CloudC,
    nightLowC,
    marginK: fuel.cloudMarginK,
    tankLitres: fuel.tankL,
    inTankLitres: latest(context, 'fuelInTank'),
    inTankCloudC: fuel.no2CloudC,
  });
  if (!plan.ok) return plan;
  const practice = fuelByPractice({ nightLowC, straightNo1BelowC: fuel.straightNo1BelowC });
  if (!practice.ok) return practice;
  const risk = gellingRisk({ nightLowC, cloudC: fuel.no2CloudC, marginK: fuel.cloudMarginK });
  return risk.ok ? ok({ ...plan.value, practice: practice.value, risk: risk.value }, plan.rule) : risk;
}

/** The share spoken is that of what is in the tank, however much that is. */
export const biodieselLimit: Judge = (context, percent) => {
  const max = context.profile.fuel.biodieselMaxPercent;
  const judged = judgeBiodiesel([{ litres: 1, biodieselShare: percent / 100 }], max / 100);
  return judged.ok ? { ok: true, value: judge(percent, '%', { max }, judged.rule) } : judged;
};
