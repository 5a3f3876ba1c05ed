import type { Pairing, Pairings } from '../pairing/pairings.ts';
import type { Battery, Device, Role } from '../protocol/index.ts';

/** What a device's own clock showed against the server's. */
export interface FoundOffset {
  readonly offsetMs: number;
  readonly roundTripMs: number;
}

/** As a session in a terminal or a page calls what is done without a voice. */
const NOBODY = 'keys';

/** What is known of one device since the server began. */
interface Presence {
  /** Its open lines. */
  lines: number;
  quiet: boolean;
  listens: boolean;
  battery: Battery | null;
  offset: FoundOffset | null;
  lastWordMs: number | null;
}

const NEVER_HERE: Readonly<Presence> = {
  lines: 0,
  quiet: false,
  listens: false,
  battery: null,
  offset: null,
  lastWordMs: null,
};

/** The devices of one bay: which are there, and which one leads. */
export class Crew {
  readonly #bay: string;
  readonly #pairings: Pairings;
  readonly #presences = new Map<string, Presence>();
  readonly #wallMs: () => number;
  #owner: string | null = null;

  /** @param wallMs the wall clock, for when a device was last heard of */
  constructor(bay: string, pairings: Pairings, wallMs: () => number = Date.now) {
    this.#bay = bay;
    this.#pairings = pairings;
    this.#wallMs = wallMs;
  }

  /** Of how many devices anything is known: no more than there are pairings, run out or not, and lines. */
  get known(): number {
    return this.#presences.size;
  }

  /** Somebody has done something on this device. */
  noteWord({ device }: Pairing): void {
    this.#of(device).lastWordMs = this.#wallMs();
  }

  /** Nothing comes back from a device whose line is open, or something does again. */
  setQuiet({ device }: Pairing, quiet: boolean): void {
    this.#of(device).quiet = quiet;
  }

  noteBattery({ device }: Pairing, battery: Battery): void {
    this.#of(device).battery = battery;
  }

  /** A device of this role is paired, and none of them answers. */
  isAway(role: Role): boolean {
    const own = this.#pairings.ofBay(this.#bay).filter(pairing => pairing.role === role);
    return own.length > 0 && own.every(({ device }) => !this.#isThere(device));
  }

  /** The first of the technician's devices that comes leads, until another takes over. */
  came(pairing: Pairing): void {
    const { device, role } = pairing;
    this.noteWord(pairing);
    const presence = this.#of(device);
    presence.quiet = false;
    presence.lines += 1;
    if (role === 'technician' && !this.#ownerIsPaired()) this.#owner = device;
    this.#forgetStrangers();
  }

  left(pairing: Pairing): void {
    const presence = this.#of(pairing.device);
    presence.lines = Math.max(0, presence.lines - 1);
    if (presence.lines > 0) return;
    this.noteWord(pairing);
    presence.quiet = false;
    presence.listens = false;
    this.#forgetStrangers();
  }

  takeOver({ device }: Pairing): void {
    this.#owner = device;
  }

  isOwner({ device }: Pairing): boolean {
    return device === this.#owner;
  }

  /** Whose microphone is asked first: the leader's, then the second person's, then any other. */
  place(device: string): number {
    if (device === this.#owner) return 0;
    const role = this.#pairings.ofBay(this.#bay).find(each => each.device === device)?.role;
    return role === 'second' ? 1 : 2;
  }

  isConnected(device: string): boolean {
    return this.#look(device).lines > 0;
  }

  /** The device that leads is there, to speak and to be answered. */
  attended(): boolean {
    return this.#owner !== null && this.#isThere(this.#owner);
  }

  has(role: Role): boolean {
    return this.#pairings.ofBay(this.#bay).some(pairing => pairing.role === role);
  }

  noteOffset(device: string, offset: FoundOffset): void {
    this.#of(device).offset = offset;
  }

  /** A device says whether it hears: until then it does not. */
  setListening({ device }: Pairing, listens: boolean): void {
    this.#of(device).listens = listens;
  }

  /** What listens, as the faces name it: the device that leads, where it does. */
  get source(): string {
    return this.list().find(device => device.owner && device.listens)?.name ?? NOBODY;
  }

  list(): Device[] {
    return this.#pairings.ofBay(this.#bay).map(({ device, role, name }) => {
      const { lines, quiet, listens, battery, offset, lastWordMs } = this.#look(device);
      return {
        id: device,
        role,
        name,
        connected: lines > 0,
        quiet,
        battery,
        lastWordMs,
        owner: device === this.#owner,
        listens,
        clockOffsetMs: offset?.offsetMs ?? null,
        roundTripMs: offset?.roundTripMs ?? null,
      };
    });
  }

  #isThere(device: string): boolean {
    return this.isConnected(device) && !this.#look(device).quiet;
  }

  #look(device: string): Readonly<Presence> {
    return this.#presences.get(device) ?? NEVER_HERE;
  }

  #of(device: string): Presence {
    const presence = this.#presences.get(device) ?? { ...NEVER_HERE };
    this.#presences.set(device, presence);
    return presence;
  }

  /** A device that was let go of, or ran out long ago, comes never again under its name. */
  #forgetStrangers(): void {
    for (const [device, { lines }] of this.#presences)
      if (lines === 0 && !this.#pairings.knows(device)) this.#presences.delete(device);
  }

  #ownerIsPaired(): boolean {
    return this.#pairings.ofBay(this.#bay).some(({ device }) => device === this.#owner);
  }
}
