import { chargingWindow, crankingFloor, stateOfCharge } from '../../src/engineering/battery.ts';
import { heaterWait, judgeHeaterLamp } from '../../src/engineering/intake-heater.ts';
import { ok, type Result } from '../../src/engineering/result.ts';
import { isNearItsLimit } from '../assurance.ts';
import type { Context } from '../context.ts';
import type { Judge } from '../steps.ts';
import { latest, within } from './readings.ts';

const STEP_V = 0.01;

/**
 * Least rest voltage for the state of charge that the profile asks for, at this temperature: searched
 * upwards, since the table behind it gives charge from voltage.
 */
export function leastRestVoltage(context: Context): Result<number> {
  const { systemVoltage, charging } = context.profile;
  const series = systemVoltage / 12;
  const batteryC = latest(context, 'ambientTemperature');
  for (let step = 0; ; step += 1) {
    const restVoltageV = (10.5 + step * STEP_V) * series;
    const charge = stateOfCharge(systemVoltage, { restVoltageV, batteryC });
    if (!charge.ok) return charge;
    if (charge.value >= charging.minStateOfCharge) return ok(restVoltageV, charge.rule);
  }
}

export const batteryAtRest: Judge = within('batteryVoltage', context => {
  const least = leastRestVoltage(context);
  return least.ok
    ? ok({ min: least.value, max: (context.profile.systemVoltage / 12) * 13 }, least.rule)
    : least;
});

export const crankingVoltage: Judge = within('crankingVoltage', context => {
  const floor = crankingFloor(context.profile.systemVoltage, latest(context, 'ambientTemperature'));
  return floor.ok ? ok({ min: floor.value }, floor.rule) : floor;
});

/** True unless the lowest voltage while cranking was well above its limit. */
export function crankedNearItsLimit(context: Context): boolean {
  const lowest = latest(context, 'crankingVoltage');
  const judged = lowest === undefined ? null : crankingVoltage(context, lowest);
  return !judged?.ok || isNearItsLimit(judged.value);
}

export const charging: Judge = within('chargingVoltage', context => {
  const { profile } = context;
  const window = chargingWindow(profile.systemVoltage, {
    setpointV: profile.charging.setpointV,
    toleranceV: profile.charging.toleranceV,
    batteryC: latest(context, 'ambientTemperature'),
  });
  return window.ok ? ok({ min: window.value.minV, max: window.value.maxV }, window.rule) : window;
});

/** Seconds that the intake heater is expected to work at this temperature; its longest wait when unknown. */
export function heaterSeconds(context: Context): number {
  const { heater } = context.profile;
  if (!heater) return 0;
  const wait = heaterWait(
    heater.waits.map(row => ({ temperatureC: row.atC, seconds: row.waitS })),
    latest(context, 'ambientTemperature'),
  );
  return wait.ok ? wait.value : Math.max(...heater.waits.map(row => row.waitS));
}

/** Seconds that the wait lamp outlasted its hold, as part of the whole time that it was on. */
export const heaterLamp: Judge = (context, seconds) => {
  const { heater } = context.profile;
  if (!heater) return { ok: false, issue: { code: 'missing', input: 'heater' } };
  return judgeHeaterLamp(
    heater.waits.map(row => ({ temperatureC: row.atC, seconds: row.waitS })),
    {
      temperatureC: latest(context, 'ambientTemperature'),
      lampOnS: heaterSeconds(context) + seconds,
      toleranceS: heater.toleranceS + TALK_S,
    },
  );
};

/** Time to ask and to answer, on top of the time that the lamp may outlast its wait. */
export const TALK_S = 10;
