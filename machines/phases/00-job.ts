import type { Profile } from '../../src/profile/schema.ts';
import { withinRange } from '../limits/readings.ts';
import { confirm, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';

/** Who works on what, in which weather; people safe; the stop words proved by both. */
export const jobSteps = (_: Profile): readonly Step[] => [
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
  confirm('job.parked', 'vehicleSecured', { gate: 'peopleSafe' }),
  confirm('job.cutOff', 'cutOffReady', { gate: 'peopleSafe' }),
  reading('job.ambient', 'ambientTemperature', withinRange('ambientTemperature', { min: -40, max: 50 })),
  reading('job.coldestNight', 'coldestNight', withinRange('coldestNight', { min: -40, max: 35 })),
  reading('job.altitude', 'altitude', withinRange('altitude', { min: 0, max: 3040 })),
  confirm('job.stopTechnician', 'thatWasTheDrill', { gate: 'stopWordsProved', drill: true }),
  confirm('job.stopSecond', 'thatWasTheDrill', { gate: 'stopWordsProved', drill: true, by: 'second' }),
];
