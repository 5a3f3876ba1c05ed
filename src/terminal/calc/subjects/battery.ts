import { chargingWindow, crankingFloor, stateOfCharge } from '../../../engineering/battery.ts';
import type { Given } from '../../../engineering/checks.ts';
import { fail, judge, ok, type Result, type Verdict } from '../../../engineering/result.ts';
import { type Answer, amount, answer, held, subject, together } from '../subject.ts';

export const battery = subject({
  name: 'battery',
  summary:
    'state of charge from the voltage at rest, and the voltage while cranking or charging held to its limits',
  numbers: {
    batteryC: { flag: 'temperature', quantity: 'temperature', help: 'of the battery' },
    restVoltageV: { flag: 'rest', quantity: 'voltage', help: 'volts at rest' },
    crankingV: { flag: 'cranking', quantity: 'voltage', help: 'lowest volts while cranking' },
    chargingV: { flag: 'charging', quantity: 'voltage', help: 'volts with the engine running' },
    setpointV: {
      flag: 'setpoint',
      quantity: 'voltage',
      help: 'charging setpoint for 12 V at 25 °C',
      otherwise: 14.2,
    },
    toleranceV: {
      flag: 'tolerance',
      quantity: 'voltage',
      help: 'allowed to either side of it',
      otherwise: 0.4,
    },
  },
  words: { nominal: { flag: 'nominal', help: 'system voltage', choices: ['12', '24'], otherwise: '12' } },
  answer: ({ number, words }) => {
    const nominalV = words('nominal') === '24' ? 24 : 12;
    const batteryC = number('batteryC');
    const [rest, cranking, charging] = [number('restVoltageV'), number('crankingV'), number('chargingV')];
    const answers: Answer[] = [];
    if (rest !== undefined) {
      answers.push(
        answer(stateOfCharge(nominalV, { restVoltageV: rest, batteryC }), share => [
          amount('state of charge, 0 to 1', share, 'number'),
        ]),
      );
    }
    if (cranking !== undefined) {
      const floor = crankingFloor(nominalV, batteryC);
      const verdict = floor.ok
        ? ok(judge(cranking, 'V', { min: floor.value }, floor.rule), floor.rule)
        : floor;
      answers.push(answer(verdict, value => [held('while cranking', value, 'voltage')]));
    }
    if (charging !== undefined) {
      const window = chargingWindow(nominalV, {
        setpointV: number('setpointV'),
        toleranceV: number('toleranceV'),
        batteryC,
      });
      answers.push(
        answer(judgeCharging(charging, window), value => [held('while charging', value, 'voltage')]),
      );
    }
    return answers.length > 0
      ? together(...answers)
      : fail('missing', 'restVoltageV', { allowed: 'one of --rest, --cranking and --charging' });
  },
});

function judgeCharging(chargingV: Given, window: ReturnType<typeof chargingWindow>): Result<Verdict> {
  if (!window.ok) return window;
  const { minV, maxV } = window.value;
  return ok(judge(chargingV ?? Number.NaN, 'V', { min: minV, max: maxV }, window.rule), window.rule);
}
