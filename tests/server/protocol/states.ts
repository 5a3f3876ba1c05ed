import fc from 'fast-check';
import type { BayState } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';

const line = fc.record({
  time: fc.constantFrom('00:01', '00:02'),
  who: fc.constantFrom('says', 'heard'),
  text: fc.constantFrom('ready', 'correct', 'stop'),
});

const wholeView: fc.Arbitrary<NonNullable<BayState['view']>> = fc.record({
  remark: fc.constantFrom('Oil pressure is good.', 'Not understood.'),
  callOuts: fc.constant(['Stop! Key off. Stop!']),
  profileName: fc.constantFrom('demo six', 'demo four'),
  invented: fc.boolean(),
  state: fc.constantFrom('working', 'held', 'stopped', 'over'),
  key: fc.string({ minLength: 1 }),
  phase: fc.string(),
  phaseNumber: fc.nat(12),
  phaseCount: fc.nat(12),
  title: fc.string(),
  prompt: fc.string(),
  addressed: fc.constantFrom('technician', 'second', 'supervisor'),
  addressedName: fc.string(),
  engine: fc.constantFrom('off', 'cranking', 'running'),
  choices: fc.array(fc.string(), { maxLength: 3 }),
  controls: fc.array(fc.string(), { maxLength: 3 }),
  number: fc.option(
    fc.record({ name: fc.string(), unit: fc.string(), min: fc.integer(), max: fc.integer() }),
  ),
  timer: fc.option(
    fc.record({ title: fc.string(), totalMs: fc.nat(), leftMs: fc.nat(), held: fc.boolean() }),
  ),
  readings: fc.array(
    fc.record({ name: fc.string(), value: fc.string(), limits: fc.string(), met: fc.boolean() }),
    { maxLength: 3 },
  ),
  gates: fc.array(
    fc.record({
      gate: fc.constantFrom('oilReady' as const, 'noLeaks' as const),
      name: fc.string(),
      met: fc.boolean(),
    }),
    { maxLength: 3 },
  ),
  faults: fc.array(fc.string(), { maxLength: 2 }),
  openItems: fc.array(fc.string(), { maxLength: 2 }),
  hearing: fc.record({
    source: fc.string(),
    levelDbfs: fc.option(fc.integer({ min: -90, max: 0 })),
    clipping: fc.boolean(),
    speech: fc.boolean(),
    speaking: fc.boolean(),
    last: fc.option(
      fc.record({ text: fc.string(), counted: fc.boolean(), by: fc.constantFrom('technician', 'second') }),
    ),
  }),
  log: fc.array(line, { maxLength: 6 }),
  problems: fc.array(fc.string(), { maxLength: 2 }),
  outcome: fc.constantFrom(null, 'signedOff', 'ended'),
});

/** What is heard of the engine, once anything is. */
const engineEar: fc.Arbitrary<NonNullable<NonNullable<BayState['view']>['engineEar']>> = fc.record({
  speed: fc.option(fc.constant('750 rpm')),
  trace: fc.array(fc.option(fc.nat(3000)), { maxLength: 4 }),
  microphone: fc.constant('a technician'),
});

/** Some members of a view come and go. */
const view: fc.Arbitrary<NonNullable<BayState['view']>> = fc
  .tuple(wholeView, fc.subarray(['remark', 'callOuts', 'engineEar'] as const), engineEar)
  .map(([{ remark, callOuts, ...rest }, there, ear]) => ({
    ...rest,
    ...(there.includes('remark') && remark !== undefined ? { remark } : {}),
    ...(there.includes('callOuts') && callOuts !== undefined ? { callOuts } : {}),
    ...(there.includes('engineEar') ? { engineEar: ear } : {}),
  }));

/** States of a bay, few enough of each member that two of them often share it. */
export const bayState: fc.Arbitrary<BayState> = fc.record({
  bay: fc.constant('bay 1'),
  session: fc.option(fc.constantFrom('a', 'b')),
  lost: fc.option(fc.record({ session: fc.option(fc.constant('a')) })),
  view: fc.option(view),
  profiles: fc.constant(['demo-six']),
  usual: fc.constant({ job: demoJob, units: 'us' as const, language: 'en' as const }),
  language: fc.constantFrom('en', 'fr'),
  mayBeLeft: fc.boolean(),
  turn: fc.constantFrom('a/1', 'a/2'),
  grammar: fc.option(fc.record({ key: fc.string(), stop: fc.constant(['stop']), replies: fc.constant([]) })),
  firing: fc.option(fc.record({ cylinders: fc.constantFrom(4, 6), strokes: fc.constant(4 as const) })),
  devices: fc.array(
    fc.record({
      id: fc.string(),
      role: fc.constantFrom('technician', 'second', 'supervisor'),
      name: fc.string(),
      connected: fc.boolean(),
      quiet: fc.boolean(),
      battery: fc.option(fc.record({ share: fc.constantFrom(0, 0.5, 1), charging: fc.boolean() })),
      lastWordMs: fc.option(fc.nat()),
      owner: fc.boolean(),
      listens: fc.boolean(),
      clockOffsetMs: fc.option(fc.integer()),
      roundTripMs: fc.option(fc.nat()),
    }),
    { maxLength: 2 },
  ),
  clear: fc.record({
    state: fc.constantFrom('notAsked', 'needed', 'given'),
    untilSessionMs: fc.option(fc.nat()),
    ownDeviceOnly: fc.boolean(),
  }),
  holdAsked: fc.option(fc.record({ by: fc.string(), atSessionMs: fc.nat() })),
});
