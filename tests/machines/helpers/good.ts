import { type Moment, offerOf, stateName } from '../../../machines/moment.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { EventBody } from '../../../src/session/hearing.ts';

const sweepSpeeds = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

function coolantC(name: string, moment: Moment): number {
  if (name.startsWith('signOff') || name.startsWith('fill.')) return 30;
  if (name.startsWith('shutdown')) return 85;
  if (!name.startsWith('warmUp')) return 5;
  const lastFiredMs = moment.context.bursts.at(-1)?.endMs ?? 0;
  const looks = moment.context.readings.filter(
    reading => reading.step === 'warmUp.watch' && reading.atMs >= lastFiredMs,
  ).length;
  return 20 + 24 * looks;
}

/** What an engine in good order shows, in SI. */
export function goodValue(quantity: Quantity, moment: Moment): number {
  const { profile } = moment.context;
  const name = stateName(moment);
  const series = profile.systemVoltage / 12;
  switch (quantity) {
    case 'ambientTemperature':
      return 5;
    case 'coldestNight':
      return -5;
    case 'altitude':
      return 300;
    case 'coolantFreezePoint':
      return -37;
    case 'oilQuantity':
      return profile.oil.capacityL;
    case 'fuelInTank':
      return profile.fuel.tankL / 8;
    case 'biodieselShare':
      return 5;
    case 'primerStrokes':
      return 40;
    case 'batteryVoltage':
      return 12.6 * series;
    case 'crankingVoltage':
      return 10.4 * series;
    case 'chargingVoltage':
      return 14.2 * series;
    case 'engineSpeed':
      return profile.fixedSpeedRpm ?? 850;
    case 'oilPressure':
      return 280 + 25 * (sweepSpeeds.findIndex(speed => name.startsWith(`sweeps.${speed}`)) + 1);
    case 'coolantTemperature':
      return coolantC(name, moment);
    case 'suspectParameter':
      return 157;
    case 'failureMode':
      return 18;
  }
}

/** Longer than any engine of these tests takes to cool down far enough for its cap. */
const COOL_DOWN_MS = 4 * 3_600_000;
/** Longer than the oil takes to the gauge at the least, and shorter than a burst. */
const OIL_COMES_MS = 12_000;

/** How long it takes until there is something good to say; null where it takes no longer than saying it. */
export function goodPauseMs(moment: Moment): number | null {
  const name = stateName(moment);
  const { readings, step } = moment.context;
  if (name === 'signOff.cool.asking' || name === 'fill.coolantCool.asking')
    return readings.some(reading => reading.step === step) ? null : COOL_DOWN_MS;
  return name === 'noFuelCrank.untilPressure.cranking' ? OIL_COMES_MS : null;
}

/** What may be answered and passes by itself. */
export const isLeftToTime = (moment: Moment) =>
  stateName(moment) === 'warmUp.watch.between' ||
  /\.(resting|holding|cooling)$/.test(stateName(moment)) ||
  (moment.context.step.startsWith('sweeps.') && offerOf(moment).awaits === 'time');

/** What people say where all goes well, and after a false alarm; null where there is only time to wait for. */
export function goodBody(moment: Moment): EventBody | null {
  const name = stateName(moment);
  const { replies, quantity, awaits } = offerOf(moment);
  if (awaits === 'drill') return { type: 'stop' };
  if (name === 'held') return { type: 'continue' };
  if (isLeftToTime(moment)) return null;
  if (replies.includes('yes')) return { type: 'reply', id: 'yes' };
  if (quantity) return { type: 'value', quantity, si: goodValue(quantity, moment) };
  const [reply] = replies;
  return reply ? { type: 'reply', id: reply } : null;
}
