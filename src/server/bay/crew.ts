import type { Pairing, Pairings } from '../pairing/pairings.ts';
import type { Battery, Device, Role } from '../protocol/index.ts';

/** What a device's own clock showed against the server's. */
export interface FoundOffset {
  readonly offsetMs: number;
  readonly roundTripMs: number;
}

/** As a session in a terminal or a page calls what is done without a voice. */
const NOBODY = 'keys';

/** The devices of one bay: which are there, and which one leads. */
export class Crew {
  readonly #bay: string;
  readonly #pairings: Pairings;
  readonly #connected = new Map<string, number>();
  readonly #offsets = new Map<string, FoundOffset>();
  readonly #listening = new Set<string>();
  readonly #quiet = new Set<string>();
  readonly #batteries = new Map<string, Battery>();
  readonly #lastWords = new Map<string, number>();
  readonly #wallMs: () => number;
  #owner: string | null = null;

  /** @param wallMs the wall clock, for when a device was last heard of */
  constructor(bay: string, pairings: Pairings, wallMs: () => number = Date.now) {
    this.#bay = bay;
    this.#pairings = pairings;
    this.#wallMs = wallMs;
  }

  /** Somebody has done something on this device. */
  noteWord({ device }: Pairing): void {
    this.#lastWords.set(device, this.#wallMs());
  }

  /** Nothing comes back from a device whose line is open, or something does again. */
  setQuiet({ device }: Pairing, quiet: boolean): void {
    if (quiet) this.#quiet.add(device);
    else this.#quiet.delete(device);
  }

  noteBattery({ device }: Pairing, battery: Battery): void {
    this.#batteries.set(device, battery);
  }

  /** A device of this role is paired, and none of them answers. */
  isAway(role: Role): boolean {
    const own = this.#pairings.ofBay(this.#bay).filter(pairing => pairing.role === role);
    return own.length > 0 && own.every(({ device }) => !this.isConnected(device) || this.#quiet.has(device));
  }

  /** The first of the technician's devices that comes leads, until another takes over. */
  came(pairing: Pairing): void {
    const { device, role } = pairing;
    this.noteWord(pairing);
    this.#quiet.delete(device);
    this.#connected.set(device, (this.#connected.get(device) ?? 0) + 1);
    if (role === 'technician' && !this.#ownerIsPaired()) this.#owner = device;
  }

  left(pairing: Pairing): void {
    const { device } = pairing;
    const left = (this.#connected.get(device) ?? 0) - 1;
    if (left > 0) this.#connected.set(device, left);
    else {
      this.noteWord(pairing);
      this.#connected.delete(device);
      this.#quiet.delete(device);
      this.#listening.delete(device);
    }
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
    return this.#connected.has(device);
  }

  /** The device that leads is there, to speak and to be answered. */
  attended(): boolean {
    return this.#owner !== null && this.isConnected(this.#owner);
  }

  has(role: Role): boolean {
    return this.#pairings.ofBay(this.#bay).some(pairing => pairing.role === role);
  }

  noteOffset(device: string, offset: FoundOffset): void {
    this.#offsets.set(device, offset);
  }

  /** A device says whether it hears: until then it does not. */
  setListening({ device }: Pairing, listens: boolean): void {
    if (listens) this.#listening.add(device);
    else this.#listening.delete(device);
  }

  /** What listens, as the faces name it: the device that leads, where it does. */
  get source(): string {
    return this.list().find(device => device.owner && device.listens)?.name ?? NOBODY;
  }

  list(): Device[] {
    return this.#pairings.ofBay(this.#bay).map(({ device, role, name }) => ({
      id: device,
      role,
      name,
      connected: this.isConnected(device),
      quiet: this.#quiet.has(device),
      battery: this.#batteries.get(device) ?? null,
      lastWordMs: this.#lastWords.get(device) ?? null,
      owner: device === this.#owner,
      listens: this.#listening.has(device),
      clockOffsetMs: this.#offsets.get(device)?.offsetMs ?? null,
      roundTripMs: this.#offsets.get(device)?.roundTripMs ?? null,
    }));
  }

  #ownerIsPaired(): boolean {
    return this.#pairings.ofBay(this.#bay).some(({ device }) => device === this.#owner);
  }
}
