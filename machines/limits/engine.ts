import type { LineId } from '../../prompts/types.ts';
import { judgeCapOpening } from '../../src/engineering/heat-soak.ts';
import { ok } from '../../src/engineering/result.ts';
import { readWarmUp } from '../../src/engineering/warm-up.ts';
import type { Context } from '../context.ts';
import type { Judge } from '../steps.ts';
import type { PromptValues } from '../vocabulary.ts';
import { latest, profileRule, within } from './readings.ts';

/** Below this the fast, cold idle is expected. */
const WARM_BELOW_OPENING_K = 20;

export const idleSpeed: Judge = within('engineSpeed', context => {
  const { idle, thermostat } = context.profile;
  const coolantC = latest(context, 'coolantTemperature') ?? latest(context, 'ambientTemperature') ?? 0;
  const range = coolantC < thermostat.opensC - WARM_BELOW_OPENING_K ? idle.cold : idle.warm;
  return ok({ min: range.minRpm, max: range.maxRpm }, profileRule('idle-range'));
});

export const thermostatReached: Judge = within('coolantTemperature', ({ profile }) =>
  ok({ min: profile.thermostat.opensC }, profileRule('thermostat-opens')),
);

export const coolEnough: Judge = (context, si) => judgeCapOpening(si, context.profile.shutdown.safeToOpenC);

/** What the warm-up readings say so far: time to the thermostat, or what is suspicious about them. */
export function warmUpOutlook(context: Context): { readonly line: LineId; readonly values: PromptValues } {
  const readings = context.readings
    .filter(reading => reading.quantity === 'coolantTemperature' && reading.step === 'warmUp.watch')
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
