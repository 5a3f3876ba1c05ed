import type { Pairing, Pairings } from '../pairing/pairings.ts';
import type { Device, Role } from '../protocol/index.ts';

/** What a device's own clock showed against the server's. */
export interface FoundOffset {
  readonly offsetMs: number;
  readonly roundTripMs: number;
}

/** The devices of one bay: which are there, and which one leads. */
export class Crew {
  readonly #bay: string;
  readonly #pairings: Pairings;
  readonly #connected = new Map<string, number>();
  readonly #offsets = new Map<string, FoundOffset>();
  readonly #listening = new Set<string>();
  #owner: string | null = null;

  constructor(bay: string, pairings: Pairings) {
    this.#bay = bay;
    this.#pairings = pairings;
  }

  /** The first of the technician's devices that comes leads, until another takes over. */
  came({ device, role }: Pairing): void {
    this.#connected.set(device, (this.#connected.get(device) ?? 0) + 1);
    if (role === 'technician' && !this.#ownerIsPaired()) this.#owner = device;
  }

  left({ device }: Pairing): void {
    const left = (this.#connected.get(device) ?? 0) - 1;
    if (left > 0) this.#connected.set(device, left);
    else {
      this.#connected.delete(device);
      this.#listening.delete(device);
    }
  }

  takeOver({ device }: Pairing): void {
    this.#owner = device;
  }

  isOwner({ device }: Pairing): boolean {
    return device === this.#owner;
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

  found(device: string, offset: FoundOffset): void {
    this.#offsets.set(device, offset);
  }

  /** Whether a device hears: until it says so, it does not. */
  listens({ device }: Pairing, listens: boolean): void {
    if (listens) this.#listening.add(device);
    else this.#listening.delete(device);
  }

  list(): Device[] {
    return this.#pairings.ofBay(this.#bay).map(({ device, role, name }) => ({
      id: device,
      role,
      name,
      connected: this.isConnected(device),
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
