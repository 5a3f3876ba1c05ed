import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import { emergencyWords } from '../help.ts';
import { AIR_C, NIGHT_C } from '../limits/gauges.ts';
import { latest, withinRange } from '../limits/readings.ts';
import { confirm, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { PromptValue, Quantity } from '../vocabulary.ts';

const later = { readBackIn: 'job.figures' } as const;

const readOff = (context: Context, quantity: Quantity): PromptValue => ({
  brief: quantity,
  si: latest(context, quantity) ?? Number.NaN,
  asSaid: true,
});

const safe = { gate: 'peopleSafe' } as const;

/** What must not move, start or be driven while people are at the engine. */
function securedSteps(use: Profile['use']): readonly Step[] {
  switch (use.kind) {
    case 'vehicle':
      return [confirm('job.parked', 'vehicleSecured', safe)];
    // Whatever starts it by itself does so while hands are in it.
    case 'generator':
      return [
        confirm('job.autoStart', 'lockedOut', { ...safe, values: () => ({ at: use.autoStart }) }),
        confirm('job.breaker', 'breakerOpen', { ...safe, values: () => ({ at: use.breaker }) }),
      ];
    case 'marine':
      return [confirm('job.gearLever', 'inNeutral', { ...safe, values: () => ({ at: use.gearLever }) })];
    case 'stationary':
      return [confirm('job.coupling', 'uncoupled', { ...safe, values: () => ({ at: use.coupling }) })];
  }
}

/** Who works on what, in which weather; people safe; the stop words proved by both. */
export const jobSteps = ({ cutOff, use }: Profile): readonly Step[] => [
  confirm('job.card', 'cardRight', {
    values: ({ job }) => ({
      vehicle: job.vehicle,
      engine: job.engine,
      technician: job.technician,
      second: job.second,
    }),
  }),
  confirm('job.makerFirst', 'understood'),
  confirm('job.protection', 'protectionOn', { gate: 'peopleSafe' }),
  confirm('job.hazards', 'understood', { gate: 'peopleSafe' }),
  confirm('job.ventilation', 'airGood', { gate: 'peopleSafe' }),
  confirm('job.extinguisher', 'extinguisherReady', { gate: 'peopleSafe' }),
  ...securedSteps(use),
  confirm('job.cutOff', 'cutOffReady', {
    gate: 'peopleSafe',
    values: () => ({
      how: cutOff ? { line: 'cutOffAt', values: { at: cutOff.at } } : { line: 'cutOffKnown', values: {} },
    }),
  }),
  reading('job.ambient', 'ambientTemperature', withinRange('ambientTemperature', AIR_C), later),
  reading('job.coldestNight', 'coldestNight', withinRange('coldestNight', NIGHT_C), later),
  reading('job.altitude', 'altitude', withinRange('altitude', { min: -500, max: 6000 }), later),
  // Before the first gate that hangs on them.
  confirm('job.figures', 'yes', {
    gate: 'coolantReady',
    readsBack: ['job.ambient', 'job.coldestNight', 'job.altitude'],
    values: context => ({
      air: readOff(context, 'ambientTemperature'),
      coldest: readOff(context, 'coldestNight'),
      altitude: readOff(context, 'altitude'),
    }),
  }),
  confirm('job.stopTechnician', 'thatWasTheDrill', {
    gate: 'stopWordsProved',
    drill: true,
    values: () => emergencyWords,
  }),
  confirm('job.stopSecond', 'thatWasTheDrill', {
    gate: 'stopWordsProved',
    drill: true,
    by: 'second',
    values: () => emergencyWords,
  }),
];
