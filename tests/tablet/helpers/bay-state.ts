import type { BayState } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';

/** A bay in which no session has begun. */
export const emptyBay: BayState = {
  bay: 'one',
  session: null,
  turn: 'a',
  profiles: [],
  usual: { job: demoJob, units: 'us', language: 'en' },
  language: 'en',
  mayBeLeft: false,
  view: null,
  grammar: null,
  firing: null,
  devices: [],
  clear: { state: 'notAsked', untilSessionMs: null, ownDeviceOnly: false },
  holdAsked: null,
  lost: null,
};
