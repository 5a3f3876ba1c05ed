import type { BayState, Device } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';

/** A bay in which no session has begun and no device is paired. */
export const bareBay: BayState = {
  bay: 'bay',
  session: null,
  view: null,
  profiles: ['demo-six'],
  usual: { job: demoJob, units: 'us', language: 'en' },
  language: 'en',
  mayBeLeft: false,
  turn: '',
  grammar: null,
  firing: null,
  devices: [],
  clear: { state: 'notAsked', untilSessionMs: null, ownDeviceOnly: false },
  holdAsked: null,
  lost: null,
};

/** A device of a bay of which nothing else is known. */
export const deviceIn = (known: Pick<Device, 'id' | 'role' | 'name' | 'connected'>): Device => ({
  quiet: false,
  battery: null,
  lastWordMs: null,
  owner: false,
  listens: false,
  clockOffsetMs: null,
  roundTripMs: null,
  ...known,
});
