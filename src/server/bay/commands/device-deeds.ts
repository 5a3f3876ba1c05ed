import type { Pairing, Pairings } from '../../pairing/pairings.ts';
import { Refused } from '../../refused.ts';
import type { Crew } from '../crew.ts';
import { mayNotLetGo, mayNotRenew } from './authority.ts';

/** The devices that are paired in one bay, and who is there of them. */
interface Devices {
  readonly bay: string;
  readonly pairings: Pick<Pairings, 'ofBay'>;
  readonly crew: Crew;
}

/** A device of this bay. @throws Refused also for a device of another bay, of which nobody here learns anything */
export function pairedHere(device: string, { bay, pairings }: Omit<Devices, 'crew'>): Pairing {
  const found = pairings.ofBay(bay).find(pairing => pairing.device === device);
  if (!found) throw new Refused('notFound', 'No such device is paired in this bay.');
  return found;
}

const askerOf = (by: Pairing, { crew }: Devices) => ({ role: by.role, owner: crew.isOwner(by) });

/** @throws Refused when whoever asks may not let go of this device, or there is none such here */
export function checkLettingGo(by: Pairing, device: string, devices: Devices): void {
  pairedHere(device, devices);
  const refusal = mayNotLetGo(askerOf(by, devices), {
    own: device === by.device,
    connected: devices.crew.isConnected(device),
  });
  if (refusal) throw new Refused(refusal.code, refusal.sentence);
}

/** The device whose pairing is to be renewed. @throws Refused when whoever asks may not, or there is none such here */
export function checkedRenewal(by: Pairing, device: string, devices: Devices): Pairing {
  const pairing = pairedHere(device, devices);
  const refusal = mayNotRenew(askerOf(by, devices), { own: device === by.device });
  if (refusal) throw new Refused(refusal.code, refusal.sentence);
  return pairing;
}
