import type { Gate } from '../../../machines/vocabulary.ts';
import type { View } from '../../../src/session/view.ts';

const gateNames: readonly (readonly [Gate, string])[] = [
  ['stopWordsProved', 'emergency words proved'],
  ['peopleSafe', 'people safe'],
  ['coolantReady', 'coolant'],
  ['oilReady', 'oil'],
  ['fuelReady', 'fuel'],
  ['fuelPrimed', 'fuel primed'],
  ['sensorsConnected', 'sensors'],
  ['walkRoundDone', 'walk-round'],
  ['fuellingDisabled', 'fuelling disabled'],
  ['oilPrimed', 'oil primed'],
  ['fuellingRestored', 'fuelling restored'],
  ['batteryReady', 'battery'],
  ['lampsRight', 'lamps'],
  ['heaterHoldDone', 'heater'],
  ['noBlockingFault', 'fault codes'],
  ['secondPersonClear', 'second person clear'],
];

/** The gates before first fire, the first `met` of them met. */
export const gatesMet = (met: number): View['gates'] =>
  gateNames.map(([gate, name], index) => ({ gate, name, met: index < met }));

/** The middle of a fill: a plain question, nothing timed, the engine off. */
export const filling: View = {
  profileName: 'Demo four',
  invented: true,
  state: 'working',
  key: 'fill.coolantFull.asking',
  phase: 'Fill',
  phaseNumber: 2,
  phaseCount: 12,
  title: 'Coolant full',
  prompt: 'Fill the coolant slowly, up to the cold mark. Say coolant full.',
  addressed: 'technician',
  addressedName: 'Ana',
  engine: 'off',
  choices: ['coolant full', 'not yet'],
  controls: ['hold', 'say again', 'go back', 'skip', 'status', 'time left', 'help'],
  number: null,
  timer: null,
  readings: [
    { name: 'air temperature', value: '-5 °C', limits: '', met: true },
    { name: 'freeze point', value: '-37 °C', limits: '≤ -30', met: true },
  ],
  gates: gatesMet(2),
  faults: [],
  openItems: [],
  hearing: {
    source: 'microphone',
    levelDbfs: -23.4,
    clipping: false,
    speech: true,
    speaking: false,
    last: { text: 'mix is ready', counted: true, by: 'technician' },
  },
  log: [
    { time: '04:10', who: 'says', text: 'Coolant: 5.5 L of ethylene glycol concentrate and 5.5 L of water.' },
    { time: '04:21', who: 'heard', text: 'mix is ready' },
    { time: '04:22', who: 'says', text: 'Fill the coolant slowly, up to the cold mark. Say coolant full.' },
  ],
  problems: [],
  outcome: null,
};

/** A number is awaited with the engine running. */
export const reading: View = {
  ...filling,
  key: 'checks.oilPressure.asking',
  phase: 'Running checks',
  phaseNumber: 8,
  title: 'Oil pressure',
  prompt: 'Oil pressure, in psi?',
  engine: 'running',
  choices: [],
  number: { name: 'oil pressure', unit: 'psi', min: 0, max: 150 },
  gates: gatesMet(16),
  readings: [
    ...filling.readings,
    { name: 'battery', value: '12.7 V', limits: '≥ 12.4', met: true },
    { name: 'idle speed', value: '930 rpm', limits: '700–800', met: false },
  ],
};

/** Between two bursts, with the starter cooling. */
export const resting: View = {
  ...filling,
  key: 'noFuelCrank.crank.resting',
  phase: 'Crank without fuel',
  phaseNumber: 5,
  title: 'Crank until pressure',
  prompt: 'Let the starter cool: 2 minutes.',
  choices: [],
  gates: gatesMet(9),
  timer: { title: 'Crank until pressure', totalMs: 120_000, leftMs: 83_000, held: false },
};

/** The same, put on hold. */
export const held: View = {
  ...resting,
  state: 'held',
  prompt: 'On hold. Say continue to go on.',
  choices: [],
  controls: ['continue', 'status', 'time left', 'help'],
  timer: { title: 'Crank until pressure', totalMs: 120_000, leftMs: 83_000, held: true },
};

export const cranking: View = {
  ...resting,
  key: 'noFuelCrank.crank.cranking',
  engine: 'cranking',
  prompt: 'Crank now.',
  choices: ['pressure shows', 'nothing yet'],
  controls: ['say again', 'status', 'help'],
  timer: { title: 'Crank until pressure', totalMs: 15_000, leftMs: 4_200, held: false },
};

/** Stopped from a running engine, with everything that can be in the way. */
export const stopped: View = {
  ...reading,
  state: 'stopped',
  key: 'stopped.cause',
  engine: 'running',
  title: 'Look for leaks',
  prompt: 'What was the cause?',
  number: null,
  choices: [
    'false alarm',
    'coolant leak',
    'oil leak',
    'fuel leak',
    'no oil pressure',
    'engine would not start',
    'overspeed',
    'overheating',
    'fault code',
    'smoke or fire',
    'someone is hurt',
    'something loose',
    'another cause',
  ],
  controls: ['say again', 'status', 'help'],
  gates: gatesMet(11),
  faults: ['SPN 157 FMI 18: data valid but below normal operating range, moderately severe'],
  openItems: ['Steering fluid', 'Retorque list'],
  hearing: {
    ...reading.hearing,
    speaking: true,
    clipping: true,
    last: { text: 'stop', counted: true, by: 'second' },
  },
  log: [...reading.log, { time: '31:07', who: '!', text: 'Stop! Key off. Stop!' }],
  problems: ['The record cannot be written: the disk is full; free some space.'],
};

export const signedOff: View = { ...filling, state: 'over', outcome: 'signedOff', choices: [], controls: [] };

const long = 'an uncommonly long name that goes on and on without any end in sight ';

/** Names, sentences and words far longer than any terminal is wide, with wide letters and control characters. */
export const overlong: View = {
  ...stopped,
  profileName: long.repeat(3),
  phase: long.repeat(2),
  title: `${'Unbreakable'.repeat(20)} ${long}`,
  prompt: `${long.repeat(4)}\u001b[2J\r\n冷却液をゆっくり注ぎます${'長'.repeat(90)}`,
  addressedName: long,
  choices: [long, 'x'.repeat(300)],
  number: { name: long, unit: long, min: -1e12, max: 1e12 },
  timer: { title: long, totalMs: 3_600_000, leftMs: 3_599_000, held: true },
  readings: [{ name: long, value: long, limits: long, met: false }],
  gates: gatesMet(3).map(gate => ({ ...gate, name: long })),
  faults: [long, long],
  openItems: [long],
  hearing: {
    ...stopped.hearing,
    source: long,
    last: { text: '長い'.repeat(80), counted: false, by: 'supervisor' },
  },
  log: [{ time: '00:01', who: 'heard', text: `? ${long.repeat(3)}\u0007` }],
  problems: [long.repeat(2)],
};

export const everyView = { filling, reading, resting, held, cranking, stopped, signedOff, overlong } as const;
