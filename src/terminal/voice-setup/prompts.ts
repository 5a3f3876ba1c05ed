import { english } from '../../../prompts/en/index.ts';
import type { ReplyId } from '../../../prompts/types.ts';
import type { Grammar, NumberSlot } from '../../voice/ports.ts';
import type { Prompt } from '../../voice/speaker-profile/trial.ts';

const { replies, stopWordings: stop, quantities, units } = english;

const worded = (ids: readonly ReplyId[]) => ids.map(id => ({ id, wordings: replies[id] }));

const readBack: Grammar = {
  key: 'voiceSetup.readBack',
  stop,
  replies: worded(['yes', 'no']),
  agreement: 'yes',
};
const steps: Grammar = {
  key: 'voiceSetup.steps',
  stop,
  replies: worded([
    'ready',
    'understood',
    'cardRight',
    'coolantFull',
    'levelGood',
    'pluggedIn',
    'noCodes',
    'notYet',
  ]),
};
const reading = (slot: Omit<NumberSlot, 'units'>, unit: keyof typeof units): Grammar => ({
  key: `voiceSetup.${slot.id}`,
  stop,
  replies: worded(['notYet']),
  number: { ...slot, units: units[unit].said },
});
const pressure = reading(
  { id: 'oilPressure', leads: quantities.oilPressure.leads, min: 0, max: 100, step: 1 },
  'psi',
);
const voltage = reading(
  { id: 'batteryVoltage', leads: quantities.batteryVoltage.leads, min: 8, max: 16, step: 0.1 },
  'V',
);
const speed = reading(
  { id: 'engineSpeed', leads: quantities.engineSpeed.leads, min: 0, max: 4000, step: 10 },
  'rpm',
);

const saying = (grammar: Grammar, ...texts: readonly string[]): Prompt[] =>
  texts.map(text => ({ text, grammar }));

/** What is read aloud to choose on, in this order: numbers, confirmations, stop words. */
export const trainingPrompts: readonly Prompt[] = [
  ...saying(pressure, 'oil pressure four two', 'fifteen', 'fifty', 'oil pressure nine'),
  ...saying(voltage, 'twelve point six', 'one three point nine'),
  ...saying(speed, 'seven hundred', 'eight five zero'),
  ...saying(readBack, 'correct', 'wrong', 'yes'),
  ...saying(steps, 'ready', 'level is good', 'plugged in'),
  ...saying(readBack, 'stop'),
];

/** What is held out: nothing is chosen on it, and before and after are told by it. */
export const heldOutPrompts: readonly Prompt[] = [
  ...saying(pressure, 'oil pressure five five', 'thirty'),
  ...saying(voltage, 'eleven point nine'),
  ...saying(readBack, 'affirmative'),
  ...saying(steps, 'coolant full'),
  ...saying(readBack, 'stop the engine'),
];
